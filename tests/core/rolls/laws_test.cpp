// SPDX-License-Identifier: Apache-2.0
// Laws of every roll plan, by a checker that shares no code with the planner.
#include "plan_checker.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

namespace truehang {
namespace {

std::string text(int number) { return std::to_string(number); }

std::vector<Roll> some_rolls(int repeat) {
    std::vector<Roll> rolls;
    const int count = *rc::gen::inRange(1, 6);
    for (int i = 0; i < count; ++i) {
        Roll roll;
        roll.id = "roll " + text(i);
        roll.lot = "lot " + text(*rc::gen::inRange(0, 3));
        roll.length = Length::mm(*rc::gen::inRange(3000, 40000));
        roll.phase = Length::mm(repeat > 0 ? *rc::gen::inRange(0, repeat) : 0);
        for (int n = *rc::gen::inRange(0, 4); n > 0; --n) {
            const int from = *rc::gen::inRange(0, static_cast<int>(roll.length.mm()));
            roll.flaws.push_back({Length::mm(from), Length::mm(from + *rc::gen::inRange(0, 300))});
        }
        if (*rc::gen::inRange(0, 3) == 0) {
            const int at = *rc::gen::inRange(0, static_cast<int>(roll.length.mm()));
            roll.joins.push_back({Length::mm(at), std::nullopt});
            if (*rc::gen::arbitrary<bool>()) {
                roll.joins.back().phase = Length::mm(at + *rc::gen::inRange(0, 500));
            }
        }
        rolls.push_back(roll);
    }
    return rolls;
}

/// One to three curtains a window, each a run; some with loose strips and halves.
std::vector<PieceToCut> some_pieces(int repeat) {
    std::vector<PieceToCut> pieces;
    const int windows = *rc::gen::inRange(1, 9);
    for (int w = 0; w < windows; ++w) {
        PieceToCut piece;
        piece.window = "window " + text(w);
        piece.room = "room " + text(w / 3);
        piece.length = Length::mm(*rc::gen::inRange(400, 3000));
        piece.matched = repeat > 0;
        const bool half_drop = *rc::gen::arbitrary<bool>();
        const bool halves = *rc::gen::inRange(0, 4) == 0;
        for (int curtain = *rc::gen::inRange(1, 4); curtain > 0; --curtain) {
            piece.run = "curtain " + text(curtain);
            piece.widths = halves ? 0.5 : 1.0;
            for (int n = *rc::gen::inRange(1, 4); n > 0; --n) {
                piece.phase = Length::mm(half_drop && n % 2 == 0 ? repeat / 2 : 0);
                piece.id = text(static_cast<int>(pieces.size()));
                pieces.push_back(piece);
            }
        }
        piece.run.clear();
        piece.matched = false;
        piece.phase = Length();
        for (int n = *rc::gen::inRange(0, 3); n > 0; --n) {
            piece.length = Length::mm(*rc::gen::inRange(80, 400));
            piece.id = text(static_cast<int>(pieces.size()));
            pieces.push_back(piece);
        }
    }
    return pieces;
}

TEST(RollLaws, EveryPlanIsSound) {
    EXPECT_TRUE(rc::check("plans are sound", [] {
        const int repeat = *rc::gen::element(0, 0, 64, 320, 640);
        const auto rolls = some_rolls(repeat);
        const auto pieces = some_pieces(repeat);
        RollRules rules;
        rules.repeat = Length::mm(repeat);
        rules.useful = Length::mm(*rc::gen::element(300, 1000, 100000));
        const RollPlan plan = plan_rolls(rolls, pieces, rules, {20000});
        for (const std::string& fault : PlanChecker(rolls, pieces, rules).faults(plan)) {
            RC_LOG(fault);
        }
        RC_ASSERT(PlanChecker(rolls, pieces, rules).faults(plan).empty());
    }));
}

TEST(RollLaws, APlanIsTheSameEveryTime) {
    EXPECT_TRUE(rc::check("plans are deterministic", [] {
        const auto rolls = some_rolls(0);
        const auto pieces = some_pieces(0);
        const RollPlan one = plan_rolls(rolls, pieces, {}, {5000});
        const RollPlan two = plan_rolls(rolls, pieces, {}, {5000});
        RC_ASSERT(one.used == two.used);
        RC_ASSERT(one.rolls.size() == two.rolls.size());
        for (std::size_t i = 0; i < one.rolls.size(); ++i) {
            RC_ASSERT(one.rolls[i].cuts.size() == two.rolls[i].cuts.size());
        }
    }));
}

// Derived: with as many rolls in each lot as windows, each twice as long as the longest window, a piece finds no roll
// only where every roll is more than half full, which takes more cloth than all windows together.
TEST(RollLaws, PlentifulClothLeavesNoWindowOut) {
    EXPECT_TRUE(rc::check("plentiful cloth leaves no window out", [] {
        const int windows = *rc::gen::inRange(1, 7);
        std::vector<PieceToCut> pieces;
        double longest = 0.0;
        for (int w = 0; w < windows; ++w) {
            double window = 0.0;
            for (int n = *rc::gen::inRange(1, 5); n > 0; --n) {
                PieceToCut piece;
                piece.id = std::to_string(pieces.size());
                piece.window = "w" + std::to_string(w);
                piece.length = Length::mm(*rc::gen::inRange(300, 3000));
                window += piece.length.mm();
                pieces.push_back(piece);
            }
            longest = std::max(longest, window);
        }
        std::vector<Roll> rolls;
        for (int r = 0; r < 2 * windows; ++r) {
            Roll roll;
            roll.id = std::to_string(r);
            roll.lot = r % 2 == 0 ? "A" : "B";
            roll.length = Length::mm(2.0 * longest + *rc::gen::inRange(0, 2000));
            rolls.push_back(roll);
        }
        const RollPlan plan = plan_rolls(rolls, pieces, {}, {20000});
        RC_ASSERT(plan.not_placed.empty());
        RC_ASSERT(PlanChecker(rolls, pieces, {}).faults(plan).empty());
    }));
}

/// A plan that is sound, for faults to be put into.
struct Sound {
    std::vector<Roll> rolls{{"r", "A", Length::mm(10000), Length(), {{Length::mm(4000), Length::mm(4100)}}, {}}};
    std::vector<PieceToCut> pieces;
    RollRules rules;
    RollPlan plan;

