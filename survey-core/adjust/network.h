// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/least_squares.h"
#include "survey/findings.h"
#include "units/length.h"

#include <optional>
#include <string>
#include <vector>

namespace truehang {

/// A length that came out of readings: its value, one standard uncertainty, and the stations of readings in it that
/// weren't measured.
struct Estimate {
    Length value;
    Length u;
    std::vector<std::string> rests_on;
};

/// Whether a network of readings adds up; only networks with redundancy have one.
struct NetworkCheck {
    std::string network;
    int redundancy = 0;
    double chi2 = 0.0;
    double limit = 0.0;
    bool adds_up = true;
    std::vector<std::string> stations;  ///< those whose reading the network can judge, in their order
    Length off_by;                      ///< the largest misclosure that one reading would have to answer for
    Length explained;                   ///< what tape and edges explain of it
};

/// Sums up an adjustment as a check, or nothing where there is no redundancy. `stations` and `sigmas` in the order of
/// the equations.
[[nodiscard]] std::optional<NetworkCheck> check_of(const Adjustment& adjustment, std::string network,
                                                   const std::vector<std::string>& stations);

}  // namespace truehang
