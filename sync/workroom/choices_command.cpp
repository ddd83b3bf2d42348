// SPDX-License-Identifier: Apache-2.0
#include "workroom/choices_command.h"

#include "document/document.h"
#include "figures/choices.h"
#include "workroom/documents.h"
#include "workroom/site/sheet_page.h"

#include <fmt/format.h>

#include <algorithm>

namespace truehang::workroom {

namespace {

constexpr std::size_t most_choices = 100;

/// Each variation once for each value, with `set` done to it; as they were where there is no value.
template <class Value, class Set>
void multiply(std::vector<Variation>& variations, const std::vector<Value>& values, const Set& set) {
    if (values.empty()) {
        return;
    }
    std::vector<Variation> multiplied;
    for (const Variation& variation : variations) {
        for (const Value& value : values) {
            multiplied.push_back(variation);
            set(multiplied.back(), value);
        }
    }
    variations = std::move(multiplied);
}

std::vector<Variation> variations_of(const ChoicesOptions& options) {
    std::vector<Variation> variations(1);
    multiply(variations, options.headings,
             [](Variation& one, const std::string& word) { one.heading = Word<Heading>::find(word); });
    multiply(variations, options.fullness, [](Variation& one, double fullness) { one.fullness = fullness; });
    multiply(variations, options.lengths,
             [](Variation& one, const std::string& word) { one.length = Word<HemAt>::find(word); });
    multiply(variations, options.fabrics, [](Variation& one, const std::string& id) { one.fabric = id; });
    multiply(variations, options.linings,
             [](Variation& one, const std::string& id) { one.lining = id == "none" ? "" : id; });
    multiply(variations, options.hardware_mm, [](Variation& one, double mm) { one.hardware_length = Length::mm(mm); });
    std::erase(variations, Variation{});
    return variations;
}

int print_choices(const ChoicesOptions& options) {
    const auto survey = survey_or_faults(options.survey);
    if (!survey) {
        return refused;
    }
    const auto place = find_window(*survey, options.window, options.layer);
    if (!place) {
        fmt::print(stderr, "{}: the survey has no such window or layer.\n", options.window);
        return refused;
    }
    const auto variations = variations_of(options);
    if (variations.size() > most_choices) {
        fmt::print(stderr, "--heading …: at most {} choices are compared at once.\n", most_choices);
        return refused;
    }
    const auto compared = compare(*survey, place->room->id, place->window->id, options.layer, variations);
    if (!compared) {
        fmt::print(stderr, "--fabric, --lining: the survey has no such fabric, or nothing hangs at the window.\n");
        return refused;
    }
    return write_out(write_choices(*compared), "") ? 0 : refused;
}

template <class E>
CLI::Validator word_of_list() {
    std::vector<std::string> words;
    for (const auto& [word, value] : Words<E>::list) {
        words.emplace_back(word);
    }
    return CLI::IsMember(words);
}

}  // namespace

void add_choices(CLI::App& app, ChoicesOptions& options, int& result) {
    auto* command =
        app.add_subcommand("choices", "Compare ways to hang one window: every combination of what is given");
    command->add_option("survey", options.survey, "The survey document, or - for standard input")->required();
    command->add_option("--window", options.window, "The window’s id, or ROOM/ID")->required();
    command->add_option("--layer", options.layer, "The layer’s id; the first where none is given");
    command->add_option("--heading", options.headings, "Another heading")->check(word_of_list<Heading>());
    command->add_option("--fullness", options.fullness, "Another fullness")->check(CLI::Range(0.0, 100.0));
    command->add_option("--length", options.lengths, "Where the hem hangs")->check(word_of_list<HemAt>());
    command->add_option("--fabric", options.fabrics, "Another face cloth, by its id");
    command->add_option("--lining", options.linings, "Another lining, by its id, or none");
    command->add_option("--hardware-mm", options.hardware_mm, "Another length of pole or track")
        ->check(CLI::Range(0.0, 100000.0));
    command->callback([&] { result = print_choices(options); });
}

}  // namespace truehang::workroom
