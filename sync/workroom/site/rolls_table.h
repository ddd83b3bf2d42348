// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/rolls_document.h"
#include "workroom/archive/plan_shelf.h"
#include "workroom/archive/rolls_shelf.h"

#include <optional>
#include <string>
#include <vector>

namespace truehang::workroom {

/// A survey and the rolls that came for it, side by side as they are kept.
struct RollsTable {
    Survey survey;
    RollsThatCame came;
    std::vector<KeptRolls> versions;
    std::string said;  ///< where what is kept no longer fits the survey
    PlanBasis basis;   ///< what a plan of both is worked from
};

/// The newest of both; nothing where the survey isn't here.
[[nodiscard]] Result<std::optional<RollsTable>> lay_out_rolls(Archive& archive, const std::string& survey);

/// The plan of what lies on the table where it is kept and still holds; nothing where it is to be worked out.
[[nodiscard]] Result<std::optional<HousePlan>> kept_plan(Archive& archive, const RollsTable& table);

/// Keeps a plan of what lies on the table. `damaged` where it can't be read again as it was written.
[[nodiscard]] Result<Done> keep_plan(Archive& archive, const RollsTable& table, const HousePlan& plan);

}  // namespace truehang::workroom
