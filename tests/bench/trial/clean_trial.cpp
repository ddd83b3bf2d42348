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
    ByName alarms;     ///< by kind of window and network
    ByName intervals;  ///< by kind of size and of window
    Share all_alarms;
    Share windows;                                            ///< with any alarm
    Share suspects;                                           ///< adding up, and yet with suspects
    std::map<std::string, std::map<std::string, int>> forms;  ///< of arches with ordinates, by what they are
};

/// The kind of a size: its name without the line, the side or the number.
std::string size_kind(const std::string& size) {
    if (size.starts_with("opening.") || size.starts_with("wall.")) {
        const auto dot = size.starts_with("opening.") ? size.find('.', 8) : 4;
        return size.substr(0, dot);
    }
    if (size.starts_with("facet.") || size.starts_with("corner.") || size.starts_with("mouth.") ||
        size.starts_with("ordinate.")) {
        return size == "corner.chord" || size == "corner.track"
                   ? size
                   : size.substr(0, size.find('.')) + size.substr(size.rfind('.'));
    }
    if (size.starts_with("arch.") || size.starts_with("bay.") || size.starts_with("gable.apex")) {
        return size;
    }
    return size.starts_with("gable.slope") ? "gable.slope" : size.substr(0, std::min(size.find('.'), size.size()));
}

bool holds(const Size& size, double truth) {
    return size.angle ? std::abs(size.angle->degrees() - truth) <= normal_95 * size.angle_u->degrees()
                      : std::abs(size.value.mm() - truth) <= normal_95 * size.u.mm();
}

void count_window(const WindowFigures& figures, const Truth& truth, CleanTally& tally) {
    bool alarm = false;
    for (const Check& check : figures.checks) {
        tally.alarms[std::string(truth.kind().name) + " " + check.network].add(!check.adds_up);
        tally.all_alarms.add(!check.adds_up);
        alarm = alarm || !check.adds_up;
    }
    tally.windows.add(alarm);
    for (const Size& size : figures.sizes) {
        if (truth.knows(size.name)) {
            tally.intervals[std::string(truth.kind().group) + ": " + size_kind(size.name)].add(
                holds(size, truth.at(size.name)));
        }
    }
    if (!figures.form.empty()) {
        ++tally.forms[std::string(truth.kind().name)][figures.form];
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
    for (int i = 0; i < windows; ++i) {
        const Truth truth = crooked_window(for_clean(i), random);
        const Visit visit(truth, conditions, random);
        count_window(figures_of(visit, visit.measure(truth, random)), truth, tally);
    }
    return tally;
}

/// Arches and gables of houses that don't keep to what their networks take for granted.
CleanTally run_crooked(int windows, std::uint64_t seed) {
    Random random(seed);
    CleanTally tally;
    for (int i = 0; i < windows; ++i) {
        const BuiltKind& kind = built_kinds[static_cast<std::size_t>(i) % built_kinds.size()];
        if (kind.shape == Shape::arch || kind.shape == Shape::gable) {
            const Truth truth = crooked_window(kind.built, random, Keeping::crooked);
            const Visit visit(truth, {}, random);
            count_window(figures_of(visit, visit.measure(truth, random)), truth, tally);
        }
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
        const auto of = [&kind = kind](const CleanTally& tally) {
            const auto found = tally.intervals.find(kind);
            return found == tally.intervals.end() ? std::string("-") : percent(found->second, 2);
        };
        table.rows.push_back({kind, fmt::format("{}", share.of), percent(share, 2), of(own), of(rough)});
        report.criteria.push_back({"95 % intervals of " + kind + " hold 94 to 96 %", percent(share, 2),
                                   share.value() >= share.least(0.94) && share.value() <= share.most(0.96)});
    }
    report.tables.push_back(std::move(table));
}

/// Networks whose taken-for-granteds don't hold; told, not judged.
void tell_crooked(const CleanTally& crooked, Report& report) {
    Table table{"Houses that don't keep to form",
                "An arch's network takes the sill for straight, a gable's the bottom edge for level and the sides for "
                "plumb. Here a sill bows (by a quarter of the house's deviation of 3, 6 or 12 mm), and a gable's "
                "corners lie as far off as those of any other opening. This is told and not judged: such a network "
                "says that something doesn't add up, and what doesn't is the house.",
                {"network", "networks", "said not to add up"},
                {}};
    for (const auto& [name, share] : crooked.alarms) {
        if (name.ends_with(" arch") || name.ends_with(" gable")) {
            table.rows.push_back({name, fmt::format("{}", share.of), percent(share)});
        }
    }
    report.tables.push_back(std::move(table));
}

/// Which curve is said of an arch, held against what it is.
void tell_forms(const CleanTally& stated, Report& report) {
    const std::vector<std::pair<std::string, std::string>> meant{{"semicircle", "semicircle"},
                                                                 {"segment", "segmental"},
                                                                 {"three centres", "three-centred"},
                                                                 {"pointed arch", "ordinates"}};
    Table table{
        "Which curve is said of an arch",
        "Of clean arches with three, five or seven ordinates. The simplest curve that fits is said, a freer one "
        "where it fits clearly better (one in a hundred by chance, at each of two steps). Three centres that "
        "edges of 2 to 4 mm can't tell from a segment are said to be one; that their sizes hold is judged by "
        "the intervals.",
        {"arch", "arches", "semicircle", "segmental", "three-centred", "ordinates"},
        {}};
    for (const auto& [name, form] : meant) {
        const auto found = stated.forms.find(name);
        if (found == stated.forms.end()) {
            continue;
        }
        Share right;
        for (const auto& [said, count] : found->second) {
            right.count += said == form ? count : 0;
            right.of += count;
        }
        std::vector<std::string> row{name, fmt::format("{}", right.of)};
        for (const auto* said : {"semicircle", "segmental", "three-centred", "ordinates"}) {
            const auto count = found->second.find(said);
            row.push_back(percent(Share{count == found->second.end() ? 0 : count->second, right.of}, 2));
        }
        table.rows.push_back(std::move(row));
        constexpr double least_right = 0.98;
        if (name != "three centres") {
            report.criteria.push_back({"the curve of a clean arch is said in 98 % or more, " + name, percent(right, 2),
                                       right.value() >= right.least(least_right)});
        }
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
    tell_forms(stated, report);
    tell_crooked(run_crooked(extent.rough, 20260104), report);
}

}  // namespace truehang::trial
