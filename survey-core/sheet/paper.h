// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace truehang {

/// A drawing's pixels of millimetres on paper: 96 to the inch, as CSS has it.
inline constexpr double px_in_mm = 25.4 / 96.0;
/// The widest drawing in one of a sheet's two columns, mm.
inline constexpr double column_width = 97.0;

/// What sheets are printed on: A4 is 210 × 297 mm (ISO 216), US Letter 215.9 × 279.4 mm (ANSI Y14.1).
enum class Paper { a4, letter };
[[nodiscard]] std::string_view word_of(Paper paper);
[[nodiscard]] std::optional<Paper> paper_of(std::string_view word);

/// The paper of a territory (ISO 3166 code): US Letter where the locales of the GNU C Library
/// have it, else A4.
[[nodiscard]] Paper paper_of_territory(std::string_view territory);

/// The paper of a locale's name as POSIX writes it, "en_US.UTF-8"; A4 where it names no territory.
[[nodiscard]] Paper paper_of_locale(std::string_view locale);

}  // namespace truehang
