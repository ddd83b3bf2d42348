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
    Length value;                ///< zero of an angle
    std::optional<Angle> angle;  ///< of an angle's station, in place of the length
    bool measured = true;        ///< with the tape, on the spot: not proposed, estimated or copied
    bool independent = true;     ///< evidence of its own: not proposed or copied
    bool contested = false;      ///< another reading of the station, not replaced either, stands beside it
};

/// The readings that count in a window, one a station, in the contract's order of stations. Readings of stations that
/// the shape doesn't have, of words not understood, and those without the value that their station asks for (a length;
/// degrees of an angle) are left out; so are a pole's planned readings once one was taken with the pole up. A facet's
/// height stands on its plumb line where it has one.
[[nodiscard]] std::vector<CountedReading> counted_readings(const Window& window, Shape shape);

/// The counted reading of a station, or null.
[[nodiscard]] const CountedReading* find_counted(const std::vector<CountedReading>& readings, std::string_view station);

}  // namespace truehang
