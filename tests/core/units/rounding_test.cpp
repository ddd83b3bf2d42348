// SPDX-License-Identifier: Apache-2.0
#include "units/rounding.h"

#include <gtest/gtest.h>

using namespace truehang;

namespace {

// The trade rules: cut upward, finished to the nearest with halves away from zero, and a value within 1e-6 of a whole
// number counts as it, within 1e-6 of a half as the half.

TEST(Rounding, CutsUpwardButNotForNoise) {
    EXPECT_EQ(ceil_whole(2239.2), 2240.0);
    EXPECT_EQ(ceil_whole(2240.0), 2240.0);
    EXPECT_EQ(ceil_whole(2240.0 + 5e-7), 2240.0);
    EXPECT_EQ(ceil_whole(2240.0 + 2e-6), 2241.0);
    EXPECT_EQ(cut_up(Length::mm(2109.01)).mm(), 2110.0);
}

TEST(Rounding, FloorsWithTheSameTolerance) {
    EXPECT_EQ(floor_whole(6.9999995), 7.0);
    EXPECT_EQ(floor_whole(6.99999), 6.0);
}

TEST(Rounding, FinishesToTheNearestAwayFromZeroAtAHalf) {
    EXPECT_EQ(round_whole(1991.5), 1992.0);
    EXPECT_EQ(round_whole(-1991.5), -1992.0);
    EXPECT_EQ(round_whole(1991.5 - 5e-7), 1992.0);
    EXPECT_EQ(round_whole(1991.5 - 2e-6), 1991.0);
    EXPECT_EQ(finished_to_mm(Length::mm(1991.99)).mm(), 1992.0);
    EXPECT_EQ(round_to(203.9, 10.0), 200.0);
    EXPECT_EQ(round_to(205.0, 10.0), 210.0);
}

}  // namespace
