// SPDX-License-Identifier: Apache-2.0
#include "light/window_light.h"

#include "light/light_advice.h"
#include "light/panes.h"
#include "light/zone.h"
#include "references.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>

using namespace truehang;
using namespace truehang::test;
using namespace std::chrono_literals;

namespace {

using Json = nlohmann::json;

Json reading(const std::string& station, double mm) { return {{"station", station}, {"value_mm", mm}}; }

/// A house with one room of one window, 1240 × 1130 in a recess of 200, at 54.6° N, 1.1° W.
Json house() {
    const Json window = {
        {"id", "w"},
        {"shape", "recess"},
        {"bearing_deg", 180},
        {"bearing_from", "plan"},
        {"readings",
         {reading("opening.width.top", 1240), reading("opening.height.left", 1130), reading("opening.depth", 200)}}};
    return {{"format", "truehang.survey/1"},
            {"id", "s"},
            {"site", {{"latitude", 54.6}, {"longitude", -1.1}}},
            {"measured_at", "2026-04-21T09:40:00+01:00"},
            {"time_zone", "Europe/London"},
            {"fabrics", Json::array()},
            {"rooms", {{{"id", "r"}, {"use", "living room"}, {"windows", {window}}}}}};
}
Json& window_of(Json& house) { return house["rooms"][0]["windows"][0]; }
Json room_of_light_md() { return {{"width_mm", 4000}, {"depth_mm", 5000}, {"height_mm", 2500}}; }

Survey read(const Json& house) { return read_survey(house.dump()).value(); }

WindowLight worked(
    const Survey& survey, const std::function<void(WindowFigures&)>& change = [](WindowFigures&) {}) {
    Figures figures = work_out(survey);
    change(figures.windows.front());
    const auto of = [&](const Window& window) -> const WindowFigures* {
        const auto found = std::ranges::find(figures.windows, window.id, &WindowFigures::id);
        return found == figures.windows.end() ? nullptr : &*found;
    };
    return light_of(survey, survey.rooms.front(), survey.rooms.front().windows.front(), of);
}
WindowLight worked(const Json& house) { return worked(read(house)); }

bool mentions(const std::vector<std::string>& sentences, std::string_view part) {
    return std::ranges::any_of(sentences, [&](const std::string& one) { return one.find(part) != std::string::npos; });
}

}  // namespace

// Directive 2000/84/EC, kept by the United Kingdom: from the last Sunday of March to that of October, at 1:00 UTC.
TEST(Zone, ChangesAsTheLawHasIt) {
    auto offset = offset_in("Europe/London").value();
    EXPECT_EQ(offset(utc("2026-03-29T00:59:59Z")), 0s);
    EXPECT_EQ(offset(utc("2026-03-29T01:00:00Z")), 1h);
    EXPECT_EQ(offset(utc("2026-10-25T00:59:59Z")), 1h);
    EXPECT_EQ(offset(utc("2026-10-25T01:00:00Z")), 0s);
    EXPECT_EQ(offset(utc("2026-07-01T12:00:00Z")), 1h);  // back in time again
}

TEST(Zone, KnowsTheDateLineAndQuarterHours) {
    EXPECT_EQ(offset_in("Pacific/Kiritimati").value()(utc("2026-01-01T00:00:00Z")), 14h);
    EXPECT_EQ(offset_in("Asia/Kathmandu").value()(utc("2026-01-01T00:00:00Z")), 5h + 45min);
    EXPECT_FALSE(offset_in("Ferrymouth/Quay"));
    EXPECT_FALSE(offset_in(""));
    EXPECT_FALSE(offset_in("../../etc/passwd"));
    EXPECT_EQ(offset_by_sun(Angle::degrees(-75.0))(Moment()), -5h);
}

