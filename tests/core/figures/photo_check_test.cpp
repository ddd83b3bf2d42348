// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"
#include "figures/figures.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <sstream>

// A photo as a rough tape in the figures: a check and a flag, and nothing else moves. The views are drawn by the
// formulas that stand here.

namespace truehang {
namespace {

using Json = nlohmann::ordered_json;

/// The contract's example: an opening of 1242, 1240, 1238 by 1130 and 1132.
Survey contract_example() {
    std::ifstream file(TRUEHANG_SOURCE_DIR "/tests/reference/contract/survey.example.json", std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    return read_survey(text.str()).value();
}

/// Of one window the figures as they are written.
Json window_figures(const Survey& survey) { return figures_json(work_out(survey)).at("windows").at(0); }

/// An opening of `width` by 1131 with an A4 sheet on either side, two pixels a millimetre at its bottom, narrowing
/// upwards.
PhotoPlane photographed(double width) {
    const auto tap = [](double x, double y) {
        const double w = 1.0 + 1e-4 * y;
        return Taps{{(800.0 + 2.0 * x) / w / 4032.0, (2800.0 - 2.0 * y) / w / 3024.0}};
    };
    const auto corners = [&](double x, double y, double wide, double high) {
        return TappedCorners{tap(x, y + high), tap(x + wide, y + high), tap(x + wide, y), tap(x, y)};
    };
    const auto sheet = [&](double x) {
        return FlatSheet{Length::mm(210.0), Length::mm(297.0), corners(x, 300, 210, 297), {}};
    };
    return {4032, 3024, {sheet(width + 60), sheet(-270)}, corners(0, 0, width, 1131), {}};
}

Survey with_photo(double width) {
    Survey survey = contract_example();
    survey.rooms.front().windows.front().photos.emplace_back().plane = photographed(width);
    return survey;
}

/// Its check is taken out; whether it was there.
bool take_check_out(Json& figures, bool adds_up) {
    Json& checks = figures.at("checks");
    if (checks.empty() || checks.back().at("network") != "photo") {
        return false;
    }
    EXPECT_EQ(checks.back().at("adds_up"), adds_up);
    // Three widths and two heights, each a size of its own.
    EXPECT_EQ(checks.back().at("redundancy"), 5);
    EXPECT_EQ(checks.back().at("readings").size(), 5U);
    checks.erase(checks.size() - 1);
    return true;
}

TEST(PhotoInFigures, AddsACheckAndNothingElseWhereItAgrees) {
    const Json without = window_figures(contract_example());
    Json with = window_figures(with_photo(1240.0));
    EXPECT_TRUE(take_check_out(with, true));
    EXPECT_EQ(with, without);
}

TEST(PhotoInFigures, SaysThatItDisagreesAndMovesNoFigure) {
    Json without = window_figures(contract_example());
    Json with = window_figures(with_photo(1500.0));
    EXPECT_TRUE(take_check_out(with, false));
    const Json flag = with.at("flags").front();
    EXPECT_EQ(flag.at("code"), "does-not-add-up");
    EXPECT_EQ(flag.at("severity"), "remeasure");
    EXPECT_EQ(flag.at("stations").size(), 5U);
    EXPECT_FALSE(flag.at("suspects").empty());
    for (Json* figures : {&with, &without}) {
        for (const auto* key : {"flags", "next", "nothing_more"}) {
            figures->erase(key);
        }
    }
    EXPECT_EQ(with, without);
}

TEST(PhotoInFigures, SaysNothingWhileItsCornersAreBeingTapped) {
    Survey survey = with_photo(1240.0);
    survey.rooms.front().windows.front().photos.back().plane->opening.pop_back();
    EXPECT_EQ(window_figures(survey), window_figures(contract_example()));
}

}  // namespace
}  // namespace truehang
