// SPDX-License-Identifier: Apache-2.0
#include "cloth/part.h"
#include "units/rounding.h"
#include "units/saying.h"

// What a load rests on that nobody has told: masses, what the makers of pole, brackets and fixings say, and the wall.

namespace truehang {

namespace {

void flag_over(PlanParts& parts, Mass load, const std::optional<Mass>& rated, const std::string& of) {
    if (!rated || load.kg() <= rated->kg() + whole_tolerance) {
        return;
    }
    parts.findings.flag("load-over-rating", Severity::caution,
                        say("{:.2f} kg hangs where {} is rated for {:.2f} kg by its maker. Use a stronger one "
                            "or more brackets, follow local rules, and use a qualified person where the law "
                            "asks for one.",
                            load.kg(), of, rated->kg()));
}

std::vector<std::string> not_known(const PlanParts& parts) {
    const Hardware* hardware = parts.layer.asked.hardware;
    std::vector<std::string> lacking;
    const auto lacks = [&lacking](bool known, std::string_view what) {
        if (!known) {
            lacking.emplace_back(what);
        }
    };
    lacks(parts.plan.mass.has_value(), to_say("the mass of a cloth"));
    lacks(hardware != nullptr && hardware->mass, to_say("the mass of the hardware"));
    lacks(hardware != nullptr && (hardware->brackets || !hardware->bracket_at.empty()),
          to_say("how many brackets carry it"));
    lacks(hardware != nullptr && hardware->rated, to_say("what the maker of the hardware says it carries"));
    lacks(hardware != nullptr && hardware->bracket_rated, to_say("what the maker of the brackets says one carries"));
    lacks(hardware != nullptr && hardware->fixing_rated, to_say("what the fixings hold in this wall"));
    lacks(!parts.layer.room.wall.empty(), to_say("what the wall is made of"));
    return lacking;
}

}  // namespace

void say_what_the_load_rests_on(PlanParts& parts) {
    parts.plan.making.load = Load{parts.plan.bracket_mass, not_known(parts)};
    const Hardware* hardware = parts.layer.asked.hardware;
    if (hardware == nullptr || !parts.plan.mass) {
        return;
    }
    flag_over(parts, *parts.plan.mass + hardware->mass.value_or(Mass()), hardware->rated, say("the hardware"));
    flag_over(parts, *parts.plan.bracket_mass, hardware->bracket_rated, say("a bracket"));
    flag_over(parts, *parts.plan.bracket_mass, hardware->fixing_rated, say("a bracket’s fixing"));
}

}  // namespace truehang
