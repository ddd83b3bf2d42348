// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>

namespace truehang::document_limits {

// How many of each a survey document may hold. Far above any house, low enough that no document keeps a phone busy.
inline constexpr std::size_t fabrics = 1000;
inline constexpr std::size_t rooms = 1000;
inline constexpr std::size_t windows = 10000;  ///< in a room, and over the whole survey
inline constexpr std::size_t readings = 2000;  ///< of a window; so for not_taken
inline constexpr std::size_t obstructions = 1000;
inline constexpr std::size_t photos = 1000;
inline constexpr std::size_t marks = 1000;
inline constexpr std::size_t sheets = 8;  ///< of known size on one photo
inline constexpr std::size_t taps = 9;    ///< of one corner
inline constexpr std::size_t bearings = 100;
inline constexpr std::size_t skyline = 100;
inline constexpr std::size_t layers = 20;
inline constexpr std::size_t heat = 100;
inline constexpr std::size_t brackets = 1000;
inline constexpr std::size_t rules = 1000;
inline constexpr std::size_t parents = 64;
inline constexpr std::size_t changed_twice = 10000;
inline constexpr std::size_t side_by_side = 100;  ///< values of one thing that was changed twice
inline constexpr std::size_t signature_strokes = 200;
inline constexpr std::size_t signature_points = 4000;  ///< of all its strokes

}  // namespace truehang::document_limits
