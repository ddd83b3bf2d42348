// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"

#include <QString>
#include <cstddef>

namespace truehang {

/// What one choice of an entry says: a length with its unit, a treatment in words, names in their order, "Take it out".
/// A value that this version doesn't know is shown as it is written.
[[nodiscard]] QString choice_says(const Survey& survey, const ChangedTwice& entry, std::size_t choice);

}  // namespace truehang
