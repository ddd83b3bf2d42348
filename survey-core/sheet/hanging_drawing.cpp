// SPDX-License-Identifier: Apache-2.0
#include "sheet/hanging_drawing.h"

#include "sheet/hardware_drawing.h"
#include "sizing/finish.h"
#include "sizing/headings.h"
#include "sizing/layer.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

const std::string part = "curtain";

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

/// Draws the heading's own marks along the top edge of one curtain.
class HeadingHint {
public:
    HeadingHint(DrawingBoard& board, const Hanging& hanging, const LayerAsked& asked, double left, double right,
                double top)
        : board_(board), hanging_(hanging), asked_(asked), left_(left), right_(right), top_(top) {}

    void draw() {
        switch (asked_.heading) {
            case Heading::tab:
                tabs();
                break;
            case Heading::eyelet:
                eyelets();
                break;
            case Heading::slot:
                slot();
                break;
            case Heading::pencil_pleat:
                pencil();
                break;
            case Heading::pinch_pleat:
                pleats(90.0, 0.0, 0.5);
                break;
            case Heading::goblet:
                pleats(120.0, 0.5, 0.25);
                break;
            case Heading::box_pleat:
                pleats(90.0, 0.42, 0.42);
                break;
            case Heading::s_fold:
                waves();
                break;
            case Heading::roman:
                break;
        }
    }

private:
    /// So many marks as the curtain has, fewer where they would run together.
    [[nodiscard]] int marks(int wanted, double least_px) const {
        const int room = static_cast<int>((right_ - left_) / board_.mm_of_px(least_px));
        return std::clamp(wanted, 2, std::max(2, room));
    }
    [[nodiscard]] double place(int i, int count, double inset) const {
        return left_ + inset + (right_ - left_ - 2.0 * inset) * i / (count - 1);
    }
    [[nodiscard]] double pole(double x) const { return hardware_height(hanging_.outline, hanging_.layer, x); }
    [[nodiscard]] int pleat_count() const { return marks(7, 8.0); }

    void tabs() {
        const int count =
            marks(hanging_.figures != nullptr && hanging_.figures->tabs ? hanging_.figures->tabs->each : 7, 3.2);
        const double spacing = (right_ - left_) / count;
        const double half = std::min(hanging_.rules.tab_width, spacing * 0.62) / 2.0;
        for (int i = 0; i < count; ++i) {
            const double x = place(i, count, half);
            const double over = pole(x) + std::max(pole_diameter(hanging_.layer), board_.mm_of_px(3.0)) / 2.0;
            board_.rectangle(Role::ink, 0.0, {x - half, top_}, {x + half, over}, part, true);
        }
    }
    void eyelets() {
        const int count =
            marks(hanging_.figures != nullptr && hanging_.figures->eyelets ? hanging_.figures->eyelets->each : 8, 7.0);
        const double radius = std::max(hanging_.rules.eyelet_inner / 2.0 + 8.0, board_.mm_of_px(2.6));
        const double small = std::min(radius, (right_ - left_) / count * 0.46);
        for (int i = 0; i < count; ++i) {
            const double x = place(i, count, small + board_.mm_of_px(1.5));
            board_.circle(Role::ink, stroke_px::fine, {x, pole(x)}, small, part);
        }
    }
    void slot() {
        const double d = pole_diameter(hanging_.layer);
        for (const double over : {d * 0.75, -d * 0.75}) {
            board_.line(Role::hairline, stroke_px::hair, {left_, pole(left_) + over}, {right_, pole(right_) + over},
                        part);
        }
    }
    void pencil() {
        const double depth = std::min(75.0, (top_ - hanging_.outline.floor.y[0]) * 0.1);
        const int count = marks(60, 2.6);
        for (int i = 1; i + 1 < count; ++i) {
            const double x = place(i, count, 0.0);
            board_.line(Role::hairline, stroke_px::hair, {x, top_}, {x, top_ - depth}, part);
        }
        board_.line(Role::ink, stroke_px::fine, {left_, top_ - depth}, {right_, top_ - depth}, part);
        rings();
    }
    /// Pleats as wedges: `above` and `below` are half their widths at the top and at their foot, as shares of a space.
    void pleats(double depth, double above, double below) {
        const int count = pleat_count();
        const double space = (right_ - left_) / count;
        for (int i = 0; i < count; ++i) {
            const double x = place(i, count, space * 0.5);
            const double half_top = std::max(above, 0.12) * space;
            const double half_foot = asked_.heading == Heading::pinch_pleat ? 0.05 * space : below * space;
            board_.polyline(Role::ink, stroke_px::fine,
                            {{x - half_top, top_},
                             {x - half_foot, top_ - depth},
                             {x + half_foot, top_ - depth},
                             {x + half_top, top_}},
                            part);
        }
        rings();
    }
    void waves() {
        const int count = pleat_count();
        const double space = (right_ - left_) / count;
        std::vector<Spot> wave;
        for (int i = 0; i <= count * 8; ++i) {
            const double turn = i / 8.0;
            wave.push_back({left_ + turn * space, top_ - 14.0 * (1.0 - std::cos(turn * 2.0 * 3.14159265358979)) / 2.0 -
                                                      board_.mm_of_px(1.0)});
        }
        board_.polyline(Role::ink, stroke_px::fine, wave, part);
    }
    void rings() {
        if (asked_.is_on_track()) {
            return;
        }
        const int count = pleat_count();
        const double radius = std::max(pole_diameter(hanging_.layer) * 0.8, board_.mm_of_px(2.6));
        for (int i = 0; i < count; ++i) {
            const double x = place(i, count, (right_ - left_) / count * 0.5);
            board_.circle(Role::ink, stroke_px::fine, {x, pole(x)}, radius, part);
        }
    }

