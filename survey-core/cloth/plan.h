// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cloth/pieces.h"
#include "sizing/finish.h"

#include <optional>
#include <vector>

namespace truehang {

/// Everything cut for one layer, in numbers and as pieces by fabric.
struct ClothPlan {
    std::optional<Cloth> cloth;
    Length exact_cut_drop;  ///< of the face cloth: whole repeats, not rounded to mm
    std::optional<Lining> lining, interlining;
    std::optional<Tabs> tabs;
    std::optional<Eyelets> eyelets;
    std::optional<Weights> weights;
    std::optional<Blind> blind;
    std::optional<PelmetFigures> pelmet;
    std::optional<Mass> mass, bracket_mass;
    Making making;
    std::vector<Piece> pieces;
};

/// The fabrics a layer is made of; null where none was chosen.
struct LayerFabrics {
    const Fabric* face = nullptr;
    const Fabric* lining = nullptr;
    const Fabric* interlining = nullptr;
    const Fabric* second_lining = nullptr;
};
[[nodiscard]] LayerFabrics fabrics_of(const Treatment& treatment, const std::vector<Fabric>& fabrics);

/// Cloth that can be used of a width.
[[nodiscard]] Length usable_width(const Fabric& fabric);

/// What is used of a width where it is joined to another: a whole number of repeats across, unless nothing is matched.
/// Nothing is left where the repeat is wider than the cloth.
[[nodiscard]] Length joined_width(const Fabric& fabric);

/// The match that is cut to: a repeat without a match said is matched straight, since cutting it anyhow would spoil it.
[[nodiscard]] Match match_of(const Fabric& fabric);

/// Plans the cloth of a layer whose finished sizes are known (trade rules, sections 5, 6, 7, 9). A part that can't be
/// cut is left out and flagged `impossible`.
[[nodiscard]] ClothPlan plan_cloth(const LayerContext& layer, const FinishedSizes& sizes, const LayerFabrics& fabrics,
                                   Findings& findings);

}  // namespace truehang
