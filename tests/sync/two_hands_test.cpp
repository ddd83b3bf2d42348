// SPDX-License-Identifier: Apache-2.0
#include "two_phones.h"

#include <gtest/gtest.h>

#include <random>

// Two phones on one visit, by the protocol’s text: nothing lost, nothing replaced, whatever is cut.

using namespace truehang;
using namespace truehang::sync;
using namespace truehang::sync::test;

namespace {

TEST(TwoHands, BothReadAndBothReadingsAreThere) {
    TwoPhones two;
    two.read(two.anna, "a1", 0);
    two.settle(two.anna);
    two.read(two.ben, "b1", 0);
    two.settle(two.ben);
    two.expect_all_there();
    EXPECT_EQ(two.ben.brought_together, 1);
    const auto history = two.ben.store().history(id).value();
    EXPECT_EQ(history.back().what, "Put together");
}

TEST(TwoHands, PuttingTogetherIsOneEditThatCanBeUndone) {
    TwoPhones two;
    two.read(two.anna, "a1", 0);
    two.settle(two.anna);
    two.read(two.ben, "b1", 1);
    two.settle(two.ben);
    EXPECT_EQ(two.ben.store().visit(id)->rooms[0].windows[0].readings.size(), 1U);
    EXPECT_EQ(two.ben.store().undo(id).value(), "Put together");
    EXPECT_TRUE(two.ben.store().visit(id)->rooms[0].windows[0].readings.empty());
    EXPECT_EQ(two.ben.store().visit(id)->rooms[0].windows[1].readings.size(), 1U);
    EXPECT_EQ(two.ben.store().redo(id).value(), "Put together");
    two.settle(two.ben);
    two.expect_all_there();
}

TEST(TwoHands, WhatBothChangedTravelsSideBySide) {
    TwoPhones two;
    two.note(two.anna, "Damp.");
    two.settle(two.anna);
    two.note(two.ben, "Dry.");
    two.settle(two.ben);
    const Survey there = read_survey(two.workroom.newest(id).bytes).value();
    ASSERT_EQ(there.changed_twice.size(), 1U);
    EXPECT_EQ(there.changed_twice[0].at, "/windows/w1/notes");
    EXPECT_EQ(two.ben.store().last_met(id)->value().sent_by, "The other phone");
}

TEST(TwoHands, AVisitThatWasNeverSentIsPutTogetherFromItsFile) {
    TwoPhones two(false);
    two.read(two.anna, "a1", 0);
    two.settle(two.anna);
    two.read(two.ben, "b1", 0);
    two.settle(two.ben);
    two.expect_all_there();
    EXPECT_EQ(two.ben.brought_together, 1);
}

// The first revision arrives, its answer doesn’t: what the phone goes on from is its own, not somebody else’s.
TEST(TwoHands, WhatArrivedUnheardIsNoOtherHand) {
    for (const bool other_builds_on_it : {false, true}) {
        TwoPhones two;
        two.note(two.anna, "Damp.");
        two.step(two.anna, Fate::restarted_after);
        if (other_builds_on_it) {
            two.read(two.ben, "b1", 1);
            two.settle(two.ben);
        }
        two.note(two.anna, "Dry.");
        two.settle(two.anna);
        two.settle(two.ben);
        const Survey there = read_survey(two.workroom.newest(id).bytes).value();
        EXPECT_EQ(there.rooms[0].windows[0].notes, "Dry.");
        EXPECT_TRUE(there.changed_twice.empty());
        two.expect_all_there();
    }
}

TEST(TwoHands, WithoutACommonParentNothingIsPutTogetherAndNothingIsLost) {
    TwoPhones two(false);
    StorePhone carl("carl");
    ASSERT_TRUE(carl.store().keep(visit(), "made"));
    two.read(two.anna, "a1", 0);
    two.settle(two.anna);
    const auto bytes = two.workroom.newest(id).bytes;
    two.read(carl, "c1", 0);
    for (int i = 0; i < 10 && two.step(carl); ++i) {
    }
    ASSERT_EQ(carl.refusals.size(), 1U);
    EXPECT_EQ(two.workroom.newest(id).bytes, bytes);
    EXPECT_EQ(carl.store().visit(id)->rooms[0].windows[0].readings.size(), 1U);
}

TEST(TwoHands, EveryStepCanBeCutInEveryWay) {
    // Of the phone that comes second: the stale revision, the fetch, the one that holds both.
    for (int cut = 0; cut < 4; ++cut) {
        for (int fate = 1; fate < static_cast<int>(Fate::count); ++fate) {
            for (const bool edits_meanwhile : {false, true}) {
                TwoPhones two;
                two.read(two.anna, "a1", 0);
                two.settle(two.anna);
                two.read(two.ben, "b1", 0);
                for (int i = 0; i < cut; ++i) {
                    two.step(two.ben);
                }
                two.step(two.ben, static_cast<Fate>(fate));
                if (edits_meanwhile) {
                    two.read(two.ben, "b2", 1);
                    two.read(two.anna, "a2", 1);
                    two.settle(two.anna);
                }
                two.settle(two.ben);
                two.settle(two.anna);
                two.expect_all_there();
                ASSERT_FALSE(testing::Test::HasFailure()) << "cut " << cut << ", fate " << fate << edits_meanwhile;
            }
        }
    }
}

TEST(TwoHands, ByChanceNothingIsLost) {
    for (unsigned seed = 1; seed <= 25; ++seed) {
        std::mt19937 random(seed);
        const auto pick = [&random](unsigned below) { return random() % below; };
        TwoPhones two(pick(2) == 0);
        for (int i = 0; i < 40; ++i) {
            StorePhone& phone = pick(2) == 0 ? two.anna : two.ben;
            if (pick(3) == 0) {
                two.read(phone, "r" + std::to_string(i), static_cast<int>(pick(2)));
            } else {
                const bool well = pick(2) == 0;
                two.step(phone, well ? Fate::arrives : static_cast<Fate>(pick(static_cast<unsigned>(Fate::count))));
            }
        }
        two.settle(two.anna);
        two.settle(two.ben);
        two.settle(two.anna);
        if (!two.entered.empty()) {
            two.expect_all_there();
        }
        ASSERT_FALSE(testing::Test::HasFailure()) << "seed " << seed;
    }
}

}  // namespace
