// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing.h"
#include "sheet/words.h"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

// What a sheet says, whichever kind it is: a head and parts in the order of reading. It is made once and set by two
// renderers, the printer's and the page's, neither of which works out or writes a number of its own.

namespace truehang {

/// One cell. `figure` names the figure that the text writes, by its place in the layer's figures (`finished.drop_mm`,
/// `cloth.cut_drop_mm`, `tabs.each`), in the window's (`sizes.pole.left`) or in the orders
/// (`orders.sailcloth.order_m`); empty for words.
struct SheetCell {
    std::string text{};
    std::string figure{};
    bool number = false;  ///< set in large figures, to the right
};

struct SheetRow {
    std::vector<SheetCell> cells{};
};

/// A titled block. `columns` are the small heads above its cells; none where the block needs none.
struct SheetBlock {
    std::string key{};  ///< finished, hang, cut, tabs, eyelets, rods, order, …
    std::string title{};
    std::vector<std::string> columns{};
    std::vector<SheetRow> rows{};
    std::string note{};   ///< a sentence under the rows, else empty
    bool beside = false;  ///< stands beside the drawing before it, where there is room
};

/// One flag as the sheet says it: a shape, its word, a sentence.
struct SheetMind {
    Severity severity = Severity::note;
    FlagShape shape = FlagShape::circle;
    std::string word{};  ///< "Caution"
    std::string text{};
    std::string code{};
};

/// How one figure came about, in words and numbers.
struct SheetWorking {
    std::string figure{};  ///< its place, as in SheetCell
    std::string title{};   ///< "Finished drop"
    std::vector<std::string> steps{};
};

/// A drawing in mm of paper, to stand beside the blocks that follow it or alone on the sheet's whole width.
struct SheetDrawing {
    Elevation drawing{};
    std::string title{};  ///< over one that stands alone; else empty
};

/// What must be minded, under a title: "Mind".
struct SheetMinds {
    std::string title{};
    std::vector<SheetMind> minds{};
};

/// How the figures came about, in small.
struct SheetWorkings {
    std::string title{};
    std::vector<SheetWorking> workings{};
};

/// Sentences under a title, else without one.
struct SheetWords {
    std::string title{};
    std::vector<std::string> lines{};
};

using SheetPart = std::variant<SheetBlock, SheetDrawing, SheetMinds, SheetWorkings, SheetWords>;

/// The kinds of sheet, as the command and the pages name them.
enum class SheetKind { measure, cutting, making, hanging, light, agreed };
[[nodiscard]] std::string_view word_of(SheetKind kind);
[[nodiscard]] std::optional<SheetKind> sheet_kind(std::string_view word);
/// "Measure sheet", "Cutting list", "Making sheet", "Hanging sheet", "Light sheet", "Agreement".
[[nodiscard]] std::string title_of(SheetKind kind);

/// One sheet: it begins a page, and its pages are counted for themselves.
struct Sheet {
    SheetKind kind = SheetKind::measure;
    std::string title{};                 ///< "Parlour, south window"
    std::string corner{};                ///< "Pilot house, revision 1"
    std::vector<std::string> heading{};  ///< who, where, when, by whom; units and ± said once
    std::string provisional{};           ///< why nothing is to be done from it yet, said loudly; else empty
    std::vector<SheetMind> first{};      ///< what must be read before anything else
    std::vector<SheetPart> parts{};
    std::string window{}, layer{};  ///< ids; empty where it is the house's
};

/// The cell that writes `figure`, or null: what one set of numbers is compared by.
[[nodiscard]] const SheetCell* find_cell(const Sheet& sheet, std::string_view figure);

}  // namespace truehang
