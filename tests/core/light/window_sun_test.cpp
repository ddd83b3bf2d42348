// SPDX-License-Identifier: Apache-2.0
#include "light/window_sun.h"

#include "references.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

using namespace truehang;
using namespace truehang::test;
using namespace std::chrono_literals;

namespace {

const auto london = place(51.5074, -0.1278);

std::chrono::seconds greenwich(Moment) { return 0s; }

GlassOpening facing(double bearing) {
    return {Angle::degrees(bearing), Length::mm(1200.0), Length::mm(1400.0), Length::mm(0.0), Length::mm(0.0), {}};
}

}  // namespace

TEST(WindowSun, FallsAsTheSixReferenceWindowsHaveIt) {
    const auto cases = light_json("shadow_reference.json");
    ASSERT_EQ(cases.size(), 6U);
    for (const auto& one : cases) {
        const SunPosition sun{Angle::degrees(one.at("sun_az")), Angle::degrees(one.at("sun_alt_apparent"))};
        const Angle bearing = Angle::degrees(one.at("window_bearing_deg"));
        const auto seen = incidence(bearing, sun);
        EXPECT_NEAR(seen.turned.degrees(), one.at("gamma_deg"), 0.00011) << one.at("name");
        EXPECT_NEAR(seen.incidence.degrees(), one.at("incidence_deg"), 0.00011) << one.at("name");
        EXPECT_NEAR(seen.profile.degrees(), one.at("profile_angle_deg"), 0.00011) << one.at("name");
        EXPECT_NEAR(lit_share(Length::mm(1200.0), Length::mm(1400.0), Length::mm(150.0), bearing, sun),
                    one.at("sunlit_fraction_1200x1400_recess150"), 0.000011)
            << one.at("name");
    }
}

// The hours of two opposite faces add up to those of the sun: London, north 835 and south 3621 of 4456.
TEST(WindowSun, IsSharedOutBetweenNorthAndSouth) {
    const auto north = sun_hours(london, facing(0.0), 2025, greenwich);
    const auto south = sun_hours(london, facing(180.0), 2025, greenwich);
    EXPECT_NEAR(sum(north.on_glass) + sum(south.on_glass), sum(north.up), 1.0);
    EXPECT_NEAR(sum(north.on_glass), 835.0, 8.0);
    EXPECT_NEAR(sum(south.on_glass), 3621.0, 8.0);
    EXPECT_NEAR(sum(north.up), 4456.0, 8.0);
}

RC_GTEST_PROP(WindowSun, OfOppositeFacesAddsUpToTheSuns, ()) {
    const auto where = place(*rc::gen::inRange(-89, 90), *rc::gen::inRange(-180, 181));
    const double bearing = *rc::gen::inRange(0, 360);
    const int year = *rc::gen::inRange(2020, 2050);
    const auto one = sun_hours(where, facing(bearing), year, greenwich);
    const auto other = sun_hours(where, facing(bearing + 180.0), year, greenwich);
    RC_ASSERT(std::abs(sum(one.on_glass) + sum(other.on_glass) - sum(one.up)) < 1.0);
}

RC_GTEST_PROP(WindowSun, IsNeverMoreBehindMore, ()) {
    const auto where = place(*rc::gen::inRange(-70, 71), 0.0);
    auto opening = facing(*rc::gen::inRange(0, 360));
    opening.outer_depth = Length::mm(*rc::gen::inRange(0, 400));
    opening.inner_depth = Length::mm(*rc::gen::inRange(0, 400));
    const auto clear = sun_hours(where, opening, 2026, greenwich);
    RC_ASSERT(sum(clear.on_cloth) <= sum(clear.on_glass) + 1e-9);
    RC_ASSERT(sum(clear.on_glass) <= sum(clear.up) + 1e-9);
    opening.skyline.push_back({Angle::degrees(-40.0), Angle::degrees(20.0), Angle::degrees(*rc::gen::inRange(1, 60))});
    const auto hidden = sun_hours(where, opening, 2026, greenwich);
    RC_ASSERT(sum(hidden.on_glass) <= sum(clear.on_glass) + 1e-9);
    opening.outer_depth = opening.outer_depth + Length::mm(100.0);
    RC_ASSERT(sum(sun_hours(where, opening, 2026, greenwich).on_glass) <= sum(hidden.on_glass) + 1e-9);
}

// A house opposite that fills the whole view to the zenith leaves nothing; one only to the left leaves the afternoon.
TEST(WindowSun, StaysOutBehindAHouse) {
    auto opening = facing(180.0);
    opening.skyline = {{Angle::degrees(-90.0), Angle::degrees(90.0), Angle::degrees(89.9)}};
    EXPECT_EQ(sum(sun_hours(london, opening, 2026, greenwich).on_glass), 0.0);
    opening.skyline = {{Angle::degrees(-90.0), Angle::degrees(0.0), Angle::degrees(89.9)}};
    const auto hours = sun_hours(london, opening, 2026, greenwich);
    for (const auto& month : hours.on_glass) {
        for (std::size_t hour = 0; hour < 11; ++hour) {
            EXPECT_EQ(month[hour], 0.0);
        }
        EXPECT_GT(month[13], 0.0);
    }
}

TEST(WindowSun, IsToldByTheClockOnTheWall) {
    const auto summer_time = [](Moment at) {  // of 2026 in Britain
        return at >= utc("2026-03-29T01:00:00Z") && at < utc("2026-10-25T01:00:00Z") ? 3600s : 0s;
    };
    const auto by_sun = sun_hours(london, facing(180.0), 2026, greenwich);
    const auto by_clock = sun_hours(london, facing(180.0), 2026, summer_time);
    for (std::size_t hour = 0; hour < 23; ++hour) {
        EXPECT_NEAR(by_clock.up[6][hour + 1], by_sun.up[6][hour], 0.51) << hour;
        EXPECT_NEAR(by_clock.up[11][hour], by_sun.up[11][hour], 1e-9) << hour;
    }
    EXPECT_NEAR(sum(by_clock.up), sum(by_sun.up), 1.0);
}

// EN 17037: at least 1.5 h. A south window in London has it by far, a north window not at all.
TEST(WindowSun, ReachesTheMiddleInFebruary) {
    auto opening = facing(180.0);
    opening.inner_depth = Length::mm(150.0);
    EXPECT_GT(best_february_day(london, opening, 2026, Angle::degrees(0.0)).hours, 5.0);
    EXPECT_LE(best_february_day(london, opening, 2026, Angle::degrees(20.0)).hours,
              best_february_day(london, opening, 2026, Angle::degrees(0.0)).hours);
    opening.bearing = Angle::degrees(0.0);
    EXPECT_EQ(best_february_day(london, opening, 2026, Angle::degrees(0.0)).hours, 0.0);
}
