// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/lots.h"

namespace truehang::laying {

/// The best of these plans, and a better one by moving and exchanging runs between rolls, and windows and rooms between
/// lots; a change for the worse is taken too, more seldom the longer it goes on (S. Kirkpatrick, C. D. Gelatt, M. P.
/// Vecchi, Optimization by Simulated Annealing, Science 220, 1983). Windows that are left out are put in where they
/// fit. Never worse than those given; ends where no more than `enough` is used. All from a fixed row of whole numbers
/// and counted in steps, pieces tried on a roll: the same on every machine.
[[nodiscard]] LotsPlan exchange(const LotsProblem& problem, const std::vector<LotsPlan>& begun, Um enough, long steps);

}  // namespace truehang::laying
