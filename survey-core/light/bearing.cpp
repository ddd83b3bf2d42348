// SPDX-License-Identifier: Apache-2.0
#include "light/bearing.h"

#include "light/degrees.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace truehang {
namespace {

constexpr double steepest = 80.0;    ///< degrees between a shadow and the window’s normal
constexpr double agreeing = 2.576;   ///< standard uncertainties: 99 % of a normal distribution
constexpr double sun_itself = 0.01;  ///< degrees: what the sun’s place is good for (light/sun.h)

double offset_of(const SillShadow& shadow) {
    double sum = 0.0;
    for (const Length& left : shadow.to_left) {
        sum += left.mm();
    }
    return sum / static_cast<double>(shadow.to_left.size());
}

/// How far the sun goes round while the clock is wrong by its uncertainty, degrees.
double drift(const Place& place, const SillShadow& shadow) {
    const auto azimuth = [&](std::chrono::seconds later) { return sun_at(place, shadow.at + later).azimuth; };
    return std::abs(turn(azimuth(-shadow.clock), azimuth(shadow.clock)).degrees()) / 2.0;
}

double weight(const Bearing& one) { return 1.0 / std::pow(std::max(one.uncertainty.degrees(), 1e-6), 2); }

Bearing mean(const std::vector<Bearing>& bearings, const std::vector<std::size_t>& of) {
    const auto best = *std::ranges::min_element(of, {}, [&](std::size_t index) { return bearings[index].uncertainty; });
    const Angle near = bearings[best].bearing;  // turns are taken from here, so that none goes the long way
    double sum = 0.0;
    double weights = 0.0;
    for (const std::size_t index : of) {
        sum += weight(bearings[index]) * turn(near, bearings[index].bearing).degrees();
        weights += weight(bearings[index]);
    }
    return {as_bearing(near.degrees() + sum / weights), Angle::degrees(1.0 / std::sqrt(weights)), bearings[best].from};
}

/// How many standard uncertainties of their difference one stands from the mean that it is part of.
double standing_off(const Bearing& one, const Bearing& mean) {
    const double variance = 1.0 / weight(one) - 1.0 / weight(mean);
    const double off = std::abs(turn(mean.bearing, one.bearing).degrees());
    return off < 1e-9 ? 0.0 : off / std::sqrt(std::max(variance, 1e-12));
}

}  // namespace

Angle turn(Angle from, Angle to) { return Angle::degrees(std::remainder(to.degrees() - from.degrees(), 360.0)); }

Angle as_bearing(double degrees) {
    const double turned = std::fmod(degrees, 360.0);
    const double positive = turned < 0.0 ? turned + 360.0 : turned;
    return Angle::degrees(positive < 360.0 ? positive : 0.0);
}

ShadowBearing bearing_from_shadow(const Place& place, const SillShadow& shadow) {
    using Trouble = ShadowBearing::Trouble;
    ShadowBearing found;
    if (shadow.to_left.empty() || shadow.depth.mm() <= 0.0) {
        found.trouble = Trouble::unreadable;
        return found;
    }
    found.sun = sun_at(place, shadow.at);
    if (found.sun.altitude.degrees() + refraction(found.sun.altitude).degrees() <= 0.0) {
        found.trouble = Trouble::sun_down;
        return found;
    }
    const double x = offset_of(shadow);
    const double d = shadow.depth.mm();
    const double slant = std::atan2(x, d) / per_degree;
    if (std::abs(slant) > steepest) {
        found.trouble = Trouble::sun_outside;
        return found;
    }
    const double u = shadow.reading.mm();
    const double of_offset = d * u / std::sqrt(static_cast<double>(shadow.to_left.size()));
    const double of_readings = std::hypot(of_offset, x * u) / (d * d + x * x) / per_degree;
    const double of_clock = drift(place, shadow);
    found.from_clock = Angle::degrees(of_clock);
    found.bearing = {as_bearing(found.sun.azimuth.degrees() - slant),
                     Angle::degrees(std::hypot(of_readings, of_clock, sun_itself)), BearingFrom::shadow};
    return found;
}

std::optional<Combined> combine(const std::vector<Bearing>& bearings) {
    if (bearings.empty()) {
        return std::nullopt;
    }
    Combined combined;
    std::vector<std::size_t> left(bearings.size());
    std::iota(left.begin(), left.end(), 0U);
    for (;;) {
        combined.bearing = mean(bearings, left);
        const auto off = [&](std::size_t index) { return standing_off(bearings[index], combined.bearing); };
        const auto worst = std::ranges::max_element(left, {}, off);
        if (left.size() < 2 || off(*worst) <= agreeing) {
            break;
        }
        if (left.size() == 2) {
            combined.apart.insert(combined.apart.end(), left.begin(), left.end());
            break;
        }
        combined.apart.push_back(*worst);
        left.erase(worst);
    }
    std::ranges::sort(combined.apart);
    for (const auto& one : bearings) {
        for (const auto& other : bearings) {
            const double between = std::abs(turn(one.bearing, other.bearing).degrees());
            combined.furthest = std::max(combined.furthest, Angle::degrees(between));
        }
    }
    return combined;
}

}  // namespace truehang
