// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"
#include "units/moment.h"
#include "units/result.h"

#include <nlohmann/json_fwd.hpp>

#include <string>
#include <string_view>
#include <vector>

namespace truehang {

struct Figures;
struct Choices;

/// One fault of a document: where (RFC 6901 JSON pointer, "" for the whole) and one sentence that says what is wrong
/// and what is asked.
struct Fault {
    std::string pointer;
    std::string text;
};
using Faults = std::vector<Fault>;

/// Reads a survey document (UTF-8 JSON, at most 4 MiB, at most 100 deep). All faults come in one go; nothing is
/// half-read. Unknown keys and unknown words of lists are no faults: they are kept. Counts are limited too: 500,000
/// values, 1,000 fabrics, rooms and house rules, 10,000 windows in all; of a window 2,000 readings, 1,000 obstructions
/// and photos, 20 layers (document/limits.h).
[[nodiscard]] Result<Survey, Faults> read_survey(std::string_view bytes);

/// Writes the document: the contract's keys in the contract's order, then unknown keys in theirs. Reading what was
/// written gives an equal survey. Indented by two where `pretty`.
[[nodiscard]] std::string write_survey(const Survey& survey, bool pretty = true);

/// What the digest of an agreement is taken of: all but the digest, as it is written on one line.
[[nodiscard]] std::string sealed_text(const Agreed& agreed);

/// The figures document as JSON (format truehang.figures/1), and as text.
[[nodiscard]] nlohmann::ordered_json figures_json(const Figures& figures);
[[nodiscard]] std::string write_figures(const Figures& figures);

/// Choices side by side as JSON text (format truehang.choices/1).
[[nodiscard]] std::string write_choices(const Choices& compared);

/// An RFC 3339 time with an offset, to the millisecond; a leap second is the first of the next minute. None for any
/// other text.
[[nodiscard]] std::optional<Moment> read_rfc3339(std::string_view text);
/// Used for every time key.
[[nodiscard]] bool is_rfc3339(std::string_view text);

}  // namespace truehang
