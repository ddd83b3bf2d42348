// SPDX-License-Identifier: Apache-2.0
#include "sheet/shape_runs.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace truehang {

namespace {

constexpr double beside_px = 9.0;  ///< a tape from the edge that it runs along
constexpr double arc_px = 15.0;
constexpr double label_px = 17.0;  ///< from an angle's arc to the middle of its label
constexpr int run_arc_steps = 12;

/// The runs on a bay's plan and facets.
class BayRuns {
public:
    BayRuns(const DrawingBoard& board, const DrawingBoard& plan, const WindowOutline& outline)
        : board_(board), plan_(plan), outline_(outline), bay_(*outline.plan) {}

    [[nodiscard]] std::optional<PlacedRun> run(std::string_view word) const {
        if (const std::size_t n = number_of(word, "facet")) {
            return word.ends_with(".width") ? facet_width(n) : facet_height(n);
        }
        if (const std::size_t n = number_of(word, "corner")) {
            return word.ends_with(".angle_deg") ? corner_angle(n) : depth(n);
        }
        if (word == "bay.chord" || word == "corner.chord") {
            return chord();
        }
        if (word.starts_with("mouth.")) {
            return mouth_angle(word.starts_with("mouth.left"));
        }
        return std::nullopt;
    }

private:
    [[nodiscard]] double sill(double x) const { return outline_.at(outline_.sill, x); }

    [[nodiscard]] PlacedRun facet_width(std::size_t n) const {
        const FacetOutline& facet = outline_.facets[n - 1];
        const auto at = [&](double x) { return board_.at({x, sill(x) + facet.height * 0.14}); };
        return {.run = {at(facet.left), at(facet.right)},
                .edge = {plan_.at(bay_.points[n - 1]), plan_.at(bay_.points[n])}};
    }
    [[nodiscard]] PlacedRun facet_height(std::size_t n) const {
        const FacetOutline& facet = outline_.facets[n - 1];
        const double x = facet.middle();
        const Point low = board_.at({x, sill(x)});
        const Point high = board_.at({x, sill(x) + facet.height});
        return {.run = {low, high}, .edge = {low, high}};
    }
    [[nodiscard]] PlacedRun chord() const {
        const Spot end = bay_.closes ? bay_.points.back() : Spot{bay_.chord, 0.0};
        const Point from = plan_.at({0.0, 0.0});
        const Point to = plan_.at(end);
        const double under = plan_.px(beside_px);
        return {.run = {Point{from.x, from.y + under}, Point{to.x, to.y + under}},
                .edge = {from, to},
                .over_own = false,
                .outward = 1.0};
    }
    [[nodiscard]] PlacedRun depth(std::size_t n) const {
        const Spot corner = bay_.points[n];
        const Point from = plan_.at({corner.first, 0.0});
        const Point to = plan_.at(corner);
        return {.run = {from, to}, .edge = {from, to}, .over_own = false, .outward = 1.0};
    }

    static double direction(Spot from, Spot to) { return std::atan2(to.second - from.second, to.first - from.first); }

    /// An arc about `at` from one direction against the clock to another; its edge is what the angle lies between.
    [[nodiscard]] PlacedRun arc(Spot at, double from, double to, double room_mm) const {
        while (to <= from) {
            to += 2.0 * std::numbers::pi;
        }
        const double radius = std::min(plan_.mm_of_px(arc_px), room_mm * 0.6);
        const auto around = [&](double angle, double reach) {
            return plan_.at({at.first + reach * std::cos(angle), at.second + reach * std::sin(angle)});
        };
        PlacedRun placed;
        for (int i = 0; i <= run_arc_steps; ++i) {
            placed.arc.push_back(around(from + (to - from) * i / run_arc_steps, radius));
        }
        const double middle = (from + to) / 2.0;
        placed.run = {placed.arc.front(), placed.arc.back()};
        placed.edge = placed.run;
        const double near = radius + plan_.mm_of_px(label_px - 6.0);
        placed.label = {around(middle, near), around(middle, near + plan_.mm_of_px(12.0))};
        return placed;
    }
    [[nodiscard]] double facet_mm(std::size_t index) const { return bay_.widths[index]; }

    [[nodiscard]] PlacedRun corner_angle(std::size_t n) const {
        const Spot corner = bay_.points[n];
        PlacedRun placed = arc(corner, direction(corner, bay_.points[n - 1]), direction(corner, bay_.points[n + 1]),
                               std::min(facet_mm(n - 1), facet_mm(n)));
        // The fold on the elevation is the same corner.
        const double x = outline_.facets[n - 1].right;
        placed.edge = {board_.at({x, sill(x)}),
                       board_.at({x, sill(x) + std::max(outline_.facets[n - 1].height, outline_.facets[n].height)})};
        return placed;
    }
    [[nodiscard]] PlacedRun mouth_angle(bool left) const {
        if (left) {
            return arc(bay_.points.front(), 0.0, direction(bay_.points[0], bay_.points[1]), facet_mm(0));
        }
        const Spot end = bay_.points.back();
        const Spot before = bay_.points[bay_.points.size() - 2];
        return arc(end, direction(end, before), std::numbers::pi, facet_mm(bay_.facets() - 1));
    }

