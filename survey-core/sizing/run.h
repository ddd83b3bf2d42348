// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sizing/layer.h"

#include <optional>
#include <vector>

namespace truehang {

/// Where hardware turns with a corner of a bay.
struct Bend {
    Length at;    ///< along it from its left end
    Angle angle;  ///< the corner's inside angle, adjusted
};

/// Hardware bent round a bay or corner at its projection off the wall.
struct BentRun {
    Estimate length;          ///< measured, not chosen: it has the plan's uncertainty
    std::vector<Bend> bends;  ///< from left to right, one a corner; of a pole its elbow joints stand there
};

/// The run of a layer's hardware that is bent with the facets: the adjusted plan moved into the room by the projection,
/// its lines met at the corners (`Traverse::track`). Nothing, and a flag, where the shape has no facets, the projection
/// or readings of the plan are missing, or no bend fits so far off the wall.
[[nodiscard]] std::optional<BentRun> bent_run(const LayerContext& layer, Findings& findings);

/// The bends that a curtain would have to pass: all of a single one's, of a pair those more than 50 mm from the middle,
/// where the pair parts (common practice, no source).
[[nodiscard]] std::vector<Bend> bends_in_the_way(const LayerAsked& asked, const BentRun& run);

}  // namespace truehang
