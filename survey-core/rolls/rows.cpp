// SPDX-License-Identifier: Apache-2.0
#include "rolls/rows.h"

#include <algorithm>

namespace truehang::laying {

Rows::Rows(const LotsProblem& problem) : problem_(problem) {
    for (std::size_t w = 0; w < problem.windows.size(); ++w) {
        first_.push_back(static_cast<int>(runs_.size()));
        for (const Run& run : problem.windows[w].runs) {
            const std::size_t end = static_cast<std::size_t>(run.first) + run.slots.size();
            run_of_slot_.resize(std::max(run_of_slot_.size(), end), -1);
            std::fill(run_of_slot_.begin() + run.first, run_of_slot_.begin() + static_cast<std::ptrdiff_t>(end),
                      static_cast<int>(runs_.size()));
            runs_.push_back(run);
            window_.push_back(static_cast<int>(w));
        }
    }
    first_.push_back(static_cast<int>(runs_.size()));
    for (const Ground& ground : problem.grounds) {
        std::vector<Um> longest(ground.stretches.size() + 1, 0);
        for (std::size_t s = ground.stretches.size(); s-- > 0;) {
            longest[s] = std::max(longest[s + 1], ground.stretches[s].to - ground.stretches[s].from);
        }
        longest_.push_back(std::move(longest));
    }
}

namespace {

/// Where laying has come to on one roll.
struct Walk {
    const std::vector<Stretch>& stretches;
    Um useful;
    std::size_t on = 0;
    Um cursor = stretches.empty() ? 0 : stretches.front().from;
    Um saved = 0, longest = 0;

    /// To the next stretch; false where there is none.
    bool pass() {
        const Um gap = on < stretches.size() ? stretches[on].to - cursor : 0;
        if (gap >= useful) {
            saved += gap;
            longest = std::max(longest, gap);
        }
        if (on + 1 >= stretches.size()) {
            return false;
        }
        cursor = stretches[++on].from;
        return true;
    }

    /// The slot's start, on this stretch or a later one; false where it fits nowhere.
    bool put(const Slot& slot, Um repeat, Um& from) {
        while (!stretches.empty()) {
            from = first_start(stretches[on], cursor, slot.phase, repeat);
            if (from + slot.length <= stretches[on].to) {
                cursor = from + slot.length;
                return true;
            }
            if (!pass()) {
                return false;
            }
        }
        return false;
    }
};

}  // namespace

template <typename OnSlot>
Reckoned Rows::walk(std::size_t roll, const Row& row, OnSlot on_slot) const {
    if (row.empty()) {
        return {true, 0, 0};
    }
    const Ground& ground = problem_.grounds[roll];
    const Um useful = problem_.rules.useful;
    Walk walk{ground.stretches, useful};
    for (const InRow& each : row) {
        for (int i = 0; i < each.skips; ++i) {
            if (!walk.pass()) {
                return {};
            }
        }
        const Run& run = runs_[static_cast<std::size_t>(each.run)];
        for (std::size_t i = 0; i < run.slots.size(); ++i) {
            Um from = 0;
            const bool leaves = each.early > 0 && i == static_cast<std::size_t>(each.early);
            if ((leaves && !walk.pass()) || !walk.put(run.slots[i], problem_.rules.repeat, from)) {
                return {};
            }
            on_slot(Placed{run.first + static_cast<int>(i), from, walk.cursor});
        }
    }
    const Um rest = std::max(ground.stretches[walk.on].to - walk.cursor, longest_[roll][walk.on + 1]);
    const bool tail_useful = rest >= useful;
    return {true, (tail_useful ? walk.cursor : ground.length) - walk.saved,
            tail_useful ? std::max(walk.longest, rest) : walk.longest};
}

Reckoned Rows::reckon(std::size_t roll, const Row& row, long& steps) const {
    ++steps;
    return walk(roll, row, [&](const Placed&) { ++steps; });
}

std::vector<Placed> Rows::laid(std::size_t roll, const Row& row) const {
    std::vector<Placed> placed;
    walk(roll, row, [&](const Placed& each) { placed.push_back(each); });
    return placed;
}

Row Rows::read(std::size_t roll, const std::vector<Placed>& placed) const {
    const auto& stretches = problem_.grounds[roll].stretches;
    Row row;
    Walk walk{stretches, problem_.rules.useful};
    for (const Placed& each : placed) {
        const auto number = static_cast<std::size_t>(each.slot);
        const int run = number < run_of_slot_.size() ? run_of_slot_[number] : -1;
        if (run < 0) {
            continue;
        }
        const int place = each.slot - runs_[static_cast<std::size_t>(run)].first;
        if (place == 0) {
            row.push_back({run, 0, 0});
        }
        Walk freely = walk;
        Um from = 0;
        if (!row.empty() &&
            freely.put({each.to - each.from,
                        runs_[static_cast<std::size_t>(run)].slots[static_cast<std::size_t>(place)].phase},
                       problem_.rules.repeat, from) &&
            from < each.from) {
            int passed = 0;
            while (stretches[walk.on].to <= each.from && walk.pass()) {
                ++passed;
            }
            (place == 0 ? row.back().skips : row.back().early) = place == 0 ? passed : place;
        }
        while (stretches[walk.on].to <= each.from && walk.pass()) {
        }
        walk.cursor = each.to;
    }
    return row;
}

}  // namespace truehang::laying
