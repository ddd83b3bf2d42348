// SPDX-License-Identifier: Apache-2.0
#include "adjust/measured.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <algorithm>
#include <cmath>
#include <memory>

namespace truehang {
namespace {

Reading reading(std::string station, double mm, How how = How::measured) {
    Reading r;
    r.id = station + "/" + std::to_string(mm);
    r.station = std::move(station);
    r.value = Length::mm(mm);
    r.how = Word<How>(how);
    return r;
}

MeasuredWindow measured(std::vector<Reading> readings, Hang hang = Hang::level, Shape shape = Shape::recess) {
    static std::vector<std::unique_ptr<Window>> kept;  // counted readings point into their window
    kept.push_back(std::make_unique<Window>());
    kept.back()->shape = Word<Shape>(shape);
    kept.back()->readings = std::move(readings);
    return measure(*kept.back(), shape, hang, TapeRule{}, LengthUnit::mm);
}

bool flagged(const MeasuredWindow& window, std::string_view code) {
    return std::ranges::any_of(window.flags, [&](const Flag& flag) { return flag.code == code; });
}

// EU 2014/32 Annex X (MI-008), class II: 3 m 0.9 mm, 5 m 1.3 mm, 8 m 1.9 mm.
TEST(Tape, AllowsWhatTheDirectiveAllows) {
    EXPECT_NEAR(permissible_error(TapeClass::II, Length::metres(3)).mm(), 0.9, 1e-12);
    EXPECT_NEAR(permissible_error(TapeClass::II, Length::metres(5)).mm(), 1.3, 1e-12);
    EXPECT_NEAR(permissible_error(TapeClass::II, Length::metres(8)).mm(), 1.9, 1e-12);
    EXPECT_NEAR(permissible_error(TapeClass::I, Length::metres(1.2)).mm(), 0.3, 1e-12);
    EXPECT_NEAR(permissible_error(TapeClass::III, Length::metres(0.9)).mm(), 1.0, 1e-12);
}

// GUM (JCGM 100): a rectangular distribution of half-width a has u = a / sqrt 3; a graduation of 1 mm 0.288675 mm.
TEST(Tape, AddsUncertaintiesAsTheGuideSays) {
    TapeRule rule;
    rule.edge_u = Length();
    rule.accuracy = TapeClass::II;
    const double expected = std::hypot(0.5 / std::sqrt(3.0), 0.288675);
    EXPECT_NEAR(reading_u(Length::mm(860), rule).mm(), expected, 1e-6);
}

// Four sides and two diagonals of a crooked opening (derived: corners (0,0), (1802,0), (1806,1205), (3,1199)).
TEST(Opening, ClosesOnACrookedFigure) {
    const auto window =
        measured({reading("opening.width.bottom", 1802), reading("opening.width.top", 1803.010),
                  reading("opening.height.left", 1199.004), reading("opening.height.right", 1205.007),
                  reading("opening.diagonal.rising", 2171.097), reading("opening.diagonal.falling", 2161.944)});
    ASSERT_EQ(window.networks.size(), 1U);
    EXPECT_EQ(window.networks.front().name, "opening");
    EXPECT_EQ(window.networks.front().adjustment.redundancy, 1);
    EXPECT_LT(window.networks.front().adjustment.chi2, 1e-6);
    EXPECT_FALSE(flagged(window, "does-not-add-up"));
}

// Derived: four sides and two diagonals have one condition; it detects a diagonal read 100 mm long, but never locates
// it.
TEST(Opening, OneConditionSharesOneNormalisedResidual) {
    const auto window =
        measured({reading("opening.width.bottom", 1000.00), reading("opening.width.top", 1000.00),
                  reading("opening.height.left", 1000.02), reading("opening.height.right", 999.98),
                  reading("opening.diagonal.rising", 1414.24), reading("opening.diagonal.falling", 1514.20)});
    ASSERT_EQ(window.networks.size(), 1U);
    EXPECT_FALSE(window.networks.front().adds_up());
    EXPECT_EQ(window.networks.front().stations().size(), 6U);
    EXPECT_TRUE(flagged(window, "does-not-add-up"));
    EXPECT_TRUE(flagged(window, "out-of-square"));
}

// Derived: a true rectangle's diagonals are both sqrt(w^2 + h^2); offset over h = (d1^2 - d2^2) / (4 w), so diagonals
// 10 mm apart in 1800 x 1200 are 6.0 mm out over the height.
TEST(Opening, SquarenessFollowsThePythagoreanFigure) {
    const auto sure = [](double mm) { return Estimate{Length::mm(mm), Length::mm(1), {}}; };
    const double d = std::hypot(1800.0, 1200.0);
    EXPECT_NEAR(squareness_of(sure(1800), sure(1200), sure(d)).offset.mm(), 0.0, 1e-9);
    EXPECT_NEAR(std::abs(squareness_of(sure(1800), sure(1200), sure(d + 5)).offset.mm()), 6.0, 0.05);
    EXPECT_FALSE(squareness_of(sure(1800), sure(1200), sure(3100)).closes);
}

// The contract's worked example: 860 + 1130 + 148 = 2138, every mark known to the uncertainties it prints.
TEST(Plumb, WorksTheContractsPlumbLine) {
    const auto window =
        measured({reading("below.left", 860), reading("opening.height.left", 1130), reading("above.left", 148),
                  reading("ceiling.left", 2138), reading("pole.above", 80)});
    const auto pole = window.plumb.height(Line::left, PlumbMark::pole);
    ASSERT_TRUE(pole);
    EXPECT_NEAR(pole->value.mm(), 2070.0, 1e-9);
    EXPECT_NEAR(pole->u.mm(), 2.90, 0.005);
    EXPECT_NEAR(window.plumb.height(Line::left, PlumbMark::sill)->u.mm(), 1.77, 0.005);
    EXPECT_NEAR(window.plumb.height(Line::left, PlumbMark::ceiling)->u.mm(), 1.80, 0.005);
    EXPECT_FALSE(window.plumb.height(Line::right, PlumbMark::pole));
}

// The trade rules, section 3: a level line on two lines ties them, and a level pole is one mark for both: with the
// floor 30 mm lower on the right the pole is 30 mm higher over it.
TEST(Plumb, ALevelLineCarriesALevelPoleAcross) {
    const auto window =
        measured({reading("below.left", 860), reading("opening.height.left", 1130), reading("below.right", 890),
                  reading("opening.height.right", 1130), reading("level.left", 1000), reading("level.right", 1030),
                  reading("pole.above", 80)});
    ASSERT_TRUE(window.plumb.is_tied(Line::right));
    EXPECT_NEAR(window.plumb.height(Line::right, PlumbMark::pole)->value.mm(), 2100.0, 1e-6);
    ASSERT_TRUE(window.networks.empty());  // a tree of readings closes nothing
}

TEST(Plumb, WithoutALevelLineALevelPoleIsKnownWhereItWasTaken) {
    const auto window =
        measured({reading("below.left", 860), reading("opening.height.left", 1130), reading("below.right", 890),
                  reading("opening.height.right", 1130), reading("pole.above", 80)});
    EXPECT_TRUE(window.plumb.height(Line::left, PlumbMark::pole));
    EXPECT_FALSE(window.plumb.height(Line::right, PlumbMark::pole));
}

TEST(Plumb, APoleParallelToTheHeadIsKnownAtEveryLine) {
    const auto window =
        measured({reading("below.left", 860), reading("opening.height.left", 1130), reading("below.right", 890),
                  reading("opening.height.right", 1110), reading("pole.above", 80)},
                 Hang::head);
    EXPECT_NEAR(window.plumb.height(Line::right, PlumbMark::pole)->value.mm(), 2080.0, 1e-9);
}

TEST(Plumb, AProposedReadingMakesNoLoopAndIsNamed) {
    const auto loop = measured({reading("below.left", 860), reading("opening.height.left", 1130),
                                reading("above.left", 148), reading("ceiling.left", 2183, How::proposed)});
    EXPECT_TRUE(loop.networks.empty());
    EXPECT_NEAR(loop.plumb.height(Line::left, PlumbMark::ceiling)->value.mm(), 2138.0, 1e-9);
    EXPECT_FALSE(flagged(loop, "rests-on-proposal"));
    const auto alone = measured({reading("below.left", 860, How::proposed), reading("opening.height.left", 1130)});
    EXPECT_EQ(alone.plumb.height(Line::left, PlumbMark::head)->rests_on, std::vector<std::string>{"below.left"});
    EXPECT_TRUE(flagged(alone, "rests-on-proposal"));
}

TEST(Plumb, ASlipOfFortyFiveMillimetresDoesNotAddUp) {
    const auto window = measured({reading("below.left", 860), reading("opening.height.left", 1130),
                                  reading("above.left", 148), reading("ceiling.left", 2183)});
    ASSERT_EQ(window.networks.size(), 1U);
    EXPECT_FALSE(window.networks.front().adds_up());
    EXPECT_NEAR(window.networks.front().misclosure().off_by, 45.0, 1e-6);
    // 3.2905 times the root of the four readings' squared uncertainties: 13.54 mm (derived).
    EXPECT_NEAR(window.networks.front().misclosure().explained, 13.54, 0.01);
}

TEST(Wall, AdjustsItsParts) {
    const auto window = measured({reading("opening.width.top", 1240), reading("wall.left", 500),
                                  reading("wall.right", 300), reading("wall.total", 2044)});
    ASSERT_EQ(window.networks.size(), 1U);
    EXPECT_EQ(window.networks.front().name, "wall");
    const double sum = (window.spans.find("wall.left")->value + window.spans.find("opening.width.top")->value +
                        window.spans.find("wall.right")->value)
                           .mm();
    EXPECT_NEAR(sum, window.spans.find("wall.total")->value.mm(), 1e-9);
}

// Law: readings taken off one rigid shape without error always add up, whatever the shape, and give the shape back.
TEST(Plumb, TrueReadingsAlwaysAddUp) {
    EXPECT_TRUE(rc::check("true readings add up", [] {
        const auto floor_right = *rc::gen::inRange(-60, 60);
        const auto sill = *rc::gen::inRange(100, 1500);
        const auto head = sill + *rc::gen::inRange(300, 2500);
        const auto ceiling = head + *rc::gen::inRange(10, 900);
        const auto pole = head + *rc::gen::inRange(5, 200);
        const auto window = measured(
            {reading("below.left", sill), reading("opening.height.left", head - sill),
             reading("above.left", ceiling - head), reading("ceiling.left", ceiling), reading("level.left", 1000),
             reading("below.right", sill - floor_right), reading("opening.height.right", head - sill),
             reading("ceiling.right", ceiling - floor_right), reading("level.right", 1000 - floor_right),
             reading("pole.floor.left", pole), reading("pole.floor.right", pole - floor_right)});
        RC_ASSERT(window.networks.size() == 1U);
        RC_ASSERT(window.networks.front().adds_up());
        RC_ASSERT(window.networks.front().adjustment.chi2 < 1e-6);
        const auto across = window.plumb.height(Line::right, PlumbMark::pole);
        RC_ASSERT(across.has_value());
        RC_ASSERT(std::abs(across->value.mm() - (pole - floor_right)) < 1e-6);
    }));
}

// Law: a network knows each mark at least as well as the readings that lead to it alone.
TEST(Plumb, MoreReadingsNeverKnowLess) {
    EXPECT_TRUE(rc::check("a loop sharpens", [] {
        const auto sill = *rc::gen::inRange(100, 1500);
        const auto height = *rc::gen::inRange(300, 2500);
        const auto above = *rc::gen::inRange(10, 900);
        const std::vector<Reading> tree{reading("below.left", sill), reading("opening.height.left", height)};
        auto loop = tree;
        loop.push_back(reading("above.left", above));
        loop.push_back(reading("ceiling.left", sill + height + above));
        const auto head = [](const MeasuredWindow& w) { return w.plumb.height(Line::left, PlumbMark::head)->u.mm(); };
        RC_ASSERT(head(measured(loop)) <= head(measured(tree)) + 1e-12);
    }));
}

TEST(Readings, RetakenOnesStandAsideAndTwoAreSaid) {
    auto first = reading("below.left", 860);
    auto second = reading("below.left", 862);
    second.replaces = first.id;
    EXPECT_FALSE(flagged(measured({first, second}), "two-readings"));
    EXPECT_NEAR(measured({first, second}).readings.front().value.mm(), 862, 0);
    second.replaces.clear();
    EXPECT_TRUE(flagged(measured({first, second}), "two-readings"));
}

TEST(Readings, WithoutIdsTheNewestTimeCountsWhateverItsOffset) {
    auto first = reading("below.left", 860);
    auto second = reading("below.left", 862);
    first.id.clear();
    second.id.clear();
    first.taken_at = "2026-03-14T12:00:00+02:00";  // 10:00 UTC
    second.taken_at = "2026-03-14T10:30:00+00:00";
    const auto window = measured({second, first});
    EXPECT_NEAR(window.readings.front().value.mm(), 862, 0);
    EXPECT_FALSE(flagged(window, "two-readings"));
}

TEST(Readings, WhatWasTypedMustBeWhatStands) {
    auto r = reading("below.left", 860);
    r.typed = "86 cm";
    EXPECT_FALSE(flagged(measured({r}), "typed-differs"));
    r.typed = "806";
    EXPECT_TRUE(flagged(measured({r}), "typed-differs"));
}

// The trade rules, section 3: below 3.29 * sqrt 2 * u it is noise; above 10 mm a person decides.
TEST(Readings, ASpreadIsToldFromItsNoise) {
    const auto spread = [](double by) {
        return measured({reading("opening.width.top", 1240), reading("opening.width.bottom", 1240 + by)});
    };
    EXPECT_FALSE(flagged(spread(9), "reading-spread"));
    EXPECT_TRUE(flagged(spread(9.8), "reading-spread"));
    EXPECT_EQ(spread(9.8).flags.front().severity, Severity::note);
    EXPECT_EQ(spread(11).flags.front().severity, Severity::decide);
}

}  // namespace
}  // namespace truehang
