// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/lots.h"

namespace truehang::laying {

/// Rooms, the largest first, each to the first lot from `first` on that holds it, run by run where it takes least; then
/// what is left window by window, the smallest first. Windows that find no place are left out.
[[nodiscard]] LotsPlan put_together(const LotsProblem& problem, int first);

/// Betters a plan by moving and exchanging runs between rolls, and windows and rooms between lots; a change for the
/// worse is taken too, more seldom the longer it goes on (S. Kirkpatrick, C. D. Gelatt, M. P. Vecchi, Optimization by
/// Simulated Annealing, Science 220, 1983). Windows that are left out are put in where they fit. Never worse than the
/// plan given; ends where no more than `enough` is used. All from a fixed row of whole numbers and counted in steps,
/// pieces tried on a roll: the same on every machine.
[[nodiscard]] LotsPlan exchange(const LotsProblem& problem, LotsPlan plan, Um enough, long steps);

/// Less is better: windows left out, split rooms, cloth, lots, and the longest useful remnant.
[[nodiscard]] bool is_better(const LotsPlan& a, const LotsPlan& b);

}  // namespace truehang::laying
