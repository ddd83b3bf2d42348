// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>

namespace truehang::trial {

/// Where a reading fails: the normal distribution's point of 0.001 at two sides (Baarda 1968).
inline constexpr double critical = 3.2905;
/// A slip of this much is found eight times in ten by that test (Baarda 1968, power 0.80).
inline constexpr double noncentrality = 17.0746;

/// Chi-square's upper tail by the finite sums for whole degrees of freedom (Abramowitz and Stegun 26.4.4 and 26.4.5).
[[nodiscard]] inline double central_above(double limit, int freedom) {
    const double half = limit / 2.0;
    const bool odd = freedom % 2 == 1;
    double sum = odd ? std::erfc(std::sqrt(half)) : std::exp(-half);
    double k = odd ? 0.5 : 1.0;
    double term = odd ? std::exp(-half) * std::sqrt(half) / std::tgamma(1.5) : std::exp(-half) * half;
    for (; 2.0 * k < freedom - (odd ? 0.5 : 1.5); k += 1.0) {
        sum += term;
        term *= half / (k + 1.0);
    }
    return sum;
}

/// The same of the non-central chi-square: its mixture over Poisson weights (Abramowitz and Stegun 26.4.25).
[[nodiscard]] inline double noncentral_above(double limit, int freedom, double beyond) {
    const double half = beyond / 2.0;
    if (half > 300.0) {
        return 1.0;  // so far off that no limit here is near
    }
    double weight = std::exp(-half);
    double sum = 0.0;
    for (int j = 0; j < 700; ++j) {
        sum += weight * central_above(limit, freedom + 2 * j);
        weight *= half / (j + 1.0);
        if (j > half && weight < 1e-14) {
            break;
        }
    }
    return sum;
}

}  // namespace truehang::trial
