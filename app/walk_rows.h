// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "shown_rows.h"
#include "survey/stations.h"
#include "units/length_text.h"

#include <QPair>
#include <QString>
#include <functional>

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

/// How a reading that isn't kept yet fits: the text, and `quiet`, `adds-up` or `differs`.
struct LineUnderNumber {
    QString text;
    QString kind;
};
/// `worked`: the window's figures with the reading in it.
[[nodiscard]] LineUnderNumber line_under_number(const WindowFigures& worked, const Station& station);

/// The readings that may be at fault: the flag's suspects, or where it has none, all that it names.
[[nodiscard]] QList<ShownRows::Row> suspect_rows(const Flag& flag, const LengthStyle& style,
                                                 const std::function<QString(const QString&)>& says,
                                                 const std::function<const Reading*(std::string_view)>& kept);

/// A text's first sentence without its stop, and the rest.
[[nodiscard]] QPair<QString, QString> first_sentence(const QString& text);

}  // namespace truehang