    Sound() {
        for (const char* id : {"a", "b", "c"}) {
            PieceToCut piece;
            piece.id = id;
            piece.window = piece.run = id == std::string("c") ? "w2" : "w1";
            piece.length = Length::mm(1900);
            piece.matched = true;
            pieces.push_back(piece);
        }
        rules.repeat = Length::mm(100);
        plan = plan_rolls(rolls, pieces, rules);
    }
    std::size_t faults() { return PlanChecker(rolls, pieces, rules).faults(plan).size(); }
    PlannedCut& cut(std::size_t i) { return plan.rolls.front().cuts[i]; }
};

// The checker itself: each kind of fault, put into a sound plan, is seen.
TEST(RollLaws, TheCheckerSeesFaults) {
    EXPECT_EQ(Sound().faults(), 0U);
    const auto broken = [](auto&& spoil) {
        Sound sound;
        spoil(sound);
        return sound.faults() > 0;
    };
    const auto move = [](PlannedCut& cut, double by) {
        cut.from += Length::mm(by);
        cut.to += Length::mm(by);
    };
    EXPECT_TRUE(broken([&](Sound& sound) { move(sound.cut(1), 300); }));    // over the flaw
    EXPECT_TRUE(broken([&](Sound& sound) { move(sound.cut(2), 50); }));     // off its phase
    EXPECT_TRUE(broken([&](Sound& sound) { move(sound.cut(1), -1000); }));  // over another
    EXPECT_TRUE(broken([&](Sound& sound) { move(sound.cut(2), 9000); }));   // off the roll
    EXPECT_TRUE(broken([&](Sound& sound) { sound.cut(2).to += Length::mm(1); }));
    EXPECT_TRUE(broken([&](Sound& sound) { sound.plan.rolls.front().cuts.pop_back(); }));
    EXPECT_TRUE(broken([&](Sound& sound) { std::swap(sound.cut(1).piece, sound.cut(2).piece); }));  // runs torn
    EXPECT_TRUE(broken([&](Sound& sound) { sound.plan.used += Length::mm(1); }));
    EXPECT_TRUE(broken([&](Sound& sound) { sound.plan.least = Length::mm(10000); }));
    EXPECT_TRUE(broken([&](Sound& sound) {
        sound.pieces[1].window = "w3";
        sound.plan.rolls[0].lot = "B";
    }));
}

}  // namespace
}  // namespace truehang
