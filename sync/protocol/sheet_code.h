// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

// What a printed sheet is told apart by: twelve characters of the pairing code's alphabet, in three groups of four
// ("7K2M-QX4D-9ABC"), the first 60 bits of the SHA-256 of the document that it was worked from. Whoever has no sheet
// and no document can't count up to one.

namespace truehang::sync {

/// How many hexadecimal digits of the digest a code holds.
inline constexpr std::size_t sheet_code_digits = 15;

/// The code of a document by its digest, 64 hexadecimal digits; empty for anything else.
[[nodiscard]] std::string sheet_code(std::string_view sha256_hex);

/// The digits that the digest begins with; case, spaces and hyphens don't matter, O counts as 0, I and L as 1. Nothing
/// where it can't be a code.
[[nodiscard]] std::optional<std::string> read_sheet_code(std::string_view typed);

/// `/sheet/{code}`: says whether the sheet is current.
[[nodiscard]] std::string sheet_code_path(std::string_view code);

}  // namespace truehang::sync
