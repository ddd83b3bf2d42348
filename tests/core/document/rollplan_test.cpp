// SPDX-License-Identifier: Apache-2.0
// A roll plan as a document: what was written reads back, and only beside what it was worked from.
#include "documents.h"

#include "document/rolls_document.h"

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <set>
#include <tuple>

namespace truehang {
namespace {

/// The demo house on rolls of one length of each of its fabrics, with a flaw and a join.
struct PilotHouse {
    Survey survey = read_survey(source_file("demo-surveys/pilot-house.json")).value();
    RollsThatCame came;

    explicit PilotHouse(double length) {
        came.survey = survey.id;
        for (const Fabric& fabric : survey.fabrics) {
            Roll roll;
            roll.id = "A";
            roll.lot = "7";
            roll.length = Length::mm(length);
            roll.flaws.push_back({Length::mm(1500), Length::mm(1600)});
            roll.joins.push_back({Length::mm(3000), Length::mm(3040)});
            came.fabrics.push_back({fabric.id, {roll}});
        }
    }
    /// After few steps: how good it is says nothing of how it is written.
    [[nodiscard]] HousePlan plan() const { return plan_house(survey, came, {1000}); }
};

TEST(RollPlanDocument, ReadsBackToTheSame) {
    for (const double length : {40000.0, 6000.0}) {
        const PilotHouse house(length);
        const HousePlan plan = house.plan();
        const std::string written = write_roll_plan(plan);
        const auto read = read_roll_plan(written, house.survey, house.came);
        ASSERT_TRUE(read) << read.error().front().pointer << " " << read.error().front().text;
        EXPECT_EQ(write_roll_plan(*read), written);
        for (std::size_t i = 0; i < plan.fabrics.size(); ++i) {
            EXPECT_EQ(read->fabrics[i].plan.most_windows, plan.fabrics[i].plan.most_windows);
            EXPECT_EQ(read->fabrics[i].plan.windows, plan.fabrics[i].plan.windows);
            EXPECT_EQ(std::set(read->fabrics[i].plan.short_windows.begin(), read->fabrics[i].plan.short_windows.end()),
                      std::set(plan.fabrics[i].plan.short_windows.begin(), plan.fabrics[i].plan.short_windows.end()));
            EXPECT_EQ(read->fabrics[i].rules.repeat, plan.fabrics[i].rules.repeat);
        }
    }
}

TEST(RollPlanDocument, IsOnlyOfTheSurveyAndTheRollsItWasWorkedFrom) {
    const PilotHouse house(40000.0);
    const std::string written = write_roll_plan(house.plan());
    Survey longer = house.survey;
    longer.rules.numbers["hem_mm"] = 400;
    EXPECT_FALSE(read_roll_plan(written, longer, house.came)) << "its pieces are longer";
    Survey other = house.survey;
    other.rooms.front().windows.pop_back();
    EXPECT_FALSE(read_roll_plan(written, other, house.came)) << "pieces that aren't its";
    EXPECT_FALSE(read_roll_plan(written, house.survey, PilotHouse(5000.0).came)) << "the roll ends before its pieces";
    RollsThatCame fewer = house.came;
    fewer.fabrics.pop_back();
    EXPECT_FALSE(read_roll_plan(written, house.survey, fewer));
}

TEST(RollPlanDocument, TellsEachFaultAtItsPlace) {
    const PilotHouse house(40000.0);
    const auto sound = roll_plan_json(house.plan());
    const auto fault_of = [&](const nlohmann::ordered_json& json) {
        const auto read = read_roll_plan(json.dump(), house.survey, house.came);
        return read ? std::string("none") : read.error().front().pointer;
    };
    ASSERT_EQ(fault_of(sound), "none");
    using Pointer = nlohmann::ordered_json::json_pointer;
    for (const auto& [place, value, pointer] : std::vector<std::tuple<std::string, nlohmann::json, std::string>>{
             {"/format", "truehang.rollplan/2", "/format"},
             {"/survey", "another", "/survey"},
             {"/fabrics/0/fabric", "velvet", "/fabrics/0/fabric"},
             {"/fabrics/0/rolls/0/roll", "B", "/fabrics/0/rolls/0/roll"},
             {"/fabrics/0/rolls/0/cuts/0/piece", "nothing", "/fabrics/0/rolls/0/cuts/0/piece"},
             {"/fabrics/0/rolls/0/cuts/0/to_mm", 1, "/fabrics/0/rolls/0/cuts/0/to_mm"},
             {"/fabrics/0/rolls/0/cuts/0/from_mm", "start", "/fabrics/0/rolls/0/cuts/0/from_mm"},
             {"/fabrics/0/lots", nlohmann::json::array({1}), "/fabrics/0/lots/0"},
             {"/fabrics/0/not_placed", nlohmann::json::array({"nothing"}), "/fabrics/0/not_placed"},
             {"/windows", nullptr, "/windows"}}) {
        auto changed = sound;
        changed[Pointer(place)] = value;
        EXPECT_EQ(fault_of(changed), pointer);
    }
}

}  // namespace
}  // namespace truehang
