// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>

namespace truehang::test {

/// A reading as it is typed.
struct Typed {
    const char* station;
    const char* digits;
};

/// The readings, in mm, that a pair to the floor at a plain recess is made from. They add up: 871 below, 1130 of the
/// opening and 340 above make the 2341 of the ceiling.
inline constexpr std::array<Typed, 12> plain_recess{{{"opening.width.top", "1238"},
                                                     {"opening.width.middle", "1240"},
                                                     {"opening.width.bottom", "1241"},
                                                     {"below.left", "871"},
                                                     {"opening.height.left", "1130"},
                                                     {"above.left", "340"},
                                                     {"ceiling.left", "2341"},
                                                     {"below.centre", "869"},
                                                     {"opening.height.centre", "1131"},
                                                     {"below.right", "866"},
                                                     {"opening.height.right", "1132"},
                                                     {"pole.above", "120"}}};

}  // namespace truehang::test
