// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"
#include "documents.h"
#include "figures/figures.h"

#include <gtest/gtest.h>

#include <limits>
#include <nlohmann/json.hpp>

using namespace truehang;
using namespace truehang::literals;
using Json = nlohmann::json;
using OrderedJson = nlohmann::ordered_json;

namespace {

// The figures of the contract's example, as its figures document has them, some before their rounding.

std::vector<Size> example_sizes() {
    return {{"opening.width.top", 1242_mm, 2.0599_mm, {}},
            {"opening.width.middle", 1240_mm, 2.0601_mm, {}},
            {"opening.width.bottom", 1238_mm, 2.06_mm, {}},
            {"sill.left", 860_mm, 1.7699_mm, {}},
            {"head.left", 1990_mm, 2.06_mm, {}},
            {"pole.left", 2070.0000001_mm, 2.9_mm, {}},
            {"ceiling.left", 2138_mm, 1.8_mm, {}}};
}

LayerFigures example_layer() {
    LayerFigures layer;
    layer.finished = Finished{2, 860_mm, 1992_mm, 0_mm, 2.9_mm};
    layer.cloth = Cloth{"sailcloth", 1.0, 2, 1300.0 / 860.0, 1300_mm, 2240_mm, 4480_mm, 0.0, {}};
    layer.lining = Lining{"sateen", 1.0, 2, 1260_mm, 2110_mm, 4220_mm};
    layer.tabs = Tabs{200_mm, 68.0088_mm, 7, 208.33333_mm, 120_mm, 410_mm};
    layer.weights = Weights{3};
    layer.mass = Mass::kg(2.6464);
    layer.bracket_mass = Mass::kg(1.3232);
    return layer;
}

Flag example_flag(const Json& example) {
    Flag flag;
    flag.code = "curtain-over-heat";
    flag.severity = Severity::caution;
    flag.obstruction = "r1";
    flag.text = example["windows"][0]["flags"][0]["text"];
    return flag;
}

Trace example_trace() {
    return {"finished.drop_mm",
            "",
            {{"pole centre above floor", 2070.0, {}, {}, {"below.left", "opening.height.left", "pole.above"}},
             {"tab hang", -68.0088, {}, {}, {"tab cut 200", "pole diameter 28"}},
             {"floor clearance", -10.0, {}, {}, {"rule floor_clearance_mm"}},
             {"finished drop", 1992.0, {}, {}, {}}}};
}

/// What a check says beyond the contract's keys; a new key may appear, one that stands keeps its meaning.
template <class Any>
Any contract_part(Any document) {
    for (auto& window : document["windows"]) {
        for (auto& check : window["checks"]) {
            for (const auto* added : {"off_by_mm", "explained_mm", "readings"}) {
                EXPECT_EQ(check.erase(added), 1U) << added;
            }
        }
        for (const auto* added : {"second_lining", "pleats", "load", "tie_back", "haberdashery"}) {
            EXPECT_EQ(window.erase(added), 1U) << added;
        }
    }
    return document;
}

Figures example(const Json& document) {
    Figures figures;
    figures.survey = document["survey"];
    figures.revision = 1;
    WindowFigures& window = figures.windows.emplace_back();
    window.id = "parlour-south";
    window.room = "parlour";
    window.sizes = example_sizes();
    window.checks = {{"plumb.left", 1, 1e-20, 10.8276, true}};
    window.layers = {example_layer()};
    window.flags = {example_flag(document)};
    window.trace = {example_trace()};
    figures.orders = {{"sailcloth",
                       4890_mm,
                       4.9000000000000004,
                       {{"parlour-south", "drops", 2240_mm, 2, ""}, {"parlour-south", "tabs", 205_mm, 2, ""}},
                       false},
                      {"sateen", 4220_mm, 4.3, {{"parlour-south", "drops", 2110_mm, 2, ""}}, false}};
    figures.haberdashery = {{"weights", 6}};
    return figures;
}

TEST(WriteFigures, HasTheContractsShape) {
    const Json document = Json::parse(example_figures());
    EXPECT_EQ(contract_part(Json::parse(write_figures(example(document)))), document);
}

/// Every object's keys in their order, without their values.
std::string keys_of(const OrderedJson& json) {
    std::string keys;
    for (const auto& [key, value] : json.items()) {
        keys += (json.is_object() ? key : "") + (value.is_structured() ? "{" + keys_of(value) + "}" : ",");
    }
    return keys;
}

TEST(WriteFigures, KeepsTheContractsOrderOfKeys) {
    const auto document = OrderedJson::parse(example_figures());
    EXPECT_EQ(keys_of(contract_part(figures_json(example(Json::parse(example_figures()))))), keys_of(document));
}

TEST(WriteFigures, SaysNullWhereNothingApplies) {
    Figures figures;
    figures.windows.emplace_back();
    const auto json = figures_json(figures);
    EXPECT_TRUE(json["revision"].is_null());
    for (const char* key : {"next", "finished", "cloth", "lining", "interlining", "tabs", "eyelets", "hooks", "weights",
                            "blind", "pelmet", "mass_kg", "bracket_kg"}) {
        ASSERT_TRUE(json["windows"][0].contains(key)) << key;
        EXPECT_TRUE(json["windows"][0][key].is_null()) << key;
    }
    EXPECT_FALSE(json["windows"][0].contains("layers"));
}

TEST(WriteFigures, PutsLayersUnderTheirIds) {
    Figures figures;
    WindowFigures& window = figures.windows.emplace_back();
    window.layered = true;
    window.layers.resize(2);
    window.layers[0].id = "blind";
    window.layers[0].blind = Blind{4, 155.555_mm, 215.556_mm};
    window.layers[0].cloth = Cloth{"voile", 1.0, 1, {}, 1200_mm, 1500_mm, 1500_mm, 0.0, {}};
    window.layers[1].id = "curtains";
    window.layers[1].cloth = Cloth{"damask", 1.5, 3, 1.51163, 2000_mm, 2240_mm, 6720_mm, 0.0, 5000_mm};
    window.layers[1].eyelets = Eyelets{8, 171.4286_mm, 50_mm};
    window.layers[1].pelmet = PelmetFigures{330_mm, 1840_mm, 2, 450_mm, 900_mm};
    const auto json = figures_json(figures)["windows"][0];
    EXPECT_FALSE(json.contains("finished"));
    EXPECT_EQ(json["layers"][0]["id"], "blind");
    EXPECT_EQ(json["layers"][0]["blind"], (OrderedJson{{"rods", 4}, {"fold_mm", 155.56}, {"up_mm", 215.56}}));
    EXPECT_TRUE(json["layers"][0]["cloth"]["fullness"].is_null());
    EXPECT_FALSE(json["layers"][0]["cloth"].contains("railroad"));
    EXPECT_EQ(json["layers"][1]["cloth"]["fullness"], 1.5116);
    EXPECT_EQ(json["layers"][1]["cloth"]["widths_each"], 1.5);
    EXPECT_EQ(json["layers"][1]["cloth"]["railroad"]["length_mm"], 5000);
    EXPECT_EQ(json["layers"][1]["eyelets"]["spacing_mm"], 171.43);
    EXPECT_EQ(
        json["layers"][1]["pelmet"],
        (OrderedJson{{"depth_mm", 330}, {"face_mm", 1840}, {"widths", 2}, {"cut_drop_mm", 450}, {"length_mm", 900}}));
    EXPECT_TRUE(json["layers"][1]["hooks"].is_null());
}

TEST(WriteFigures, WritesWhatTheWorkroomMakesUp) {
    Figures figures;
    LayerFigures& layer = figures.windows.emplace_back().layers.emplace_back();
    layer.tabs = Tabs{200_mm, 68_mm, 3, 424.9955_mm, 120_mm, 410_mm, {25_mm, 449.9955_mm, 875_mm}};
    layer.making.second_lining = Lining{"blackout", 1.0, 2, 1290_mm, 2100_mm, 4200_mm, true};
    layer.making.pleats = Pleats{2, 127.126_mm, 160.1_mm, {63.563_mm, 350.789_mm}};
    layer.making.hooks = Hooks{4, 8, 160.1_mm};
    layer.making.tie_back = TieBack{"holdback", 664_mm, {}, 2, {}, {}};
    layer.making.bought = {{"buckram", 0, 2580_mm, {}}, {"blind rods", 3, {}, 980_mm}};
    layer.making.load = Load{Mass::kg(1.326), {"the mass of the hardware"}};
    figures.haberdashery = {{"blind rods", 5, {}, 0.0, {{3, 980_mm}, {2, 720_mm}}}, {"buckram", 0, 2580_mm, 2.6, {}}};
    const auto json = figures_json(figures);
    const auto& window = json["windows"][0];
    EXPECT_EQ(window["tabs"]["positions_mm"].dump(), "[25,450,875]");
    EXPECT_EQ(window["second_lining"]["hung"], "separate");
    EXPECT_EQ(window["pleats"].dump(), R"({"each":2,"pleat_mm":127.13,"space_mm":160.1,"first_mm":63.56,)"
                                       R"("last_mm":350.79,"positions_mm":[63.56,350.79]})");
    EXPECT_EQ(window["hooks"].dump(), R"({"each":4,"in_all":8,"spacing_mm":160.1})");
    EXPECT_EQ(window["tie_back"].dump(), R"({"kind":"holdback","count":2,"height_mm":664,"length_mm":null,)"
                                         R"("cut_length_mm":null,"cut_width_mm":null})");
    EXPECT_EQ(window["haberdashery"].dump(),
              R"([{"what":"buckram","length_mm":2580},{"what":"blind rods","count":3,"each_mm":980}])");
    EXPECT_EQ(window["load"].dump(), R"({"bracket_kg":1.33,"not_known":["the mass of the hardware"]})");
    EXPECT_EQ(json["haberdashery"].dump(),
              R"([{"what":"blind rods","count":5,"pieces":[{"count":3,"length_mm":980},{"count":2,"length_mm":720}]},)"
              R"({"what":"buckram","length_mm":2580,"order_m":2.6}])");
}

TEST(WriteFigures, NamesSuspectsWhereItDoesntAddUp) {
    Figures figures;
    WindowFigures& window = figures.windows.emplace_back();
    window.sizes = {{"sill.left", 860_mm, 1.77_mm, {"below.left"}}};
    window.next = NextReading{"ceiling.right", "it would settle which reading is at fault"};
    Flag flag;
    flag.code = "does-not-add-up";
    flag.severity = Severity::remeasure;
    flag.layer = "blind";
    flag.suspects = {{"below.left", "transposed-digits", 860_mm, 680_mm, 0.66666},
                     {"above.left", "unexplained", 148_mm, {}, 0.33334}};
    Suspect angle{"corner.1.angle_deg", "swapped", {}, {}, 0.0, {}, Angle::degrees(120), Angle::degrees(150)};
    angle.also = {{"corner.2.angle_deg", {}, {}, Angle::degrees(150), Angle::degrees(120)}};
    flag.suspects.push_back(angle);
    window.flags = {flag, flag};
    window.flags[1].suspects.clear();
    const auto json = figures_json(figures)["windows"][0];
    EXPECT_EQ(json["sizes"][0]["rests_on"], OrderedJson::array({"below.left"}));
    EXPECT_EQ(json["next"]["station"], "ceiling.right");
    EXPECT_EQ(json["flags"][0]["severity"], "remeasure");
    EXPECT_EQ(json["flags"][0]["layer"], "blind");
    EXPECT_FALSE(json["flags"][0].contains("obstruction"));
    const auto& suspects = json["flags"][0]["suspects"];
    EXPECT_EQ(suspects[0]["proposed_mm"], 680);
    EXPECT_TRUE(suspects[1]["proposed_mm"].is_null());
    EXPECT_LE(suspects[0]["weight"].get<double>() + suspects[1]["weight"].get<double>(), 1.0);
    EXPECT_FALSE(suspects[0].contains("proposed_deg"));
    // An angle has nulls where a length stands, and its degrees beside them.
    EXPECT_TRUE(suspects[2]["was_mm"].is_null() && suspects[2]["proposed_mm"].is_null());
    EXPECT_EQ(suspects[2]["was_deg"], 120);
    EXPECT_EQ(suspects[2]["proposed_deg"], 150);
    EXPECT_TRUE(suspects[2]["also"][0]["was_mm"].is_null() && suspects[2]["also"][0]["proposed_mm"].is_null());
    EXPECT_EQ(suspects[2]["also"][0]["proposed_deg"], 120);
    EXPECT_EQ(json["flags"][1]["suspects"], OrderedJson::array());
}

TEST(WriteFigures, WritesCountsAndRatiosOfATrace) {
    Figures figures;
    Trace& trace = figures.windows.emplace_back().trace.emplace_back();
    trace.figure = "cloth.widths_each";
    trace.layer = "curtains";
    trace.steps = {{"widths", {}, 1.5, {}, {}}, {"fullness", {}, {}, 1.51163, {"asked"}}};
    const auto json = figures_json(figures)["windows"][0]["trace"][0];
    EXPECT_EQ(json["layer"], "curtains");
    EXPECT_EQ(json["steps"][0], (OrderedJson{{"what", "widths"}, {"count", 1.5}}));
    EXPECT_EQ(json["steps"][1]["ratio"], 1.5116);
}

TEST(WriteFigures, WritesNothingThatIsntANumber) {
    Figures figures;
    figures.windows.emplace_back().sizes = {{"x", Length::mm(std::numeric_limits<double>::infinity()), -0.001_mm, {}}};
    const auto json = figures_json(figures)["windows"][0]["sizes"][0];
    EXPECT_TRUE(json["mm"].is_null());
    EXPECT_EQ(json["u_mm"].dump(), "0");
}

}  // namespace
