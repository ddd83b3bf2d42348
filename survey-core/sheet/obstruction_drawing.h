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

/// Draws an obstruction as what it is; dashed where its place wasn't measured. Its part is its id.
void draw_obstruction(DrawingBoard& board, const Obstruction& obstruction);

}  // namespace truehang
