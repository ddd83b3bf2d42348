// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"
#include "documents.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <nlohmann/json.hpp>
#include <set>

using namespace truehang;
using Json = nlohmann::json;
using OrderedJson = nlohmann::ordered_json;

namespace {

std::string rewritten(const std::string& bytes, bool pretty = true) {
    const auto survey = read_survey(bytes);
    if (!survey) {
        for (const Fault& fault : survey.error()) {
            ADD_FAILURE() << fault.pointer << ": " << fault.text;
        }
        return "null";
    }
    return write_survey(*survey, pretty);
}

TEST(WriteSurvey, GivesTheDocumentBack) {
    for (const std::string& bytes : {example_survey(), full_survey()}) {
        EXPECT_EQ(Json::parse(rewritten(bytes)), Json::parse(bytes));
        EXPECT_EQ(Json::parse(rewritten(bytes, false)), Json::parse(bytes));
        EXPECT_EQ(rewritten(rewritten(bytes)), rewritten(bytes));
    }
}

/// The text with every number of the document in its shortest form, keys in their order.
std::string normalised(const std::string& bytes) {
    const auto shortest = [](int, OrderedJson::parse_event_t, OrderedJson& value) {
        if (value.is_number_float() && value.get<double>() == static_cast<double>(static_cast<long long>(value))) {
            value = static_cast<long long>(value);
        }
        return true;
    };
    return OrderedJson::parse(bytes, shortest).dump(2);
}

TEST(WriteSurvey, KeepsTheContractsOrderOfKeys) {
    EXPECT_EQ(OrderedJson::parse(rewritten(example_survey())).dump(2), normalised(example_survey()));
    EXPECT_EQ(OrderedJson::parse(rewritten(full_survey())).dump(2), normalised(full_survey()));
}

TEST(WriteSurvey, WritesNumbersAsTheyWereWritten) {
    const std::string text = rewritten(full_survey());
    EXPECT_NE(text.find("\"width_mm\": 1400,"), std::string::npos);
    EXPECT_NE(text.find("\"value_mm\": 1228.725,"), std::string::npos);
    EXPECT_NE(text.find("\"left_mm\": -330.5,"), std::string::npos);
    EXPECT_EQ(text.find(".0,"), std::string::npos);
}

TEST(WriteSurvey, IsOneLineWhereNotPretty) {
    EXPECT_EQ(rewritten(full_survey(), false).find('\n'), std::string::npos);
    EXPECT_EQ(rewritten(full_survey()).back(), '\n');
}

TEST(WriteSurvey, KeepsALaterMinorVersion) {
    Json survey = Json::parse(example_survey());
    survey["format"] = "truehang.survey/1.7";
    EXPECT_EQ(Json::parse(rewritten(survey.dump())), survey);
}

TEST(WriteSurvey, KeepsKnownKeysAtTheirDefaults) {
    Json survey = Json::parse(full_survey());
    survey["title"] = "";
    survey["rules"] = Json::object();
    survey["client"] = Json::object();
    survey["fabrics"][1]["selvedge_mm"] = 0;
    survey["fabrics"][1]["shrinkage_pct"] = 0;
    survey["fabrics"][1]["name"] = "";
    survey["rooms"][0]["heat"] = Json::array();
    Json& window = survey["rooms"][0]["windows"][0];
    window["not_taken"] = Json::array();
    window["photos"] = Json::array();
    window["readings"][0]["how"] = "measured";
    window["layers"][0]["treatment"] = nullptr;
    window["layers"][1]["hardware"]["bracket_at_mm"] = Json::array();
    window["layers"][1]["treatment"]["pelmet"]["return_mm"] = 0;
    Json& bay = survey["rooms"][0]["windows"][1];
    bay["hardware"] = nullptr;
    bay["treatment"] = {{"heading", "eyelet"}, {"fabric", nullptr}};
    EXPECT_EQ(Json::parse(rewritten(survey.dump())), survey);
}

/// Values that a field has where its key is absent, each written out.
TEST(WriteSurvey, KeepsADefaultThatIsWrittenOut) {
    const std::pair<const char*, Json> cases[] = {
        {"/rules/name", ""},
        {"/rules/date", ""},
        {"/rules/head_mm", Json::object()},
        {"/signed_off/agreed/layers/0/curtains", 0},
        {"/signed_off/agreed/layers/0/width_mm", 0},
        {"/signed_off/agreed/revision", 0},
        {"/changed_twice/0/again", false},
        {"/changed_twice/1/again", false},
        {"/changed_twice/1/removed", false},
        {"/rooms/0/windows/0/outlook/bearings", Json::array()},
        {"/rooms/0/windows/0/outlook/bearings/1/to_left_mm", Json::array()},
        {"/rooms/0/windows/0/outlook/skyline/0/height_deg", 0},
        {"/rooms/0/interior", Json::object()},
        {"/rooms/0/interior/width_mm", 0},
        {"/rooms/0/interior/surfaces", ""},
        {"/rooms/0/windows/0/photos/0/plane", Json::object()},
        {"/rooms/0/windows/0/photos/0/plane/width_px", 0},
        {"/rooms/0/windows/0/photos/0/plane/sheets/0/corners", Json::array()},
        {"/rooms/0/windows/0/photos/0/plane/opening", Json::array()},
    };
    for (const auto& [at, value] : cases) {
        Json survey = Json::parse(full_survey());
        survey[Json::json_pointer(at)] = value;
        EXPECT_EQ(Json::parse(rewritten(survey.dump())), survey) << at;
    }
}

TEST(WriteSurvey, AnEditTakesThePlaceOfAKeptDefault) {
    auto read = read_survey(example_survey());
    ASSERT_TRUE(read.ok());
    Survey survey = read.value();
    Treatment& treatment = *survey.rooms[0].windows[0].layers[0].treatment;
    treatment.interlining = "sateen";
    survey.rooms[0].windows[0].layers[0].hardware->return_depth = Length::mm(90);
    const Json window = Json::parse(write_survey(survey))["rooms"][0]["windows"][0];
    EXPECT_EQ(window["treatment"]["interlining"], "sateen");
    EXPECT_EQ(window["hardware"]["return_mm"], 90);
    EXPECT_EQ(window["hardware"]["overlap_mm"], 0);
}

TEST(WriteSurvey, WritesASurveyThatBeganEmpty) {
    Survey survey;
    survey.id = "new";
    Window window;
    window.id = "w";
    window.shape = Shape::door;
    survey.rooms.push_back({.id = "r",
                            .name = {},
                            .wall = {},
                            .use = {},
                            .young_children = {},
                            .heat = {},
                            .photos = {},
                            .windows = {window},
                            .extra = {}});
    const Json expected = {
        {"format", "truehang.survey/1"},
        {"id", "new"},
        {"fabrics", Json::array()},
        {"rooms", {{{"id", "r"}, {"windows", {{{"id", "w"}, {"shape", "door"}, {"readings", Json::array()}}}}}}}};
    EXPECT_EQ(Json::parse(write_survey(survey)), expected);
    EXPECT_TRUE(read_survey(write_survey(survey)).ok());
}

TEST(WriteSurvey, ReplacesBytesThatArentUtf8) {
    auto read = read_survey(example_survey());
    ASSERT_TRUE(read.ok());
    Survey survey = read.value();
    survey.title = "Pilot\xff \"house\"\n";
    const auto again = read_survey(write_survey(survey));
    ASSERT_TRUE(again.ok());
    EXPECT_EQ(again->title, "Pilot\xef\xbf\xbd \"house\"\n");
}

// Laws.

bool same(const std::string& bytes, const Json& survey) { return Json::parse(bytes) == survey; }

/// Pointers of every object in which an unknown key may stand.
void add_objects(const Json& json, const Json::json_pointer& at, std::vector<Json::json_pointer>& found) {
    if (json.is_object() && at.to_string() != "/rules/head_mm") {
        found.push_back(at);
    }
    for (const auto& [key, value] : json.items()) {
        if (value.is_structured()) {
            add_objects(value, json.is_array() ? at / static_cast<std::size_t>(std::stoul(key)) : at / key, found);
        }
    }
}

Json any_value() {
    const std::vector<Json> values{nullptr,
                                   true,
                                   false,
                                   0,
                                   -7,
                                   1.25,
                                   1e300,
                                   9007199254740991,
                                   "",
                                   "é\n\"",
                                   Json::array(),
                                   Json::object(),
                                   Json::array({Json::array()}),
                                   Json::array({Json::object()}),
                                   {1, {{"a", nullptr}}},
                                   {{"deep", {{"er", {1, 2.5}}}}},
                                   {0.25, 0.5}};
    return values[*rc::gen::inRange<std::size_t>(0, values.size())];
}

RC_GTEST_PROP(WriteSurveyLaw, UnknownKeysSurviveAnywhere, ()) {
    static const Json documents[] = {Json::parse(example_survey()), Json::parse(full_survey())};
    Json survey = documents[*rc::gen::inRange(0, 2)];
    std::vector<Json::json_pointer> objects;
    add_objects(survey, Json::json_pointer(), objects);
    const int count = *rc::gen::inRange(1, 12);
    for (int i = 0; i < count; ++i) {
        const auto at = objects[*rc::gen::inRange<std::size_t>(0, objects.size())];
        const auto name =
            *rc::gen::element<std::string>("from_a_newer_phone", "", "a/b", "m~n", "Id", "ключ", "\n", "colour");
        survey[at][name] = any_value();
    }
    const std::string bytes = survey.dump();
    RC_ASSERT(same(rewritten(bytes), survey));
    RC_ASSERT(same(rewritten(bytes, false), survey));
    RC_ASSERT(rewritten(rewritten(bytes)) == rewritten(bytes));
}

TEST(ReadSurvey, TakesAMissingOptionalKeyAnywhere) {
    const Json full = Json::parse(full_survey());
    const std::set<std::string> required{"format",   "id",      "fabrics",  "rooms",     "width_mm", "shape",
                                         "readings", "station", "value_mm", "value_deg", "windows",  "strokes"};
    std::vector<Json::json_pointer> objects;
    add_objects(full, Json::json_pointer(), objects);
    for (const auto& at : objects) {
        for (const auto& [name, value] : full[at].items()) {
            const bool is_place = name == "at" && full[at].contains("again");  // of what was changed twice
            const bool is_agreed =
                at.to_string().starts_with("/signed_off/agreed/") && (name == "window" || name == "fabric");
            if (required.contains(name) || is_place || is_agreed) {
                continue;
            }
            Json survey = full;
            survey[at].erase(name);
            EXPECT_TRUE(same(rewritten(survey.dump()), survey)) << at.to_string() << " without " << name;
        }
    }
}

/// Pointers of every value within, lists and objects too.
void add_places(const Json& json, const Json::json_pointer& at, std::vector<Json::json_pointer>& found) {
    for (const auto& [key, value] : json.items()) {
        found.push_back(json.is_array() ? at / static_cast<std::size_t>(std::stoul(key)) : at / key);
        if (value.is_structured()) {
            add_places(value, Json::json_pointer(found.back()), found);
        }
    }
}

/// Whatever stands where something else should is refused or kept, and the reader lives.
RC_GTEST_PROP(ReadSurveyLaw, AnyValueAnywhereIsReadOrRefusedThere, ()) {
    Json survey = Json::parse(full_survey());
    std::vector<Json::json_pointer> places;
    add_places(survey, Json::json_pointer(), places);
    const auto at = places[*rc::gen::inRange<std::size_t>(0, places.size())];
    survey[at] = any_value();
    const auto read = read_survey(survey.dump());
    if (read) {
        RC_LOG() << at.to_string();
        RC_ASSERT(same(write_survey(*read), survey));
    } else {
        for (const Fault& fault : read.error()) {
            RC_ASSERT(!fault.text.empty());
        }
    }
}

}  // namespace
