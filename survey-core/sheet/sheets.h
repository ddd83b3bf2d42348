// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/roll_cuts.h"
#include "sheet/sheet.h"
#include "survey/survey.h"

#include <string>
#include <vector>

namespace truehang {

/// Which sheets are asked for. `window` and `layer` are ids; empty: all of them, where the kind goes by windows.
struct SheetsAsked {
    SheetKind kind = SheetKind::measure;
    std::string room, window, layer;
    std::vector<RollCuts> rolls{};  ///< of the cutting list, what is cut along each roll; none: as ordered
};

/// The sheets that were asked for, in the survey's order; none where there is no such window or layer, or nothing hangs
/// there that could be made. The cutting list goes by cloths and the agreement by the house: of a window they are of
/// the whole house still.
[[nodiscard]] std::vector<Sheet> sheets_of(const Survey& survey, const Figures& figures, const SheetsAsked& asked,
                                           const SheetStyle& style = {});

}  // namespace truehang
