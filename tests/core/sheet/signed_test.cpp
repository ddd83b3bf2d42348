// SPDX-License-Identifier: Apache-2.0
#include "sheet/signed.h"

#include "figures/agreement.h"
#include "sheet/sheets.h"
#include "windows.h"

#include <algorithm>
#include <string>

// How far a signature covers what there is now, by the contract's worked example.

namespace truehang::test {
namespace {

Survey signed_example() {
    Survey survey = contract_example();
    survey.signed_off = SignedOff{"R. Oduya", "2026-03-14T11:40:00+00:00", std::nullopt, agreed_now(survey), {}};
    return survey;
}

Layer& layer_in(Survey& survey) { return survey.rooms.front().windows.front().layers.front(); }

bool is_flagged(const Survey& survey) {
    const auto figures = work_out(survey);
    return !agreed_and_gone(survey).empty() || std::ranges::any_of(figures.windows, [](const WindowFigures& window) {
        return std::ranges::find(window.flags, agreement_outdated, &Flag::code) != window.flags.end();
    });
}

}  // namespace

TEST(SinceSigned, IsNothingWhereNothingWasSigned) { EXPECT_FALSE(since_signed(contract_example())); }

TEST(SinceSigned, SaysThatTheFiguresAreAsAgreed) {
    Survey survey = signed_example();
    survey.revision = 5;
    survey.title = "Another name";
    const auto since = since_signed(survey);
    ASSERT_TRUE(since);
    EXPECT_FALSE(since->differs());
    EXPECT_FALSE(is_flagged(survey));
    EXPECT_EQ(signed_sentence(*since), "Agreed on revision 1 by R. Oduya, and the figures are as agreed.");
}

TEST(SinceSigned, SaysByHowMuchTheyDiffer) {
    Survey survey = signed_example();
    survey.revision = 2;
    layer_in(survey).hardware->length = Length::mm(1760);
    survey.fabrics.front().repeat = Length::mm(640);
    const auto since = since_signed(survey);
    ASSERT_TRUE(since && since->differs());
    EXPECT_TRUE(is_flagged(survey)) << "as the phone says it";
    EXPECT_EQ(signed_sentence(*since), "Agreed on revision 1 by R. Oduya, figures differ since.");
    SheetsAsked making;
    making.kind = SheetKind::making;
    const auto sheets = sheets_of(survey, work_out(survey), making);
    ASSERT_FALSE(sheets.empty());
    ASSERT_FALSE(sheets.front().first.empty());
    EXPECT_EQ(sheets.front().first.front().text, signed_sentence(*since)) << "before anything else";
    ASSERT_EQ(since->difference.layers.size(), 1U);
    const auto& lines = since->difference.layers.front().lines;
    ASSERT_EQ(lines.size(), 2U);
    // Trade rules, section 4: each half of the pole, 1720 / 2 and 1760 / 2.
    EXPECT_EQ(lines[0].figure, "finished.width_mm");
    EXPECT_EQ(lines[0].more, "+20 mm");
    // Trade rules, section 5: drops of 2240 go up to four repeats of 640: 0.64 m more in two.
    EXPECT_EQ(lines[1].what, "Herring sailcloth");
    EXPECT_EQ(lines[1].before, "4.89 m");
    EXPECT_EQ(lines[1].more, "+0.64 m");
}

TEST(SinceSigned, SaysWhatCameAndWent) {
    Survey survey = signed_example();
    survey.rooms.front().windows.clear();
    ASSERT_TRUE(since_signed(survey)->differs());
    EXPECT_TRUE(since_signed(survey)->difference.layers.front().went);
    EXPECT_TRUE(is_flagged(survey));
}

}  // namespace truehang::test
