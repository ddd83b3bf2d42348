// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/stations.h"
#include "survey/survey.h"

#include <vector>

namespace truehang {

/// How far a window is measured: the stations that its walk asks for, and those of them that have a reading or a reason
/// why they can't be taken. A proposed value counts as none.
struct StationCount {
    int taken = 0;
    int asked = 0;
    friend bool operator==(const StationCount&, const StationCount&) = default;
};
[[nodiscard]] StationCount stations_taken(const Window& window);

/// The stations of the walk that have neither, in its order.
[[nodiscard]] std::vector<Station> stations_left(const Window& window);

/// To be raised whenever `walk_of` asks for other stations than before: kept counts are then made anew.
inline constexpr int walk_edition = 2;

}  // namespace truehang
