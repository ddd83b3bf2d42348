// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "random.h"
#include "survey/words.h"

#include <array>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace truehang::trial {

/// What houses have.
enum class Built {
    recess,
    frame,
    door,
    bay_of_3,
    bay_of_5,
    corner,  ///< two openings that meet
    semicircle,
    segment,
    three_centres,
    pointed,  ///< an arch of two arcs that meet at the crown: none of the curves that are known
    gable,
};

struct BuiltKind {
    Built built;
    Shape shape;
    std::string_view name;   ///< in tables
    std::string_view group;  ///< what is judged together
    int clean;               ///< of a thousand clean windows
};

/// Of clean windows each kind gets as many as its alarms need to be told from more than 0.1 %.
inline constexpr std::array<BuiltKind, 11> built_kinds{
    {{Built::recess, Shape::recess, "recess", "recess, frame, door", 150},
     {Built::frame, Shape::frame, "frame", "recess, frame, door", 150},
     {Built::door, Shape::door, "door", "recess, frame, door", 150},
     {Built::bay_of_3, Shape::bay, "bay of 3", "bay", 75},
     {Built::bay_of_5, Shape::bay, "bay of 5", "bay", 75},
     {Built::corner, Shape::corner, "corner", "corner", 100},
     {Built::semicircle, Shape::arch, "semicircle", "arch", 50},
     {Built::segment, Shape::arch, "segment", "arch", 50},
     {Built::three_centres, Shape::arch, "three centres", "arch", 50},
     {Built::pointed, Shape::arch, "pointed arch", "arch", 50},
     {Built::gable, Shape::gable, "gable", "gable", 100}}};

[[nodiscard]] const BuiltKind& kind_of(Built built);

/// What one window really is: every distance and angle that may be asked for, by station, and every height over the
/// floor, by the figures' name for it (`sill.left`). mm, degrees of an angle. Made by plane geometry from corner
/// points, never from the measuring code.
struct Truth {
    Built built = Built::recess;
    std::map<std::string, double, std::less<>> values;
    std::vector<std::string> walk;  ///< the stations that this surveyor takes, in order
    double track_off = 0.0;         ///< of a bay or corner: how far off the glass its track runs

    [[nodiscard]] double at(std::string_view name) const { return values.find(name)->second; }
    [[nodiscard]] bool knows(std::string_view name) const { return values.find(name) != values.end(); }
    [[nodiscard]] const BuiltKind& kind() const { return kind_of(built); }
};

[[nodiscard]] bool is_angle(std::string_view station);

/// Whether a house keeps to what the networks of arches and gables take for granted: a gable's bottom edge level and
/// its sides plumb, a straight sill under an arch. Bays and openings are taken as they come either way.
enum class Keeping { true_to_form, crooked };

/// A window of a crooked house. Corner points lie off their places by a normal deviation of 3 mm (new work, within
/// DIN 18202:2013's +/- 10 mm from 1 to 3 m), 6 mm or 12 mm, and never by more than 30 mm; edges bow; floors and
/// ceilings slope and dip. Whether a level line, the middles, a second pole reading, a bay's depths, an arch's
/// ordinates are taken is drawn too.
[[nodiscard]] Truth crooked_window(Built built, Random& random, Keeping keeping = Keeping::true_to_form);

/// The kinds in turn, each as often as the others.
[[nodiscard]] Built in_turn(int place);
/// The kinds as often as clean windows are made of them.
[[nodiscard]] Built for_clean(int place);

}  // namespace truehang::trial
