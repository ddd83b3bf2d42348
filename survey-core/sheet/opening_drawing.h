// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing_board.h"
#include "sheet/window_outline.h"

namespace truehang {

/// Draws the opening as it is seen from inside: its edges, sill and glazing; the facets of a bay unfolded, an arch with
/// its springing line, a gable with its slopes. What wasn't measured is dashed.
void draw_opening(DrawingBoard& board, const WindowOutline& outline);

}  // namespace truehang
