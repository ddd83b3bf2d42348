// SPDX-License-Identifier: Apache-2.0
#include "document/rules_document.h"

#include "document/object_writer.h"
#include "document/survey_parts.h"
#include "sizing/headings.h"
#include "survey/house_rules.h"

#include <fmt/format.h>

#include <array>

namespace truehang {

namespace {

constexpr std::string_view rules_format = "truehang.rules/1";

void read_rules_format(ObjectReader& reader) {
    std::string format;
    reader.text("format", format, Presence::required);
    if (!format.empty() && format != rules_format) {
        reader.fault("format", fmt::format("The format must be {}, not {}.", rules_format, json_string(format)));
    }
}

}  // namespace

void write_rule_values(ObjectWriter& object, JsonText& out, const HouseRuleEntries& rules) {
    for (const auto& [key, number] : rules.numbers) {
        object.number(key, std::optional(number));
    }
    if (!rules.head_mm.empty()) {
        object.begin("head_mm");
        static const Extra nothing;
        ObjectWriter heads(out, nothing);
        for (const auto& [heading, number] : rules.head_mm) {
            heads.number(heading, std::optional(number));
        }
        heads.end();
    } else {
        object.fall_back("head_mm");
    }
}

RulesDocument read_labelled_rules(ObjectReader& reader) {
    RulesDocument document;
    static_cast<void>(reader.take("name", Presence::required));
    static_cast<void>(reader.take("rules", Presence::required));
    read_rules_label(reader, document.rules);
    reader.object("rules", [&](ObjectReader& values) { read_rule_values(values, document.rules, {}); });
    document.extra = reader.rest();
    return document;
}

void write_labelled_rules(ObjectWriter& object, JsonText& out, const HouseRuleEntries& rules) {
    object.required_text("name", rules.name);
    object.whole("version", rules.version);
    object.text("date", rules.date);
    object.begin("rules");
    ObjectWriter values(out, rules.extra);
    write_rule_values(values, out, rules);
    values.end();
}

Result<RulesDocument, Faults> read_rules_document(std::string_view bytes) {
    RulesDocument document;
    Faults faults = read_whole_document(bytes, "A house rules document", [&](ObjectReader& reader) {
        read_rules_format(reader);
        document = read_labelled_rules(reader);
    });
    if (!faults.empty()) {
        return faults;
    }
    return document;
}

std::string write_rules_document(const RulesDocument& document, bool pretty) {
    JsonText out(pretty);
    ObjectWriter object(out, document.extra);
    object.required_text("format", rules_format);
    write_labelled_rules(object, out, document.rules);
    object.end();
    std::string text = out.take();
    if (pretty) {
        text += '\n';
    }
    return text;
}

RulesDocument default_rules_document() {
    RulesDocument document;
    document.rules.name = "Defaults of the trade rules";
    const HouseRules defaults;
    for (const std::string& key : house_rule_keys()) {
        document.rules.numbers[key] = rule_value(defaults, key).value_or(0.0);
    }
    document.rules.numbers.erase("making_per_width");  // none is shown where none is set
    for (const auto& [word, heading] : Words<Heading>::list) {
        if (heading != Heading::slot && heading != Heading::roman) {
            document.rules.head_mm[std::string(word)] = heading_rule(heading).head_mm;
        }
    }
    return document;
}

std::optional<std::string> why_not_rule(std::string_view key, double value) {
    const NumberRange range = range_of_rule(key);
    return lies_within(value, range) ? std::nullopt : std::optional(says_range(value, range));
}

namespace {

constexpr std::string_view head_prefix = "head_mm.";

/// The heading of a key `head_mm.tab`, where one is known that has a head of its own.
std::optional<Heading> heading_of(std::string_view key) {
    const auto heading =
        key.starts_with(head_prefix) ? Word<Heading>::find(key.substr(head_prefix.size())) : std::nullopt;
    return heading == Heading::slot || heading == Heading::roman ? std::nullopt : heading;
}

template <class Key>
void put(std::map<std::string, double>& values, const Key& key, std::optional<double> value) {
    if (value) {
        values[std::string(key)] = *value;
    } else {
        values.erase(std::string(key));
    }
}

}  // namespace

Result<Done> set_rule(HouseRuleEntries& rules, std::string_view key, std::optional<double> value) {
    const bool is_head = heading_of(key).has_value();
    if (!is_head && !rule_value(HouseRules(), key)) {
        return Error{ErrorCode::missing, std::string(key), "No house rule of this name is known here."};
    }
    const auto refused = value ? why_not_rule(is_head ? head_prefix.substr(0, head_prefix.size() - 1) : key, *value)
                               : std::optional<std::string>();
    if (refused) {
        return Error{ErrorCode::out_of_range, std::string(key), *refused};
    }
    if (is_head) {
        put(rules.head_mm, key.substr(head_prefix.size()), value);
    } else {
        put(rules.numbers, key, value);
    }
    return Done{};
}

std::optional<double> worth_of_rule(const HouseRuleEntries& rules, std::string_view key) {
    if (const auto heading = heading_of(key)) {
        const auto own = rules.head_mm.find(std::string(key.substr(head_prefix.size())));
        return own == rules.head_mm.end() ? heading_rule(*heading).head_mm : own->second;
    }
    return rule_value(house_rules(rules), key);
}

}  // namespace truehang
