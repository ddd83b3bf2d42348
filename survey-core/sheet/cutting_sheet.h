// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/roll_cuts.h"
#include "sheet/sheet.h"
#include "survey/survey.h"

#include <span>
#include <vector>

namespace truehang {

/// The cutting list: a sheet for each roll, its pieces in the order of cutting with a running mark from the roll's
/// outer end, what they come to and what is ordered, or of a roll that came what is left of it; after a cloth of more
/// than 27 m on one order, or a roll that is to be counted (common practice, no source), a sheet to count it metre by
/// metre. Marks are rounded so that no piece falls short: in mm and inches alike
/// each runs on from the one before it.
[[nodiscard]] std::vector<Sheet> cutting_sheets(const Survey& survey, const Figures& figures,
                                                std::span<const RollCuts> rolls, const SheetStyle& style = {});

}  // namespace truehang
