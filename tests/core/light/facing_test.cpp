// SPDX-License-Identifier: Apache-2.0
#include "light/facing.h"

#include "references.h"

#include <gtest/gtest.h>

#include <algorithm>

using namespace truehang;
using namespace truehang::test;

namespace {

/// A window of London with these bearings.
struct Visit {
    Survey survey;
    Window window;
};
Visit visit(const std::vector<BearingTaken>& bearings) {
    Visit visit;
    visit.survey.site.emplace();
    visit.survey.site->latitude = 51.5074;
    visit.survey.site->longitude = -0.1278;
    visit.window.outlook.emplace();
    visit.window.outlook->bearings = bearings;
    return visit;
}
Facing facing(const std::vector<BearingTaken>& bearings) {
    const auto one = visit(bearings);
    return facing_of(one.survey, one.window);
}

BearingTaken plan(double bearing, double u = 2.0) {
    BearingTaken taken;
    taken.from = Word<BearingFrom>("plan");
    taken.bearing = Angle::degrees(bearing);
    taken.u = Angle::degrees(u);
    return taken;
}
BearingTaken shadow(const std::string& at, double left) {
    BearingTaken taken;
    taken.from = Word<BearingFrom>("shadow");
    taken.taken_at = at;
    taken.depth = Length::mm(150.0);
    taken.to_left = {Length::mm(left)};
    return taken;
}
BearingTaken compass(double magnetic, std::optional<double> field = {}) {
    BearingTaken taken;
    taken.from = Word<BearingFrom>("compass");
    taken.taken_at = "2026-06-21T12:00:00Z";
    taken.magnetic = Angle::degrees(magnetic);
    taken.field_nt = field;
    return taken;
}

bool minds(const FacingTold& told, std::string_view part) {
    return std::ranges::any_of(told.minds, [&](const std::string& one) { return one.find(part) != std::string::npos; });
}

}  // namespace

TEST(Facing, ReadsTheShadowsOfTheReferenceWindows) {
    for (const auto& one : light_json("shadow_reference.json")) {
        auto here = visit({shadow(one.at("utc"), one.at("shadow_offset_left_mm"))});
        here.survey.site->latitude = one.at("lat");
        here.survey.site->longitude = one.at("lon");
        const Facing found = facing_of(here.survey, here.window);
        ASSERT_TRUE(found.bearing) << one.at("name");
        EXPECT_NEAR(found.bearing->bearing.degrees(), one.at("window_bearing_deg"), 0.01) << one.at("name");
        EXPECT_TRUE(minds(found.told.front(), "phone’s clock"));
    }
}

// A clock that is wrong by half a day puts the sun below the ground: words, and no bearing.
TEST(Facing, RefusesAShadowByNight) {
    const Facing found = facing({shadow("2026-06-21T00:00:00Z", 20.0)});
    EXPECT_FALSE(found.bearing);
    EXPECT_TRUE(minds(found.told.front(), "the sun is down here"));
    EXPECT_EQ(found.says, "Which way it faces isn’t known.");
}

// Hours off by day, the shadow alone can’t know it; a second bearing shows it.
TEST(Facing, ShowsAClockThatIsHoursOffByASecondBearing) {
    const auto at = utc("2026-06-21T09:00:00Z");
    const auto sun = sun_at(place(51.5074, -0.1278), at);
    const double left = 150.0 * std::tan((sun.azimuth.degrees() - 120.0) * std::numbers::pi / 180.0);
    EXPECT_NEAR(facing({shadow("2026-06-21T09:00:00Z", left)}).bearing->bearing.degrees(), 120.0, 0.01);
    const Facing wrong = facing({shadow("2026-06-21T12:00:00Z", left), plan(120.0)});
    ASSERT_TRUE(wrong.mind);
    EXPECT_TRUE(wrong.told[0].apart);
    EXPECT_TRUE(wrong.told[1].apart);
    const Facing settled = facing({shadow("2026-06-21T12:00:00Z", left), plan(120.0), compass(121.0)});
    EXPECT_TRUE(settled.told[0].apart);
    EXPECT_FALSE(settled.told[1].apart);
    EXPECT_NEAR(settled.bearing->bearing.degrees(), 120.0, 2.0);
}

// 2016-12-31T23:59:60Z was a leap second: the minute counts like any other, and two sides of it agree.
TEST(Facing, HoldsInALeapSecondsMinute) {
    auto here = visit({shadow("2016-12-31T23:59:60Z", 10.0), shadow("2016-12-31T23:59:59Z", 10.0)});
    here.survey.site->latitude = -36.85;  // Auckland, where the sun was up
    here.survey.site->longitude = 174.76;
    const Facing found = facing_of(here.survey, here.window);
    ASSERT_TRUE(found.told[0].bearing && found.told[1].bearing);
    EXPECT_NEAR(turn(found.told[0].bearing->bearing, found.told[1].bearing->bearing).degrees(), 0.0,
                0.02);  // near noon the sun goes round by up to a degree a minute
}

// WMM2025 gives London a declination of about 0.9° and 49,000 nT in 2026.
TEST(Facing, DoesNotCountACompassNearIron) {
    EXPECT_NEAR(facing({compass(180.0, 49'000.0)}).bearing->bearing.degrees(), 181.0, 1.0);
    const Facing iron = facing({compass(180.0, 70'000.0)});
    EXPECT_FALSE(iron.bearing);
    EXPECT_TRUE(minds(iron.told.front(), "iron"));
}

TEST(Facing, SaysWhatIsMissing) {
    auto here = visit({shadow("2026-06-21T09:00:00Z", 10.0), compass(10.0), shadow("", 1.0)});
    here.survey.site.reset();
    Facing found = facing_of(here.survey, here.window);
    EXPECT_FALSE(found.bearing);
    EXPECT_TRUE(minds(found.told[0], "where the house stands"));
    EXPECT_TRUE(minds(found.told[1], "where the house stands"));
    found = facing({shadow("", 1.0)});
    EXPECT_TRUE(minds(found.told[0], "when it was taken"));
    BearingTaken stars = plan(4.0);
    stars.from = Word<BearingFrom>("pole-star");
    found = facing({stars});
    EXPECT_EQ(found.told[0].says, "pole-star");
    EXPECT_FALSE(found.bearing);
}

// A street that runs due east has north on its left and south on its right.
TEST(Facing, TurnsSquareFromTheStreet) {
    BearingTaken street = plan(0.0);
    street.bearing.reset();
    street.street = Angle::degrees(90.0);
    EXPECT_TRUE(minds(facing({street}).told[0], "which side"));
    street.looks = Word<Looks>("left");
    EXPECT_EQ(facing({street}).says, "Faces north, 0° ± 4°");
    street.looks = Word<Looks>("right");
    EXPECT_EQ(facing({street}).says, "Faces south, 180° ± 4°");
}

TEST(Facing, CountsTheWindowsOwnBearingWhereNothingElseStands) {
    auto here = visit({});
    here.window.bearing = Angle::degrees(359.8);
    here.window.bearing_from = "compass";
    EXPECT_EQ(facing_of(here.survey, here.window).says, "Faces north, 0° ± 20°");
    here.window.outlook->bearings = {plan(90.0)};
    EXPECT_EQ(facing_of(here.survey, here.window).says, "Faces east, 90° ± 4°");
}
