// SPDX-License-Identifier: Apache-2.0
#include "light/sun.h"

#include "light/degrees.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace truehang {
namespace {

using namespace std::chrono_literals;

constexpr double pi = std::numbers::pi;
constexpr Moment year_2000 = Moment(std::chrono::sys_days(std::chrono::year(2000) / 1 / 1)) + 12h;
constexpr double parallax = 6371.01 / 149'597'890.0;  ///< the Earth’s mean radius over its distance, as PSA has both
constexpr Angle horizon = Angle::degrees(-0.833);

double days_since_2000(Moment moment) {
    return std::chrono::duration<double, std::ratio<86'400>>(moment - year_2000).count();
}

/// Of the sun, radians.
struct Equatorial {
    double right_ascension = 0.0, declination = 0.0;
};

Equatorial equatorial(double days) {
    const double node = 2.267127827 - 9.300339267e-4 * days;
    const double mean_longitude = 4.895036035 + 1.720279602e-2 * days;
    const double anomaly = 6.239468336 + 1.720200135e-2 * days;
    const double longitude = mean_longitude + 3.338320972e-2 * std::sin(anomaly) +
                             3.497596876e-4 * std::sin(2.0 * anomaly) - 1.544353226e-4 -
                             8.689729360e-6 * std::sin(node);
    const double obliquity = 4.090904909e-1 - 6.213605399e-9 * days + 4.418094944e-5 * std::cos(node);
    return {std::atan2(std::cos(obliquity) * std::sin(longitude), std::cos(longitude)),
            std::asin(std::sin(obliquity) * std::sin(longitude))};
}

/// Radians; greater than a turn where it comes so.
double hour_angle(const Place& place, Moment moment, const Equatorial& sun) {
    const auto day = std::chrono::floor<std::chrono::days>(moment);
    const double hours = std::chrono::duration<double, std::ratio<3600>>(moment - day).count();
    const double greenwich = 6.697096103 + 6.570984737e-2 * days_since_2000(moment) + hours;
    return (greenwich * 15.0 + place.longitude.degrees()) * per_degree - sun.right_ascension;
}

/// A latitude's sine and cosine, and with them hour angle and declination to a direction, parallax counted.
struct Sky {
    explicit Sky(const Place& place)
        : sine(std::sin(place.latitude.degrees() * per_degree)),
          cosine(std::cos(place.latitude.degrees() * per_degree)) {}

    [[nodiscard]] Direction direction(double sin_hour, double cos_hour, double sin_dec, double cos_dec) const {
        return {-cos_dec * sin_hour, cosine * sin_dec - sine * cos_dec * cos_hour,
                sine * sin_dec + cosine * cos_dec * cos_hour - parallax};
    }

    double sine, cosine;
};

Direction direction_at(const Place& place, Moment moment) {
    const auto sun = equatorial(days_since_2000(moment));
    const double hour = hour_angle(place, moment, sun);
    return Sky(place).direction(std::sin(hour), std::cos(hour), std::sin(sun.declination), std::cos(sun.declination));
}

double altitude_at(const Place& place, Moment moment) {
    return position_of(direction_at(place, moment)).altitude.degrees();
}

/// The moment between two, less than a second wide, from which on the sun is on the other side of the horizon.
Moment crossing(const Place& place, Moment before, Moment after) {
    const bool up = altitude_at(place, before) > horizon.degrees();
    while (after - before > 500ms) {
        const Moment middle = before + (after - before) / 2;
        ((altitude_at(place, middle) > horizon.degrees()) == up ? before : after) = middle;
    }
    return after;
}

/// The highest (`sign` 1) or lowest (-1) between two moments with one such between them: by thirds.
Moment extreme(const Place& place, Moment from, Moment to, double sign) {
    while (to - from > 500ms) {
        const Moment one = from + (to - from) / 3;
        const Moment other = to - (to - from) / 3;
        if (sign * altitude_at(place, one) < sign * altitude_at(place, other)) {
            from = one;
        } else {
            to = other;
        }
    }
    return from + (to - from) / 2;
}

}  // namespace

SunPosition sun_at(const Place& place, Moment moment) { return position_of(direction_at(place, moment)); }

Direction direction_of(const SunPosition& position) {
    const double azimuth = position.azimuth.degrees() * per_degree;
    const double altitude = position.altitude.degrees() * per_degree;
    return {std::cos(altitude) * std::sin(azimuth), std::cos(altitude) * std::cos(azimuth), std::sin(altitude)};
}

