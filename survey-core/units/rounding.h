// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/length.h"

#include <cmath>

namespace truehang {

/// How near to a whole number (or to a half) a value counts as it: the trade rules' 1e-6.
inline constexpr double whole_tolerance = 1e-6;

/// `value`, or the whole number within 1e-6 of it.
[[nodiscard]] inline double snapped(double value) {
    const double whole = std::round(value);
    return std::abs(value - whole) <= whole_tolerance ? whole : value;
}

/// The least whole number that is not below `value`; a value within 1e-6 of a whole number counts as that number.
[[nodiscard]] inline double ceil_whole(double value) { return std::ceil(snapped(value)); }

/// The greatest whole number that is not above `value`, with the same tolerance.
[[nodiscard]] inline double floor_whole(double value) { return std::floor(snapped(value)); }

/// The nearest whole number, halves away from zero; a value within 1e-6 of a half counts as the half.
[[nodiscard]] inline double round_whole(double value) {
    const double magnitude = std::floor(std::abs(value) + 0.5 + whole_tolerance);
    return std::copysign(magnitude, value);
}

/// `value` to the nearest multiple of `step`, halves away from zero.
[[nodiscard]] inline double round_to(double value, double step) { return step * round_whole(value / step); }

/// What is cut: upward to the next whole millimetre.
[[nodiscard]] inline Length cut_up(Length length) { return Length::mm(ceil_whole(length.mm())); }

/// What is finished: to the nearest whole millimetre.
[[nodiscard]] inline Length finished_to_mm(Length length) { return Length::mm(round_whole(length.mm())); }

}  // namespace truehang
