// SPDX-License-Identifier: Apache-2.0
#include "rolls/appending.h"

#include <algorithm>
#include <numeric>
#include <optional>
#include <tuple>

namespace truehang::laying {

namespace {

Um laid_length(const Run& run) {
    return std::accumulate(run.slots.begin(), run.slots.end(), Um{0},
                           [](Um sum, const Slot& slot) { return sum + slot.length; });
}

/// The run behind what lies on the roll: next to each other, but for flaws and joins between; nothing where it doesn't
/// fit.
std::optional<std::vector<Placed>> behind(const Ground& roll, const std::vector<Placed>& placed, const Run& run,
                                          Um repeat) {
    std::vector<Placed> added;
    Um cursor = placed.empty() ? 0 : placed.back().to;
    auto on = roll.stretches.begin();
    for (std::size_t i = 0; i < run.slots.size();) {
        if (on == roll.stretches.end()) {
            return std::nullopt;
        }
        const Slot& slot = run.slots[i];
        const Um from = first_start(*on, std::max(cursor, on->from), slot.phase, repeat);
        if (from + slot.length > on->to) {
            ++on;
            continue;
        }
        cursor = from + slot.length;
        added.push_back({run.first + static_cast<int>(i++), from, cursor});
    }
    return added;
}

}  // namespace

Laid append(const std::vector<Ground>& rolls, const std::vector<Run>& runs, const LayingRules& rules) {
    Laid laid;
    laid.rolls.resize(rolls.size());
    std::vector<const Run*> order;
    for (const Run& run : runs) {
        order.push_back(&run);
    }
    std::ranges::stable_sort(order, std::ranges::greater(), [](const Run* run) { return laid_length(*run); });
    for (const Run* run : order) {
        std::optional<std::tuple<bool, Um, std::size_t>> best;  // not begun, cloth taken, roll
        std::vector<Placed> best_added;
        for (std::size_t r = 0; r < rolls.size(); ++r) {
            auto& placed = laid.rolls[r];
            if (auto added = behind(rolls[r], placed, *run, rules.repeat)) {
                const Um end = placed.empty() ? 0 : placed.back().to;
                const std::tuple cost(placed.empty(), added->back().to - end, r);
                if (!best || cost < *best) {
                    best = cost;
                    best_added = std::move(*added);
                }
            }
        }
        if (!best) {
            return {};
        }
        auto& placed = laid.rolls[std::get<2>(*best)];
        placed.insert(placed.end(), best_added.begin(), best_added.end());
    }
    laid.complete = true;
    for (std::size_t r = 0; r < rolls.size(); ++r) {
        const RollUse use = use_of(rolls[r], laid.rolls[r], rules.useful);
        laid.used += use.used;
        laid.longest = std::max(laid.longest, use.longest);
    }
    return laid;
}

}  // namespace truehang::laying
