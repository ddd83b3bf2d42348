// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace truehang {

/// Quantile at 0.999 of chi-square with `redundancy` >= 1 degrees of freedom: a network passes below it.
[[nodiscard]] double chi_square_limit(int redundancy);

/// Baarda's critical value at 0.001, two-sided (J. Baarda 1968): the square root of the limit for one degree of
/// freedom.
inline constexpr double critical_w = 3.2905;

/// The factor of the trade rules for what is told of a spread.
inline constexpr double spread_factor = 3.29;

}  // namespace truehang
