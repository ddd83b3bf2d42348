// SPDX-License-Identifier: Apache-2.0
#include "merge/merge.h"

#include "editing.h"
#include "figures/figures.h"

#include <gtest/gtest.h>

// What is expected here is derived by hand from what merge.h says of a merge.

using namespace truehang;
using namespace truehang::editing;

namespace {

Survey both_in(const Survey& base, const Survey& ours, const Survey& theirs) {
    auto result = merge(base, ours, theirs);
    if (!result) {
        ADD_FAILURE() << result.error().front().pointer << ": " << result.error().front().text;
        return {};
    }
    return std::move(result).value();
}

const Window& window_of(const Survey& survey, const std::string& id) {
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            if (window.id == id) {
                return window;
            }
        }
    }
    throw std::runtime_error("no window " + id);
}

Window& window_in(Survey& survey, const std::string& id) { return const_cast<Window&>(window_of(survey, id)); }

std::vector<std::string> ids_of(const std::vector<Reading>& readings) {
    std::vector<std::string> ids;
    for (const Reading& one : readings) {
        ids.push_back(one.id);
    }
    return ids;
}

std::vector<std::string> places_of(const Survey& survey) {
    std::vector<std::string> places;
    for (const ChangedTwice& twice : survey.changed_twice) {
        places.push_back(twice.at);
    }
    return places;
}

using Texts = std::vector<std::string>;

TEST(Merge, TwoReadingsOfOneStationAreBothThereAndFlagged) {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    window_in(ours, "w1").readings.push_back(reading("b", "opening.depth", 150.0));
    window_in(theirs, "w1").readings.push_back(reading("a", "opening.depth", 160.0));
    const Survey both = both_in(base, ours, theirs);
    EXPECT_EQ(ids_of(window_of(both, "w1").readings), (Texts{"w1-r1", "w1-r2", "a", "b"}));
    EXPECT_TRUE(both.changed_twice.empty());
    const auto flags = work_out(both).windows.front().flags;
    EXPECT_TRUE(std::ranges::any_of(
        flags, [](const Flag& flag) { return flag.code == "two-readings" && flag.severity == Severity::decide; }));
}

TEST(Merge, WhatOneChangedStandsBesideWhatTheOtherChanged) {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    window_in(ours, "w2").notes = "Damp.";
    window_in(theirs, "w2").layers[0].treatment->fullness = 2.0;
    theirs.title = "House on the quay";
    const Survey both = both_in(base, ours, theirs);
    EXPECT_EQ(window_of(both, "w2").notes, "Damp.");
    EXPECT_EQ(window_of(both, "w2").layers[0].treatment->fullness, 2.0);
    EXPECT_EQ(both.title, "House on the quay");
    EXPECT_TRUE(both.changed_twice.empty());
}

TEST(Merge, WhatBothChangedIsKeptSideBySide) {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    window_in(ours, "w1").notes = "Damp.";
    window_in(theirs, "w1").notes = "Dry.";
    const Survey both = both_in(base, ours, theirs);
    ASSERT_EQ(places_of(both), Texts{"/windows/w1/notes"});
    using Values = std::vector<std::optional<std::string>>;
    EXPECT_EQ(both.changed_twice.front().values, (Values{"\"Damp.\"", "\"Dry.\""}));
    EXPECT_EQ(window_of(both, "w1").notes, "Dry.");
}

TEST(Merge, APositionIsOneValue) {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    ours.site.emplace().latitude = 54.0;
    ours.site->longitude = -1.0;
    theirs.site.emplace().latitude = 53.0;
    theirs.site->longitude = -2.0;
    theirs.site->address = "1 Loft Steps";
    const Survey both = both_in(base, ours, theirs);
    ASSERT_EQ(places_of(both), Texts{"/site/latitude+longitude+accuracy_m+elevation_m"});
    EXPECT_EQ(both.site->latitude == 54.0, both.site->longitude == -1.0);
    EXPECT_EQ(both.site->address, "1 Loft Steps");
}

TEST(Merge, WhatOneTookOutIsGoneUnlessTheOtherChangedIt) {
    const Survey base = house();
    Survey ours = base;
    ours.rooms[0].windows.erase(ours.rooms[0].windows.begin(), ours.rooms[0].windows.begin() + 2);  // w1, w2
    Survey theirs = base;
    window_in(theirs, "w2").readings.push_back(reading("c", "opening.depth", 150.0));
    const Survey both = both_in(base, ours, theirs);
    ASSERT_EQ(both.rooms[0].windows.size(), 2U);
    EXPECT_EQ(both.rooms[0].windows[0].id, "w2");
    EXPECT_EQ(ids_of(window_of(both, "w2").readings).back(), "c");
    ASSERT_EQ(places_of(both), Texts{"/windows/w2"});
    EXPECT_TRUE(both.changed_twice.front().removed);
}

