// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/questions.h"

#include <cstddef>
#include <string>
#include <vector>

namespace truehang::workroom {

struct StepsTable;

/// One survey: rooms and windows with what was done of each layer, orders and the cutting list by cloth, what was asked
/// and answered, what came in when. It listens for what comes in after the cursor `since`.
[[nodiscard]] std::string survey_page(const StepsTable& table, std::size_t photos_missing,
                                      const std::vector<sync::AskedQuestion>& asked, const std::string& since);

}  // namespace truehang::workroom
