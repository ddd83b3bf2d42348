// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/slips.h"

#include <optional>

namespace truehang {

/// How often a reading is a slip at all (common practice, no source).
inline constexpr double slip_rate = 0.02;

/// The density, per mm or degree, of a slip that nothing explains: log-uniform from 2 mm to 4 m, of an angle from 1 to
/// 180 degrees, to either side.
[[nodiscard]] double unexplained_density(double slip, bool is_angle);

/// A reading that was taken again for itself and said the same within what tape and edges explain.
[[nodiscard]] bool was_confirmed(const Window& window, const CountedReading& reading, const TapeRule& tape);

/// What a length's station said before it was taken again for it (mm); nothing where it wasn't.
[[nodiscard]] std::optional<double> earlier_value(const Window& window, const CountedReading& reading);

/// Stations of one stretch (the jambs, the sides of one kind, the corners of a bay): their readings lie near each other
/// anyway.
[[nodiscard]] bool are_kin(const Station& a, const Station& b, Shape shape);

/// The logarithm of how much likelier a value (mm, degrees) is among the readings of the same stretch elsewhere than
/// what was read; 0 where there are none.
[[nodiscard]] double log_kinship(const SlipEvidence& evidence, const CountedReading& reading, double value);

}  // namespace truehang
