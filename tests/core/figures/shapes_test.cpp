// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"
#include "figures/figures.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <string>
#include <vector>

namespace truehang {
namespace {

using Json = nlohmann::ordered_json;

Json reading(const std::string& station, double value) {
    return {{"station", station}, {station.ends_with("_deg") ? "value_deg" : "value_mm", value}};
}

/// One window with what hangs there, as a document.
Json survey_of(const std::string& shape, const std::vector<Json>& readings) {
    Json window{{"id", "w"}, {"shape", shape}, {"readings", readings}};
    window["hardware"] = {{"kind", "track"}, {"length_mm", 1668}, {"projection_mm", 80}};
    window["treatment"] = {{"heading", "pencil-pleat"}, {"fullness", 2.0}, {"length", "floor"}, {"fabric", "linen"}};
    return {{"format", "truehang.survey/1"},
            {"id", "s"},
            {"fabrics", Json::array({{{"id", "linen"}, {"width_mm", 1400}}})},
            {"rooms", Json::array({{{"id", "r"}, {"windows", Json::array({window})}}})}};
}

Json worked(const Json& document) {
    const auto survey = read_survey(document.dump());
    EXPECT_TRUE(survey.ok());
    return Json::parse(write_figures(work_out(survey.value())))["windows"][0];
}

bool is_flagged(const Json& window, const std::string& code, const std::string& severity) {
    return std::ranges::any_of(window["flags"],
                               [&](const Json& flag) { return flag["code"] == code && flag["severity"] == severity; });
}

Json size_of(const Json& window, const std::string& name) {
    for (const Json& size : window["sizes"]) {
        if (size["name"] == name) {
            return size;
        }
    }
    return nullptr;
}

std::vector<Json> bay_readings() {
    return {reading("facet.1.width", 600),      reading("facet.2.width", 600),      reading("facet.3.width", 600),
            reading("corner.1.angle_deg", 135), reading("corner.2.angle_deg", 135), reading("bay.chord", 1448.528),
            reading("facet.1.height", 1200),    reading("below.left", 900),         reading("pole.above", 150)};
}

// Half an octagon of 600: track 1800 - 320 tan 22.5 = 1667.45 (derived). The glider's eye hangs at 900 + 1200 + 150,
// the top edge 20 over it, the hem 10 over the floor: 2260. Two curtains on 1668.
TEST(BayFigures, WorkSizesChecksAndCurtains) {
    const Json window = worked(survey_of("bay", bay_readings()));
    EXPECT_NEAR(size_of(window, "corner.1.angle_deg")["deg"].get<double>(), 135.0, 0.005);
    EXPECT_FALSE(size_of(window, "corner.1.angle_deg").contains("mm"));
    EXPECT_NEAR(size_of(window, "bay.track")["mm"].get<double>(), 1667.45, 0.005);
    EXPECT_EQ(window["checks"].back()["network"], "bay");
    EXPECT_EQ(window["checks"].back()["adds_up"], true);
    EXPECT_EQ(window["finished"]["drop_mm"], 2260);
    EXPECT_EQ(window["finished"]["width_mm"], 834);
    EXPECT_FALSE(is_flagged(window, "not-understood", "stop"));
    EXPECT_TRUE(is_flagged(window, "not-checked", "note"));
}

TEST(BayFigures, SayAnAnglesMisclosureInDegrees) {
    auto readings = bay_readings();
    readings[3] = reading("corner.1.angle_deg", 153);
    readings.push_back(reading("mouth.left.angle_deg", 45));
    readings.push_back(reading("mouth.right.angle_deg", 45));
    const Json check = worked(survey_of("bay", readings))["checks"].back();
    EXPECT_EQ(check["adds_up"], false);
    EXPECT_GT(check["off_by_deg"].get<double>(), 10.0);
    EXPECT_FALSE(check.contains("off_by_mm"));
}

TEST(BayFigures, NameTheReadingsThatADropLacks) {
    auto readings = bay_readings();
    readings.erase(readings.begin() + 6);
    const Json window = worked(survey_of("bay", readings));
    EXPECT_TRUE(window["finished"].is_null());
    EXPECT_EQ(window["next"]["station"], "facet.1.height");
}

TEST(ShapeFigures, RefuseStationsThatTheShapeHasnt) {
    for (const auto* station : {"facet.10.width", "facet.0.width", "opening.diagonal.rising", "corner.chord"}) {
        auto readings = bay_readings();
        readings.push_back(reading(station, 600));
        const Json window = worked(survey_of("bay", readings));
        EXPECT_TRUE(is_flagged(window, "not-understood", "stop")) << station;
        EXPECT_TRUE(window["finished"].is_null()) << station;
        EXPECT_FALSE(size_of(window, "bay.chord").is_null()) << station;
    }
    auto readings = bay_readings();
    readings.push_back(reading("facet.1.angle_deg", 90));
    EXPECT_TRUE(is_flagged(worked(survey_of("bay", readings)), "not-understood", "stop"));
}

TEST(ShapeFigures, RefuseWhatCantHangThere) {
    for (const auto* shape : {"bay", "corner", "arch", "gable"}) {
        Json blind = survey_of(shape, {});
        auto& window = blind["rooms"][0]["windows"][0];
        window["treatment"]["heading"] = "roman";
        window["treatment"]["fit"] = "inside";
        const Json figures = worked(blind);
        EXPECT_TRUE(is_flagged(figures, "not-understood", "stop")) << shape;
        EXPECT_TRUE(figures["finished"].is_null()) << shape;
        EXPECT_FALSE(is_flagged(figures, "missing-reading", "stop")) << shape;
    }
    Json parallel = survey_of("arch", {});
    parallel["rooms"][0]["windows"][0]["hardware"]["hang"] = "head";
    EXPECT_TRUE(is_flagged(worked(parallel), "not-understood", "stop"));
}

// The crown at 900 + 1700, the pole 120 over it: 2720 + 20 - 10. Springings and crown differ by the rise: no floor out
// of level.
TEST(ArchFigures, WorkFormRadiusAndCurtains) {
    const Json window = worked(survey_of(
        "arch",
        {reading("opening.width.top", 1000), reading("opening.height.left", 1200),
         reading("opening.height.right", 1200), reading("opening.height.centre", 1700), reading("arch.rise", 500),
         reading("ordinate.1.along", 200), reading("ordinate.1.height", 400), reading("below.left", 900),
         reading("below.centre", 900), reading("below.right", 900), reading("pole.above.centre", 120)}));
    EXPECT_EQ(window["form"], "semicircle");
    EXPECT_NEAR(size_of(window, "arch.radius")["mm"].get<double>(), 500.0, 0.01);
    EXPECT_NEAR(size_of(window, "head.left")["mm"].get<double>(), 2100.0, 0.01);
    EXPECT_NEAR(size_of(window, "head.centre")["mm"].get<double>(), 2600.0, 0.01);
    EXPECT_EQ(window["finished"]["drop_mm"], 2730);
    EXPECT_FALSE(is_flagged(window, "floor-not-level", "decide"));
    EXPECT_FALSE(is_flagged(window, "reading-spread", "decide"));
}

TEST(ArchFigures, AskForThePoleOverTheCrown) {
    const Json window = worked(survey_of(
        "arch", {reading("opening.width.top", 1000), reading("opening.height.left", 1200), reading("below.left", 900),
                 reading("opening.height.centre", 1700), reading("below.centre", 900)}));
    EXPECT_EQ(window["next"]["station"], "pole.above.centre");
}

// Feet at 1000, apex at 2200 and 500 along of 1400: 1300 and 1500 (Pythagoras).
TEST(GableFigures, WorkSizesAndChecks) {
    const Json window =
        worked(survey_of("gable", {reading("opening.width.bottom", 1400), reading("opening.height.left", 1000),
                                   reading("opening.height.right", 1000), reading("opening.height.centre", 2200),
                                   reading("gable.apex.along", 500), reading("gable.slope.left", 1300),
                                   reading("gable.slope.right", 1500), reading("below.centre", 300),
                                   reading("pole.above.centre", 100)}));
    EXPECT_EQ(window["checks"].back()["network"], "gable");
    EXPECT_EQ(window["checks"].back()["adds_up"], true);
    EXPECT_NEAR(size_of(window, "gable.slope.right")["mm"].get<double>(), 1500.0, 0.01);
    EXPECT_EQ(window["finished"]["drop_mm"], 2610);
}

TEST(ShapeDocuments, AskForTheValueThatAStationHas) {
    const auto refused = [](const Json& at) { return !read_survey(survey_of("bay", {at}).dump()).ok(); };
    EXPECT_TRUE(refused({{"station", "corner.1.angle_deg"}, {"value_mm", 135}}));
    EXPECT_TRUE(refused({{"station", "mouth.left.angle_deg"}, {"value_mm", 45}}));
    EXPECT_TRUE(refused({{"station", "corner.1.angle_deg"}, {"value_deg", 361}}));
    EXPECT_TRUE(refused({{"station", "corner.1.angle_deg"}, {"value_deg", -1}}));
    EXPECT_TRUE(refused({{"station", "corner.1.angle_deg"}, {"value_deg", "135"}}));
    EXPECT_TRUE(refused({{"station", "facet.1.width"}, {"value_deg", 135}}));
    EXPECT_FALSE(refused({{"station", "corner.1.angle_deg"}, {"value_deg", 135}, {"how", "estimated"}, {"u_deg", 2}}));
}

// The house's angle_u_deg in place of the default, common practice without source.
TEST(ShapeFigures, KnowAnglesAsWellAsTheHouseSays) {
    Json document = survey_of("bay", {reading("corner.1.angle_deg", 135)});
    EXPECT_NEAR(size_of(worked(document), "corner.1.angle_deg")["u_deg"].get<double>(), 0.5, 1e-9);
    document["rules"] = {{"angle_u_deg", 1.5}};
    EXPECT_NEAR(size_of(worked(document), "corner.1.angle_deg")["u_deg"].get<double>(), 1.5, 1e-9);
}

}  // namespace
}  // namespace truehang
