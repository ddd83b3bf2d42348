// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/rolls.h"

#include <compare>
#include <cstdint>
#include <span>
#include <vector>

// A roll as clean stretches, in whole micrometres; used by the files of this folder alone.

namespace truehang::laying {

using Um = std::int64_t;

[[nodiscard]] Um down(Length length);
[[nodiscard]] Um up(Length length);
[[nodiscard]] Length length_of(Um um);

/// Cloth without flaw or join.
struct Stretch {
    Um from = 0, to = 0;
    Um phase = 0;  ///< position of a repeat's line, anywhere
};

struct Ground {
    Um length = 0;
    std::vector<Stretch> stretches;
    friend bool operator==(const Ground& a, const Ground& b);
};
[[nodiscard]] Ground ground_of(const Roll& roll);

/// What lies along a roll: one piece, or two halves side by side.
struct Slot {
    static constexpr Um anywhere = -1;
    Um length = 0;
    Um phase = anywhere;
    friend auto operator<=>(const Slot&, const Slot&) = default;
};

/// The first place at or after `cursor` where a piece of that phase may begin.
[[nodiscard]] Um first_start(const Stretch& stretch, Um cursor, Um phase, Um repeat);

struct Placed {
    int slot = 0;
    Um from = 0, to = 0;
};

struct Gap {
    Um from = 0, to = 0;
    bool ends_stretch = false;  ///< what follows is a flaw, a join or the roll’s end, not a piece
};
/// Clean cloth that nothing lies on; `placed` in order along the roll.
[[nodiscard]] std::vector<Gap> gaps_of(const Ground& ground, std::span<const Placed> placed);

struct RollUse {
    Um used = 0;
    Um longest = 0;  ///< useful remnant
};
/// Nothing is used of a roll that isn't cut into.
[[nodiscard]] RollUse use_of(const Ground& ground, std::span<const Placed> placed, Um useful);

}  // namespace truehang::laying
