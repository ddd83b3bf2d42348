// SPDX-License-Identifier: Apache-2.0
#include "light/facing.h"

#include "document/document.h"
#include "light/wmm.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {
namespace {

// Standard uncertainties where nothing else is told. Of a phone’s compass and of a line on a plan: common practice, no
// source.
constexpr Angle usual_compass_u = Angle::degrees(10.0);
constexpr Angle usual_plan_u = Angle::degrees(2.0);
constexpr double usual_clock_s = 30.0;
constexpr Length usual_reading_u = Length::mm(1.0);

std::string whole_degrees(double degrees) { return fmt::format("{:.0f}", degrees); }

std::string_view what_of(BearingFrom from) {
    switch (from) {
        case BearingFrom::compass:
            return to_say("Compass");
        case BearingFrom::shadow:
            return to_say("Shadow on the sill");
        case BearingFrom::plan:
            return to_say("Plan");
    }
    return {};
}

std::string told_as(const Bearing& bearing) {
    return fmt::format("{}: {}", worded(what_of(bearing.from)), said_bearing(bearing));
}

/// How far the sun goes round in an hour there.
double turned_in_an_hour(const Place& place, Moment at) {
    using std::chrono::minutes;
    return std::abs(turn(sun_at(place, at - minutes(30)).azimuth, sun_at(place, at + minutes(30)).azimuth).degrees());
}

void tell_shadow(const Place& place, const BearingTaken& taken, Moment at, FacingTold& told) {
    const std::chrono::seconds clock(std::llround(taken.clock_s.value_or(usual_clock_s)));
    const auto found = bearing_from_shadow(
        place, {taken.depth.value_or(Length()), taken.to_left, taken.reading_u.value_or(usual_reading_u), at, clock});
    using Trouble = ShadowBearing::Trouble;
    switch (found.trouble) {
        case Trouble::unreadable:
            told.minds.push_back(say("The shadow needs how deep and how far to the left it was read."));
            return;
        case Trouble::sun_down:
            told.minds.push_back(
                say("At that time the sun is down here: the clock, its time zone or the place is wrong. Set it right "
                    "and take the shadow again."));
            return;
        case Trouble::sun_outside:
            told.minds.push_back(
                say("This shadow runs along the wall, where nothing can be read from it. Wait until the sun comes "
                    "further round."));
            return;
        case Trouble::none:
            break;
    }
    told.bearing = found.bearing;
    told.minds.push_back(say("It goes by the phone’s clock: an hour off would turn it by {}°.",
                             whole_degrees(turned_in_an_hour(place, at))));
}

void tell_compass(const Place& place, const BearingTaken& taken, Moment at, FacingTold& told) {
    if (!taken.magnetic) {
        told.minds.push_back(say("The compass told no bearing."));
        return;
    }
    const auto found =
        bearing_from_compass(place, {*taken.magnetic, taken.u.value_or(usual_compass_u), taken.field_nt}, at);
    if (found.no_north) {
        told.minds.push_back(say("So near a magnetic pole a compass shows no north. Take a shadow."));
        return;
    }
    if (found.iron) {
        told.minds.push_back(
            say("Something of iron is near, a radiator or a lintel: the field is off what it should be here. Step back "
                "from the wall, or take a shadow. It isn’t counted."));
        return;
    }
    told.bearing = found.bearing;
    if (found.dated) {
        told.minds.push_back(say("The magnetic model holds from 2025 to 2029; at this time it may be a degree off."));
    }
}

/// Straight out: as it was typed, else square to the street.
std::optional<Angle> of_plan(const BearingTaken& taken) {
    const auto looks = taken.looks ? taken.looks->known() : std::nullopt;
    if (taken.bearing || !taken.street || !looks) {
        return taken.bearing;
    }
    return as_bearing(taken.street->degrees() + (*looks == Looks::left ? -90.0 : 90.0));
}

FacingTold told_of(const std::optional<Place>& place, const BearingTaken& taken) {
    FacingTold told{taken.id, {}, {}, {}, false};
    const auto from = taken.from ? taken.from->known() : std::nullopt;
    const auto at = read_rfc3339(taken.taken_at);
    if (!from) {
        told.says = taken.from ? taken.from->text() : say("A bearing");
        told.minds.push_back(say("This version doesn’t know this way to take a bearing. It isn’t counted."));
        return told;
    }
    if (*from == BearingFrom::plan) {
        if (const auto bearing = of_plan(taken)) {
            told.bearing = Bearing{*bearing, taken.u.value_or(usual_plan_u), *from};
        } else {
            told.minds.push_back(say("It needs the line of the street and to which side of it the window looks."));
        }
    } else if (!place) {
        told.minds.push_back(say("It can’t be worked out before it is known where the house stands."));
    } else if (!at) {
        told.minds.push_back(say("It doesn’t say when it was taken."));
    } else if (*from == BearingFrom::shadow) {
        tell_shadow(*place, taken, *at, told);
    } else {
        tell_compass(*place, taken, *at, told);
    }
    told.says = told.bearing ? told_as(*told.bearing) : worded(what_of(*from));
    return told;
}

/// The window’s own, as the survey has it without an outlook.
FacingTold own_bearing(const Window& window) {
    const std::string& from = window.bearing_from;
    Bearing bearing{*window.bearing, usual_compass_u, BearingFrom::compass};
    if (from == "shadow") {
        bearing = {*window.bearing, Angle::degrees(1.0), BearingFrom::shadow};
    } else if (from == "plan" || from == "map") {
        bearing = {*window.bearing, usual_plan_u, BearingFrom::plan};
    }
    return {{}, bearing, told_as(bearing), {}, false};
}

}  // namespace

