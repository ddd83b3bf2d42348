// SPDX-License-Identifier: Apache-2.0
#include "survey/photos.h"

#include <algorithm>
#include <utility>

namespace truehang {

namespace {

/// A window and its room in a survey, constant or not.
template <class Room, class Window>
struct Found {
    Room* room = nullptr;
    Window* window = nullptr;
};

template <class Room, class Window, class Survey>
Found<Room, Window> find_window(Survey& survey, std::string_view window_id) {
    for (auto& room : survey.rooms) {
        const auto window = std::ranges::find(room.windows, window_id, &truehang::Window::id);
        if (window != room.windows.end()) {
            return {&room, &*window};
        }
    }
    return {};
}

bool has_obstruction(const Window& window, std::string_view id) {
    return std::ranges::find(window.obstructions, id, &Obstruction::id) != window.obstructions.end();
}

}  // namespace

std::vector<PhotoPlace> photos_in(const Survey& survey) {
    std::vector<PhotoPlace> photos;
    for (const Room& room : survey.rooms) {
        for (const Photo& photo : room.photos) {
            photos.push_back({&photo, &room, nullptr});
        }
        for (const Window& window : room.windows) {
            for (const Photo& photo : window.photos) {
                photos.push_back({&photo, &room, &window});
            }
        }
    }
    return photos;
}

std::vector<PhotoPlace> photos_with(const Survey& survey, std::string_view window_id) {
    std::vector<PhotoPlace> photos;
    const auto [room, window] = find_window<const Room, const Window>(survey, window_id);
    if (window != nullptr) {
        for (const Photo& photo : window->photos) {
            photos.push_back({&photo, room, window});
        }
        for (const Photo& photo : room->photos) {
            if (std::ranges::find(window->photos, photo.sha256, &Photo::sha256) == window->photos.end()) {
                photos.push_back({&photo, room, nullptr});
            }
        }
    }
    return photos;
}

const Photo* photo_with(const Survey& survey, std::string_view window_id, std::string_view sha256) {
    for (const PhotoPlace& place : photos_with(survey, window_id)) {
        if (place.photo->sha256 == sha256) {
            return place.photo;
        }
    }
    return nullptr;
}

Photo* photo_with(Survey& survey, std::string_view window_id, std::string_view sha256) {
    const auto [room, window] = find_window<Room, Window>(survey, window_id);
    if (window == nullptr) {
        return nullptr;
    }
    for (auto* photos : {&window->photos, &room->photos}) {
        const auto photo = std::ranges::find(*photos, sha256, &Photo::sha256);
        if (photo != photos->end()) {
            return &*photo;
        }
    }
    return nullptr;
}

PhotoOf shown_by(const PhotoPlace& place) {
    if (place.window == nullptr) {
        return {.room = true, .obstruction = {}};
    }
    const std::string& one = place.photo->obstruction;
    return {.room = false, .obstruction = has_obstruction(*place.window, one) ? one : std::string()};
}

bool add_photo(Survey& survey, std::string_view window_id, Photo photo, const PhotoOf& of) {
    const auto [room, window] = find_window<Room, Window>(survey, window_id);
    if (window == nullptr || photo_with(survey, window_id, photo.sha256) != nullptr) {
        return false;
    }
    photo.obstruction = !of.room && has_obstruction(*window, of.obstruction) ? of.obstruction : std::string();
    (of.room ? room->photos : window->photos).push_back(std::move(photo));
    return true;
}

bool take_photo_off(Survey& survey, std::string_view window_id, std::string_view sha256) {
    const auto [room, window] = find_window<Room, Window>(survey, window_id);
    const auto is_it = [&](const Photo& photo) { return photo.sha256 == sha256; };
    return window != nullptr && (std::erase_if(window->photos, is_it) > 0 || std::erase_if(room->photos, is_it) > 0);
}

bool give_photo(Survey& survey, std::string_view window_id, std::string_view sha256, const PhotoOf& of) {
    const auto places = photos_with(survey, window_id);
    const auto place =
        std::ranges::find_if(places, [&](const PhotoPlace& each) { return each.photo->sha256 == sha256; });
    const auto [room, window] = find_window<Room, Window>(survey, window_id);
    if (place == places.end() || shown_by(*place) == of ||
        (!of.obstruction.empty() && (of.room || !has_obstruction(*window, of.obstruction)))) {
        return false;
    }
    auto& from = place->window == nullptr ? room->photos : window->photos;
    Photo given = *place->photo;
    given.obstruction = of.obstruction;
    if (of.room == (place->window == nullptr)) {
        *std::ranges::find(from, sha256, &Photo::sha256) = std::move(given);
        return true;
    }
    std::erase_if(from, [&](const Photo& photo) { return photo.sha256 == sha256; });
    auto& to = of.room ? room->photos : window->photos;
    if (std::ranges::find(to, sha256, &Photo::sha256) == to.end()) {
        to.push_back(std::move(given));
    }
    return true;
}

}  // namespace truehang
