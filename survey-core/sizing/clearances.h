// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sizing/finish.h"

#include <optional>

namespace truehang {

/// Where a layer's hardware and cloth are on the wall: x from the opening's left edge, y above the floor.
struct HungAt {
    Length left, right;  ///< of the hardware without finials
    Length finial;
    std::optional<Length> pole;         ///< its centre line above the floor
    std::optional<Length> top, bottom;  ///< of the cloth
    std::optional<Length> projection;   ///< wall face to centre line
};

/// Places a layer; nothing while its length or the opening's width isn't known.
[[nodiscard]] std::optional<HungAt> placed(const LayerContext& layer, const FinishedSizes& sizes);

/// An obstruction's box against the cloth's area on the wall (not its depth): true where they overlap. Unknown edges of
/// the obstruction are taken to reach.
[[nodiscard]] bool lies_behind(const Obstruction& obstruction, const HungAt& hung);

/// Flags of section 8 but for heat: pole-near-ceiling, finial-fouls, hardware-fouls, curtain-fouls, stack-covers-glass,
/// heading-hardware, tab-centre-bracket, and not-checked where a stop was asked for and not taken.
void flag_clearances(const LayerContext& layer, const FinishedSizes& sizes, Findings& findings);

}  // namespace truehang
