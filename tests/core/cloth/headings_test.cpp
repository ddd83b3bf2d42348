// SPDX-License-Identifier: Apache-2.0
#include "house.h"
#include "sizing/finish.h"

#include <gtest/gtest.h>

namespace truehang {
namespace {

House tab_house() {
    House house;
    house.treatment().heading = Word<Heading>(Heading::tab);
    house.treatment().fabric = "face";
    house.hardware().kind = Word<HardwareKind>(HardwareKind::pole);
    house.hardware().diameter = Length::mm(28);
    house.hardware().length = Length::mm(1720);
    house.read("pole.floor", Length::mm(2070));
    house.fabric("face", Length::mm(1400)).selvedge = Length::mm(10);
    return house;
}

// Common practice, no source: a tab cut 200 mm long with 10 mm seams over a 28 mm pole hangs about 70 mm below the
// pole; one cut 220 mm over a 35 mm pole about 80 mm (take 10 mm either way). Both are cut 120 mm wide.
TEST(CommonPractice, TabsHangSeventyOrEighty) {
    const HouseRules rules;
    EXPECT_NEAR(tab_hang_of(Length::mm(200), Length::mm(28), rules).mm(), 70, 10);
    EXPECT_NEAR(tab_hang_of(Length::mm(220), Length::mm(35), rules).mm(), 80, 10);
    EXPECT_EQ(tab_house().layer().tabs->cut_width.mm(), 120);
    EXPECT_EQ(tab_cut_for(Length::mm(70), Length::mm(28), rules).mm(), 200);
}

// Common practice, no source: a curtain of one width has seven tabs, one at each end, one in the middle, two between on
// either side.
TEST(CommonPractice, AOneWidthCurtainHasSevenTabs) {
    const auto layer = tab_house().layer();
    ASSERT_TRUE(layer.cloth && layer.tabs);
    EXPECT_EQ(layer.cloth->widths_each, 1.0);
    EXPECT_EQ(layer.tabs->each, 7);
    EXPECT_NEAR((layer.tabs->each - 1) * layer.tabs->spacing.mm(), layer.cloth->flat.mm() - 50, 1e-9);
}

// Common practice, no source: lining 20 mm in from each side, so 40 mm less than the curtain; 10 mm seam a side; hem of
// 80 mm in all, its edge 30 mm above the curtain's; 20 to 30 mm more at the top.
TEST(CommonPractice, TheLiningIsFortyNarrowerAndEndsThirtyHigher) {
    House house = tab_house();
    house.treatment().lining = "lining";
    house.fabric("lining", Length::mm(1370)).selvedge = Length::mm(10);
    const auto layer = house.layer();
    ASSERT_TRUE(layer.finished && layer.cloth && layer.lining);
    EXPECT_NEAR((layer.cloth->flat - layer.lining->flat).mm(), 40, 1e-9);
    const double turned_at_top = layer.lining->cut_drop.mm() - (layer.finished->drop.mm() - 30) - 80;
    EXPECT_GE(turned_at_top, 20);
    EXPECT_LE(turned_at_top, 30);
}

// Common practice, no source: a curtain's hem takes 150 mm; weights at each corner and at half-width intervals.
TEST(CommonPractice, HemsTakeOneHundredAndFiftyAndWeightsStandAtHalfWidths) {
    const auto layer = tab_house().layer();
    constexpr double tab_head = 10;
    EXPECT_EQ(layer.cloth->cut_drop.mm(), std::ceil(2070 - layer.tabs->hang.mm() + 150 + tab_head));
    EXPECT_EQ(layer.weights->each, 3);  // two corners and the middle of one width
}

// Common practice, no source: inside a recess the smallest of three widths governs; outside it the largest.
TEST(CommonPractice, TheSmallestWidthGovernsInsideTheLargestOutside) {
    House house;
    house.window().layers.front().hardware.reset();
    house.treatment().heading = Word<Heading>(Heading::roman);
    house.read("opening.width.top", Length::mm(905)).read("opening.width.middle", Length::mm(900));
    house.read("opening.width.bottom", Length::mm(898)).read("opening.height.left", Length::mm(1200));
    house.read("below.left", Length::mm(900)).read("pole.above", Length::mm(100));
    house.treatment().fit = Word<Fit>(Fit::inside);
    EXPECT_EQ(house.layer().finished->width.mm(), 898 - 10);
    house.treatment().fit = Word<Fit>(Fit::outside);
    EXPECT_EQ(house.layer().finished->width.mm(), 905 + 100);
}

// Derived from the geometry of each heading over a 28 mm pole 2070 above the floor (trade rules, section 4).
TEST(Headings, EachHangsFromThePoleInItsOwnWay) {
    const auto top = [](Heading heading, HardwareKind kind) {
        House house = tab_house();
        house.treatment().heading = Word<Heading>(heading);
        house.hardware().kind = Word<HardwareKind>(kind);
        return house.layer().finished->drop.mm();  // down to the floor itself
    };
    EXPECT_EQ(top(Heading::eyelet, HardwareKind::pole), 2070 - (40 - 28) / 2 + 45);
    EXPECT_EQ(top(Heading::slot, HardwareKind::pole), 2070 + 14 + 25);
    EXPECT_EQ(top(Heading::pencil_pleat, HardwareKind::pole), 2070 - 14 - 20 + 20);
    EXPECT_EQ(top(Heading::pencil_pleat, HardwareKind::track), 2070 + 20);
    EXPECT_EQ(top(Heading::s_fold, HardwareKind::track), 2070 + 20);
}

TEST(Headings, WhatCantHangThereIsSaid) {
    House house = tab_house();
    house.hardware().kind = Word<HardwareKind>(HardwareKind::track);
    EXPECT_TRUE(has_flag(house.figures(), "heading-hardware"));
    house = tab_house();
    EXPECT_FALSE(has_flag(house.figures(), "heading-hardware"));
    house.treatment().heading = Word<Heading>(Heading::eyelet);
    house.hardware().diameter = Length::mm(31);
    EXPECT_TRUE(has_flag(house.figures(), "heading-hardware"));
}

TEST(Headings, TheImpossibleIsStoppedInTheTradesWords) {
    House house = tab_house();
    house.hardware().overlap = Length::mm(1800);
    EXPECT_TRUE(has_flag(house.figures(), "impossible"));
    EXPECT_FALSE(house.layer().finished);
    house = tab_house();
    house.window().readings.front().value = Length::mm(180);
    EXPECT_TRUE(has_flag(house.figures(), "impossible"));
    house = tab_house();
    house.window().shape = Word<Shape>(Shape::door);
    house.treatment().length = Word<HemAt>(HemAt::sill);
    EXPECT_TRUE(has_flag(house.figures(), "impossible"));
}

}  // namespace
}  // namespace truehang