// Facets turn with the corners of the bay: three of 800 with inside angles of 135° stand 45° to each other, the left
// one looking to the left.
TEST(WindowLight, TurnsTheFacetsOfABay) {
    Json survey = house();
    window_of(survey)["shape"] = "bay";
    window_of(survey)["readings"] = {reading("facet.1.width", 800), reading("facet.2.width", 800),
                                     reading("facet.3.width", 800), reading("facet.1.height", 1200)};
    for (const int corner : {1, 2}) {
        window_of(survey)["readings"].push_back(
            {{"station", fmt::format("corner.{}.angle_deg", corner)}, {"value_deg", 135}});
    }
    const auto light = worked(survey);
    ASSERT_EQ(light.panes.size(), 3U);
    EXPECT_NEAR(light.panes[0].opening.bearing.degrees(), 135.0, 0.1);
    EXPECT_NEAR(light.panes[1].opening.bearing.degrees(), 180.0, 0.1);
    EXPECT_NEAR(light.panes[2].opening.bearing.degrees(), 225.0, 0.1);
    for (const Pane& pane : light.panes) {
        EXPECT_LT(pane.hours_on_glass, sum(light.hours->on_glass));
    }
    EXPECT_LE(sum(light.hours->on_glass), sum(light.hours->up));
    // What looks to both sides has more sun than the middle alone.
    window_of(survey)["outlook"]["skyline"] = {{{"from_deg", -45}, {"to_deg", 45}, {"height_deg", 20}}};
    const auto behind = worked(survey);
    ASSERT_EQ(behind.panes[0].opening.skyline.size(), 1U);
    EXPECT_NEAR(behind.panes[0].opening.skyline[0].from.degrees(), 0.0, 0.1);
    EXPECT_NEAR(behind.panes[0].opening.skyline[0].to.degrees(), 90.0, 0.1);
}

// The room of the worked example (BS 8206-2’s formula, derived by hand): 4 × 5 × 2.5 m, glass 2.4 m², θ 65°, T 0.7, M
// 0.9, R 0.5 make 1.542 %; a stack over a quarter of the glass leaves 1.156 %.
TEST(WindowLight, HasTheDaylightOfTheWorkedExample) {
    Json survey = house();
    const double outer_depth = 600.0 * std::tan(25.0 * std::numbers::pi / 180.0);  // the head takes 25° of the sky
    window_of(survey)["outlook"] = {
        {"glass_width_mm", 2000}, {"glass_height_mm", 1200}, {"outer_depth_mm", outer_depth}};
    window_of(survey)["readings"] = {reading("opening.width.top", 2000), reading("opening.height.left", 1200)};
    survey["rooms"][0]["interior"] = room_of_light_md();
    const auto light = worked(read(survey), [](WindowFigures& figures) {
        LayerFigures layer;
        layer.finished = Finished{.curtains = 2, .width = {}, .drop = {}, .width_u = {}, .drop_u = {}};
        layer.covers_glass = Length::mm(250.0);
        figures.layers = {layer};
    });
    ASSERT_TRUE(light.daylight);
    EXPECT_NEAR(light.daylight->open, 1.542, 0.0005);
    EXPECT_NEAR(light.daylight->drawn_back.value(), 1.156, 0.0006);
    EXPECT_EQ(light.daylight->least, 1.5);
    EXPECT_TRUE(light.daylight->room_whole);
    // Below what BS 8206-2 asks of a living room: said, with its reason.
    ASSERT_FALSE(light.advice.empty());
    EXPECT_NE(light.advice.back().reason.find("1.2 %"), std::string::npos) << light.advice.back().reason;
}

// A hill of 20° right across takes 20° of the sky; one that stands over half the view, weighted by the cosine, half.
TEST(WindowLight, LosesSkyToWhatStandsOutside) {
    const auto block = [](double from, double to) {
        return SkyBlock{Angle::degrees(from), Angle::degrees(to), Angle::degrees(20.0)};
    };
    EXPECT_NEAR(mean_height({block(-90.0, 90.0)}).degrees(), 20.0, 1e-9);
    EXPECT_NEAR(mean_height({block(0.0, 90.0)}).degrees(), 10.0, 1e-9);
    EXPECT_NEAR(mean_height({block(-30.0, 30.0)}).degrees(), 20.0 * std::sin(std::numbers::pi / 6.0), 0.1);
    EXPECT_EQ(mean_height({}).degrees(), 0.0);
}

