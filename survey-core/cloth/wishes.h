// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cloth/part.h"

#include <optional>
#include <string>

// Wishes that no cloth can meet. Each is told in one sentence of the trade's words, with what to change.

namespace truehang {

/// Why nothing can be cut from what is asked: cloth, repeats, fullness, folds, pelmet. Judged before the cloth is
/// worked; nothing where all of it can be had.
[[nodiscard]] std::optional<std::string> impossible_wish(const PlanParts& parts);

/// Why the face cloth can't be joined to the width that is needed: no number of widths reaches.
[[nodiscard]] std::string cant_be_joined(const PlanParts& parts);

/// Why a part can't be made from the face cloth that was worked: its drop on the roll, lining, tabs, eyelets, weights.
[[nodiscard]] std::optional<std::string> impossible_part(const PlanParts& parts);

}  // namespace truehang
