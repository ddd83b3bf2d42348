// SPDX-License-Identifier: Apache-2.0
#include "sheet/heading_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {

namespace {

// How things look that no figure says: common practice, no source.
constexpr double tape_depth = 75.0;   ///< of a pencil pleat’s tape
constexpr double pinch_depth = 85.0;  ///< where a pinch pleat is caught, below the top
constexpr double goblet_depth = 120.0;
constexpr double box_depth = 100.0;
constexpr double cloth_a_gather = 95.0;  ///< flat cloth that one gather of a slot takes
constexpr double closest_px = 2.6;       ///< folds that would lie closer aren't drawn

const std::string fold_part = "fold";

}  // namespace

double sag_at(const DrawnHeading& heading, const std::vector<double>& fixings, double u) {
    if (heading.asked.heading != Heading::tab) {
        return 0.0;
    }
    const auto after = std::ranges::upper_bound(fixings, u);
    if (after == fixings.begin() || after == fixings.end()) {
        return 0.0;
    }
    const double from = *(after - 1);
    const double gap = *after - from;
    const double deepest = std::min(26.0, 0.16 * gap * heading.curtain.width());
    const double share = (u - from) / gap;
    return deepest * 4.0 * share * (1.0 - share);
}

namespace {

/// The folds of one curtain.
class FoldDrawer {
public:
    FoldDrawer(const ClothBrush& brush, const DrawnHeading& heading, const std::vector<double>& fixings)
        : brush_(brush), heading_(heading), curtain_(heading.curtain), fixings_(fixings) {}

    void draw() {
        if (fixings_.size() > 1 &&
            !shows((fixings_.back() - fixings_.front()) / static_cast<double>(fixings_.size() - 1))) {
            packed();
            return;
        }
        switch (heading_.asked.heading) {
            case Heading::tab:
                between(0.0);
                break;
            case Heading::eyelet:
                waves(0);
                break;
            case Heading::s_fold:
                waves(1);
                break;
            case Heading::slot:
                gathers(0.0);
                break;
            case Heading::pencil_pleat:
                gathers(tape_depth);
                break;
            case Heading::pinch_pleat:
                from_pleats(pinch_depth);
                break;
            case Heading::goblet:
                from_pleats(goblet_depth);
                break;
            case Heading::box_pleat:
                boxes();
                break;
            case Heading::roman:
                break;
        }
    }

private:
    [[nodiscard]] double mm_at(double share) const { return share * curtain_.width(); }
    /// Whether folds so far apart can be told from each other.
    [[nodiscard]] bool shows(double apart) const { return mm_at(apart) >= brush_.board().mm_of_px(closest_px); }
    [[nodiscard]] double foot(double u) const { return curtain_.hem_at(curtain_.x_at(u, curtain_.bottom())); }

    /// From `below` the top edge, over this share of the drop.
    void crease(double u, double below, double share) {
        const double from = curtain_.top - below;
        const double to = share >= 1.0 ? foot(u) : from - (from - foot(u)) * share;
        brush_.line(Role::hairline, stroke_px::hair, curtain_.fold(u, from, to), fold_part);
    }
    void shade(double u, double other, double below) {
        brush_.shade(curtain_.flank(u, other, curtain_.top - below, std::max(foot(u), foot(other))), fold_part);
    }

    /// Pushed together: as many folds as can be told from each other.
    void packed() {
        const int count = std::max(2, static_cast<int>(curtain_.width() / brush_.board().mm_of_px(closest_px)));
        for (int i = 1; i < count; ++i) {
            const double u = static_cast<double>(i) / count;
            if (i % 2 == 0) {
                shade(u, u + 0.5 / count, 4.0);
            }
            crease(u, 4.0, i % 3 == 2 ? 0.8 : 1.0);
        }
    }

    /// One deep fold in each gap, its flank in the shade, and the cloth rounding out under each fixing.
    void between(double below) {
        for (std::size_t i = 1; i < fixings_.size(); ++i) {
            const double from = fixings_[i - 1];
            const double gap = fixings_[i] - from;
            if (!shows(gap)) {
                continue;
            }
            const double valley = from + 0.5 * gap;
            const double sag = below + sag_at(heading_, fixings_, valley);
            shade(valley, from + 0.82 * gap, sag + 4.0);
            crease(valley, sag, 1.0);
            if (shows(gap / 3.0)) {
                crease(from + 0.2 * gap, below + 60.0, 0.55 + 0.1 * static_cast<double>(i % 3));
                crease(from + 0.82 * gap, below + 30.0, 1.0);
            }
        }
    }

