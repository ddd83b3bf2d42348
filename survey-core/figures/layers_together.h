// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cloth/pieces.h"
#include "sizing/clearances.h"

#include <string>
#include <vector>

namespace truehang {

/// One layer as it stands off the wall.
struct StandingLayer {
    std::string id;
    std::string name;                   ///< "layer 1 (Roman blind)", from the glass
    bool inside = false;                ///< a blind within the recess
    std::optional<Length> near, far;    ///< off the wall face, room's side positive
    std::optional<Length> left, right;  ///< of its cloth, from the opening's left edge
    std::optional<Length> bottom;       ///< its hem above the floor
};

/// How a layer stands: half of its thickness to both sides of its projection, of a blind drawn up, of curtains drawn
/// back, or half the pole where that is more. What can't be made has no hem. A blind inside fills the recess from its
/// frame. The thicknesses are house practice, no source: `half_thickness`.
[[nodiscard]] StandingLayer standing_of(const LayerContext& layer, const FinishedSizes& sizes, const Blind* blind,
                                        std::size_t number, const std::string& id, const Findings& findings);

/// Half of what folded cloth takes, front to back (common practice, no source): drawn-back curtains 40 mm, with folds
/// of their heading's own 50 (eyelets, pinch pleats) or 60 (goblets, s-folds); a Roman blind drawn up 12.5 for its
/// batten and 3 for each rod.
[[nodiscard]] Length half_thickness(const LayerAsked& asked, const Blind* blind);

/// Flags `layers-foul` where a layer meets the next one toward the room, isn't covered by it, or (a note) hangs out
/// below it; where a blind is deeper than its recess; `layers-not-checked` where a projection is missing.
[[nodiscard]] std::vector<Flag> layer_flags(const std::vector<StandingLayer>& layers, LengthUnit unit);

}  // namespace truehang
