// SPDX-License-Identifier: Apache-2.0
#include "sheet/light_sheet.h"

#include "document/document.h"
#include "sheet/sheets.h"
#include "sheet/sun_drawing.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {
namespace {

/// A window of 1200 × 1000 in London, 900 over the floor, and what stands outside.
Survey london_house(const std::string& bearing, const std::string& outlook = "{}") {
    return read_survey(
               R"({"format": "truehang.survey/1", "id": "s", "site": {"latitude": 51.5074, "longitude": -0.1278},
        "measured_at": "2026-03-21T12:00:00Z", "time_zone": "Europe/London", "fabrics": [],
        "rooms": [{"id": "r", "use": "living room",
                   "interior": {"width_mm": 4000, "depth_mm": 5000, "height_mm": 2500},
                   "windows": [{"id": "w", "shape": "frame", "bearing_deg": )" +
               bearing + R"(, "bearing_from": "plan", "outlook": )" + outlook + R"(,
                       "readings": [{"station": "opening.width.top", "value_mm": 1200},
                                    {"station": "opening.height.left", "value_mm": 1000},
                                    {"station": "below.left", "value_mm": 900}]}]}]})")
        .value();
}

struct Lit {
    Survey survey;
    Figures figures;
    WindowLight light;
};
Lit lit(Survey survey) {
    Lit lit{std::move(survey), {}, {}};
    lit.figures = work_out(lit.survey);
    const Room& room = lit.survey.rooms[0];
    lit.light = light_of(lit.survey, room, room.windows[0], [&](const Window&) { return &lit.figures.windows[0]; });
    return lit;
}

Elevation drawn(const Lit& lit) {
    const Room& room = lit.survey.rooms[0];
    return sun_drawing_of(room, room.windows[0], lit.figures.windows[0], lit.light, {.width = 400.0, .height = 400.0});
}

std::vector<Stroke> parts(const Elevation& drawing, const std::string& part, Form form) {
    std::vector<Stroke> found;
    std::ranges::copy_if(drawing.strokes, std::back_inserter(found),
                         [&](const Stroke& stroke) { return stroke.part == part && stroke.form == form; });
    return found;
}

/// A point of the drawing in mm: from the opening’s left edge, over the sill.
Point over_sill(const Elevation& drawing, Point at) {
    return {(at.x - drawing.origin.x) / drawing.scale, (drawing.origin.y - at.y) / drawing.scale - 900.0};
}

}  // namespace

// At noon of an equinox the sun stands 90° less the latitude up in the south: from half the opening’s height back that
// is 500 tan 38.5° over the sill, in its middle.
TEST(SunDrawing, HasTheEquinoxNoonWhereGeometryHasIt) {
    const Elevation drawing = drawn(lit(london_house("180")));
    double nearest = 1e9;
    Point best;
    for (const Stroke& mark : parts(drawing, "sun", Form::circle)) {
        const Point at = over_sill(drawing, mark.points[0]);
        const double off = std::hypot(at.x - 600.0, at.y - 500.0 * std::tan(38.5 * std::acos(-1.0) / 180.0));
        if (off < nearest) {
            nearest = off;
            best = at;
        }
    }
    EXPECT_LT(nearest, 25.0) << best.x << " " << best.y;  // 21 March, 12:00 by the clock: 8 minutes before true noon
}

TEST(SunDrawing, HasNoSunInANorthWindowInDecember) {
    const Elevation drawing = drawn(lit(london_house("0")));
    EXPECT_NE(drawing.description.find("21 December: the sun doesn’t stand in it."), std::string::npos)
        << drawing.description;
    EXPECT_NE(drawing.description.find("21 March: the sun doesn’t stand in it."), std::string::npos);
}

// A house over all the view up to 80° leaves no sun in the window: its ways are dotted everywhere.
TEST(SunDrawing, DotsWhatAHouseHides) {
    const Elevation drawing =
        drawn(lit(london_house("180", R"({"skyline": [{"from_deg": -90, "to_deg": 90, "height_deg": 80}]})")));
    EXPECT_TRUE(parts(drawing, "sun", Form::circle).empty());
    for (const Stroke& way : parts(drawing, "sun", Form::polyline)) {
        EXPECT_EQ(way.role, Role::guide);
    }
    EXPECT_FALSE(parts(drawing, "skyline", Form::line).empty());
}

// The spots’ areas are the hours: added up with the days of each month they make the year’s sum again.
TEST(SunCalendar, HasAsMuchInItsSpotsAsTheTable) {
    const Lit one = lit(london_house("200"));
    const Elevation calendar = sun_calendar_of(one.light, {.width = 400.0, .height = 400.0});
    const auto spots = parts(calendar, "hours", Form::circle);
    ASSERT_FALSE(spots.empty());
    double largest = 0.0;
    for (const Stroke& spot : spots) {
        largest = std::max(largest, spot.radius);
    }
    constexpr std::array<double, 12> days{31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    const double top = spots.front().points[0].y;
    const double cell = largest / 0.46;
    double hours = 0.0;
    for (const Stroke& spot : spots) {
        const auto month = static_cast<std::size_t>(std::lround((spot.points[0].y - top) / cell));
        hours += spot.filled && spot.role == Role::ink ? days.at(month) * std::pow(spot.radius / largest, 2) : 0.0;
    }
    EXPECT_NEAR(hours, sum(one.light.hours->on_cloth), 0.02 * hours);
}

TEST(LightSheet, WritesTheFiguresThatWereWorked) {
    const Lit one = lit(london_house("180"));
    const auto sheets = sheets_of(one.survey, one.figures, {SheetKind::light, "", "", ""});
    ASSERT_EQ(sheets.size(), 1U);
    const auto cell = [&](const char* figure) {
        const SheetCell* found = find_cell(sheets[0], figure);
        return found == nullptr ? std::string("none") : found->text;
    };
    EXPECT_EQ(cell("light.year.glass_h"), std::to_string(std::lround(sum(one.light.hours->on_glass))));
    double quarters = 0.0;
    for (const int quarter : {1, 2, 3, 4}) {
        quarters += std::stod(cell(("light.quarter." + std::to_string(quarter) + ".glass_h").c_str()));
    }
    EXPECT_NEAR(quarters, sum(one.light.hours->on_glass), 2.5);  // each is rounded
    EXPECT_EQ(cell("light.least_pct"), "1.5 %");                 // BS 8206-2, living room
    EXPECT_NE(cell("light.open_pct"), "none");
    EXPECT_EQ(cell("light.longer_pct"), "none");
}

TEST(LightSheet, SaysWhatWouldTellMoreWhereNothingIsKnown) {
    Survey survey = london_house("180");
    survey.site.reset();
    survey.rooms[0].interior.reset();
    const Figures figures = work_out(survey);
    const Sheet sheet = light_sheet(survey, figures, 0);
    ASSERT_FALSE(sheet.parts.empty());
    const auto* words = std::get_if<SheetWords>(&sheet.parts.back());
    ASSERT_NE(words, nullptr);
    EXPECT_EQ(words->lines.size(), 2U);
    EXPECT_EQ(find_cell(sheet, "light.year.glass_h"), nullptr);
}

}  // namespace truehang
