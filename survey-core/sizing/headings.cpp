// SPDX-License-Identifier: Apache-2.0
#include "sizing/headings.h"

#include <algorithm>
#include <array>
#include <numbers>

namespace truehang {

namespace {

constexpr std::array table{
    HeadingRule{Heading::tab, "tab headed", 1.5, 1.25, 2.0, 10, HangsFrom::tabs, 0.28},
    HeadingRule{Heading::eyelet, "eyelet headed", 1.8, 1.5, 2.25, 100, HangsFrom::threaded, 0.20},
    HeadingRule{Heading::slot, "slot headed", 2.0, 1.5, 2.5, 0, HangsFrom::threaded, 0.30},
    HeadingRule{Heading::pencil_pleat, "pencil pleated", 2.0, 1.75, 2.5, 75, HangsFrom::rings_or_track, 0.25},
    HeadingRule{Heading::pinch_pleat, "pinch pleated", 2.0, 1.9, 2.5, 100, HangsFrom::rings_or_track, 0.22},
    HeadingRule{Heading::goblet, "goblet headed", 2.2, 2.0, 2.5, 150, HangsFrom::rings_or_track, 0.25},
    HeadingRule{Heading::box_pleat, "box pleated", 2.5, 2.25, 3.0, 100, HangsFrom::rings_or_track, 0.30},
    HeadingRule{Heading::s_fold, "s-fold", 2.0, 1.8, 2.4, 75, HangsFrom::track, 0.15},
    HeadingRule{Heading::roman, "Roman blind", 1.0, 1.0, 1.0, 20, HangsFrom::headrail, 0.0},
};

}  // namespace

const HeadingRule& heading_rule(Heading heading) { return *std::ranges::find(table, heading, &HeadingRule::heading); }

Length slot_pocket(Length diameter, const HouseRules& rules) {
    return Length::mm((std::numbers::pi * diameter.mm() + rules.slot_ease) / 2.0);
}

Length head_allowance(Heading heading, Length diameter, const HouseRules& rules) {
    if (const auto own = rules.head.find(Word<Heading>::word_for(heading)); own != rules.head.end()) {
        return Length::mm(own->second);
    }
    if (heading == Heading::slot) {
        constexpr double turned_in = 10.0;  // the edge turned in below the pocket (trade rules, section 2)
        return Length::mm(rules.slot_stand + turned_in) + slot_pocket(diameter, rules);
    }
    return Length::mm(heading == Heading::roman ? rules.blind_head : heading_rule(heading).head_mm);
}

bool suits(Heading heading, HardwareKind hardware) {
    switch (heading_rule(heading).hangs_from) {
        case HangsFrom::tabs:
        case HangsFrom::threaded:
            return hardware == HardwareKind::pole || hardware == HardwareKind::wire;
        case HangsFrom::rings_or_track:
            return hardware != HardwareKind::headrail;
        case HangsFrom::track:
            return hardware == HardwareKind::track;
        case HangsFrom::headrail:
            break;
    }
    return hardware == HardwareKind::headrail;
}

}  // namespace truehang
