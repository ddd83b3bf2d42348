// SPDX-License-Identifier: Apache-2.0
#include "survey/replaced.h"
#include "survey/counted.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <fmt/format.h>

#include <map>

// What is expected is derived by hand from the survey document's "Nothing is deleted: the unreplaced reading of a
// station counts, two unreplaced are for a person", and from what replaced.h says of choosing.

using namespace truehang;

namespace {

Reading reading(std::string id, std::string replaces, double mm) {
    Reading one;
    one.id = std::move(id);
    one.replaces = std::move(replaces);
    one.station = "below.left";
    one.value = Length::mm(mm);
    return one;
}

const CountedReading* counted(const Window& window, std::vector<CountedReading>& all) {
    all = counted_readings(window, Shape::recess);
    return find_counted(all, "below.left");
}

std::vector<std::string> ids(const std::vector<const Reading*>& readings) {
    std::vector<std::string> names;
    for (const Reading* one : readings) {
        names.push_back(one->id);
    }
    return names;
}

using Ids = std::vector<std::string>;

TEST(Contenders, AreThoseThatNoneReplaces) {
    Window window;
    window.readings = {reading("r0", "", 860), reading("a", "r0", 862), reading("b", "r0", 870)};
    EXPECT_EQ(ids(contenders(window, "below.left")), (Ids{"a", "b"}));
    EXPECT_TRUE(contenders(window, "below.right").empty());
    window.readings.back().replaces = "a";
    EXPECT_TRUE(contenders(window, "below.left").empty());
}

TEST(Contenders, OneTakenWithThePoleUpStandsAboveThoseBefore) {
    Window window;
    window.readings = {reading("a", "", 862), reading("b", "", 870), reading("c", "", 871)};
    window.readings.back().stage = Stage::fixed;
    EXPECT_TRUE(contenders(window, "below.left").empty());
}

/// From what replaced.h says, one reading at a time: another replaces it, and what it replaces doesn't lead back to it.
bool replaced_as_said(const std::vector<Reading>& readings, std::size_t i) {
    const auto earlier_than = [&](std::size_t of) {
        const auto found = std::ranges::find(readings, readings[of].replaces, &Reading::id);
        return found == readings.end() ? readings.size() : static_cast<std::size_t>(found - readings.begin());
    };
    std::size_t back = earlier_than(i);
    for (std::size_t step = 0; back != readings.size() && step < readings.size(); ++step) {
        if (back == i) {
            return false;
        }
        back = earlier_than(back);
    }
    return std::ranges::any_of(readings, [&](const Reading& other) { return other.replaces == readings[i].id; });
}

RC_GTEST_PROP(Replaced, IsAsSaidOfChainsForksAndRings, ()) {
    const int count = *rc::gen::inRange(1, 12);
    Window window;
    for (int i = 0; i < count; ++i) {
        const int earlier = *rc::gen::inRange(0, count + 1);
        window.readings.push_back(
            reading(fmt::format("r{}", i), earlier == count ? "" : fmt::format("r{}", earlier), 800 + i));
    }
    const auto replaced = replaced_in(window);
    for (std::size_t i = 0; i < window.readings.size(); ++i) {
        RC_ASSERT(replaced[i] == replaced_as_said(window.readings, i));
    }
}

TEST(Contenders, TwoThatReplaceEachOtherBothStand) {
    Window window;
    window.readings = {reading("a", "b", 862), reading("b", "a", 870)};
    EXPECT_EQ(ids(contenders(window, "below.left")), (Ids{"a", "b"}));
    std::vector<CountedReading> all;
    ASSERT_NE(counted(window, all), nullptr);
    EXPECT_TRUE(counted(window, all)->contested);
    EXPECT_TRUE(choose_reading(window, "a"));
    EXPECT_EQ(counted(window, all)->reading->id, "a");
    EXPECT_FALSE(counted(window, all)->contested);
}

TEST(Choosing, WhatWasReplacedBeforeStaysSo) {
    Window window;
    window.readings = {reading("r0", "", 860), reading("a", "r0", 862), reading("b", "r1", 870), reading("r1", "", 9)};
    ASSERT_TRUE(choose_reading(window, "a"));
    for (const char* id : {"r0", "b", "r1"}) {
        EXPECT_TRUE(is_replaced(window, *std::ranges::find(window.readings, id, &Reading::id))) << id;
    }
}

TEST(Choosing, OnlyAContenderCanBeChosen) {
    Window window;
    window.readings = {reading("r0", "", 860), reading("a", "r0", 862)};
    EXPECT_FALSE(choose_reading(window, "a"));
    EXPECT_FALSE(choose_reading(window, "r0"));
    EXPECT_FALSE(choose_reading(window, "nobody"));
    EXPECT_EQ(window.readings[1].replaces, "r0");
}

// Laws: whoever is chosen counts, uncontested; no reading goes, none changes its value; none that was replaced returns.
RC_GTEST_PROP(ChoosingLaw, TheChosenOneCountsAndNothingIsLost, ()) {
    Window window;
    const int many = *rc::gen::inRange(2, 9);
    for (int i = 0; i < many; ++i) {
        const int earlier = *rc::gen::inRange(-2, many);
        window.readings.push_back(
            reading(fmt::format("r{}", i), earlier < 0 ? "" : fmt::format("r{}", earlier), 800 + i));
    }
    const auto among = ids(contenders(window, "below.left"));
    RC_PRE(!among.empty());
    const Window before = window;
    const std::string chosen = among[*rc::gen::inRange<std::size_t>(0, among.size())];
    RC_ASSERT(choose_reading(window, chosen));
    std::vector<CountedReading> all;
    RC_ASSERT(counted(window, all) != nullptr);
    RC_ASSERT(counted(window, all)->reading->id == chosen);
    RC_ASSERT(!counted(window, all)->contested);
    RC_ASSERT(window.readings.size() == before.readings.size());
    for (std::size_t i = 0; i < window.readings.size(); ++i) {
        RC_ASSERT(window.readings[i].value == before.readings[i].value);
        RC_ASSERT(window.readings[i].id == chosen || is_replaced(window, window.readings[i]));
    }
}

}  // namespace
