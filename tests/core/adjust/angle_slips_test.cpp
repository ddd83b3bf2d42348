// SPDX-License-Identifier: Apache-2.0
#include "adjust/next_reading.h"
#include "adjust/slip_catalogue.h"
#include "shape_window.h"
#include "units/angle_text.h"

#include <array>

namespace truehang {
namespace {

/// A bay as built: facets of 610, 1240, 600 that turn by `turns`, with its chord, depths and mouth angles, in whole mm
/// and half degrees (derived by walking round the facets).
ShapeWindow bay_turning(double first, double second) {
    const std::array<double, 3> widths{610, 1240, 600};
    const std::array<double, 2> turns{first, second};
    double x = 0.0;
    double y = 0.0;
    double heading = 0.0;
    std::vector<std::array<double, 2>> corners;
    for (std::size_t k = 0; k < widths.size(); ++k) {
        x += widths[k] * std::cos(heading * radians);
        y += widths[k] * std::sin(heading * radians);
        corners.push_back({x, y});
        heading -= k < turns.size() ? turns[k] : 0.0;
    }
    const double tilt = std::atan2(y, x);
    const auto depth = [&](std::size_t k) {
        return std::round(corners[k][1] * std::cos(tilt) - corners[k][0] * std::sin(tilt));
    };
    const auto to_half = [](double degrees) { return std::round(2.0 * degrees) / 2.0; };
    ShapeWindow window(Shape::bay);
    window.take("facet.1.width", 610).take("facet.2.width", 1240).take("facet.3.width", 600);
    window.take("corner.1.angle_deg", 180.0 - first).take("corner.2.angle_deg", 180.0 - second);
    window.take("bay.chord", std::round(std::hypot(x, y)));
    window.take("corner.1.depth", depth(0)).take("corner.2.depth", depth(1));
    window.take("mouth.left.angle_deg", to_half(-tilt / radians));
    window.take("mouth.right.angle_deg", to_half(first + second + tilt / radians));
    return window;
}

Reading& reading_of(ShapeWindow& window, std::string_view station) {
    return *std::ranges::find(window.window().readings, station, &Reading::station);
}

void put(ShapeWindow& window, const std::string& station, const std::string& typed) {
    reading_of(window, station).angle = Angle::degrees(std::stod(typed));
    reading_of(window, station).typed = typed;
}

const std::vector<Suspect>& suspects(const MeasuredWindow& window) {
    static const std::vector<Suspect> none;
    const Flag* flag = flag_of(window, "does-not-add-up");
    return flag == nullptr ? none : flag->suspects;
}

TEST(AngleSlips, ABayThatAddsUpOffersNone) {
    EXPECT_TRUE(suspects(bay_turning(45, 45).measured()).empty());
    EXPECT_TRUE(suspects(bay_turning(30, 60).measured()).empty());
}

struct Slipped {
    const char* typed;
    const char* slip;
};

// A corner of 135 degrees put down wrongly in each way of the catalogue: the corner alone is named, with 135.
TEST(AngleSlips, AreNamedByTheCatalogue) {
    for (const Slipped& each :
         {Slipped{"153", "transposed-digits"}, Slipped{"125", "wrong-digit"}, Slipped{"35", "missing-digit"},
          Slipped{"45", "supplement"}, Slipped{"225", "outside-angle"}, Slipped{"67.5", "half-angle"},
          Slipped{"22.5", "half-angle"}}) {
        auto window = bay_turning(45, 40);
        put(window, "corner.1.angle_deg", each.typed);
        const auto measured = window.measured();
        ASSERT_FALSE(suspects(measured).empty()) << each.typed;
        const Suspect& first = suspects(measured).front();
        EXPECT_EQ(first.station, "corner.1.angle_deg") << each.typed;
        EXPECT_EQ(first.slip, each.slip) << each.typed;
        ASSERT_TRUE(first.angle && first.proposed_angle) << each.typed;
        EXPECT_EQ(first.angle->degrees(), std::stod(each.typed));
        EXPECT_NEAR(first.proposed_angle->degrees(), 135.0, 1e-9) << each.typed;
        EXPECT_FALSE(first.proposed) << each.typed;
        EXPECT_EQ(standing_out(suspects(measured)), "corner.1.angle_deg") << each.typed;
    }
}

TEST(AngleSlips, ADigitTypedTwiceIsNamed) {
    auto window = bay_turning(147.5, -10);  // a sharp corner of 32.5 degrees
    put(window, "corner.1.angle_deg", "332.5");
    const auto measured = window.measured();
    ASSERT_FALSE(suspects(measured).empty());
    EXPECT_EQ(suspects(measured).front().slip, "doubled-digit");
    EXPECT_NEAR(suspects(measured).front().proposed_angle->degrees(), 32.5, 1e-9);
}

// Corners of 150 and 120 degrees put down for each other.
TEST(AngleSlips, CornersExchangedAreFoundTogether) {
    auto window = bay_turning(30, 60);
    put(window, "corner.1.angle_deg", "120");
    put(window, "corner.2.angle_deg", "150");
    const auto measured = window.measured();
    ASSERT_FALSE(suspects(measured).empty());
    const Suspect& first = suspects(measured).front();
    EXPECT_EQ(first.slip, "swapped");
    ASSERT_EQ(first.also.size(), 1U);
    EXPECT_NEAR(first.proposed_angle->degrees() + first.also.front().proposed_angle->degrees(), 270.0, 1e-9);
    EXPECT_EQ(first.also.front().angle->degrees(), first.proposed_angle->degrees());
}

// The second corner, 127 degrees, was never read: it repeats the first.
TEST(AngleSlips, ACopiedAngleIsNoticed) {
    auto window = bay_turning(41.5, 53);
    put(window, "corner.1.angle_deg", "138.5");
    put(window, "corner.2.angle_deg", "138.5");
    const auto measured = window.measured();
    const auto copied = std::ranges::find(suspects(measured), "copied", &Suspect::slip);
    ASSERT_NE(copied, suspects(measured).end());
    EXPECT_EQ(copied->station, "corner.2.angle_deg");
    EXPECT_NEAR(copied->proposed_angle->degrees(), 127.0, 1.5);
    EXPECT_FALSE(tells_value("copied"));
    EXPECT_FALSE(tells_value("unexplained"));
    EXPECT_TRUE(tells_value("supplement"));
}

TEST(AngleSlips, AreToldInDegrees) {
    auto window = bay_turning(45, 40);
    put(window, "corner.1.angle_deg", "153");
    const auto measured = window.measured();
    const Flag* flag = flag_of(measured, "does-not-add-up");
    ASSERT_NE(flag, nullptr);
    const std::string& text = flag->text;
    EXPECT_NE(text.find("153°, perhaps 135°"), std::string::npos) << text;
}

// One closing condition: two facets, their corner and the chord. The digits alone tell.
TEST(AngleSlips, OneConditionLeavesItToTheDigits) {
    ShapeWindow window(Shape::corner);
    // The angle between the facets was read as what it leaves of a straight line.
    window.take("facet.1.width", 613).take("facet.2.width", 837).take("corner.1.angle_deg", 72);
    // Cosine rule: 613, 837 and 108 degrees between them.
    window.take("corner.chord",
                std::round(std::sqrt(613.0 * 613.0 + 837.0 * 837.0 - 2.0 * 613.0 * 837.0 * std::cos(108.0 * radians))));
    const auto measured = window.measured();
    ASSERT_FALSE(suspects(measured).empty());
    EXPECT_EQ(suspects(measured).front().slip, "supplement");
    EXPECT_NEAR(suspects(measured).front().proposed_angle->degrees(), 108.0, 1e-9);
}

TEST(AngleSlips, AnAngleReadTwiceIsHardlySuspect) {
    ShapeWindow window(Shape::corner);
    // One condition, and 1150 where a right angle between two of 840 spans 1188: any of the four may be off.
    window.take("facet.1.width", 840).take("facet.2.width", 840).take("corner.chord", 1150);
    window.take("corner.1.angle_deg", 90);
    const auto weight_of = [](const MeasuredWindow& measured) {
        double weight = 0.0;
        for (const Suspect& suspect : suspects(measured)) {
            weight += suspect.station == "corner.1.angle_deg" ? suspect.weight : 0.0;
        }
        return weight;
    };
    const double before = weight_of(window.measured());
    Reading again = reading_of(window, "corner.1.angle_deg");
    again.id = "again";
    again.replaces = "corner.1.angle_deg";
    again.angle = Angle::degrees(90.5);
    window.window().readings.push_back(again);
    EXPECT_GT(before, 0.05);
    EXPECT_LT(weight_of(window.measured()), 0.2 * before);
}

TEST(AngleSlips, AnAngleIsTakenAgainWhereItStandsOut) {
    auto window = bay_turning(45, 40);
    put(window, "corner.1.angle_deg", "153");
    const auto next = settling_reading(window.window(), window.measured());
    ASSERT_TRUE(next);
    EXPECT_EQ(next->station, "corner.1.angle_deg");
    EXPECT_NE(next->why.find("the bevel says whether it reads 135°"), std::string::npos) << next->why;
}

// No slip that a rule makes: still it is the one to take again, where the other readings leave no doubt.
TEST(AngleSlips, AnAngleWithoutAnExplanationIsTakenAgainToo) {
    auto window = bay_turning(45, 40);
    put(window, "corner.1.angle_deg", "118.5");
    const auto measured = window.measured();
    ASSERT_FALSE(suspects(measured).empty());
    EXPECT_EQ(suspects(measured).front().station, "corner.1.angle_deg");
    const auto next = settling_reading(window.window(), measured);
    ASSERT_TRUE(next);
    EXPECT_EQ(next->station, "corner.1.angle_deg");
}

// A bevel takes two hands: where a width tells as much, the width is asked for.
TEST(AngleSlips, ABevelCostsMoreThanATape) {
    ShapeWindow window(Shape::corner);
    window.take("facet.1.width", 840).take("facet.2.width", 840).take("corner.1.angle_deg", 90);
    // A right angle between two of 840 spans 840 times the root of 2, 1188: nothing is known but that one is off.
    window.take("corner.chord", 1150);
    const auto next = settling_reading(window.window(), window.measured());
    ASSERT_TRUE(next);
    EXPECT_NE(next->station, "corner.1.angle_deg");
}

TEST(AngleCatalogue, KnowsWhatMayHaveBeenMeant) {
    const auto has = [](const std::string& typed, std::string_view slip, double degrees) {
        return std::ranges::any_of(meant_by({typed, *read_angle(typed)}), [&](const MeantAngle& meant) {
            return meant.slip == slip && std::abs(meant.value.degrees() - degrees) < 0.005;
        });
    };
    EXPECT_TRUE(has("153", "transposed-digits", 135));
    EXPECT_TRUE(has("134.5", "wrong-digit", 135.5));
    EXPECT_TRUE(has("35", "missing-digit", 135));
    EXPECT_TRUE(has("335", "doubled-digit", 35));
    EXPECT_TRUE(has("44.5", "supplement", 135.5));
    EXPECT_TRUE(has("225", "outside-angle", 135));
    // A saw's scale counts from square: an octagon's corner of 135 degrees is mitred at 22.5 (360 / 8 / 2), which
    // halves it into 67.5 and 67.5 (any joiner's table of mitres).
    EXPECT_TRUE(has("22.5", "half-angle", 135));
    EXPECT_TRUE(has("67.5", "half-angle", 135));
    for (const MeantAngle& meant : meant_by({"135°", Angle::degrees(135)})) {
        EXPECT_GT(meant.value.degrees(), 0.0);
        EXPECT_LT(meant.value.degrees(), 360.0);
        EXPECT_GT(meant.chance, 0.0);
        EXPECT_NE(meant.value.degrees(), 135.0);
    }
}

}  // namespace
}  // namespace truehang
