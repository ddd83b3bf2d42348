// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/length.h"
#include "units/moment.h"

#include <chrono>
#include <vector>

// Where the sun stands: the PSA algorithm in its version of 2020 (Blanco, Milidonis and Bonanos, "Updating the PSA sun
// position algorithm", Solar Energy 212 (2020) 339–341, doi 10.1016/j.solener.2020.10.084). Altitudes are geometric;
// refraction lifts what is seen and is asked for apart.

namespace truehang {

struct Place {
    Angle latitude;   ///< -90 to 90, north positive
    Angle longitude;  ///< -180 to 180, east positive
};

/// Seen from a place on the ground. At a pole north is the meridian of the longitude that was given.
struct SunPosition {
    Angle azimuth;   ///< 0 to below 360, clockwise from true north
    Angle altitude;  ///< of the sun’s centre above the level, without refraction
};

/// A direction of length 1 on the ground.
struct Direction {
    double east = 0.0, north = 0.0, up = 0.0;
};

/// Within 0.01° for the years 2000 to 2060; the constants were fitted to 2020 to 2050.
[[nodiscard]] SunPosition sun_at(const Place& place, Moment moment);

[[nodiscard]] Direction direction_of(const SunPosition& position);
[[nodiscard]] SunPosition position_of(const Direction& direction);

/// The sun at `from`, and every `step` after, `count` times; within 0.001° of `sun_at` as long as `step` divides twelve
/// hours. For sums over a year, where asking for each moment takes too long.
[[nodiscard]] std::vector<Direction> sun_every(const Place& place, Moment from, std::chrono::minutes step,
                                               std::size_t count);

/// How much the air lifts what stands at this geometric altitude: Sæmundsson (Sky and Telescope 72 (1986) 70), 1010
/// hPa, 10 °C. 0 below -0.9°, where nothing is seen.
[[nodiscard]] Angle refraction(Angle altitude);

/// How a day of 24 hours goes. Rise and set are of the sun’s upper edge on a level horizon, refraction counted: its
/// centre at -0.833° (the Astronomical Almanac’s convention: 34′ of refraction, 16′ of radius).
struct SunDay {
    struct Crossing {
        Moment at;
        bool rises = false;
    };
    std::vector<Crossing> crossings;  ///< in time’s order; none where it stays up or down
    bool up_at_start = false;
    Angle highest;  ///< geometric
};

/// The 24 hours from `start` on. Rise and set within a quarter of a minute of the convention.
[[nodiscard]] SunDay sun_day(const Place& place, Moment start);

}  // namespace truehang
