// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/document.h"

#include <optional>
#include <string>

namespace truehang {
struct RollsThatCame;
}  // namespace truehang

namespace truehang::workroom {

/// What a command exits with where it was refused, and said why.
inline constexpr int refused = 2;

/// The bytes of a file, or of standard input for "-", as far as one over the largest document goes. Errors: `missing`,
/// `io`.
[[nodiscard]] Result<std::string> read_document(const std::string& path);

/// The survey in a file or on standard input. Where it can't be read, the faults go to standard error, one a line as
/// `"POINTER": text`, the pointer as a JSON string.
[[nodiscard]] std::optional<Survey> survey_or_faults(const std::string& path);

/// Prints each fault to standard error, one a line as `"POINTER": text`.
void print_faults(const Faults& faults);

/// The rolls that came for a survey, from a file or standard input, with faults as above.
[[nodiscard]] std::optional<RollsThatCame> rolls_or_faults(const std::string& path, const Survey& survey);

/// Writes all of `text` to standard output, or to `file` where it isn't empty; false and a line on standard error where
/// that fails.
[[nodiscard]] bool write_out(const std::string& text, const std::string& file);

}  // namespace truehang::workroom
