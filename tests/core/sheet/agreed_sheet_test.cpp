// SPDX-License-Identifier: Apache-2.0
#include "sheet/agreed_sheet.h"
#include "figures/agreement.h"
#include "sheet/sheets.h"
#include "windows.h"

#include <algorithm>
#include <string>

// The client's copy.

namespace truehang::test {
namespace {

Survey signed_example() {
    Survey survey = contract_example();
    survey.fabrics.front().price_per_m = 24.0;
    survey.fabrics.front().currency = "GBP";
    survey.signed_off = SignedOff{"R. Oduya",
                                  "2026-03-14T11:40:00+00:00",
                                  Signature{2.0, {{{0.1, 0.5}, {0.5, 0.25}}}, {}},
                                  agreed_now(survey),
                                  {}};
    survey.signed_off->agreed->digest = std::string(64, 'a');
    return survey;
}

std::vector<Sheet> copies(const Survey& survey) {
    SheetsAsked asked;
    asked.kind = SheetKind::agreed;
    return sheets_of(survey, work_out(survey), asked);
}

std::string words_of(const Sheet& sheet) {
    std::string words;
    for (const SheetPart& part : sheet.parts) {
        if (const auto* lines = std::get_if<SheetWords>(&part)) {
            for (const std::string& line : lines->lines) {
                words += line + "\n";
            }
        }
    }
    return words;
}

std::string cell(const Sheet& sheet, const char* figure) {
    const SheetCell* found = find_cell(sheet, figure);
    return found == nullptr ? std::string() : found->text;
}

std::size_t signature_strokes(const Sheet& sheet) {
    std::size_t strokes = 0;
    for (const SheetPart& part : sheet.parts) {
        if (const auto* drawing = std::get_if<SheetDrawing>(&part)) {
            strokes += static_cast<std::size_t>(
                std::ranges::count(drawing->drawing.strokes, std::string("signature"), &Stroke::part));
        }
    }
    return strokes;
}

TEST(AgreedSheet, SaysWhatWasSignedAndByWhom) {
    const auto sheets = copies(signed_example());
    ASSERT_EQ(sheets.size(), 1U);
    const Sheet& sheet = sheets.front();
    // The contract's own answer to its example: each 860 × 1992; 4.89 m, at 24 a metre 117.36.
    EXPECT_EQ(cell(sheet, "agreed.width_mm"), "860");
    EXPECT_EQ(cell(sheet, "agreed.drop_mm"), "1992");
    EXPECT_EQ(cell(sheet, "agreed.sailcloth"), "4.89 m, 117.36 GBP");
    EXPECT_EQ(cell(sheet, "agreed.sateen"), "4.22 m");
    const std::string words = words_of(sheet);
    EXPECT_NE(words.find("Cloth in all: 117.36 GBP"), std::string::npos);
    EXPECT_NE(words.find("no quotation"), std::string::npos);
    EXPECT_NE(words.find(std::string(64, 'a')), std::string::npos);
    EXPECT_NE(words.find("R. Oduya, 14 March 2026."), std::string::npos);
    EXPECT_EQ(signature_strokes(sheet), 1U);
    EXPECT_TRUE(sheet.provisional.empty());
}

TEST(AgreedSheet, KeepsWhatWasSignedAndSaysWhatHasChanged) {
    Survey survey = signed_example();
    survey.rooms.front().windows.front().layers.front().hardware->length = Length::mm(1760);
    const Sheet sheet = copies(survey).front();
    EXPECT_EQ(cell(sheet, "agreed.width_mm"), "860");
    EXPECT_EQ(sheet.provisional, "Changed since it was signed: Parlour, south window.");
    survey.rooms.front().windows.clear();
    const Sheet gone = copies(survey).front();
    EXPECT_EQ(cell(gone, "agreed.width_mm"), "860");
    EXPECT_FALSE(gone.provisional.empty());
}

TEST(AgreedSheet, HasALineToSignOnWhileNobodyHas) {
    Survey survey = contract_example();
    survey.signed_off.reset();
    const Sheet sheet = copies(survey).front();
    EXPECT_EQ(cell(sheet, "agreed.width_mm"), "860");
    EXPECT_EQ(signature_strokes(sheet), 0U);
    EXPECT_NE(words_of(sheet).find("Name and day:"), std::string::npos);
    survey.rooms.clear();
    EXPECT_TRUE(copies(survey).empty());
}

TEST(AgreedSheet, DrawsASignatureToItsBox) {
    const Elevation drawing =
        signature_drawing(Signature{4.0, {{{0.25, 0.5}, {1.0, 0.0}}, {{0.5, 0.5}}}, {}}, 80.0, 0.25);
    EXPECT_DOUBLE_EQ(drawing.height, 20.0);
    // Derived: fractions of a box 80 × 20.
    EXPECT_EQ(drawing.strokes[1].points[0], (Point{20.0, 10.0}));
    EXPECT_EQ(drawing.strokes[1].points[1], (Point{80.0, 0.0}));
    EXPECT_EQ(drawing.strokes[2].points.size(), 2U);  // a dot is drawn
}

}  // namespace
}  // namespace truehang::test
