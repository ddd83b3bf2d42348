// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "light/bearing.h"
#include "light/sun.h"

#include <array>

// The Earth’s magnetic field by the World Magnetic Model 2025 (Chulliat and others, "The US/UK World Magnetic Model for
// 2025–2030", NOAA, 2024), and with it what a compass says of true north.

namespace truehang {

struct MagneticField {
    double north = 0.0, east = 0.0, down = 0.0;  ///< nT
    Angle declination;                           ///< east of true north positive
    Angle inclination;                           ///< below the level positive
    double level = 0.0, total = 0.0;             ///< nT
    Angle declination_uncertainty;               ///< standard
};

/// `years`: as a decimal, 2026.5; the model holds from 2025.0 to before 2030.0 and is carried on beyond, which
/// `wmm::holds` tells. `height_km` above the ellipsoid. At a pole the declination is from the longitude’s meridian.
[[nodiscard]] MagneticField magnetic_field(const Place& place, double height_km, double years);
[[nodiscard]] double decimal_year(Moment moment);

namespace wmm {

struct Term {
    int degree, order;
    double g, h, g_a_year, h_a_year;
};
extern const std::array<Term, 90> terms;

[[nodiscard]] bool holds(double years);

}  // namespace wmm

/// What a compass said while it looked straight out of a window.
struct CompassReading {
    Angle magnetic;               ///< clockwise from magnetic north
    Angle uncertainty;            ///< standard, as the device tells it
    std::optional<double> field;  ///< nT, the strength that it felt; none: not told
};

struct CompassBearing {
    Bearing bearing;        ///< of true north
    bool iron = false;      ///< the strength is off what the model says by more than a tenth: iron or a magnet near
    bool dated = false;     ///< the model doesn’t hold at that time
    bool no_north = false;  ///< too near a magnetic pole: the level field is below 6000 nT, where WMM warns
};
[[nodiscard]] CompassBearing bearing_from_compass(const Place& place, const CompassReading& reading, Moment at);

}  // namespace truehang