TEST(Merge, TheRoomOfAWindowThatStaysStays) {
    const Survey base = house();
    Survey ours = base;
    ours.rooms.erase(ours.rooms.begin() + 1);  // the loft, with w4
    Survey theirs = base;
    window_in(theirs, "w4").notes = "Look again.";
    const Survey both = both_in(base, ours, theirs);
    EXPECT_EQ(places_of(both), (Texts{"/rooms/loft", "/windows/w4"}));
    EXPECT_EQ(both.rooms[1].id, "loft");
}

TEST(Merge, AFabricThatSomethingNamesStays) {
    const Survey base = house();
    Survey ours = base;
    ours.fabrics.pop_back();  // f3
    Survey theirs = base;
    window_in(theirs, "w1").layers[0].treatment->lining = "f3";
    const Survey both = both_in(base, ours, theirs);
    EXPECT_EQ(places_of(both), Texts{"/fabrics/f3"});
    EXPECT_EQ(both.fabrics.size(), 3U);
}

TEST(Merge, AWindowMovedByOneKeepsWhatTheOtherMeasured) {
    const Survey base = house();
    Survey ours = base;
    ours.rooms[2].windows.push_back(ours.rooms[0].windows[0]);
    ours.rooms[0].windows.erase(ours.rooms[0].windows.begin());
    Survey theirs = base;
    window_in(theirs, "w1").readings.push_back(reading("c", "opening.depth", 150.0));
    const Survey both = both_in(base, ours, theirs);
    ASSERT_EQ(both.rooms[2].windows.size(), 1U);
    EXPECT_EQ(both.rooms[2].windows[0].readings.size(), 3U);
    EXPECT_TRUE(both.changed_twice.empty());
}

TEST(Merge, OneOrderOfTwoStandsAndBothAreKept) {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    std::ranges::reverse(ours.rooms);                  // stair, loft, hall
    std::swap(theirs.rooms.front(), theirs.rooms[1]);  // loft, hall, stair
    const Survey both = both_in(base, ours, theirs);
    ASSERT_EQ(places_of(both), Texts{"/rooms"});
    EXPECT_EQ(both.rooms.front().id, "stair");
    EXPECT_EQ(both.changed_twice.front().values.size(), 2U);
}

TEST(Merge, KeysThatThisVersionDoesntKnowAreKept) {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    window_in(ours, "w1").extra = {{"shade", R"({"b":1,"a":[2]})"}};
    theirs.rooms[0].extra = {{"floor", "\"oak\""}};
    const Survey both = both_in(base, ours, theirs);
    EXPECT_EQ(window_of(both, "w1").extra, (Extra{{"shade", R"({"a":[2],"b":1})"}}));
    EXPECT_EQ(both.rooms[0].extra, (Extra{{"floor", "\"oak\""}}));
}

TEST(Merge, ASignOffOfEachIsKeptWhole) {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    ours.signed_off.emplace().by = "R. Oduya";
    ours.signed_off->agreed.emplace().digest = std::string(64, '1');
    theirs.signed_off.emplace().by = "M. Oduya";
    theirs.signed_off->agreed.emplace().digest = std::string(64, '2');
    const Survey both = both_in(base, ours, theirs);
    ASSERT_EQ(places_of(both), Texts{"/signed_off"});
    const bool is_ours = both.signed_off->by == "R. Oduya";
    EXPECT_EQ(both.signed_off->agreed->digest, std::string(64, is_ours ? '1' : '2'));
}

TEST(Merge, WhatIsHungInLayersByOneKeepsWhatTheOtherChanged) {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    Window& window = window_in(ours, "w1");
    window.layered = true;
    window.layers[0].id = "inner";
    window.layers.push_back(layer("outer", "f2"));
    window_in(theirs, "w1").layers[0].treatment->fullness = 3.0;
    const Survey both = both_in(base, ours, theirs);
    EXPECT_EQ(places_of(both), Texts{"/windows/w1/layers/#1"});
    ASSERT_EQ(window_of(both, "w1").layers.size(), 3U);
    EXPECT_EQ(window_of(both, "w1").layers[0].treatment->fullness, 3.0);
    EXPECT_TRUE(window_of(both, "w1").layered);
}

TEST(Merge, TwoVisitsAreNotPutTogether) {
    const Survey base = house();
    Survey other = base;
    other.id = "another";
    const auto result = merge(base, base, other);
    ASSERT_FALSE(result);
    EXPECT_EQ(result.error().front().pointer, "/id");
}

TEST(Merge, TheParentsBelongToTheSending) {
    const Survey base = house();
    Survey ours = base;
    ours.parents = {std::string(64, 'a')};
    ours.revision = 9;
    const Survey both = both_in(base, ours, base);
    EXPECT_EQ(both.parents, std::nullopt);
    EXPECT_EQ(both.revision, 9);
}

}  // namespace