    const DrawingBoard& board_;
    const DrawingBoard& plan_;
    const WindowOutline& outline_;
    const BayPlan& bay_;
};

PlacedRun straight(const DrawingBoard& board, Spot from, Spot to) {
    return {.run = {board.at(from), board.at(to)}, .edge = {board.at(from), board.at(to)}};
}

/// A tape along an edge, so many px to its left as one goes from `from` to `to`.
PlacedRun along_edge(const DrawingBoard& board, Spot from, Spot to) {
    PlacedRun placed = straight(board, from, to);
    const double length = std::max(1e-6, std::hypot(to.first - from.first, to.second - from.second));
    const double away = board.mm_of_px(beside_px);
    const double x = -(to.second - from.second) / length * away;
    const double y = (to.first - from.first) / length * away;
    placed.run = {board.at({from.first + x, from.second + y}), board.at({to.first + x, to.second + y})};
    placed.over_own = false;
    const bool steep = std::abs(to.second - from.second) >= std::abs(to.first - from.first);
    placed.outward = steep && to.second < from.second ? 1.0 : -1.0;
    return placed;
}

std::optional<PlacedRun> arch_run(const DrawingBoard& board, const WindowOutline& outline, std::string_view word) {
    if (word == "arch.rise") {
        const double centre = outline.x_of(Line::centre);
        const double foot = (outline.peak.front().second + outline.peak.back().second) / 2.0;
        PlacedRun placed = straight(board, {centre, foot}, {centre, outline.head.y[1]});
        for (Point& point : placed.run) {
            point.x -= board.px(beside_px);
        }
        placed.over_own = false;
        return placed;
    }
    const std::size_t n = number_of(word, "ordinate");
    if (n == 0 || n > outline.ordinates.size()) {
        return std::nullopt;
    }
    const OrdinateOutline& ordinate = outline.ordinates[n - 1];
    if (word.ends_with(".height")) {
        return straight(board, {ordinate.x, ordinate.low}, {ordinate.x, ordinate.high});
    }
    PlacedRun placed = straight(board, outline.peak.front(), {ordinate.x, ordinate.low});
    for (Point& point : placed.run) {
        point.y += board.px(beside_px);
    }
    placed.over_own = false;
    placed.outward = 1.0;
    // All these tapes lie on one line: each is named where it goes on past the one before.
    placed.label = placed.run;
    for (std::size_t i = 0; i < outline.ordinates.size(); ++i) {
        const Point before = board.at({outline.ordinates[i].x, outline.ordinates[i].low});
        if (i + 1 != n && before.x < placed.run[1].x && before.x > (*placed.label)[0].x) {
            (*placed.label)[0].x = before.x;
        }
    }
    return placed;
}

std::optional<PlacedRun> gable_run(const DrawingBoard& board, const WindowOutline& outline, std::string_view word) {
    if (word == "gable.slope.left") {
        return along_edge(board, outline.peak[0], outline.peak[1]);
    }
    if (word == "gable.slope.right") {
        return along_edge(board, outline.peak[1], outline.peak[2]);
    }
    if (word == "gable.apex.along") {
        const double tall = outline.eaves[1] - outline.sill.y[1];
        const auto left = outline.spot(0.0, 0.32);
        return straight(board, left, {*outline.apex_x, outline.at(outline.sill, *outline.apex_x) + tall * 0.32});
    }
    return std::nullopt;
}

}  // namespace

bool is_of_a_shape(std::string_view word) {
    return word.starts_with("facet.") || word.starts_with("corner.") || word.starts_with("bay.") ||
           word.starts_with("mouth.") || word.starts_with("arch.") || word.starts_with("ordinate.") ||
           word.starts_with("gable.");
}

bool has_place(const WindowOutline& outline, std::string_view word) {
    const std::size_t facets = outline.facets.size();
    if (word.starts_with("facet.")) {
        return number_of(word, "facet") >= 1 && number_of(word, "facet") <= facets;
    }
    if (const std::size_t corner = number_of(word, "corner")) {
        return corner < facets;
    }
    return !is_of_a_shape(word) || outline.is_folded() || outline.is_peaked();
}

std::optional<PlacedRun> placed_run(const DrawingBoard& board, const DrawingBoard* plan, const WindowOutline& outline,
                                    std::string_view word) {
    if (!is_of_a_shape(word) || !has_place(outline, word)) {
        return std::nullopt;
    }
    if (outline.is_folded()) {
        return plan == nullptr ? std::nullopt : BayRuns(board, *plan, outline).run(word);
    }
    return outline.shape == Shape::arch    ? arch_run(board, outline, word)
           : outline.shape == Shape::gable ? gable_run(board, outline, word)
                                           : std::nullopt;
}

}  // namespace truehang
