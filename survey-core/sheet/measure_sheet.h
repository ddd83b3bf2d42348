// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/sheet.h"
#include "sheet/words.h"
#include "survey/survey.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

// What the measure sheet of one window says: titled blocks of rows of cells. Page, paper and screen set it; none of
// them works out or writes a number of its own.

namespace truehang {

struct MeasureSheet {
    std::string title;                 ///< "Parlour, south window"
    std::string corner;                ///< "Pilot house, first visit, revision 1"
    std::vector<std::string> heading;  ///< who, where, when, by whom; units and ± said once
    std::string description;           ///< "A pair, tab headed, lined, floor length, on a 28 mm pole 1720 long, level."
    std::string notes;                 ///< the surveyor's
    std::vector<SheetBlock> blocks;    ///< in the order of reading
    std::vector<SheetMind> mind;       ///< gravest first
    std::vector<SheetWorking> workings;
    std::string window, layer;  ///< ids
    long long revision = 0;     ///< 0: the survey has none
    bool provisional = false;
    std::string provisional_text;  ///< why nothing is to be cut yet; empty where not provisional
};

/// The sheet of window `window_index` (counted through all rooms, as `figures.windows`) and of its layer `layer_index`.
/// What can't be worked is left out and its flag says why. Indices that aren't there give an empty sheet.
[[nodiscard]] MeasureSheet measure_sheet(const Survey& survey, const Figures& figures, std::size_t window_index,
                                         std::size_t layer_index, const SheetStyle& style = {});

/// The row's cell that writes `figure`, or null: what one set of numbers is compared by.
[[nodiscard]] const SheetCell* find_cell(const MeasureSheet& sheet, std::string_view figure);

}  // namespace truehang
