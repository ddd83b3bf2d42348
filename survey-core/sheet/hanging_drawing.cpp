// SPDX-License-Identifier: Apache-2.0
#include "sheet/hanging_drawing.h"

#include "sheet/blind_drawing.h"
#include "sheet/hardware_drawing.h"
#include "sheet/heading_drawing.h"
#include "sizing/finish.h"
#include "sizing/headings.h"
#include "sizing/layer.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {

namespace {

const std::string curtain_part = "curtain";

double hang_of_tabs(const Hanging& hanging) {
    return hanging.figures != nullptr && hanging.figures->tabs ? hanging.figures->tabs->hang.mm()
                                                               : hanging.rules.tab_hang;
}

/// Where the bottom edge is meant to be, while no drop was worked.
double wished_bottom(const Hanging& hanging, const LayerAsked& asked, double x) {
    const WindowOutline& outline = hanging.outline;
    const double floor = outline.at(outline.floor, x);
    const double sill = outline.at(outline.sill, x);
    switch (asked.hem_at) {
        case HemAt::sill:
            return sill + hanging.rules.sill_clearance;
        case HemAt::below_sill:
            return sill - hanging.rules.apron;
        case HemAt::given:
            return floor + (asked.treatment->bottom ? asked.treatment->bottom->mm() : 0.0);
        case HemAt::break_:
        case HemAt::puddle:
            return floor;
        case HemAt::floor:
            break;
    }
    return floor + hanging.rules.floor_clearance;
}

/// Half as far out as the puddle is long, and how high it heaps; common practice, no source.
constexpr double pool_height = 70.0;

class CurtainDrawer {
public:
    CurtainDrawer(DrawingBoard& board, const Hanging& hanging, const LayerAsked& asked, HangingEdges edges)
        : board_(board), brush_(board, hanging.cloth), hanging_(hanging), asked_(asked), edges_(edges) {}

    void curtains(Drawn drawn) {
        const HardwareRun run = hardware_run(hanging_.outline, hanging_.layer);
        const double length = run.right - run.left;
        const double finished = hanging_.figures != nullptr && hanging_.figures->finished
                                    ? hanging_.figures->finished->width.mm()
                                    : length / asked_.curtains();
        const bool pair = asked_.curtains() == 2;
        double each = std::min(finished, length / asked_.curtains());
        if (drawn == Drawn::back) {
            each = std::max(finished * heading_rule(asked_.heading).stack, board_.mm_of_px(10.0));
        }
        if (pair || asked_.layout != Layout::right) {
            curtain(run.left, run.left + each, true, drawn);
        }
        if (pair || asked_.layout == Layout::right) {
            curtain(run.right - each, run.right, false, drawn);
        }
    }

    /// Curtains whose top follows the window: they don't draw.
    void shaped() {
        double left = hanging_.outline.x_of(Line::left);
        for (const CurtainTop& curtain_top : hanging_.figures->tops) {
            std::vector<Spot> top;
            for (const TopPoint& point : curtain_top.outline) {
                top.emplace_back(left + point.hung.mm(), edges_.bottom + point.drop.mm());
            }
            const double right = top.back().first;
            along(top, {{left, edges_.bottom}, {right, edges_.bottom}});
            left = right;
        }
    }

private:
    [[nodiscard]] DrawnHeading heading_of(const HungCurtain& curtain) const {
        const bool cut = hanging_.figures != nullptr && hanging_.figures->cloth;
        return {curtain,
                asked_,
                hanging_.figures,
                hanging_.rules,
                [this](double x) { return hardware_height(hanging_.outline, hanging_.layer, x); },
                pole_diameter(hanging_.layer),
                cut ? hanging_.figures->cloth->flat.mm() : 0.0};
    }

