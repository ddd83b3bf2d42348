// SPDX-License-Identifier: Apache-2.0
#include "figures/next_step.h"
#include "document/document.h"
#include "figures/agreement.h"
#include "survey/standing.h"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

// What comes next of a visit: measured, agreed with the client, sent. The order is the job's own: common practice, no
// source. And that what is in the way is named as people name it.

namespace truehang {
namespace {

/// The contract's example: one window, measured whole, a pair that can be made; unsigned.
Survey example() {
    std::ifstream file(TRUEHANG_SOURCE_DIR "/tests/reference/contract/survey.example.json", std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    Survey survey = read_survey(text.str()).value();
    survey.signed_off.reset();
    return survey;
}

Window& window_of(Survey& survey) { return survey.rooms.front().windows.front(); }

/// Every station of the walk answered, so that nothing is left to measure.
Survey measured() {
    Survey survey = example();
    for (const Station& left : stations_left(window_of(survey))) {
        window_of(survey).not_taken.push_back({std::string(left.word), "Something stands in the way", {}});
    }
    return survey;
}

Next next(const Survey& survey, bool sent = false) { return next_of(survey, work_out(survey), sent); }

TEST(NextStep, AddsThenMeasuresThenAgreesThenSends) {
    Survey empty = example();
    empty.rooms.clear();
    EXPECT_EQ(next(empty).step, NextStep::add_window);

    Survey survey = measured();
    window_of(survey).readings.clear();
    EXPECT_EQ(next(survey).step, NextStep::measure);
    EXPECT_EQ(next(survey).window, window_of(survey).id);

    survey = measured();
    EXPECT_EQ(next(survey).step, NextStep::agree);
    survey.signed_off = SignedOff{"R. Oduya", "2026-03-14T11:40:00+00:00", std::nullopt, agreed_now(survey), {}};
    EXPECT_EQ(next(survey).step, NextStep::send);
    EXPECT_EQ(next(survey, true).step, NextStep::done);
}

TEST(NextStep, LeadsBackToTheClientWhereWhatWasSignedNoLongerHolds) {
    Survey survey = measured();
    survey.signed_off = SignedOff{"R. Oduya", "2026-03-14T11:40:00+00:00", std::nullopt, agreed_now(survey), {}};
    window_of(survey).layers.front().hardware->length = Length::mm(1760);
    EXPECT_EQ(next(survey).step, NextStep::agree_again);
    window_of(survey).id = "another";  // and the one that was signed for has gone
    EXPECT_EQ(next(survey).step, NextStep::agree_again);
}

TEST(NextStep, SendsWhatIsOnlyMeasured) {
    Survey survey = measured();
    window_of(survey).layers.clear();
    for (const Station& left : stations_left(window_of(survey))) {
        window_of(survey).not_taken.push_back({std::string(left.word), "On the next visit", {}});
    }
    EXPECT_EQ(next(survey).step, NextStep::send);
}

/// What is said of each thing that stands further out than the curtain hangs (trade rules, section 8: `curtain-fouls`).
std::string said_of(ObstructionKind kind) {
    Survey survey = example();
    Obstruction thing;
    thing.id = "thing";
    thing.kind = Word<ObstructionKind>(Word<ObstructionKind>::word_for(kind));
    thing.left = Length::mm(100);
    thing.width = Length::mm(900);
    thing.bottom = Length::mm(900);
    thing.height = Length::mm(1000);
    thing.depth = Length::mm(900);
    window_of(survey).obstructions = {thing};
    const Figures figures = work_out(survey);
    for (const Flag& flag : figures.windows.front().flags) {
        if (flag.code == "curtain-fouls" && flag.obstruction == "thing") {
            return flag.text;
        }
    }
    return {};
}

TEST(Obstructions, AreNamedAsPeopleNameThem) {
    for (const auto& [word, kind] : Words<ObstructionKind>::list) {
        const std::string said = said_of(kind);
        EXPECT_FALSE(said.empty()) << word;
        EXPECT_EQ(said.find('-'), std::string::npos) << said;
    }
    EXPECT_EQ(said_of(ObstructionKind::casement_swing).rfind("The casement swing stands out", 0), 0U);
    EXPECT_EQ(said_of(ObstructionKind::other).rfind("The obstruction stands out", 0), 0U);
}

}  // namespace
}  // namespace truehang
