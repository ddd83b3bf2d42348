// SPDX-License-Identifier: Apache-2.0
#include "arranging.h"

#include "own_items.h"

#include <algorithm>
#include <vector>

namespace truehang {

namespace {

template <class Item>
bool move_by(std::vector<Item>& items, std::string_view id, int by) {
    const auto found = std::ranges::find(items, id, &Item::id);
    if (found == items.end()) {
        return false;
    }
    const auto from = found - items.begin();
    const auto to = std::clamp<std::ptrdiff_t>(from + by, 0, std::ssize(items) - 1);
    if (to < from) {
        std::rotate(items.begin() + to, items.begin() + from, items.begin() + from + 1);
    } else {
        std::rotate(items.begin() + from, items.begin() + from + 1, items.begin() + to + 1);
    }
    return to != from;
}

Room* room_with(Survey& survey, std::string_view window_id) {
    const auto found = std::ranges::find_if(survey.rooms, [&](const Room& room) {
        return std::ranges::find(room.windows, window_id, &Window::id) != room.windows.end();
    });
    return found == survey.rooms.end() ? nullptr : &*found;
}

}  // namespace

bool move_room(Survey& survey, std::string_view room_id, int by) { return move_by(survey.rooms, room_id, by); }

bool move_window(Survey& survey, std::string_view window_id, int by) {
    Room* const room = room_with(survey, window_id);
    return room != nullptr && move_by(room->windows, window_id, by);
}

bool move_window_to(Survey& survey, std::string_view window_id, std::string_view room_id) {
    Room* const from = room_with(survey, window_id);
    const auto to = std::ranges::find(survey.rooms, room_id, &Room::id);
    if (from == nullptr || to == survey.rooms.end() || from == &*to) {
        return false;
    }
    const auto window = std::ranges::find(from->windows, window_id, &Window::id);
    to->windows.push_back(std::move(*window));
    from->windows.erase(window);
    return true;
}

Window window_like(const Window& other, const std::string& name, const std::function<std::string()>& new_id) {
    Window made;
    made.id = new_id();
    made.name = name;
    made.shape = other.shape;
    made.bearing = other.bearing;
    made.bearing_from = other.bearing_from;
    made.layered = other.layered;
    made.layers = for_another_window(other.layers, new_id);
    made.obstructions = other.obstructions;
    for (Obstruction& obstruction : made.obstructions) {
        obstruction.id = new_id();
    }
    return made;
}

}  // namespace truehang
