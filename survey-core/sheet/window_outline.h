// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
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

/// The shape of a window as far as it is known, in mm: x from the opening's bottom left corner to the right, y up.
struct WindowOutline {
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

    /// A spot of the opening: u from its left to its right edge, v from sill to head.
    [[nodiscard]] std::pair<double, double> spot(double u, double v) const;
    /// The height of a mark at x, straight on beyond the outer lines.
    [[nodiscard]] double at(const MarkHeights& mark, double x) const;
    [[nodiscard]] double x_of(Line line) const;
    [[nodiscard]] double width() const { return right_x[1] - left_x[1]; }
};

/// Works the outline out of the adjusted sizes, of the readings that count where there is no size, and of typical
/// proportions (common practice, no source) where neither is there. `hang` and the widest treatment need the window's
/// first hardware.
[[nodiscard]] WindowOutline outline_of(const Window& window, const WindowFigures& figures);

/// A size of the figures by name, in mm.
[[nodiscard]] std::optional<double> size_mm(const WindowFigures& figures, std::string_view name);

}  // namespace truehang
