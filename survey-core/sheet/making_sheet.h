// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/sheet.h"
#include "survey/survey.h"

#include <cstddef>
#include <vector>

namespace truehang {

/// The making sheets of one layer: one for each curtain, the left one first; a blind has one. Indices as for
/// `measure_sheet`. What can't be worked is left out, and the sheet says that it is provisional.
[[nodiscard]] std::vector<Sheet> making_sheets(const Survey& survey, const Figures& figures, std::size_t window_index,
                                               std::size_t layer_index, const SheetStyle& style = {});

}  // namespace truehang
