// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/laying.h"

#include <map>
#include <string>
#include <vector>

// Which window is cut from which lot; used by the files of this folder alone.

namespace truehang::laying {

struct WindowRuns {
    int room = -1;           ///< -1: none
    std::vector<Run> runs;   ///< matched, or all where the cloth has no pattern
    std::vector<Run> loose;  ///< cut from what the pattern leaves
    Um length = 0;           ///< of all
};

struct LotOfRolls {
    std::vector<std::size_t> rolls;
    Um clean = 0;  ///< cloth without flaws
};

struct LotsProblem {
    std::vector<Ground> grounds;
    std::vector<LotOfRolls> lots;
    std::vector<WindowRuns> windows;
    LayingRules rules;
};

inline constexpr int no_lot = -1;

struct LotsPlan {
    std::vector<int> lot_of;                 ///< by window, or no_lot
    std::vector<std::vector<Placed>> rolls;  ///< by roll, over all lots
    Um used = 0;
    Um longest = 0;
    Um least = 0;  ///< no plan of these windows uses less
    int dropped = 0;
    int split_rooms = 0;
    int lots = 0;
};

/// Less is better: windows left out, split rooms, cloth, lots, and then the longest useful remnant.
[[nodiscard]] bool is_better(const LotsPlan& a, const LotsPlan& b);

/// As many windows as can be, then the fewest rooms over several lots, the least cloth, the fewest lots, the longest
/// useful remnant.
[[nodiscard]] LotsPlan choose_lots(const LotsProblem& problem, long steps);

/// The bound of a set of windows over a set of rolls, and the relaxed plan behind it.
struct Relaxed {
    BoundProblem problem;
    Bound bound;
};
[[nodiscard]] Relaxed relax(const LotsProblem& problem, const std::vector<std::size_t>& rolls,
                            const std::vector<std::size_t>& windows, Um enough, long steps);

}  // namespace truehang::laying
