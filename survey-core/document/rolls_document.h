// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/document.h"
#include "rolls/house_plan.h"

#include <string>
#include <string_view>

namespace truehang {

/// Reads a rolls document (format truehang.rolls/1) for `survey`: UTF-8 JSON within the same limits as a survey. All
/// faults come in one go, each at its pointer: another survey's id, a fabric the survey hasn't got, two rolls of one id
/// in a fabric, a flaw or join that lies off its roll. Unknown keys are let be.
[[nodiscard]] Result<RollsThatCame, Faults> read_rolls(std::string_view bytes, const Survey& survey);

/// Writes it: reading what was written gives the same.
[[nodiscard]] std::string write_rolls(const RollsThatCame& came);

/// The plan as a document (format truehang.rollplan/1).
[[nodiscard]] nlohmann::ordered_json roll_plan_json(const HousePlan& plan);
[[nodiscard]] std::string write_roll_plan(const HousePlan& plan);

/// Reads a plan of `survey` from the rolls that `came`: writing what was read gives the same. Its pieces are the
/// survey's own as they are worked now. A fault where it isn't a plan of both: a piece that isn't the survey's, is cut
/// too short or twice or nowhere, a roll that didn't come.
[[nodiscard]] Result<HousePlan, Faults> read_roll_plan(std::string_view bytes, const Survey& survey,
                                                       const RollsThatCame& came);

}  // namespace truehang
