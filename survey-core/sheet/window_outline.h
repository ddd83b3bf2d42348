// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/bay_plan.h"
#include "survey/counted.h"
#include "survey/stations.h"
#include "survey/survey.h"

#include <array>
#include <optional>
#include <vector>

namespace truehang {

/// The heights of one mark at the three plumb lines, in mm over the drawing's datum: the floor at the first line that
/// a level line knows, the floor itself where none does.
struct MarkHeights {
    std::array<double, 3> y{};
    bool known = false;  ///< tied to the floor by a size or reading at one line at least
};

/// One facet of a bay, unfolded beside the others.
struct FacetOutline {
    double left = 0.0, right = 0.0;  ///< x of its edges
    double height = 0.0;             ///< sill to head
    bool width_known = false;
    bool height_known = false;
    [[nodiscard]] double middle() const { return (left + right) / 2.0; }
};

/// One ordinate of an arch: where it stands and how high the arch is there.
struct OrdinateOutline {
    double x = 0.0;
    double low = 0.0, high = 0.0;  ///< y of the springing line and of the arch
};

/// The shape of a window as far as it is known, in mm: x from the opening's bottom left corner to the right, y up. The
/// facets of a bay stand unfolded side by side.
struct WindowOutline {
    Shape shape = Shape::recess;
    bool door = false;
    bool frame = false;
    bool worked = true;               ///< this version draws the shape as it is, not as an upright rectangle
    std::array<double, 3> left_x{};   ///< of the left edge: bottom, middle, top
    std::array<double, 3> right_x{};  ///< of the right edge
    bool width_known = false;
    bool height_known = false;
    MarkHeights floor, sill, head, ceiling, pole, level;
    std::optional<double> stop_left, stop_right;  ///< where a curtain is stopped at pole height
    Line pole_line = Line::left;                  ///< where unsuffixed pole readings were taken

    std::array<double, 3> eaves{};  ///< where the sides end: the head, or an arch's springing, a gable's feet
    /// An arch or a gable from its left to its right foot; empty where the head is straight.
    std::vector<std::pair<double, double>> peak{};
    bool peak_known = false;  ///< its height was measured
    std::optional<double> apex_x{};
    std::vector<OrdinateOutline> ordinates{};
    std::vector<FacetOutline> facets{};  ///< of a bay or a corner, else empty
    std::optional<BayPlan> plan{};

    /// Whether the head rises between its feet: an arch or a gable.
    [[nodiscard]] bool is_peaked() const { return shape == Shape::arch || shape == Shape::gable; }
    /// Whether its facets stand at an angle: a bay, or two openings that meet.
    [[nodiscard]] bool is_folded() const { return shape == Shape::bay || shape == Shape::corner; }
    /// A spot of the opening: u from its left to its right edge, v from the sill to where its sides end.
    [[nodiscard]] std::pair<double, double> spot(double u, double v) const;
    /// The height of a mark at x, straight on beyond the outer lines.
    [[nodiscard]] double at(const MarkHeights& mark, double x) const;
    [[nodiscard]] double x_of(Line line) const;
    [[nodiscard]] double width() const { return right_x[1] - left_x[1]; }
};

/// Works the outline out of the adjusted sizes, of the readings that count where there is no size, and of typical
/// proportions (common practice, no source) where neither is there. `hang` and the widest treatment need the window's
/// first hardware. `active` is the station being measured, which may ask for one facet more than were taken.
[[nodiscard]] WindowOutline outline_of(const Window& window, const WindowFigures& figures,
                                       std::string_view active = {});

/// A size of the figures by name, in mm.
[[nodiscard]] std::optional<double> size_mm(const WindowFigures& figures, std::string_view name);

}  // namespace truehang
