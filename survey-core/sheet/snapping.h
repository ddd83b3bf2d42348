// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/obstruction_drawing.h"
#include "sheet/window_outline.h"
#include "units/length_text.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang {

/// A line that an edge of a dragged thing, or its middle, comes to lie on.
struct SnapLine {
    double at = 0.0;      ///< mm from the opening's left edge, or above the finished floor
    std::string what;     ///< "the sill", "the radiator"
    bool middle = false;  ///< for the middle of the thing, not for its edges
};

/// What a thing in the way may snap to: upright lines and level ones. What wasn't measured is no line.
struct SnapLines {
    std::vector<SnapLine> across;
    std::vector<SnapLine> up;
};

/// The lines for the obstruction `moved` of a window: the opening's edges and middle, what stops a curtain, sill, head,
/// floor, ceiling, and the edges of everything else in the way whose place is known. Heights are above the floor under
/// the middle of `box`.
[[nodiscard]] SnapLines snap_lines(const Window& window, const WindowOutline& outline, const ObstructionBox& box,
                                   std::string_view moved);

/// Where a dragged thing comes to lie.
struct Placed {
    double left = 0.0;    ///< mm from the opening's left edge
    double bottom = 0.0;  ///< mm above the floor, never below it
    std::optional<SnapLine> across{}, up{};
};

/// The step that a drag is rounded to where nothing is near, in mm: 5 mm, or 1/4 in where inches are entered.
[[nodiscard]] double drag_step(LengthUnit unit);

/// `box` brought to the nearest lines within `reach_mm`, to the nearest mm or 1/16 in there; elsewhere its left edge
/// and lower edge to whole steps. It stays within the 100 m that the document holds.
[[nodiscard]] Placed snapped(const ObstructionBox& box, const SnapLines& lines, double reach_mm, LengthUnit unit);

}  // namespace truehang
