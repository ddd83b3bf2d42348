// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"

#include <functional>
#include <string>
#include <string_view>

// Rooms and windows of a survey put in another order, moved and copied. Each gives false, and changes nothing, where
// there is nothing to change.

namespace truehang {

/// `by` places towards the end; stops at the first and the last place.
[[nodiscard]] bool move_room(Survey& survey, std::string_view room_id, int by);
/// Within its room.
[[nodiscard]] bool move_window(Survey& survey, std::string_view window_id, int by);
/// To the end of another room.
[[nodiscard]] bool move_window_to(Survey& survey, std::string_view window_id, std::string_view room_id);

/// A window like another: shape, which way it faces, what hangs there, what is in the way. It has ids of its own; no
/// reading, reason, photo or note goes with it: all its stations are to be measured.
[[nodiscard]] Window window_like(const Window& other, const std::string& name,
                                 const std::function<std::string()>& new_id);

}  // namespace truehang
