// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "protocol/records.h"
#include "survey/survey.h"

#include <string>
#include <vector>

namespace truehang::workroom {

/// Day and minute of a receipt, UTC.
[[nodiscard]] std::string moment_text(const std::string& rfc3339);

/// One survey: rooms and windows, orders and the cutting list by cloth, what came in when.
[[nodiscard]] std::string survey_page(const Survey& survey, const Figures& figures,
                                      const std::vector<sync::SurveyReceipt>& receipts, std::size_t photos_missing);

}  // namespace truehang::workroom
