// SPDX-License-Identifier: Apache-2.0
#include "sheet/opening_drawing.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

class OpeningDrawer {
public:
    OpeningDrawer(DrawingBoard& board, const WindowOutline& outline)
        : board_(board),
          outline_(outline),
          sides_(outline.height_known ? Role::ink : Role::guess),
          ends_(outline.width_known ? Role::ink : Role::guess) {}

    void draw() {
        if (outline_.is_folded()) {
            draw_facets();
        } else if (outline_.is_peaked()) {
            draw_peaked();
        } else {
            draw_upright();
        }
    }

private:
    [[nodiscard]] Spot spot(double u, double v) const { return outline_.spot(u, v); }
    [[nodiscard]] double sill_at(double x) const { return outline_.at(outline_.sill, x); }

    void draw_upright() {
        board_.polygon(
            Role::wash, 0.0,
            {spot(0, 0), spot(0.5, 0), spot(1, 0), spot(1, 0.5), spot(1, 1), spot(0.5, 1), spot(0, 1), spot(0, 0.5)},
            "opening");
        draw_glazing(sides_ == Role::ink && ends_ == Role::ink ? Role::hairline : Role::guess);
        draw_sides();
        board_.polyline(ends_, stroke_px::ink, {spot(0, 1), spot(0.5, 1), spot(1, 1)}, "opening");
        if (outline_.frame) {
            draw_architrave();
        }
        if (outline_.door) {
            board_.polyline(ends_, stroke_px::ink, {spot(0, 0), spot(0.5, 0), spot(1, 0)}, "opening");
            return;
        }
        draw_sill(ends_, {spot(0, 0), spot(0.5, 0), spot(1, 0)});
    }

    void draw_sides() {
        board_.polyline(sides_, stroke_px::ink, {spot(0, 0), spot(0, 0.5), spot(0, 1)}, "opening");
        board_.polyline(sides_, stroke_px::ink, {spot(1, 0), spot(1, 0.5), spot(1, 1)}, "opening");
    }

    void draw_sill(Role role, std::vector<Spot> sill) {
        const double over = std::min(60.0, board_.mm_of_px(9.0));
        sill.front().first -= over;
        sill.back().first += over;
        board_.polyline(role, role == Role::ink ? stroke_px::heavy : stroke_px::fine, sill, "sill");
    }

    void draw_glazing(Role role) {
        const double inset = std::clamp(outline_.width() * 0.06, 1.0, 90.0);
        const double u = inset / outline_.width();
        const double tall = outline_.head.y[1] - outline_.sill.y[1];
        const double low = outline_.door ? std::min(0.34, 700.0 / tall) : std::min(0.3, inset * 0.55 / tall);
        const double high = 1.0 - std::min(0.3, inset * 0.8 / tall);
        const double transom = low + (high - low) * 0.6;
        const auto pane = [&](double from, double to) {
            board_.polygon(role, stroke_px::hair, {spot(from, low), spot(to, low), spot(to, high), spot(from, high)},
                           "glazing");
        };
        if (outline_.door) {
            pane(u, 0.5 - u / 2.0);
            pane(0.5 + u / 2.0, 1.0 - u);
            board_.line(role, stroke_px::hair, spot(0.5, 0.0), spot(0.5, 1.0), "glazing");
            return;
        }
        pane(u, 1.0 - u);
        board_.line(role, stroke_px::hair, spot(0.5, low), spot(0.5, high), "glazing");
        board_.line(role, stroke_px::hair, spot(u, transom), spot(1.0 - u, transom), "glazing");
    }

    void draw_architrave() {
        const double wide = std::min(70.0, board_.mm_of_px(9.0));
        auto low_left = spot(0, 0);
        auto high_left = spot(0, 1);
        auto high_right = spot(1, 1);
        auto low_right = spot(1, 0);
        board_.polyline(Role::hairline, stroke_px::hair,
                        {{low_left.first - wide, low_left.second},
                         {high_left.first - wide, high_left.second + wide},
                         {high_right.first + wide, high_right.second + wide},
                         {low_right.first + wide, low_right.second}},
                        "frame");
    }

    // ---- Facets

    void draw_facets() {
        std::vector<Spot> sill;
        for (const FacetOutline& facet : outline_.facets) {
            draw_facet(facet);
            for (const double x : {facet.left, facet.middle(), facet.right}) {
                sill.emplace_back(x, sill_at(x));
            }
        }
        for (std::size_t i = 0; i + 1 < outline_.facets.size(); ++i) {
            draw_corner(outline_.facets[i], outline_.facets[i + 1]);
        }
        const bool known = std::ranges::all_of(outline_.facets, &FacetOutline::width_known);
        draw_sill(known ? Role::ink : Role::guess, sill);
    }

