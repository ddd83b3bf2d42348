// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace truehang {

/// The house rules of one workroom, by their keys in the survey's `rules`; the values here are the defaults of the
/// trade rules, section 1. Millimetres unless the name says a share or a count.
struct HouseRules {
    double edge_u = 2.0;
    double angle_u = 0.5;  ///< degrees: one standard uncertainty of an angle read between facets (common practice, no
                           ///< source)
    double floor_clearance = 10, sill_clearance = 10, apron = 150, break_on_floor = 30, puddle_on_floor = 200;
    double side_turn = 40, seam = 15, hem = 150;
    double fullness_slack = 0.10;
    double lining_hem = 80, lining_rise = 30, lining_inset = 20, lining_side = 10, lining_seam = 10, lining_head = 25;
    double tab_hang = 70, tab_width = 50, tab_gap = 240, tab_seam = 10;
    double eyelet_top = 45, eyelet_inner = 40, eyelet_gap = 180;
    double ring_drop = 20, hook = 20;
    double slot_ease = 30, slot_stand = 25;
    double order_step_m = 0.1;
    double blind_ease = 10, blind_over = 50, blind_side = 60, blind_hem = 80, blind_head = 20, blind_headrail = 60,
           blind_fold = 160, blind_pocket = 60;
    double pelmet_share = 0.1667, pelmet_over = 60;
    double facing = 80;
    double placing_repeats = 0;
    double heat_clear = 900;
    double weight_every = 0.5;
    // Of the making; common practice, no source, but for `pleats_per_width` (S. Woodcock, Capper’s Farmer, 2019).
    double pleats_per_width = 5;
    double pleat = 0;  ///< cloth that one pleat is to take; 0: by the widths
    double hook_gap = 80, tape_turn = 40;
    double separate_fullness = 1.5, separate_head = 10, separate_hem = 80, separate_side = 20;
    double tie_back_share = 0.6667, tie_back_ease = 100, tie_back_width = 100, tie_back_turn = 15;
    double rod_short = 20, cord_gap = 500, haberdashery_step_m = 0.1;
    double making_per_width = 0;  ///< charge for making a width, in the face cloth's currency; 0: none is shown
    double roll_m = 50;  ///< a usual roll, metres: nothing longer is cut in one piece (common practice, no source)
    std::map<std::string, double> head;  ///< `head_mm` by heading word, where the house says one
};

/// The defaults with the survey's own values over them.
[[nodiscard]] HouseRules house_rules(const HouseRuleEntries& entries);

/// Keys in the survey's rules that this version doesn't know: what they would change can't be worked.
[[nodiscard]] std::vector<std::string> unknown_rules(const HouseRuleEntries& entries);

/// What a rule is worth by its key; nothing of a key that isn't known.
[[nodiscard]] std::optional<double> rule_value(const HouseRules& rules, std::string_view key);

/// A rule in words: of what group, and what it sets. Groups come in the order of the list.
struct RuleWords {
    std::string_view key;
    std::string_view group;
    std::string_view says;
};
/// One for every known rule that holds a number.
[[nodiscard]] std::span<const RuleWords> rule_words();

/// Every key that holds a number, for documents that list them.
[[nodiscard]] std::vector<std::string> house_rule_keys();

}  // namespace truehang
