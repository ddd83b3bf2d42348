// SPDX-License-Identifier: Apache-2.0
#include "rolls/lots.h"

#include "rolls/beginning.h"
#include "rolls/exchanging.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <tuple>

namespace truehang::laying {

namespace {

template <typename Keep>
std::vector<std::size_t> numbers(std::size_t count, Keep keep) {
    std::vector<std::size_t> kept;
    for (std::size_t i = 0; i < count; ++i) {
        if (keep(i)) {
            kept.push_back(i);
        }
    }
    return kept;
}

/// The relaxed plan lets lots, runs and phases go: here it lets go nothing, and the least is worth a long search.
bool is_plain(const LotsProblem& problem) {
    return problem.lots.size() == 1 && problem.rules.step == 0 &&
           std::ranges::all_of(problem.windows, [](const WindowRuns& window) {
               return window.loose.empty() &&
                      std::ranges::all_of(window.runs, [](const Run& run) { return run.slots.size() == 1; });
           });
}

/// Whether a long search may gain four thousandths of the cloth, or a window.
bool is_far(const LotsProblem& problem, const LotsPlan& plan) {
    if (plan.dropped == 0) {
        return plan.used - plan.least > plan.least / 250;
    }
    const Um asked = std::accumulate(problem.windows.begin(), problem.windows.end(), Um{0},
                                     [](Um sum, const WindowRuns& window) { return sum + window.length; });
    return asked <= problem.lots.front().clean;
}

/// All windows laid by a search that aims at the bound.
LotsPlan lay_all(const LotsProblem& problem, long steps) {
    std::vector<Run> runs;
    Um length = 0;
    for (const WindowRuns& window : problem.windows) {
        runs.insert(runs.end(), window.runs.begin(), window.runs.end());
        length += window.length;
    }
    const auto windows = numbers(problem.windows.size(), [](std::size_t) { return true; });
    const auto& rolls = problem.lots.front().rolls;
    const Relaxed quick = relax(problem, rolls, windows, length, 1);
    Laid laid = lay(problem.grounds, runs, problem.rules, {std::max(length, quick.bound.least), steps / 4, {}, {}, {}});
    if (!laid.complete || laid.used > quick.bound.least) {
        const Relaxed relaxed =
            relax(problem, rolls, windows, laid.complete ? laid.used : std::numeric_limits<Um>::max(), 5 * steps);
        Laid again = lay(problem.grounds, runs, problem.rules,
                         {relaxed.bound.least, steps - steps / 4, relaxed.bound.patterns, relaxed.problem.demands,
                          relaxed.problem.grounds});
        if (again.complete && (!laid.complete || again.used <= laid.used)) {
            laid = std::move(again);
        }
    }
    LotsPlan plan;
    plan.dropped = laid.complete ? 0 : static_cast<int>(windows.size());
    plan.lot_of.assign(windows.size(), laid.complete ? 0 : no_lot);
    plan.rolls = std::move(laid.rolls);
    plan.used = laid.used;
    plan.longest = laid.longest;
    plan.lots = 1;
    return plan;
}

Um least_of(const LotsProblem& problem, const LotsPlan& plan, long steps) {
    const auto windows = numbers(problem.windows.size(), [&](std::size_t w) { return plan.lot_of[w] != no_lot; });
    const auto rolls = numbers(problem.grounds.size(), [](std::size_t) { return true; });
    return std::min(plan.used, relax(problem, rolls, windows, plan.used, steps).bound.least);
}

}  // namespace

bool is_better(const LotsPlan& a, const LotsPlan& b) {
    const auto key = [](const LotsPlan& plan) {
        return std::tuple(plan.dropped, plan.split_rooms, plan.used, plan.lots, -plan.longest);
    };
    return key(a) < key(b);
}

LotsPlan choose_lots(const LotsProblem& problem, long steps) {
    const std::vector<LotsPlan> begun = beginnings(problem);
    LotsPlan plan = *std::ranges::min_element(begun, is_better);
    plan.least = least_of(problem, plan, 2 * steps);
    const auto is_least = [&] { return plan.used <= plan.least && plan.dropped == 0 && plan.split_rooms == 0; };
    if (!is_least()) {
        const Um least = plan.least;
        const bool was_whole = plan.dropped == 0;
        plan = exchange(problem, begun, least, steps);
        plan.least = was_whole ? least : least_of(problem, plan, 2 * steps);
    }
    if (is_plain(problem) && !is_least() && is_far(problem, plan)) {
        LotsPlan all = lay_all(problem, 6 * steps / 5);
        if (is_better(all, plan)) {
            all.least = least_of(problem, all, 2 * steps);
            plan = std::move(all);
        }
    }
    plan.least = std::min(plan.least, plan.used);
    return plan;
}

}  // namespace truehang::laying
