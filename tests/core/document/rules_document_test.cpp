// SPDX-License-Identifier: Apache-2.0
// House rules as a document: what is read is written again, and every fault has its place and its range.
#include "document/rules_document.h"
#include "survey/house_rules.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>

namespace truehang {
namespace {

using Json = nlohmann::ordered_json;

Json lined_rules() {
    return {{"format", "truehang.rules/1"},
            {"name", "Lined curtains"},
            {"version", 3},
            {"date", "2026-03-14"},
            {"rules", {{"hem_mm", 160}, {"lining_rise_mm", 25}, {"head_mm", {{"eyelet", 90}}}}}};
}

Faults faults_of(const Json& document) {
    const auto read = read_rules_document(document.dump());
    return read ? Faults{} : read.error();
}

// Law: reading what was written gives the same, unknown keys and rules included.
TEST(RulesDocument, IsWrittenAsItWasRead) {
    Json document = lined_rules();
    document["rules"]["knots"] = 7;
    document["rules"]["thread"] = "linen";
    document["shared_with"] = "the sail loft";
    const auto read = read_rules_document(document.dump());
    ASSERT_TRUE(read.ok());
    const std::string text = write_rules_document(*read);
    EXPECT_EQ(Json::parse(text).dump().size(), document.dump().size());
    const auto again = read_rules_document(text);
    ASSERT_TRUE(again.ok());
    EXPECT_EQ(again->rules.numbers, read->rules.numbers);
    EXPECT_EQ(again->rules.head_mm, read->rules.head_mm);
    EXPECT_EQ(again->rules.extra, read->rules.extra);
    EXPECT_EQ(again->extra, read->extra);
    EXPECT_EQ(again->rules.version, 3);
    EXPECT_EQ(again->rules.date, "2026-03-14");
}

TEST(RulesDocument, KeepsAndNamesWhatItDoesntKnow) {
    Json document = lined_rules();
    document["rules"]["knots"] = 7;
    const auto read = read_rules_document(document.dump());
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(unknown_rules(read->rules), std::vector<std::string>{"knots"});
    EXPECT_EQ(read->rules.numbers.at("knots"), 7);
}

// The contract's ranges: lengths 0 to 100,000 mm; what is divided by lies above 0.
TEST(RulesDocument, SaysWhereARuleLiesOutsideItsRangeAndWhatTheRangeIs) {
    Json document = lined_rules();
    document["rules"]["hem_mm"] = -3;
    document["rules"]["order_step_m"] = 0;
    document["rules"]["blind_fold_mm"] = 0;
    document["rules"]["head_mm"]["tab"] = 200000;
    const Faults faults = faults_of(document);
    ASSERT_EQ(faults.size(), 4U);
    const auto text_at = [&faults](const char* pointer) {
        const auto found =
            std::find_if(faults.begin(), faults.end(), [&](const Fault& fault) { return fault.pointer == pointer; });
        return found == faults.end() ? std::string() : found->text;
    };
    EXPECT_EQ(text_at("/rules/hem_mm"), "-3 lies outside its range: from 0, up to 100000.");
    EXPECT_EQ(text_at("/rules/order_step_m"), "0 lies outside its range: above 0, up to 100.");
    EXPECT_FALSE(text_at("/rules/blind_fold_mm").empty());
    EXPECT_FALSE(text_at("/rules/head_mm/tab").empty());
}

TEST(RulesDocument, IsRefusedWithThePlaceOfEachFault) {
    const std::vector<std::pair<const char*, Json>> broken{{"/format", "truehang.survey/1"},
                                                           {"/name", 7},
                                                           {"/version", 0},
                                                           {"/version", 1.5},
                                                           {"/date", "2026-02-30"},
                                                           {"/rules", Json::array()},
                                                           {"/rules/hem_mm", "wide"}};
    for (const auto& [pointer, value] : broken) {
        Json document = lined_rules();
        document[Json::json_pointer(pointer)] = value;
        const Faults faults = faults_of(document);
        ASSERT_EQ(faults.size(), 1U) << pointer;
        EXPECT_EQ(faults.front().pointer, pointer);
    }
    for (const char* key : {"format", "name", "rules"}) {
        Json document = lined_rules();
        document.erase(key);
        EXPECT_EQ(faults_of(document).size(), 1U) << key;
    }
    EXPECT_FALSE(read_rules_document("[]").ok());
    EXPECT_FALSE(read_rules_document("{").ok());
}

// Law: the defaults as a document are the defaults.
TEST(RulesDocument, OfTheDefaultsChangesNothing) {
    const auto read = read_rules_document(write_rules_document(default_rules_document()));
    ASSERT_TRUE(read.ok());
    EXPECT_TRUE(unknown_rules(read->rules).empty());
    const HouseRules plain;
    const HouseRules set = house_rules(read->rules);
    for (const std::string& key : house_rule_keys()) {
        EXPECT_EQ(rule_value(set, key), rule_value(plain, key)) << key;
    }
}

// Law: every rule has its words, once.
TEST(RulesDocument, EveryRuleIsSaidInWords) {
    std::multiset<std::string> said;
    for (const RuleWords& words : rule_words()) {
        EXPECT_FALSE(words.says.empty());
        EXPECT_FALSE(words.group.empty());
        said.emplace(words.key);
    }
    const auto keys = house_rule_keys();
    EXPECT_EQ(said, std::multiset<std::string>(keys.begin(), keys.end()));
}

// Law: a survey keeps the rules that it was worked by, with their name, version and date.
TEST(RulesDocument, StandsInASurveyAsItIs) {
    Json survey{{"format", "truehang.survey/1"}, {"id", "a"}, {"fabrics", Json::array()}, {"rooms", Json::array()}};
    survey["rules"] = {{"name", "Lined curtains"}, {"version", 3}, {"date", "2026-03-14"}, {"hem_mm", 160}};
    const auto read = read_survey(survey.dump());
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(read->rules.version, 3);
    EXPECT_TRUE(unknown_rules(read->rules).empty());
    EXPECT_EQ(Json::parse(write_survey(*read))["rules"], survey["rules"]);
}

// Law: what is set one by one is refused by the same ranges, and in the same words, as a document.
TEST(RulesDocument, OneRuleIsRefusedAsTheDocumentIs) {
    HouseRuleEntries rules;
    const std::pair<const char*, double> refused[] = {
        {"hem_mm", -3}, {"tab_gap_mm", 0}, {"pelmet_share", 1.5}, {"order_step_m", 0}, {"hem_mm", 100'001}};
    for (const auto& [key, value] : refused) {
        const auto set = set_rule(rules, key, value);
        ASSERT_FALSE(set) << key;
        EXPECT_EQ(set.error().code, ErrorCode::out_of_range);
        const auto read = read_rules_document(
            fmt::format(R"({{"format": "truehang.rules/1", "name": "House", "rules": {{"{}": {}}}}})", key, value));
        ASSERT_FALSE(read) << key;
        ASSERT_EQ(read.error().size(), 1U);
        EXPECT_EQ(read.error().front().text, set.error().text);
    }
    EXPECT_EQ(set_rule(rules, "hem_mm.tab", 10).error().code, ErrorCode::missing);
    EXPECT_EQ(set_rule(rules, "head_mm.slot", 10).error().code, ErrorCode::missing);
    EXPECT_FALSE(set_rule(rules, "head_mm.tab", -1));
    EXPECT_TRUE(rules.numbers.empty() && rules.head_mm.empty());
}

// The trade rules, sections 1 and 2: a hem of 150, a head of 10 over tabs, unless the house says otherwise.
TEST(RulesDocument, OneRuleIsSetAndTakenOutAgain) {
    HouseRuleEntries rules;
    EXPECT_EQ(worth_of_rule(rules, "hem_mm"), 150.0);
    EXPECT_EQ(worth_of_rule(rules, "head_mm.tab"), 10.0);
    EXPECT_EQ(worth_of_rule(rules, "fringe_mm"), std::nullopt);
    EXPECT_TRUE(set_rule(rules, "hem_mm", 120));
    EXPECT_TRUE(set_rule(rules, "head_mm.tab", 15));
    EXPECT_EQ(worth_of_rule(rules, "hem_mm"), 120.0);
    EXPECT_EQ(worth_of_rule(rules, "head_mm.tab"), 15.0);
    EXPECT_TRUE(set_rule(rules, "hem_mm", std::nullopt));
    EXPECT_TRUE(set_rule(rules, "head_mm.tab", std::nullopt));
    EXPECT_TRUE(rules.numbers.empty() && rules.head_mm.empty());
}

}  // namespace
}  // namespace truehang
