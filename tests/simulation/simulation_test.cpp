// SPDX-License-Identifier: Apache-2.0
#include "world.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <set>

// Short runs of `simulate`; long ones by hand (docs/simulation.md).

namespace truehang::sync::simulation {
namespace {

TEST(Simulation, everyRunEndsWithAllOfIt) {
    Tally tally;
    int put_together = 0;
    constexpr std::uint64_t runs = 100;
    for (std::uint64_t seed = 1; seed <= runs; ++seed) {
        const auto ended = World(seed, Bug::none, nullptr).run();
        ASSERT_TRUE(ended.wrong.empty()) << "simulate --from " << seed << " --runs 1 --tell: " << ended.wrong.front();
        ASSERT_EQ(ended.edits, World::edits);
        tally.add(ended.tally);
        put_together += ended.put_together;
    }
    EXPECT_GT(put_together, 0);
    EXPECT_GE(tally.all(), static_cast<long long>(runs) * (World::faults - 1));
}

// Of half a million seeds those that lost a reading: somebody took it out by hand while it was to be settled whether it
// stays, and was asked all the same. And one in which two settled a note in different ways, and nobody was asked again.
TEST(Simulation, theSeedsThatOnceWentWrongEndWell) {
    for (const std::uint64_t seed :
         {5682, 73851, 97575, 140326, 145803, 158828, 170332, 510085, 526762, 647684, 686974, 697677}) {
        const auto ended = World(seed, Bug::none, nullptr).run();
        EXPECT_TRUE(ended.wrong.empty()) << "simulate --from " << seed << " --runs 1 --tell: " << ended.wrong.front();
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

/// A fault put in on purpose, and what it must be found by; where that is nothing, whatever is found first will do.
struct Found {
    Bug bug;
    const char* by;
};

/// What finds nothing proves nothing.
class PutIn : public testing::TestWithParam<Found> {};

TEST_P(PutIn, isFound) {
    const auto found = [](std::uint64_t seed) {
        const auto wrong = World(seed, GetParam().bug, nullptr).run().wrong;
        return std::ranges::any_of(
            wrong, [](const std::string& what) { return what.find(GetParam().by) != std::string::npos; });
    };
    std::uint64_t seed = 1;
    while (seed <= 3000 && !found(seed)) {
        ++seed;
    }
    EXPECT_LE(seed, 3000U);
    RecordProperty("first_seed", static_cast<int>(seed));
}

constexpr std::array puts_in{Found{Bug::receipt_before_commit, "a receipt without its record"},
                             Found{Bug::cursor_past_in_flight, "never told"},
                             Found{Bug::last_writer_wins, "is lost"},
                             Found{Bug::revision_replaced, "replaced"},
                             Found{Bug::repeat_counts_twice, "told twice"},
                             Found{Bug::digest_not_checked, ""},
                             Found{Bug::piece_taken_anywhere, "a receipt without its record: photo"},
                             Found{Bug::looked_before_the_lock, "replaced"},
                             Found{Bug::row_in_its_own_commit, "when all was sent"},
                             Found{Bug::newest_confirmed, "when all was sent"},
                             Found{Bug::sign_in_page_believed, "a receipt without its record"},
                             Found{Bug::theirs_taken, "is lost"},
                             Found{Bug::unheard_is_no_parent, ""},
                             Found{Bug::put_together_not_sent, "when all was sent"},
                             Found{Bug::busy_is_for_good, "refused"},
                             Found{Bug::cursor_before_the_record, "never told"}};
static_assert(puts_in.size() + 1 == bug_words.size());

std::string name_of(const testing::TestParamInfo<Found>& found) {
    std::string name(bug_words[static_cast<std::size_t>(found.param.bug)]);
    std::ranges::replace(name, '-', '_');
    return name;
}

INSTANTIATE_TEST_SUITE_P(Bug, PutIn, testing::ValuesIn(puts_in), name_of);

}  // namespace
}  // namespace truehang::sync::simulation
