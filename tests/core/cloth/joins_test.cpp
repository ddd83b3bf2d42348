// SPDX-License-Identifier: Apache-2.0
// Where widths are joined, and what a repeat across, a skewed print and a cloth with one way up take.
#include "cloth/plan.h"
#include "cloth/widths.h"
#include "house.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

namespace truehang {
namespace {

/// A pencil-pleated pair on a track.
House pair_on(double track_mm, double drop_mm = 2000) {
    House house;
    house.on_track(Heading::pencil_pleat, Length::mm(track_mm), Length::mm(drop_mm));
    house.treatment().fabric = "face";
    return house;
}

std::vector<double> in_mm(const std::vector<Length>& joins) {
    std::vector<double> found;
    for (const Length join : joins) {
        found.push_back(join.mm());
    }
    return found;
}

// Derived by hand: cloth of 1,400 between its selvedges, seams of 15, side turns of 40. The full width at the leading
// edge shows 1400 - 40 - 15 = 1345; a second one 1400 - 30 = 1370 more.
TEST(Joins, FullWidthsStandAtTheLeadingEdge) {
    House house = pair_on(2000);
    house.fabric("face", Length::mm(1400));
    const auto cloth = house.layer().cloth;
    ASSERT_TRUE(cloth);
    EXPECT_EQ(cloth->widths_each, 1.5);
    EXPECT_EQ(in_mm(cloth->joins), std::vector<double>{1345});
    EXPECT_EQ(in_mm(curtain_joins(2.5, Length::mm(1400), Length::mm(15), Length::mm(40))),
              (std::vector<double>{1345, 2715}));
    EXPECT_TRUE(curtain_joins(1.0, Length::mm(1400), Length::mm(15), Length::mm(40)).empty());
}

// Derived by hand: a blind 2,000 wide with side turns of 60 from cloth of 1,400: the middle width shows 1,370, from
// (2000 - 1370) / 2 = 315 to 1,685. One 2,640 wide needs 2,760: two widths with two seams each at both joins reach
// 2800 - 60 = 2740, so they are joined once, after 1400 - 60 - 15 = 1325.
TEST(Joins, ABlindHasAFullWidthInTheMiddle) {
    const auto joins = [](double finished) {
        return in_mm(blind_joins(2, Length::mm(1400), Length::mm(15), Length::mm(finished), Length::mm(60)));
    };
    EXPECT_EQ(joins(2000), (std::vector<double>{315, 1685}));
    EXPECT_EQ(joins(2640), std::vector<double>{1325});
    EXPECT_EQ(in_mm(blind_joins(3, Length::mm(1400), Length::mm(15), Length::mm(3000), Length::mm(60))),
              (std::vector<double>{815, 2185}));
}

// Law: from the leading edge, what is left past the last join is a width or half a width.
TEST(Joins, WhatIsLeftAtTheOuterEdgeIsAWidthOrHalfOfOne) {
    EXPECT_TRUE(rc::check("the outer piece", [] {
        const Length usable = Length::mm(*rc::gen::inRange(600, 3200));
        const Length seam = Length::mm(*rc::gen::inRange(0, 30));
        const Length turn = Length::mm(*rc::gen::inRange(0, 80));
        const double widths = *rc::gen::inRange(3, 14) / 2.0;
        const auto joins = curtain_joins(widths, usable, seam, turn);
        RC_ASSERT(joins.size() == static_cast<std::size_t>(std::ceil(widths)) - 1);
        const Length flat = across(widths, usable, seam) - 2.0 * turn;
        const double outer = (flat - joins.back() + seam + turn).mm();
        const double expected = (std::floor(widths) == widths ? 1.0 : 0.5) * usable.mm();
        RC_ASSERT(std::abs(outer - expected) < 1e-6);
    }));
}

// Derived by hand: 1,380 between the selvedges holds two repeats of 640. With a join 1,280 is used of each width:
// 1.5 × 1280 - 30 - 80 = 1810; without one the whole 1,380 - 80 = 1300.
TEST(RepeatAcross, CountsOnlyWhereWidthsAreJoined) {
    House joined = pair_on(1800);
    Fabric& fabric = joined.fabric("face", Length::mm(1400));
    fabric.selvedge = Length::mm(10);
    fabric.repeat_across = Length::mm(640);
    auto cloth = joined.layer().cloth;
    ASSERT_TRUE(cloth);
    EXPECT_EQ(cloth->widths_each, 1.5);
    EXPECT_NEAR(cloth->flat.mm(), 1810, 1e-9);
    EXPECT_EQ(in_mm(cloth->joins), std::vector<double>{1280 - 40 - 15});

    joined.hardware().length = Length::mm(1300);
    cloth = joined.layer().cloth;
    ASSERT_TRUE(cloth);
    EXPECT_EQ(cloth->widths_each, 1.0);
    EXPECT_NEAR(cloth->flat.mm(), 1300, 1e-9);

    joined.hardware().length = Length::mm(1800);
    fabric.match = Word<Match>(Match::none);
    cloth = joined.layer().cloth;
    ASSERT_TRUE(cloth);
    EXPECT_NEAR(cloth->flat.mm(), 1.5 * 1380 - 30 - 80, 1e-9);
}

TEST(RepeatAcross, IsSaidInTheTrace) {
    House house = pair_on(1800);
    house.fabric("face", Length::mm(1400)).repeat_across = Length::mm(640);
    bool said = false;
    for (const Trace& trace : house.figures().trace) {
        for (const TraceStep& step : trace.steps) {
            said = said || (trace.figure == "cloth.widths_each" && step.count == 2.0 &&
                            step.what.find("repeats across") != std::string::npos);
        }
    }
    EXPECT_TRUE(said);
}

// Derived by hand: (2020 hook over a drop of 2000 + 75 head + 150 hem) / 0.97, and 30 of skew; with a repeat of 640 the
// 2,280 without skew are 4 repeats, and so are the 2,320 with it until it passes 2,560.
TEST(Skew, AddsToEachDropAfterShrinkageAndBeforeRepeats) {
    House house = pair_on(1800);
    Fabric& fabric = house.fabric("face", Length::mm(1400));
    fabric.shrinkage_pct = 3;
    const double finished = house.layer().finished->drop.mm();
    const double washed = (finished + 75 + 150) / 0.97;
    EXPECT_EQ(house.layer().cloth->cut_drop.mm(), std::ceil(washed));
    fabric.skew = Length::mm(30);
    EXPECT_EQ(house.layer().cloth->cut_drop.mm(), std::ceil(washed + 30));
    fabric.repeat = Length::mm(640);
    EXPECT_EQ(house.layer().cloth->cut_drop.mm(), 4 * 640);
    fabric.skew = Length::mm(4 * 640 - washed + 1);
    EXPECT_EQ(house.layer().cloth->cut_drop.mm(), 5 * 640);
}

// Common practice, no source: cloth with a nap or a design with a way up is never turned.
TEST(OneWay, IsNeverTurnedSideways) {
    House house = pair_on(2400, 2600);
    Fabric& fabric = house.fabric("face", Length::mm(3000));
    fabric.repeat = Length::mm(900);
    fabric.railroad = true;
    EXPECT_TRUE(house.layer().cloth->railroaded);
    fabric.one_way = true;
    const auto cloth = house.layer().cloth;
    EXPECT_FALSE(cloth->railroaded);
    EXPECT_TRUE(cloth->one_way);
}

// Law: railroaded cloth is offered only where it takes less; and the drop fits across it.
TEST(Railroad, IsOfferedOnlyWhereItTakesLess) {
    EXPECT_TRUE(rc::check("railroad", [] {
        House house = pair_on(*rc::gen::inRange(600, 5000), *rc::gen::inRange(600, 3000));
        Fabric& fabric = house.fabric("face", Length::mm(*rc::gen::inRange(1200, 3300)));
        fabric.railroad = true;
        fabric.repeat = Length::mm(*rc::gen::element(0, 160, 640));
        fabric.shrinkage_pct = *rc::gen::inRange(0, 6);
        const auto cloth = house.layer().cloth;
        RC_ASSERT(cloth.has_value());
        if (cloth->railroaded) {
            RC_ASSERT(cloth->railroaded->mm() < cloth->length.mm());
        }
    }));
}

// Law: more fullness never takes less cloth, a longer drop never less; with a repeat each drop is whole repeats, of a
// half-drop whole half ones.
TEST(ClothLaws, MoreNeverTakesLess) {
    EXPECT_TRUE(rc::check("more takes no less", [] {
        const int drop = *rc::gen::inRange(600, 3000);
        House house = pair_on(*rc::gen::inRange(600, 5000), drop);
        house.treatment().fullness = *rc::gen::inRange(10, 25) / 10.0;
        Fabric& fabric = house.fabric("face", Length::mm(*rc::gen::inRange(1000, 3300)));
        fabric.repeat = Length::mm(*rc::gen::element(0, 91, 160, 640));
        fabric.match = Word<Match>(*rc::gen::element(Match::straight, Match::half_drop));
        fabric.repeat_across = Length::mm(*rc::gen::element(0, 64, 320, 480));
        fabric.skew = Length::mm(*rc::gen::element(0, 12, 35));
        const auto cloth = house.layer().cloth;
        RC_ASSERT(cloth.has_value());
        if (fabric.repeat.mm() > 0.0) {
            const double halves = 2.0 * cloth->cut_drop.mm() / fabric.repeat.mm();
            RC_ASSERT(cloth->cut_drop.mm() < std::ceil(std::round(halves) * fabric.repeat.mm() / 2.0) + 1e-6);
            RC_ASSERT(cloth->cut_drop.mm() > std::round(halves) * fabric.repeat.mm() / 2.0 - 1e-6);
        }
        *house.treatment().fullness += *rc::gen::inRange(1, 10) / 10.0;
        const auto fuller = house.layer().cloth;
        RC_ASSERT(fuller && fuller->length.mm() >= cloth->length.mm() - 1e-6);
        house.window().readings.front().value = Length::mm(drop + *rc::gen::inRange(1, 400));
        const auto longer = house.layer().cloth;
        RC_ASSERT(longer && longer->length.mm() >= fuller->length.mm() - 1e-6);
    }));
}

// Derived: cloth as wide as the drop is turned sideways without a join; one as wide as a whole curtain is one width.
TEST(WideCloth, TakesNoJoin) {
    House house = pair_on(1300, 2000);
    house.fabric("face", Length::mm(3000));
    house.treatment().layout = Word<Layout>(Layout::single);
    const auto cloth = house.layer().cloth;
    ASSERT_TRUE(cloth);
    EXPECT_EQ(cloth->widths_each, 1.0);
    EXPECT_TRUE(cloth->joins.empty());
}

// Derived by hand: of a half-drop with N·C + R/2 all of one phase first, the other half-drop in turn (D1) — here the
// edge: a drop within its ± of a whole number of repeats has both answers.
TEST(Edges, BothAnswersAreKept) {
    House house = pair_on(1800);
    house.fabric("face", Length::mm(1400));
    house.treatment().fullness = 2.0;
    const auto as_is = house.layer().cloth;
    ASSERT_TRUE(as_is);
    // The length of track at which one and a half widths are just enough: 1.9 × w = 1960 (1.5 × 1400 - 30 - 80 = 1990).
    house.hardware().length = Length::mm(2.0 * 1990 / 1.9);
    const auto cloth = house.layer().cloth;
    ASSERT_TRUE(cloth);
    EXPECT_EQ(cloth->widths_each, 1.5);
    ASSERT_EQ(cloth->edges.size(), 1U);
    EXPECT_EQ(cloth->edges.front().widths_each, 2.0);
    EXPECT_EQ(cloth->edges.front().widths, 4);
    EXPECT_NE(cloth->edges.front().when.find("2.05 × fullness"), std::string::npos) << cloth->edges.front().when;
}

}  // namespace
}  // namespace truehang
