// SPDX-License-Identifier: Apache-2.0
#include "figures/asked_next.h"

#include "adjust/next_reading.h"
#include "units/length_text.h"
#include "units/saying.h"

#include <algorithm>

namespace truehang {

namespace {

const Flag* find_flag(const WindowFigures& figures, std::string_view code) {
    const auto found = std::ranges::find_if(
        figures.flags, [&](const Flag& flag) { return flag.code == code && !flag.stations.empty(); });
    return found == figures.flags.end() ? nullptr : &*found;
}

std::optional<NextReading> missing(const WindowFigures& figures) {
    const Flag* flag = find_flag(figures, "missing-reading");
    return flag != nullptr ? std::optional(NextReading{flag->stations.front(), flag->text}) : std::nullopt;
}

std::optional<NextReading> untaped(const WindowFigures& figures) {
    for (const Flag& flag : figures.flags) {
        if (flag.severity == Severity::remeasure && flag.code != "does-not-add-up" && !flag.stations.empty()) {
            return NextReading{flag.stations.front(), flag.text};
        }
    }
    return std::nullopt;
}

/// Out of level, and nothing says whether it is the floor (the sill) or the head.
std::optional<NextReading> level_line(const Window& window, const MeasuredWindow& measured,
                                      const WindowFigures& figures) {
    const Flag* flag = find_flag(figures, "floor-not-level");
    flag = flag != nullptr ? flag : find_flag(figures, "sill-not-level");
    if (flag == nullptr || std::ranges::any_of(all_lines, [&](Line line) { return measured.plumb.is_tied(line); })) {
        return std::nullopt;
    }
    for (const Line line : all_lines) {
        const std::string station = "level." + std::string(word_of(line));
        if (measured.plumb.has(line, PlumbMark::head) && !is_settled(window, station)) {
            return NextReading{station, flag->text};
        }
    }
    return std::nullopt;
}

/// A drop whose ± decides how much is cut.
std::optional<NextReading> surer_drop(const Window& window, const MeasuredWindow& measured,
                                      const std::optional<PlumbSpan>& drop_along, const WindowFigures& figures) {
    const Flag* flag = find_flag(figures, "on-the-edge");
    const auto surer = flag != nullptr && drop_along ? surer_height(window, measured, *drop_along) : std::nullopt;
    if (!surer) {
        return std::nullopt;
    }
    const auto station = find_station(measured.shape, surer->station);
    return NextReading{surer->station, say("The drop lies on an edge. {} would make it sure to ± {}.",
                                           station ? station_words(*station) : surer->station,
                                           said_length(2.0 * surer->u, measured.entry_unit))};
}

std::string reason(const WindowFigures& figures) {
    const bool stopped =
        std::ranges::any_of(figures.flags, [](const Flag& flag) { return flag.severity == Severity::stop; });
    if (stopped) {
        return say("No reading is asked for: something else has to be said first.");
    }
    // A photo is too rough to count among them.
    const auto loops = static_cast<std::size_t>(
        std::ranges::count_if(figures.checks, [](const Check& check) { return check.network != photo_network_name; }));
    if (loops == 0) {
        return say("Nothing more is needed. No reading checks another here.");
    }
    return loops == 1 ? say("Nothing more is needed: all is there, and it adds up.")
                      : say("Nothing more is needed: all is there, and it adds up {} times over.", loops);
}

}  // namespace

void ask_next(const Window& window, const MeasuredWindow& measured, const std::optional<PlumbSpan>& drop_along,
              WindowFigures& figures) {
    figures.next = missing(figures);
    if (!figures.next) {
        if (auto settling = settling_reading(window, measured)) {
            figures.next = NextReading{std::move(settling->station), std::move(settling->why)};
        }
    }
    if (!figures.next) {
        if (auto exchanged = exchanged_reading(window, measured)) {
            figures.next = NextReading{std::move(exchanged->station), std::move(exchanged->why)};
        }
    }
    if (!figures.next) {
        figures.next = untaped(figures);
    }
    if (!figures.next) {
        figures.next = level_line(window, measured, figures);
    }
    if (!figures.next) {
        figures.next = surer_drop(window, measured, drop_along, figures);
    }
    if (!figures.next) {
        figures.nothing_more = reason(figures);
    }
}

}  // namespace truehang
