// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing_board.h"
#include "sheet/window_outline.h"
#include "survey/survey.h"

namespace truehang {

/// Where hardware runs, in mm of the drawing.
struct HardwareRun {
    double left = 0.0, right = 0.0;
    double finial = 0.0;  ///< beyond each end
    bool inside = false;  ///< it hangs within the opening
};

/// Its own length and place; where they weren't chosen yet, the opening and usual stands to both sides of it (common
/// practice, no source).
[[nodiscard]] HardwareRun hardware_run(const WindowOutline& outline, const Layer& layer);

/// Whether the layer's treatment is a blind within the opening.
[[nodiscard]] bool hangs_inside_opening(const Layer& layer);

/// The height of the hardware's centre line at x.
[[nodiscard]] double hardware_height(const WindowOutline& outline, const Layer& layer, double x);

/// The pole's diameter, or a usual one.
[[nodiscard]] double pole_diameter(const Layer& layer);

/// Draws a layer's pole, track, wire or headrail, with brackets and finials; dashed where its height wasn't measured.
void draw_hardware(DrawingBoard& board, const WindowOutline& outline, const Layer& layer);

}  // namespace truehang
