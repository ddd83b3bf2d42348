// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/rules_document.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace truehang::workroom {

/// The fields of a form as they came: name and text, decoded.
using FormFields = std::map<std::string, std::string>;

/// Reads application/x-www-form-urlencoded; of a name that stands twice the last counts.
[[nodiscard]] FormFields read_form(std::string_view body);

/// What a person typed, made into rules: fields that can't be taken are in `faults` by their name, with a sentence.
struct TypedRules {
    RulesDocument document;
    std::map<std::string, std::string> faults;
};

/// The rules of `before` with what was typed over them. An empty field takes a rule back to its default; a comma counts
/// as a decimal point; what the form doesn't show is kept.
[[nodiscard]] TypedRules typed_rules(const RulesDocument& before, const FormFields& fields);

/// What the page has to say beside the rules.
struct RulesPage {
    std::vector<long long> versions;            ///< that are here, rising
    std::string said;                           ///< one sentence at the top, or nothing
    FormFields typed;                           ///< shown in place of the rules, where it couldn't be taken
    std::map<std::string, std::string> faults;  ///< by field
    bool may_set = true;                        ///< by the one who looks
};

/// The page on which a workroom sees its house rules and sets them.
[[nodiscard]] std::string rules_page(const RulesDocument& document, const RulesPage& page);

}  // namespace truehang::workroom