    /// Even waves: every second one, from `first`, lies behind.
    void waves(std::size_t first) {
        for (std::size_t i = 1; i < fixings_.size(); ++i) {
            const double from = fixings_[i - 1];
            const double to = fixings_[i];
            if (!shows(to - from)) {
                continue;
            }
            if ((i + first) % 2 == 0) {
                shade(from, to, 0.0);
            } else if (shows((to - from) / 3.0)) {
                crease(from + 0.36 * (to - from), 90.0, 0.62);
            }
            crease(from, 0.0, 1.0);
            if (i + 1 == fixings_.size()) {
                crease(to, 0.0, 1.0);
            }
        }
    }

    /// Many small folds of their own lengths, as gathering makes them.
    void gathers(double below) {
        const double flat = heading_.flat > 0.0 ? heading_.flat : 2.0 * curtain_.width();
        int count = std::clamp(static_cast<int>(std::lround(flat / cloth_a_gather)), 3, 200);
        while (count > 3 && !shows(1.0 / count)) {
            --count;
        }
        constexpr std::array<double, 5> lengths{1.0, 0.42, 1.0, 0.7, 0.28};
        for (int i = 1; i < count; ++i) {
            const double u = (i + (i % 3 == 0 ? 0.18 : -0.1)) / count;
            if (i % 3 == 0 && shows(0.45 / count)) {
                shade(u, u + 0.42 / count, below);
            }
            crease(u, below, lengths[static_cast<std::size_t>(i) % lengths.size()]);
        }
    }

    /// From a caught pleat one fold goes on to the hem, a second opens beside it; between two the cloth hangs back.
    void from_pleats(double depth) {
        for (std::size_t i = 0; i < fixings_.size(); ++i) {
            const double u = fixings_[i];
            if (i + 1 < fixings_.size() && shows(fixings_[i + 1] - u)) {
                const double gap = fixings_[i + 1] - u;
                shade(u + 0.34 * gap, u + 0.66 * gap, 10.0);
                crease(u + 0.34 * gap, 10.0, 1.0);
                if (shows(gap / 3.0)) {
                    crease(u + 0.66 * gap, 10.0, 1.0);
                }
            }
            crease(u, depth + 6.0, 0.75);
        }
    }

    /// A flat face over each pleat, and the cloth between two set back.
    void boxes() {
        for (std::size_t i = 0; i < fixings_.size(); ++i) {
            if (i + 1 == fixings_.size() || !shows(fixings_[i + 1] - fixings_[i])) {
                continue;
            }
            const double gap = fixings_[i + 1] - fixings_[i];
            const double left = fixings_[i] + 0.34 * gap;
            const double right = fixings_[i + 1] - 0.34 * gap;
            shade(left, right, 0.0);
            crease(left, 0.0, 1.0);
            crease(right, 0.0, 1.0);
        }
    }

    const ClothBrush& brush_;
    const DrawnHeading& heading_;
    const HungCurtain& curtain_;
    const std::vector<double>& fixings_;
};

/// The heading's own marks along the top edge of one curtain.
class HeadingDrawer {
public:
    HeadingDrawer(const ClothBrush& brush, const DrawnHeading& heading, const std::vector<double>& fixings)
        : brush_(brush), heading_(heading), curtain_(heading.curtain), fixings_(fixings) {}

    void draw() {
        switch (heading_.asked.heading) {
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
                pinched();
                break;
            case Heading::goblet:
                goblets();
                break;
            case Heading::box_pleat:
                boxes();
                break;
            case Heading::s_fold:
                wave();
                break;
            case Heading::roman:
                break;
        }
    }

private:
    [[nodiscard]] double x(std::size_t i) const { return curtain_.left + fixings_[i] * curtain_.width(); }
    /// The same of something `half` wide to both sides: at an edge it lies within the curtain.
    [[nodiscard]] double within(std::size_t i, double half) const {
        return std::clamp(x(i), curtain_.left + half, std::max(curtain_.left + half, curtain_.right - half));
    }
    /// Half of the least room between two fixings.
    [[nodiscard]] double room() const {
        double least = curtain_.width();
        for (std::size_t i = 1; i < fixings_.size(); ++i) {
            least = std::min(least, x(i) - x(i - 1));
        }
        return least / 2.0;
    }
    [[nodiscard]] double thick() const { return std::max(heading_.thick, brush_.board().mm_of_px(stroke_px::heavy)); }
    /// The width of a line around something small, so that neighbours don't run together.
    [[nodiscard]] double fine() const { return room() < brush_.board().mm_of_px(3.0) ? 0.6 : stroke_px::fine; }
    void closed(const std::vector<Spot>& spots, const char* part) {
        brush_.fill(spots, part);
        brush_.edge(fine(), spots, part);
    }

