// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/roll_sheet.h"
#include "workroom/archive/rolls_shelf.h"
#include "workroom/site/rolls_form.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace truehang::workroom {

/// `/surveys/ID/rolls`
[[nodiscard]] std::string rolls_path(std::string_view survey);

/// What the page has to say beside the rolls and the plan.
struct RollsPage {
    std::vector<KeptRolls> versions;            ///< that are here, rising
    std::string said;                           ///< one sentence at the top, or nothing
    FormFields typed;                           ///< shown in place of what is kept of its fabric
    std::map<std::string, std::string> faults;  ///< by field of `typed`
    const HousePlan* plan = nullptr;            ///< null: it is being worked out
    bool with_forms = false;
    bool may_change = true;  ///< the one who looks
};

/// The page on which a workroom says which rolls came for a survey and sees what is cut from which. The plan must be of
/// both.
[[nodiscard]] std::string rolls_page(const Survey& survey, const Figures& figures, const RollsThatCame& came,
                                     const RollsPage& page);

/// In the place of a page that goes by the plan, while it is worked out.
[[nodiscard]] std::string working_page(const Survey& survey);

/// The rolls that are measured metre by metre before the first cut, each as a list to be ticked off.
[[nodiscard]] std::string count_page(const Survey& survey, const RollsThatCame& came);

}  // namespace truehang::workroom
