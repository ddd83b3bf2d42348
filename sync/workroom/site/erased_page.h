// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/archive/erasure.h"

#include <string>
#include <vector>

namespace truehang::workroom {

/// What was erased, when and by whom; nothing else of it is known any more.
[[nodiscard]] std::string erased_page(const std::vector<ErasedSurvey>& erased);

}  // namespace truehang::workroom
