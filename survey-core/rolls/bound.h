// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/ground.h"

#include <vector>

// The least cloth that any plan could use: lots, runs and windows are let go, the lengths and the rolls stay.

namespace truehang::laying {

struct Demand {
    Um length = 0;  ///< with what the pattern costs it where another lies behind
    Um last = 0;    ///< what it takes where it is the last of its stretch
    int count = 0;
};

struct GroundClass {
    Ground ground;
    int count = 0;  ///< rolls alike
};

struct BoundProblem {
    std::vector<GroundClass> grounds;
    std::vector<Demand> demands;
    Um step = 0;  ///< of the pattern: every piece begins `phase` behind a line of it; 0: none
    Um phase = 0;
    Um useful = 0;
};

/// What one roll of a class may hold, and how many such rolls the relaxed plan takes.
struct Pattern {
    std::size_t ground = 0;
    std::vector<int> counts;
    double share = 0.0;
};

struct Bound {
    Um least = 0;
    std::vector<Pattern> patterns;  ///< of the relaxed plan; empty where it wasn't worked to its end
};

/// Prices for the pieces, improved by column generation until the bound reaches `enough` or `steps` are spent. Any
/// prices at all give a bound (Lagrange's): it is reckoned in whole numbers from prices rounded down, and holds
/// whatever the linear programme's rounding did.
[[nodiscard]] Bound least_use(const BoundProblem& problem, Um enough, long steps);

}  // namespace truehang::laying
