// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/length.h"

// What a sky without clouds gives, W/m²: for orders of magnitude only.

namespace truehang {

/// The optical depths of the ASHRAE τ model for a month at a place (ASHRAE Handbook, Fundamentals, 2009, chapter 14).
struct SkyDepths {
    double beam = 0.0, diffuse = 0.0;
};
struct ClearSky {
    double beam = 0.0;     ///< on a plane that faces the sun
    double diffuse = 0.0;  ///< on a level plane
};
/// Of a day of the year (1: 1 January); 0 where the sun is down.
[[nodiscard]] ClearSky clear_sky(const SkyDepths& depths, int day_of_year, Angle altitude);

/// On a level plane, beam and diffuse together: Haurwitz (Journal of Meteorology 2 (1945) 154), in W/m²
/// 1098 cos z exp(-0.059 / cos z) (Reno, Hansen and Stein, SAND2012-2389).
[[nodiscard]] double level_clear_sky(Angle altitude);

/// How much more air the sun’s light goes through than from straight above: Kasten and Young (Applied Optics 28 (1989)
/// 4735).
[[nodiscard]] double air_mass(Angle altitude);

}  // namespace truehang
