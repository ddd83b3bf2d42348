// SPDX-License-Identifier: Apache-2.0
#include "light/clear_sky.h"
#include "light/daylight.h"

#include "references.h"

#include <gtest/gtest.h>

using namespace truehang;

// ASHRAE Handbook, Fundamentals, 2009, chapter 14, table of San Francisco international airport (37.62 N): the optical
// depths of each month, and beam and diffuse at solar noon of its 21st day, where the sun’s altitude is 90° - latitude
// + declination.
TEST(ClearSky, IsThatOfAshraesTable) {
    constexpr std::array beam_depth{.316, .326, .334, .362, .368, .353, .371, .365, .352, .335, .320, .318};
    constexpr std::array diffuse_depth{2.608, 2.528, 2.525, 2.345, 2.360, 2.496,
                                       2.395, 2.435, 2.518, 2.545, 2.611, 2.538};
    constexpr std::array beam{879, 910, 933, 918, 912, 923, 903, 904, 901, 887, 866, 846};
    constexpr std::array diffuse{79, 93, 100, 124, 123, 108, 118, 112, 99, 90, 78, 80};
    constexpr std::array day_of_year{21, 52, 80, 111, 141, 172, 202, 233, 264, 294, 325, 355};
    for (std::size_t month = 0; month < 12; ++month) {
        const double declination =
            23.45 * std::sin((284 + day_of_year[month]) * 360.0 / 365.0 * std::numbers::pi / 180.0);
        const auto sky = clear_sky({beam_depth[month], diffuse_depth[month]}, day_of_year[month],
                                   Angle::degrees(90.0 - 37.62 + declination));
        EXPECT_NEAR(sky.beam, beam[month], 1.5) << month;
        EXPECT_NEAR(sky.diffuse, diffuse[month], 1.5) << month;
    }
    EXPECT_EQ(clear_sky({.316, 2.608}, 21, Angle::degrees(-1.0)).beam, 0.0);
}

// Haurwitz, Journal of Meteorology 2 (1945) 154, evaluated apart from this code.
TEST(ClearSky, IsThatOfHaurwitz) {
    EXPECT_NEAR(level_clear_sky(Angle::degrees(5.0)), 48.63, 0.005);
    EXPECT_NEAR(level_clear_sky(Angle::degrees(10.0)), 135.74, 0.005);
    EXPECT_NEAR(level_clear_sky(Angle::degrees(30.0)), 487.89, 0.01);
    EXPECT_NEAR(level_clear_sky(Angle::degrees(50.0)), 778.77, 0.01);
    EXPECT_NEAR(level_clear_sky(Angle::degrees(90.0)), 1035.09, 0.01);
    EXPECT_EQ(level_clear_sky(Angle::degrees(-3.0)), 0.0);
}

// Kasten and Young, Applied Optics 28 (1989) 4735: 1 overhead, some 38 on the horizon (37.92, from memory).
TEST(ClearSky, HasMoreAirTheLowerTheSun) {
    EXPECT_NEAR(air_mass(Angle::degrees(90.0)), 1.0, 0.001);
    EXPECT_NEAR(air_mass(Angle::degrees(0.0)), 37.92, 0.01);
}

// BS 8206-2, worked for a room of 4 × 5 × 2.5 m with 2.4 m² of glass that sees 65° of sky: 1.542 %; a stack over a
// quarter of the glass leaves 1.156 %.
TEST(Daylight, IsTheWorkedRooms) {
    const double surface = room_surface(Length::metres(4.0), Length::metres(5.0), Length::metres(2.5));
    EXPECT_DOUBLE_EQ(surface, 85.0);
    EXPECT_NEAR(average_daylight_factor(2.4, surface, Angle::degrees(65.0)).value(), 1.542, 0.0005);
    EXPECT_NEAR(average_daylight_factor(0.75 * 2.4, surface, Angle::degrees(65.0)).value(), 1.156, 0.0005);
    EXPECT_FALSE(average_daylight_factor(2.4, 0.0, Angle::degrees(65.0)));
}

// By the triangle from the glass's middle to the head's outer edge: half its height up and as much out are 45°.
TEST(Daylight, SeesLessSkyBehindAHouseAndUnderAHead) {
    EXPECT_DOUBLE_EQ(visible_sky(Angle::degrees(0.0), Length::mm(1400.0), Length::mm(0.0)).degrees(), 90.0);
    EXPECT_DOUBLE_EQ(visible_sky(Angle::degrees(25.0), Length::mm(1400.0), Length::mm(0.0)).degrees(), 65.0);
    EXPECT_DOUBLE_EQ(visible_sky(Angle::degrees(0.0), Length::mm(1400.0), Length::mm(700.0)).degrees(), 45.0);
    EXPECT_DOUBLE_EQ(visible_sky(Angle::degrees(60.0), Length::mm(1400.0), Length::mm(700.0)).degrees(), 0.0);
}

TEST(Daylight, AsksOfEachRoomWhatTheStandardDoes) {
    EXPECT_EQ(least_daylight_factor("Living room"), 1.5);
    EXPECT_EQ(least_daylight_factor("kitchen"), 2.0);
    EXPECT_EQ(least_daylight_factor("bedroom"), 1.0);
    EXPECT_FALSE(least_daylight_factor("hall"));
}
