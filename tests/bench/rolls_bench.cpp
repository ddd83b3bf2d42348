// SPDX-License-Identifier: Apache-2.0
// How long a roll plan takes: two hundred cuts of a house of forty windows, on rolls of two lots with flaws. Invented;
// the same on every machine. The counters say how good the plan is.
#include "rolls/rolls.h"

#include <benchmark/benchmark.h>

#include <random>
#include <string>
#include <vector>

namespace truehang {
namespace {

/// Eight windows in each of five rooms, curtains of two and three widths at each, drops of 1.2 to 2.6 m.
std::vector<PieceToCut> two_hundred_cuts(bool matched) {
    std::mt19937 random(7);
    std::vector<PieceToCut> pieces;
    for (int w = 0; w < 40; ++w) {
        PieceToCut piece;
        piece.window = "window " + std::to_string(w);
        piece.room = "room " + std::to_string(w / 8);
        piece.length = Length::mm(1200.0 + static_cast<double>(random() % 1400));
        piece.matched = matched;
        for (int i = 0; i < 5; ++i) {
            piece.id = piece.window + "/" + std::to_string(i);
            piece.run = i < 2 ? "left" : "right";
            pieces.push_back(piece);
        }
    }
    return pieces;
}

/// Twenty-four rolls of 18 to 30 m; every other one with a flaw.
std::vector<Roll> rolls_with_flaws() {
    std::mt19937 random(11);
    std::vector<Roll> rolls;
    for (int r = 0; r < 24; ++r) {
        Roll roll;
        roll.id = "roll " + std::to_string(r);
        roll.lot = r % 2 == 0 ? "A" : "B";
        roll.length = Length::mm(18000.0 + static_cast<double>(random() % 12000));
        roll.phase = Length::mm(static_cast<double>(random() % 320));
        if (r % 4 < 2) {
            const Length at = Length::mm(2000.0 + static_cast<double>(random() % 14000));
            roll.flaws.push_back({at, at + Length::mm(60)});
        }
        rolls.push_back(roll);
    }
    return rolls;
}

void plan(benchmark::State& state, bool matched) {
    const auto pieces = two_hundred_cuts(matched);
    const auto rolls = rolls_with_flaws();
    RollRules rules;
    rules.repeat = Length::mm(matched ? 320 : 0);
    RollPlan plan;
    for (auto _ : state) {
        plan = plan_rolls(rolls, pieces, rules);
        benchmark::DoNotOptimize(plan);
    }
    if (!plan.not_placed.empty() || !plan.split_rooms.empty()) {
        state.SkipWithError("a piece wasn’t placed, or a room was split, where there is cloth enough");
    }
    state.counters["gap_pct"] = plan.gap_pct();
}

void plan_of_two_hundred_cuts(benchmark::State& state) { plan(state, false); }
void plan_of_two_hundred_matched_cuts(benchmark::State& state) { plan(state, true); }
BENCHMARK(plan_of_two_hundred_cuts)->Unit(benchmark::kMillisecond);
BENCHMARK(plan_of_two_hundred_matched_cuts)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace truehang
