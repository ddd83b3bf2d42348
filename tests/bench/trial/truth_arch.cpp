// SPDX-License-Identifier: Apache-2.0
#include "truth_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace truehang::trial {

namespace {

/// A symmetrical curve over a springing line from (0, 0) to (2 half, 0), by centres and radii.
struct Curve {
    double half = 0.0;
    double rise = 0.0;
    Point side;                ///< centre of the left side arc
    double side_radius = 0.0;  ///< none: the crown's arc goes all the way
    double crown_y = 0.0;      ///< the crown's centre lies over the middle
    double crown_radius = 0.0;
    double joint = 0.0;  ///< where the side arc ends

    [[nodiscard]] double height_at(double along) const {
        const double x = std::min(along, 2.0 * half - along);
        if (side_radius > 0.0 && x < joint) {
            return side.y + std::sqrt(side_radius * side_radius - (x - side.x) * (x - side.x));
        }
        return crown_y + std::sqrt(crown_radius * crown_radius - (x - half) * (x - half));
    }
};

/// The circle through both springings and the crown: the centre is as far from one as from the other.
Curve circle(double half, double rise) {
    Curve curve{half, rise, {}, 0.0, 0.0, 0.0, 0.0};
    double low = -100.0 * half;
    double high = rise;
    for (int i = 0; i < 200; ++i) {
        const double y = (low + high) / 2.0;
        (std::hypot(half, y) < rise - y ? low : high) = y;
    }
    curve.crown_y = (low + high) / 2.0;
    curve.crown_radius = rise - curve.crown_y;
    return curve;
}

/// Side arcs upright at the springings, of a given radius, and the crown's arc that touches both: found by trying.
Curve three_centres(double half, double rise, double side_radius) {
    Curve curve{half, rise, {side_radius, 0.0}, side_radius, 0.0, 0.0, 0.0};
    double low = rise;
    double high = 1000.0 * half;
    for (int i = 0; i < 200; ++i) {
        const double radius = (low + high) / 2.0;
        const double apart = std::hypot(half - side_radius, rise - radius);
        (apart > radius - side_radius ? low : high) = radius;
    }
    curve.crown_radius = (low + high) / 2.0;
    curve.crown_y = rise - curve.crown_radius;
    // The arcs touch on the line through both centres.
    const double apart = std::hypot(half - side_radius, curve.crown_y);
    curve.joint = side_radius - side_radius * (half - side_radius) / apart;
    return curve;
}

/// Two arcs about points of the springing line.
Curve pointed(double half, double radius) {
    Curve curve{half, 0.0, {radius, 0.0}, radius, 0.0, 0.0, 2.0 * half};
    curve.rise = curve.height_at(half);
    return curve;
}

Curve curve_of(Built built, double half, Random& random) {
    switch (built) {
        case Built::semicircle:
            return circle(half, half);
        case Built::segment:
            return circle(half, half * random.between(0.2, 0.85));
        case Built::three_centres: {
            const double rise = half * random.between(0.5, 0.8);
            return three_centres(half, rise, rise * random.between(0.35, 0.7));
        }
        default:
            return pointed(half, half * random.between(1.15, 2.0));
    }
}

void put_radii(Built built, const Curve& curve, Truth& truth) {
    if (built == Built::three_centres) {
        truth.values["arch.radius.crown"] = curve.crown_radius;
        truth.values["arch.radius.side"] = curve.side_radius;
    } else if (built != Built::pointed) {
        truth.values["arch.radius"] = curve.crown_radius;
    }
}

/// Three, five or seven of them, evenly spread and then where the lath came to stand; three visits in ten take none.
void put_ordinates(const Curve& curve, Random& random, Truth& truth) {
    if (random.chance(0.3)) {
        return;
    }
    const std::size_t count = 3 + 2 * random.below(3);
    for (std::size_t n = 1; n <= count; ++n) {
        const double even = 2.0 * curve.half * static_cast<double>(n) / static_cast<double>(count + 1);
        const double along = even + random.normal_within(10.0, 25.0);
        const std::string station = fmt::format("ordinate.{}", n);
        truth.values[station + ".along"] = along;
        truth.values[station + ".height"] = curve.height_at(along);
        truth.walk.insert(truth.walk.end(), {station + ".along", station + ".height"});
    }
}

/// Where a plumb line meets an edge.
Point plumb_onto(Point left, Point right, double x) {
    const double share = (x - left.x) / (right.x - left.x);
    return {x, left.y + share * (right.y - left.y)};
}

void put_depths(Random& random, Truth& truth) {
    truth.values["opening.depth"] = random.between(80.0, 300.0);
    truth.values["sill.projection"] = random.between(15.0, 60.0);
}

void put_common(const Heights& heights, Truth& truth) {
    truth.values["opening.height.left"] = heights.head[0] - heights.sill[0];
    truth.values["opening.height.centre"] = heights.head[1] - heights.sill[1];
    truth.values["opening.height.right"] = heights.head[2] - heights.sill[2];
}

}  // namespace