TEST(WindowLight, SaysWhatIsWantedAndNeverFails) {
    Json survey = house();
    survey.erase("site");
    window_of(survey).erase("bearing_deg");
    window_of(survey)["readings"] = Json::array();
    const auto light = worked(survey);
    EXPECT_FALSE(light.hours);
    EXPECT_FALSE(light.daylight);
    EXPECT_EQ(light.wanted.size(), 4U);
    EXPECT_TRUE(light.advice.empty());
    EXPECT_FALSE(light.facing.bearing);
}

TEST(WindowLight, HasALongerPoleFromTheChoices) {
    Json survey = house();
    survey["fabrics"] = {{{"id", "f"}, {"width_mm", 1400}, {"role", "face"}, {"blue_wool", 4}, {"name", "Sailcloth"}}};
    survey["rooms"][0]["interior"] = room_of_light_md();
    window_of(survey)["readings"] = {reading("opening.width.top", 1240), reading("opening.height.left", 1130),
                                     reading("below.left", 860), reading("pole.above", 80)};
    window_of(survey)["hardware"] = {{"kind", "pole"}, {"length_mm", 1400}, {"diameter_mm", 28}};
    window_of(survey)["treatment"] = {{"heading", "tab"}, {"fabric", "f"}, {"length", "floor"}};
    const auto light = worked(survey);
    ASSERT_TRUE(light.daylight);
    ASSERT_TRUE(light.daylight->longer_length);
    EXPECT_LT(light.daylight->drawn_back.value(), light.daylight->open);
    EXPECT_NEAR(light.daylight->longer.value(), light.daylight->open, 0.01 * light.daylight->open);
    std::vector<std::string> texts;
    for (const auto& one : light.advice) {
        texts.push_back(one.text);
        EXPECT_FALSE(one.reason.empty());
    }
    EXPECT_TRUE(mentions(texts, "A pole "));
    EXPECT_TRUE(mentions(texts, "Sailcloth stands in the sun with blue wool class 4: line it, or choose 6 or better."));
}

TEST(WindowLight, AsksLessOfANorthWindow) {
    Json survey = house();
    window_of(survey)["bearing_deg"] = 0;
    const auto light = worked(survey);
    ASSERT_EQ(light.advice.size(), 1U);
    EXPECT_NE(light.advice[0].text.find("class 4"), std::string::npos);
    EXPECT_NE(light.advice[0].reason.find("Facing north"), std::string::npos);
    EXPECT_EQ(light.sunlight->hours, 0.0);
    EXPECT_LT(light.strongest_w_m2.value(), 500.0);
}

// Nothing can be nonsense at the ends of the earth.
TEST(WindowLight, HoldsAtThePoleAndAcrossTheDateLine) {
    for (const auto& [latitude, longitude] : {std::pair(90.0, 0.0), std::pair(-90.0, 180.0), std::pair(-17.0, 180.0),
                                              std::pair(-17.0, -180.0), std::pair(69.6, 18.9)}) {
        Json survey = house();
        survey["site"] = {{"latitude", latitude}, {"longitude", longitude}};
        survey["time_zone"] = "Pacific/Fiji";
        const auto light = worked(survey);
        ASSERT_TRUE(light.hours);
        EXPECT_GE(sum(light.hours->on_glass), sum(light.hours->on_cloth));
        EXPECT_GT(sum(light.hours->up), 4300.0);
        EXPECT_LT(sum(light.hours->up), 4700.0);
    }
}

TEST(WindowLight, SaysThatItDoesNotKnowTheZone) {
    Json survey = house();
    survey["time_zone"] = "Ferrymouth/Quay";
    const auto light = worked(survey);
    ASSERT_TRUE(light.hours);
    EXPECT_TRUE(mentions(light.assumed, "time zone"));
    EXPECT_FALSE(mentions(worked(house()).assumed, "time zone"));
}
