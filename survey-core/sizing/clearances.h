// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sizing/finish.h"

#include <optional>

namespace truehang {

/// Where a layer's hardware and cloth are on the wall, as far as it is known: x from the opening's left edge, y above
/// the floor.
struct HungAt {
    std::optional<Length> left, right;  ///< of the hardware without finials, of a blind its edges
    Length finial;
    std::optional<Length> pole_low, pole_high;  ///< its centre line above the floor, from line to line
    std::optional<Length> top, bottom;          ///< of the cloth, the furthest on any line
    std::optional<Length> projection;           ///< wall face to centre line
};

[[nodiscard]] HungAt placed(const LayerContext& layer, const FinishedSizes& sizes);

/// Whether an obstruction's box lies behind or in the cloth's area on the wall (its depth apart). An edge that isn't
/// known, of either, is taken to reach.
[[nodiscard]] bool may_lie_behind(const Obstruction& obstruction, const HungAt& hung);

/// Glass that the drawn-back curtains cover, at each side of a pair, else at the one side (trade rules, section 8);
/// nothing of a blind, or where a width is missing.
[[nodiscard]] std::optional<Length> glass_covered(const LayerContext& layer, const FinishedSizes& sizes);

/// Flags of section 8 but for heat: pole-near-ceiling, finial-fouls, hardware-fouls, curtain-fouls, stack-covers-glass,
/// heading-hardware, tab-centre-bracket, and not-checked where a stop was asked for and not taken.
void flag_clearances(const LayerContext& layer, const FinishedSizes& sizes, Findings& findings);

}  // namespace truehang
