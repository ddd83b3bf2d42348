// SPDX-License-Identifier: Apache-2.0
#include "sheet/sheet.h"

#include "units/saying.h"

#include <array>

namespace truehang {

namespace {

struct KindWords {
    SheetKind kind;
    std::string_view word;
    std::string_view title;
};

constexpr std::array kinds{
    KindWords{SheetKind::measure, "measure", to_say("Measure sheet")},
    KindWords{SheetKind::cutting, "cutting", to_say("Cutting list")},
    KindWords{SheetKind::making, "making", to_say("Making sheet")},
    KindWords{SheetKind::hanging, "hanging", to_say("Hanging sheet")},
    KindWords{SheetKind::light, "light", to_say("Light sheet")},
    KindWords{SheetKind::agreed, "agreed", to_say("Agreement")},
};

const KindWords& words_of(SheetKind kind) {
    for (const KindWords& words : kinds) {
        if (words.kind == kind) {
            return words;
        }
    }
    return kinds.front();
}

}  // namespace

std::string_view word_of(SheetKind kind) { return words_of(kind).word; }

std::string title_of(SheetKind kind) { return worded(words_of(kind).title); }

std::optional<SheetKind> sheet_kind(std::string_view word) {
    for (const KindWords& words : kinds) {
        if (words.word == word) {
            return words.kind;
        }
    }
    return std::nullopt;
}

const SheetCell* find_cell(const Sheet& sheet, std::string_view figure) {
    for (const SheetPart& part : sheet.parts) {
        const auto* block = std::get_if<SheetBlock>(&part);
        if (block == nullptr) {
            continue;
        }
        for (const SheetRow& row : block->rows) {
            for (const SheetCell& cell : row.cells) {
                if (cell.figure == figure) {
                    return &cell;
                }
            }
        }
    }
    return nullptr;
}

}  // namespace truehang
