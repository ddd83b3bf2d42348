// SPDX-License-Identifier: Apache-2.0
#include "adjust/traverse_plan.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace truehang {

namespace {

constexpr double degrees = 180.0 / std::numbers::pi;
constexpr double least_length = 1e-6;

using Corner = std::array<double, 2>;
using PlanCorners = std::vector<Corner>;

double full_turn(double angle) {
    const double turned = std::fmod(angle, 360.0);
    return turned < 0.0 ? turned + 360.0 : turned;
}

std::string station_of(std::string_view before, int number, std::string_view after) {
    return std::string(before) + std::to_string(number) + std::string(after);
}

/// What was read of a traverse, by facet and corner.
struct Read {
    std::vector<double> widths;
    std::vector<std::optional<double>> turns;  ///< by corner: 180 less the inside angle
    std::vector<std::optional<double>> depths;
    std::optional<double> chord, mouth_turn;  ///< the mouth's two angles together: what all corners turn
};

std::optional<double> at(const FigureValues& values, std::string_view station) {
    const double* value = value_of(values, station);
    return value != nullptr ? std::optional(*value) : std::nullopt;
}

/// A width that wasn't read is taken to be as long as the others are on average.
void guess_widths(std::vector<std::optional<double>>& widths, Read& read) {
    double sum = 0.0;
    int count = 0;
    for (const auto& width : widths) {
        sum += width.value_or(0.0);
        count += width ? 1 : 0;
    }
    const double whole = read.chord.value_or(600.0 * static_cast<double>(widths.size()));
    const double usual = count > 0 ? sum / count : whole / static_cast<double>(widths.size());
    for (const auto& width : widths) {
        read.widths.push_back(width.value_or(usual));
    }
}

Read read_of(const FigureValues& values, int facets) {
    Read read;
    std::vector<std::optional<double>> widths;
    for (int n = 1; n <= facets; ++n) {
        widths.push_back(at(values, station_of("facet.", n, ".width")));
    }
    for (int n = 1; n < facets; ++n) {
        const auto angle = at(values, station_of("corner.", n, ".angle_deg"));
        read.turns.push_back(angle ? std::optional(180.0 - *angle) : std::nullopt);
        read.depths.push_back(at(values, station_of("corner.", n, ".depth")));
    }
    read.chord = at(values, "bay.chord");
    if (!read.chord) {
        read.chord = at(values, "corner.chord");
    }
    const auto left = at(values, "mouth.left.angle_deg");
    const auto right = at(values, "mouth.right.angle_deg");
    if (left && right) {
        read.mouth_turn = std::remainder(*left, 360.0) + std::remainder(*right, 360.0);
    }
    guess_widths(widths, read);
    return read;
}

/// Round the facets, corners that weren't read turning by `otherwise`.
PlanCorners walked(const Read& read, double otherwise, bool all_alike) {
    PlanCorners corners{{0.0, 0.0}};
    double heading = 0.0;
    for (std::size_t k = 0; k < read.widths.size(); ++k) {
        corners.push_back({corners.back()[0] + read.widths[k] * std::cos(heading / degrees),
                           corners.back()[1] + read.widths[k] * std::sin(heading / degrees)});
        if (k < read.turns.size()) {
            heading -= all_alike ? otherwise : read.turns[k].value_or(otherwise);
        }
    }
    return corners;
}

double mouth_of(const PlanCorners& corners) {
    return std::hypot(corners.back()[0] - corners.front()[0], corners.back()[1] - corners.front()[1]);
}

/// The turn of the corners that weren't read (of all, if alike) with which the mouth is as wide as it was read; the
/// nearest to it where none is.
double turn_for_chord(const Read& read, bool all_alike) {
    constexpr double step = 5.0;
    constexpr double usual = 45.0;
    if (!read.chord) {
        return usual;
    }
    const auto off = [&](double turn) { return mouth_of(walked(read, turn, all_alike)) - *read.chord; };
    double best = 0.0;
    for (double turn = 0.0; turn < 175.0; turn += step) {
        double low = turn;
        double high = turn + step;
        if (off(low) * off(high) <= 0.0) {
            for (int i = 0; i < 30; ++i) {
                const double middle = (low + high) / 2.0;
                (off(low) * off(middle) <= 0.0 ? high : low) = middle;
            }
            return (low + high) / 2.0;
        }
        best = std::abs(off(turn)) < std::abs(off(best)) ? turn : best;
    }
    return best;
}

double turn_of_the_unread(const Read& read) {
    double rest = read.mouth_turn.value_or(0.0);
    int unread = 0;
    for (const auto& turn : read.turns) {
        rest -= turn.value_or(0.0);
        unread += turn ? 0 : 1;
    }
    if (unread == 0) {
        return 0.0;
    }
    return read.mouth_turn ? rest / unread : turn_for_chord(read, false);
}

/// Each facet runs as far along the mouth as its width and the depths at its ends leave.
std::optional<PlanCorners> by_depths(const Read& read) {
    PlanCorners corners{{0.0, 0.0}};
    for (std::size_t k = 0; k < read.widths.size(); ++k) {
        const bool last = k == read.depths.size();
        if (!last && !read.depths[k]) {
            return std::nullopt;
        }
        const double depth = last ? 0.0 : *read.depths[k];
        const double out = depth - corners.back()[1];
        const double along = std::sqrt(std::max(read.widths[k] * read.widths[k] - out * out, 1.0));
        corners.push_back({corners.back()[0] + along, depth});
    }
    return corners;
}

}  // namespace

