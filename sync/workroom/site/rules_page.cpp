// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/rules_page.h"

#include "protocol/paths.h"
#include "sheet/words.h"
#include "sizing/headings.h"
#include "survey/house_rules.h"
#include "workroom/site/frame.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <optional>

namespace truehang::workroom {

namespace {

constexpr std::string_view head_prefix = "head_mm.";

std::string number_of(double value) { return fmt::format("{:g}", value); }

std::optional<double> typed_number(std::string text) {
    std::replace(text.begin(), text.end(), ',', '.');
    const auto first = text.find_first_not_of(' ');
    const auto last = text.find_last_not_of(' ');
    if (first == std::string::npos) {
        return std::nullopt;
    }
    double value = 0.0;
    const char* begin = text.data() + first;
    const char* end = text.data() + last + 1;
    const auto [stopped, fault] = std::from_chars(begin, end, value);
    return fault == std::errc{} && stopped == end && std::isfinite(value) ? std::optional(value) : std::nullopt;
}

bool is_blank(const std::string& text) { return text.find_first_not_of(' ') == std::string::npos; }

std::string unit_of(std::string_view key) {
    if (key.ends_with("_mm")) {
        return "mm";
    }
    if (key.ends_with("_m")) {
        return "m";
    }
    return key.ends_with("_deg") ? "°" : "";
}

/// Takes one field into a map of numbers: blank takes the rule out, a bad one is a fault.
void take(const FormFields& fields, const std::string& field, std::string_view key,
          std::map<std::string, double>& numbers, const std::string& name, TypedRules& typed) {
    const auto found = fields.find(field);
    if (found == fields.end()) {
        return;
    }
    if (is_blank(found->second)) {
        numbers.erase(name);
        return;
    }
    const auto number = typed_number(found->second);
    if (!number) {
        typed.faults[field] = "That isn’t a number. Write it as in 150 or 0.5.";
        return;
    }
    if (const auto why = why_not_rule(key, *number)) {
        typed.faults[field] = *why;
        return;
    }
    numbers[name] = *number;
}

struct Row {
    std::string field, says, unit;
    std::optional<double> set;
    double usual = 0.0;
};

View row_view(const Row& row, const RulesPage& page) {
    auto entry = view();
    const auto typed = page.typed.find(row.field);
    const auto fault = page.faults.find(row.field);
    entry.set("field", row.field);
    entry.set("says", row.says);
    entry.set("unit", row.unit);
    entry.set("value", typed != page.typed.end() ? typed->second : row.set ? number_of(*row.set) : "");
    entry.set("usual", row.field == "making_per_width" ? "none is shown" : number_of(row.usual));
    entry.set("changed", truth(row.set && *row.set != row.usual));
    entry.set("fault", fault == page.faults.end() ? truth(false) : View{fault->second});
    return entry;
}

View groups_view(const RulesDocument& document, const RulesPage& page) {
    const HouseRules defaults;
    auto groups = view_list();
    const auto words = rule_words();
    for (auto first = words.begin(); first != words.end();) {
        auto group = view();
        auto rows = view_list();
        const auto name = first->group;
        group.set("name", std::string(name));
        for (; first != words.end() && first->group == name; ++first) {
            const auto set = document.rules.numbers.find(std::string(first->key));
            rows << row_view({std::string(first->key), std::string(first->says), unit_of(first->key),
                              set == document.rules.numbers.end() ? std::nullopt : std::optional(set->second),
                              rule_value(defaults, first->key).value_or(0.0)},
                             page);
        }
        group.set("rows", rows);
        groups << group;
    }
    return groups;
}

/// Cloth above the finished top, a row for each heading whose default isn't worked from something else.
View heads_view(const RulesDocument& document, const RulesPage& page) {
    auto rows = view_list();
    for (const auto& [word, usual] : default_rules_document().rules.head_mm) {
        const auto set = document.rules.head_mm.find(word);
        const auto heading = Word<Heading>::find(word);
        rows << row_view({std::string(head_prefix) + word,
                          "Cloth above the finished top, " + std::string(heading_rule(*heading).says), "mm",
                          set == document.rules.head_mm.end() ? std::nullopt : std::optional(set->second), usual},
                         page);
    }
    return rows;
}

View versions_view(const RulesPage& page) {
    auto list = view_list();
    for (auto version = page.versions.rbegin(); version != page.versions.rend(); ++version) {
        auto entry = view();
        entry.set("href", sync::rules_path(*version));
        entry.set("version", std::to_string(*version));
        list << entry;
    }
    return list;
}

}  // namespace

FormFields read_form(std::string_view body) {
    FormFields fields;
    while (!body.empty()) {
        const auto end = body.find('&');
        std::string pair(body.substr(0, end));
        body = end == std::string_view::npos ? std::string_view{} : body.substr(end + 1);
        std::replace(pair.begin(), pair.end(), '+', ' ');
        const auto equals = std::min(pair.find('='), pair.size());
        const auto name = sync::percent_decode(pair.substr(0, equals));
        const auto value = sync::percent_decode(equals < pair.size() ? pair.substr(equals + 1) : "");
        if (name && value) {
            fields[*name] = *value;
        }
    }
    return fields;
}

TypedRules typed_rules(const RulesDocument& before, const FormFields& fields) {
    TypedRules typed{before, {}};
    auto& rules = typed.document.rules;
    if (const auto name = fields.find("name"); name != fields.end()) {
        rules.name = name->second;
    }
    if (is_blank(rules.name)) {
        typed.faults["name"] = "Give the rules a name, as in “Workroom, lined curtains”.";
    }
    for (const RuleWords& words : rule_words()) {
        take(fields, std::string(words.key), words.key, rules.numbers, std::string(words.key), typed);
    }
    for (const auto& [word, usual] : default_rules_document().rules.head_mm) {
        take(fields, std::string(head_prefix) + word, "head_mm", rules.head_mm, word, typed);
    }
    return typed;
}

std::string rules_page(const RulesDocument& document, const RulesPage& page) {
    auto values = view();
    const auto& rules = document.rules;
    const auto typed_name = page.typed.find("name");
    const auto fault = page.faults.find("name");
    values.set("name", typed_name == page.typed.end() ? rules.name : typed_name->second);
    values.set("may_set", truth(page.may_set));
    values.set("name_fault", fault == page.faults.end() ? truth(false) : View{fault->second});
    values.set("version", std::to_string(rules.version.value_or(0)));
    values.set("which", rules.version ? fmt::format("Version {} of {}.", *rules.version, day_text(rules.date))
                                      : std::string("Nothing has been set: the defaults hold."));
    values.set("said", page.said.empty() ? truth(false) : View{page.said});
    values.set("groups", groups_view(document, page));
    values.set("heads", heads_view(document, page));
    auto unknown = view_list();
    for (const std::string& key : unknown_rules(rules)) {
        unknown << View{key};
    }
    values.set("unknown_some", truth(!unknown_rules(rules).empty()));
    values.set("unknown", unknown);
    values.set("versions_some", truth(!page.versions.empty()));
    values.set("versions", versions_view(page));
    return framed({"House rules", "page-rules", {{"/", "Surveys"}}, false}, fill("rules", values));
}

}  // namespace truehang::workroom
