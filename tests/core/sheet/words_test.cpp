// SPDX-License-Identifier: Apache-2.0
#include "sheet/words.h"
#include "windows.h"

namespace truehang::test {
namespace {

TEST(Words, TwiceTheUncertaintyInWholeMillimetres) {
    // The contract: sheets show ± twice the standard uncertainty; the trade rules round halves away from zero.
    EXPECT_EQ(plus_minus(Length::mm(2.9), {}), "± 6");
    EXPECT_EQ(plus_minus(Length::mm(1.25), {}), "± 3");
    EXPECT_EQ(plus_minus(Length::mm(1.24), {}), "± 2");
    EXPECT_EQ(plus_minus(Length::mm(0.1), {}), "± 1");
    EXPECT_EQ(plus_minus(Length(), {}), "");
}

TEST(Words, NumbersWithTheLocalesDecimalMark) {
    const SheetStyle german{.decimal = ','};
    EXPECT_EQ(number_text(1.5116, 2, german), "1,51");
    EXPECT_EQ(number_text(-68.01, 2, {}), "−68.01");
    EXPECT_EQ(number_text(-0.001, 2, {}), "0.00");
    EXPECT_EQ(mass_text(Mass::kg(2.65), german), "2,7 kg");
}

TEST(Words, TreatmentInOneLine) {
    const Survey survey = contract_example();
    const Layer& layer = survey.rooms[0].windows[0].layers[0];
    EXPECT_EQ(treatment_text(layer, {}), "A pair, tab headed, lined, floor length, on a 28 mm pole 1720 long, level.");
    EXPECT_EQ(treatment_text(Layer(), {}), "");
}

TEST(Words, FlagsHaveAShapeAndAWordEach) {
    EXPECT_EQ(word_of(shape_of(Severity::caution)), "triangle");
    EXPECT_EQ(word_of(shape_of(Severity::note)), "circle");
    EXPECT_EQ(word_of(shape_of(Severity::decide)), "square");
    EXPECT_EQ(word_of(shape_of(Severity::remeasure)), "broken circle");
    EXPECT_EQ(word_of(shape_of(Severity::stop)), "bar");
    EXPECT_EQ(flag_word(Severity::remeasure), "Measure again");
}

TEST(Words, DaysAndTitles) {
    EXPECT_EQ(day_text("2026-03-14T10:20:00+00:00"), "14 March 2026");
    EXPECT_EQ(day_text("soon"), "soon");
    EXPECT_EQ(day_text("2026-13-14T10:20:00Z"), "2026-13-14T10:20:00Z");
    const Survey survey = contract_example();
    EXPECT_EQ(window_title(survey.rooms[0], survey.rooms[0].windows[0]), "Parlour, south window");
}

TEST(Words, CountsOneAndMany) {
    EXPECT_EQ(counted(1, "drop", "drops"), "1 drop");
    EXPECT_EQ(piece_text("tabs", 2), "2 rows of tabs");
    EXPECT_EQ(count_word(7), "seven");
    EXPECT_EQ(count_word(13), "13");
}

}  // namespace
}  // namespace truehang::test
