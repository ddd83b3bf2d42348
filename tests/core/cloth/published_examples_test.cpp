// SPDX-License-Identifier: Apache-2.0
// Worked examples in print, run through the program with the example's allowances as house rules.
#include "cloth/widths.h"
#include "house.h"
#include "sizing/headings.h"

#include <gtest/gtest.h>

#include <numbers>

namespace truehang {
namespace {

// How to Make Draperies, Sewing Library No. 102, 1960 (Project Gutenberg 63282), section Fabrics: window 64 in,
// fullness 3, cloth 48 in wide: 4 widths; length 2 1/3 yd each, 9 1/3 yd plain.
TEST(Published, DraperiesTakeFourWidthsAndNineAndAThirdYards) {
    House house;
    house.bare().on_track(Heading::pencil_pleat, Length::inches(64), Length::inches(84));
    house.treatment().fullness = 3.0;
    house.treatment().fabric = "face";
    house.fabric("face", Length::inches(48));
    const auto cloth = house.layer().cloth;
    ASSERT_TRUE(cloth);
    EXPECT_EQ(cloth->widths, 4);
    EXPECT_NEAR(cloth->length.mm(), (9.0 + 1.0 / 3.0) * yard_mm, 4.0);  // each of four drops is cut up to whole mm
}

// The same book: with a 24 in repeat 10 2/3 yd, each drop of 84 in becoming 4 repeats, 96 in.
TEST(Published, ARepeatOfTwentyFourInchesTakesTenAndTwoThirdsYards) {
    House house;
    house.bare().on_track(Heading::pencil_pleat, Length::inches(64), Length::inches(84));
    house.treatment().fullness = 3.0;
    house.treatment().fabric = "face";
    Fabric& fabric = house.fabric("face", Length::inches(48));
    fabric.repeat = Length::inches(24);
    fabric.match = Word<Match>(Match::straight);
    const auto cloth = house.layer().cloth;
    ASSERT_TRUE(cloth);
    EXPECT_NEAR(cloth->cut_drop.mm(), 96 * 25.4, 1.0);
    EXPECT_NEAR(cloth->length.mm(), (10.0 + 2.0 / 3.0) * yard_mm, 1.0);
}

// The same book: lined, cut length 90 + 1 heading + 4 top hem + 3 1/2 bottom = 98 1/2 in; two lengths are bought as 5
// 1/2 yd; its lining is cut 88 1/2 in. The book doesn't say how the lining's length splits into hem and turnings: the
// common result is that it is 1 1/2 in shorter than the finished 90.
TEST(Published, ALinedDraperyIsCutNinetyEightAndAHalf) {
    House house;
    house.bare().on_track(Heading::pencil_pleat, Length::inches(40), Length::inches(90));
    house.survey.rules.head_mm["pencil-pleat"] = 5 * 25.4;
    house.rules({{"hem_mm", 3.5 * 25.4}, {"lining_rise_mm", 1.5 * 25.4}, {"order_step_m", 0.25 * yard_mm / 1000}});
    house.treatment().fullness = 2.0;
    house.treatment().fabric = "face";
    house.treatment().lining = "lining";
    house.fabric("face", Length::inches(48));
    house.fabric("lining", Length::inches(48));
    const auto layer = house.layer();
    ASSERT_TRUE(layer.cloth && layer.lining);
    EXPECT_EQ(layer.cloth->widths, 2);
    EXPECT_EQ(layer.cloth->cut_drop.mm(), std::ceil(98.5 * 25.4));
    EXPECT_EQ(layer.lining->cut_drop.mm(), std::ceil(88.5 * 25.4));
    EXPECT_NEAR(house.orders().front().order_m, 5.5 * yard_mm / 1000, 1e-9);
}

// Encyclopaedia article on pinch-pleat panels (minor source, arithmetic sound): 65 in x 2.25 = 146.25; / 54 = 2.708, so
// 3 widths; 80 + 16 = 96; 3 x 96 = 288 in = 8 yd. Its panel is one curtain in whole widths.
TEST(Published, APinchPleatedPanelTakesEightYards) {
    House house;
    house.bare().on_track(Heading::pinch_pleat, Length::inches(65), Length::inches(80));
    house.survey.rules.head_mm["pinch-pleat"] = 16 * 25.4;
    house.treatment().layout = Word<Layout>(Layout::single);
    house.treatment().fullness = 2.25;
    house.treatment().fabric = "face";
    house.fabric("face", Length::inches(54));
    const auto cloth = house.layer().cloth;
    ASSERT_TRUE(cloth);
    EXPECT_EQ(cloth->widths, 3);
    EXPECT_EQ(cloth->cut_drop.mm(), std::ceil(96 * 25.4));
    EXPECT_NEAR(cloth->length.mm(), 8 * yard_mm, 3.0);
}

// Same kind of source: 84 x 2.5 = 210; + 7 two returns + 8 hems = 225; / 54 gives 5 widths; 78 + 10 = 88; 440 in
// = 12.22 yd.
TEST(Published, ReturnsHangFlatAndHemsAreTakenAtTheSides) {
    House house;
    house.bare().on_track(Heading::pinch_pleat, Length::inches(84), Length::inches(78));
    house.survey.rules.head_mm["pinch-pleat"] = 10 * 25.4;
    house.rules({{"side_turn_mm", 4 * 25.4}});
    house.hardware().return_depth = Length::inches(3.5);
    house.treatment().layout = Word<Layout>(Layout::single);
    house.treatment().fullness = 2.5;
    house.treatment().fabric = "face";
    house.fabric("face", Length::inches(54));
    const auto cloth = house.layer().cloth;
    ASSERT_TRUE(cloth);
    EXPECT_NEAR(needed_across(2.5, 0, Length::inches(91), Length::inches(7), Length::inches(4)).inches(), 225, 1e-9);
    EXPECT_EQ(cloth->widths, 5);
    EXPECT_NEAR(cloth->length.mm() / yard_mm, 12.22, 0.01);
}

// Sewing & Craft Alliance, Guideline 8.150, rod pockets: cut length = finished + 3 header + (rod circumference + 1) +
// 1/2 + 2, in inches. There the finished length runs from the pocket's lower edge; ours from the frill's top, 1 1/2 +
// half the circumference higher: the common result is the cut length.
TEST(Published, ARodPocketIsCutAsTheGuidelineSays) {
    const double diameter = 1.375;
    House house;
    house.bare().rules({{"slot_ease_mm", 25.4}, {"slot_stand_mm", 1.5 * 25.4}, {"hem_mm", 2 * 25.4}});
    HouseRules rules;
    rules.slot_ease = 25.4;
    const double pocket = slot_pocket(Length::inches(diameter), rules).inches();
    house.survey.rules.head_mm["slot"] = (1.5 + pocket + 0.5) * 25.4;
    house.treatment().heading = Word<Heading>(Heading::slot);
    house.treatment().fabric = "face";
    house.hardware().kind = Word<HardwareKind>(HardwareKind::pole);
    house.hardware().diameter = Length::inches(diameter);
    house.hardware().length = Length::inches(60);
    house.read("pole.floor", Length::inches(80));
    house.fabric("face", Length::inches(54));
    const auto layer = house.layer();
    ASSERT_TRUE(layer.finished && layer.cloth);
    // The pole fills the middle of the pocket: its edges are half the ease above and below it when hung.
    const double finished = 80 + diameter / 2 + 1.5 - 1.5 - pocket;
    const double cut = finished + 3 + (std::numbers::pi * diameter + 1) + 0.5 + 2;
    EXPECT_NEAR(layer.cloth->cut_drop.inches(), cut, 1.0 / 25.4);
}

// Better Homes & Gardens, curtain panels: widths = fullness x bracket span / cloth width, rounded up; an even number of
// eyelets.
TEST(Published, PanelsRoundUpAndEyeletsAreEven) {
    for (const double span : {36.0, 48.0, 60.0, 72.0, 100.0}) {
        House house;
        house.bare().on_track(Heading::eyelet, Length::inches(span), Length::inches(84));
        house.treatment().layout = Word<Layout>(Layout::single);
        house.treatment().fullness = 2.0;
        house.treatment().fabric = "face";
        house.fabric("face", Length::inches(54));
        const auto layer = house.layer();
        ASSERT_TRUE(layer.cloth && layer.eyelets);
        EXPECT_EQ(layer.cloth->widths, static_cast<int>(std::ceil(2.0 * span / 54.0)));
        EXPECT_EQ(layer.eyelets->each % 2, 0);
    }
}

// Derived: half-drop, repeat 64 cm, three drops. Least drop 250 cm: 800 cm with all of one phase first against 864 in
// turn; 210 cm: 672 in turn against 800.
TEST(Derived, AHalfDropIsCutTheCheaperWay) {
    const auto by_phase = plan_drops(Length::mm(2500), 3, Length::mm(640), Match::half_drop);
    EXPECT_NEAR(by_phase.total.mm(), 8000, 1e-9);
    EXPECT_NEAR(by_phase.cut_drop.mm(), 2560, 1e-9);
    const auto in_turn = plan_drops(Length::mm(2100), 3, Length::mm(640), Match::half_drop);
    EXPECT_NEAR(in_turn.total.mm(), 6720, 1e-9);
    EXPECT_NEAR(in_turn.cut_drop.mm(), 2240, 1e-9);
}

// Derived: Roman blind, drop 120 cm, headrail 8, seven sections: fold 16, raised depth 24.
TEST(Derived, ARomanBlindFoldsInSevenSections) {
    House house;
    house.bare().rules({{"blind_headrail_mm", 80}, {"blind_fold_mm", 160}});
    house.window().layers.front().hardware.reset();
    house.treatment().heading = Word<Heading>(Heading::roman);
    house.treatment().fit = Word<Fit>(Fit::inside);
    house.read("opening.width.top", Length::mm(900)).read("opening.height.left", Length::mm(1200));
    const auto blind = house.layer().blind;
    ASSERT_TRUE(blind);
    EXPECT_EQ(2 * blind->rods + 1, 7);
    EXPECT_NEAR(blind->fold.mm(), 160, 1e-9);
    EXPECT_NEAR(blind->up.mm(), 240, 1e-9);
}

}  // namespace
}  // namespace truehang
