// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/object_reader.h"
#include "document/rules_document.h"

#include <set>
#include <span>
#include <string>
#include <string_view>

// How the parts of a survey are read from their objects; survey_reader.cpp puts them together.

namespace truehang {

/// The ids of one list as they are met. The second of a pair is at fault.
class Ids {
public:
    /// A fault at the reader's "id" where `id` stood before; an empty id is no id.
    void add(ObjectReader& reader, const std::string& id);
    [[nodiscard]] bool contains(std::string_view id) const { return seen_.contains(id); }
    [[nodiscard]] std::size_t size() const { return seen_.size(); }

private:
    std::set<std::string, std::less<>> seen_;
};

/// What a treatment may name, and whether every fabric said what it is called.
struct FabricNames {
    Ids ids;
    bool complete = true;
};

[[nodiscard]] Fabric read_fabric(ObjectReader& reader);
/// House rules as a survey holds them: their name, version and date beside the values.
[[nodiscard]] HouseRuleEntries read_rules(ObjectReader& reader);
/// A label with its rules below it, as a rules document has them.
[[nodiscard]] RulesDocument read_labelled_rules(ObjectReader& reader);
/// `name`, `version` and `date` of house rules.
void read_rules_label(ObjectReader& reader, HouseRuleEntries& rules);
/// Every other member as a rule, but those in `labels`; what isn't known is kept.
void read_rule_values(ObjectReader& reader, HouseRuleEntries& rules, std::span<const std::string_view> labels);
/// Between what a known rule may lie.
[[nodiscard]] NumberRange range_of_rule(std::string_view key);
[[nodiscard]] Reading read_reading(ObjectReader& reader, Shape shape);
[[nodiscard]] Obstruction read_obstruction(ObjectReader& reader);
[[nodiscard]] Photo read_photo(ObjectReader& reader);
[[nodiscard]] Hardware read_hardware(ObjectReader& reader);
[[nodiscard]] Treatment read_treatment(ObjectReader& reader, const FabricNames& fabrics);

}  // namespace truehang
