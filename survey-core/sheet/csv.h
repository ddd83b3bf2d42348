// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "survey/survey.h"

#include <optional>
#include <string>
#include <string_view>

namespace truehang {

enum class CsvOf { orders, pieces };
[[nodiscard]] std::optional<CsvOf> csv_of_word(std::string_view word);

/// The media type of these files (RFC 4180 registers it, and `header`).
inline constexpr std::string_view csv_type = "text/csv; charset=utf-8; header=present";

/// The orders of a survey, a line a cloth, or all pieces in the order of cutting, a line a piece, as RFC 4180 has it:
/// CRLF, a head line, fields in quotes where they need them. Lengths are whole mm with no unit, metres with a point. A
/// text that a spreadsheet would take for a formula gets an apostrophe before it, so that it stays text.
[[nodiscard]] std::string csv_of(const Survey& survey, const Figures& figures, CsvOf what);

/// One field as it is written.
[[nodiscard]] std::string csv_field(std::string_view text);

}  // namespace truehang
