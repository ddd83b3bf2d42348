// SPDX-License-Identifier: Apache-2.0
#include "merge/merge.h"

#include "editing.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

// What is expected here is derived by hand from what merge.h says of settling.

using namespace truehang;
using namespace truehang::editing;

namespace {

/// A house with the first window of these rooms noted in two ways.
Survey both_noted(std::initializer_list<std::size_t> rooms = {0}) {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    for (const std::size_t room : rooms) {
        ours.rooms[room].windows[0].notes = "Damp.";
        theirs.rooms[room].windows[0].notes = "Dry.";
    }
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

// Anna settles a note that Ben has written over meanwhile; before he hears of it, he settles his in another way. Each
// decided against what the other chose, so both are asked again.
TEST(Settle, ASettlingThatMetAnOpenNoteIsNotForgotten) {
    const Survey both = both_noted();
    const Survey anna = settle(both, {"/windows/w1/notes", 0}).value();
    Survey written_over = both;
    written_over.rooms[0].windows[0].notes = "Drying.";
    const Survey ben = settle(written_over, {"/windows/w1/notes", 1}).value();
    const Survey met = merge(both, anna, written_over).value();
    using Values = std::vector<std::optional<std::string>>;
    ASSERT_EQ(met.changed_twice.size(), 1U);
    EXPECT_EQ(met.changed_twice.front().values, (Values{"\"Damp.\"", "\"Dry.\"", "\"Drying.\""}));
    EXPECT_TRUE(met.changed_twice.front().again);
    for (const Survey& after : {merge(written_over, met, ben).value(), merge(written_over, ben, met).value()}) {
        ASSERT_EQ(after.changed_twice.size(), 1U);
        EXPECT_EQ(after.changed_twice.front().values, met.changed_twice.front().values);
    }
    // Who settles what met has it settled for both.
    const Survey settled = settle(met, {"/windows/w1/notes", 1}).value();
    EXPECT_EQ(write_survey(merge(met, settled, met).value()), write_survey(merge(settled, settled, settled).value()));
}

// One takes a window out that was to be settled so, the other keeps it; then he who kept it is met once more.
TEST(Settle, WhatOneTookOutAndTheOtherKeptIsAskedOnceMore) {
    const Survey base = house();
    Survey gone = base;
    gone.rooms[0].windows.erase(gone.rooms[0].windows.begin());
    Survey noted = base;
    noted.rooms[0].windows[0].notes = "Damp.";
    const Survey both = merge(base, gone, noted).value();
    ASSERT_EQ(both.changed_twice.size(), 1U);
    const Survey kept = settle(both, {"/windows/w1", 0}).value();
    const Survey taken_out = settle(both, {"/windows/w1", 1}).value();
    const Survey met = merge(both, kept, taken_out).value();
    ASSERT_EQ(met.changed_twice.size(), 1U);
    EXPECT_TRUE(met.changed_twice.front().again);
    EXPECT_EQ(write_survey(merge(both, met, kept).value()), write_survey(met));
    EXPECT_EQ(write_survey(merge(both, taken_out, met).value()), write_survey(met));
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

TEST(Settle, AWindowDoesntGoToARoomThatHasGone) {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    for (auto [survey, room] : {std::pair(&ours, 1), std::pair(&theirs, 2)}) {
        survey->rooms[static_cast<std::size_t>(room)].windows.push_back(survey->rooms[0].windows[0]);
        survey->rooms[0].windows.erase(survey->rooms[0].windows.begin());
    }
    Survey both = merge(base, ours, theirs).value();  // in the stair, or in the loft
    ASSERT_EQ(both.changed_twice.size(), 1U);
    ASSERT_EQ(both.changed_twice[0].at, "/windows/w1/room");
    ASSERT_EQ(both.changed_twice[0].values[0], "\"loft\"");
    both.rooms.erase(both.rooms.begin() + 1);
    const auto settled = settle(both, {"/windows/w1/room", 0});
    ASSERT_FALSE(settled);
    EXPECT_EQ(settled.error().front().pointer, "/windows/w1/room");
    EXPECT_EQ(settle(both, {"/windows/w1/room", 1})->rooms[1].windows.size(), 1U);
}

TEST(Settle, WhatTwoChangedAndAThirdTookOutCanGoToo) {
    const Survey base = house();
    Survey anna = base;
    Survey ben = base;
    Survey carl = base;
    anna.rooms[0].windows[0].readings[0].typed = "Anna";
    ben.rooms[0].windows[0].readings[0].typed = "Ben";
    carl.rooms[0].windows[0].readings.erase(carl.rooms[0].windows[0].readings.begin());
    const Survey all = merge(base, merge(base, anna, ben).value(), carl).value();
    ASSERT_EQ(all.changed_twice.size(), 1U);
    EXPECT_TRUE(all.changed_twice[0].removed);
    ASSERT_EQ(all.changed_twice[0].values.size(), 2U);
    EXPECT_EQ(ways_to_settle(all.changed_twice[0]), 3U);
    const std::string at = "/windows/w1/readings/w1-r1";
    EXPECT_EQ(settle(all, {at, 0})->rooms[0].windows[0].readings[0].typed, "Anna");
    EXPECT_EQ(settle(all, {at, 2})->rooms[0].windows[0].readings.size(), 1U);
    EXPECT_FALSE(settle(all, {at, 3}));
}

TEST(Settle, WhatGoesTakesItsEntriesAlong) {
    const Survey base = house();
    Survey third = base;
    third.rooms.erase(third.rooms.begin() + 1);  // the loft, with w4
    const Survey all = merge(base, both_noted({1}), third).value();
    ASSERT_EQ(all.changed_twice.size(), 3U);  // the room, the window, its notes
    EXPECT_TRUE(settle(all, {"/rooms/loft", 1})->changed_twice.empty());
    EXPECT_EQ(settle(all, {"/windows/w4", 1})->changed_twice.size(), 1U);
}

TEST(Settle, WhatIsTakenOutByHandTakesItsEntriesAlong) {
    const Survey both = both_noted({0, 1});
    ASSERT_EQ(both.changed_twice.size(), 2U);
    Survey edited = both;
    edited.rooms[1].windows[0].notes = "Look again.";  // still there to be settled
    settle_what_went(both, edited);
    EXPECT_EQ(edited.changed_twice.size(), 2U);
    edited.rooms[1].windows.erase(edited.rooms[1].windows.begin());
    settle_what_went(both, edited);
    ASSERT_EQ(edited.changed_twice.size(), 1U);
    EXPECT_EQ(edited.changed_twice.front().at, "/windows/w1/notes");
}

TEST(Settle, AReadingThatIsTakenOutAgainIsAskedForNoMore) {
    Survey both = house();
    auto& readings = both.rooms[0].windows[0].readings;
    ASSERT_FALSE(readings.empty());
    readings.front().id = "width";
    both.changed_twice = {ChangedTwice{"/windows/w1/readings/width", {}, true, false, {}}};
    Survey edited = both;
    edited.rooms[0].windows[0].readings.erase(edited.rooms[0].windows[0].readings.begin());
    settle_what_went(both, edited);
    EXPECT_TRUE(edited.changed_twice.empty());
    Survey moved = both;  // to another room: still there
    moved.rooms[1].windows.push_back(moved.rooms[0].windows[0]);
    moved.rooms[0].windows.erase(moved.rooms[0].windows.begin());
    settle_what_went(both, moved);
    EXPECT_EQ(moved.changed_twice.size(), 1U);
}

std::size_t windows_in(const Survey& survey) {
    std::size_t count = 0;
    for (const Room& room : survey.rooms) {
        count += room.windows.size();
    }
    return count;
}

RC_GTEST_PROP(SettleLaw, EverythingCanBeSettled, ()) {
    const Survey base = house();
    const Survey two = merge(base, edited(base, "anna"), edited(base, "ben")).value();
    Survey survey = merge(base, two, edited(base, "carl")).value();
    while (!survey.changed_twice.empty()) {
        const ChangedTwice entry = survey.changed_twice.front();
        const auto choice = *rc::gen::inRange<std::size_t>(0, ways_to_settle(entry));
        const bool takes_out = entry.removed && choice + 1 == ways_to_settle(entry);
        auto settled = settle(survey, {entry.at, choice});
        if (!settled) {
            // A cloth that is named, or a room that has gone: what stands can stand.
            RC_ASSERT((takes_out && entry.at.starts_with("/fabrics/")) || entry.at.ends_with("/room"));
            settled = settle(survey, {entry.at, entry.values.empty() ? 0 : standing_value(survey, entry.at)});
        }
        RC_ASSERT(settled.ok());
        RC_ASSERT(takes_out || windows_in(*settled) == windows_in(survey));
        RC_ASSERT(settled->changed_twice.size() < survey.changed_twice.size());
        survey = std::move(settled).value();
    }
}

}  // namespace
