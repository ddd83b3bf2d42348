// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/hanging_drawing.h"

namespace truehang {

/// Draws a Roman blind between its edges: let down with its rods where the figures say, or drawn up with a fold for
/// each rod. Parts: `curtain`, `rod` (one ink line each), `fold`.
void draw_blind(DrawingBoard& board, const Hanging& hanging, const HangingEdges& edges, Drawn drawn);

}  // namespace truehang
