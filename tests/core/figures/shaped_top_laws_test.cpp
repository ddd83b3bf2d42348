// SPDX-License-Identifier: Apache-2.0
#include "sizing/shaped_top.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>

namespace truehang {
namespace {

/// A segment or semicircle on springings that lean, as in an old house.
ShapedTop any_arch_top() {
    const double width = *rc::gen::inRange(400, 3000);
    const double rise = width * *rc::gen::inRange(5, 51) / 100.0;
    const double left = *rc::gen::inRange(300, 2400);
    const double right = left + *rc::gen::inRange(-40, 41);
    return {Length::mm(width),
            {{0.0, left}, {width, right}},
            {{0.0, 0.0}},
            ArchCurve{ArchForm::segmental, width, rise, 0.0}};
}

TEST(ShapedTopLaws, LongestAndShortestHoldEveryPlace) {
    EXPECT_TRUE(rc::check("no place is longer than the longest, none shorter than the shortest", [] {
        const ShapedTop top = any_arch_top();
        const Length longest = top.drop_at(top.longest_at());
        for (int i = 0; i <= 500; ++i) {
            const Length drop = top.drop_at(top.width() * (i / 500.0));
            RC_ASSERT(drop.mm() <= longest.mm() + 1e-6);
            RC_ASSERT(drop.mm() >= top.shortest().mm() - 1e-6);
        }
    }));
}

TEST(ShapedTopLaws, ThePairsTablesMeetAndEndAtTheEdges) {
    EXPECT_TRUE(rc::check("both halves of a pair have one drop where they meet, and flat is hung times fullness", [] {
        const ShapedTop top = any_arch_top();
        const double fullness = *rc::gen::inRange(15, 26) / 10.0;
        const Length half = top.width() / 2.0;
        const auto left = top_points(top, Length(), half, fullness, Length::mm(100.0));
        const auto right = top_points(top, half, top.width(), fullness, Length::mm(100.0));
        RC_ASSERT(std::abs((left.back().drop - right.front().drop).mm()) < 1e-6);
        RC_ASSERT(std::abs((left.back().hung - half).mm()) < 1e-6);
        RC_ASSERT(right.front().hung.mm() < 1e-6);
        for (const TopPoint& point : left) {
            RC_ASSERT(std::abs(point.flat.mm() - fullness * point.hung.mm()) < 1e-9);
        }
        RC_ASSERT(std::ranges::is_sorted(left, {}, [](const TopPoint& point) { return point.hung.mm(); }));
    }));
}

}  // namespace
}  // namespace truehang