    DrawingBoard& board_;
    const Hanging& hanging_;
    const LayerAsked& asked_;
    double left_, right_, top_;
};

/// The height of a line of spots at x, straight on beyond its ends.
double height_on(const std::vector<Spot>& line, double x) {
    std::size_t i = 1;
    while (i + 1 < line.size() && x > line[i].first) {
        ++i;
    }
    const auto [x0, y0] = line[i - 1];
    const auto [x1, y1] = line[i];
    return x1 > x0 ? y0 + (y1 - y0) * (x - x0) / (x1 - x0) : y1;
}

class CurtainDrawer {
public:
    CurtainDrawer(DrawingBoard& board, const Hanging& hanging, const LayerAsked& asked, HangingEdges edges)
        : board_(board), hanging_(hanging), asked_(asked), edges_(edges) {}

    /// One curtain from `left` to `right`, with folds that fall from its top edge to its hem.
    void cloth(const std::vector<Spot>& top, const std::vector<Spot>& hem, double fold_mm) {
        std::vector<Spot> around = hem;
        around.insert(around.end(), top.rbegin(), top.rend());
        board_.polygon(Role::paper, 0.0, around, part, true);
        const double left = hem.front().first;
        const double right = hem.back().first;
        const double step = std::max(fold_mm, board_.mm_of_px(3.6));
        const int folds = std::clamp(static_cast<int>((right - left) / step), 2, 80);
        for (int i = 1; i < folds; ++i) {
            const double x = left + (right - left) * i / folds;
            board_.line(Role::hairline, stroke_px::hair, {x, height_on(hem, x)}, {x, height_on(top, x)}, part);
        }
        board_.polygon(Role::ink, stroke_px::fine, around, part);
        board_.polyline(Role::ink, stroke_px::strong, hem, part);
    }

    void curtain(double left, double right, double fold_mm) {
        const double top = edges_.top;
        const double bottom = std::min(edges_.bottom, top - 1.0);
        cloth({{left, top}, {right, top}}, hem_between(left, right), fold_mm);
        if (asked_.hem_at == HemAt::puddle) {
            const double spread = 90.0;
            board_.polyline(Role::ink, stroke_px::fine,
                            {{left - spread, bottom}, {left - spread * 0.5, bottom + 45.0}, {left, bottom + 60.0}},
                            part);
            board_.polyline(Role::ink, stroke_px::fine,
                            {{right + spread, bottom}, {right + spread * 0.5, bottom + 45.0}, {right, bottom + 60.0}},
                            part);
        }
        HeadingHint(board_, hanging_, asked_, left, right, top).draw();
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
            cloth(top, {{left, edges_.bottom}, {right, edges_.bottom}}, 110.0);
            left = right;
        }
    }

    void curtains(Drawn drawn) {
        const HardwareRun run = hardware_run(hanging_.outline, hanging_.layer);
        const double length = run.right - run.left;
        const double finished = hanging_.figures != nullptr && hanging_.figures->finished
                                    ? hanging_.figures->finished->width.mm()
                                    : length / asked_.curtains();
        const bool pair = asked_.curtains() == 2;
        double each = std::min(finished, length / asked_.curtains());
        double fold = 110.0;
        if (drawn == Drawn::back) {
            each = std::max(finished * heading_rule(asked_.heading).stack, board_.mm_of_px(10.0));
            fold = each / 8.0;
        }
        if (pair || asked_.layout != Layout::right) {
            curtain(run.left, run.left + each, fold);
        }
        if (pair || asked_.layout == Layout::right) {
            curtain(run.right - each, run.right, fold);
        }
    }

    void blind(Drawn drawn) {
        const WindowOutline& outline = hanging_.outline;
        const HardwareRun run = hardware_run(outline, hanging_.layer);
        const double centre = (run.left + run.right) / 2.0;
        double width = run.right - run.left;
        double fold = hanging_.rules.blind_fold;
        double up = fold + hanging_.rules.blind_headrail;
        if (hanging_.figures != nullptr && hanging_.figures->blind && hanging_.figures->finished) {
            width = hanging_.figures->finished->width.mm();
            fold = hanging_.figures->blind->fold.mm();
            up = hanging_.figures->blind->up.mm();
        }
        const double top = edges_.top;
        const double bottom = drawn == Drawn::shut ? std::min(edges_.bottom, top - 1.0) : top - up;
        const double left = centre - width / 2.0;
        const double right = centre + width / 2.0;
        board_.rectangle(Role::paper, 0.0, {left, bottom}, {right, top}, part, true);
        const double step = drawn == Drawn::shut ? 2.0 * fold : up / 5.0;
        const double first = drawn == Drawn::shut ? bottom + fold : bottom + step;
        for (double y = first; step > 1.0 && y < top - step * 0.3; y += std::max(step, board_.mm_of_px(2.5))) {
            board_.line(Role::hairline, stroke_px::hair, {left, y}, {right, y}, part);
        }
        board_.rectangle(Role::ink, stroke_px::fine, {left, bottom}, {right, top}, part);
        board_.line(Role::ink, stroke_px::strong, {left, bottom}, {right, bottom}, part);
    }

private:
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
    board.rectangle(Role::paper, 0.0, {left, top - depth}, {right, top}, "pelmet", true);
    board.rectangle(Role::ink, stroke_px::ink, {left, top - depth}, {right, top}, "pelmet");
    board.line(Role::hairline, stroke_px::hair, {left, top - depth * 0.88}, {right, top - depth * 0.88}, "pelmet");
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
        drawer.blind(drawn);
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
