// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "truth.h"

#include <cstdint>
#include <functional>
#include <map>
#include <optional>
#include <string>

// Somebody at work on a visit.

namespace truehang::sync::simulation {

/// A whole number from 0 to below its argument.
using Below = std::function<std::size_t(std::size_t)>;

/// The visit as it is begun: two rooms, two windows.
[[nodiscard]] Survey begun_visit();

struct Edited {
    Survey visit;
    std::map<std::string, std::string> photos;   ///< added, bytes by digest
    std::function<void(Truth& truth)> happened;  ///< told once the edit is kept
    std::string what;                            ///< for people
};

/// One edit of `visit` by chance: a reading, a note, a photo; something taken out, moved, settled. `name` is an id of
/// its own. Nothing where it can’t be made; then `fault` says why, if that should have been possible.
[[nodiscard]] std::optional<Edited> edit_by_chance(const Survey& visit, const std::string& name, const Below& below,
                                                   std::string& fault);

/// The same note for the visit’s first room, whatever it was; for a last word.
[[nodiscard]] Survey with_last_word(Survey visit, const std::string& word);

}  // namespace truehang::sync::simulation
