// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "random.h"
#include "survey/words.h"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace truehang::trial {

/// What one window really is: every distance that a tape may be asked for, by station, and every height over the floor,
/// by the figures' name for it (`sill.left`). mm, degrees of an angle. Made by plane geometry from corner points, never
/// from the measuring code.
struct Truth {
    Shape shape = Shape::recess;
    std::map<std::string, double, std::less<>> values;
    std::vector<std::string> walk;  ///< the stations that this surveyor takes, in order

    [[nodiscard]] double at(std::string_view name) const { return values.find(name)->second; }
    [[nodiscard]] bool knows(std::string_view name) const { return values.find(name) != values.end(); }
};

[[nodiscard]] bool is_angle(std::string_view station);

/// A window of a crooked house. Corner points lie off the rectangle by a normal deviation of 3 mm (new work, within
/// DIN 18202:2013's +/- 10 mm from 1 to 3 m), 6 mm or 12 mm, and never by more than 30 mm; edges bow; floors and
/// ceilings slope and dip. Whether a level line, the middles, a second pole reading are taken is drawn too.
[[nodiscard]] Truth crooked_window(Shape shape, Random& random);

/// The shapes that the measuring code has stations for, of those that this trial can build.
[[nodiscard]] std::vector<Shape> shapes_in_trial();

}  // namespace truehang::trial