    /// A pleat lies on the cloth.
    void pleat(const std::vector<Spot>& spots) {
        brush_.fill(spots, "pleat");
        brush_.outline(Role::ink, fine(), spots, "pleat");
    }

    void tabs() {
        const double half = std::min(heading_.rules.tab_width / 2.0, 0.72 * room());
        for (std::size_t i = 0; i < fixings_.size(); ++i) {
            const double over = heading_.pole(x(i)) + thick() / 2.0 + 5.0;
            closed({{x(i) - half, curtain_.top}, {x(i) - half, over}, {x(i) + half, over}, {x(i) + half, curtain_.top}},
                   "tab");
        }
    }

    /// Rings in the cloth; where it passes behind the pole, the pole is seen.
    void eyelets() {
        for (std::size_t i = 2; i < fixings_.size(); i += 2) {
            Stroke pole{.role = Role::ink,
                        .width = brush_.board().px(thick() / brush_.board().mm_of_px(1.0)),
                        .part = "hardware"};
            for (const double at : {x(i - 1), x(i)}) {
                pole.points.push_back(brush_.board().at({at, heading_.pole(at)}));
            }
            brush_.board().stroke(std::move(pole));
        }
        const double up = std::max(heading_.rules.eyelet_inner / 2.0 + 8.0, brush_.board().mm_of_px(2.6));
        const double across = std::min(0.72 * up, 0.8 * room());
        for (std::size_t i = 0; i < fixings_.size(); ++i) {
            closed(oval({x(i), heading_.pole(x(i))}, across, up), "eyelet");
        }
    }

    /// A pocket that is gathered on the pole, its frill above.
    void slot() {
        const double reach = thick() / 2.0 + 6.0;
        for (const double over : {reach, -reach}) {
            std::vector<Spot> stitches;
            constexpr int steps = 40;
            for (int i = 0; i <= steps; ++i) {
                const double at = curtain_.left + curtain_.width() * i / steps;
                stitches.emplace_back(at, heading_.pole(at) + over + (i % 2 == 0 ? 2.0 : -2.0));
            }
            brush_.line(Role::ink, 0.7, stitches, "pocket");
        }
        const double step = std::max(26.0, brush_.board().mm_of_px(3.2));
        for (double at = curtain_.left + step / 2.0; at < curtain_.right; at += step) {
            const double pole = heading_.pole(at);
            brush_.line(Role::hairline, stroke_px::hair, {{at, curtain_.top}, {at + 3.0, pole + reach}}, "pocket");
            brush_.line(Role::hairline, stroke_px::hair, {{at + 3.0, pole + reach}, {at, pole - reach}}, "pocket");
        }
    }

    void pencil() {
        const double step = std::max(13.0, brush_.board().mm_of_px(2.6));
        const int count = std::max(2, static_cast<int>(curtain_.width() / step));
        for (int i = 1; i < count; ++i) {
            const double at = curtain_.left + curtain_.width() * i / count;
            brush_.line(Role::hairline, stroke_px::hair, {{at, curtain_.top}, {at, curtain_.top - tape_depth}}, "tape");
        }
        brush_.line(Role::ink, 0.7,
                    {{curtain_.left, curtain_.top - tape_depth}, {curtain_.right, curtain_.top - tape_depth}}, "tape");
        rings();
    }

    /// Three folds that meet where they are caught, and open above and below.
    void pinched() {
        const double half = std::min(38.0, 0.66 * room());
        const double top = curtain_.top;
        const double caught = top - pinch_depth;
        for (std::size_t i = 0; i < fixings_.size(); ++i) {
            const double at = within(i, half);
            pleat({{at - half, top}, {at - 0.16 * half, caught}, {at + 0.16 * half, caught}, {at + half, top}});
            brush_.line(Role::hairline, stroke_px::hair, {{at - 0.3 * half, top}, {at, caught}, {at + 0.3 * half, top}},
                        "pleat-fold");
            brush_.line(Role::hairline, stroke_px::hair,
                        {{at - 0.7 * half, caught - 110.0}, {at, caught}, {at + 0.7 * half, caught - 110.0}},
                        "pleat-fold");
            brush_.line(Role::ink, stroke_px::ink, {{at - 0.3 * half, caught}, {at + 0.3 * half, caught}},
                        "pleat-stitch");
        }
        rings();
    }

