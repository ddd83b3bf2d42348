// SPDX-License-Identifier: Apache-2.0
// Houses that fit by their making, and houses of which trying every order says whether they fit.
#include "plan_checker.h"

#include "rolls/fitting.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace truehang {
namespace {

struct Curtain {
    std::string window, room;
    int drops = 0;
    double length = 0.0;
};

/// Curtains laid on rolls one behind the other, with nothing between them but flaws and what the pattern asks.
class MadeHouse {
public:
    std::vector<Roll> rolls;
    std::vector<PieceToCut> pieces;
    std::vector<Curtain> curtains;
    RollRules rules;

    void roll(const std::string& lot) {
        rolls.emplace_back();
        rolls.back().id = "roll " + std::to_string(rolls.size());
        rolls.back().lot = lot;
    }
    /// Behind what lies on the last roll.
    void curtain(const Curtain& each) {
        curtains.push_back(each);
        for (int n = 0; n < each.drops; ++n) {
            PieceToCut piece;
            piece.id = std::to_string(pieces.size());
            piece.window = each.window;
            piece.room = each.room;
            piece.run = "curtain " + std::to_string(curtains.size());
            piece.length = Length::mm(each.length);
            piece.matched = rules.repeat.mm() > 0.0;
            pieces.push_back(piece);
            rolls.back().length = Length::mm(begin_at(rolls.back().length.mm()) + each.length);
        }
    }
    void flaw(double length) {
        const Length from = rolls.back().length;
        rolls.back().length = Length::mm(from.mm() + length);
        rolls.back().flaws.push_back({from, rolls.back().length});
    }
    [[nodiscard]] double begin_at(double at) const {
        const double repeat = rules.repeat.mm();
        return repeat > 0.0 ? std::ceil(at / repeat) * repeat : at;
    }

    /// The same as the planner's own problem; a piece's number is that of its slot.
    [[nodiscard]] laying::LotsProblem problem() const {
        laying::LotsProblem problem;
        problem.rules = {laying::down(rules.repeat), laying::down(rules.repeat), laying::up(rules.useful)};
        std::map<std::string, std::size_t> lots, windows;
        std::map<std::string, int> rooms;
        for (const Roll& roll : rolls) {
            const std::size_t lot = lots.try_emplace(roll.lot, lots.size()).first->second;
            problem.lots.resize(lots.size());
            problem.lots[lot].rolls.push_back(problem.grounds.size());
            problem.grounds.push_back(laying::ground_of(roll));
        }
        int first = 0;
        for (const Curtain& each : curtains) {
            const laying::Um phase = rules.repeat.mm() > 0.0 ? 0 : laying::Slot::anywhere;
            const laying::Slot slot{laying::up(Length::mm(each.length)), phase};
            const std::size_t window = windows.try_emplace(each.window, windows.size()).first->second;
            problem.windows.resize(windows.size());
            problem.windows[window].room = rooms.try_emplace(each.room, static_cast<int>(rooms.size())).first->second;
            problem.windows[window].runs.push_back({{static_cast<std::size_t>(each.drops), slot}, first});
            problem.windows[window].length += each.drops * slot.length;
            first += each.drops;
        }
        return problem;
    }

