// SPDX-License-Identifier: Apache-2.0
#include "sheet/sheets.h"
#include "sheet/bracket_places.h"
#include "sheet/csv.h"
#include "sheet/cutting_sheet.h"
#include "sheet/flat_piece.h"
#include "sheet/paper.h"
#include "sheet/roll_cuts.h"
#include "windows.h"

#include <algorithm>
#include <string>
#include <vector>

// The sheets of the contract's worked example; its numbers are those of tests/reference/contract/figures.example.json,
// other figures are worked by hand from the trade rules where the line above says so.

namespace truehang::test {
namespace {

using Texts = std::vector<std::string>;

Texts texts(const SheetRow& row) {
    Texts found;
    std::ranges::transform(row.cells, std::back_inserter(found), &SheetCell::text);
    return found;
}

const SheetBlock* block_of(const Sheet& sheet, const std::string& key) {
    for (const SheetPart& part : sheet.parts) {
        const auto* block = std::get_if<SheetBlock>(&part);
        if (block != nullptr && block->key == key) {
            return block;
        }
    }
    return nullptr;
}

std::string text_of(const Sheet& sheet, std::string_view figure) {
    const SheetCell* cell = find_cell(sheet, figure);
    return cell == nullptr ? std::string() : cell->text;
}

SheetsAsked all_of(SheetKind kind) {
    SheetsAsked asked;
    asked.kind = kind;
    return asked;
}

std::vector<Sheet> example_sheets(SheetKind kind, const SheetStyle& style = {}) {
    const Survey survey = contract_example();
    return sheets_of(survey, work_out(survey), all_of(kind), style);
}

Treatment& treatment_of(Survey& survey) { return *survey.rooms[0].windows[0].layers[0].treatment; }
Hardware& hardware_of(Survey& survey) { return *survey.rooms[0].windows[0].layers[0].hardware; }

TEST(Sheets, HaveAWordForEachKind) {
    for (const SheetKind kind : {SheetKind::measure, SheetKind::cutting, SheetKind::making, SheetKind::hanging,
                                 SheetKind::light, SheetKind::agreed}) {
        EXPECT_EQ(sheet_kind(word_of(kind)), kind);
        EXPECT_FALSE(title_of(kind).empty());
    }
    EXPECT_EQ(sheet_kind("cut"), std::nullopt);
}

TEST(Sheets, AreOfTheWindowThatWasAskedFor) {
    const Survey survey = contract_example();
    const Figures figures = work_out(survey);
    EXPECT_EQ(sheets_of(survey, figures, {SheetKind::measure, "", "parlour-south", ""}).size(), 1U);
    EXPECT_TRUE(sheets_of(survey, figures, {SheetKind::measure, "", "none", ""}).empty());
    EXPECT_TRUE(sheets_of(survey, figures, {SheetKind::measure, "attic", "parlour-south", ""}).empty());
    EXPECT_TRUE(sheets_of(survey, figures, {SheetKind::making, "", "parlour-south", "sheers"}).empty());
}

TEST(CuttingSheet, RunsAlongTheRollPieceAfterPiece) {
    // figures.example.json: two drops of 2240 and two rows of tabs of 205 each; 7 repeats of 320 are 2240.
    const auto sheets = example_sheets(SheetKind::cutting);
    ASSERT_EQ(sheets.size(), 2U);
    EXPECT_EQ(sheets[0].title, "Herring sailcloth, chalk");
    EXPECT_EQ(sheets[0].corner, "Pilot house, revision 1");
    const SheetBlock* cuts = block_of(sheets[0], "order-of-cutting");
    ASSERT_NE(cuts, nullptr);
    ASSERT_EQ(cuts->rows.size(), 4U);
    EXPECT_EQ(texts(cuts->rows[0]),
              (Texts{"1", "0", "2240", "2240", "drop 1 of 2", "7", "Parlour, south window; left curtain"}));
    EXPECT_EQ(texts(cuts->rows[1]),
              (Texts{"2", "2240", "4480", "2240", "drop 2 of 2", "7", "Parlour, south window; right curtain"}));
    EXPECT_EQ(texts(cuts->rows[3]),
              (Texts{"4", "4685", "4890", "205", "row of tabs 2 of 2", "", "Parlour, south window"}));
    EXPECT_EQ(text_of(sheets[0], "orders.sailcloth.order_m"), "4.9 m");
    EXPECT_EQ(text_of(sheets[0], "orders.sailcloth.length_mm"), "4890");
}

TEST(CuttingSheet, NeverWritesAPieceShorterInInches) {
    // 2240 mm are 88.19 in, so 88 1/4; 205 mm are 8.07 in, so 8 1/8. Each mark runs on from the one before.
    const auto sheets = example_sheets(SheetKind::cutting, {.unit = LengthUnit::in});
    const SheetBlock* cuts = block_of(sheets[0], "order-of-cutting");
    ASSERT_NE(cuts, nullptr);
    EXPECT_EQ(texts(cuts->rows[1])[1], "88 1/4");
    EXPECT_EQ(texts(cuts->rows[1])[2], "176 1/2");
    EXPECT_EQ(texts(cuts->rows[3])[2], "192 3/4");
    EXPECT_EQ(texts(cuts->rows[3])[3], "8 1/8");
    // 4.9 m are 5.359 yd.
    EXPECT_EQ(text_of(sheets[0], "orders.sailcloth.order_m"), "4.9 m (5.36 yd)");
}

TEST(CuttingSheet, SaysWhatMustNotBeCutYet) {
    Survey survey = contract_example();
    for (Reading& reading : survey.rooms[0].windows[0].readings) {
        if (reading.station == "ceiling.left") {
            reading.value = Length::mm(2183);
            reading.typed = "2183";
        }
    }
    const auto sheets = sheets_of(survey, work_out(survey), all_of(SheetKind::cutting));
    ASSERT_FALSE(sheets.empty());
    EXPECT_FALSE(sheets[0].provisional.empty());
    EXPECT_TRUE(texts(block_of(sheets[0], "order-of-cutting")->rows[0]).back().ends_with("Not yet"));
}

TEST(CuttingSheet, BringsAPageToCountALongRoll) {
    // Common practice, no source: over 27 m on one order the roll is measured metre by metre.
    const Survey survey = contract_example();
    Figures figures = work_out(survey);
    figures.orders[0].order_m = 27.0;
    const auto as_ordered = [&] { return cutting_sheets(survey, figures, cuts_as_ordered(survey, figures)); };
    EXPECT_EQ(as_ordered().size(), 2U);
    figures.orders[0].order_m = 30.1;
    const auto sheets = as_ordered();
    ASSERT_EQ(sheets.size(), 3U);
    const SheetBlock* count = block_of(sheets[1], "count");
    ASSERT_NE(count, nullptr);
    EXPECT_EQ(count->rows.size(), 16U);  // two columns of 31 metres
    EXPECT_EQ(texts(count->rows.back()), (Texts{"16", "", "", ""}));
    EXPECT_EQ(texts(count->rows[14]), (Texts{"15", "", "31", ""}));
}

TEST(RollCuts, ShareASplitWidthBetweenAPair) {
    // Fullness 2.0 on 860 asks (2.0 − 0.10) · 860 + 80 = 1714 across: of 1380 usable 1½ widths (1½ · 1380 − 30 = 2040).
    Survey survey = contract_example();
    treatment_of(survey).fullness = 2.0;
    const auto rolls = cuts_as_ordered(survey, work_out(survey));
    ASSERT_FALSE(rolls.empty());
    ASSERT_GE(rolls[0].cuts.size(), 3U);
    EXPECT_EQ(rolls[0].cuts[0].curtains, std::vector<int>{0});
    EXPECT_EQ(rolls[0].cuts[1].curtains, (std::vector<int>{0, 1}));
    EXPECT_EQ(rolls[0].cuts[2].curtains, std::vector<int>{1});
}

TEST(RollCuts, CutAHalfDropPhaseByPhase) {
    // Trade rules, section 5: with C₀ = 2195.9 and R = 600, whole repeats are 4 · 600 = 2400, (m + ½) · 600 = 2700;
    // the lesser of N · 2400 + 300 and N · 2700 is the first for N ≥ 2: every other width, 300 left, the others.
    Survey survey = contract_example();
    survey.fabrics[0].repeat = Length::mm(600);
    survey.fabrics[0].match = Word<Match>(Match::half_drop);
    const auto rolls = cuts_as_ordered(survey, work_out(survey));
    ASSERT_GE(rolls[0].cuts.size(), 3U);
    EXPECT_EQ(rolls[0].cuts[0].number, 1);
    EXPECT_TRUE(rolls[0].cuts[1].left_out);
    EXPECT_DOUBLE_EQ(rolls[0].cuts[1].start.mm(), 2400.0);
    EXPECT_DOUBLE_EQ(rolls[0].cuts[1].end.mm(), 2700.0);
    EXPECT_EQ(rolls[0].cuts[2].number, 2);
    EXPECT_DOUBLE_EQ(rolls[0].cuts[2].start.mm(), 2700.0);
}

TEST(RollCuts, HoldEveryPieceOfTheOrders) {
    const Survey survey = read_survey(file_text("demo-surveys/pilot-house.json")).value();
    const Figures figures = work_out(survey);
    const auto rolls = cuts_as_ordered(survey, figures);
    ASSERT_EQ(rolls.size(), figures.orders.size());
    for (std::size_t i = 0; i < rolls.size(); ++i) {
        std::size_t pieces = 0;
        for (const Cut& cut : figures.orders[i].cuts) {
            pieces += static_cast<std::size_t>(cut.count);
        }
        EXPECT_EQ(rolls[i].cuts.size(), pieces) << rolls[i].fabric;
        Length end;
        for (const RollCut& cut : rolls[i].cuts) {
            EXPECT_EQ(cut.start, end);
            end = cut.end;
        }
        EXPECT_LE(end.mm(), figures.orders[i].order_m * 1000.0 + 1e-6) << rolls[i].fabric;
    }
}

/// The example's two drops on a roll of 7,000 with a flaw from 2,300 to 2,400 and a join at 5,900, laid by hand: the
/// first from the start, the second from the next repeat of 320 behind the flaw, 2,560. Tabs and facings stay away.
struct LaidByHand {
    Survey survey = contract_example();
    Figures figures = work_out(survey);
    RollsThatCame came{survey.id, Length::mm(1000), {{"sailcloth", {}}}};
    HousePlan plan;

