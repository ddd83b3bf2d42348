// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "truth.h"

#include <array>

// What the windows of all shapes are made of.

namespace truehang::trial {

struct Point {
    double x = 0.0, y = 0.0;
};

[[nodiscard]] double distance(Point a, Point b);
[[nodiscard]] Point middle(Point a, Point b);

/// No corner lies further off its place, mm.
inline constexpr double most_off = 30.0;

/// How far out of true a house is: a new one, an old one, a crooked one.
[[nodiscard]] double crookedness(Random& random);

/// A point of that house.
[[nodiscard]] Point near(double x, double y, double off, Random& random);

/// How far an edge leaves the straight line in its middle.
[[nodiscard]] double bow(double off, Random& random);

/// The heights on three plumb lines, as y over a true level.
struct Heights {
    std::array<double, 3> floor, sill, head, ceiling;
    double pole = 0.0, level = 0.0;
};

/// Floor, ceiling, pole and level line round sills and heads that stand already.
void put_storey(double width, double off, double above_head, Random& random, Heights& heights);

/// All that may be read and reported of them.
void put_heights(const Heights& heights, bool has_sill, Truth& truth);

enum class Lines { all, outer };
/// The surveyor's way up the plumb lines.
void walk_heights(bool has_sill, Lines lines, Random& random, Truth& truth);

/// The wall beside an opening (or mouth) from `left` to `right`, along it; of a corner along both walls.
void put_wall(double left, double right, Random& random, Truth& truth);

[[nodiscard]] Truth bay_window(Built built, Random& random);
[[nodiscard]] Truth arched_window(Built built, Random& random, Keeping keeping);
[[nodiscard]] Truth gabled_window(Random& random, Keeping keeping);

}  // namespace truehang::trial
