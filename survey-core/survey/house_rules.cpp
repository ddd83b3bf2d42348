// SPDX-License-Identifier: Apache-2.0
#include "survey/house_rules.h"

#include <algorithm>
#include <array>
#include <string_view>

namespace truehang {

namespace {

struct Key {
    std::string_view name;
    double HouseRules::*value;
};

constexpr std::array keys{
    Key{"edge_u_mm", &HouseRules::edge_u},
    Key{"angle_u_deg", &HouseRules::angle_u},
    Key{"floor_clearance_mm", &HouseRules::floor_clearance},
    Key{"sill_clearance_mm", &HouseRules::sill_clearance},
    Key{"apron_mm", &HouseRules::apron},
    Key{"break_mm", &HouseRules::break_on_floor},
    Key{"puddle_mm", &HouseRules::puddle_on_floor},
    Key{"side_turn_mm", &HouseRules::side_turn},
    Key{"seam_mm", &HouseRules::seam},
    Key{"hem_mm", &HouseRules::hem},
    Key{"fullness_slack", &HouseRules::fullness_slack},
    Key{"lining_hem_mm", &HouseRules::lining_hem},
    Key{"lining_rise_mm", &HouseRules::lining_rise},
    Key{"lining_inset_mm", &HouseRules::lining_inset},
    Key{"lining_side_mm", &HouseRules::lining_side},
    Key{"lining_seam_mm", &HouseRules::lining_seam},
    Key{"lining_head_mm", &HouseRules::lining_head},
    Key{"tab_hang_mm", &HouseRules::tab_hang},
    Key{"tab_width_mm", &HouseRules::tab_width},
    Key{"tab_gap_mm", &HouseRules::tab_gap},
    Key{"tab_seam_mm", &HouseRules::tab_seam},
    Key{"eyelet_top_mm", &HouseRules::eyelet_top},
    Key{"eyelet_inner_mm", &HouseRules::eyelet_inner},
    Key{"eyelet_gap_mm", &HouseRules::eyelet_gap},
    Key{"ring_drop_mm", &HouseRules::ring_drop},
    Key{"hook_mm", &HouseRules::hook},
    Key{"slot_ease_mm", &HouseRules::slot_ease},
    Key{"slot_stand_mm", &HouseRules::slot_stand},
    Key{"order_step_m", &HouseRules::order_step_m},
    Key{"blind_ease_mm", &HouseRules::blind_ease},
    Key{"blind_over_mm", &HouseRules::blind_over},
    Key{"blind_side_mm", &HouseRules::blind_side},
    Key{"blind_hem_mm", &HouseRules::blind_hem},
    Key{"blind_head_mm", &HouseRules::blind_head},
    Key{"blind_headrail_mm", &HouseRules::blind_headrail},
    Key{"blind_fold_mm", &HouseRules::blind_fold},
    Key{"blind_pocket_mm", &HouseRules::blind_pocket},
    Key{"pelmet_share", &HouseRules::pelmet_share},
    Key{"pelmet_over_mm", &HouseRules::pelmet_over},
    Key{"facing_mm", &HouseRules::facing},
    Key{"placing_repeats", &HouseRules::placing_repeats},
    Key{"heat_clear_mm", &HouseRules::heat_clear},
    Key{"weight_every", &HouseRules::weight_every},
    Key{"pleats_per_width", &HouseRules::pleats_per_width},
    Key{"pleat_mm", &HouseRules::pleat},
    Key{"hook_gap_mm", &HouseRules::hook_gap},
    Key{"tape_turn_mm", &HouseRules::tape_turn},
    Key{"separate_fullness", &HouseRules::separate_fullness},
    Key{"separate_head_mm", &HouseRules::separate_head},
    Key{"separate_hem_mm", &HouseRules::separate_hem},
    Key{"separate_side_mm", &HouseRules::separate_side},
    Key{"tie_back_share", &HouseRules::tie_back_share},
    Key{"tie_back_ease_mm", &HouseRules::tie_back_ease},
    Key{"tie_back_width_mm", &HouseRules::tie_back_width},
    Key{"tie_back_turn_mm", &HouseRules::tie_back_turn},
    Key{"rod_short_mm", &HouseRules::rod_short},
    Key{"cord_gap_mm", &HouseRules::cord_gap},
    Key{"haberdashery_step_m", &HouseRules::haberdashery_step_m},
    Key{"making_per_width", &HouseRules::making_per_width},
    Key{"roll_m", &HouseRules::roll_m},
};

}  // namespace

HouseRules house_rules(const HouseRuleEntries& entries) {
    HouseRules rules;
    for (const Key& key : keys) {
        const auto found = entries.numbers.find(std::string(key.name));
        if (found != entries.numbers.end()) {
            rules.*key.value = found->second;
        }
    }
    rules.head = entries.head_mm;
    return rules;
}

std::vector<std::string> unknown_rules(const HouseRuleEntries& entries) {
    std::vector<std::string> unknown;
    for (const auto& [name, value] : entries.numbers) {
        if (std::ranges::find(keys, name, &Key::name) == keys.end()) {
            unknown.push_back(name);
        }
    }
    for (const auto& [name, value] : entries.extra) {
        unknown.push_back(name);
    }
    for (const auto& [heading, value] : entries.head_mm) {
        if (!Word<Heading>::find(heading)) {
            unknown.push_back("head_mm." + heading);
        }
    }
    return unknown;
}

std::optional<double> rule_value(const HouseRules& rules, std::string_view key) {
    const auto* found = std::ranges::find(keys, key, &Key::name);
    return found == keys.end() ? std::nullopt : std::optional(rules.*found->value);
}

std::vector<std::string> house_rule_keys() {
    std::vector<std::string> names;
    for (const Key& key : keys) {
        names.emplace_back(key.name);
    }
    return names;
}

}  // namespace truehang
