// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "light/window_light.h"
#include "sheet/elevation.h"

namespace truehang {

struct SunDrawingOptions {
    double width = 320.0;  ///< the target rectangle, in target units; at least 120 each way
    double height = 300.0;
    double pixel = 1.0;        ///< as in ElevationOptions
    double label_size = 16.0;  ///< in px
    TextWidth text_width = plain_text_width;
};

/// The window from inside with the ways of the sun on the 21st of June, March and December, as they stand for an eye in
/// the middle of the sill, half the opening’s height back from the glass: about where the sun shines on what hangs
/// there. Strong where the sun stands in the window, dotted where wall or what is outside hides it, with a mark at each
/// hour of the clock; and what stands before the sky. A bay stands unfolded. Without the sun’s ways where `light` has
/// no clock.
[[nodiscard]] Elevation sun_drawing_of(const Room& room, const Window& window, const WindowFigures& figures,
                                       const WindowLight& light, const SunDrawingOptions& options);

/// Months down, hours of the clock across: a full spot where the sun reaches the cloth, a ring where it reaches the
/// glass alone, as large as its share of the hour’s days; a dot where it is up but elsewhere. Empty where `light` has
/// no hours.
[[nodiscard]] Elevation sun_calendar_of(const WindowLight& light, const SunDrawingOptions& options);

}  // namespace truehang