    void curtain(double left, double right, bool leads_right, Drawn drawn) {
        HungCurtain hung{.left = left,
                         .right = right,
                         .top = edges_.top,
                         .hem = hem_between(left, right),
                         .leads_right = leads_right,
                         .drawn_back = drawn == Drawn::back,
                         .waist = std::nullopt};
        if (hung.drawn_back) {
            tie_back(hung);
        }
        const DrawnHeading heading = heading_of(hung);
        const std::vector<double> places = fixings(asked_, hanging_.figures, leads_right);
        const std::vector<Spot> around = outline_of(hung, heading, places);
        brush_.fill(around, curtain_part);
        draw_folds(brush_, heading, places);
        brush_.edge(stroke_px::fine, around, curtain_part);
        board_.polyline(Role::ink, stroke_px::strong, hung.hem, curtain_part);
        on_the_floor(hung);
        draw_waist(hung);
        draw_heading(brush_, heading, places);
    }

    [[nodiscard]] static std::vector<Spot> outline_of(const HungCurtain& hung, const DrawnHeading& heading,
                                                      const std::vector<double>& places) {
        std::vector<Spot> around = hung.hem;
        const auto right = hung.fold(1.0, hung.hem.back().second, hung.top);
        around.insert(around.end(), right.begin() + 1, right.end());
        if (asked_sags(heading)) {
            constexpr int steps = 6;
            for (std::size_t i = places.size(); i-- > 1;) {
                for (int s = steps; s >= 0; --s) {
                    const double u = places[i - 1] + (places[i] - places[i - 1]) * s / steps;
                    around.emplace_back(hung.left + u * hung.width(), hung.top - sag_at(heading, places, u));
                }
            }
        }
        const auto left = hung.fold(0.0, hung.top, hung.hem.front().second);
        around.insert(around.end(), left.begin(), left.end() - 1);
        return around;
    }
    [[nodiscard]] static bool asked_sags(const DrawnHeading& heading) { return heading.asked.heading == Heading::tab; }

    /// Where the curtain is tied, where the figures know how high that is.
    void tie_back(HungCurtain& hung) const {
        if (hanging_.figures == nullptr || !hanging_.figures->making.tie_back ||
            !hanging_.figures->making.tie_back->height) {
            return;
        }
        const TieBack& tie = *hanging_.figures->making.tie_back;
        const double outer = hung.leads_right ? hung.left : hung.right;
        const double inward = hung.leads_right ? 1.0 : -1.0;
        const double y = hanging_.outline.at(hanging_.outline.floor, outer) + tie.height->mm();
        if (y <= hung.bottom() + 50.0 || y >= hung.top - 50.0) {
            return;
        }
        const auto spread = [&](double share) {
            const double other = outer + inward * share * hung.width();
            return std::pair(std::min(outer, other), std::max(outer, other));
        };
        const auto [left, right] = spread(0.55);
        hung.waist = Waist{y, left, right, tie.kind == "holdback"};
        const auto [foot_left, foot_right] = spread(0.86);
        hung.hem = hem_between(foot_left, foot_right);
    }

    void draw_waist(const HungCurtain& hung) const {
        if (!hung.waist) {
            return;
        }
        const Waist& waist = *hung.waist;
        if (waist.holdback) {
            const double x = hung.leads_right ? waist.right : waist.left;
            const auto knob =
                oval({x, waist.y}, std::max(26.0, board_.mm_of_px(3.0)), std::max(26.0, board_.mm_of_px(3.0)));
            board_.polygon(Role::paper, 0.0, knob, "tie-back", true);
            board_.polygon(Role::ink, stroke_px::ink, knob, "tie-back");
            return;
        }
        const double half = std::max(hanging_.rules.tie_back_width / 2.0, board_.mm_of_px(3.0));
        const double rise = hung.leads_right ? half * 0.5 : -half * 0.5;
        const std::vector<Spot> band{{waist.left, waist.y + half + rise},
                                     {waist.left, waist.y - half + rise},
                                     {waist.right, waist.y - half - rise},
                                     {waist.right, waist.y + half - rise}};
        brush_.shade(band, "tie-back");
        brush_.outline(Role::ink, stroke_px::fine, band, "tie-back");
    }

