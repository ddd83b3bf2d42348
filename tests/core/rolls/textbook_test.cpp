// SPDX-License-Identifier: Apache-2.0
// Cutting stock as textbooks have it, at the optimum and with the bound that proves it. Each optimum was also found by
// GLPK 5.0 and CBC 2.10.8.
#include "plan_checker.h"

#include <gtest/gtest.h>

namespace truehang {
namespace {

struct Several {
    double length;
    int count;
};

void expect_least(const std::vector<Several>& stock, const std::vector<Several>& asked, double least) {
    std::vector<Roll> rolls;
    for (const Several& several : stock) {
        for (int i = 0; i < several.count; ++i) {
            Roll roll;
            roll.id = std::to_string(rolls.size());
            roll.lot = "A";
            roll.length = Length::mm(several.length);
            rolls.push_back(roll);
        }
    }
    std::vector<PieceToCut> pieces;
    for (const Several& several : asked) {
        for (int i = 0; i < several.count; ++i) {
            PieceToCut piece;
            piece.id = std::to_string(pieces.size());
            piece.length = Length::mm(several.length);
            pieces.push_back(piece);
        }
    }
    RollRules rules;
    rules.useful = Length::mm(1000.0);
    const RollPlan plan = plan_rolls(rolls, pieces, rules);
    EXPECT_NEAR(plan.used.mm(), least, 1e-6);
    EXPECT_NEAR(plan.least.mm(), least, 1e-6);
    EXPECT_EQ(PlanChecker(rolls, pieces, rules).faults(plan), std::vector<std::string>());
}

// P. C. Gilmore, R. E. Gomory, 1961, as given in Postek, Zocca, Gromicho, Kantor, Hands-On Mathematical Optimization
// with Python: least length 150, no waste.
TEST(Textbook, GilmoreAndGomory) { expect_least({{5, 40}, {6, 40}, {9, 40}}, {{2, 20}, {3, 10}, {4, 20}}, 150); }

// J. Kantor, CBE40455, notebook 05.07: two of 15 and three of 10, no waste.
TEST(Textbook, Kantor) { expect_least({{15, 3}, {10, 3}}, {{7, 3}, {6, 2}, {4, 6}, {3, 1}}, 60); }

// Lecture notes (MIE376, lecture 8): 19 rolls; 310/17 = 18.24 proves it.
TEST(Textbook, LectureNotes) { expect_least({{17, 30}}, {{3, 25}, {5, 20}, {9, 15}}, 19 * 17); }

// V. Chvátal, Linear Programming, 1983: 453 rolls; the linear programme's 452.25 proves it.
TEST(Textbook, Chvatal) { expect_least({{100, 600}}, {{45, 97}, {36, 610}, {31, 395}, {14, 211}}, 45300); }

// A numerical package's worked example: 89 rolls; the linear programme's 88.3 proves it.
TEST(Textbook, WorkedExample) { expect_least({{40, 150}}, {{8, 90}, {12, 111}, {16, 55}, {20, 30}}, 89 * 40); }

}  // namespace
}  // namespace truehang
