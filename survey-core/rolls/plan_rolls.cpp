// SPDX-License-Identifier: Apache-2.0
#include "rolls/rolls.h"
#include "rolls/slots.h"

#include <algorithm>
#include <numeric>

namespace truehang {

namespace {

using namespace laying;

LotsProblem problem_of(const std::vector<Roll>& rolls, const Slotted& slotted, const RollRules& rules) {
    LotsProblem problem;
    problem.rules = {down(rules.repeat), slotted.step, std::max<Um>(1, up(rules.useful))};
    std::map<std::string, std::size_t> lots;
    for (std::size_t r = 0; r < rolls.size(); ++r) {
        problem.grounds.push_back(ground_of(rolls[r]));
        const auto lot = lots.try_emplace(rolls[r].lot, problem.lots.size()).first->second;
        if (lot == problem.lots.size()) {
            problem.lots.emplace_back();
        }
        problem.lots[lot].rolls.push_back(r);
        for (const Stretch& stretch : problem.grounds.back().stretches) {
            problem.lots[lot].clean += stretch.to - stretch.from;
        }
    }
    for (const SlottedWindow& window : slotted.windows) {
        problem.windows.push_back(window.runs);
    }
    return problem;
}

PlannedRoll planned(const Roll& roll, const Ground& ground, const std::vector<Placed>& placed, const Slotted& slotted,
                    const std::vector<PieceToCut>& pieces, Um useful) {
    PlannedRoll plan{roll.id, roll.lot, {}, {}, length_of(use_of(ground, placed, useful).used)};
    for (const Placed& each : placed) {
        for (const InSlot& in : slotted.slots[static_cast<std::size_t>(each.slot)]) {
            const PieceToCut& piece = pieces[static_cast<std::size_t>(in.piece)];
            const Um from = each.from + in.offset;
            plan.cuts.push_back({piece.id, length_of(from), length_of(from + up(piece.length)), in.beside});
        }
    }
    for (const Gap& gap : gaps_of(ground, placed)) {
        const bool useful_here = gap.ends_stretch && gap.to - gap.from >= useful;
        plan.remnants.push_back({length_of(gap.from), length_of(gap.to), useful_here});
    }
    return plan;
}

/// Whether no plan could cut more windows: the shortest of them that many would take more clean cloth than there is, or
/// those left out are too long for any stretch.
bool are_most_windows(const LotsProblem& problem, const LotsPlan& chosen) {
    Um clean = 0;
    Um longest = 0;
    for (const LotOfRolls& lot : problem.lots) {
        clean += lot.clean;
    }
    for (const Ground& ground : problem.grounds) {
        for (const Stretch& stretch : ground.stretches) {
            longest = std::max(longest, stretch.to - stretch.from);
        }
    }
    std::vector<Um> possible;
    for (const WindowRuns& window : problem.windows) {
        const bool fits = std::ranges::all_of(window.runs, [&](const laying::Run& run) {
            return std::ranges::all_of(run.slots, [&](const Slot& slot) { return slot.length <= longest; });
        });
        if (fits) {
            possible.push_back(window.length);
        }
    }
    std::ranges::sort(possible);
    const std::size_t cut = problem.windows.size() - static_cast<std::size_t>(chosen.dropped);
    if (cut >= possible.size()) {
        return true;
    }
    const auto end = possible.begin() + static_cast<std::ptrdiff_t>(cut) + 1;
    return std::accumulate(possible.begin(), end, Um{0}) > clean;
}

void tell_windows(const Slotted& slotted, const LotsPlan& chosen, const std::vector<PieceToCut>& pieces,
                  RollPlan& plan) {
    std::vector<char> left_out(pieces.size(), 0);
    std::map<std::string, int> room_lots;
    for (std::size_t w = 0; w < slotted.windows.size(); ++w) {
        const SlottedWindow& window = slotted.windows[w];
        const bool cut = chosen.lot_of[w] != no_lot;
        if (!window.id.empty()) {
            (cut ? plan.windows : plan.short_windows).push_back(window.id);
        }
        for (const int i : window.pieces) {
            left_out[static_cast<std::size_t>(i)] = cut ? 0 : 1;
        }
        if (!cut || window.room.empty()) {
            continue;
        }
        const auto room = room_lots.try_emplace(window.room, chosen.lot_of[w]).first;
        if (room->second != chosen.lot_of[w] && std::ranges::count(plan.split_rooms, window.room) == 0) {
            plan.split_rooms.push_back(window.room);
        }
    }
    for (std::size_t i = 0; i < pieces.size(); ++i) {
        if (left_out[i] != 0) {
            plan.not_placed.push_back(pieces[i].id);
        }
    }
}

}  // namespace

RollPlan plan_rolls(const std::vector<Roll>& rolls, const std::vector<PieceToCut>& pieces, const RollRules& rules,
                    const RollEffort& effort) {
    const Slotted slots = slotted(pieces, rules);
    const LotsProblem problem = problem_of(rolls, slots, rules);
    const LotsPlan chosen = choose_lots(problem, effort.steps);
    RollPlan plan;
    for (std::size_t r = 0; r < rolls.size(); ++r) {
        if (chosen.rolls[r].empty()) {
            continue;
        }
        plan.rolls.push_back(
            planned(rolls[r], problem.grounds[r], chosen.rolls[r], slots, pieces, problem.rules.useful));
        if (std::ranges::count(plan.lots, rolls[r].lot) == 0) {
            plan.lots.push_back(rolls[r].lot);
        }
    }
    tell_windows(slots, chosen, pieces, plan);
    plan.used = length_of(chosen.used);
    plan.least = length_of(chosen.least);
    plan.longest_remnant = length_of(chosen.longest);
    plan.most_windows = chosen.dropped == 0 || are_most_windows(problem, chosen);
    return plan;
}

}  // namespace truehang
