// SPDX-License-Identifier: Apache-2.0
#include "document/json_reader.h"
#include "documents.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <filesystem>
#include <nlohmann/json.hpp>

using namespace truehang;

namespace {

std::string fault_at(const std::string& bytes) {
    const auto tree = read_json(bytes);
    if (tree.ok()) {
        return "no fault";
    }
    EXPECT_EQ(tree.error().size(), 1U);
    return tree.error().front().pointer;
}

// JSONTestSuite (N. Seriot, MIT): y_ must be taken, n_ must be refused, i_ may be either.
std::vector<std::string> suite(const std::string& prefix) {
    std::vector<std::string> paths;
    for (const auto& entry : std::filesystem::directory_iterator(JSON_PARSING_SUITE)) {
        if (entry.path().filename().string().starts_with(prefix)) {
            paths.push_back(entry.path().string());
        }
    }
    return paths;
}

TEST(JsonParsingSuite, EveryYIsTakenAndNoneIsASurvey) {
    const auto paths = suite("y_");
    ASSERT_EQ(paths.size(), 95U);
    for (const auto& path : paths) {
        const std::string bytes = bytes_of(path);
        const auto tree = read_json(bytes);
        EXPECT_TRUE(tree.ok()) << path;
        EXPECT_EQ(nlohmann::json::parse(json_text(tree->root)), nlohmann::json::parse(bytes)) << path;
        EXPECT_FALSE(read_survey(bytes).ok()) << path;
    }
}

TEST(JsonParsingSuite, EveryNIsRefused) {
    const auto paths = suite("n_");
    ASSERT_EQ(paths.size(), 188U);
    for (const auto& path : paths) {
        EXPECT_FALSE(read_json(bytes_of(path)).ok()) << path;
        EXPECT_FALSE(read_survey(bytes_of(path)).ok()) << path;
    }
}

TEST(JsonParsingSuite, EveryIIsTakenOrRefusedWithAReason) {
    const auto paths = suite("i_");
    ASSERT_GT(paths.size(), 30U);
    for (const auto& path : paths) {
        const auto survey = read_survey(bytes_of(path));
        ASSERT_FALSE(survey.ok()) << path;
        EXPECT_FALSE(survey.error().front().text.empty()) << path;
    }
}

TEST(Json, IsReadAHundredDeepAndNoDeeper) {
    const std::string open(100, '[');
    const std::string close(100, ']');
    EXPECT_EQ(fault_at(open + close), "no fault");
    std::string deepest;
    for (int i = 0; i < 100; ++i) {
        deepest += "/0";
    }
    EXPECT_EQ(fault_at(open + "[" + close + "]"), deepest);
    EXPECT_EQ(fault_at(R"({"a": )" + std::string(1000000, '[')), "/a" + deepest.substr(2));
}

TEST(Json, IsReadUpToFourMebibytes) {
    const std::string text(4U * 1024U * 1024U - 2U, 'x');
    EXPECT_EQ(fault_at("\"" + text + "\""), "no fault");
    EXPECT_EQ(fault_at("\"" + text + "x\""), "");
}

TEST(Json, HoldsAtMostHalfAMillionValues) {
    std::string text = "[0";
    for (int i = 0; i < 499998; ++i) {
        text += ",0";
    }
    EXPECT_EQ(fault_at(text + "]"), "no fault");
    EXPECT_EQ(fault_at(text + ",0,0]"), "/500000");
}

TEST(Json, FaultsLieWhereTheyAre) {
    EXPECT_EQ(fault_at(""), "");
    EXPECT_EQ(fault_at("{} {}"), "");
    EXPECT_EQ(fault_at(R"({"a": {"b": [1, 1e999]}})"), "/a/b/1");
    EXPECT_EQ(fault_at(R"({"a": {"b": [1, -1e999]}})"), "/a/b/1");
    EXPECT_EQ(fault_at(R"({"a": {"b": [1, NaN]}})"), "/a/b/1");
    EXPECT_EQ(fault_at("{\"a\": {\"b\": [1, 2, \"\xff\"]}}"), "/a/b/2");
    EXPECT_EQ(fault_at("{\"a\": {\"b\xc3\": 1}}"), "/a");
    EXPECT_EQ(fault_at(R"({"a/b~c": oops})"), "/a~1b~0c");
    EXPECT_EQ(fault_at(R"({"a": [1, 2)"), "/a/2");
    EXPECT_EQ(fault_at(R"({"a": "\ud800"})"), "/a");
    EXPECT_EQ(fault_at(std::string("{\"a\": 12\0}", 10)), "");
    EXPECT_EQ(fault_at(std::string("{\"a\": [12,\0]}", 13)), "/a/1");
}

TEST(Json, SaysTheLineOfAFault) {
    const auto tree = read_json("{\n \"a\": 1,\n \"b\": oops\n}");
    ASSERT_FALSE(tree.ok());
    EXPECT_NE(tree.error().front().text.find("line 3"), std::string::npos) << tree.error().front().text;
}

TEST(Json, KeepsOrderAndNumbersAsWritten) {
    const std::string text = R"({"z":1.50,"a":[123456789012345678901234567890,-7,1E5],"m":{"é":null}})";
    const auto tree = read_json(text);
    ASSERT_TRUE(tree.ok());
    EXPECT_EQ(json_text(tree->root), text);
}

TEST(Json, NamesKeysThatStandTwice) {
    const auto tree = read_json(R"({"a": {"b": 1, "b": 2}, "a": 3})");
    ASSERT_TRUE(tree.ok());
    EXPECT_EQ(tree->repeated_keys, (std::vector<std::string>{"/a/b", "/a"}));
}

// RFC 6901, section 5: the keys of its example and their pointers.
TEST(JsonPointer, EscapesAsTheStandardSays) {
    EXPECT_EQ(pointer_to("", ""), "/");
    EXPECT_EQ(pointer_to("", "a/b"), "/a~1b");
    EXPECT_EQ(pointer_to("", "c%d"), "/c%d");
    EXPECT_EQ(pointer_to("", "k\"l"), "/k\"l");
    EXPECT_EQ(pointer_to("", "m~n"), "/m~0n");
    EXPECT_EQ(pointer_to(pointer_to("", "foo"), std::size_t{0}), "/foo/0");
}

RC_GTEST_PROP(JsonNumberLaw, ReadsBackAsTheSameDouble, (double number)) {
    RC_PRE(std::isfinite(number));
    RC_ASSERT(nlohmann::json::parse(json_number(number)).get<double>() == number);
}

RC_GTEST_PROP(JsonLaw, AnyBytesAreReadOrRefused, (const std::string& bytes)) {
    const auto tree = read_json(bytes);
    RC_ASSERT(tree.ok() == nlohmann::json::accept(bytes));
}

}  // namespace
