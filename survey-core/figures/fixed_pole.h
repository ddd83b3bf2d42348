// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cloth/plan.h"
#include "figures/figures.h"

#include <optional>

namespace truehang {

/// The window as it was planned: without the readings that were taken once the pole was up. Nothing where there are no
/// such readings of the pole.
[[nodiscard]] std::optional<Window> as_planned(const Window& window);

/// Whether a layer's pole is up and its height still the planned one.
[[nodiscard]] bool waits_for_the_pole(const LayerContext& layer);
void flag_waiting_pole(const LayerContext& layer, Findings& findings);

/// What one layer was planned to be.
struct PlannedSizes {
    FinishedSizes sizes;
    ClothPlan cloth;
};

/// Holds a layer's sizes against what was planned, and flags `pole-moved` where the drops differ by more than 3 mm:
/// less is lost in the hem (common practice, no source). What was cut keeps its head; what is left below the hem line
/// makes the hem, which wants 40 mm at least (a double 20; common practice, no source).
[[nodiscard]] Planned held_against_plan(const LayerContext& layer, const FinishedSizes& now,
                                        const PlannedSizes& planned, const LayerFabrics& fabrics, Findings& findings);

}  // namespace truehang
