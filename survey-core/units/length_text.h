// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/length.h"
#include "units/result.h"

#include <optional>
#include <string>
#include <string_view>

namespace truehang {

/// The units a surveyor may enter lengths in.
enum class LengthUnit { mm, cm, m, in };

/// What a typed reading says: the length and the unit it was written in (feet count as `in`).
struct TypedLength {
    Length length;
    LengthUnit unit = LengthUnit::mm;
    bool unit_written = false;  ///< false: `entry_unit` was taken
};

/// Reads what people type: "1240", "124.5", "124,5 cm", "1.24 m", "48 3/8", "4' 3 1/2\"", "48 3/8 in".
/// A number without a unit is in `entry_unit`. One decimal point or comma is understood, no thousands separator: one to
/// three digits, a point or comma and exactly three digits in mm ("1,240") could mean two things and is refused as
/// `ambiguous`. Range 0 to 100,000 mm. Errors: `unreadable`, `ambiguous`, `out_of_range`, each with a sentence that
/// says what is understood.
[[nodiscard]] Result<TypedLength> read_length(std::string_view typed, LengthUnit entry_unit);

/// How a length is written back.
struct LengthStyle {
    LengthUnit unit = LengthUnit::mm;
    int inch_denominator = 8;  ///< 8 or 16, for inches
    char decimal = '.';        ///< the locale's decimal mark
    bool with_unit = false;    ///< append " mm", " cm", " m", " in"
};

/// Writes a length: mm whole or to one decimal where it isn't whole, cm to one more, m to three, inches as whole and
/// lowest-terms fraction, rounded to the nearest 1/8 or 1/16.
[[nodiscard]] std::string write_length(Length length, const LengthStyle& style);

/// A length in a sentence, with its unit: whole mm, cm to one decimal, m to three, inches to the nearest 1/16.
[[nodiscard]] std::string said_length(Length length, LengthUnit unit);

/// "mm", "cm", "m" or "in"; nothing for any other word.
[[nodiscard]] std::optional<LengthUnit> length_unit(std::string_view word);
[[nodiscard]] std::string_view word_of(LengthUnit unit);

}  // namespace truehang
