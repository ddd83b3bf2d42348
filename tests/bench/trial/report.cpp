// SPDX-License-Identifier: Apache-2.0
#include "report.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace truehang::trial {

namespace {

/// One of a thousand at one side.
constexpr double quantile = 3.0902;

double bound(double p, long long of) {
    const auto n = static_cast<double>(std::max<long long>(of, 1));
    return quantile * std::sqrt(p * (1.0 - p) / n) + 0.5 / n;
}

/// How many places a text takes: bytes that begin a letter.
std::size_t places(const std::string& text) {
    return static_cast<std::size_t>(
        std::ranges::count_if(text, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
}

std::string padded(const std::string& text, std::size_t width, bool left) {
    const std::string space(width - std::min(width, places(text)), ' ');
    return left ? text + space : space + text;
}

std::string set_in_columns(const Table& table) {
    std::vector<std::size_t> widths;
    for (std::size_t i = 0; i < table.headings.size(); ++i) {
        widths.push_back(places(table.headings[i]));
        for (const auto& row : table.rows) {
            widths[i] = std::max(widths[i], places(row[i]));
        }
    }
    std::string text;
    const auto put = [&](const std::vector<std::string>& row) {
        for (std::size_t i = 0; i < row.size(); ++i) {
            text += (i == 0 ? "  " : "   ") + padded(row[i], widths[i], i == 0);
        }
        text += "\n";
    };
    put(table.headings);
    std::ranges::for_each(table.rows, put);
    return text;
}

std::string as_markdown_table(const Table& table) {
    std::string text = "|";
    for (const auto& heading : table.headings) {
        text += " " + heading + " |";
    }
    text += "\n|";
    for (std::size_t i = 0; i < table.headings.size(); ++i) {
        text += i == 0 ? " --- |" : " ---: |";
    }
    for (const auto& row : table.rows) {
        text += "\n|";
        for (const auto& cell : row) {
            text += " " + cell + " |";
        }
    }
    return text + "\n";
}

}  // namespace

bool Report::all_hold() const { return std::ranges::all_of(criteria, &Criterion::holds); }

std::string Report::as_text() const {
    std::string text;
    for (const Table& table : tables) {
        text += table.title + "\n" + (table.note.empty() ? "" : table.note + "\n") + set_in_columns(table) + "\n";
    }
    for (const std::string& example : examples) {
        text += example + "\n";
    }
    for (const Criterion& criterion : criteria) {
        text += fmt::format("{:<6} {}: {}\n", criterion.holds ? "holds" : "fails", criterion.what, criterion.found);
    }
    return text;
}

std::string Report::as_markdown() const {
    std::string text =
        "# The measuring, judged from outside\n\nWindows of crooked houses are made by plane geometry and read with "
        "tapes "
        "that err; some get a slip from a list of the trial's own. What the figures say is held against what was true. "
        "Nothing of the measuring code takes part in the making. `build-release/bin/measuring_trial --markdown "
        "docs/measuring-trial.md` writes this page; seeds are fixed, so two runs differ in the times alone. How tapes, "
        "houses and slips are drawn, with their sources: `tests/bench/trial`.\n\n";
    for (const Table& table : tables) {
        text += "## " + table.title + "\n\n" + (table.note.empty() ? "" : table.note + "\n\n") +
                as_markdown_table(table) + "\n";
    }
    text += "## What must hold\n\n| | |\n| --- | --- |\n";
    for (const Criterion& criterion : criteria) {
        text +=
            fmt::format("| {}: {} | {} |\n", criterion.what, criterion.found, criterion.holds ? "holds" : "**fails**");
    }
    return text;
}

double Share::most(double p) const { return std::min(1.0, p + bound(p, of)); }
double Share::least(double p) const { return std::max(0.0, p - bound(p, of)); }

std::string percent(double share, int decimals) { return fmt::format("{:.{}f} %", 100.0 * share, decimals); }

std::string percent(const Share& share, int decimals) { return share.of == 0 ? "-" : percent(share.value(), decimals); }

}  // namespace truehang::trial
