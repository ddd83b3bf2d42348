// SPDX-License-Identifier: Apache-2.0
#include "world.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

// Short runs of `simulate`; long ones by hand (docs/simulation.md).

namespace truehang::sync::simulation {
namespace {

TEST(Simulation, everyRunEndsWithAllOfIt) {
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
        const auto ended = World(seed, Bug::none, nullptr).run();
        ASSERT_TRUE(ended.wrong.empty()) << "simulate --from " << seed << " --runs 1 --tell: " << ended.wrong.front();
        ASSERT_EQ(ended.edits, World::edits);
    }
}

TEST(Simulation, aSeedTellsTheSameStoryEachTime) {
    std::set<std::uint64_t> stories;
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        const auto story = World(seed, Bug::none, nullptr).run().trace;
        EXPECT_EQ(World(seed, Bug::none, nullptr).run().trace, story);
        stories.insert(story);
    }
    EXPECT_EQ(stories.size(), 10U);
}

/// A fault put in on purpose is found, or what finds nothing proves nothing.
class PutIn : public testing::TestWithParam<Bug> {};

TEST_P(PutIn, isFound) {
    std::uint64_t seed = 1;
    while (seed <= 3000 && World(seed, GetParam(), nullptr).run().wrong.empty()) {
        ++seed;
    }
    EXPECT_LE(seed, 3000U);
    RecordProperty("first_seed", static_cast<int>(seed));
}

std::vector<Bug> all_bugs() {
    std::vector<Bug> bugs;
    for (std::size_t i = 1; i < bug_words.size(); ++i) {
        bugs.push_back(static_cast<Bug>(i));
    }
    return bugs;
}

std::string name_of(const testing::TestParamInfo<Bug>& bug) {
    std::string name(bug_words[static_cast<std::size_t>(bug.param)]);
    std::ranges::replace(name, '-', '_');
    return name;
}

INSTANTIATE_TEST_SUITE_P(Bug, PutIn, testing::ValuesIn(all_bugs()), name_of);

}  // namespace
}  // namespace truehang::sync::simulation
