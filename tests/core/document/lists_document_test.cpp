// SPDX-License-Identifier: Apache-2.0
// A surveyor's own lists as a document: what is read is written again, and every fault has its place.
#include "document/lists_document.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace truehang {
namespace {

using Json = nlohmann::ordered_json;

Json lists() {
    return {{"format", "truehang.lists/1"},
            {"fabrics",
             {{{"id", "chalk"}, {"role", "face"}, {"name", "Herring sailcloth, chalk"}, {"width_mm", 1400.0}},
              {{"id", "dove"},
               {"role", "lining"},
               {"name", "Sateen, dove"},
               {"width_mm", 1370.0},
               {"mill", "Weft & Son"}}}},
            {"hardware", {{{"name", "Oak pole"}, {"kind", "pole"}, {"diameter_mm", 28.0}, {"removed", true}}}},
            {"rules", {{{"name", "Lined curtains"}, {"version", 3}, {"rules", {{"hem_mm", 160.0}, {"knots", 7.0}}}}}},
            {"from", "a newer phone"}};
}

Faults faults_of(const Json& document) {
    const auto read = read_own_lists(document.dump());
    return read ? Faults{} : read.error();
}

// Law: reading what was written gives the same, unknown keys included.
TEST(OwnLists, AreWrittenAsTheyWereRead) {
    const auto read = read_own_lists(lists().dump());
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(read->hardware.at(0).name, "Oak pole");
    EXPECT_EQ(read->fabrics.at(1).width, Length::mm(1370));
    EXPECT_EQ(nlohmann::json::parse(write_own_lists(*read)), nlohmann::json(lists()));
    const auto nothing = read_own_lists(write_own_lists({}));
    ASSERT_TRUE(nothing.ok());
    EXPECT_TRUE(nothing->fabrics.empty() && nothing->hardware.empty() && nothing->rules.empty());
}

TEST(OwnLists, AreRefusedWithThePlaceOfEachFault) {
    for (const auto& [at, value] : std::vector<std::pair<std::string, Json>>{{"/format", "truehang.lists/2"},
                                                                             {"/fabrics/1/id", "chalk"},
                                                                             {"/fabrics/0/width_mm", -1},
                                                                             {"/hardware/0/name", ""},
                                                                             {"/hardware/0/diameter_mm", "28"},
                                                                             {"/rules/0/rules/hem_mm", -1},
                                                                             {"/rules/0/name", ""}}) {
        Json document = lists();
        document[Json::json_pointer(at)] = value;
        const Faults faults = faults_of(document);
        ASSERT_EQ(faults.size(), 1U) << at;
        EXPECT_EQ(faults[0].pointer, at);
    }
    Json twice = lists();
    twice["hardware"].push_back(twice["hardware"][0]);
    ASSERT_EQ(faults_of(twice).size(), 1U);
    EXPECT_EQ(faults_of(twice)[0].pointer, "/hardware/1/name");
    EXPECT_FALSE(read_own_lists("{").ok());
}

}  // namespace
}  // namespace truehang