    /// Cloth that lies on the floor: one soft bend of a break, the heap of a puddle.
    void on_the_floor(const HungCurtain& hung) const {
        if (asked_.hem_at == HemAt::break_) {
            const double high = std::max(70.0, board_.mm_of_px(5.0));
            for (double u = 0.08; u < 1.0; u += 0.21) {
                const double x = hung.x_at(u, hung.bottom());
                const double y = hung.hem_at(x);
                const double wide = 0.07 * hung.width();
                brush_.line(Role::ink, 0.7, {{x - wide, y + high * 0.55}, {x, y + high}, {x + wide, y + high * 0.5}},
                            "break");
            }
        } else if (asked_.hem_at == HemAt::puddle) {
            pool(hung);
        }
    }

    void pool(const HungCurtain& hung) const {
        const double outward = hanging_.rules.puddle_on_floor * 0.6;
        const double meeting = hung.drawn_back ? outward : 12.0;
        const double left = hung.hem.front().first - (hung.leads_right ? outward : meeting);
        const double right = hung.hem.back().first + (hung.leads_right ? meeting : outward);
        const double high = std::max(pool_height, board_.mm_of_px(6.0));
        constexpr std::array<double, 9> heap{0.0, 0.5, 0.86, 0.62, 1.0, 0.66, 0.9, 0.55, 0.0};
        std::vector<Spot> around;
        for (std::size_t i = 0; i < heap.size(); ++i) {
            const double x = left + (right - left) * static_cast<double>(i) / (heap.size() - 1);
            around.emplace_back(x, hung.hem_at(x) + high * heap[i]);
        }
        brush_.fill(around, "pool");
        brush_.edge(stroke_px::fine, around, "pool");
        for (std::size_t i = 2; i + 2 < heap.size(); i += 2) {
            brush_.line(Role::hairline, stroke_px::hair,
                        {{around[i].first, around[i].second},
                         {around[i].first + 0.04 * (right - left), around[i].second - 0.45 * high},
                         {around[i].first - 0.03 * (right - left), hung.hem_at(around[i].first) + 0.12 * high}},
                        "pool");
        }
    }

    /// Cloth between a top edge of its own and a hem.
    void along(const std::vector<Spot>& top, const std::vector<Spot>& hem) const {
        std::vector<Spot> around = hem;
        around.insert(around.end(), top.rbegin(), top.rend());
        brush_.fill(around, curtain_part);
        const double left = hem.front().first;
        const double right = hem.back().first;
        const double step = std::max(110.0, board_.mm_of_px(3.6));
        const int folds = std::clamp(static_cast<int>((right - left) / step), 2, 80);
        for (int i = 1; i < folds; ++i) {
            const double x = left + (right - left) * i / folds;
            brush_.line(Role::hairline, stroke_px::hair, {{x, height_on(hem, x)}, {x, height_on(top, x)}}, "fold");
        }
        brush_.edge(stroke_px::fine, around, curtain_part);
        board_.polyline(Role::ink, stroke_px::strong, hem, curtain_part);
    }

    /// The hem between two places: straight across, or at each plumb line by its own drop.
    [[nodiscard]] std::vector<Spot> hem_between(double left, double right) const {
        const double bottom = std::min(edges_.bottom, edges_.top - 1.0);
        std::vector<Spot> at_lines;
        if (hanging_.figures != nullptr && hanging_.figures->finished) {
            for (const DropThere& drop : hanging_.figures->finished->drops) {
                for (const Line line : all_lines) {
                    if (word_of(line) == drop.line) {
                        at_lines.emplace_back(hanging_.outline.x_of(line), edges_.top - drop.drop.mm());
                    }
                }
            }
        }
        if (at_lines.size() < 2) {
            return {{left, bottom}, {right, bottom}};
        }
        std::vector<Spot> hem{{left, height_on(at_lines, left)}};
        for (const Spot& spot : at_lines) {
            if (spot.first > left && spot.first < right) {
                hem.push_back(spot);
            }
        }
        hem.emplace_back(right, height_on(at_lines, right));
        return hem;
    }

