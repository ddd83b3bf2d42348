// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
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

/// Where this sheet is served.
[[nodiscard]] std::string sheet_path(const Survey& survey, const Room& room, const Window& window,
                                     std::string_view layer);

/// Where ways to hang this window stand side by side.
[[nodiscard]] std::string choices_path(const Survey& survey, const Room& room, const Window& window,
                                       std::string_view layer);

/// Whether a photo is here; its digest.
using PhotoIsHere = std::function<bool(const std::string& sha256)>;

/// The measure sheet of one window and layer as a page that prints on A4. Standalone: one file that fetches nothing
/// and shows photos by caption only.
[[nodiscard]] std::string sheet_page(const Survey& survey, const Figures& figures, const WindowPlace& place,
                                     const PhotoIsHere& photo_is_here, bool standalone);

}  // namespace truehang::workroom