    /// A cup with an open rim, caught at its foot.
    void goblets() {
        const double half = std::min(40.0, 0.7 * room());
        const double top = curtain_.top;
        for (std::size_t i = 0; i < fixings_.size(); ++i) {
            const double at = within(i, half);
            pleat({{at - half, top},
                   {at - 0.92 * half, top - 0.45 * goblet_depth},
                   {at - 0.55 * half, top - 0.8 * goblet_depth},
                   {at - 0.2 * half, top - goblet_depth},
                   {at + 0.2 * half, top - goblet_depth},
                   {at + 0.55 * half, top - 0.8 * goblet_depth},
                   {at + 0.92 * half, top - 0.45 * goblet_depth},
                   {at + half, top}});
            brush_.shade(oval({at, top}, half, 0.26 * half), "pleat-fold");
            brush_.outline(Role::ink, fine(), oval({at, top}, half, 0.26 * half), "pleat-fold");
            brush_.line(Role::hairline, stroke_px::hair,
                        {{at - 0.6 * half, top - goblet_depth - 90.0},
                         {at, top - goblet_depth},
                         {at + 0.6 * half, top - goblet_depth - 90.0}},
                        "pleat-fold");
        }
        rings();
    }

    /// Flat faces side by side, stitched down to the foot of the heading.
    void boxes() {
        const double half = 0.66 * room();
        const double top = curtain_.top;
        for (std::size_t i = 0; i < fixings_.size(); ++i) {
            const double at = within(i, half);
            pleat({{at - half, top}, {at - half, top - box_depth}, {at + half, top - box_depth}, {at + half, top}});
        }
        rings();
    }

    /// The top edge swings forward and back between the gliders.
    void wave() {
        std::vector<Spot> edge;
        constexpr int steps = 6;
        for (std::size_t i = 1; i < fixings_.size(); ++i) {
            for (int s = 0; s <= steps; ++s) {
                const double share = static_cast<double>(s) / steps;
                const double swing = (i % 2 == 1 ? 1.0 : -0.55) * 16.0 * share * (1.0 - share);
                edge.emplace_back(x(i - 1) + share * (x(i) - x(i - 1)), curtain_.top - 12.0 - 2.0 * swing);
            }
        }
        brush_.line(Role::ink, 0.7, edge, "wave");
        for (std::size_t i = 0; i < fixings_.size(); ++i) {
            brush_.line(Role::ink, stroke_px::ink, {{x(i), curtain_.top}, {x(i), curtain_.top - 12.0}}, "glider");
        }
    }

    /// One ring on the pole over each pleat or hook; on a track the cloth covers the gliders.
    void rings() {
        if (heading_.asked.is_on_track()) {
            return;
        }
        const double up = std::max(heading_.thick / 2.0 + 9.0, brush_.board().mm_of_px(2.6));
        const double across = std::min(0.5 * up, 0.8 * room());
        for (std::size_t i = 0; i < fixings_.size(); ++i) {
            const double pole = heading_.pole(x(i));
            Stroke ring{.form = Form::polygon, .role = Role::ink, .width = brush_.board().px(fine()), .part = "ring"};
            for (const Spot& spot : oval({x(i), pole - 3.0}, across, up)) {
                ring.points.push_back(brush_.board().at(spot));
            }
            brush_.board().stroke(std::move(ring));
        }
    }

    const ClothBrush& brush_;
    const DrawnHeading& heading_;
    const HungCurtain& curtain_;
    const std::vector<double>& fixings_;
};

}  // namespace

void draw_folds(const ClothBrush& brush, const DrawnHeading& heading, const std::vector<double>& fixings) {
    FoldDrawer(brush, heading, fixings).draw();
}

void draw_heading(const ClothBrush& brush, const DrawnHeading& heading, const std::vector<double>& fixings) {
    HeadingDrawer(brush, heading, fixings).draw();
}

}  // namespace truehang
