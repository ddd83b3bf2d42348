// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/stations.h"
#include "survey/survey.h"

#include <string>
#include <vector>

namespace truehang {

/// The reading of a station that counts: not replaced, of the latest stage, the newest where several remain.
struct CountedReading {
    Station station;
    const Reading* reading = nullptr;
    Length value;
    bool measured = true;     ///< with the tape, on the spot: not proposed, estimated or copied
    bool independent = true;  ///< evidence of its own: not proposed or copied
    bool contested = false;   ///< another reading of the station, not replaced either, stands beside it
};

/// The readings that count in a window, one a station, in the contract's order of stations. Readings of stations that
/// the shape doesn't have, of words not understood and of angles are left out.
[[nodiscard]] std::vector<CountedReading> counted_readings(const Window& window, Shape shape);

/// The counted reading of a station, or null.
[[nodiscard]] const CountedReading* find_counted(const std::vector<CountedReading>& readings, std::string_view station);

}  // namespace truehang
