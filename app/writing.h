// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"
#include "units/length_text.h"
#include "units/result.h"

#include <QString>
#include <optional>
#include <string>

// Between what the core says and what Qt shows: texts, and lengths in the surveyor's own unit.

namespace truehang {

[[nodiscard]] inline QString shown(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}
[[nodiscard]] inline std::string bytes(const QString& text) { return text.toStdString(); }

/// A failed call's sentence for a person; empty where it went well.
template <class T>
[[nodiscard]] QString fault_of(const Result<T>& result) {
    return result ? QString() : QString::fromStdString(result.error().text);
}

/// The decimal mark of the system's locale, '.' or ','.
[[nodiscard]] char decimal_mark();

/// The unit a survey is entered in; mm where it says none.
[[nodiscard]] LengthUnit entry_unit(const Survey& survey);
[[nodiscard]] LengthStyle length_style(const Survey& survey);

/// A length in the survey's entry unit, without the unit; empty for none.
[[nodiscard]] QString shown(const Survey& survey, const std::optional<Length>& length);
/// A number with the locale's decimal mark, without needless decimals; empty for none.
[[nodiscard]] QString shown(const std::optional<double>& number);

/// What was typed in a field of a form: nothing where it is empty. A minus sign is understood where `may_be_negative`.
[[nodiscard]] Result<std::optional<Length>> read_field_length(const Survey& survey, const QString& typed,
                                                              bool may_be_negative = false);
/// A plain number between two bounds, either decimal mark; nothing where it is empty.
[[nodiscard]] Result<std::optional<double>> read_field_number(const QString& typed, double least, double most);

/// Degrees, north and east positive, as maps give them: “54.6, -1.1”, “54,6 N; 1,1 W”; nothing where it is empty.
struct Coordinates {
    double latitude = 0.0, longitude = 0.0;
};
[[nodiscard]] Result<std::optional<Coordinates>> read_coordinates(const QString& typed);

/// The first letter small, for a station's words within a sentence, where the language does so.
[[nodiscard]] QString within_sentence(const QString& says);

}  // namespace truehang