    /// As a plan of pieces, for the checker.
    [[nodiscard]] RollPlan told(const laying::LotsPlan& found) const {
        const laying::LotsProblem asked = problem();
        RollPlan plan;
        for (std::size_t r = 0; r < rolls.size(); ++r) {
            PlannedRoll planned{rolls[r].id, rolls[r].lot, {}, {}, {}};
            planned.used = laying::length_of(laying::use_of(asked.grounds[r], found.rolls[r], asked.rules.useful).used);
            for (const laying::Placed& each : found.rolls[r]) {
                planned.cuts.push_back({pieces[static_cast<std::size_t>(each.slot)].id, laying::length_of(each.from),
                                        laying::length_of(each.to)});
            }
            plan.used += planned.used;
            plan.rolls.push_back(planned);
        }
        return plan;
    }
};

// Derived: seven windows of two curtains each, every roll as long as what was put on it, so that all of it fits.
// Changes one after the other leave a window out.
TEST(FittedWindows, SevenPairsOnSixRollsWithoutAnyRest) {
    MadeHouse house;
    const auto curtain = [&](const std::string& window, double length) { house.curtain({window, "", 2, length}); };
    house.roll("A");
    curtain("w4", 2336);
    curtain("w1", 1964);
    curtain("w2", 2432);
    house.roll("A");
    curtain("w4", 2336);
    curtain("w2", 2432);
    house.roll("A");
    curtain("w0", 1846);
    curtain("w6", 2129);
    curtain("w5", 1703);
    house.roll("A");
    curtain("w3", 2397);
    curtain("w6", 2129);
    house.roll("A");
    curtain("w3", 2397);
    house.roll("A");
    curtain("w5", 1703);
    house.flaw(50);
    curtain("w1", 1964);
    curtain("w0", 1846);
    const RollPlan plan = plan_rolls(house.rolls, house.pieces, house.rules);
    EXPECT_EQ(plan.not_placed, std::vector<std::string>());
    EXPECT_EQ(PlanChecker(house.rolls, house.pieces, house.rules).faults(plan), std::vector<std::string>());
}

Curtain some_curtain(int window, const std::string& room) {
    return {"window " + std::to_string(window), room, *rc::gen::inRange(1, 4), 1.0 * *rc::gen::inRange(500, 2700)};
}

/// Up to five windows of one or two curtains, on rolls of up to three lots, each room in one of them.
MadeHouse some_made_house() {
    MadeHouse house;
    house.rules.repeat = Length::mm(*rc::gen::element(0, 0, 320, 640));
    std::vector<std::pair<int, Curtain>> curtains;  // and its lot
    std::vector<int> lots;
    for (int room = 0; room < 3; ++room) {
        lots.push_back(*rc::gen::inRange(0, 3));
    }
    for (int w = *rc::gen::inRange(1, 6); w > 0; --w) {
        const Curtain curtain = some_curtain(w, "room " + std::to_string(w % 3));
        for (int n = *rc::gen::inRange(1, 3); n > 0; --n) {
            const auto place = *rc::gen::inRange(std::size_t{0}, curtains.size() + 1);
            curtains.insert(curtains.begin() + static_cast<std::ptrdiff_t>(place),
                            {lots[static_cast<std::size_t>(w % 3)], curtain});
        }
    }
    std::ranges::stable_sort(curtains, {}, &std::pair<int, Curtain>::first);
    for (const auto& [lot, curtain] : curtains) {
        const std::string name = "lot " + std::to_string(lot);
        if (house.rolls.empty() || house.rolls.back().lot != name || *rc::gen::inRange(0, 3) == 0) {
            house.roll(name);
        } else if (*rc::gen::inRange(0, 4) == 0) {
            house.flaw(*rc::gen::inRange(5, 200));
        }
        house.curtain(curtain);
    }
    return house;
}

// Derived: what was put on the rolls fits on them, all of it and no room over several lots.
TEST(FittedWindows, WhatFitsByItsMakingIsFound) {
    EXPECT_TRUE(rc::check("what fits by its making is found", [] {
        const MadeHouse house = some_made_house();
        const auto problem = house.problem();
        const int windows = static_cast<int>(problem.windows.size());
        const auto found = laying::fit_windows(problem, windows, 0, 200000);
        RC_ASSERT(found.has_value());
        const RollPlan plan = house.told(*found);
        RC_ASSERT(PlanChecker(house.rolls, house.pieces, house.rules).faults(plan).empty());
        // Of that plan neither can be bettered: no window is left out and no room split.
        RC_ASSERT(!laying::fit_windows(problem, 0, 0, 200000));
    }));
}

/// Whether the curtains, in that order, lie one behind the other along the rolls.
bool lie_in_order(const MadeHouse& house, const std::vector<std::size_t>& order) {
    std::size_t r = 0;
    double at = 0.0;
    for (const std::size_t number : order) {
        const Curtain& curtain = house.curtains[number];
        const auto lies_behind = [&](double& end) {
            for (int n = 0; n < curtain.drops; ++n) {
                double from = house.begin_at(end);
                for (const RollFlaw& flaw : house.rolls[r].flaws) {
                    from = from + curtain.length > flaw.from.mm() && from < flaw.to.mm() ? house.begin_at(flaw.to.mm())
                                                                                         : from;
                }
                end = from + curtain.length;
            }
            return end <= house.rolls[r].length.mm();
        };
        double end = at;
        while (!lies_behind(end)) {
            if (++r == house.rolls.size()) {
                return false;
            }
            end = 0.0;
        }
        at = end;
    }
    return true;
}

// By trying every order of up to six curtains: where none of them lies, none is found, and else one is.
TEST(FittedWindows, FitsExactlyWhereSomeOrderDoes) {
    EXPECT_TRUE(rc::check("fits exactly where some order does", [] {
        MadeHouse house;
        house.rules.repeat = Length::mm(*rc::gen::element(0, 320));
        const int curtains = *rc::gen::inRange(1, 7);
        for (int i = 0; i < curtains; ++i) {
            if (i == 0 || *rc::gen::inRange(0, 2) == 0) {
                house.roll("A");
            } else if (*rc::gen::inRange(0, 3) == 0) {
                house.flaw(*rc::gen::inRange(5, 200));
            }
            house.curtain(some_curtain(i, ""));
        }
        // The last roll is cut shorter, and it may be that all fits otherwise.
        const double cut_off = *rc::gen::inRange(0, 1500);
        Roll& last = house.rolls.back();
        last.length = std::max(Length::mm(1), Length::mm(last.length.mm() - cut_off));
        house.rolls.front().length += Length::mm(*rc::gen::inRange(0, 1500));
        std::vector<std::size_t> order(house.curtains.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        bool fits = false;
        do {
            fits = lie_in_order(house, order);
        } while (!fits && std::ranges::next_permutation(order).found);
        RC_CLASSIFY(fits);
        RC_ASSERT(laying::fit_windows(house.problem(), 1, 0, 200000).has_value() == fits);
    }));
}

}  // namespace
}  // namespace truehang
