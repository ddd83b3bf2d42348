// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"
#include "documents.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <vector>

using namespace truehang;
using Json = nlohmann::json;

namespace {

struct Malformed {
    std::string what;
    Json patch;
    std::vector<std::string> faults;
};

/// Prints the case by what it says.
void PrintTo(const Malformed& malformed, std::ostream* out) { *out << malformed.what; }

std::vector<Malformed> malformed_documents() {
    std::vector<Malformed> documents;
    for (const Json& entry : Json::parse(source_file("tests/core/document/malformed.json"))) {
        documents.push_back({entry.at("what"), entry.at("patch"), entry.at("faults")});
    }
    return documents;
}

std::vector<std::string> pointers_of(const Faults& faults) {
    std::vector<std::string> pointers;
    for (const Fault& fault : faults) {
        EXPECT_FALSE(fault.text.empty());
        EXPECT_EQ(fault.text.find('\n'), std::string::npos);
        pointers.push_back(fault.pointer);
    }
    std::ranges::sort(pointers);
    return pointers;
}

std::vector<std::string> faults_in(const std::string& bytes) {
    const auto survey = read_survey(bytes);
    return survey ? std::vector<std::string>{} : pointers_of(survey.error());
}

class MalformedSurvey : public testing::TestWithParam<Malformed> {};

TEST_P(MalformedSurvey, IsRefusedWithEveryFaultWhereItLies) {
    const std::string bytes = Json::parse(example_survey()).patch(GetParam().patch).dump();
    auto expected = GetParam().faults;
    std::ranges::sort(expected);
    EXPECT_EQ(faults_in(bytes), expected);
}

INSTANTIATE_TEST_SUITE_P(Contract, MalformedSurvey, testing::ValuesIn(malformed_documents()));

TEST(Survey, TheExampleIsSound) { EXPECT_EQ(faults_in(example_survey()), std::vector<std::string>{}); }

TEST(Survey, MustBeAnObject) {
    for (const char* bytes : {"[]", "null", "1", "\"survey\"", "true"}) {
        EXPECT_EQ(faults_in(bytes), std::vector<std::string>{""}) << bytes;
    }
}

TEST(Survey, RefusesAKeyThatStandsTwice) {
    std::string bytes = example_survey();
    bytes.replace(bytes.find("\"wall\""), 6, "\"name\": \"again\", \"wall\"");
    EXPECT_EQ(faults_in(bytes), std::vector<std::string>{"/rooms/0/name"});
}

TEST(Survey, TakesWordsThatItDoesntKnow) {
    Json survey = Json::parse(example_survey());
    Json& window = survey["rooms"][0]["windows"][0];
    window["shape"] = "porthole";
    window["readings"][0]["station"] = "porthole.rim";
    window["readings"][1]["how"] = "guessed";
    window["readings"][2] = {{"station", "porthole.tilt"}, {"value_deg", 4}};
    window["obstructions"][0]["kind"] = "ships-bell";
    window["hardware"]["kind"] = "yard-arm";
    window["treatment"]["heading"] = "reefed";
    survey["rules"]["knots"] = "bowline";
    survey["rules"]["yard_mm"] = -914.4;
    survey["entry_unit"] = "cable";
    const auto read = read_survey(survey.dump());
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(read->rooms[0].windows[0].shape.text(), "porthole");
    EXPECT_FALSE(read->rooms[0].windows[0].shape.known().has_value());
    EXPECT_EQ(read->rules.numbers.at("yard_mm"), -914.4);
    EXPECT_EQ(Json::parse(write_survey(*read)), survey);
}

TEST(Survey, TakesTheEndsOfEveryRange) {
    Json survey = Json::parse(example_survey());
    survey["site"]["latitude"] = -90;
    survey["site"]["longitude"] = 180;
    survey["fabrics"][0]["shrinkage_pct"] = 50;
    survey["fabrics"][0]["blue_wool"] = 8;
    survey["fabrics"][1]["selvedge_mm"] = 684.9;
    Json& window = survey["rooms"][0]["windows"][0];
    window["bearing_deg"] = 0;
    window["readings"][0]["value_mm"] = 100000;
    window["readings"][1]["value_mm"] = 0;
    window["obstructions"][0]["left_mm"] = -100000;
    window["hardware"]["left_mm"] = -100000;
    window["hardware"] = nullptr;
    EXPECT_EQ(faults_in(survey.dump()), std::vector<std::string>{});
}

TEST(Survey, NeedsOnlyWhatTheContractRequires) {
    EXPECT_EQ(faults_in(R"({"format": "truehang.survey/1.12", "id": "x", "fabrics": [], "rooms": []})"),
              std::vector<std::string>{});
    EXPECT_EQ(faults_in(R"({"format": "truehang.survey/1", "id": "x", "fabrics": [{"id": "a", "width_mm": 1}],
                            "rooms": [{"id": "r"}, {"id": "s", "windows": [{"id": "w", "shape": "bay", "readings": []}]}]})"),
              std::vector<std::string>{});
}

TEST(Survey, ReadsNoMoreThanItsLimits) {
    Json survey = Json::parse(example_survey());
    Json& readings = survey["rooms"][0]["windows"][0]["readings"];
    readings = Json::array();
    for (int i = 0; i < 2000; ++i) {
        readings.push_back({{"station", "below.left"}, {"value_mm", i}});
    }
    EXPECT_EQ(faults_in(survey.dump()), std::vector<std::string>{});
    readings.push_back({{"station", "below.left"}, {"value_mm", 1}});
    EXPECT_EQ(faults_in(survey.dump()), std::vector<std::string>{"/rooms/0/windows/0/readings"});
}

TEST(Survey, SaysThatThereAreMoreFaultsThanItLists) {
    Json survey = Json::parse(example_survey());
    Json& readings = survey["rooms"][0]["windows"][0]["readings"];
    readings = Json(std::vector<int>(2000, 7));
    const auto pointers = faults_in(survey.dump());
    ASSERT_EQ(pointers.size(), 1001U);
    EXPECT_EQ(pointers.front(), "");
}

}  // namespace
