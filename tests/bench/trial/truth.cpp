// SPDX-License-Identifier: Apache-2.0
#include "truth.h"

#include "survey/stations.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang::trial {

namespace {

struct Point {
    double x = 0.0, y = 0.0;
};

double distance(Point a, Point b) { return std::hypot(b.x - a.x, b.y - a.y); }

Point middle(Point a, Point b) { return {(a.x + b.x) / 2.0, (a.y + b.y) / 2.0}; }

constexpr double most_off = 30.0;
constexpr std::array<const char*, 3> lines{"left", "centre", "right"};

/// How far out of true a house is: a new one, an old one, a crooked one.
double crookedness(Random& random) {
    const std::vector<double> deviations{3.0, 6.0, 12.0};
    return deviations[random.by_share({0.3, 0.5, 0.2})];
}

/// The heights on three plumb lines, as y over a true level.
struct Heights {
    std::array<double, 3> floor, sill, head, ceiling;
    double pole = 0.0, level = 0.0;
};

/// A floor or a ceiling: a slope along the wall and a dip of its own under each line.
std::array<double, 3> sloping(double height, double width, double off, Random& random) {
    const double slope = random.normal_within(off / 1500.0, 0.02);
    std::array<double, 3> at{};
    for (std::size_t i = 0; i < at.size(); ++i) {
        at[i] = height + slope * width * (static_cast<double>(i) / 2.0 - 0.5) + random.normal_within(off / 3.0, 15.0);
    }
    return at;
}

void put_heights(const Heights& heights, bool has_sill, Truth& truth) {
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const std::string line = std::string(".") + lines[i];
        const double floor = heights.floor[i];
        if (has_sill) {
            truth.values["below" + line] = heights.sill[i] - floor;
            truth.values["sill" + line] = heights.sill[i] - floor;
        }
        truth.values["head" + line] = heights.head[i] - floor;
        truth.values["above" + line] = heights.ceiling[i] - heights.head[i];
        truth.values["ceiling" + line] = heights.ceiling[i] - floor;
        truth.values["level" + line] = heights.level - floor;
        truth.values["pole" + line] = heights.pole - floor;
        truth.values["pole.above" + line] = heights.pole - heights.head[i];
        truth.values["pole.ceiling" + line] = heights.ceiling[i] - heights.pole;
        truth.values["pole.floor" + line] = heights.pole - floor;
    }
    for (const auto* reading : {"pole.above", "pole.ceiling", "pole.floor"}) {
        truth.values[reading] = truth.at(std::string(reading) + ".left");  // unsuffixed: the first line with readings
    }
}

void walk_heights(bool has_sill, Random& random, Truth& truth) {
    for (const auto* line : lines) {
        const std::string at = std::string(".") + line;
        truth.walk.push_back("above" + at);
        if (has_sill) {
            truth.walk.push_back("below" + at);
        }
        truth.walk.push_back("ceiling" + at);
    }
    if (random.chance(0.4)) {
        for (const auto* line : lines) {
            truth.walk.push_back(std::string("level.") + line);
        }
    }
    truth.walk.emplace_back("pole.above");
    if (random.chance(0.3)) {
        truth.walk.emplace_back(random.chance(0.5) ? "pole.floor" : "pole.ceiling");
    }
}

void put_wall(double left, double right, Random& random, Truth& truth) {
    const double stop_left = left - random.between(150.0, 1500.0);
    const double stop_right = right + random.between(150.0, 1500.0);
    truth.values["wall.left"] = left - stop_left;
    truth.values["wall.right"] = stop_right - right;
    truth.values["wall.total"] = stop_right - stop_left;
    truth.walk.insert(truth.walk.end(), {"wall.left", "wall.right", "wall.total"});
}

/// The four corners of an opening, bottom left and right, top left and right.
struct Corners {
    Point bottom_left, bottom_right, top_left, top_right;
};

Corners crooked_corners(double width, double height, double sill, double off, Random& random) {
    const auto near = [&](double x, double y) {
        return Point{x + random.normal_within(off, most_off), y + random.normal_within(off, most_off)};
    };
    const Point bottom_left = near(0.0, sill), bottom_right = near(width, sill);
    const Point top_left = near(0.0, sill + height), top_right = near(width, sill + height);
    return {bottom_left, bottom_right, top_left, top_right};
}

/// The four sides, the diagonals, and the middles between edges that bow.
void put_opening(const Corners& c, double off, Random& random, Truth& truth) {
    const auto bow = [&] { return random.normal_within(off / 4.0, 8.0); };
    auto& values = truth.values;
    values["opening.width.bottom"] = distance(c.bottom_left, c.bottom_right);
    values["opening.width.top"] = distance(c.top_left, c.top_right);
    values["opening.height.left"] = distance(c.bottom_left, c.top_left);
    values["opening.height.right"] = distance(c.bottom_right, c.top_right);
    values["opening.diagonal.rising"] = distance(c.bottom_left, c.top_right);
    values["opening.diagonal.falling"] = distance(c.top_left, c.bottom_right);
    values["opening.width.middle"] =
        distance(middle(c.bottom_left, c.top_left), middle(c.bottom_right, c.top_right)) + bow() + bow();
}

Truth rectangular(Shape shape, Random& random) {
    Truth truth;
    truth.shape = shape;
    const bool is_door = shape == Shape::door;
    const double off = crookedness(random);
    const double width = random.between(600.0, 2400.0);
    const double height = is_door ? random.between(1900.0, 2250.0) : random.between(800.0, 1700.0);
    const double sill = is_door ? 0.0 : random.between(300.0, 1000.0);
    const double ceiling = sill + height + random.between(80.0, 500.0);

    Heights heights;
    const Corners c = crooked_corners(width, height, sill, off, random);
    const auto bow = [&] { return random.normal_within(off / 4.0, 8.0); };
    heights.sill = {c.bottom_left.y, middle(c.bottom_left, c.bottom_right).y + bow(), c.bottom_right.y};
    heights.head = {c.top_left.y, middle(c.top_left, c.top_right).y + bow(), c.top_right.y};
    heights.floor = is_door ? heights.sill : sloping(0.0, width, off, random);
    heights.ceiling = sloping(ceiling, width, off, random);
    const double highest_head = std::max({heights.head[0], heights.head[1], heights.head[2]});
    heights.pole = highest_head + random.between(30.0, 70.0);
    heights.level = random.between(950.0, 1150.0);

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
    if (shape == Shape::recess) {
        truth.walk.emplace_back("opening.depth");
    }
    put_wall(c.top_left.x, c.top_right.x, random, truth);
    put_heights(heights, !is_door, truth);
    walk_heights(!is_door, random, truth);
    return truth;
}

}  // namespace

bool is_angle(std::string_view station) { return station.ends_with(".angle_deg"); }

Truth crooked_window(Shape shape, Random& random) { return rectangular(shape, random); }

std::vector<Shape> shapes_in_trial() { return {Shape::recess, Shape::frame, Shape::door}; }

}  // namespace truehang::trial
