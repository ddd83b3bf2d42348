// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/document.h"

#include <optional>
#include <string>
#include <string_view>

// House rules as a document of their own (format truehang.rules/1): what a workroom writes down once, versions, and
// shares. `name`, `version`, `date`, and the rules by their keys in `rules`; a survey keeps the same beside its
// windows.

namespace truehang {

/// A rules document as it was read.
struct RulesDocument {
    HouseRuleEntries rules;  ///< unknown rules among its numbers and its `extra`
    Extra extra;             ///< unknown keys beside them
};

/// Reads a rules document, with every fault at its pointer and, of a rule out of range, the range. Unknown rules are no
/// fault: they are kept, and `unknown_rules` names them.
[[nodiscard]] Result<RulesDocument, Faults> read_rules_document(std::string_view bytes);

/// Writes it: reading what was written gives the same.
[[nodiscard]] std::string write_rules_document(const RulesDocument& document, bool pretty = true);

/// Every rule that has a default, at that default.
[[nodiscard]] RulesDocument default_rules_document();

/// Why a known rule can't have this value, or nothing: "-3 lies outside its range: from 0, up to 100000."
[[nodiscard]] std::optional<std::string> why_not_rule(std::string_view key, double value);

/// Sets a rule by its key (`hem_mm`, `head_mm.tab`), or takes it out so that the default holds. What a document would
/// refuse is refused in the same words, and nothing is changed. Errors: `out_of_range`; `missing` where no such rule is
/// known.
[[nodiscard]] Result<Done> set_rule(HouseRuleEntries& rules, std::string_view key, std::optional<double> value);

/// What a rule is worth by its key, `head_mm` by heading too; nothing of a key that isn't known.
[[nodiscard]] std::optional<double> worth_of_rule(const HouseRuleEntries& rules, std::string_view key);

}  // namespace truehang
