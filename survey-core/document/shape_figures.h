// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"

#include <nlohmann/json.hpp>

namespace truehang {

/// Adds what only some layers have to the figures of one: `drops_mm` and `planned` to `finished`, and beside it `run`
/// and `top`. What a layer hasn't got is left out.
void add_shape_figures(nlohmann::ordered_json& json, const LayerFigures& layer);

}  // namespace truehang
