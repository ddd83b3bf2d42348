// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/lots.h"

#include <optional>

namespace truehang::laying {

/// Where whole windows lie, lots and rolls alone: fewer left out than `out`, or as many and fewer rooms over several
/// lots than `split`. Nothing where there is no such plan, none is found, or there are more than 64 runs. Run by run
/// along the rolls, lot by lot; of all ways to lay the same runs only the one that ends first goes on, for behind the
/// others no more can be laid (dynamic programming over sets: M. Held, R. M. Karp, A Dynamic Programming Approach to
/// Sequencing Problems, J. SIAM 10, 1962). No plan of all windows is missed as long as there are no more sets of as
/// many runs than `steps` allow; else the most promising of them go on (beam search). Loose pieces are let go, and no
/// cloth is spared.
[[nodiscard]] std::optional<LotsPlan> fit_windows(const LotsProblem& problem, int out, int split, long steps);

}  // namespace truehang::laying
