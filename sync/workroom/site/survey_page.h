// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "protocol/records.h"
#include "survey/survey.h"
#include "workroom/archive/archive.h"

#include <string>
#include <vector>

namespace truehang::workroom {

/// One line of the list: a survey's newest revision, read.
struct SurveyLine {
    Survey survey;
    sync::SurveyReceipt receipt;
    std::size_t photos_here = 0;
    std::size_t photos = 0;
};

/// Every survey that came in.
[[nodiscard]] std::string list_page(const std::vector<SurveyLine>& lines);

/// One survey: rooms and windows, orders and the cutting list by cloth, what came in when.
[[nodiscard]] std::string survey_page(const Survey& survey, const Figures& figures,
                                      const std::vector<sync::SurveyReceipt>& receipts, std::size_t photos_missing);

/// Digests of the photos that a survey shows, each once.
[[nodiscard]] std::vector<std::string> photos_of(const Survey& survey);

/// Day and minute of a time of RFC 3339: "14 March 2026, 10:20 UTC".
[[nodiscard]] std::string moment_text(const std::string& rfc3339);

}  // namespace truehang::workroom
