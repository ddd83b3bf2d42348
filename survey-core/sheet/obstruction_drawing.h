// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing_board.h"
#include "survey/survey.h"

namespace truehang {

/// An obstruction's box in mm: its own sizes, or usual ones (common practice, no source) where it wasn't measured.
struct ObstructionBox {
    double left = 0.0, bottom = 0.0, width = 0.0, height = 0.0;
    bool known = true;  ///< all four were given
    [[nodiscard]] double right() const { return left + width; }
    [[nodiscard]] double top() const { return bottom + height; }
};
[[nodiscard]] ObstructionBox box_of(const Obstruction& obstruction);

/// Draws an obstruction from the front as what it is; dashed where its place wasn't measured. Its part is its id, and
/// `floor_mm` is the height of the floor where it stands.
void draw_obstruction(DrawingBoard& board, const Obstruction& obstruction, double floor_mm = 0.0);

/// The same from the side: how far it stands out from the wall face at 0, `usual_stand_out` where nobody measured that.
void draw_obstruction_side(DrawingBoard& board, const Obstruction& obstruction, double floor_mm = 0.0);

/// How far such a thing usually stands out, in mm (common practice, no source), for what wasn't measured.
[[nodiscard]] double usual_stand_out(const Obstruction& obstruction);

}  // namespace truehang
