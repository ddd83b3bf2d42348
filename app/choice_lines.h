// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/choices.h"
#include "shown_rows.h"
#include "survey/survey.h"

#include <vector>

namespace truehang {

/// What choices take, a row each: `line`, `label`, `cells` (a text for each choice). A line of money is left out where
/// no choice has a sum for it.
[[nodiscard]] QList<ShownRows::Row> choice_lines(const Survey& survey, const std::vector<Choice>& choices);

/// Whether any of them has a sum.
[[nodiscard]] bool has_sums(const std::vector<Choice>& choices);

}  // namespace truehang
