// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"
#include "figures/agreement.h"
#include "figures/choices.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <functional>
#include <sstream>
#include <string>
#include <vector>

// What a client signed, and how far it still covers the figures.

namespace truehang {
namespace {

Survey contract_example() {
    std::ifstream file(TRUEHANG_SOURCE_DIR "/tests/reference/contract/survey.example.json", std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    return read_survey(text.str()).value();
}

Survey signed_example(double price = 0.0) {
    Survey survey = contract_example();
    if (price > 0.0) {
        survey.fabrics.front().price_per_m = price;
        survey.fabrics.front().currency = "GBP";
    }
    survey.signed_off = SignedOff{"R. Oduya", "2026-03-14T11:40:00+00:00", std::nullopt, agreed_now(survey), {}};
    return survey;
}

std::vector<std::string> outdated(const Survey& survey) {
    std::vector<std::string> texts;
    for (const WindowFigures& window : work_out(survey).windows) {
        for (const Flag& flag : window.flags) {
            if (flag.code == agreement_outdated) {
                EXPECT_EQ(flag.severity, Severity::decide);
                texts.push_back(flag.text);
            }
        }
    }
    return texts;
}

Window& window_of(Survey& survey) { return survey.rooms.front().windows.front(); }
Layer& layer_of(Survey& survey) { return window_of(survey).layers.front(); }

bool says(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

TEST(Agreement, FreezesTheFiguresAsTheyStand) {
    const Survey survey = signed_example(24.0);
    const Agreed& agreed = *survey.signed_off->agreed;
    EXPECT_EQ(agreed.rules, "house rules 2026");
    EXPECT_EQ(agreed.revision, 1);
    ASSERT_EQ(agreed.layers.size(), 1U);
    // The contract's own answer to its example: two of 860 × 1992; sailcloth 2 × 2240 and 2 × 205, sateen 2 × 2110.
    const AgreedLayer& layer = agreed.layers.front();
    EXPECT_EQ(layer.window, "parlour-south");
    EXPECT_EQ(layer.title, "Parlour, south window");
    EXPECT_EQ(layer.curtains, 2);
    EXPECT_DOUBLE_EQ(layer.width.mm(), 860.0);
    EXPECT_DOUBLE_EQ(layer.drop.mm(), 1992.0);
    ASSERT_EQ(layer.cloths.size(), 2U);
    EXPECT_DOUBLE_EQ(layer.cloths[0].length.mm(), 4890.0);
    EXPECT_DOUBLE_EQ(layer.cloths[1].length.mm(), 4220.0);
    // 4.89 m at 24 a metre; the sateen has no price.
    EXPECT_NEAR(layer.cloths[0].cost.value(), 117.36, 1e-9);
    EXPECT_EQ(layer.cloths[0].currency, "GBP");
    EXPECT_FALSE(layer.cloths[1].cost);
}

TEST(Agreement, CoversWhatDoesNotChangeAFigure) {
    Survey survey = signed_example();
    EXPECT_TRUE(outdated(survey).empty());
    survey.client->phone = "+44 1632 960 333";
    survey.revision = 9;
    survey.rules.name = "house rules, new name";
    window_of(survey).notes = "Ring first.";
    window_of(survey).obstructions.clear();
    survey.fabrics.front().colour = "#4d7a6c";
    layer_of(survey).hardware->brackets = 3;
    EXPECT_TRUE(outdated(survey).empty());
}

TEST(Agreement, ChangesNoFigureWhereNothingWasFrozen) {
    const Survey survey = contract_example();
    ASSERT_TRUE(survey.signed_off && !survey.signed_off->agreed);
    Survey other = survey;
    layer_of(other).hardware->length = Length::mm(1800);
    EXPECT_TRUE(outdated(other).empty());
    const auto with = write_figures(work_out(signed_example()));
    EXPECT_EQ(with, write_figures(work_out(survey)));
}

TEST(Agreement, SaysByHowMuchASizeDiffers) {
    Survey survey = signed_example();
    layer_of(survey).hardware->length = Length::mm(1760);
    std::vector<std::string> texts = outdated(survey);
    ASSERT_EQ(texts.size(), 1U);
    // Trade rules, section 4: a pair without return and overlap, each half of the pole: 1760 / 2 is 880, 20 more.
    EXPECT_TRUE(says(texts[0], "R. Oduya")) << texts[0];
    EXPECT_TRUE(says(texts[0], "finished width 860 mm agreed, 880 mm now, 20 mm more")) << texts[0];

    survey = signed_example();
    survey.rules.numbers["floor_clearance_mm"] = 25;
    texts = outdated(survey);
    ASSERT_EQ(texts.size(), 1U);
    EXPECT_TRUE(says(texts[0], "finished drop 1992 mm agreed, 1977 mm now, 15 mm less")) << texts[0];
    // In a repeat of 320 the cut drop stays seven repeats: (1977 + 220) / 0.98 is still over six.
    EXPECT_FALSE(says(texts[0], "Herring")) << texts[0];
}

TEST(Agreement, SaysWhichClothDiffers) {
    Survey survey = signed_example(24.0);
    survey.fabrics.front().repeat = Length::mm(640);
    std::vector<std::string> texts = outdated(survey);
    ASSERT_EQ(texts.size(), 1U);
    // Trade rules, section 5: drops of 2240 go up to four repeats of 640, 2560: 2 × 320 more, 0.64 m, 15.36 at 24 a
    // metre.
    EXPECT_TRUE(says(texts[0], "4.89 m of Herring sailcloth, chalk agreed, 5.53 m now, 0.64 m more")) << texts[0];
    EXPECT_TRUE(says(texts[0], "117.36 GBP agreed, 132.72 GBP now")) << texts[0];

    survey = signed_example(24.0);
    survey.fabrics.front().price_per_m = 25.0;
    texts = outdated(survey);
    ASSERT_EQ(texts.size(), 1U);
    EXPECT_TRUE(says(texts[0], "122.25 GBP now")) << texts[0];

    survey = signed_example();
    layer_of(survey).treatment->lining.reset();
    texts = outdated(survey);
    ASSERT_EQ(texts.size(), 1U);
    EXPECT_TRUE(says(texts[0], "4.22 m of Cotton sateen lining, dove grey was agreed, and none is taken now"))
        << texts[0];
}

TEST(Agreement, SaysWhatHangsThereInstead) {
    Survey survey = signed_example();
    layer_of(survey).treatment->layout = Word<Layout>(Layout::single);
    ASSERT_EQ(outdated(survey).size(), 1U);
    EXPECT_TRUE(says(outdated(survey)[0], "pair was agreed"));

    survey = signed_example();
    std::erase_if(window_of(survey).readings, [](const Reading& one) { return one.station == "pole.above"; });
    ASSERT_EQ(outdated(survey).size(), 1U);
    EXPECT_TRUE(says(outdated(survey)[0], "can’t be made as it stands now"));

    survey = signed_example();
    Window other = window_of(survey);
    other.id = "parlour-north";
    survey.rooms.front().windows.push_back(other);
    ASSERT_EQ(outdated(survey).size(), 1U);
    EXPECT_TRUE(says(outdated(survey)[0], "was added after the signing"));
    EXPECT_TRUE(agreed_and_gone(survey).empty());

    survey = signed_example();
    survey.rooms.front().windows.clear();
    EXPECT_EQ(agreed_and_gone(survey), std::vector<std::string>{"Parlour, south window"});
}

TEST(Agreement, IsNotHeldAgainstWaysThatAreOnlyCompared) {
    const Survey survey = signed_example();
    Variation fuller;
    fuller.fullness = 2.0;
    const auto compared = compare(survey, "", "parlour-south", "", {fuller});
    ASSERT_TRUE(compared);
    for (const Choice& choice : compared->choices) {
        EXPECT_EQ(std::ranges::find(choice.flags, agreement_outdated, &Flag::code), choice.flags.end());
    }
}

TEST(Agreement, SaysWhatIsNotSettled) {
    Survey survey = contract_example();
    EXPECT_TRUE(unsettled(survey, work_out(survey)).empty());
    std::erase_if(window_of(survey).readings, [](const Reading& one) { return one.station == "pole.above"; });
    const auto sentences = unsettled(survey, work_out(survey));
    ASSERT_GE(sentences.size(), 2U);
    EXPECT_TRUE(says(sentences.front(), "nothing to agree"));
    EXPECT_TRUE(says(sentences.back(), "Parlour, south window: ")) << sentences.back();
}

TEST(Agreement, IsSealedTheSameAfterItHasTravelled) {
    const Survey survey = signed_example(24.35);
    const std::string sealed = sealed_text(*survey.signed_off->agreed);
    Survey travelled = read_survey(write_survey(survey)).value();
    EXPECT_EQ(sealed_text(*travelled.signed_off->agreed), sealed);
    travelled.signed_off->agreed->digest = "0123";
    EXPECT_EQ(sealed_text(*travelled.signed_off->agreed), sealed);
    travelled.signed_off->agreed->layers.front().drop = Length::mm(1993);
    EXPECT_NE(sealed_text(*travelled.signed_off->agreed), sealed);
}

}  // namespace
}  // namespace truehang
