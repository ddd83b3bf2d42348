// SPDX-License-Identifier: Apache-2.0
// Laws that hold for any cloth, whatever the numbers.
#include "cloth/widths.h"
#include "house.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

namespace truehang {
namespace {

TEST(ClothLaws, WidthsAreEnoughAndOneStepLessIsNot) {
    EXPECT_TRUE(rc::check("least widths", [] {
        const Length usable = Length::mm(*rc::gen::inRange(300, 3200));
        const Length seam = Length::mm(*rc::gen::inRange(0, 30));
        const Length needed = Length::mm(*rc::gen::inRange(100, 20000));
        for (const WidthStep step : {WidthStep::halves, WidthStep::whole}) {
            const auto widths = least_widths(needed, usable, seam, step);
            const double size = step == WidthStep::halves ? 0.5 : 1.0;
            RC_ASSERT(widths.has_value());
            RC_ASSERT(across(*widths, usable, seam).mm() >= needed.mm() - 1e-6);
            RC_ASSERT(*widths - size < size / 2 || across(*widths - size, usable, seam).mm() < needed.mm());
        }
    }));
}

TEST(ClothLaws, DropsAreWholeRepeatsAndNeverShort) {
    EXPECT_TRUE(rc::check("repeats", [] {
        const Length least = Length::mm(*rc::gen::inRange(200, 4000));
        const Length repeat = Length::mm(*rc::gen::inRange(20, 900));
        const int count = *rc::gen::inRange(1, 12);
        const auto straight = plan_drops(least, count, repeat, Match::straight);
        const auto half = plan_drops(least, count, repeat, Match::half_drop);
        RC_ASSERT(straight.cut_drop >= least);
        RC_ASSERT((straight.cut_drop - least).mm() < repeat.mm());
        RC_ASSERT(half.cut_drop.mm() >= least.mm() - 1e-6);
        RC_ASSERT(half.total.mm() <= straight.total.mm() + repeat.mm() / 2 + 1e-6);
        RC_ASSERT(plan_drops(least, count, Length(), Match::none).total.mm() <= straight.total.mm() + count);
    }));
}

TEST(ClothLaws, SeamsThatEatTheClothAreRefused) {
    EXPECT_FALSE(least_widths(Length::mm(1000), Length::mm(20), Length::mm(15), WidthStep::whole));
}

// Law: the order is the sum of its cuts, up to the step; more fullness never takes fewer widths.
TEST(ClothLaws, OrdersAddUp) {
    EXPECT_TRUE(rc::check("orders add up", [] {
        House house;
        house.on_track(Heading::pencil_pleat, Length::mm(*rc::gen::inRange(600, 5000)),
                       Length::mm(*rc::gen::inRange(500, 3000)));
        house.treatment().fabric = "face";
        house.treatment().fullness = *rc::gen::inRange(10, 30) / 10.0;
        house.fabric("face", Length::mm(*rc::gen::inRange(900, 3000))).shrinkage_pct = *rc::gen::inRange(0, 8);
        const auto orders = house.orders();
        RC_ASSERT(orders.size() == 1U);
        double sum = 0.0;
        for (const Cut& cut : orders.front().cuts) {
            sum += cut.length.mm() * cut.count;
        }
        RC_ASSERT(std::abs(sum - orders.front().length.mm()) < 1e-6);
        RC_ASSERT(orders.front().order_m * 1000 >= sum - 1e-6);
        RC_ASSERT(orders.front().order_m * 1000 < sum + 100);
        const double widths = house.layer().cloth->widths_each;
        *house.treatment().fullness += 0.5;
        RC_ASSERT(house.layer().cloth->widths_each >= widths);
    }));
}

}  // namespace
}  // namespace truehang
