// SPDX-License-Identifier: Apache-2.0
#include "trials.h"

#include <fmt/format.h>

#include <cmath>
#include <map>

namespace truehang::trial {

namespace {

constexpr double alarm_level = 0.001;
constexpr double normal_95 = 1.96;

using ByName = std::map<std::string, Share>;

struct CleanTally {
    ByName alarms;     ///< by shape and network
    ByName intervals;  ///< by kind of size
    Share all_alarms;
    Share windows;   ///< with any alarm
    Share suspects;  ///< adding up, and yet with suspects
};

/// The kind of a size: its name without the line or the side, and how rough the edges are stated.
std::string kind_of(const std::string& size) {
    if (size.starts_with("opening.") || size.starts_with("wall.")) {
        const auto dot = size.starts_with("opening.") ? size.find('.', 8) : 4;
        return size.substr(0, dot);
    }
    if (size.starts_with("facet.") || size.starts_with("corner.") || size.starts_with("mouth.") ||
        size.starts_with("ordinate.")) {
        return size.substr(0, size.find('.')) + size.substr(size.rfind('.'));
    }
    return size.starts_with("gable.slope") ? "gable.slope" : size.substr(0, std::min(size.find('.'), size.size()));
}

void count_window(const WindowFigures& figures, const Truth& truth, CleanTally& tally) {
    const std::string shape = Word<Shape>::word_for(truth.shape);
    bool alarm = false;
    for (const Check& check : figures.checks) {
        tally.alarms[shape + " " + check.network].add(!check.adds_up);
        tally.all_alarms.add(!check.adds_up);
        alarm = alarm || !check.adds_up;
    }
    tally.windows.add(alarm);
    for (const Size& size : figures.sizes) {
        if (truth.knows(size.name) && !is_angle(size.name)) {
            const bool holds = std::abs(size.value.mm() - truth.at(size.name)) <= normal_95 * size.u.mm();
            tally.intervals[kind_of(size.name)].add(holds);
        }
    }
    if (!alarm) {
        bool any = false;
        for (const Flag& flag : figures.flags) {
            any = any || !flag.suspects.empty();
        }
        tally.suspects.add(any);
    }
}

CleanTally run(int windows, const Conditions& conditions, std::uint64_t seed) {
    Random random(seed);
    CleanTally tally;
    const auto shapes = shapes_in_trial();
    for (int i = 0; i < windows; ++i) {
        const Shape shape = shapes[static_cast<std::size_t>(i) % shapes.size()];
        const Truth truth = crooked_window(shape, random);
        const Visit visit(shape, conditions, random);
        count_window(figures_of(visit, visit.measure(truth, random)), truth, tally);
    }
    return tally;
}

void tell_alarms(const CleanTally& stated, const CleanTally& own, const CleanTally& rough, Report& report) {
    Table table{"False alarms",
                "Networks of clean windows that were said not to add up. 0.1 % is meant. “Bound” is what chance alone "
                "stays under in all but one of a thousand trials. With one scale error to the visit the readings of a "
                "network err alike, and a common scale cancels where they are added up: less than 0.1 % is due. With a "
                "tape error drawn anew for each reading, as the adjustment reckons, 0.1 % is due.",
                {"shape and network", "networks", "alarms", "share", "bound", "own errors", "edges twice as rough"},
                {}};
    for (const auto& [name, share] : stated.alarms) {
        const auto find = [&](const CleanTally& tally) {
            const auto found = tally.alarms.find(name);
            return found == tally.alarms.end() ? std::string("-") : percent(found->second, 3);
        };
        table.rows.push_back({name, fmt::format("{}", share.of), fmt::format("{}", share.count), percent(share, 3),
                              percent(share.most(alarm_level), 3), find(own), find(rough)});
        report.criteria.push_back({"false alarms, " + name,
                                   fmt::format("{} of {} ({})", share.count, share.of, percent(share, 3)),
                                   share.value() <= share.most(alarm_level)});
    }
    table.rows.push_back({"all", fmt::format("{}", stated.all_alarms.of), fmt::format("{}", stated.all_alarms.count),
                          percent(stated.all_alarms, 3), percent(stated.all_alarms.most(alarm_level), 3),
                          percent(own.all_alarms, 3), percent(rough.all_alarms, 3)});
    table.rows.push_back({"any of a window's", fmt::format("{}", stated.windows.of),
                          fmt::format("{}", stated.windows.count), percent(stated.windows, 3), "",
                          percent(own.windows, 3), percent(rough.windows, 3)});
    report.tables.push_back(std::move(table));
    const Share& all = own.all_alarms;
    report.criteria.push_back({"false alarms where each reading errs by itself are 0.1 % within chance",
                               fmt::format("{}, between {} and {}", percent(all, 3), percent(all.least(alarm_level), 3),
                                           percent(all.most(alarm_level), 3)),
                               all.value() >= all.least(alarm_level) && all.value() <= all.most(alarm_level)});
    report.criteria.push_back({"what adds up has no suspects",
                               fmt::format("{} of {} windows have", stated.suspects.count, stated.suspects.of),
                               stated.suspects.count == 0});
}

void tell_intervals(const CleanTally& stated, const CleanTally& own, const CleanTally& rough, Report& report) {
    Table table{"Stated 95 % intervals",
                "How often the truth lies within 1.96 u of a size. The scale error is one for a whole visit: it never "
                "averages out over a window's sizes, and it is smaller on a short length than the permissible error, "
                "whose constant part it lacks; beside edges of 1 to 4 mm both are small.",
                {"kind of size", "sizes", "held", "each reading its own tape error", "edges twice as rough"},
                {}};
    for (const auto& [kind, share] : stated.intervals) {
        table.rows.push_back({kind, fmt::format("{}", share.of), percent(share, 2), percent(own.intervals.at(kind), 2),
                              percent(rough.intervals.at(kind), 2)});
        report.criteria.push_back({"95 % intervals of " + kind + " hold 94 to 96 %", percent(share, 2),
                                   share.value() >= share.least(0.94) && share.value() <= share.most(0.96)});
    }
    report.tables.push_back(std::move(table));
}

}  // namespace

void try_clean_windows(const Extent& extent, Report& report) {
    const CleanTally stated = run(extent.clean, {true, 1.0}, 20260101);
    const CleanTally own = run(extent.rough, {false, 1.0}, 20260102);
    const CleanTally rough = run(extent.rough, {true, 2.0}, 20260103);
    tell_alarms(stated, own, rough, report);
    tell_intervals(stated, own, rough, report);
}

}  // namespace truehang::trial
