// SPDX-License-Identifier: Apache-2.0
// Packing problems with known optima, through the function that plans rolls: a length is a piece, a bin a roll, and a
// remnant is never useful, so that the least cloth is the fewest rolls.
#include "plan_checker.h"

#include <gtest/gtest.h>

#include <ctime>
#include <fstream>
#include <sstream>

namespace truehang {
namespace {

struct Instance {
    std::string name;
    double roll = 0.0;
    std::vector<double> lengths;
};

std::vector<Instance> instances(const std::string& file) {
    std::ifstream in(TRUEHANG_SOURCE_DIR "/tests/reference/rolls/" + file);
    std::size_t count = 0;
    in >> count;
    std::vector<Instance> all(count);
    for (Instance& instance : all) {
        std::size_t lengths = 0;
        int best_then = 0;
        in >> instance.name >> instance.roll >> lengths >> best_then;
        instance.lengths.resize(lengths);
        for (double& length : instance.lengths) {
            in >> length;
        }
    }
    return all;
}

std::map<std::string, int> u120_optima() {
    std::ifstream in(TRUEHANG_SOURCE_DIR "/tests/reference/rolls/u120_optima.csv");
    std::map<std::string, int> optima;
    std::string line;
    std::getline(in, line);
    while (std::getline(in, line)) {
        optima[line.substr(0, line.find(','))] = std::stoi(line.substr(line.rfind(',') + 1));
    }
    return optima;
}

std::vector<PieceToCut> pieces_of(const Instance& instance) {
    std::vector<PieceToCut> pieces;
    for (const double length : instance.lengths) {
        PieceToCut piece;
        piece.id = std::to_string(pieces.size());
        piece.length = Length::mm(length);
        pieces.push_back(piece);
    }
    return pieces;
}

std::vector<Roll> rolls_of(const Instance& instance, int count) {
    std::vector<Roll> rolls;
    for (int i = 0; i < count; ++i) {
        Roll roll;
        roll.id = std::to_string(i);
        roll.lot = "A";
        roll.length = Length::mm(instance.roll);
        rolls.push_back(roll);
    }
    return rolls;
}

void expect_optimum(const Instance& instance, const std::vector<Roll>& rolls, double optimum) {
    SCOPED_TRACE(instance.name);
    const auto pieces = pieces_of(instance);
    RollRules rules;
    rules.useful = Length::mm(10.0 * instance.roll);
    const RollPlan plan = plan_rolls(rolls, pieces, rules);
    EXPECT_NEAR(plan.used.mm(), optimum, 1e-6);
    EXPECT_NEAR(plan.least.mm(), optimum, 1e-6);
    EXPECT_EQ(plan.gap_pct(), 0.0);
    EXPECT_EQ(PlanChecker(rolls, pieces, rules).faults(plan), std::vector<std::string>());
}

// J. E. Beasley, OR-Library, binpack1 (u120); optima: u120_optima.csv, each proved by its sum over capacity.
TEST(Packing, TwentyOfHundredAndTwentyAtTheirOptimum) {
    const auto optima = u120_optima();
    for (const Instance& instance : instances("binpack1.txt")) {
        const int optimum = optima.at(instance.name);
        expect_optimum(instance, rolls_of(instance, optimum + 4), optimum * instance.roll);
    }
}

// J. E. Beasley, OR-Library, binpack5 (t60): 20 rolls by construction, nothing left over.
TEST(Packing, TwentyOfSixtyInTriplesAtTheirOptimum) {
    for (const Instance& instance : instances("t60.txt")) {
        expect_optimum(instance, rolls_of(instance, 24), 20 * instance.roll);
    }
}

// The same cloth with one flaw: two of the rolls come as one, with a flaw of a tenth where the first ends. By hand:
// what fits is the same, and the flaw's length is used beside it.
TEST(Packing, TheSameWithAFlaw) {
    const auto optima = u120_optima();
    for (const char* file : {"binpack1.txt", "t60.txt"}) {
        for (const Instance& instance : instances(file)) {
            const auto known = optima.find(instance.name);
            const int optimum = known != optima.end() ? known->second : 20;
            auto rolls = rolls_of(instance, optimum - 1);
            const double flaw = instance.roll / 10.0;
            rolls.front().length = Length::mm(2.0 * instance.roll + flaw);
            rolls.front().flaws.push_back({Length::mm(instance.roll), Length::mm(instance.roll + flaw)});
            expect_optimum(instance, rolls, optimum * instance.roll + flaw);
        }
    }
}

}  // namespace
}  // namespace truehang
