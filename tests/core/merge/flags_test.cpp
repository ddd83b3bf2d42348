// SPDX-License-Identifier: Apache-2.0
#include "editing.h"
#include "figures/changed_twice.h"
#include "figures/figures.h"
#include "merge/merge.h"

#include <gtest/gtest.h>

// What is expected here is derived by hand: each entry of changed_twice is said once, where it lies.

using namespace truehang;
using namespace truehang::editing;

namespace {

std::vector<Flag> of_code(const std::vector<Flag>& flags) {
    std::vector<Flag> found;
    std::ranges::copy_if(flags, std::back_inserter(found),
                         [](const Flag& flag) { return flag.code == changed_twice_code; });
    return found;
}

TEST(ChangedTwiceFlags, AreSaidWhereTheyLie) {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    ours.rooms[0].windows[1].layers[1].treatment->fullness = 2.0;
    theirs.rooms[0].windows[1].layers[1].treatment->fullness = 2.5;
    ours.fabrics[1].width = Length::mm(1370.0);
    theirs.fabrics[1].width = Length::mm(1410.0);
    const Figures figures = work_out(merge(base, ours, theirs).value());
    EXPECT_TRUE(of_code(figures.windows[0].flags).empty());
    const auto there = of_code(figures.windows[1].flags);
    ASSERT_EQ(there.size(), 1U);
    EXPECT_EQ(there[0].severity, Severity::decide);
    EXPECT_EQ(there[0].layer, "outer");
    EXPECT_NE(there[0].text.find("the fullness"), std::string::npos) << there[0].text;
    ASSERT_EQ(figures.flags.size(), 1U);
    EXPECT_NE(figures.flags[0].text.find("the width of the cloth f2"), std::string::npos) << figures.flags[0].text;
}

TEST(ChangedTwiceFlags, AreGoneOnceItIsSettled) {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    ours.title = "A";
    theirs.title = "B";
    const Survey both = merge(base, ours, theirs).value();
    EXPECT_EQ(work_out(both).flags.size(), 1U);
    EXPECT_TRUE(work_out(settle(both, {"/title", 0}).value()).flags.empty());
}

TEST(ChangedTwiceFlags, NameWhatWasTakenOut) {
    const Survey base = house();
    Survey ours = base;
    Survey theirs = base;
    ours.rooms[0].windows.erase(ours.rooms[0].windows.begin());
    theirs.rooms[0].windows[0].notes = "Look again.";
    const auto flags = of_code(work_out(merge(base, ours, theirs).value()).windows[0].flags);
    ASSERT_EQ(flags.size(), 1U);
    EXPECT_NE(flags[0].text.find("took out this window"), std::string::npos) << flags[0].text;
}

}  // namespace
