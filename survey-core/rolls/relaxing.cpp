// SPDX-License-Identifier: Apache-2.0
#include "rolls/lots.h"

#include <algorithm>

namespace truehang::laying {

namespace {

BoundProblem over_rolls(const LotsProblem& problem, const std::vector<std::size_t>& rolls) {
    BoundProblem bound;
    bound.useful = problem.rules.useful;
    for (const std::size_t r : rolls) {
        const Ground& ground = problem.grounds[r];
        const auto same = std::ranges::find(bound.grounds, ground, &GroundClass::ground);
        if (same == bound.grounds.end()) {
            bound.grounds.push_back({ground, 1});
        } else {
            ++same->count;
        }
    }
    return bound;
}

/// Pieces counted by their length with what the pattern costs them, and without.
using Counts = std::map<std::pair<Um, Um>, int>;

void add(Counts& counts, const std::vector<Run>& runs, Um step) {
    for (const Run& run : runs) {
        for (const Slot& slot : run.slots) {
            ++counts[{room_of(slot, step), slot.length}];
        }
    }
}

void demand(BoundProblem& bound, const Counts& counts) {
    for (const auto& [lengths, count] : counts) {
        bound.demands.push_back({lengths.first, lengths.second, count});
    }
}

/// Whether every run follows the pattern, whose lines are few enough to be gone through.
bool has_pattern(const LotsProblem& problem, const std::vector<std::size_t>& windows) {
    constexpr Um most_lines = 5000;
    const Um step = problem.rules.step;
    return step > 0 &&
           std::ranges::all_of(problem.grounds,
                               [&](const Ground& ground) { return ground.length / step < most_lines; }) &&
           std::ranges::all_of(windows, [&](std::size_t w) {
               return std::ranges::all_of(problem.windows[w].runs, [](const Run& run) {
                   return std::ranges::all_of(run.slots, [](const Slot& slot) { return slot.phase != Slot::anywhere; });
               });
           });
}

}  // namespace

Relaxed relax(const LotsProblem& problem, const std::vector<std::size_t>& rolls,
              const std::vector<std::size_t>& windows, Um enough, long steps) {
    Relaxed plain{over_rolls(problem, rolls), {}};
    Counts counts;
    for (const std::size_t w : windows) {
        add(counts, problem.windows[w].runs, 0);
        add(counts, problem.windows[w].loose, 0);
    }
    demand(plain.problem, counts);
    const bool matches = has_pattern(problem, windows);
    plain.bound = least_use(plain.problem, enough, matches ? 1 : steps);
    if (problem.rules.step > 0) {
        plain.bound.patterns.clear();  // they know nothing of phases
    }
    if (!matches) {
        return plain;
    }
    Relaxed matched{over_rolls(problem, rolls), {}};
    matched.problem.step = problem.rules.step;
    counts.clear();
    for (const std::size_t w : windows) {
        for (const Run& run : problem.windows[w].runs) {
            matched.problem.phase = run.slots.front().phase;  // whole steps from that of any other
        }
        add(counts, problem.windows[w].runs, problem.rules.step);
    }
    demand(matched.problem, counts);
    matched.bound = least_use(matched.problem, enough, steps);
    matched.bound.least = std::max(matched.bound.least, plain.bound.least);
    matched.bound.patterns.clear();
    return matched;
}

}  // namespace truehang::laying
