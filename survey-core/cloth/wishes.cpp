// SPDX-License-Identifier: Apache-2.0
#include "cloth/wishes.h"

#include "units/rounding.h"
#include "units/saying.h"

namespace truehang {

namespace {

using Wish = std::optional<std::string>;

/// More than this many of a kind in one curtain is a slip of the rules, not a wish.
constexpr double most_parts = 1000.0;

std::string mm(Length length) { return say("{:g} mm", length.mm()); }
std::string mm(double length) { return say("{:g} mm", length); }

/// The first wish that says something.
template <class... Rest>
Wish first_of(Wish first, Rest... rest) {
    for (Wish* wish : {&first, &rest...}) {
        if (*wish) {
            return std::move(*wish);
        }
    }
    return std::nullopt;
}

Wish of_fabric(const Fabric& fabric, const HouseRules& rules) {
    const Length usable = usable_width(fabric);
    if (usable.mm() <= 0.0) {
        return say("Nothing is left of a cloth {} wide after two selvedges of {}. Look at both.", mm(fabric.width),
                   mm(fabric.selvedge));
    }
    if (fabric.skew && *fabric.skew >= usable) {
        return say("A print can’t run {} off square over a cloth {} wide. Measure its skew again.", mm(*fabric.skew),
                   mm(usable));
    }
    if (match_of(fabric) != Match::none && fabric.repeat.metres() > rules.roll_m + whole_tolerance) {
        return say("A repeat of {:g} m is longer than a usual roll of {:g} m. Measure the repeat again.",
                   fabric.repeat.metres(), rules.roll_m);
    }
    return std::nullopt;
}

Wish of_fullness(const LayerAsked& asked, const HouseRules& rules) {
    if (asked.is_blind()) {
        return std::nullopt;
    }
    const HeadingRule& rule = heading_rule(asked.heading);
    if (asked.fullness < 1.0 - 1e-9) {
        return say(
            "At {:g} × fullness the curtains are narrower than what they hang from. Ask for more than "
            "1 ×; this heading wants {:g} to {:g}.",
            asked.fullness, rule.least, rule.most);
    }
    if (rules.fullness_slack >= asked.fullness) {
        return say(
            "The house rules let a curtain fall {:g} × below its fullness, all of the {:g} × asked for. Make "
            "fullness_slack less than 1.",
            rules.fullness_slack, asked.fullness);
    }
    return std::nullopt;
}

Wish of_folds(const PlanParts& parts) {
    const HouseRules& rules = parts.layer.rules;
    if (!parts.layer.asked.is_blind()) {
        return std::nullopt;
    }
    const double folding = parts.sizes.drop.mm() - rules.blind_headrail;
    if (rules.blind_fold * 2.0 * most_parts < folding) {
        return say("Folds of {} make more rods than a blind can carry. Allow deeper folds.", mm(rules.blind_fold));
    }
    return std::nullopt;
}

Wish of_pelmet(const PlanParts& parts) {
    const auto& pelmet = parts.layer.asked.treatment->pelmet;
    if (!pelmet) {
        return std::nullopt;
    }
    const Length drop = parts.sizes.drop;
    const Length depth = pelmet->depth.value_or(Length::mm(round_to(parts.layer.rules.pelmet_share * drop.mm(), 5.0)));
    // Merrick & Day, Encyclopaedia of Curtains: a sixth to a fifth of the finished length.
    const std::string usual = say("Make it {:.0f} to {:.0f} mm, a sixth to a fifth of the curtain",
                                  round_whole(drop.mm() / 6.0), round_whole(drop.mm() / 5.0));
    if (depth.mm() <= 0.0) {
        return say("The pelmet has no depth. {}, or leave it out.", usual);
    }
    if (depth >= drop) {
        return say("A pelmet {} deep hides all of a curtain {:.0f} mm long. {}.", mm(depth), round_whole(drop.mm()),
                   usual);
    }
    return std::nullopt;
}

Wish of_roll(const PlanParts& parts) {
    const Length drop = parts.plan.cloth->cut_drop;
    if (drop.metres() <= parts.layer.rules.roll_m + whole_tolerance) {
        return std::nullopt;
    }
    return say(
        "One drop of {:.1f} m is longer than a usual roll of {:g} m. Look at the finished drop and the "
        "repeat, or set roll_m in the house rules.",
        drop.metres(), parts.layer.rules.roll_m);
}

Wish of_lining(const PlanParts& parts) {
    const LayerAsked& asked = parts.layer.asked;
    const HouseRules& rules = parts.layer.rules;
    if (parts.fabrics.lining == nullptr || asked.is_blind() || lining_is_separate(asked)) {
        return std::nullopt;
    }
    const Length flat = parts.plan.cloth->flat;
    if (flat.mm() <= 2.0 * rules.lining_inset + whole_tolerance) {
        return say(
            "A lining {} in from each side has no width left behind a curtain {:.0f} mm wide. Set it in "
            "less, or leave the lining out.",
            mm(rules.lining_inset), round_whole(flat.mm()));
    }
    const Length pocket =
        asked.heading == Heading::slot ? Length::mm(rules.slot_stand) + slot_pocket(asked.diameter(), rules) : Length();
    if (parts.sizes.drop - pocket <= Length::mm(rules.lining_rise)) {
        return say(
            "The lining would end {} above the hem, and the curtain leaves it no length. Let the lining "
            "come lower, hang the curtain longer, or leave the lining out.",
            mm(rules.lining_rise));
    }
    return std::nullopt;
}

Wish of_tabs(const PlanParts& parts) {
    const HouseRules& rules = parts.layer.rules;
    if (parts.layer.asked.heading != Heading::tab) {
        return std::nullopt;
    }
    const Length flat = parts.plan.cloth->flat;
    const Length cut = Length::mm(2.0 * (rules.tab_width + rules.tab_seam));
    const Length usable = usable_width(*parts.fabrics.face);
    if (rules.tab_width <= 0.0) {
        return say("Tabs of no width hold no curtain. Give them a width in the house rules.");
    }
    if (cut > usable) {
        return say("A tab is cut {} wide, and the cloth is {} wide. Make the tabs narrower, or choose a wider cloth.",
                   mm(cut), mm(usable));
    }
    if (flat.mm() <= rules.tab_width) {
        return say("A curtain {:.0f} mm wide has no room for two tabs {} wide. Make the tabs narrower.",
                   round_whole(flat.mm()), mm(rules.tab_width));
    }
    if (rules.tab_gap < rules.tab_width) {
        return say("Tabs {} wide can’t stand {} apart, centre to centre. Let them stand further apart.",
                   mm(rules.tab_width), mm(rules.tab_gap));
    }
    const bool lined = parts.fabrics.lining != nullptr || parts.fabrics.second_lining != nullptr;
    const bool faced = !lined || lining_is_separate(parts.layer.asked);
    if (faced && Length::mm(rules.facing) >= parts.sizes.drop) {
        return say(
            "A facing {} deep is longer than the curtain. Make it shallower, or line the curtain and leave it out.",
            mm(rules.facing));
    }
    return std::nullopt;
}

Wish of_slot(const PlanParts& parts) {
    const LayerAsked& asked = parts.layer.asked;
    if (asked.heading != Heading::slot) {
        return std::nullopt;
    }
    const Length taken = Length::mm(parts.layer.rules.slot_stand) + slot_pocket(asked.diameter(), parts.layer.rules);
    if (taken < parts.sizes.drop) {
        return std::nullopt;
    }
    return say(
        "The frill and the pocket take {:.0f} mm, and the curtain is {:.0f} mm long. Hang it longer, or choose "
        "a thinner pole.",
        round_whole(taken.mm()), round_whole(parts.sizes.drop.mm()));
}

Wish of_eyelets(const PlanParts& parts) {
    const HouseRules& rules = parts.layer.rules;
    if (parts.layer.asked.heading != Heading::eyelet) {
        return std::nullopt;
    }
    constexpr double at_the_ends = 100.0;  // first and last 50 mm in (trade rules, section 7)
    if (rules.eyelet_gap <= rules.eyelet_inner) {
        return say(
            "Eyelets {} across can’t stand {} apart, centre to centre. Let them stand further apart, or "
            "choose smaller ones.",
            mm(rules.eyelet_inner), mm(rules.eyelet_gap));
    }
    if (parts.plan.cloth->flat.mm() <= at_the_ends + rules.eyelet_inner) {
        return say(
            "A curtain {:.0f} mm wide has no room for two eyelets, 50 mm in from each side. Choose another heading.",
            round_whole(parts.plan.cloth->flat.mm()));
    }
    return std::nullopt;
}

Wish of_weights(const PlanParts& parts) {
    const double every = parts.layer.rules.weight_every;
    if (parts.layer.asked.is_blind() || every * most_parts >= parts.plan.cloth->widths_each) {
        return std::nullopt;
    }
    return say("A weight every {:g} widths makes more weights than a hem can hold. Make weight_every larger.", every);
}

}  // namespace

std::optional<std::string> impossible_wish(const PlanParts& parts) {
    const HouseRules& rules = parts.layer.rules;
    for (const Fabric* fabric :
         {parts.fabrics.face, parts.fabrics.lining, parts.fabrics.interlining, parts.fabrics.second_lining}) {
        if (fabric != nullptr) {
            if (auto wish = of_fabric(*fabric, rules)) {
                return wish;
            }
        }
    }
    return first_of(of_fullness(parts.layer.asked, rules), of_folds(parts), of_slot(parts), of_pelmet(parts));
}

std::string cant_be_joined(const PlanParts& parts) {
    const Fabric& fabric = *parts.fabrics.face;
    const Length seams = Length::mm(2.0 * parts.layer.rules.seam);
    const Length joined = joined_width(fabric);
    if (joined.mm() <= 0.0) {
        return say(
            "The pattern repeats every {} across, and the cloth is {} wide: no join can match. Choose a wider cloth, "
            "or say that nothing is to match.",
            mm(fabric.repeat_across.value_or(Length())), mm(usable_width(fabric)));
    }
    if (joined <= seams) {
        return say(
            "Seams of {} at each side of a join take all of the {} that is used of a width. Choose a wider "
            "cloth, or narrower seams.",
            mm(parts.layer.rules.seam), mm(joined));
    }
    return say(
        "More than 1,000 widths of {} would be joined. Look at the width of the cloth, the hardware’s length "
        "and the fullness.",
        mm(joined));
}

std::optional<std::string> impossible_part(const PlanParts& parts) {
    return first_of(of_roll(parts), of_lining(parts), of_tabs(parts), of_eyelets(parts), of_weights(parts));
}

}  // namespace truehang
