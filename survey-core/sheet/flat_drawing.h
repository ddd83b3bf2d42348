// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing.h"
#include "sheet/words.h"
#include "units/length.h"

#include <optional>
#include <vector>

namespace truehang {

/// One curtain or blind flat on the table. Positions across run from the leading edge (of a blind, from the left).
struct FlatPiece {
    Length flat, drop;            ///< finished
    Length cut_across, cut_drop;  ///< as cut, written on the drawing
    Length side_turn, hem, head;  ///< cloth taken at each side, by the hem and above the top, in all
    std::vector<Length> joins;    ///< seams of its widths
    bool leading_right = false;   ///< its leading edge lies to the right, seen from the front
    bool blind = false;           ///< both sides are alike
    bool one_way = false;         ///< its cloth has a way up
    std::optional<Length> lining_inset, lining_rise;
    Length lining_hem;  ///< in all
    std::vector<Length> tabs, eyelets, pleats, weights;
    Length tab_width, tab_hang, eyelet_top, eyelet_inner, pleat;
    std::vector<Length> rods;  ///< above the bottom edge
};

/// The piece from the front, to scale: its finished edge in ink, what is turned in dashed, its joins, lining, tabs,
/// eyelets and weights where they come, and of a one-way cloth an arrow to the top. In mm of paper, 97 × 82 (a blind
/// 96).
[[nodiscard]] Elevation flat_drawing(const FlatPiece& piece, const SheetStyle& style);

/// A lower corner from the back at 1 : 4: side turning, double hem, and the lining's inset, rise and hem. In mm of
/// paper, 97 wide.
[[nodiscard]] Elevation corner_drawing(const FlatPiece& piece, const SheetStyle& style);

}  // namespace truehang
