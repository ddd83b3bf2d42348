// SPDX-License-Identifier: Apache-2.0
#include "sheet/plan_drawing.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

// Of the target's height, at the most: many facets need the width that a taller elevation has.
constexpr double share_of_few = 0.40;
constexpr double share_of_many = 0.36;
constexpr double least_px = 76.0;
constexpr double most_px = 200.0;
constexpr double over_px = 10.0;   ///< above the outermost facet
constexpr double under_px = 32.0;  ///< below the mouth: the chord's tape and its label
constexpr double wall_px = 20.0;   ///< of the wall to each side
constexpr double side_px = 8.0;
const std::string part = "plan";

}  // namespace

PlanSketch::PlanSketch(const WindowOutline& outline, const ElevationOptions& options)
    : outline_(outline), pixel_(options.pixel) {
    if (!outline.plan) {
        return;
    }
    const BayPlan& plan = *outline.plan;
    double left = 0.0, right = std::max(1.0, plan.chord), low = 0.0, high = 1.0;
    for (const auto& [x, y] : plan.points) {
        left = std::min(left, x);
        right = std::max(right, x);
        low = std::min(low, y);
        high = std::max(high, y);
    }
    const double share = plan.facets() > 3 ? share_of_many : share_of_few;
    const double most =
        std::min(std::clamp(options.height * share, least_px * pixel_, most_px * pixel_), options.height * 0.5);
    const double beside = 2.0 * (wall_px + side_px) * pixel_;
    // The walls of a corner that stands into the room go on upward.
    const double over = low < 0.0 ? wall_px + over_px : over_px;
    const double around = (over + under_px) * pixel_;
    scale_ = std::max(1e-6, std::min((most - around) / (high - low), (options.width - beside) / (right - left)));
    room_ = (high - low) * scale_ + around;
    zero_ = {(options.width - (left + right) * scale_) / 2.0, options.height - under_px * pixel_ + low * scale_};
}

DrawingBoard PlanSketch::board(Elevation& elevation) const { return {elevation, zero_, scale_, pixel_}; }

void PlanSketch::draw_walls(DrawingBoard& board) const {
    const BayPlan& plan = *outline_.plan;
    const double wall = board.mm_of_px(wall_px);
    const Role role = outline_.width_known ? Role::ink : Role::guess;
    const Spot end = plan.points.back();
    const Spot mouth_end = plan.closes ? end : Spot{plan.chord, 0.0};
    if (outline_.shape == Shape::bay) {
        board.line(role, stroke_px::ink, {-wall, 0.0}, {0.0, 0.0}, part);
        board.line(role, stroke_px::ink, mouth_end, {mouth_end.first + wall, mouth_end.second}, part);
    } else {
        // The walls of a corner go on as its openings stand.
        const auto onward = [&](Spot from, Spot to) {
            const double length = std::max(1.0, std::hypot(to.first - from.first, to.second - from.second));
            return Spot{to.first + (to.first - from.first) * wall / length,
                        to.second + (to.second - from.second) * wall / length};
        };
        board.line(role, stroke_px::ink, onward(plan.points[1], plan.points[0]), plan.points[0], part);
        board.line(role, stroke_px::ink, end, onward(plan.points[plan.points.size() - 2], end), part);
    }
    board.line(Role::guide, stroke_px::fine, {0.0, 0.0}, mouth_end, part);
}

/// What doesn't close: from where the facets end to where the chord ends.
void PlanSketch::draw_gap(DrawingBoard& board) const {
    const BayPlan& plan = *outline_.plan;
    const Spot end = plan.points.back();
    const double tick = board.mm_of_px(5.0);
    board.line(Role::thread, stroke_px::strong, end, {plan.chord, 0.0}, "gap");
    for (const double x : {end.first, plan.chord}) {
        board.line(Role::thread, stroke_px::strong, {x, -tick}, {x, tick}, "gap");
    }
}

void PlanSketch::draw(DrawingBoard& board) const {
    if (!outline_.plan) {
        return;
    }
    const BayPlan& plan = *outline_.plan;
    draw_walls(board);
    for (std::size_t i = 0; i < plan.facets(); ++i) {
        const bool known = plan.width_known[i];
        board.line(known ? Role::ink : Role::guess, known ? stroke_px::heavy : stroke_px::fine, plan.points[i],
                   plan.points[i + 1], part);
    }
    if (!plan.closes) {
        draw_gap(board);
    }
}

}  // namespace truehang
