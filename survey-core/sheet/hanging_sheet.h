// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/sheet.h"
#include "survey/survey.h"

#include <cstddef>
#include <optional>

namespace truehang {

/// The hanging sheet of one layer: where each bracket goes and how high the pole is there, what it carries and what
/// isn't known about the fixing, what must stay clear, and the cautions of the moment. Heights lie on straight lines
/// between the plumb lines where the pole is known and go straight on beyond them; where it is known at one line alone
/// they are given there alone. Indices as for `measure_sheet`; nothing where there is no such layer.
[[nodiscard]] std::optional<Sheet> hanging_sheet(const Survey& survey, const Figures& figures, std::size_t window_index,
                                                 std::size_t layer_index, const SheetStyle& style = {});

}  // namespace truehang
