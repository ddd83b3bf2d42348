// SPDX-License-Identifier: Apache-2.0
// A survey's own pieces on rolls that came. Figures worked by hand from the trade rules, as each test says.
#include "plan_checker.h"

#include "../cloth/house.h"
#include "rolls/house_plan.h"

#include <gtest/gtest.h>

#include <cmath>

namespace truehang {
namespace {

/// One window of a pair of curtains, 2,000 mm of track, cloth 1,000 mm usable, fullness 1.5: by hand 3,000 mm across,
/// 1½ widths in each, three drops; finished drop 2,310.
House pair_of_curtains(double repeat, Match match) {
    House house;
    house.bare().on_track(Heading::pencil_pleat, Length::mm(2000), Length::mm(2310));
    Fabric& fabric = house.fabric("face", Length::mm(1000));
    fabric.repeat = Length::mm(repeat);
    fabric.match = Word<Match>(match);
    house.treatment().fabric = "face";
    house.treatment().fullness = 1.5;
    return house;
}

RollsThatCame one_roll(double length) {
    Roll roll;
    roll.id = "r1";
    roll.lot = "A";
    roll.length = Length::mm(length);
    return {"test", Length::mm(1000), {{"face", {roll}}}};
}

std::vector<std::string> faults(const FabricPlan& plan, const RollsThatCame& came) {
    return PlanChecker(came.fabrics.front().rolls, plan.pieces, plan.rules).faults(plan.plan);
}

// By hand: straight repeat 640, drops of 2,310 begin every 4 repeats, 2,560; the last ends 2·2560 + 2310 = 7,430 along.
TEST(HousePlan, StraightRepeatCarriesItsPhase) {
    const House house = pair_of_curtains(640, Match::straight);
    const RollsThatCame came = one_roll(10000);
    const HousePlan plan = plan_house(house.survey, came);
    const FabricPlan& face = plan.fabrics.front();
    ASSERT_EQ(face.pieces.size(), 3U);
    EXPECT_EQ(faults(face, came), std::vector<std::string>());
    EXPECT_NEAR(face.plan.used.mm(), 7430, 1e-6);
    EXPECT_EQ(face.plan.gap_pct(), 0.0);
    EXPECT_EQ(plan.short_windows.size(), 0U);
    EXPECT_EQ(plan.windows, std::vector<std::string>{"window"});
}

// By hand: three drops of 2,310, R 640, half-drop: all of one phase and then the other, 3·2560 + 320, is less than in
// turn, 3·2880. On the roll the two of the first phase begin at 0 and 2,560 and end at 4,870; the next half line after
// it is 5,440, and 5,440 + 2,310 = 7,750. The other way round: 320, 3,200, 5,760, up to 8,070.
TEST(HousePlan, HalfDropAlternates) {
    const House house = pair_of_curtains(640, Match::half_drop);
    const RollsThatCame came = one_roll(10000);
    const HousePlan plan = plan_house(house.survey, came);
    const FabricPlan& face = plan.fabrics.front();
    EXPECT_EQ(faults(face, came), std::vector<std::string>());
    EXPECT_EQ(face.pieces[0].phase.mm(), 0);
    EXPECT_EQ(face.pieces[1].phase.mm(), 320);
    EXPECT_EQ(face.pieces[2].phase.mm(), 0);
    EXPECT_NEAR(face.plan.used.mm(), 7750, 1e-6);
}

// By hand: without a repeat three drops of 2,310 take 6,930; a roll of 6,900 is 30 short, nothing of the window is cut,
// and 6,930 is missing.
TEST(HousePlan, ShortSaysWhatIsMissing) {
    const House house = pair_of_curtains(0, Match::none);
    const RollsThatCame came = one_roll(6900);
    const HousePlan plan = plan_house(house.survey, came);
    EXPECT_EQ(plan.short_windows, std::vector<std::string>{"window"});
    EXPECT_NEAR(plan.fabrics.front().missing.mm(), 6930, 1e-6);
    EXPECT_EQ(plan.fabrics.front().plan.not_placed.size(), 3U);
}

// By hand: with a hem of 150 three drops take 3·2460 = 7,380, with one of 100 3·2410 = 7,230. A roll of 7,300 lies
// between.
TEST(HousePlan, AShorterHemIsOffered) {
    House house = pair_of_curtains(0, Match::none);
    house.survey.rules.numbers["hem_mm"] = 150;
    const HousePlan plan = plan_house(house.survey, one_roll(7300));
    ASSERT_FALSE(plan.alternatives.empty());
    EXPECT_EQ(plan.alternatives.front().change, "hem");
    EXPECT_EQ(plan.alternatives.front().value, 100);
    EXPECT_TRUE(plan.alternatives.front().short_windows.empty());
    EXPECT_EQ(plan_house(house.survey, one_roll(7380)).alternatives.size(), 0U);
}

// By hand: over a track of 1,900 fullness 1.5 asks 1,425 in each curtain, 1½ widths, three drops; one width in each
// reaches 1000/950, and its two drops, 4,620, lie on a roll of 5,000.
TEST(HousePlan, OneWidthLessIsOffered) {
    House house = pair_of_curtains(0, Match::none);
    house.hardware().length = Length::mm(1900);
    house.survey.rooms.front().name = "Parlour";
    house.survey.rooms.front().windows.front().name = "south window";
    const HousePlan plan = plan_house(house.survey, one_roll(5000));
    ASSERT_FALSE(plan.alternatives.empty());
    EXPECT_EQ(plan.alternatives.front().change, "widths");
    EXPECT_NEAR(plan.alternatives.front().value, 2000.0 / 1900.0, 1e-9);
    EXPECT_NE(plan.alternatives.front().text.find(" for Parlour, south window, fullness 1.05,"), std::string::npos)
        << plan.alternatives.front().text;
    EXPECT_TRUE(plan.alternatives.front().short_windows.empty());
}

// Asked to stop before it began, it works no alternative and no cloth.
TEST(HousePlan, StopsWhereItIsAskedTo) {
    std::stop_source stop;
    stop.request_stop();
    const House house = pair_of_curtains(0, Match::none);
    const HousePlan plan = plan_house(house.survey, one_roll(5000), {}, stop.get_token());
    EXPECT_TRUE(plan.fabrics.empty());
    EXPECT_TRUE(plan.alternatives.empty());
}

// By hand: 1000.04 over 1000 is 0.004 %, shown as at most 0.01; nothing over the least is 0 without a sign.
TEST(RollPlan, ShowsNoLessThanItsGap) {
    RollPlan plan;
    plan.used = plan.least = Length::mm(1000);
    EXPECT_EQ(shown_gap_pct(plan), 0.0);
    EXPECT_FALSE(std::signbit(shown_gap_pct(plan)));
    plan.used = Length::mm(1000.04);
    EXPECT_NEAR(shown_gap_pct(plan), 0.01, 1e-12);
    plan.used = Length::mm(1010);
    EXPECT_NEAR(shown_gap_pct(plan), 1.0, 1e-12);
}

// Common practice, no source: more than 27 m are measured metre by metre.
TEST(HousePlan, ALongRollIsCountedFirst) {
    const House house = pair_of_curtains(0, Match::none);
    EXPECT_TRUE(plan_house(house.survey, one_roll(27000)).fabrics.front().count_first.empty());
    EXPECT_EQ(plan_house(house.survey, one_roll(27001)).fabrics.front().count_first, std::vector<std::string>{"r1"});
    Roll roll = one_roll(3400).fabrics.front().rolls.front();
    roll.flaws.push_back({Length::mm(1990), Length::mm(2010)});
    const auto marks = metre_marks(roll);
    ASSERT_EQ(marks.size(), 4U);
    EXPECT_EQ(marks.back().at.mm(), 3400);
    EXPECT_EQ(marks[0].flaws.size(), 0U);
    EXPECT_EQ(marks[1].flaws.size(), 1U);
    EXPECT_EQ(marks[2].flaws.size(), 1U);
}

}  // namespace
}  // namespace truehang
