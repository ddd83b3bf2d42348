// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/paper.h"
#include "sheet/sheets.h"
#include "sheet/stamp.h"
#include "survey/survey.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

namespace truehang::workroom {

/// A window of a survey by its place: counted through all rooms, as in the figures.
struct WindowPlace {
    const Room* room = nullptr;
    const Window* window = nullptr;
    std::size_t index = 0;
    std::size_t layer = 0;
};

/// The window `id`, or `room/id` where two rooms have one of that name, and its layer (empty: the first). Nothing where
/// there is none.
[[nodiscard]] std::optional<WindowPlace> find_window(const Survey& survey, std::string_view id,
                                                     std::string_view layer = {});
[[nodiscard]] std::optional<WindowPlace> find_window(const Survey& survey, std::string_view room, std::string_view id,
                                                     std::string_view layer);

/// Where this window's measure sheet is served; its other kinds and its template stand below it.
[[nodiscard]] std::string sheet_path(const Survey& survey, const Room& room, const Window& window,
                                     std::string_view layer);
/// Where all sheets of a kind are served.
[[nodiscard]] std::string house_sheets_path(const Survey& survey, SheetKind kind);

/// Where ways to hang this window stand side by side.
[[nodiscard]] std::string choices_path(const Survey& survey, const Room& room, const Window& window,
                                       std::string_view layer);

/// Whether a photo is here; its digest.
using PhotoIsHere = std::function<bool(const std::string& sha256)>;

/// A page of sheets and how it is to be set.
struct SheetPageAsked {
    SheetsAsked sheets;
    SheetStyle style;
    Paper paper = Paper::a4;
    bool standalone = false;            ///< one file that fetches nothing and shows photos by caption only
    std::optional<SheetStamp> stamp{};  ///< of each sheet
    std::string path;  ///< where it is served, for its links to itself on other paper or in another unit
};

/// Sheets as one page that prints, each from a fresh page of paper. Nothing where there is no such sheet.
[[nodiscard]] std::optional<std::string> sheets_page(const Survey& survey, const Figures& figures,
                                                     const SheetPageAsked& asked, const PhotoIsHere& photo_is_here);

}  // namespace truehang::workroom
