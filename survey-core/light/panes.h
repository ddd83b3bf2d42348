// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "light/window_sun.h"
#include "survey/survey.h"

#include <optional>
#include <string>
#include <vector>

namespace truehang {

/// What light comes through, from what was measured.
struct Panes {
    std::vector<GlassOpening> openings;  ///< of a bay or corner one for each facet; empty where no size is known
    double glass_m2 = 0.0;
    Length width;                      ///< of the glass, facets side by side
    Length height;                     ///< of the first
    Length margin;                     ///< from the opening’s edge to the glass at each side
    std::vector<std::string> assumed;  ///< sentences
};

/// `bearing` is of the window’s middle; it turns with the facets.
[[nodiscard]] Panes panes_of(const Survey& survey, const Window& window, const WindowFigures& figures, Angle bearing);

/// What stands before the sky, for a pane that is turned by `turned` from the window’s middle.
[[nodiscard]] std::vector<SkyBlock> skyline_of(const Window& window, Angle turned);

/// The mean height of what stands outside, weighted as an upright pane has light from each side. Our own weighting: BS
/// 8206-2 knows one obstruction right across.
[[nodiscard]] Angle mean_height(const std::vector<SkyBlock>& skyline);

}  // namespace truehang
