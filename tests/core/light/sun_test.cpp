// SPDX-License-Identifier: Apache-2.0
#include "light/sun.h"

#include "references.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

using namespace truehang;
using namespace truehang::test;
using namespace std::chrono_literals;

TEST(Sun, StandsWhereFourLibrariesPutIt) {
    const auto cases = light_json("sun_reference.json").at("cases");
    ASSERT_GE(cases.size(), 15U);
    for (const auto& one : cases) {
        const SunPosition reference{Angle::degrees(one.at("azimuth_deg")),
                                    Angle::degrees(one.at("altitude_airless_deg"))};
        const auto sun = sun_at(place(one.at("lat_deg"), one.at("lon_deg_east")), utc(one.at("utc")));
        EXPECT_LT(separation(sun, reference), 0.01) << one.at("name");
    }
}

// NREL’s SPA report (Reda and Andreas, NREL/TP-560-34302, 2008), table A5.1: zenith 50.11162° with its refraction,
// 50.1279° without, azimuth 194.34024°. It is of 2003, before the years that PSA’s constants were fitted to.
TEST(Sun, IsThatOfNrelsWorkedExample) {
    const auto sun = sun_at(place(39.742476, -105.1786), utc("2003-10-17T12:30:30-07:00"));
    EXPECT_LT(separation(sun, {Angle::degrees(194.34024), Angle::degrees(90.0 - 50.1279)}), 0.01);
    EXPECT_NEAR(90.0 - sun.altitude.degrees() - refraction(sun.altitude).degrees(), 50.11162, 0.01);
}

// Sæmundsson’s formula as the reference file applies it, above -0.9°.
TEST(Sun, IsLiftedByTheAirAsSaemundssonSays) {
    const auto cases = light_json("sun_reference.json").at("cases");
    for (const auto& one : cases) {
        const double altitude = one.at("altitude_airless_deg");
        const double lifted = one.at("altitude_refracted_deg");
        EXPECT_NEAR(altitude + refraction(Angle::degrees(altitude)).degrees(), lifted, 0.00011) << one.at("name");
    }
    EXPECT_EQ(refraction(Angle::degrees(-1.0)).degrees(), 0.0);
    EXPECT_NEAR(refraction(Angle::degrees(90.0)).degrees(), 0.0, 0.0001);
}

RC_GTEST_PROP(Sun, GoesThroughADayAsItIsAskedForMomentByMoment, ()) {
    const auto where = place(*rc::gen::inRange(-9000, 9001) / 100.0, *rc::gen::inRange(-18000, 18001) / 100.0);
    const Moment from = utc("2020-01-01T00:00:00Z") + std::chrono::minutes(*rc::gen::inRange(0, 16'000'000));
    const auto step = std::chrono::minutes(*rc::gen::element(1, 5, 10, 30, 60));
    const auto path = sun_every(where, from, step, 200);
    RC_ASSERT(path.size() == 200U);
    for (std::size_t i = 0; i < path.size(); i += 7) {
        const auto asked = sun_at(where, from + step * static_cast<long long>(i));
        RC_ASSERT(separation(position_of(path[i]), asked) < 0.001);
    }
}

RC_GTEST_PROP(Sun, RisesAndSetsInTurn, ()) {
    const auto where = place(*rc::gen::inRange(-9000, 9001) / 100.0, *rc::gen::inRange(-18000, 18001) / 100.0);
    const auto day = sun_day(where, utc("2020-01-01T00:00:00Z") + std::chrono::hours(*rc::gen::inRange(0, 262'000)));
    bool up = day.up_at_start;
    for (const auto& crossing : day.crossings) {
        RC_ASSERT(crossing.rises != up);
        up = crossing.rises;
        RC_ASSERT(std::abs(sun_at(where, crossing.at).altitude.degrees() + 0.833) < 0.01);
    }
    RC_ASSERT(day.crossings.size() <= 4U);
    RC_ASSERT(day.highest.degrees() >= -0.834 || !up);
}

TEST(Sun, StaysUpAndDownBeyondThePolarCircle) {
    const auto tromso =
        place(69.6492, 18.9553);  // midnight sun 20 May to 22 July; polar night 27 November to 15 January
    const auto summer = sun_day(tromso, utc("2026-06-21T00:00:00Z"));
    EXPECT_TRUE(summer.crossings.empty());
    EXPECT_TRUE(summer.up_at_start);
    const auto winter = sun_day(tromso, utc("2026-12-21T00:00:00Z"));
    EXPECT_TRUE(winter.crossings.empty());
    EXPECT_FALSE(winter.up_at_start);
    EXPECT_LT(winter.highest.degrees(), -0.833);
}

// By the definition of declination: at the pole the sun’s altitude is its declination, 23.44° at the June solstice
// (less 0.002° of parallax).
TEST(Sun, GoesRoundAtThePoleAtOneHeight) {
    for (int hour = 0; hour < 24; ++hour) {
        const auto sun = sun_at(place(90.0, 0.0), utc("2026-06-21T00:00:00Z") + std::chrono::hours(hour));
        EXPECT_NEAR(sun.altitude.degrees(), 23.44, 0.01);
        EXPECT_NEAR(std::remainder(sun.azimuth.degrees() - (180.0 + 15.0 * (hour - 12)), 360.0), 0.0, 1.0);
    }
}

TEST(Sun, IsTheSameOnBothSidesOfTheDateLine) {
    const auto at = utc("2026-03-01T20:00:00Z");
    EXPECT_LT(separation(sun_at(place(-16.8, 180.0), at), sun_at(place(-16.8, -180.0), at)), 1e-9);
}

TEST(Sun, GoesOnThroughALeapSecond) {
    const auto london = place(51.5074, -0.1278);
    const auto before = sun_at(london, utc("2016-12-31T23:59:59Z"));
    const auto leap = sun_at(london, utc("2016-12-31T23:59:60Z"));
    EXPECT_LT(separation(before, leap), 15.1 / 3600.0);  // it turns by 15″ a second
    EXPECT_FALSE(read_rfc3339("2016-12-30T23:59:60Z"));
}
