// SPDX-License-Identifier: Apache-2.0
#include "report.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace truehang::trial {

namespace {

/// One of a thousand at one side, and the normal quantile there.
constexpr double tail = 0.001;
constexpr double quantile = 3.0902;

/// The most of so many that chance brings about at `p`.
double most_of(double p, long long of) {
    const auto n = static_cast<double>(of);
    const double variance = n * p * (1.0 - p);
    constexpr double many = 1000.0;
    if (variance > many) {
        return n * p + quantile * std::sqrt(variance) + 0.5;
    }
    double below = 0.0;
    for (double k = 0.0; k < n; k += 1.0) {
        const double ways = std::lgamma(n + 1.0) - std::lgamma(k + 1.0) - std::lgamma(n - k + 1.0);
        below += std::exp(ways + k * std::log(p) + (n - k) * std::log1p(-p));
        if (below >= 1.0 - tail) {
            return k;
        }
    }
    return n;
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

void Report::add(Report more) {
    std::ranges::move(more.tables, std::back_inserter(tables));
    std::ranges::move(more.criteria, std::back_inserter(criteria));
    std::ranges::move(more.examples, std::back_inserter(examples));
}

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
        "# The measuring, judged from outside\n\nWindows of crooked houses (recesses, frames, doors, bays of three and "
        "five facets, corners, arches, gables) are made by plane geometry and read with tapes and bevels that err; "
        "some "
        "get a slip, or two, from a list of the trial's own. What the figures say is held against what was true. "
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

double Share::most(double p) const { return of == 0 ? 1.0 : std::min(1.0, most_of(p, of) / static_cast<double>(of)); }
double Share::least(double p) const {
    return of == 0 ? 0.0 : std::max(0.0, 1.0 - most_of(1.0 - p, of) / static_cast<double>(of));
}

std::string percent(double share, int decimals) { return fmt::format("{:.{}f} %", 100.0 * share, decimals); }

std::string percent(const Share& share, int decimals) { return share.of == 0 ? "-" : percent(share.value(), decimals); }

}  // namespace truehang::trial