Truth arched_window(Built built, Random& random, Keeping keeping) {
    Truth truth;
    truth.built = built;
    const double off = crookedness(random);
    const double half = random.between(350.0, 1000.0);
    const Curve curve = curve_of(built, half, random);
    put_radii(built, curve, truth);

    // The springing line slopes; the curve stands square on it. The sill runs straight from one jamb to the other.
    const double sill = random.between(300.0, 1000.0);
    const double jamb = random.between(500.0, 1400.0);
    const double slope = random.normal_within(off, most_off) / (2.0 * half);
    const double cosine = 1.0 / std::hypot(1.0, slope);
    Heights heights;
    const double sill_left = sill + random.normal_within(off, most_off);
    const double sill_right = sill + random.normal_within(off, most_off);
    heights.sill = {sill_left, (sill_left + sill_right) / 2.0, sill_right};
    heights.head = {sill + jamb, sill + jamb + (half * slope + curve.rise) * cosine,
                    sill + jamb + 2.0 * half * slope * cosine};
    if (keeping == Keeping::crooked) {
        heights.sill[1] += bow(off, random);
    }
    put_storey(2.0 * half, off, random.between(80.0, 500.0), random, heights);
    put_common(heights, truth);
    truth.values["opening.width.top"] = 2.0 * half;
    truth.values["opening.width.bottom"] = 2.0 * half + random.normal_within(off, most_off);
    truth.values["opening.width.middle"] =
        (truth.at("opening.width.top") + truth.at("opening.width.bottom")) / 2.0 + bow(off, random);
    truth.values["arch.rise"] = curve.rise;
    put_depths(random, truth);
    truth.walk = {"opening.width.top",     "opening.width.bottom", "opening.height.left",
                  "opening.height.centre", "opening.height.right", "arch.rise"};
    put_ordinates(curve, random, truth);
    put_wall(0.0, 2.0 * half, random, truth);
    put_heights(heights, true, truth);
    walk_heights(true, Lines::all, random, truth);
    return truth;
}

Truth gabled_window(Random& random, Keeping keeping) {
    Truth truth;
    truth.built = Built::gable;
    const double off = crookedness(random);
    const double width = random.between(900.0, 2600.0);
    const double sill = random.between(200.0, 800.0);
    const double foot = random.between(300.0, 1200.0);
    // As often as not the apex stands in the middle, as the builder meant it.
    const double apex_at = random.chance(0.5) ? 0.5 : random.between(0.3, 0.7);
    const double apex_up = random.between(0.4, 1.2) * width / 2.0;

    Point bottom_left{0.0, sill}, bottom_right{width, sill};
    Point top_left = near(0.0, sill + foot, off, random), top_right = near(width, sill + foot, off, random);
    const Point apex = near(apex_at * width, sill + foot + apex_up, off, random);
    if (keeping == Keeping::true_to_form) {
        top_left.x = bottom_left.x;
        top_right.x = bottom_right.x;
    } else {
        bottom_left = near(bottom_left.x, sill, off, random);
        bottom_right = near(bottom_right.x, sill, off, random);
    }
    const Point below_apex = plumb_onto(bottom_left, bottom_right, apex.x);
    Heights heights;
    heights.sill = {bottom_left.y, below_apex.y, bottom_right.y};
    heights.head = {top_left.y, apex.y, top_right.y};
    put_storey(width, off, random.between(80.0, 500.0), random, heights);
    put_common(heights, truth);
    truth.values["opening.width.bottom"] = distance(bottom_left, bottom_right);
    truth.values["opening.width.middle"] =
        distance(middle(bottom_left, top_left), middle(bottom_right, top_right)) + bow(off, random);
    truth.values["gable.apex.along"] = distance(bottom_left, below_apex);
    truth.values["gable.slope.left"] = distance(top_left, apex);
    truth.values["gable.slope.right"] = distance(top_right, apex);
    put_depths(random, truth);
    truth.walk = {"opening.width.bottom", "opening.height.left", "opening.height.centre", "opening.height.right",
                  "gable.apex.along",     "gable.slope.left",    "gable.slope.right"};
    put_wall(bottom_left.x, bottom_right.x, random, truth);
    put_heights(heights, true, truth);
    walk_heights(true, Lines::all, random, truth);
    return truth;
}

}  // namespace truehang::trial
