// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/sheet.h"
#include "sheet/window_outline.h"
#include "survey/survey.h"

#include <optional>
#include <string>
#include <vector>

namespace truehang {

/// One place along the hardware that is marked on the wall.
struct BracketPlace {
    std::string name;                 ///< "Bracket 1", "Left end"
    Length along;                     ///< from the hardware's left end
    Length x;                         ///< from the opening's left edge, negative to the left of it
    std::optional<Length> floor{};    ///< pole's centre line above the floor there
    std::optional<Length> ceiling{};  ///< and up to the ceiling
};

/// The places of a layer's hardware from the left: its brackets where they were chosen, else its ends and, of three
/// brackets or more, its middle. Empty where the hardware's length isn't known.
struct BracketRow {
    std::vector<BracketPlace> places;
    bool chosen = false;  ///< the survey says where the brackets go
    Length u;             ///< of the heights, one standard uncertainty, the largest
    Length left, right;   ///< the hardware's ends, without finials, from the opening's left edge
};
[[nodiscard]] BracketRow bracket_row(const Layer& layer, const WindowFigures& figures, const WindowOutline& outline);

/// The height of a mark above the floor at x: on straight lines between the plumb lines where it is known, straight on
/// beyond them; where it is known at one alone, at that line (to within 1 mm) alone.
[[nodiscard]] std::optional<Length> height_at(const WindowFigures& figures, const WindowOutline& outline,
                                              std::string_view mark, Length x);

}  // namespace truehang
