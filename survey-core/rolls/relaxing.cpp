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

void add(std::map<Um, int>& counts, const std::vector<Run>& runs, Um step) {
    for (const Run& run : runs) {
        for (const Slot& slot : run.slots) {
            ++counts[room_of(slot, step)];
        }
    }
}

void demand(BoundProblem& bound, const std::map<Um, int>& counts) {
    for (const auto& [length, count] : counts) {
        bound.demands.push_back({length, count});
    }
}

Um largest_overhang(const LotsProblem& problem, const std::vector<std::size_t>& windows) {
    Um most = 0;
    for (const std::size_t w : windows) {
        for (const Run& run : problem.windows[w].runs) {
            for (const Slot& slot : run.slots) {
                most = std::max(most, room_of(slot, problem.rules.step) - slot.length);
            }
        }
    }
    return most;
}

}  // namespace

Relaxed relax(const LotsProblem& problem, const std::vector<std::size_t>& rolls,
              const std::vector<std::size_t>& windows, Um enough, long steps) {
    Relaxed plain{over_rolls(problem, rolls), {}};
    std::map<Um, int> counts;
    for (const std::size_t w : windows) {
        add(counts, problem.windows[w].runs, 0);
        add(counts, problem.windows[w].loose, 0);
    }
    demand(plain.problem, counts);
    const Um overhang = largest_overhang(problem, windows);
    const bool has_pattern = overhang > 0 && overhang < problem.rules.useful;
    plain.bound = least_use(plain.problem, enough, has_pattern ? 1 : steps);
    if (problem.rules.step > 0) {
        plain.bound.patterns.clear();  // they know nothing of phases
    }
    if (!has_pattern) {
        return plain;
    }
    Relaxed matched{over_rolls(problem, rolls), {}};
    matched.problem.overhang = overhang;
    counts.clear();
    for (const std::size_t w : windows) {
        add(counts, problem.windows[w].runs, problem.rules.step);
    }
    demand(matched.problem, counts);
    matched.bound = least_use(matched.problem, enough, steps);
    matched.bound.least = std::max(matched.bound.least, plain.bound.least);
    matched.bound.patterns.clear();
    return matched;
}

}  // namespace truehang::laying
