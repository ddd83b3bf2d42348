// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/network.h"
#include "adjust/tape.h"

#include <array>
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

/// What the other readings of a network say of two of them at once.
struct PairLeftOut {
    std::array<double, 2> expected{};   ///< mm; degrees of an angle
    std::array<double, 2> variances{};  ///< of what is expected
    double covariance = 0.0;
    double chi2 = 0.0;          ///< of the network without the two
    bool holds_widely = false;  ///< the network is linear, and each of the two enters it once: `chi2_at` is exact

    /// Near what is expected, the network's chi-square with the two so far `off` it, at these sigmas.
    [[nodiscard]] double chi2_at(const std::array<double, 2>& off, const std::array<double, 2>& sigmas) const;
};

/// Leaves the readings of two stations out of a network. Nothing where the rest forms no figure.
[[nodiscard]] std::optional<PairLeftOut> leave_out(const Network& network, std::string_view one,
                                                   std::string_view other);

/// Leaves the reading of a station out of a network. Nothing where the network can't judge it or forms no figure.
[[nodiscard]] std::optional<LeftOut> leave_out(const Network& network, std::string_view station, const TapeRule& tape);

/// The sigma of an observation with another value: by the tape, but for an angle's and an estimate's own.
[[nodiscard]] double sigma_at(const Observation& observation, double value, const TapeRule& tape);

/// The observations with the readings of a station at another value, its sigma that of such a reading.
void set_reading(std::vector<Observation>& observations, std::string_view station, double value, const TapeRule& tape);

}  // namespace truehang
