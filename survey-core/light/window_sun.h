// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "light/sun.h"

#include <array>
#include <functional>
#include <vector>

// How long the sun can come in at a window: possible sun, of a sky without clouds, its centre as the air lifts it.

namespace truehang {

/// Something outside that stands before the sky, as seen from the middle of the window.
struct SkyBlock {
    Angle from,
        to;        ///< to the left (negative) and right of straight out, seen from inside; -90 to 90, `from` below `to`
    Angle height;  ///< of its top above the level, 0 to 90
};

struct GlassOpening {
    Angle bearing;  ///< of the outward normal, clockwise from true north
    Length width, height;
    Length outer_depth;  ///< how far the glass stands back from the wall’s outer face
    Length inner_depth;  ///< from the glass to where the cloth hangs
    std::vector<SkyBlock> skyline;
};

/// The sun as a window has it.
struct Incidence {
    Angle turned;  ///< γ: the sun’s azimuth from straight out, -180 to 180, to the right positive as seen from inside
    Angle incidence;  ///< θ: between the sun and the normal; cos θ = cos α cos γ
    Angle profile;    ///< Ω: how steep it comes down across the window; tan Ω = tan α / cos γ; only where θ < 90°
};
[[nodiscard]] Incidence incidence(Angle bearing, const SunPosition& sun);

/// The share of an opening that the sun reaches `depth` behind its mouth: (W - s)(H - v) / (W H) with s = depth |tan
/// γ|, v = depth tan Ω, never below 0. 0 where the sun is behind the wall or down.
[[nodiscard]] double lit_share(Length width, Length height, Length depth, Angle bearing, const SunPosition& sun);

/// Local time, told by somebody who knows the zone: the offset from UTC at a moment.
using OffsetAt = std::function<std::chrono::seconds(Moment)>;

/// Hours by month (0: January) and by the clock’s hour.
using HourTable = std::array<std::array<double, 24>, 12>;

struct SunHours {
    HourTable on_glass{}, on_cloth{};  ///< hours in which any of it is lit
    HourTable up{};                    ///< the sun above the level
};
[[nodiscard]] double sum(const HourTable& table);
[[nodiscard]] double sum(const HourTable& table, int month);

/// Over a civil year at steps of ten minutes: when any of these openings, the facets of a bay, is lit.
[[nodiscard]] SunHours sun_hours(const Place& place, const std::vector<GlassOpening>& openings, int year,
                                 const OffsetAt& offset);
[[nodiscard]] inline SunHours sun_hours(const Place& place, const GlassOpening& opening, int year,
                                        const OffsetAt& offset) {
    return sun_hours(place, std::vector{opening}, year, offset);
}

/// EN 17037: at least 1.5 h of possible sun on one day between 1 February and 21 March, at a point in the middle of the
/// opening on the wall’s inner face. The standard also leaves out the sun below an altitude that it gives for each
/// country’s capital; here `lowest` is passed in.
struct SunlightDay {
    std::chrono::sys_days day;
    double hours = 0.0;
};
/// The day with most of them.
[[nodiscard]] SunlightDay best_february_day(const Place& place, const GlassOpening& opening, int year, Angle lowest);

}  // namespace truehang
