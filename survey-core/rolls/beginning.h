// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/lots.h"

#include <vector>

namespace truehang::laying {

/// Plans to begin with, at least one: rooms, the largest first, each to the first lot that holds it, run by run where
/// it takes least; then what is left window by window, the smallest first. Windows that find no place are left out. One
/// plan looks at the lots from each lot on; more of them in an order drawn from a fixed row. Used by the files of this
/// folder alone.
[[nodiscard]] std::vector<LotsPlan> beginnings(const LotsProblem& problem);

}  // namespace truehang::laying
