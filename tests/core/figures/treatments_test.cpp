// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"
#include "figures/figures.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <vector>

// Bent runs, shaped tops, a drop at each plumb line, layers against each other, a pole that is up.

namespace truehang {
namespace {

using Json = nlohmann::ordered_json;

Json reading(const std::string& station, double value) {
    return {{"station", station}, {station.ends_with("_deg") ? "value_deg" : "value_mm", value}};
}

Json fixed(const std::string& station, double value) {
    Json taken = reading(station, value);
    taken["stage"] = "fixed";
    return taken;
}

Json survey_of(const std::string& shape, const std::vector<Json>& readings, const Json& hardware,
               const Json& treatment) {
    Json window{{"id", "w"}, {"shape", shape}, {"readings", readings}};
    window["hardware"] = hardware;
    window["treatment"] = treatment;
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

const Json* flag_of(const Json& window, const std::string& code) {
    const auto found = std::ranges::find_if(window["flags"], [&](const Json& flag) { return flag["code"] == code; });
    return found == window["flags"].end() ? nullptr : &*found;
}

std::string said(const Json& window, const std::string& code) {
    const Json* flag = flag_of(window, code);
    return flag == nullptr ? "" : (*flag)["severity"].get<std::string>() + ": " + (*flag)["text"].get<std::string>();
}

bool says(const Json& window, const std::string& code, const std::string& words) {
    return said(window, code).find(words) != std::string::npos;
}

std::vector<Json> octagon() {
    return {reading("facet.1.width", 600),      reading("facet.2.width", 600),      reading("facet.3.width", 600),
            reading("corner.1.angle_deg", 135), reading("corner.2.angle_deg", 135), reading("bay.chord", 1448.528),
            reading("facet.1.height", 1200),    reading("below.left", 900),         reading("pole.above", 150)};
}

Json bent(const std::string& kind) {
    return {{"kind", kind}, {"run", "bent"}, {"diameter_mm", 28}, {"projection_mm", 80}};
}

Json curtains(const std::string& heading) {
    return {{"heading", heading}, {"fullness", 2.0}, {"length", "floor"}, {"fabric", "linen"}};
}

// Half an octagon of 600, 80 off the wall (derived): a corner that turns by 45 takes 80 tan 22.5 = 33.137 of each of
// its facets. Legs 566.863, 533.726, 566.863; joints at 566.863 and 1100.589, in all 1667.452.
TEST(BentRuns, FollowTheFacetsAtTheirDistance) {
    const Json window = worked(survey_of("bay", octagon(), bent("pole"), curtains("pinch-pleat")));
    const Json& run = window["run"];
    EXPECT_NEAR(run["length_mm"].get<double>(), 1667.45, 0.011);
    EXPECT_GT(run["u_mm"].get<double>(), 0.5);
    EXPECT_NEAR(run["bends"][0]["at_mm"].get<double>(), 566.86, 0.011);
    EXPECT_NEAR(run["bends"][1]["at_mm"].get<double>(), 1100.59, 0.011);
    EXPECT_NEAR(run["bends"][1]["angle_deg"].get<double>(), 135.0, 0.011);
    EXPECT_EQ(run["joints_mm"].size(), 2U);
    EXPECT_EQ(window["finished"]["width_mm"], 834);
    EXPECT_GT(window["finished"]["width_u_mm"].get<double>(), 0.25);
    EXPECT_EQ(flag_of(window, "tab-centre-bracket"), nullptr);
}

// A pair that parts in the middle has to pass both joints of a bay of three; a corner's one joint stands where it
// parts.
TEST(BentRuns, StopTabsAtThePolesJoints) {
    const Json tabs = worked(survey_of("bay", octagon(), bent("pole"), curtains("tab")));
    EXPECT_TRUE(says(tabs, "tab-centre-bracket", "567 mm, 1101 mm along"));
    const Json track = worked(survey_of("bay", octagon(), bent("track"), curtains("s-fold")));
    EXPECT_EQ(flag_of(track, "tab-centre-bracket"), nullptr);
    EXPECT_TRUE(track["run"]["joints_mm"].empty());
    const std::vector<Json> corner{reading("facet.1.width", 900),     reading("facet.2.width", 900),
                                   reading("corner.1.angle_deg", 90), reading("facet.1.height", 1200),
                                   reading("below.left", 900),        reading("pole.above", 150)};
    EXPECT_EQ(flag_of(worked(survey_of("corner", corner, bent("pole"), curtains("eyelet"))), "tab-centre-bracket"),
              nullptr);
    Json single = curtains("eyelet");
    single["layout"] = "single";
    EXPECT_NE(flag_of(worked(survey_of("corner", corner, bent("pole"), single)), "tab-centre-bracket"), nullptr);
}

TEST(BentRuns, SayWhatIsMissingAndWhatCantBe) {
    auto readings = octagon();
    readings.erase(readings.begin() + 4, readings.begin() + 6);
    const Json unread = worked(survey_of("bay", readings, bent("track"), curtains("s-fold")));
    EXPECT_TRUE(unread["finished"].is_null());
    EXPECT_EQ(unread["next"]["station"], "corner.2.angle_deg");
    Json far = bent("track");
    far["projection_mm"] = 800;
    EXPECT_TRUE(says(worked(survey_of("bay", octagon(), far, curtains("s-fold"))), "impossible", "Hang it nearer"));
    far.erase("projection_mm");
    EXPECT_TRUE(says(worked(survey_of("bay", octagon(), far, curtains("s-fold"))), "missing-reading", "off the wall"));
    EXPECT_TRUE(says(worked(survey_of("recess", {}, bent("track"), curtains("s-fold"))), "impossible", "no corner"));
    Json given = bent("track");
    given["length_mm"] = 1720;
    EXPECT_TRUE(says(worked(survey_of("bay", octagon(), given, curtains("s-fold"))), "run-differs", "1720"));
}

/// A floor that falls by 24 from left to right under a level pole.
std::vector<Json> sloping() {
    return {reading("below.left", 900),   reading("opening.height.left", 1200),   reading("level.left", 1000),
            reading("below.centre", 912), reading("opening.height.centre", 1200), reading("level.centre", 1012),
            reading("below.right", 924),  reading("opening.height.right", 1200),  reading("level.right", 1024),
            reading("pole.above", 150)};
}

Json track(double length) { return {{"kind", "track"}, {"length_mm", length}, {"projection_mm", 80}}; }

// Glider's eye 2250 above the floor on the left, 2262 and 2274 on the other lines; hook 20, clearance 10 (trade rules,
// section 4).
TEST(LineDrops, FollowTheFloorAndCutTheLongest) {
    Json asked = curtains("pencil-pleat");
    const Json one = worked(survey_of("recess", sloping(), track(1600), asked));
    EXPECT_EQ(one["finished"]["drop_mm"], 2260);
    EXPECT_TRUE(said(one, "floor-not-level").starts_with("decide"));
    EXPECT_FALSE(one["finished"].contains("drops_mm"));
    asked["drops"] = "per-line";
    const Json window = worked(survey_of("recess", sloping(), track(1600), asked));
    const Json& drops = window["finished"]["drops_mm"];
    ASSERT_EQ(drops.size(), 3U);
    EXPECT_EQ(drops[0]["mm"], 2260);
    EXPECT_EQ(drops[1]["mm"], 2272);
    EXPECT_EQ(drops[2]["mm"], 2284);
    EXPECT_EQ(drops[1]["curtains"], Json::array({"left", "right"}));
    EXPECT_EQ(drops[2]["curtains"], Json::array({"right"}));
    EXPECT_EQ(window["finished"]["drop_mm"], 2284);
    // 2284 and 75 for the head, 150 for the hem.
    EXPECT_EQ(window["cloth"]["cut_drop_mm"], 2509);
    EXPECT_TRUE(said(window, "floor-not-level").starts_with("note"));
}

TEST(LineDrops, SayWhereThereIsOneLineOnly) {
    Json asked = curtains("pencil-pleat");
    asked["drops"] = "per-line";
    const Json window = worked(survey_of("recess",
                                         {reading("below.left", 900), reading("opening.height.left", 1200),
                                          reading("pole.above", 150), reading("opening.width.top", 1200)},
                                         track(1600), asked));
    EXPECT_EQ(window["finished"]["drops_mm"].size(), 1U);
    EXPECT_TRUE(says(window, "not-checked", "one plumb line only"));
}

std::vector<Json> semicircle() {
    return {reading("opening.width.top", 1000),
            reading("opening.height.left", 1200),
            reading("opening.height.right", 1200),
            reading("opening.height.centre", 1700),
            reading("arch.rise", 500),
            reading("ordinate.1.along", 200),
            reading("ordinate.1.height", 400),
            reading("below.left", 900),
            reading("below.centre", 900),
            reading("below.right", 900)};
}

Json shaped(const std::string& heading) {
    Json asked = curtains(heading);
    asked["top"] = "shaped";
    return asked;
}

// A semicircle of radius 500 on springings 2100 above the floor, hem 10 above it: so far across x the drop is
// 2090 + sqrt(500^2 - (x - 500)^2); at 200 across that is 2490 (a 3-4-5 triangle), at 500 2590.
TEST(ShapedTops, FollowASemicircle) {
    const Json window = worked(survey_of("arch", semicircle(), nullptr, shaped("pencil-pleat")));
    EXPECT_EQ(window["finished"]["width_mm"], 500);
    EXPECT_EQ(window["finished"]["drop_mm"], 2590);
    ASSERT_EQ(window["top"]["curtains"].size(), 2U);
    const Json& left = window["top"]["curtains"][0];
    const double fullness = window["cloth"]["flat_mm"].get<double>() / 500.0;
    for (const Json& point : left["points"]) {
        const double x = point["hung_mm"].get<double>();
        EXPECT_NEAR(point["drop_mm"].get<double>(), 2090.0 + std::sqrt(250000.0 - (x - 500.0) * (x - 500.0)), 0.02);
        EXPECT_NEAR(point["flat_mm"].get<double>(), x * fullness, 0.02);
    }
    EXPECT_EQ(left["side"], "left");
    EXPECT_NEAR(left["points"][2]["drop_mm"].get<double>(), 2490.0, 0.02);
    EXPECT_NEAR(left["points"].back()["drop_mm"].get<double>(), 2590.0, 0.02);
    EXPECT_TRUE(says(window, "shaped-top", "doesn’t draw"));
    EXPECT_EQ(flag_of(window, "missing-reading"), nullptr);
    EXPECT_EQ(flag_of(window, "stack-covers-glass"), nullptr);
}

// Feet at 1000 over the sill, apex 2200 at 500 of 1400; the sill 300 above the floor: the edges run straight.
TEST(ShapedTops, FollowAGable) {
    Json asked = shaped("box-pleat");
    asked["layout"] = "single";
    const Json window = worked(survey_of("gable",
                                         {reading("opening.width.bottom", 1400), reading("opening.height.left", 1000),
                                          reading("opening.height.right", 1000), reading("opening.height.centre", 2200),
                                          reading("gable.apex.along", 500), reading("below.left", 300),
                                          reading("below.centre", 300), reading("below.right", 300)},
                                         nullptr, asked));
    EXPECT_EQ(window["finished"]["width_mm"], 1400);
    EXPECT_EQ(window["finished"]["drop_mm"], 2490);
    for (const Json& point : window["top"]["curtains"][0]["points"]) {
        const double x = point["hung_mm"].get<double>();
        EXPECT_NEAR(point["drop_mm"].get<double>(), x <= 500 ? 1290 + 2.4 * x : 2490 - (x - 500) / 900 * 1200, 0.011);
    }
}

TEST(ShapedTops, RefuseWhatRunsStraight) {
    for (const auto* heading : {"tab", "eyelet", "slot", "s-fold"}) {
        const Json window = worked(survey_of("arch", semicircle(), nullptr, shaped(heading)));
        EXPECT_TRUE(says(window, "impossible", "can’t follow an arch")) << heading;
        EXPECT_TRUE(window["finished"].is_null()) << heading;
    }
    const Json pole{{"kind", "pole"}, {"diameter_mm", 28}, {"length_mm", 1000}};
    EXPECT_TRUE(says(worked(survey_of("arch", semicircle(), pole, shaped("goblet"))), "heading-hardware", "board"));
    EXPECT_TRUE(says(worked(survey_of("recess", {}, nullptr, shaped("goblet"))), "impossible", "no arch or slope"));
    EXPECT_EQ(worked(survey_of("arch", {}, nullptr, shaped("goblet")))["next"]["station"], "opening.width.top");
    Json short_one = shaped("goblet");
    short_one["length"] = "given";
    short_one["bottom_mm"] = 2150;
    EXPECT_TRUE(says(worked(survey_of("arch", semicircle(), nullptr, short_one)), "impossible", "no length"));
}

std::vector<Json> plain(const std::vector<Json>& pole) {
    std::vector<Json> readings{reading("below.left", 900), reading("opening.height.left", 1200),
                               reading("opening.width.top", 1200)};
    readings.insert(readings.end(), pole.begin(), pole.end());
    return readings;
}

// Planned 150 above the head: 2250 + 20 - 10 = 2260, cut 2485. Up, it hangs 22 higher: the hem of 150 keeps 128.
TEST(PoleUpFirst, SaysHowFarToLetTheHemDown) {
    const Json window = worked(survey_of("recess", plain({reading("pole.above", 150), fixed("pole.above", 172)}),
                                         track(1600), curtains("pencil-pleat")));
    const Json& planned = window["finished"]["planned"];
    EXPECT_EQ(window["finished"]["drop_mm"], 2282);
    EXPECT_EQ(planned["drop_mm"], 2260);
    EXPECT_EQ(planned["cut_drop_mm"], 2485);
    EXPECT_NEAR(planned["hem_left_mm"].get<double>(), 128.0, 0.01);
    EXPECT_FALSE(planned.contains("short_by_mm"));
    EXPECT_TRUE(says(window, "pole-moved", "let the hem down by 22 mm: 128 mm"));
    EXPECT_EQ(planned["says"], (*flag_of(window, "pole-moved"))["text"]);
}

// Of a hem of 150, 120 go: 30 aren't a hem. A new one wants 2380 + 75 + 150, that is 120 more than 2485.
TEST(PoleUpFirst, SaysWhenTheCutIsTooShort) {
    const Json window = worked(survey_of("recess", plain({reading("pole.above", 150), fixed("pole.floor", 2370)}),
                                         track(1600), curtains("pencil-pleat")));
    EXPECT_EQ(window["finished"]["drop_mm"], 2380);
    EXPECT_EQ(window["finished"]["planned"]["short_by_mm"], 120);
    EXPECT_TRUE(says(window, "pole-moved", "2485 mm is too short by 120 mm: cut again"));
    EXPECT_EQ(window["cloth"]["cut_drop_mm"], 2605);
}

// With a repeat of 640 four are cut, 2560: 75 more than the drop, head and hem took. They make up a hem of 105.
TEST(PoleUpFirst, CountsWhatWasCutForTheRepeat) {
    Json document = survey_of("recess", plain({reading("pole.above", 150), fixed("pole.floor", 2370)}), track(1600),
                              curtains("pencil-pleat"));
    document["fabrics"][0]["repeat_mm"] = 640;
    document["fabrics"][0]["match"] = "straight";
    EXPECT_TRUE(says(worked(document), "pole-moved", "75 mm cut for the repeat"));
}

TEST(PoleUpFirst, TakesUpAndKeepsStillWithinThree) {
    const auto with = [](double height) {
        return worked(survey_of("recess", plain({reading("pole.above", 150), fixed("pole.above", height)}), track(1600),
                                curtains("pencil-pleat")));
    };
    EXPECT_TRUE(says(with(130), "pole-moved", "take the hem up by 20 mm: 170 mm"));
    EXPECT_EQ(flag_of(with(153), "pole-moved"), nullptr);
    EXPECT_EQ(with(153)["finished"]["planned"]["drop_mm"], 2260);
    EXPECT_NE(flag_of(with(154), "pole-moved"), nullptr);
}

TEST(PoleUpFirst, AsksForTheHeightOnceItIsUp) {
    Json up = track(1600);
    up["stage"] = "fixed";
    const Json window = worked(survey_of("recess", plain({reading("pole.above", 150)}), up, curtains("pencil-pleat")));
    EXPECT_TRUE(said(window, "pole-to-measure").starts_with("remeasure"));
    EXPECT_EQ(window["next"]["station"], "pole.above");
    const Json done = worked(survey_of("recess", plain({reading("pole.above", 150), fixed("pole.above", 150)}), up,
                                       curtains("pencil-pleat")));
    EXPECT_EQ(flag_of(done, "pole-to-measure"), nullptr);
}

Json layered(const std::vector<Json>& layers, const std::vector<Json>& more = {}) {
    auto readings = plain({reading("pole.above", 150), reading("opening.height.right", 1200)});
    readings.insert(readings.end(), more.begin(), more.end());
    Json document = survey_of("recess", readings, nullptr, nullptr);
    Json& window = document["rooms"][0]["windows"][0];
    window.erase("hardware");
    window.erase("treatment");
    window["layers"] = layers;
    return document;
}

Json layer(const std::string& id, double projection, double length, const std::string& heading) {
    Json hung{{"id", id}, {"hardware", track(length)}, {"treatment", curtains(heading)}};
    hung["hardware"]["projection_mm"] = projection;
    return hung;
}

// Sheers at 60 ± 60 and curtains at 140 ± 40 (house practice): 120 meets 100.
TEST(Layers, AreHeldAgainstEachOther) {
    const Json fouled =
        worked(layered({layer("sheer", 60, 1500, "s-fold"), layer("outer", 140, 1600, "pencil-pleat")}));
    EXPECT_TRUE(says(fouled, "layers-foul", "layer 1 (s-fold) stands out to 120 mm"));
    EXPECT_TRUE(says(fouled, "layers-foul", "layer 2 (pencil pleated) begins at 100 mm"));
    EXPECT_TRUE(says(fouled, "layers-foul", "20 mm further off"));
    EXPECT_EQ((*flag_of(fouled, "layers-foul"))["layer"], "outer");
    const Json clear = worked(layered({layer("sheer", 60, 1500, "s-fold"), layer("outer", 160, 1600, "pencil-pleat")}));
    EXPECT_EQ(flag_of(clear, "layers-foul"), nullptr);
}

TEST(Layers, CoverOneAnother) {
    const Json window =
        worked(layered({layer("sheer", 60, 1600, "s-fold"), layer("outer", 200, 1560, "pencil-pleat")}));
    EXPECT_TRUE(says(window, "layers-foul", "20 mm on the left and 20 mm on the right"));
    auto below = layer("sheer", 60, 1500, "s-fold");
    auto outer = layer("outer", 200, 1600, "pencil-pleat");
    outer["treatment"]["length"] = "below-sill";
    const Json hems = worked(layered({below, outer}));
    EXPECT_TRUE(said(hems, "layers-foul").starts_with("note"));
}

// A blind of 1200 with 4 rods folds up 2 (12.5 + 12) = 49 deep.
TEST(Layers, KeepABlindWithinItsRecess) {
    const Json blind{{"id", "blind"},
                     {"hardware", {{"kind", "headrail"}}},
                     {"treatment", {{"heading", "roman"}, {"fit", "inside"}, {"fabric", "linen"}}}};
    const Json deep =
        worked(layered({blind, layer("outer", 80, 1600, "pencil-pleat")}, {reading("opening.depth", 40)}));
    EXPECT_EQ(deep["layers"][0]["blind"]["rods"], 4);
    EXPECT_TRUE(says(deep, "layers-foul", "deeper than its recess by 9 mm"));
    const Json fits =
        worked(layered({blind, layer("outer", 80, 1600, "pencil-pleat")}, {reading("opening.depth", 60)}));
    EXPECT_EQ(flag_of(fits, "layers-foul"), nullptr);
}

TEST(TreatmentWords, ThatArentKnownStopTheLayer) {
    Json asked = curtains("pencil-pleat");
    asked["drops"] = "each";
    EXPECT_TRUE(says(worked(survey_of("recess", sloping(), track(1600), asked)), "not-understood", "each"));
}

}  // namespace
}  // namespace truehang