SunPosition position_of(const Direction& direction) {
    const double azimuth = std::atan2(direction.east, direction.north) / per_degree;
    const double turned = azimuth < 0.0 ? azimuth + 360.0 : azimuth;
    return {Angle::degrees(turned < 360.0 ? turned : 0.0),
            Angle::degrees(std::atan2(direction.up, std::hypot(direction.east, direction.north)) / per_degree)};
}

std::vector<Direction> sun_every(const Place& place, Moment from, std::chrono::minutes step, std::size_t count) {
    const Sky sky(place);
    const auto steps = static_cast<std::size_t>(std::max<std::chrono::minutes::rep>(1, 12h / step));
    std::vector<Direction> path;
    path.reserve(count);
    Equatorial sun = equatorial(days_since_2000(from));
    while (path.size() < count) {  // half a day at a time, in which declination goes straight and the hour evenly
        const Moment start = from + step * static_cast<long long>(path.size());
        const Moment end = start + step * static_cast<long long>(steps);
        const Equatorial next = equatorial(days_since_2000(end));
        const double first_hour = hour_angle(place, start, sun);
        const double turn = std::remainder(hour_angle(place, end, next) - first_hour, 2.0 * pi);
        const double turns = std::chrono::duration<double, std::ratio<86'400>>(end - start).count();
        const double whole = turn + 2.0 * pi * std::round((2.0 * pi * turns - turn) / (2.0 * pi));
        const double each = whole / static_cast<double>(steps);
        const double sin_each = std::sin(each);
        const double cos_each = std::cos(each);
        double sin_hour = std::sin(first_hour);
        double cos_hour = std::cos(first_hour);
        const double sin_dec = std::sin(sun.declination);
        const double cos_dec = std::cos(sun.declination);
        const double sin_rate = (std::sin(next.declination) - sin_dec) / static_cast<double>(steps);
        const double cos_rate = (std::cos(next.declination) - cos_dec) / static_cast<double>(steps);
        for (std::size_t i = 0; i < steps && path.size() < count; ++i) {
            const auto done = static_cast<double>(i);
            path.push_back(sky.direction(sin_hour, cos_hour, sin_dec + done * sin_rate, cos_dec + done * cos_rate));
            const double turned = sin_hour * cos_each + cos_hour * sin_each;
            cos_hour = cos_hour * cos_each - sin_hour * sin_each;
            sin_hour = turned;
        }
        sun = next;
    }
    return path;
}

Angle refraction(Angle altitude) {
    const double h = altitude.degrees();
    return Angle::degrees(h < -0.9 ? 0.0 : std::max(0.0, 1.02 / std::tan((h + 10.3 / (h + 5.11)) * per_degree) / 60.0));
}

SunDay sun_day(const Place& place, Moment start) {
    constexpr auto step = 10min;
    SunDay day;
    std::vector<Moment> moments;
    std::vector<double> altitudes;
    for (Moment at = start; at <= start + 24h; at += step) {
        moments.push_back(at);
        altitudes.push_back(altitude_at(place, at));
    }
    const auto is_up = [](double altitude) { return altitude > horizon.degrees(); };
    day.up_at_start = is_up(altitudes.front());
    const auto cross = [&](Moment before, Moment after) {
        const bool rises = is_up(altitude_at(place, after));
        if (is_up(altitude_at(place, before)) != rises) {
            day.crossings.push_back({crossing(place, before, after), rises});
        }
    };
    double highest = *std::ranges::max_element(altitudes);
    Moment known = moments.front();
    for (std::size_t i = 1; i + 1 < moments.size(); ++i) {  // a top or bottom may cross and come back within two steps
        const double sign = altitudes[i] >= std::max(altitudes[i - 1], altitudes[i + 1])   ? 1.0
                            : altitudes[i] <= std::min(altitudes[i - 1], altitudes[i + 1]) ? -1.0
                                                                                           : 0.0;
        const Moment at = sign != 0.0 ? extreme(place, moments[i - 1], moments[i + 1], sign) : moments[i];
        if (sign > 0.0) {
            highest = std::max(highest, altitude_at(place, at));
        }
        if (at > known) {
            cross(known, at);
            known = at;
        }
    }
    cross(known, moments.back());
    day.highest = Angle::degrees(highest);
    return day;
}

}  // namespace truehang
