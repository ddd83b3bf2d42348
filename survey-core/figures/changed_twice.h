// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/findings.h"
#include "survey/survey.h"

#include <string>
#include <string_view>
#include <vector>

// What two people changed differently, as it is said to whoever settles it.

namespace truehang {

inline constexpr std::string_view changed_twice_code = "changed-twice";

/// Where an entry lies: ids, empty where it isn’t in one, and the key that was changed, empty where it is the item
/// itself that one took out.
struct ChangedPlace {
    std::string window, room, fabric, layer, obstruction;
    std::string key;
};
[[nodiscard]] ChangedPlace place_of(const ChangedTwice& twice);

/// What it is, in the language in force: "the notes", "the width of Damask", "this window". A key that this version
/// doesn’t know is named as it is written.
[[nodiscard]] std::string changed_thing(const Survey& survey, const ChangedTwice& twice);

/// What is to be said of it: "Two people changed the notes in different ways. Both are kept. Say which one counts."
[[nodiscard]] std::string changed_twice_says(const Survey& survey, const ChangedTwice& twice);

/// One flag `changed-twice` (`decide`) for each entry within the window.
[[nodiscard]] std::vector<Flag> changed_twice_flags(const Survey& survey, const Window& window);

/// One for each entry that lies in no window: in rooms, fabrics, or what is said of the whole visit.
[[nodiscard]] std::vector<Flag> changed_twice_flags(const Survey& survey);

}  // namespace truehang
