// SPDX-License-Identifier: Apache-2.0
#include "workroom/rules_command.h"

#include "document/rules_document.h"
#include "survey/house_rules.h"
#include "workroom/documents.h"

#include <fmt/format.h>

namespace truehang::workroom {

namespace {

std::string title_of(const HouseRuleEntries& rules) {
    std::string title = rules.name.empty() ? "House rules without a name" : rules.name;
    if (rules.version) {
        title += fmt::format(", version {}", *rules.version);
    }
    return title + (rules.date.empty() ? "" : " of " + rules.date);
}

/// What the document sets, a line each: a rule at its default is left out.
std::string told(const HouseRuleEntries& rules) {
    const HouseRules defaults;
    std::string lines;
    int others = 0;
    for (const RuleWords& words : rule_words()) {
        const auto set = rules.numbers.find(std::string(words.key));
        const double usual = rule_value(defaults, words.key).value_or(0.0);
        if (set != rules.numbers.end() && set->second != usual) {
            lines += fmt::format("{}: {:g}, the default is {:g}. {}.\n", words.key, set->second, usual, words.says);
            ++others;
        }
    }
    const RulesDocument usual = default_rules_document();
    for (const auto& [heading, value] : rules.head_mm) {
        const auto found = usual.rules.head_mm.find(heading);
        if (found == usual.rules.head_mm.end() || found->second != value) {
            lines += fmt::format("head_mm of {}: {:g}. Cloth taken above the finished top.\n", heading, value);
            ++others;
        }
    }
    std::string text = title_of(rules) + fmt::format(": {} not at the default.\n", others) + lines;
    for (const std::string& key : unknown_rules(rules)) {
        text += fmt::format("not-understood: “{}” is kept, but this version of the program doesn’t know it.\n", key);
    }
    return text;
}

int check_rules(const std::string& path) {
    if (path.empty()) {
        return write_out(write_rules_document(default_rules_document()), "") ? 0 : refused;
    }
    const auto bytes = read_document(path);
    if (!bytes) {
        fmt::print(stderr, "{}: {}\n", bytes.error().where, bytes.error().text);
        return refused;
    }
    const auto document = read_rules_document(*bytes);
    if (!document) {
        print_faults(document.error());
        return refused;
    }
    return write_out(told(document->rules), "") ? 0 : refused;
}

}  // namespace

void add_rules(CLI::App& app, std::string& path, int& result) {
    auto* command = app.add_subcommand("rules", "Print the default house rules as a document, or check one");
    command->add_option("rules", path, "The rules document, or - for standard input; none: the defaults");
    command->callback([&] { result = check_rules(path); });
}

}  // namespace truehang::workroom
