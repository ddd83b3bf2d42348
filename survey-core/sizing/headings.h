// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/house_rules.h"
#include "survey/words.h"
#include "units/length.h"

#include <string_view>

namespace truehang {

/// What a heading hangs from.
enum class HangsFrom { tabs, threaded, rings_or_track, track, headrail };

/// One line of the table of headings (trade rules, section 2). A new heading is a word in `survey/words.h` and a line
/// here.
struct HeadingRule {
    Heading heading;
    std::string_view says;  ///< in the trade's words, for descriptions: "tab headed"
    double fullness;        ///< asked where the treatment says none
    double least, most;     ///< fullness that suits it
    double head_mm;         ///< cloth above the finished top; a slot's is worked from its pocket
    HangsFrom hangs_from;
    double stack;  ///< share of its finished width that a drawn-back curtain fills
};

[[nodiscard]] const HeadingRule& heading_rule(Heading heading);

/// A slot's pocket, measured flat: half the way round the pole and the ease.
[[nodiscard]] Length slot_pocket(Length diameter, const HouseRules& rules);

/// Cloth taken above the finished top edge: the house's own, else the table's, a slot's worked from its pocket.
[[nodiscard]] Length head_allowance(Heading heading, Length diameter, const HouseRules& rules);

/// Whether the heading can hang from this kind of hardware.
[[nodiscard]] bool suits(Heading heading, HardwareKind hardware);

}  // namespace truehang
