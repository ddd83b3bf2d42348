// SPDX-License-Identifier: Apache-2.0
#include "chi_square_theory.h"
#include "trials.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace truehang::trial {

namespace {

constexpr double power_meant = 0.80;
constexpr double least_redundancy = 0.02;  // a reading whose slip would need metres isn't tried

struct Target {
    std::string network;
    int redundancy = 0;
    CheckedReading reading;
};

std::vector<Target> targets_of(const WindowFigures& figures) {
    std::vector<Target> targets;
    for (const Check& check : figures.checks) {
        for (const CheckedReading& reading : check.readings) {
            if (reading.redundancy >= least_redundancy && reading.least_slip > 0.0) {
                targets.push_back({check.network, check.redundancy, reading});
            }
        }
    }
    return targets;
}

struct PowerTally {
    Share by_w, by_network;
    double theory = 0.0;  ///< sum of what chi-square's theory gives

    void add(const PowerTally& more) {
        by_w = {by_w.count + more.by_w.count, by_w.of + more.by_w.of};
        by_network = {by_network.count + more.by_network.count, by_network.of + more.by_network.of};
        theory += more.theory;
    }
    [[nodiscard]] double expected() const { return theory / static_cast<double>(std::max<long long>(by_w.of, 1)); }
    [[nodiscard]] std::vector<std::string> cells(const std::string& name) const {
        return {name, fmt::format("{}", by_w.of), percent(by_w), percent(by_network), percent(expected())};
    }
};

/// Tapes err less than they may, so a little more is seen than theory asks: two in a hundred are let pass.
bool is_near(const Share& share, double meant) {
    constexpr double let_pass = 0.02;
    return share.of == 0 ||
           (share.value() <= share.most(meant) + let_pass && share.value() >= share.least(meant) - let_pass);
}

void judge(const std::string& group, const PowerTally& tally, Report& report) {
    report.criteria.push_back({"power of |w| at the least detectable slip is 80 %, " + group, percent(tally.by_w),
                               is_near(tally.by_w, power_meant)});
    report.criteria.push_back({"networks are flagged as theory says (" + percent(tally.expected()) + "), " + group,
                               percent(tally.by_network), is_near(tally.by_network, tally.expected())});
}

void plant(const Visit& visit, const Truth& truth, Random& random, std::map<std::string, PowerTally>& tallies) {
    // What the detectable size is, is asked of another measuring of the same window.
    const auto targets = targets_of(figures_of(visit, visit.measure(truth, random)));
    if (targets.empty()) {
        return;
    }
    const Target& target = random.pick(targets);
    const double slip = (random.chance(0.5) ? 1.0 : -1.0) * target.reading.least_slip;
    Window window = visit.measure(truth, random);
    for (Reading& reading : window.readings) {
        if (reading.station == target.reading.station) {
            const std::string id = reading.id;
            reading = visit.take(reading.station, truth.at(reading.station), random, slip);
            reading.id = id;
        }
    }
    for (const Check& check : figures_of(visit, window).checks) {
        for (const CheckedReading& reading : check.readings) {
            if (check.network == target.network && reading.station == target.reading.station) {
                PowerTally& tally =
                    tallies[fmt::format("{} {}, redundancy {}", truth.kind().name, check.network, check.redundancy)];
                tally.by_w.add(std::abs(reading.w) >= critical);
                tally.by_network.add(!check.adds_up);
                tally.theory += noncentral_above(check.limit, check.redundancy, noncentrality);
            }
        }
    }
}

}  // namespace

void try_power(const Extent& extent, Report& report) {
    Random random(20260201);
    std::map<std::string, PowerTally> tallies;
    for (int i = 0; i < extent.power; ++i) {
        const Truth truth = crooked_window(in_turn(i), random);
        const Visit visit(truth, {}, random);
        plant(visit, truth, random, tallies);
    }
    Table table{"Power at the least detectable slip",
                "One reading off by the least detectable slip that its network states, 4.1321 σ/√r. Its normalised "
                "residual passes 3.2905 in four of five cases; the network's chi-square, which alone decides, says so "
                "in as many as its redundancy lets it (non-central chi-square at 17.0746).",
                {"network", "slips", "|w| ≥ 3.2905", "network flagged", "as theory says"},
                {}};
    PowerTally all;
    std::map<std::string, PowerTally> groups;
    for (const auto& [name, tally] : tallies) {
        table.rows.push_back(tally.cells(name));
        all.add(tally);
        const auto kind = std::ranges::find_if(
            built_kinds, [&name = name](const BuiltKind& each) { return name.starts_with(each.name); });
        groups[std::string(kind->group)].add(tally);
    }
    table.rows.push_back(all.cells("all"));
    report.tables.push_back(std::move(table));
    judge("all", all, report);
    for (const auto& [group, tally] : groups) {
        judge(group, tally, report);
    }
}

}  // namespace truehang::trial
