// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/least_squares.h"
#include "survey/findings.h"
#include "units/length.h"

#include <functional>
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

/// An angle that came out of readings.
struct AngleEstimate {
    Angle value;
    Angle u;
    std::vector<std::string> rests_on;
};

/// A reading as it enters a network. One station may enter more than once (a pole that hangs parallel to the head).
struct Observation {
    std::string station;
    double value = 0.0;     ///< mm; degrees of an angle
    double sigma = 1.0;     ///< one standard uncertainty, in the same unit
    bool is_angle = false;  ///< else a length
};

/// Adjusts a network to these observations in place of its own (same stations, same order); nothing where they form no
/// figure. Where it is plain that chi-square stays above `hopeless`, it may stop on the way there.
using Solve = std::function<std::optional<Residuals>(const std::vector<Observation>&, double hopeless)>;

/// Above this chi-square, readings whose adjustment creeps on won't come below `limit`.
[[nodiscard]] constexpr double hopeless_chi2(double limit) { return 50.0 * limit; }

/// A network of readings with redundancy, adjusted.
struct Network {
    std::string name;
    std::vector<Observation> observations;
    Adjustment adjustment;
    Solve solve;
    double limit = 0.0;      ///< of the adjustment's chi-square, 0.999
    bool is_linear = false;  ///< residuals move in proportion with the readings

    [[nodiscard]] bool adds_up() const { return adjustment.chi2 < limit; }
    /// The network with other values; whether it adds up, and how where it does.
    [[nodiscard]] std::optional<Residuals> tried(const std::vector<Observation>& others) const {
        return solve(others, hopeless_chi2(limit));
    }
    /// The stations whose reading the network can judge, in the order of the observations.
    [[nodiscard]] std::vector<std::string> stations() const;
    /// The largest misclosure that one reading would have to answer for, and what tape and edges explain of it (mm;
    /// degrees where an angle has it).
    struct Misclosure {
        double off_by = 0.0;
        double explained = 0.0;
        bool is_angle = false;
    };
    [[nodiscard]] Misclosure misclosure() const;
};

/// Nothing where there is no redundancy. `adjustment` is `solve` of `observations`.
[[nodiscard]] std::optional<Network> network_of(std::string name, std::vector<Observation> observations,
                                                Adjustment adjustment, Solve solve);

/// A network whose readings form no figure as they are: nothing was adjusted, every reading is as suspect as the
/// others.
[[nodiscard]] Network unformed_network(std::string name, std::vector<Observation> observations, Solve solve);

}  // namespace truehang
