// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/rolls_document.h"
#include "workroom/site/rules_page.h"

#include <map>
#include <string>

namespace truehang::workroom {

inline constexpr std::size_t most_rows = 200;

/// What a person typed about the rolls of one fabric, made into a document: fields that can't be taken are in `faults`
/// by their name, with a sentence that says what to do.
struct TypedRolls {
    RollsThatCame came;
    std::map<std::string, std::string> faults;
};

/// Whether a form is one of this page's: a fabric the survey has, and a count of rows that is a number.
[[nodiscard]] bool is_rolls_form(const FormFields& fields, const Survey& survey);

/// The rolls of `before` with those of the form's fabric as typed, in the survey's entry unit where no unit is written.
/// A row without anything in it is no roll. Flaws are written "from–to" or as one place, several with ";" between;
/// joins as a place, or "17500 line 17620" where the pattern starts anew behind it.
[[nodiscard]] TypedRolls typed_rolls(const RollsThatCame& before, const Survey& survey, const FormFields& fields);

/// The fields of one fabric's rolls, as `typed_rolls` reads them back to the same.
[[nodiscard]] FormFields form_of(const RollsThatCame& came, const Survey& survey, const std::string& fabric);

/// The survey's entry unit; mm where it has none that is known.
[[nodiscard]] LengthUnit entry_unit_of(const Survey& survey);

/// "length.3"
[[nodiscard]] std::string row_field(const char* name, std::size_t row);

}  // namespace truehang::workroom
