// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "light/sun.h"
#include "survey/words.h"

#include <optional>

#include <vector>

// Which way a window faces: the bearing of its outward normal, clockwise from true north, each with its standard
// uncertainty.

namespace truehang {

struct Bearing {
    Angle bearing;      ///< 0 to below 360
    Angle uncertainty;  ///< standard
    BearingFrom from = BearingFrom::shadow;
};

/// What was read on a level sill while an upright edge threw its shadow there.
struct SillShadow {
    Length depth;  ///< from the edge’s foot straight into the room, above 0
    std::vector<Length>
        to_left;     ///< at that depth, of the shadow’s edges to the left of what throws them, seen from inside
    Length reading;  ///< standard uncertainty of each of them
    Moment at;
    std::chrono::seconds clock{};  ///< standard uncertainty of the time
};

struct ShadowBearing {
    enum class Trouble { none, unreadable, sun_down, sun_outside };
    Trouble trouble = Trouble::none;  ///< else there is no bearing
    Bearing bearing;
    Angle from_clock;  ///< the part of its uncertainty that comes from the clock
    SunPosition sun;
};

/// An upright edge’s shadow lies in the sun’s vertical plane: bearing = azimuth - atan2(to_left, depth), of both edges
/// of a bar the mean. `sun_down`: at that time there is no sun, so the clock, its time zone or the place is wrong;
/// `sun_outside`: the shadow would lie at more than 80° to the window, where nothing can be read; `unreadable`: no
/// reading, or no depth.
[[nodiscard]] ShadowBearing bearing_from_shadow(const Place& place, const SillShadow& shadow);

/// Several bearings as one: the mean by their weights. One that is further from the mean than 2.58 standard
/// uncertainties of that difference (99 %, if normal) doesn’t agree: the worst is left out and the rest looked at
/// again, down to two, of which nobody can say which is wrong.
struct Combined {
    Bearing bearing;                 ///< of those that are left; `from` of the best among them
    std::vector<std::size_t> apart;  ///< those that don’t agree, in their order
    Angle furthest;                  ///< of the two that stand furthest apart
};

/// None where there is none.
[[nodiscard]] std::optional<Combined> combine(const std::vector<Bearing>& bearings);

/// From one bearing to another the short way: -180 to 180.
[[nodiscard]] Angle turn(Angle from, Angle to);
/// 0 to below 360.
[[nodiscard]] Angle as_bearing(double degrees);

}  // namespace truehang
