// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <functional>
#include <limits>
#include <optional>
#include <span>
#include <vector>

namespace truehang {

/// One observation equation: coefficients . unknowns = observed, known to one standard deviation `sigma` > 0.
struct ObservationEquation {
    std::vector<double> coefficients;
    double observed = 0.0;
    double sigma = 1.0;
};

/// What a weighted least-squares adjustment says of its observations. Everything is in their unit; nothing is scaled by
/// the variance factor that came out.
struct Residuals {
    std::vector<double> residuals;           ///< adjusted minus observed
    std::vector<double> redundancy_numbers;  ///< share of an error in the observation that shows in its residual, 0..1
    std::vector<double> normalised;          ///< residual over its standard deviation; 0 without redundancy
    double chi2 = 0.0;                       ///< weighted sum of squared residuals
    int redundancy = 0;
    std::vector<double> hat;  ///< of the weighted equations, row by row
};

/// A weighted least-squares adjustment, with what it says of the unknowns.
struct Adjustment : Residuals {
    std::vector<double> unknowns;

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

    std::vector<double> cofactors;  ///< of the unknowns, row by row
    std::vector<double> gain;       ///< unknowns by observations, row by row
};

/// Solves by column-pivoting QR of the weighted equations (Eigen), never by normal equations. Error `missing` where the
/// equations don't determine every unknown. Test values: NIST StRD Norris, Ghilani 2010 Ex. 12.6, GUM H.3.
[[nodiscard]] Result<Adjustment> adjust(const std::vector<ObservationEquation>& equations, std::size_t unknowns);

/// What the same adjustment says of the observations alone, in a fraction of the time.
[[nodiscard]] std::optional<Residuals> residuals_of(const std::vector<ObservationEquation>& equations,
                                                    std::size_t unknowns);

/// Observation equations of a figure at a point, each over its sigma: observed values less what the point gives.
class WeightedEquations {
public:
    void restart(std::size_t unknowns);
    /// `coefficients` holds one for each unknown.
    void add(std::span<const double> coefficients, double observed, double sigma);

    [[nodiscard]] std::size_t unknowns() const { return unknowns_; }
    [[nodiscard]] const std::vector<double>& design() const { return design_; }  ///< row by row
    [[nodiscard]] const std::vector<double>& observed() const { return observed_; }
    [[nodiscard]] const std::vector<double>& sigmas() const { return sigmas_; }

private:
    std::size_t unknowns_ = 0;
    std::vector<double> design_, observed_, sigmas_;
};

/// Puts the equations of a figure at `point`.
using Linearise = std::function<void(const std::vector<double>& point, WeightedEquations& equations)>;

/// Gauss-Newton from `point`, which becomes the solution; the adjustment is that of the last step, so its residuals are
/// those of the observations. Nothing where it doesn't settle within 200 steps (each halved while it leads up) to a
/// tenth of a micrometre, or the equations don't determine every unknown; where it creeps above a chi-square of
/// `hopeless`, as far as it came. Test value: Benning 8-2.
[[nodiscard]] std::optional<Adjustment> adjust_iterated(const Linearise& linearise, std::vector<double>& point,
                                                        double hopeless = std::numeric_limits<double>::infinity());

/// The same of the observations alone.
[[nodiscard]] std::optional<Residuals> residuals_iterated(const Linearise& linearise, std::vector<double>& point,
                                                          double hopeless);

}  // namespace truehang
