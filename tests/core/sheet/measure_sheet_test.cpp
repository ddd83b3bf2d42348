// SPDX-License-Identifier: Apache-2.0
#include "sheet/measure_sheet.h"
#include "sheet/cutting_list.h"
#include "windows.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

// What the sheet of the contract's worked example must say; the numbers are those of its figures document
// (tests/reference/contract/figures.example.json), the sums follow from them by the trade rules, sections 4 to 7.

namespace truehang::test {
namespace {

MeasureSheet example_sheet() {
    const Survey survey = contract_example();
    return measure_sheet(survey, work_out(survey), 0, 0);
}

const SheetBlock& block_of(const MeasureSheet& sheet, const std::string& key) {
    const auto found = std::ranges::find(sheet.blocks, key, &SheetBlock::key);
    EXPECT_NE(found, sheet.blocks.end()) << key;
    return *found;
}

std::vector<std::string> texts(const SheetRow& row) {
    std::vector<std::string> found;
    for (const SheetCell& cell : row.cells) {
        found.push_back(cell.text);
    }
    return found;
}

using Texts = std::vector<std::string>;

TEST(MeasureSheet, SaysWhoWhereAndWhen) {
    const MeasureSheet sheet = example_sheet();
    EXPECT_EQ(sheet.title, "Parlour, south window");
    EXPECT_EQ(sheet.corner, "Pilot house, revision 1");
    EXPECT_EQ(sheet.heading, (Texts{"R. Oduya, 4 Slipway Row, Ferrymouth.", "Measured 14 March 2026 by J. Tamm.",
                                    "All in mm unless said; ± is twice the standard uncertainty."}));
    EXPECT_EQ(sheet.description, "A pair, tab headed, lined, floor length, on a 28 mm pole 1720 long, level.");
    EXPECT_EQ(sheet.revision, 1);
    EXPECT_FALSE(sheet.provisional);
}

TEST(MeasureSheet, SaysWhatIsFinishedAndWhereItHangs) {
    const MeasureSheet sheet = example_sheet();
    const SheetBlock& finished = block_of(sheet, "finished");
    ASSERT_EQ(finished.rows.size(), 4U);
    EXPECT_EQ(texts(finished.rows[0]), (Texts{"Curtains", "2", ""}));
    EXPECT_EQ(texts(finished.rows[1]), (Texts{"Width, each", "860", ""}));
    EXPECT_EQ(texts(finished.rows[2]), (Texts{"Drop", "1992", "± 6"}));
    EXPECT_EQ(texts(finished.rows[3]), (Texts{"Fullness", "1.51 ×", ""}));
    const SheetBlock& hang = block_of(sheet, "hang");
    ASSERT_GE(hang.rows.size(), 4U);
    EXPECT_EQ(hang.rows[0].cells[0].text, "Pole centre to floor");
    EXPECT_EQ(hang.rows[0].cells[1].text, "2070");
    EXPECT_EQ(hang.rows[1].cells[0].text, "Pole centre to ceiling");
    EXPECT_EQ(hang.rows[1].cells[1].text, "68");
    EXPECT_EQ(texts(hang.rows[2]), (Texts{"In all", "2.7 kg", ""}));
    EXPECT_EQ(texts(hang.rows[3]), (Texts{"Most loaded bracket", "1.3 kg", ""}));
}

TEST(MeasureSheet, SaysWhatToCutAndHowItWasWorked) {
    const MeasureSheet sheet = example_sheet();
    const SheetBlock& cut = block_of(sheet, "cut");
    ASSERT_EQ(cut.rows.size(), 4U);
    EXPECT_EQ(texts(cut.rows[0]),
              (Texts{"2 drops", "2240", "Herring sailcloth",
                     "1992 + 10 + 150 = 2152, with 2 % shrinkage 2196; 7 repeats of 320; trim 44 at the head"}));
    EXPECT_EQ(texts(cut.rows[1]), (Texts{"2 drops", "2110", "Cotton sateen lining",
                                         "1992 − 30 + 80 + 25 = 2067, with 2 % shrinkage 2110"}));
    EXPECT_EQ(texts(cut.rows[2]),
              (Texts{"14 tabs", "205 × 120", "Herring sailcloth",
                     "200 with 2 % shrinkage; in 2 rows of 11; hang 68 over the pole; seven to a curtain"}));
    EXPECT_EQ(texts(cut.rows[3]), (Texts{"6 weights", "", "", "corners and each half width"}));
}

TEST(MeasureSheet, PlacesTabsExactlyToTheLastOne) {
    // flat 1300, seven tabs 208.33 apart: from 25 to 1275, each rounded for itself.
    const MeasureSheet sheet = example_sheet();
    EXPECT_EQ(texts(block_of(sheet, "tabs").rows[0]), (Texts{"25", "233", "442", "650", "858", "1067", "1275"}));
}

TEST(MeasureSheet, PlacesEyeletsExactlyToTheLastOne) {
    // Trade rules, section 7: first and last 50 in; the flat width is 1300, so 1 + 1200/180 = 7.67, and the least even
    // number that is not below it is 8, 1200/7 apart.
    Survey survey = contract_example();
    survey.rooms[0].windows[0].layers[0].treatment->heading = Word<Heading>(Heading::eyelet);
    const MeasureSheet sheet = measure_sheet(survey, work_out(survey), 0, 0);
    EXPECT_EQ(texts(block_of(sheet, "eyelets").rows[0]),
              (Texts{"50", "221", "393", "564", "736", "907", "1079", "1250"}));
}

TEST(MeasureSheet, OrdersOverTheHouse) {
    const MeasureSheet sheet = example_sheet();
    const SheetBlock& order = block_of(sheet, "order");
    ASSERT_EQ(order.rows.size(), 2U);
    EXPECT_EQ(texts(order.rows[0]),
              (Texts{"Herring sailcloth, 1400 wide", "4.9 m", "4480 in 2 drops, 410 in 2 rows of tabs"}));
    EXPECT_EQ(texts(order.rows[1]), (Texts{"Cotton sateen lining, 1370 wide", "4.3 m", "4220 in 2 drops"}));
}

TEST(MeasureSheet, SaysFlagsWithTheirShapeWord) {
    const MeasureSheet sheet = example_sheet();
    const auto over_heat = std::ranges::find(sheet.mind, "curtain-over-heat", &SheetMind::code);
    ASSERT_NE(over_heat, sheet.mind.end());
    EXPECT_EQ(over_heat->word, "Caution");
    EXPECT_EQ(over_heat->shape, FlagShape::triangle);
    EXPECT_TRUE(std::ranges::is_sorted(sheet.mind, {}, &SheetMind::severity));
}

TEST(MeasureSheet, WritesTheFiguresDocumentsNumbers) {
    // One set of numbers: a cell that names a figure writes that figure of the contract's document.
    const auto figures = nlohmann::json::parse(file_text("tests/reference/contract/figures.example.json"));
    const auto& window = figures.at("windows").at(0);
    const MeasureSheet sheet = example_sheet();
    int compared = 0;
    for (const SheetBlock& block : sheet.blocks) {
        for (const SheetRow& row : block.rows) {
            for (const SheetCell& cell : row.cells) {
                std::string pointer = "/" + cell.figure;
                std::ranges::replace(pointer, '.', '/');
                const nlohmann::json::json_pointer at(pointer);
                if (cell.figure.empty() || !cell.number || cell.figure == "tabs.cut_width_mm" || !window.contains(at)) {
                    continue;
                }
                const double written_value = std::stod(cell.text);
                const double step = cell.text.find('.') == std::string::npos ? 0.5 : 0.0501;
                EXPECT_NEAR(written_value, window.at(at).get<double>(), step) << cell.figure;
                ++compared;
            }
        }
    }
    EXPECT_GE(compared, 7);
}

TEST(MeasureSheet, TellsHowEachFigureCameAbout) {
    const MeasureSheet sheet = example_sheet();
    const auto drop = std::ranges::find(sheet.workings, "finished.drop_mm", &SheetWorking::figure);
    ASSERT_NE(drop, sheet.workings.end());
    EXPECT_EQ(drop->title, "Finished drop");
    ASSERT_GE(drop->steps.size(), 4U);
    EXPECT_TRUE(drop->steps[0].starts_with("Pole centre above floor: 2070 ("));
    EXPECT_NE(drop->steps[0].find("floor to sill, left"), std::string::npos);
    EXPECT_EQ(drop->steps[1], "Tab hang: −68.01 (tab cut 200; pole diameter 28)");
    EXPECT_EQ(drop->steps[2], "Floor clearance: −10 (house rule: floor clearance)");
    EXPECT_EQ(drop->steps[3], "Finished drop: 1992");
}

TEST(MeasureSheet, SaysAtOnceWhenNothingMayBeCut) {
    Survey survey = contract_example();
    for (Reading& reading : survey.rooms[0].windows[0].readings) {
        if (reading.station == "ceiling.left") {
            reading.value = Length::mm(2183);
            reading.typed = "2183";
        }
    }
    const MeasureSheet sheet = measure_sheet(survey, work_out(survey), 0, 0);
    EXPECT_TRUE(sheet.provisional);
    EXPECT_FALSE(sheet.provisional_text.empty());
    ASSERT_FALSE(sheet.mind.empty());
    EXPECT_EQ(sheet.mind.front().word, "Measure again");
    const auto rows = block_of(sheet, "order").rows;
    ASSERT_FALSE(rows.empty());
    EXPECT_TRUE(rows[0].cells[2].text.ends_with("provisional"));
}

TEST(MeasureSheet, LeavesOutWhatCannotBeWorked) {
    const Survey survey = one_window(Shape::recess, {{"opening.width.top", 1200}});
    const MeasureSheet sheet = measure_sheet(survey, work_out(survey), 0, 0);
    EXPECT_EQ(sheet.title, "Net store, east window");
    EXPECT_TRUE(sheet.blocks.empty());
    EXPECT_TRUE(measure_sheet(survey, work_out(survey), 7, 0).title.empty());
}

TEST(MeasureSheet, WritesWithTheLocalesDecimalMark) {
    const Survey survey = contract_example();
    const MeasureSheet sheet = measure_sheet(survey, work_out(survey), 0, 0, {.decimal = ','});
    EXPECT_EQ(find_cell(sheet, "cloth.fullness")->text, "1,51 ×");
    EXPECT_EQ(find_cell(sheet, "orders.sailcloth.order_m")->text, "4,9 m");
}

TEST(CuttingList, HoldsEveryPieceOfEachCloth) {
    const Survey survey = contract_example();
    const CuttingList list = cutting_list(survey, work_out(survey));
    ASSERT_EQ(list.cloths.size(), 2U);
    ASSERT_EQ(list.cloths[0].lines.size(), 2U);
    EXPECT_EQ(list.cloths[0].lines[0].where, "Parlour, south window");
    EXPECT_EQ(list.cloths[0].lines[0].piece, "2 drops");
    EXPECT_EQ(list.cloths[0].lines[0].length, "2240");
    EXPECT_EQ(list.cloths[0].lines[0].total, "4480");
    EXPECT_EQ(list.cloths[0].lines[1].piece, "2 rows of tabs");
    EXPECT_EQ(list.cloths[0].lines[1].length, "205");
    EXPECT_EQ(list.cloths[0].length, "4890");
    EXPECT_EQ(list.cloths[1].order, "4.3 m");
    EXPECT_FALSE(list.cloths[0].measure_roll);
    EXPECT_EQ(list.haberdashery, std::vector<std::string>{"6 weights"});
}

TEST(CuttingList, AsksForALongRollToBeMeasured) {
    // Common practice, no source: over 27 m of cloth on one order, measure the roll before cutting.
    Survey survey = contract_example();
    Figures figures = work_out(survey);
    figures.orders[0].order_m = 27.0;
    EXPECT_FALSE(cutting_list(survey, figures).cloths[0].measure_roll);
    figures.orders[0].order_m = 27.1;
    EXPECT_TRUE(cutting_list(survey, figures).cloths[0].measure_roll);
}

}  // namespace
}  // namespace truehang::test
