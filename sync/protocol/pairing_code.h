// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

// The one-time code by which a device is taken on: eight characters of 0 to 9 and A to Z without I, L, O and U, shown
// as two groups of four ("7K2M-QX4D"): 40 bits, read aloud and typed on a phone.

namespace truehang::sync {

inline constexpr std::size_t pairing_code_length = 8;
/// How long a code holds.
inline constexpr std::chrono::minutes pairing_code_life{10};
/// How many wrong codes a workroom hears out in a minute before it answers 429.
inline constexpr int pairing_tries_a_minute = 5;

/// The code for 40 random bits, as it is shown.
[[nodiscard]] std::string pairing_code(std::uint64_t random_bits);

/// What was typed as the eight characters: case, spaces and hyphens don't matter, O counts as 0, I and L as 1.
/// Nothing where it can't be a code.
[[nodiscard]] std::optional<std::string> read_pairing_code(std::string_view typed);

}  // namespace truehang::sync
