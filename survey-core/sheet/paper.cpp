// SPDX-License-Identifier: Apache-2.0
#include "sheet/paper.h"

#include <algorithm>
#include <array>

namespace truehang {

namespace {

/// GNU C Library 2.36, locales: LC_PAPER with a height of 279.
constexpr std::array<std::string_view, 14> letter_territories{"BO", "CA", "CL", "CO", "CR", "GT", "MX",
                                                              "NI", "PA", "PH", "PR", "SV", "US", "VE"};

}  // namespace

std::string_view word_of(Paper paper) { return paper == Paper::letter ? "letter" : "a4"; }

std::optional<Paper> paper_of(std::string_view word) {
    for (const Paper paper : {Paper::a4, Paper::letter}) {
        if (word_of(paper) == word) {
            return paper;
        }
    }
    return std::nullopt;
}

Paper paper_of_territory(std::string_view territory) {
    return std::ranges::find(letter_territories, territory) != letter_territories.end() ? Paper::letter : Paper::a4;
}

Paper paper_of_locale(std::string_view locale) {
    const auto at = locale.find('_');
    return at == std::string_view::npos ? Paper::a4 : paper_of_territory(locale.substr(at + 1, 2));
}

}  // namespace truehang