std::optional<Place> place_of(const Survey& survey) {
    if (!survey.site || !survey.site->latitude || !survey.site->longitude) {
        return std::nullopt;
    }
    return Place{Angle::degrees(*survey.site->latitude), Angle::degrees(*survey.site->longitude)};
}

std::string compass_word(Angle bearing) {
    static constexpr std::array words{to_say("north"), to_say("north-east"), to_say("east"), to_say("south-east"),
                                      to_say("south"), to_say("south-west"), to_say("west"), to_say("north-west")};
    const auto eighth = static_cast<std::size_t>(std::lround(bearing.degrees() / 45.0)) % words.size();
    return worded(words[eighth]);
}

std::string said_bearing(const Bearing& bearing) {
    const double u = std::max(1.0, std::round(2.0 * bearing.uncertainty.degrees()));
    return fmt::format("{}° ± {}°", whole_degrees(std::fmod(std::round(bearing.bearing.degrees()), 360.0)),
                       whole_degrees(u));
}

Facing facing_of(const Survey& survey, const Window& window) {
    const auto place = place_of(survey);
    Facing facing;
    if (window.outlook) {
        for (const BearingTaken& taken : window.outlook->bearings) {
            facing.told.push_back(told_of(place, taken));
        }
    }
    if (facing.told.empty() && window.bearing) {
        facing.told.push_back(own_bearing(window));
    }
    std::vector<Bearing> bearings;
    std::vector<std::size_t> whose;
    for (std::size_t index = 0; index < facing.told.size(); ++index) {
        if (facing.told[index].bearing) {
            bearings.push_back(*facing.told[index].bearing);
            whose.push_back(index);
        }
    }
    const auto combined = combine(bearings);
    if (!combined) {
        facing.says = say("Which way it faces isn’t known.");
        return facing;
    }
    facing.bearing = combined->bearing;
    facing.says = say("Faces {}, {}", compass_word(combined->bearing.bearing), said_bearing(combined->bearing));
    for (const std::size_t apart : combined->apart) {
        facing.told[whose[apart]].apart = true;
    }
    if (!combined->apart.empty()) {
        facing.mind = bearings.size() == 2
                          ? say("The two bearings are {}° apart, more than their ± allows. Take a third.",
                                whole_degrees(combined->furthest.degrees()))
                          : say("Bearings are {}° apart, more than their ± allows: those that stand alone aren’t "
                                "counted.",
                                whole_degrees(combined->furthest.degrees()));
    }
    return facing;
}

}  // namespace truehang
