// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/window_outline.h"

#include <string_view>
#include <vector>

namespace truehang {

/// A size of the figures, else the reading that counts, in mm.
[[nodiscard]] std::optional<double> measured_mm(const WindowFigures& figures,
                                                const std::vector<CountedReading>& readings, std::string_view word);

/// How far an arch's crown or a gable's apex stands over the feet: `value` from its own reading or from what else gives
/// it, else a usual one (common practice, no source).
struct PeakRise {
    double value = 0.0;
    bool known = false;
};
[[nodiscard]] PeakRise peak_rise(const WindowOutline& outline, const WindowFigures& figures,
                                 const std::vector<CountedReading>& readings);

/// Unfolds the facets of a bay or a corner: its plan, and each facet beside the others from x = 0.
void set_facets(WindowOutline& outline, const Window& window, const WindowFigures& figures,
                const std::vector<CountedReading>& readings, std::string_view active);
/// The facets' heights, once sill and head are known.
void set_facet_heights(WindowOutline& outline, const WindowFigures& figures,
                       const std::vector<CountedReading>& readings);

/// The curve of an arch with its ordinates, or the slopes of a gable, once sides and head are known.
void set_peak(WindowOutline& outline, const WindowFigures& figures, const std::vector<CountedReading>& readings);

/// Where a gable's apex stands from the left edge.
[[nodiscard]] std::optional<double> apex_along(const WindowFigures& figures,
                                               const std::vector<CountedReading>& readings);

}  // namespace truehang
