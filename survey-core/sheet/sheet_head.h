// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cautions/cautions.h"
#include "figures/figures.h"
#include "sheet/sheet.h"
#include "survey/survey.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

// What stands at the head of a sheet of any kind.

namespace truehang {

/// A window by its place, counted through all rooms as in the figures; null where there is none.
struct SheetPlace {
    const Room* room = nullptr;
    const Window* window = nullptr;
};
[[nodiscard]] SheetPlace sheet_place(const Survey& survey, std::size_t window_index);

/// "Pilot house, revision 1".
[[nodiscard]] std::string corner_of(const Survey& survey);

/// Who, where, when and by whom; units and ± said once.
[[nodiscard]] std::vector<std::string> heading_lines(const Survey& survey, const SheetStyle& style);

/// The same as paragraphs: those lines as one, and what hangs there.
[[nodiscard]] std::vector<std::string> heading_paragraphs(const std::vector<std::string>& lines,
                                                          const std::string& description);

/// The flags of a window that concern a layer, gravest first.
[[nodiscard]] std::vector<SheetMind> minds_of(const WindowFigures& window, const std::string& layer);

/// Why nothing is to be cut yet; empty where no flag stands in the way. `minds` gravest first.
[[nodiscard]] std::string provisional_text(const std::vector<SheetMind>& minds);

/// A caution as a sheet says it.
[[nodiscard]] SheetMind caution_mind(const Caution& caution);

/// That a cloth of this layer runs one way, for each that does: to be read before it is cut.
[[nodiscard]] std::vector<SheetMind> one_way_minds(const Survey& survey, const LayerFigures& layer);
inline constexpr std::string_view one_way_code = "one-way";

/// A cell of words, and one of a figure set large.
[[nodiscard]] SheetCell word_cell(std::string text);
[[nodiscard]] SheetCell figure_cell(std::string text, std::string figure);

}  // namespace truehang
