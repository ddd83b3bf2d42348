// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <functional>
#include <optional>
#include <vector>

namespace truehang {

/// One observation equation: coefficients . unknowns = observed, known to one standard deviation `sigma` > 0.
struct ObservationEquation {
    std::vector<double> coefficients;
    double observed = 0.0;
    double sigma = 1.0;
};

/// A weighted least-squares adjustment. Everything is in the unit of the observations; nothing is scaled by the
/// variance factor that came out.
struct Adjustment {
    std::vector<double> unknowns;
    std::vector<double> residuals;           ///< adjusted minus observed
    std::vector<double> redundancy_numbers;  ///< share of an error in the observation that shows in its residual, 0..1
    std::vector<double> normalised;          ///< residual over its standard deviation; 0 without redundancy
    double chi2 = 0.0;                       ///< weighted sum of squared residuals
    int redundancy = 0;

    /// Standard deviation of `f . unknowns`, and what each observation has to say in it (d result / d observation).
    [[nodiscard]] double sigma_of(const std::vector<double>& f) const;
    [[nodiscard]] std::vector<double> leverage_of(const std::vector<double>& f) const;

    /// The weighted sum of squared residuals that `changes` to observed values (index, amount) would bring it to, as
    /// long as the equations are linear; `sigmas` of the observations.
    struct Change {
        std::size_t observation;
        double amount;
    };
    [[nodiscard]] double chi2_with(const std::vector<Change>& changes, const std::vector<double>& sigmas) const;

    std::vector<double> hat;                     ///< of the weighted equations, row by row
    std::vector<std::vector<double>> cofactors;  ///< of the unknowns
    std::vector<std::vector<double>> gain;       ///< unknowns by observations
};

/// Solves by column-pivoting QR of the weighted equations (Eigen), never by normal equations. Error `missing` where the
/// equations don't determine every unknown. Test values: NIST StRD Norris, Ghilani 2010 Ex. 12.6, GUM H.3.
[[nodiscard]] Result<Adjustment> adjust(const std::vector<ObservationEquation>& equations, std::size_t unknowns);

/// The equations of a figure at `point`, observed values less what the point gives.
using Linearise = std::function<std::vector<ObservationEquation>(const std::vector<double>& point)>;

/// Gauss-Newton from `point`, which becomes the solution; the adjustment is that of the last step, so its residuals are
/// those of the observations. Nothing where it doesn't settle within 200 steps (each halved while it leads up) to a
/// thousandth of a micrometre, or the equations don't determine every unknown. Test value: Benning 8-2.
[[nodiscard]] std::optional<Adjustment> adjust_iterated(const Linearise& linearise, std::vector<double>& point);

}  // namespace truehang
