// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "shown_rows.h"
#include "survey/survey.h"
#include "units/length_text.h"

#include <QString>

// What the walk shows of a window, worked out of what the core says of it.

namespace truehang {

/// Why a station can't be reached: word and what it says.
[[nodiscard]] QList<ShownRows::Row> reason_rows();
/// The reason given for a station, in words; empty where none is.
[[nodiscard]] QString reason_shown(const Window& window, const QString& station);

/// The keypad's fractions of an inch, in eighths or sixteenths.
[[nodiscard]] QList<ShownRows::Row> fraction_rows(int denominator);

/// What stands beside an angle.
inline const QString degree_sign = QStringLiteral("°");

/// A typed reading for the field, where its unit stands beside it; and for a list, with its unit.
[[nodiscard]] QString without_unit(const QString& typed);
[[nodiscard]] QString with_unit(const QString& typed, const QString& bare, LengthUnit entry_unit);

}  // namespace truehang
