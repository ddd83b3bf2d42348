// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/words.h"
#include "survey/survey.h"

#include <string>
#include <vector>

namespace truehang {

/// One line of the cutting list: so many pieces of one length for one window.
struct CutLine {
    std::string window;        ///< id
    std::string where;         ///< "Parlour, south window"
    std::string layer;         ///< id, else empty
    std::string piece;         ///< "2 drops", "2 rows of tabs"
    std::string length;        ///< of one, written
    std::string total;         ///< of all of them, written
    bool provisional = false;  ///< its window has a stop or remeasure flag
};

/// Everything that is cut of one cloth over the house, in the survey's order, and what is ordered for it.
struct ClothCuts {
    std::string fabric;  ///< id
    std::string name;    ///< "Herring sailcloth, chalk, 1400 wide"
    std::vector<CutLine> lines;
    std::string length;   ///< sum of the cuts, written
    std::string order;    ///< "4.9 m"
    std::string summary;  ///< "4480 in 2 drops, 410 in 2 rows of tabs"
    bool measure_roll =
        false;  ///< over 27 m on one order: measure the roll before cutting (common practice, no source)
    bool provisional = false;
};

struct CuttingList {
    std::vector<ClothCuts> cloths;
    std::vector<std::string> haberdashery;  ///< "6 weights"
};

[[nodiscard]] CuttingList cutting_list(const Survey& survey, const Figures& figures, const SheetStyle& style = {});

}  // namespace truehang