    DrawingBoard& board_;
    ClothBrush brush_;
    const Hanging& hanging_;
    const LayerAsked& asked_;
    HangingEdges edges_;
};

void draw_pelmet(DrawingBoard& board, const Hanging& hanging, const HangingEdges& edges) {
    const PelmetAsked& asked = *hanging.layer.treatment->pelmet;
    const HardwareRun run = hardware_run(hanging.outline, hanging.layer);
    double depth = asked.depth ? asked.depth->mm() : (edges.top - edges.bottom) * hanging.rules.pelmet_share;
    if (hanging.figures != nullptr && hanging.figures->pelmet) {
        depth = hanging.figures->pelmet->depth.mm();
    }
    const double left = run.left - hanging.rules.pelmet_over;
    const double right = run.right + hanging.rules.pelmet_over;
    const double top = std::max(edges.top, hanging.outline.at(hanging.outline.pole, (left + right) / 2.0) + 30.0);
    const ClothBrush brush(board, hanging.cloth);
    const std::vector<Spot> around{{left, top - depth}, {right, top - depth}, {right, top}, {left, top}};
    brush.fill(around, "pelmet");
    brush.edge(stroke_px::ink, around, "pelmet");
    brush.line(Role::hairline, stroke_px::hair, {{left, top - depth * 0.88}, {right, top - depth * 0.88}}, "pelmet");
}

}  // namespace

std::optional<HangingEdges> hanging_edges(const Hanging& hanging) {
    const auto asked = asked_of(hanging.layer);
    if (!asked) {
        return std::nullopt;
    }
    const WindowOutline& outline = hanging.outline;
    const double x = outline.x_of(outline.pole_line);
    HangingEdges edges;
    if (asked->is_inside_blind()) {
        const auto& head = outline.head.y;
        const auto& sill = outline.sill.y;
        edges.top = *std::ranges::min_element(head);
        edges.bottom = *std::ranges::max_element(sill);
    } else {
        edges.top = outline.at(outline.pole, x);
        if (!asked->is_blind()) {
            edges.top += top_over_pole(*asked, Length::mm(hang_of_tabs(hanging)), hanging.rules).mm();
        }
        edges.bottom = wished_bottom(hanging, *asked, x);
    }
    if (asked->is_shaped()) {
        const double middle = outline.x_of(Line::centre);
        edges.bottom = wished_bottom(hanging, *asked, middle);
        edges.top = outline.at(outline.head, middle);
        if (hanging.figures != nullptr && hanging.figures->finished) {
            edges.top = edges.bottom + hanging.figures->finished->drop.mm();
        }
    } else if (hanging.figures != nullptr && hanging.figures->finished) {
        edges.bottom = edges.top - hanging.figures->finished->drop.mm();
    }
    edges.bottom = std::max(edges.bottom, outline.at(outline.floor, x));
    return edges;
}

void draw_hanging(DrawingBoard& board, const Hanging& hanging, Drawn drawn) {
    const auto asked = asked_of(hanging.layer);
    const auto edges = hanging_edges(hanging);
    if (!asked || !edges || drawn == Drawn::absent) {
        return;
    }
    CurtainDrawer drawer(board, hanging, *asked, *edges);
    if (asked->is_blind()) {
        draw_blind(board, hanging, *edges, drawn);
    } else if (asked->is_shaped()) {
        if (hanging.figures != nullptr && !hanging.figures->tops.empty()) {
            drawer.shaped();
        }
    } else {
        drawer.curtains(drawn);
    }
    if (hanging.layer.treatment->pelmet) {
        draw_pelmet(board, hanging, *edges);
    }
}

}  // namespace truehang