std::array<double, 2> TraversePlan::corner(const std::vector<double>& point, int corner) const {
    if (corner == 0) {
        return {0.0, 0.0};
    }
    if (corner == facets) {
        return {point[0], 0.0};
    }
    const auto k = 2 * static_cast<std::size_t>(corner) - 1;
    return {point[k], point[k + 1]};
}

void TraversePlan::add(Told& told, int from, int to, double by_dx, double by_dy) const {
    const auto one = [&](int which, double sign) {
        if (which == facets) {
            told.by[0] += sign * by_dx;
        } else if (which > 0) {
            const auto k = 2 * static_cast<std::size_t>(which) - 1;
            told.by[k] += sign * by_dx;
            told.by[k + 1] += sign * by_dy;
        }
    };
    one(to, 1.0);
    one(from, -1.0);
}

/// Degrees, counter-clockwise from the x axis.
void TraversePlan::add_heading(Told& told, const std::vector<double>& point, int from, int to, double share) const {
    const Corner a = corner(point, from);
    const Corner b = corner(point, to);
    const double dx = b[0] - a[0];
    const double dy = b[1] - a[1];
    const double square = std::max(dx * dx + dy * dy, least_length * least_length);
    told.value += share * std::atan2(dy, dx) * degrees;
    add(told, from, to, -share * degrees * dy / square, share * degrees * dx / square);
}

Told TraversePlan::width(const std::vector<double>& point, int facet) const {
    const Corner a = corner(point, facet - 1);
    const Corner b = corner(point, facet);
    const double dx = b[0] - a[0];
    const double dy = b[1] - a[1];
    Told told{std::hypot(dx, dy), {}};
    const double length = std::max(told.value, least_length);
    add(told, facet - 1, facet, dx / length, dy / length);
    return told;
}

Told TraversePlan::corner_angle(const std::vector<double>& point, int corner) const {
    Told told{180.0, {}};
    add_heading(told, point, corner - 1, corner, -1.0);
    add_heading(told, point, corner, corner + 1, 1.0);
    told.value = full_turn(told.value);
    return told;
}

Told TraversePlan::mouth_left(const std::vector<double>& point) const {
    Told told{point[0] < 0.0 ? 180.0 : 0.0, {}};
    add_heading(told, point, 0, 1, 1.0);
    told.value = full_turn(told.value);
    return told;
}

Told TraversePlan::mouth_right(const std::vector<double>& point) const {
    Told told{point[0] < 0.0 ? 180.0 : 0.0, {}};
    add_heading(told, point, facets - 1, facets, -1.0);
    told.value = full_turn(told.value);
    return told;
}

Told TraversePlan::chord(const std::vector<double>& point) const {
    Told told{std::abs(point[0]), {}};
    told.by[0] = point[0] < 0.0 ? -1.0 : 1.0;
    return told;
}

Told TraversePlan::depth(const std::vector<double>& point, int corner) const {
    const auto k = 2 * static_cast<std::size_t>(corner);
    Told told{std::abs(point[k]), {}};
    told.by[k] = point[k] < 0.0 ? -1.0 : 1.0;
    return told;
}

std::vector<double> TraversePlan::unknowns_of(const std::vector<std::array<double, 2>>& corners) const {
    const Corner end = corners.back();
    const double chord = mouth_of(corners);
    std::vector<double> point{chord};
    // Turned so that the mouth lies on the x axis.
    const double cosine = chord > 0.0 ? end[0] / chord : 1.0;
    const double sine = chord > 0.0 ? end[1] / chord : 0.0;
    for (std::size_t k = 1; k + 1 < corners.size(); ++k) {
        point.push_back(corners[k][0] * cosine + corners[k][1] * sine);
        point.push_back(corners[k][1] * cosine - corners[k][0] * sine);
    }
    return point;
}

std::optional<std::vector<double>> TraversePlan::start(const FigureValues& values, std::size_t number) const {
    const Read read = read_of(values, facets);
    const auto corners = number == 1 ? by_depths(read) : std::nullopt;
    if (number == 0) {
        return unknowns_of(walked(read, turn_of_the_unread(read), false));
    }
    if (number == 1 && corners) {
        return unknowns_of(*corners);
    }
    const std::size_t last = by_depths(read) ? 2 : 1;
    return number == last ? std::optional(unknowns_of(walked(read, turn_for_chord(read, true), true))) : std::nullopt;
}

}  // namespace truehang