    void draw_facet(const FacetOutline& facet) {
        const std::array<double, 3> x{facet.left, facet.middle(), facet.right};
        std::vector<Spot> low;
        std::vector<Spot> high;
        for (const double each : x) {
            low.emplace_back(each, sill_at(each));
            high.emplace_back(each, sill_at(each) + facet.height);
        }
        std::vector<Spot> whole = low;
        whole.insert(whole.end(), high.rbegin(), high.rend());
        board_.polygon(Role::wash, 0.0, whole, "opening");
        const bool known = facet.width_known && outline_.height_known;
        draw_facet_glazing(facet, known ? Role::hairline : Role::guess);
        const Role side = facet.width_known ? sides_ : Role::guess;
        board_.line(side, stroke_px::ink, low.front(), high.front(), "opening");
        board_.line(side, stroke_px::ink, low.back(), high.back(), "opening");
        board_.polyline(facet.width_known ? Role::ink : Role::guess, stroke_px::ink, high, "opening");
    }

    void draw_facet_glazing(const FacetOutline& facet, Role role) {
        const double inset = std::clamp((facet.right - facet.left) * 0.1, 1.0, 70.0);
        const double up = std::min(inset, facet.height * 0.1);
        const double left = facet.left + inset;
        const double right = facet.right - inset;
        const double low = up;
        const double high = facet.height - up;
        board_.polygon(role, stroke_px::hair,
                       {{left, sill_at(left) + low},
                        {right, sill_at(right) + low},
                        {right, sill_at(right) + high},
                        {left, sill_at(left) + high}},
                       "glazing");
        const double transom = low + (high - low) * 0.6;
        board_.line(role, stroke_px::hair, {left, sill_at(left) + transom}, {right, sill_at(right) + transom},
                    "glazing");
    }

    /// Where two facets meet: the fold, from floor to ceiling.
    void draw_corner(const FacetOutline& before, const FacetOutline& after) {
        const double x = before.right;
        const Role role = before.width_known && after.width_known ? Role::hairline : Role::guess;
        const double sill = sill_at(x);
        board_.line(role, stroke_px::hair, {x, outline_.at(outline_.floor, x)}, {x, sill}, "corner");
        board_.line(role, stroke_px::hair, {x, sill + std::max(before.height, after.height)},
                    {x, outline_.at(outline_.ceiling, x)}, "corner");
    }

    // ---- Arch and gable

    void draw_peaked() {
        const bool known = sides_ == Role::ink && ends_ == Role::ink && outline_.peak_known;
        std::vector<Spot> whole{spot(0, 0), spot(0.5, 0), spot(1, 0), spot(1, 0.5)};
        whole.insert(whole.end(), outline_.peak.rbegin(), outline_.peak.rend());
        whole.push_back(spot(0, 0.5));
        board_.polygon(Role::wash, 0.0, whole, "opening");
        draw_peak_glazing(known ? Role::hairline : Role::guess);
        draw_sides();
        if (outline_.shape == Shape::arch) {
            board_.polyline(Role::guess, stroke_px::hair, {spot(0, 1), spot(1, 1)}, "springing");
        } else {
            board_.line(Role::guide, stroke_px::fine, *std::next(outline_.peak.begin()),
                        {*outline_.apex_x, sill_at(*outline_.apex_x)}, "plumb");
        }
        board_.polyline(known ? Role::ink : Role::guess, stroke_px::ink, outline_.peak, "opening");
        draw_sill(ends_, {spot(0, 0), spot(0.5, 0), spot(1, 0)});
    }

    /// Bars that follow the opening: its outline drawn smaller, a transom where the sides end.
    void draw_peak_glazing(Role role) {
        const double inset = std::clamp(outline_.width() * 0.06, 1.0, 90.0);
        const double u = inset / outline_.width();
        const double tall = outline_.head.y[1] - outline_.sill.y[1];
        const double low = std::min(0.3, inset * 0.55 / std::max(1.0, outline_.eaves[1] - outline_.sill.y[1]));
        const double middle = (outline_.peak.front().first + outline_.peak.back().first) / 2.0;
        const double foot = (outline_.eaves[0] + outline_.eaves[2]) / 2.0;
        const double across = 1.0 - 2.0 * u;
        const double up = std::max(0.3, 1.0 - inset * 0.9 / std::max(1.0, outline_.head.y[1] - foot));
        std::vector<Spot> pane{spot(u, low), spot(1.0 - u, low)};
        const std::vector<Spot> from_right(outline_.peak.rbegin(), outline_.peak.rend());
        for (const Spot& over : from_right) {
            pane.emplace_back(middle + (over.first - middle) * across, foot + (over.second - foot) * up);
        }
        board_.polygon(role, stroke_px::hair, pane, "glazing");
        const double top = outline_.shape == Shape::gable ? foot + (outline_.head.y[1] - foot) * up : foot;
        const double x = outline_.apex_x ? middle + (*outline_.apex_x - middle) * across : middle;
        board_.line(role, stroke_px::hair, {x, sill_at(x) + tall * 0.03}, {x, top}, "glazing");
    }

    DrawingBoard& board_;
    const WindowOutline& outline_;
    Role sides_, ends_;
};

}  // namespace

void draw_opening(DrawingBoard& board, const WindowOutline& outline) { OpeningDrawer(board, outline).draw(); }

}  // namespace truehang
