// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"

#include <string>

// What the typing driver types, so that its runner knows it too: readings of four digits, one after the other.

namespace truehang::testing {

inline constexpr const char* typed_visit = "typed-visit";

inline int typed_value(int reading) { return 1000 + reading * 37 % 9000; }

/// The text in the field after `digits` (0 to 4) of reading number `reading`.
inline std::string typed_text(int reading, int digits) {
    return std::to_string(typed_value(reading)).substr(0, static_cast<std::size_t>(digits));
}

inline Window typed_window(int readings) {
    Window window;
    window.id = "south";
    window.shape = Shape::recess;
    for (int i = 0; i < readings; ++i) {
        Reading& reading = window.readings.emplace_back();
        reading.id = "r" + std::to_string(i);
        reading.station = "opening.width.top";
        reading.value = Length::mm(typed_value(i));
        reading.typed = typed_text(i, 4);
        reading.taken_at = "2026-03-14T10:30:00+00:00";
    }
    return window;
}

}  // namespace truehang::testing
