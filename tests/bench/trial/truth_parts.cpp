// SPDX-License-Identifier: Apache-2.0
#include "truth_parts.h"

#include <algorithm>
#include <cmath>

namespace truehang::trial {

namespace {

constexpr std::array<const char*, 3> lines{"left", "centre", "right"};

/// A floor or a ceiling: a slope along the wall and a dip of its own under each line.
std::array<double, 3> sloping(double height, double width, double off, Random& random) {
    const double slope = random.normal_within(off / 1500.0, 0.02);
    std::array<double, 3> at{};
    for (std::size_t i = 0; i < at.size(); ++i) {
        at[i] = height + slope * width * (static_cast<double>(i) / 2.0 - 0.5) + random.normal_within(off / 3.0, 15.0);
    }
    return at;
}

}  // namespace

double distance(Point a, Point b) { return std::hypot(b.x - a.x, b.y - a.y); }

Point middle(Point a, Point b) { return {(a.x + b.x) / 2.0, (a.y + b.y) / 2.0}; }

double crookedness(Random& random) {
    const std::vector<double> deviations{3.0, 6.0, 12.0};
    return deviations[random.by_share({0.3, 0.5, 0.2})];
}

Point near(double x, double y, double off, Random& random) {
    const double along = random.normal_within(off, most_off);
    return {x + along, y + random.normal_within(off, most_off)};
}

double bow(double off, Random& random) { return random.normal_within(off / 4.0, 8.0); }

void put_storey(double width, double off, double above_head, Random& random, Heights& heights) {
    const double highest_head = *std::ranges::max_element(heights.head);
    heights.floor = sloping(0.0, width, off, random);
    heights.ceiling = sloping(highest_head + above_head, width, off, random);
    heights.pole = highest_head + random.between(30.0, 70.0);
    heights.level = random.between(950.0, 1150.0);
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

void walk_heights(bool has_sill, Lines which, Random& random, Truth& truth) {
    std::vector<std::string> taken(lines.begin(), lines.end());
    if (which == Lines::outer) {
        taken = {"left", "right"};
    }
    for (const std::string& line : taken) {
        truth.walk.push_back("above." + line);
        if (has_sill) {
            truth.walk.push_back("below." + line);
        }
        truth.walk.push_back("ceiling." + line);
    }
    if (random.chance(0.4)) {
        for (const std::string& line : taken) {
            truth.walk.push_back("level." + line);
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

}  // namespace truehang::trial
