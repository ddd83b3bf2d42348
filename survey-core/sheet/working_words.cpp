// SPDX-License-Identifier: Apache-2.0
#include "sheet/working_words.h"

#include "survey/house_rules.h"
#include "survey/stations.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>

namespace truehang {

namespace {

/// At most two decimals, none that are nought.
std::string trimmed(double value, const SheetStyle& style) {
    for (const int decimals : {0, 1}) {
        const double scale = std::pow(10.0, decimals);
        if (std::abs(std::round(value * scale) / scale - value) < 0.005) {
            return number_text(value, decimals, style);
        }
    }
    return number_text(value, 2, style);
}

std::string length_text(double mm, int decimals, const SheetStyle& style) {
    return style.unit == LengthUnit::mm ? number_text(mm, decimals, style) : written(Length::mm(mm), style);
}

std::string cut_text(double mm, const SheetStyle& style) {
    return style.unit == LengthUnit::mm ? number_text(mm, 0, style) : written_cut(Length::mm(mm), style);
}

/// "a + b − c = d"; to a tenth where whole numbers wouldn't seem to add up.
std::string sum_text(const std::vector<double>& terms, double sum, const SheetStyle& style) {
    double rounded = 0.0;
    for (const double term : terms) {
        rounded += round_whole(term);
    }
    const int decimals = rounded == round_whole(sum) ? 0 : 1;
    std::string text;
    for (const double term : terms) {
        if (round_to(term, 0.1) == 0.0 && !text.empty()) {
            continue;
        }
        const std::string number = length_text(std::abs(term), decimals, style);
        text += text.empty() ? (term < 0.0 ? "−" : "") + number : (term < 0.0 ? " − " : " + ") + number;
    }
    return terms.size() < 2 ? text : text + " = " + length_text(sum, decimals, style);
}

/// What a step's `from` says after a word: "2" of "shrinkage 2 %".
std::string said_after(const TraceStep& step, std::string_view word) {
    for (const std::string& from : step.from) {
        if (from.starts_with(word)) {
            return from.substr(word.size());
        }
    }
    return {};
}

std::string with_decimal(std::string text, const SheetStyle& style) {
    std::ranges::replace(text, '.', style.decimal);
    return text;
}

std::string repeats_text(const TraceStep& step, const SheetStyle& style) {
    const double count = step.count.value_or(0.0);
    const bool half = std::abs(count - std::floor(count) - 0.5) < whole_tolerance;
    const std::string number = half ? number_text(std::floor(count), 0, style) + "½" : trimmed(count, style);
    std::string repeat = said_after(step, "repeat ");
    double mm = 0.0;
    const auto read = std::from_chars(repeat.data(), repeat.data() + repeat.size(), mm);
    if (style.unit == LengthUnit::in && read.ec == std::errc()) {
        repeat = written(Length::mm(mm), style);
    }
    const std::string of = with_decimal(repeat, style);
    return "; " + (count == 1.0 ? say("{} repeat of {}", number, of) : say("{} repeats of {}", number, of));
}

std::string value_text(const TraceStep& step, const SheetStyle& style) {
    if (step.mm) {
        return style.unit == LengthUnit::mm ? trimmed(*step.mm, style) : written(Length::mm(*step.mm), style);
    }
    if (step.count) {
        return trimmed(*step.count, style);
    }
    return step.ratio ? number_text(*step.ratio, 4, style) : std::string();
}

}  // namespace

namespace {

/// "house rule: hem" of hem_mm; in another language the rule’s own sentence.
std::string rule_in_words(std::string key) {
    const auto rule = std::ranges::find(rule_words(), key, &RuleWords::key);
    if (spoken() != nullptr && rule != rule_words().end()) {
        return say("house rule: {}", worded(rule->says));
    }
    if (key.ends_with("_mm")) {
        key.resize(key.size() - 3);
    }
    std::ranges::replace(key, '_', ' ');
    return say("house rule: {}", key);
}

}  // namespace

std::string source_in_words(const std::string& from, const Window& window) {
    if (const auto shape = window.shape.known()) {
        if (const auto station = find_station(*shape, from)) {
            return within_sentence(station_words(*station));
        }
    }
    std::string text = from;
    if (text.starts_with("rule ")) {
        return rule_in_words(text.substr(5));
    }
    if (const std::string said = figure_text(from); said != from) {
        return within_sentence(said);
    }
    if (text.ends_with("_mm")) {
        text.resize(text.size() - 3);
    }
    std::ranges::replace(text, '_', ' ');
    return worded(text);
}

const Trace* find_trace(const WindowFigures& figures, std::string_view figure, std::string_view layer) {
    const auto found = std::ranges::find_if(figures.trace, [&](const Trace& trace) {
        return trace.figure == figure && (trace.layer.empty() || trace.layer == layer);
    });
    return found == figures.trace.end() ? nullptr : &*found;
}

std::optional<double> step_value(const Trace& trace, std::string_view what) {
    const auto found = std::ranges::find(trace.steps, what, &TraceStep::what);
    if (found == trace.steps.end()) {
        return std::nullopt;
    }
    return found->mm ? found->mm : found->count;
}

std::string cut_working(const Trace* trace, const SheetStyle& style) {
    if (trace == nullptr) {
        return {};
    }
    std::vector<double> terms;
    std::string text;
    double last = 0.0;
    for (const TraceStep& step : trace->steps) {
        if (step.what == "before shrinkage" && step.mm) {
            text = sum_text(terms, *step.mm, style);
            last = *step.mm;
        } else if (step.what == "with shrinkage" && step.mm) {
            const double cut = ceil_whole(*step.mm);
            text += ", " + say("with {} shrinkage {}", with_decimal(said_after(step, "shrinkage "), style),
                               cut_text(cut, style));
            last = cut;
        } else if (step.what == "repeats") {
            text += repeats_text(step, style);
        } else if (step.what == "trim at the head" && step.mm) {
            text += "; " + say("trim {} at the head", length_text(*step.mm, 0, style));
            last += *step.mm;
        } else if (step.what == "cut drop" && step.mm) {
            if (round_whole(last) != round_whole(*step.mm)) {
                text += ", " + say("cut {}", cut_text(*step.mm, style));
            }
        } else if (step.mm && text.empty()) {
            terms.push_back(*step.mm);
        }
    }
    return text;
}

std::string tab_working(const Trace* trace, const Tabs& tabs, const SheetStyle& style) {
    std::string text = written_cut(tabs.cut_length, style);
    if (trace != nullptr) {
        for (const TraceStep& step : trace->steps) {
            const std::string shrinkage = step.what == "each row" ? said_after(step, "shrinkage ") : std::string();
            if (!shrinkage.empty() && shrinkage != "0 %") {
                text += " " + say("with {} shrinkage", with_decimal(shrinkage, style));
            }
        }
        const auto rows = step_value(*trace, "rows");
        const auto per_row = step_value(*trace, "tabs in a row across the cloth");
        if (rows && per_row) {
            text += "; " + say("in {} of {}", counted(static_cast<int>(*rows), to_say("row"), to_say("rows")),
                               static_cast<int>(*per_row));
        }
    }
    return text + "; " + say("hang {} over the pole", written(tabs.hang, style)) + "; " +
           say("{} to a curtain", count_word(tabs.each));
}

std::vector<std::string> steps_in_words(const Trace& trace, const Window& window, const SheetStyle& style) {
    std::vector<std::string> lines;
    for (const TraceStep& step : trace.steps) {
        std::string line = worded(step.what);
        if (!line.empty()) {
            line[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(line[0])));
        }
        line += ": " + value_text(step, style);
        std::string sources;
        for (const std::string& from : step.from) {
            sources += sources.empty() ? "" : "; ";
            sources += with_decimal(source_in_words(from, window), style);
        }
        lines.push_back(sources.empty() ? line : fmt::format("{} ({})", line, sources));
    }
    return lines;
}

}  // namespace truehang
