// SPDX-License-Identifier: Apache-2.0
#include "truth.h"

#include "truth_parts.h"

#include <algorithm>
#include <cmath>

namespace truehang::trial {

namespace {

/// The four corners of an opening, bottom left and right, top left and right.
struct Corners {
    Point bottom_left, bottom_right, top_left, top_right;
};

Corners crooked_corners(double width, double height, double sill, double off, Random& random) {
    const Point bottom_left = near(0.0, sill, off, random), bottom_right = near(width, sill, off, random);
    const Point top_left = near(0.0, sill + height, off, random), top_right = near(width, sill + height, off, random);
    return {bottom_left, bottom_right, top_left, top_right};
}

/// The four sides, the diagonals, and the middles between edges that bow.
void put_opening(const Corners& c, double off, Random& random, Truth& truth) {
    auto& values = truth.values;
    values["opening.width.bottom"] = distance(c.bottom_left, c.bottom_right);
    values["opening.width.top"] = distance(c.top_left, c.top_right);
    values["opening.height.left"] = distance(c.bottom_left, c.top_left);
    values["opening.height.right"] = distance(c.bottom_right, c.top_right);
    values["opening.diagonal.rising"] = distance(c.bottom_left, c.top_right);
    values["opening.diagonal.falling"] = distance(c.top_left, c.bottom_right);
    const double bows = bow(off, random);
    values["opening.width.middle"] =
        distance(middle(c.bottom_left, c.top_left), middle(c.bottom_right, c.top_right)) + bows + bow(off, random);
}

Truth rectangular(Built built, Random& random) {
    Truth truth;
    truth.built = built;
    const bool is_door = built == Built::door;
    const double off = crookedness(random);
    const double width = random.between(600.0, 2400.0);
    const double height = is_door ? random.between(1900.0, 2250.0) : random.between(800.0, 1700.0);
    const double sill = is_door ? 0.0 : random.between(300.0, 1000.0);

    Heights heights;
    const Corners c = crooked_corners(width, height, sill, off, random);
    heights.sill = {c.bottom_left.y, middle(c.bottom_left, c.bottom_right).y + bow(off, random), c.bottom_right.y};
    heights.head = {c.top_left.y, middle(c.top_left, c.top_right).y + bow(off, random), c.top_right.y};
    put_storey(width, off, random.between(80.0, 500.0), random, heights);
    if (is_door) {
        heights.floor = heights.sill;
    }
    put_opening(c, off, random, truth);
    truth.values["opening.height.centre"] = std::hypot(
        heights.head[1] - heights.sill[1], middle(c.top_left, c.top_right).x - middle(c.bottom_left, c.bottom_right).x);
    truth.values["opening.depth"] = random.between(80.0, 300.0);
    truth.values["sill.projection"] = random.between(15.0, 60.0);
    truth.walk = {"opening.width.top",    "opening.width.bottom",    "opening.height.left",     "opening.height.centre",
                  "opening.height.right", "opening.diagonal.rising", "opening.diagonal.falling"};
    if (random.chance(0.8)) {
        truth.walk.emplace_back("opening.width.middle");
    }
    if (built == Built::recess) {
        truth.walk.emplace_back("opening.depth");
    }
    put_wall(c.top_left.x, c.top_right.x, random, truth);
    put_heights(heights, !is_door, truth);
    walk_heights(!is_door, Lines::all, random, truth);
    return truth;
}

}  // namespace

const BuiltKind& kind_of(Built built) { return *std::ranges::find(built_kinds, built, &BuiltKind::built); }

bool is_angle(std::string_view station) { return station.ends_with(".angle_deg"); }

Truth crooked_window(Built built, Random& random, Keeping keeping) {
    switch (kind_of(built).shape) {
        case Shape::bay:
        case Shape::corner:
            return bay_window(built, random);
        case Shape::arch:
            return arched_window(built, random, keeping);
        case Shape::gable:
            return gabled_window(random, keeping);
        default:
            break;
    }
    return rectangular(built, random);
}

Built in_turn(int place) { return built_kinds[static_cast<std::size_t>(place) % built_kinds.size()].built; }

Built for_clean(int place) {
    // 389 and 1000 have no common factor: a thousand windows in a row hold each kind as often as it is meant.
    int left = static_cast<int>(389LL * place % 1000);
    for (const BuiltKind& kind : built_kinds) {
        if (left < kind.clean) {
            return kind.built;
        }
        left -= kind.clean;
    }
    return built_kinds.back().built;
}

}  // namespace truehang::trial
