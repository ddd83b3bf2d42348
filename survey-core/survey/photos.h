// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"

#include <string>
#include <string_view>
#include <vector>

namespace truehang {

/// A photo and whose it is: a room's own where `window` is null.
struct PhotoPlace {
    const Photo* photo;
    const Room* room;
    const Window* window;
};

/// Every photo that a survey names of its rooms and windows, a room's own before those of its windows.
[[nodiscard]] std::vector<PhotoPlace> photos_in(const Survey& survey);

/// The photos that are shown with a window: its own, then those of its room that aren't among them. Empty where the
/// window isn't there.
[[nodiscard]] std::vector<PhotoPlace> photos_with(const Survey& survey, std::string_view window_id);

/// The photo of this digest that is shown with a window; null where none is.
[[nodiscard]] const Photo* photo_with(const Survey& survey, std::string_view window_id, std::string_view sha256);
[[nodiscard]] Photo* photo_with(Survey& survey, std::string_view window_id, std::string_view sha256);

/// What a photo shows: the room, or the window or, where `obstruction` is the id of one of its own, that.
struct PhotoOf {
    bool room = false;
    std::string obstruction;
    bool operator==(const PhotoOf&) const = default;
};

/// What the photo of a place shows; an obstruction that is no more counts as the window.
[[nodiscard]] PhotoOf shown_by(const PhotoPlace& place);

/// Adds a photo that shows what `of` says; where that obstruction isn't there, the window. False, and nothing changed,
/// where the window isn't there or has a photo of this digest shown with it.
bool add_photo(Survey& survey, std::string_view window_id, Photo photo, const PhotoOf& of);

/// Takes the photo of this digest off a window or its room. False where none is shown with the window.
bool take_photo_off(Survey& survey, std::string_view window_id, std::string_view sha256);

/// Makes a photo that is shown with a window show something else. False, and nothing changed, where the photo, the
/// window or the obstruction isn't there, or it shows that already.
bool give_photo(Survey& survey, std::string_view window_id, std::string_view sha256, const PhotoOf& of);

}  // namespace truehang
