// SPDX-License-Identifier: Apache-2.0
#include "truth_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace truehang::trial {

namespace {

constexpr double degrees = 180.0 / std::numbers::pi;

using Plan = std::vector<Point>;  ///< of the glass wall line: outer edges and corners, left to right; the room below

double length(Point a) { return std::hypot(a.x, a.y); }
Point way(Point from, Point to) { return {to.x - from.x, to.y - from.y}; }

/// The angle at `b` between the ways to `a` and to `c`, below 180 degrees: by the cosine rule.
double angle_at(Point b, Point a, Point c) {
    const Point u = way(b, a), v = way(b, c);
    return std::acos((u.x * v.x + u.y * v.y) / (length(u) * length(v))) * degrees;
}

/// How far a point lies from the line through two others: twice the triangle over its base.
double off_line(Point point, Point a, Point b) {
    const Point base = way(a, b), to = way(a, point);
    return std::abs(base.x * to.y - base.y * to.x) / length(base);
}

/// Where the lines through `a` along `u` and through `b` along `v` meet (Cramer's rule).
Point meeting(Point a, Point u, Point b, Point v) {
    const double determinant = v.x * u.y - u.x * v.y;
    const Point to = way(a, b);
    const double t = (v.x * to.y - v.y * to.x) / determinant;
    return {a.x + t * u.x, a.y + t * u.y};
}

/// The way of a track: every facet's line moved into the room, cut off square to the outer edges.
double track_length(const Plan& plan, double off) {
    struct Line {
        Point at, along;
    };
    std::vector<Line> moved;
    for (std::size_t i = 0; i + 1 < plan.size(); ++i) {
        const Point along = way(plan[i], plan[i + 1]);
        const double share = off / length(along);
        moved.push_back({{plan[i].x + share * along.y, plan[i].y - share * along.x}, along});
    }
    Plan track{moved.front().at};
    for (std::size_t i = 0; i + 1 < moved.size(); ++i) {
        track.push_back(meeting(moved[i].at, moved[i].along, moved[i + 1].at, moved[i + 1].along));
    }
    const Line& last = moved.back();
    track.push_back({last.at.x + last.along.x, last.at.y + last.along.y});
    double sum = 0.0;
    for (std::size_t i = 0; i + 1 < track.size(); ++i) {
        sum += distance(track[i], track[i + 1]);
    }
    return sum;
}

/// Widths and turns as a builder sets them out, alike on both sides, and the corners where they came to lie.
Plan crooked_plan(const std::vector<double>& widths, const std::vector<double>& turns, double off, Random& random) {
    double heading = 0.0;
    for (const double turn : turns) {
        heading += turn / 2.0;
    }
    Plan plan{{0.0, 0.0}};
    for (std::size_t i = 0; i < widths.size(); ++i) {
        plan.push_back({plan.back().x + widths[i] * std::cos(heading / degrees),
                        plan.back().y + widths[i] * std::sin(heading / degrees)});
        heading -= i < turns.size() ? turns[i] : 0.0;
    }
    for (Point& point : plan) {
        point = near(point.x, point.y, off, random);
    }
    return plan;
}

Plan plan_of(Built built, double off, Random& random) {
    if (built == Built::corner) {
        const double left = random.between(500.0, 1500.0);
        // A room's corner four times in five.
        const double turn = random.chance(0.8) ? 90.0 : random.between(30.0, 80.0);
        return crooked_plan({left, random.between(500.0, 1500.0)}, {turn}, off, random);
    }
    const double side = random.between(400.0, 900.0);
    const double front = random.between(700.0, 1800.0);
    if (built == Built::bay_of_3) {
        const double turn = random.chance(0.2) ? 90.0 : random.between(30.0, 60.0);
        return crooked_plan({side, front, side}, {turn, turn}, off, random);
    }
    const double next = random.between(400.0, 900.0);
    const double outer = random.between(18.0, 45.0);
    const double inner = random.between(18.0, 45.0);
    return crooked_plan({side, next, front, next, side}, {outer, inner, inner, outer}, off, random);
}

/// All that may be read of the plan, and what this surveyor reads.
void put_plan(const Plan& plan, Random& random, Truth& truth) {
    const bool is_bay = truth.built != Built::corner;
    const std::size_t facets = plan.size() - 1;
    const Point left = plan.front(), right = plan.back();
    std::vector<std::string> depths;
    for (std::size_t n = 1; n <= facets; ++n) {
        truth.values[fmt::format("facet.{}.width", n)] = distance(plan[n - 1], plan[n]);
        truth.walk.push_back(fmt::format("facet.{}.width", n));
    }
    for (std::size_t n = 1; n < facets; ++n) {
        truth.values[fmt::format("corner.{}.angle_deg", n)] = angle_at(plan[n], plan[n - 1], plan[n + 1]);
        truth.walk.push_back(fmt::format("corner.{}.angle_deg", n));
        depths.push_back(fmt::format("corner.{}.depth", n));
        truth.values[depths.back()] = off_line(plan[n], left, right);
    }
    const std::string chord = is_bay ? "bay.chord" : "corner.chord";
    truth.values[chord] = distance(left, right);
    truth.walk.push_back(chord);
    if (is_bay && random.chance(0.5)) {
        truth.walk.insert(truth.walk.end(), depths.begin(), depths.end());
    }
    if (is_bay) {
        truth.values["mouth.left.angle_deg"] = angle_at(left, right, plan[1]);
        truth.values["mouth.right.angle_deg"] = angle_at(right, left, plan[facets - 1]);
        if (random.chance(0.3)) {
            truth.walk.insert(truth.walk.end(), {"mouth.left.angle_deg", "mouth.right.angle_deg"});
        }
    }
    truth.track_off = std::floor(random.between(40.0, 120.0));
    truth.values[is_bay ? "bay.track" : "corner.track"] = track_length(plan, truth.track_off);
}

}  // namespace

Truth bay_window(Built built, Random& random) {
    Truth truth;
    truth.built = built;
    const double off = crookedness(random);
    const Plan plan = plan_of(built, off, random);
    put_plan(plan, random, truth);

    Heights heights;
    const double sill = random.between(300.0, 1000.0);
    const double height = random.between(800.0, 1700.0);
    for (std::size_t i = 0; i < heights.sill.size(); ++i) {
        heights.sill[i] = sill + random.normal_within(off, most_off);
        heights.head[i] = sill + height + random.normal_within(off, most_off);
    }
    put_storey(truth.at(built == Built::corner ? "corner.chord" : "bay.chord"), off, random.between(80.0, 500.0),
               random, heights);
    // Plumb lines stand at the first, the middle and the last facet; the heights between are nobody's.
    const std::size_t facets = plan.size() - 1;
    for (std::size_t n = 1; n <= facets; ++n) {
        const bool on_line = n == 1 || n == facets || (facets % 2 == 1 && n == (facets + 1) / 2);
        const std::size_t line = n == 1 ? 0 : n == facets ? 2 : 1;
        const std::string station = fmt::format("facet.{}.height", n);
        truth.values[station] =
            on_line ? heights.head[line] - heights.sill[line] : height + random.normal_within(off, most_off);
        truth.walk.push_back(station);
    }
    truth.values["sill.projection"] = random.between(15.0, 60.0);
    const bool round_corner = built == Built::corner;
    put_wall(0.0, round_corner ? distance(plan[0], plan[1]) + distance(plan[1], plan[2]) : truth.at("bay.chord"),
             random, truth);
    put_heights(heights, true, truth);
    walk_heights(true, built == Built::corner ? Lines::outer : Lines::all, random, truth);
    return truth;
}

}  // namespace truehang::trial
