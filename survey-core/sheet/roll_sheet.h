// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "rolls/house_plan.h"
#include "sheet/drawing.h"
#include "sheet/words.h"

#include <string>
#include <vector>

// What the plan of the rolls that came says to the person who cuts, for paper and page alike.

namespace truehang {

/// One cut, or what is passed over. Marks are from the roll's start.
struct RollCutLine {
    std::string number;  ///< "–" where nothing is cut
    std::string from, to;
    std::string where;  ///< "Parlour, south window"
    std::string what;   ///< "drop 1 of 4, left curtain"
};

struct RollSheet {
    std::string title;          ///< "Roll A, lot 12, 32500 long"
    std::string used;           ///< "22.4 m used."
    std::string left;           ///< what is left over and where; empty: nothing
    Elevation drawing, narrow;  ///< the same for paper and for a phone's width
    std::vector<RollCutLine> cuts;
};

struct FabricRollSheet {
    std::string fabric;  ///< id
    std::string name;
    std::string says;                   ///< cloth used, and how far that is from the least possible
    std::vector<std::string> more;      ///< lots, rooms over several of them
    std::vector<std::string> short_of;  ///< what couldn't be placed and how much is missing
    std::vector<RollSheet> rolls;
};

/// One metre of a roll that is counted off before the first cut.
struct CountLine {
    std::string metre;
    std::string at;
    std::string known;
};
struct CountSheet {
    std::string title;
    std::vector<CountLine> lines;
};

struct HouseRollSheet {
    std::vector<FabricRollSheet> fabrics;
    std::vector<std::string> whole;         ///< windows that can be cut whole, by name
    std::vector<std::string> short_of;      ///< windows that can't
    std::vector<std::string> alternatives;  ///< what would make more fit; sentences
};

/// `plan` must be of `survey` and `came`, and `figures` of `survey`.
[[nodiscard]] HouseRollSheet roll_sheet(const Survey& survey, const Figures& figures, const RollsThatCame& came,
                                        const HousePlan& plan, const SheetStyle& style = {});

/// The rolls to be measured metre by metre before the first cut; of no plan, for it is made by what was counted.
[[nodiscard]] std::vector<CountSheet> count_sheets(const Survey& survey, const RollsThatCame& came,
                                                   const SheetStyle& style = {});

}  // namespace truehang
