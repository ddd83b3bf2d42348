// SPDX-License-Identifier: Apache-2.0
#include "rolls/beginning.h"

#include "rolls/arrangement.h"

#include <algorithm>
#include <map>
#include <numeric>

namespace truehang::laying {

namespace {

using Windows = std::vector<std::size_t>;

Um windows_length(const LotsProblem& problem, const Windows& windows) {
    return std::accumulate(windows.begin(), windows.end(), Um{0},
                           [&](Um sum, std::size_t w) { return sum + problem.windows[w].length; });
}

/// Windows that are to come from one lot, rooms or windows without one; the longest first.
std::vector<Windows> units_of(const LotsProblem& problem) {
    std::vector<Windows> units;
    std::map<int, std::size_t> of_room;
    for (std::size_t w = 0; w < problem.windows.size(); ++w) {
        const int room = problem.windows[w].room;
        const auto [unit, is_new] = of_room.try_emplace(room, units.size());
        if (is_new || room < 0) {
            units.emplace_back();
            unit->second = units.size() - 1;
        }
        units[unit->second].push_back(w);
    }
    std::ranges::stable_sort(units, std::ranges::greater(),
                             [&](const auto& unit) { return windows_length(problem, unit); });
    return units;
}

/// Whether the windows lie in the lot, loose pieces and all.
bool put(Arrangement& at, const Windows& windows, int lot) {
    std::ranges::for_each(windows, [&](std::size_t w) { at.take_out(w); });
    if (!std::ranges::all_of(windows, [&](std::size_t w) { return at.put_in(w, lot); }) || !at.laid_out()) {
        at.undo();
        return false;
    }
    at.settle();
    return true;
}

/// `first` gives the lot that is looked at first for each room.
template <typename First>
LotsPlan put_together(const LotsProblem& problem, First first) {
    Arrangement at(problem);
    const auto put_somewhere = [&](const Windows& windows) {
        const int lots = static_cast<int>(problem.lots.size());
        const int from = first();
        for (int i = 0; i < lots; ++i) {
            if (put(at, windows, (from + i) % lots)) {
                return true;
            }
        }
        return false;
    };
    Windows left;
    for (const Windows& unit : units_of(problem)) {
        if (!put_somewhere(unit)) {
            left.insert(left.end(), unit.begin(), unit.end());
        }
    }
    std::ranges::stable_sort(left, {}, [&](std::size_t w) { return problem.windows[w].length; });
    for (const std::size_t w : left) {
        put_somewhere({w});
    }
    return at.laid_out().value_or(LotsPlan());
}

}  // namespace

std::vector<LotsPlan> beginnings(const LotsProblem& problem) {
    constexpr std::size_t several = 12;
    std::vector<LotsPlan> plans;
    Draws draws;
    const std::size_t lots = problem.lots.size();
    for (std::size_t i = 0; i < (lots > 1 ? std::max(lots, several) : 1); ++i) {
        plans.push_back(put_together(problem, [&] { return static_cast<int>(i < lots ? i : draws.below(lots)); }));
    }
    return plans;
}

}  // namespace truehang::laying
