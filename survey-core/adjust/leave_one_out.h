// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/network.h"
#include "adjust/tape.h"

#include <optional>
#include <string_view>
#include <vector>

namespace truehang {

/// What the other readings of a network say of one: near `expected`, the network's chi-square with the reading at t is
/// `chi2 + curvature * (t - expected)^2`.
struct LeftOut {
    double expected = 0.0;   ///< mm; degrees of an angle
    double curvature = 0.0;  ///< redundancy number over sigma squared; its inverse root is the standard error
    double chi2 = 0.0;       ///< of the network without the reading
    bool is_angle = false;   ///< a full turn apart is the same

    [[nodiscard]] double off(double value) const;
    [[nodiscard]] double chi2_at(double value) const { return chi2 + curvature * off(value) * off(value); }
    /// Whether a value agrees with what the others expect: its normalised residual is below Baarda's limit.
    [[nodiscard]] bool agrees(double value) const;
};

/// Leaves the reading of a station out of a network. Nothing where the network can't judge it or forms no figure.
[[nodiscard]] std::optional<LeftOut> leave_out(const Network& network, std::string_view station, const TapeRule& tape);

/// The observations with the readings of a station at another value, its sigma that of such a reading (an estimate's
/// stays).
void set_reading(std::vector<Observation>& observations, std::string_view station, double value, const TapeRule& tape);

}  // namespace truehang
