// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"

#include <nlohmann/json.hpp>

// Parts of the figures document that other documents hold too.

namespace truehang {

/// To two decimals, whole numbers without a point; null where not finite.
[[nodiscard]] nlohmann::ordered_json two_decimals_json(double number);
/// What hangs there: `finished`, `cloth` … as a window or one of its layers has them.
[[nodiscard]] nlohmann::ordered_json layer_figures_json(const LayerFigures& layer);
[[nodiscard]] nlohmann::ordered_json flag_figures_json(const Flag& flag);

}  // namespace truehang
