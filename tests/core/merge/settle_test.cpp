// SPDX-License-Identifier: Apache-2.0
#include "merge/merge.h"

#include "editing.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

// What is expected here is derived by hand from what merge.h says of settling.

using namespace truehang;
using namespace truehang::editing;

namespace {

Survey both_noted() {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    ours.rooms[0].windows[0].notes = "Damp.";
    theirs.rooms[0].windows[0].notes = "Dry.";
    return merge(base, ours, theirs).value();
}

TEST(Settle, AValueStandsAndTheEntryIsGone) {
    const Survey both = both_noted();
    EXPECT_EQ(standing_value(both, "/windows/w1/notes"), 1U);
    for (const std::size_t choice : {0U, 1U}) {
        const auto settled = settle(both, {"/windows/w1/notes", choice});
        ASSERT_TRUE(settled);
        EXPECT_EQ(settled->rooms[0].windows[0].notes, choice == 0 ? "Damp." : "Dry.");
        EXPECT_TRUE(settled->changed_twice.empty());
    }
}

TEST(Settle, WhatWasSettledStaysSoAgainstTheSideBySide) {
    const Survey both = both_noted();
    const Survey settled = settle(both, {"/windows/w1/notes", 0}).value();
    Survey other = both;
    other.title = "Another title";
    const Survey after = merge(both, settled, other).value();
    EXPECT_EQ(after.rooms[0].windows[0].notes, "Damp.");
    EXPECT_EQ(after.title, "Another title");
    EXPECT_TRUE(after.changed_twice.empty());
}

TEST(Settle, TwoWaysOfSettlingAreSideBySideAgain) {
    const Survey both = both_noted();
    const Survey damp = settle(both, {"/windows/w1/notes", 0}).value();
    const Survey dry = settle(both, {"/windows/w1/notes", 1}).value();
    const Survey after = merge(both, damp, dry).value();
    ASSERT_EQ(after.changed_twice.size(), 1U);
    EXPECT_TRUE(after.changed_twice.front().again);
    // And it counts as a change: the side-by-side that it came from doesn't take it back.
    EXPECT_EQ(write_survey(merge(both, after, both).value()), write_survey(after));
}

TEST(Settle, WhatWasTakenOutIsKeptOrGoes) {
    const Survey base = house();
    Survey ours = base;
    ours.rooms.erase(ours.rooms.begin() + 1);
    Survey theirs = base;
    theirs.rooms[1].windows[0].notes = "Look again.";
    const Survey both = merge(base, ours, theirs).value();
    const Survey kept = settle(both, {"/windows/w4", 0}).value();
    EXPECT_EQ(kept.rooms[1].windows.size(), 1U);
    EXPECT_EQ(kept.changed_twice.size(), 1U);
    const Survey gone = settle(settle(both, {"/windows/w4", 1}).value(), {"/rooms/loft", 1}).value();
    EXPECT_EQ(gone.rooms.size(), 2U);
    EXPECT_TRUE(gone.changed_twice.empty());
}

TEST(Settle, AnOrderIsChosen) {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    std::ranges::reverse(ours.rooms);
    std::swap(theirs.rooms.front(), theirs.rooms[1]);
    const Survey both = merge(base, ours, theirs).value();
    EXPECT_EQ(standing_value(both, "/rooms"), 1U);
    const Survey settled = settle(both, {"/rooms", 0}).value();
    EXPECT_EQ(settled.rooms.front().id, "loft");
    EXPECT_TRUE(settled.changed_twice.empty());
}

TEST(Settle, AFabricThatIsNamedCantGo) {
    const Survey base = house();
    Survey ours = base;
    ours.fabrics.pop_back();
    Survey theirs = base;
    theirs.rooms[0].windows[0].layers[0].treatment->lining = "f3";
    const Survey both = merge(base, ours, theirs).value();
    const auto gone = settle(both, {"/fabrics/f3", 1});
    ASSERT_FALSE(gone);
    EXPECT_EQ(gone.error().front().pointer, "/rooms/0/windows/0/treatment/lining");
    EXPECT_TRUE(settle(both, {"/fabrics/f3", 0}));
}

TEST(Settle, WhatIsNotThereIsRefused) {
    EXPECT_FALSE(settle(both_noted(), {"/windows/w1/name", 0}));
    EXPECT_FALSE(settle(both_noted(), {"/windows/w1/notes", 2}));
}

RC_GTEST_PROP(SettleLaw, EverythingCanBeSettled, ()) {
    const Survey base = house();
    Survey survey = merge(base, edited(base, "anna"), edited(base, "ben")).value();
    while (!survey.changed_twice.empty()) {
        const ChangedTwice entry = survey.changed_twice.front();
        const auto choices = entry.values.empty() ? 1 : entry.values.size();
        const auto choice = *rc::gen::inRange<std::size_t>(0, choices);
        const auto settled = settle(survey, {entry.at, choice});
        RC_ASSERT(settled.ok());
        RC_ASSERT(entry.values.empty() || entry.at.starts_with("/rooms") || standing_value(survey, entry.at) < choices);
        survey = *settled;
    }
}

}  // namespace