    LaidByHand() {
        Roll roll;
        roll.id = "A";
        roll.lot = "12";
        roll.length = Length::mm(7000);
        roll.flaws.push_back({Length::mm(2300), Length::mm(2400)});
        roll.joins.push_back({Length::mm(5900), {}});
        came.fabrics[0].rolls.push_back(roll);
        FabricPlan fabric;
        fabric.fabric = "sailcloth";
        fabric.pieces = pieces_of(survey, "sailcloth");
        PlannedRoll planned{.roll = "A", .lot = "12", .cuts = {}, .remnants = {}, .used = {}};
        double at = 0.0;
        for (const PieceToCut& piece : fabric.pieces) {
            if (piece.what == "drops") {
                planned.cuts.push_back({piece.id, Length::mm(at), Length::mm(at) + piece.length});
                at = 2560.0;
            }
        }
        planned.remnants.push_back({planned.cuts.back().to, Length::mm(5900), true});
        planned.remnants.push_back({Length::mm(5900), Length::mm(7000), true});
        fabric.plan.rolls.push_back(planned);
        plan.fabrics.push_back(fabric);
    }
    [[nodiscard]] std::vector<RollCuts> cuts() const { return cuts_as_planned(survey, figures, came, plan); }
};

TEST(RollCuts, StandWhereThePlanLaysThem) {
    const LaidByHand laid;
    const auto rolls = laid.cuts();
    ASSERT_EQ(rolls.size(), 2U) << "the lining, of which no roll came, as ordered";
    EXPECT_FALSE(rolls[1].measured);
    EXPECT_EQ(rolls[0].roll, "roll A, lot 12");
    ASSERT_EQ(rolls[0].cuts.size(), 3U);
    // By hand: the finished drop of 1992 with a head of 10 and a hem of 150 is 2152; 2 % shrink: 2152 / 0.98 = 2195.9,
    // up to 2196 (trade rules, section 5). 2196 mm are 86.457 in, up to eighths 86 1/2.
    EXPECT_EQ(rolls[0].cuts[0].start, Length());
    EXPECT_EQ(rolls[0].cuts[0].end, Length::mm(2196));
    EXPECT_EQ(rolls[0].cuts[1].what, "flaw");
    EXPECT_TRUE(rolls[0].cuts[1].left_out);
    EXPECT_EQ(rolls[0].cuts[2].start, Length::mm(2560));
    EXPECT_EQ(rolls[0].cuts[2].number, 2);
    EXPECT_EQ(rolls[0].cuts[2].of, 2);
    EXPECT_EQ(rolls[0].cuts[0].curtains, std::vector<int>{0});
    EXPECT_EQ(rolls[0].cuts[2].curtains, std::vector<int>{1});
    const auto shown = shown_cuts(rolls[0], {});
    EXPECT_EQ(shown[0].to, Length::mm(2196));
    EXPECT_NEAR(shown_cuts(rolls[0], {.unit = LengthUnit::in})[0].to.mm(), 86.5 * 25.4, 1e-6)
        << "up, so that it doesn't fall short";
    EXPECT_EQ(shown[1].number, 0);
    EXPECT_EQ(shown[2].number, 2);
    EXPECT_EQ(shown[2].to, Length::mm(2560 + 2196));
}

TEST(CuttingSheet, GoesByThePlanOfTheRollsThatCame) {
    const LaidByHand laid;
    SheetsAsked asked = all_of(SheetKind::cutting);
    asked.rolls = laid.cuts();
    const auto sheets = sheets_of(laid.survey, laid.figures, asked);
    ASSERT_EQ(sheets.size(), 2U);
    EXPECT_TRUE(sheets[0].title.ends_with(", roll A, lot 12"));
    const SheetBlock* cuts = block_of(sheets[0], "order-of-cutting");
    ASSERT_NE(cuts, nullptr);
    ASSERT_EQ(cuts->rows.size(), 3U);
    EXPECT_EQ(texts(cuts->rows[0]),
              (Texts{"1", "0", "2196", "2196", "drop 1 of 2", "Parlour, south window; left curtain"}));
    EXPECT_EQ(texts(cuts->rows[1]), (Texts{"–", "2300", "2400", "100", "leave: flaw", ""}));
    EXPECT_EQ(texts(cuts->rows[2])[2], "4756");
    const SheetBlock* totals = block_of(sheets[0], "totals");
    ASSERT_NE(totals, nullptr);
    EXPECT_EQ(texts(totals->rows[0])[1], "7000");
    EXPECT_EQ(texts(totals->rows[1])[1], "4756");
    EXPECT_EQ(texts(totals->rows[2])[2], "4756 to 5900, keep");
    EXPECT_TRUE(totals->note.empty());
}

TEST(CuttingSheet, SaysWhatTheRollsDontReachFor) {
    LaidByHand laid;
    laid.plan.fabrics[0].plan.rolls.clear();
    laid.plan.fabrics[0].plan.short_windows = {laid.survey.rooms[0].windows[0].id};
    SheetsAsked asked = all_of(SheetKind::cutting);
    asked.rolls = laid.cuts();
    const auto sheets = sheets_of(laid.survey, laid.figures, asked);
    ASSERT_EQ(sheets.size(), 2U);
    const auto* words = std::get_if<SheetWords>(&sheets[0].parts.at(0));
    ASSERT_NE(words, nullptr);
    EXPECT_EQ(words->title, "Not enough cloth");
    EXPECT_TRUE(words->lines.at(0).starts_with("Parlour, south window can’t be cut whole"));
    EXPECT_EQ(block_of(sheets[0], "order-of-cutting"), nullptr);
}

TEST(CuttingSheet, BringsAPageToCountARollThatCame) {
    // Common practice, no source: a roll over 27 m is counted; what is known of it stands at its metre.
    LaidByHand laid;
    laid.came.fabrics[0].rolls[0].length = Length::mm(27500);
    laid.plan.fabrics[0].count_first = {"A"};
    SheetsAsked asked = all_of(SheetKind::cutting);
    asked.rolls = laid.cuts();
    const auto sheets = sheets_of(laid.survey, laid.figures, asked);
    ASSERT_EQ(sheets.size(), 3U);
    const SheetBlock* count = block_of(sheets[1], "count");
    ASSERT_NE(count, nullptr);
    EXPECT_EQ(count->rows.size(), 14U);  // two columns of 28 metres
    EXPECT_EQ(texts(count->rows[2])[1], "flaw at 2300 to 2400");
    EXPECT_EQ(texts(count->rows[5])[1], "join at 5900");
}

/// All arrows of one-way cloth on the drawings of a sheet, each from its foot to its tip.
std::vector<Stroke> arrows_on(const Sheet& sheet) {
    std::vector<Stroke> arrows;
    for (const SheetPart& part : sheet.parts) {
        if (const auto* drawing = std::get_if<SheetDrawing>(&part)) {
            std::ranges::copy_if(drawing->drawing.strokes, std::back_inserter(arrows), [](const Stroke& stroke) {
                return stroke.part == "one-way" && stroke.form == Form::line;
            });
        }
    }
    return arrows;
}

bool says(const Sheet& sheet, const std::string& words) {
    const auto holds = [&](const SheetMind& mind) { return mind.text.find(words) != std::string::npos; };
    return std::ranges::any_of(sheet.first, holds) || std::ranges::any_of(sheet.parts, [&](const SheetPart& part) {
               const auto* lines = std::get_if<SheetWords>(&part);
               const auto* minds = std::get_if<SheetMinds>(&part);
               return (lines != nullptr && std::ranges::any_of(lines->lines,
                                                               [&](const std::string& line) {
                                                                   return line.find(words) != std::string::npos;
                                                               })) ||
                      (minds != nullptr && std::ranges::any_of(minds->minds, holds));
           });
}

TEST(OneWayCloth, IsSaidAndMarkedOnEverySheetThatCutsIt) {
    Survey survey = contract_example();
    const std::string words = "Herring sailcloth runs one way";
    const auto all = [&](SheetKind kind) { return sheets_of(survey, work_out(survey), all_of(kind)); };
    for (const SheetKind kind : {SheetKind::measure, SheetKind::cutting, SheetKind::making}) {
        EXPECT_FALSE(says(all(kind)[0], words));
        EXPECT_TRUE(arrows_on(all(kind)[0]).empty());
    }
    survey.fabrics[0].one_way = true;
    const auto cutting = all(SheetKind::cutting);
    EXPECT_TRUE(says(cutting[0], words));
    EXPECT_FALSE(says(cutting[1], "runs one way"));  // the lining has no way up
    // Every one of the four pieces (figures.example.json) is marked, and all of them point to the roll's outer end.
    ASSERT_EQ(arrows_on(cutting[0]).size(), 4U);
    for (const Stroke& arrow : arrows_on(cutting[0])) {
        EXPECT_LT(arrow.points[0].x, arrow.points[1].x);
    }
    EXPECT_TRUE(arrows_on(cutting[1]).empty());
    for (const Sheet& making : all(SheetKind::making)) {
        EXPECT_TRUE(says(making, words));
        ASSERT_EQ(arrows_on(making).size(), 1U);
        EXPECT_GT(arrows_on(making)[0].points[0].y, arrows_on(making)[0].points[1].y);  // up to the head
    }
    EXPECT_TRUE(says(all(SheetKind::measure)[0], words));
    EXPECT_FALSE(says(all(SheetKind::hanging)[0], "runs one way"));
    for (const CsvOf what : {CsvOf::orders, CsvOf::pieces}) {
        const std::string csv = csv_of(survey, work_out(survey), what);
        EXPECT_NE(csv.find(",no,yes\r\nsateen"), std::string::npos) << csv;
    }
}

TEST(MakingSheet, IsOneForEachCurtain) {
    const auto sheets = example_sheets(SheetKind::making);
    ASSERT_EQ(sheets.size(), 2U);
    EXPECT_EQ(sheets[0].title, "Parlour, south window, left curtain");
    EXPECT_EQ(sheets[1].title, "Parlour, south window, right curtain");
    EXPECT_EQ(text_of(sheets[0], "finished.drop_mm"), "1992");
    EXPECT_EQ(text_of(sheets[0], "finished.width_mm"), "860");
    EXPECT_EQ(text_of(sheets[0], "cloth.flat_mm"), "1300");
    EXPECT_EQ(text_of(sheets[0], "cloth.cut_drop_mm"), "2240");
    EXPECT_EQ(text_of(sheets[0], "lining.cut_drop_mm"), "2110");
    // The defaults of the trade rules, section 1: a side of 40, a hem of 150, a tab's head of 10, the lining's set-up.
    EXPECT_EQ(text_of(sheets[0], "rules.side_turn_mm"), "40");
    EXPECT_EQ(text_of(sheets[0], "rules.hem_mm"), "150");
    EXPECT_EQ(text_of(sheets[0], "rules.head_mm"), "10");
    EXPECT_EQ(text_of(sheets[0], "rules.lining_inset_mm"), "20");
    EXPECT_EQ(text_of(sheets[0], "rules.lining_rise_mm"), "30");
    EXPECT_EQ(texts(block_of(sheets[0], "tabs")->rows[0]), (Texts{"25", "233", "442", "650", "858", "1067", "1275"}));
}

TEST(MakingSheet, PlacesTheJoinsFromTheLeadingEdge) {
    // 1½ widths of 1380 usable: the whole one on the inside gives 1380 − 40 (side) − 15 (seam) = 1325.
    Survey survey = contract_example();
    treatment_of(survey).fullness = 2.0;
    const Figures figures = work_out(survey);
    const auto setting = make_setting(survey, survey.rooms[0].windows[0].layers[0], figures.windows[0].layers[0]);
    ASSERT_TRUE(setting);
    ASSERT_EQ(setting->joins.size(), 1U);
    EXPECT_DOUBLE_EQ(setting->joins[0].mm(), 1325.0);
    const FlatPiece left = flat_piece(*setting, figures.windows[0].layers[0], 0);
    EXPECT_TRUE(left.leading_right);
    EXPECT_FALSE(flat_piece(*setting, figures.windows[0].layers[0], 1).leading_right);
    EXPECT_DOUBLE_EQ(left.cut_across.mm(), left.flat.mm() + 80.0);
}

TEST(MakingSheet, SaysFirstWhatStandsOnTheEdge) {
    Survey survey = contract_example();
    Figures figures = work_out(survey);
    Flag moved_pole;
    moved_pole.code = "pole-moved";
    moved_pole.severity = Severity::decide;
    moved_pole.text = "The pole hangs 14 lower than planned.";
    figures.windows[0].flags.push_back(moved_pole);
    const auto sheets = sheets_of(survey, figures, all_of(SheetKind::making));
    ASSERT_FALSE(sheets.empty());
    const auto moved = std::ranges::find(sheets[0].first, "pole-moved", &SheetMind::code);
    ASSERT_NE(moved, sheets[0].first.end());
    EXPECT_EQ(moved->word, "Decide");
}

TEST(HangingSheet, SaysWhereTheHeightIsKnownAndWhereNot) {
    // Without a level line the example's pole is known at the left line alone (figures.example.json: 2070).
    const auto sheets = example_sheets(SheetKind::hanging);
    ASSERT_EQ(sheets.size(), 1U);
    const SheetBlock* places = block_of(sheets[0], "brackets");
    ASSERT_NE(places, nullptr);
    EXPECT_EQ(texts(places->rows[0])[3], "not known");
    EXPECT_NE(places->note.find("2070"), std::string::npos);
    EXPECT_EQ(text_of(sheets[0], "mass_kg"), "2.7 kg");
    EXPECT_EQ(text_of(sheets[0], "bracket_kg"), "1.3 kg");
}

TEST(HangingSheet, CarriesTheCautionsOfTheMoment) {
    const auto sheets = example_sheets(SheetKind::hanging);
    std::string said;
    for (const SheetPart& part : sheets[0].parts) {
        if (const auto* minds = std::get_if<SheetMinds>(&part)) {
            for (const SheetMind& mind : minds->minds) {
                said += mind.text;
                EXPECT_NE(mind.text.find("ocal rules"), std::string::npos) << mind.text;
            }
        }
    }
    for (const auto* word : {"asbestos", "Ladder", "rating", "radiator"}) {
        EXPECT_NE(said.find(word), std::string::npos) << word;
    }
}

/// The heights of a level pole over a floor that falls by 20 from left to right across an opening of 1000.
WindowFigures falling_floor() {
    WindowFigures figures;
    figures.sizes.push_back({.name = "pole.left", .value = Length::mm(2000), .u = Length::mm(2), .rests_on = {}});
    figures.sizes.push_back({.name = "pole.right", .value = Length::mm(2020), .u = Length::mm(2), .rests_on = {}});
    return figures;
}

TEST(BracketPlaces, TakeTheHeightBetweenThePlumbLinesAndStraightOnBeyond) {
    // Straight lines, by hand: 2000 at 0 and 2020 at 1000 give 2005 at 250, 1996 at −200 and 2024 at 1200.
    WindowOutline outline;
    outline.left_x = {0, 0, 0};
    outline.right_x = {1000, 1000, 1000};
    const WindowFigures figures = falling_floor();
    EXPECT_NEAR(height_at(figures, outline, "pole", Length::mm(250))->mm(), 2005.0, 1e-9);
    EXPECT_NEAR(height_at(figures, outline, "pole", Length::mm(-200))->mm(), 1996.0, 1e-9);
    EXPECT_NEAR(height_at(figures, outline, "pole", Length::mm(1200))->mm(), 2024.0, 1e-9);
    EXPECT_EQ(height_at(figures, outline, "ceiling", Length::mm(250)), std::nullopt);
}

TEST(BracketPlaces, StandFromTheOpeningsEdge) {
    // A pole of 1720 centred on an opening of 1242 at its head: (1720 − 1242) / 2 = 239 out at each side.
    Survey survey = contract_example();
    hardware_of(survey).bracket_at = {Length::mm(60), Length::mm(1660)};
    const auto sheets = sheets_of(survey, work_out(survey), all_of(SheetKind::hanging));
    const SheetBlock* places = block_of(sheets[0], "brackets");
    EXPECT_EQ(texts(places->rows[0])[0], "Bracket 1");
    EXPECT_EQ(texts(places->rows[0])[1], "60");
    EXPECT_EQ(texts(places->rows[0])[2], "179 out from the left edge");
    EXPECT_EQ(texts(places->rows[1])[2], "179 out from the right edge");
}

TEST(Csv, IsAsItsStandardHasIt) {
    // RFC 4180, section 2: CRLF ends a line, quotes round what holds a comma, a quote or a break, quotes doubled.
    EXPECT_EQ(csv_field("plain"), "plain");
    EXPECT_EQ(csv_field("a,b"), "\"a,b\"");
    EXPECT_EQ(csv_field("5\" wide"), "\"5\"\" wide\"");
    EXPECT_EQ(csv_field("two\nlines"), "\"two\nlines\"");
    const Survey survey = contract_example();
    const std::string orders = csv_of(survey, work_out(survey), CsvOf::orders);
    EXPECT_EQ(orders,
              "cloth_id,cloth,role,width_mm,pieces_mm,order_m,provisional,one_way\r\n"
              "sailcloth,\"Herring sailcloth, chalk\",face,1400,4890,4.9,no,no\r\n"
              "sateen,\"Cotton sateen lining, dove grey\",lining,1370,4220,4.3,no,no\r\n");
    const std::string pieces = csv_of(survey, work_out(survey), CsvOf::pieces);
    EXPECT_NE(pieces.find("sailcloth,\"Herring sailcloth, chalk\",2,2240,4480,2240,drops,2,2,Parlour,South window,"),
              std::string::npos)
        << pieces;
}

TEST(Csv, LetsNoFormulaThrough) {
    // OWASP, CSV injection: a field that begins with = + - @, a tab or a carriage return is made text.
    for (const auto* formula : {"=1+1", "+1", "-1", "@SUM(A1)", "  =1", "\t=1", "\r=1"}) {
        const std::string field = csv_field(formula);
        EXPECT_TRUE(field.starts_with("'") || field.starts_with("\"'")) << formula;
    }
    EXPECT_EQ(csv_field("x = 1"), "x = 1");
}

TEST(Papers, AreTheLocales) {
    // GNU C Library 2.36, locales en_US, en_CA, es_MX (height 279), en_GB, de_DE (297).
    EXPECT_EQ(paper_of_locale("en_US.UTF-8"), Paper::letter);
    EXPECT_EQ(paper_of_locale("en_CA"), Paper::letter);
    EXPECT_EQ(paper_of_locale("es_MX.UTF-8"), Paper::letter);
    EXPECT_EQ(paper_of_locale("en_GB.UTF-8"), Paper::a4);
    EXPECT_EQ(paper_of_locale("de_DE"), Paper::a4);
    EXPECT_EQ(paper_of_locale("C"), Paper::a4);
}

}  // namespace
}  // namespace truehang::test
