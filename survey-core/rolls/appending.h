// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/laying.h"

#include <vector>

namespace truehang::laying {

/// Runs laid one after the other, the largest first, each behind what lies on the roll already where that wastes least.
/// Not complete where one finds no roll; where cloth is plentiful each does. Used by the files of this folder alone.
[[nodiscard]] Laid append(const std::vector<Ground>& rolls, const std::vector<Run>& runs, const LayingRules& rules);

}  // namespace truehang::laying
