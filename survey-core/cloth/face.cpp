// SPDX-License-Identifier: Apache-2.0
#include "cloth/part.h"
#include "cloth/widths.h"
#include "units/length_text.h"
#include "units/rounding.h"

#include <fmt/format.h>

namespace truehang {

namespace {

WidthStep step_of(const LayerContext& layer) {
    return layer.asked.curtains() == 2 ? WidthStep::halves : WidthStep::whole;
}

Length needed_for_width(const PlanParts& parts, Length finished, double fullness) {
    const HouseRules& rules = parts.layer.rules;
    if (parts.layer.asked.is_blind()) {
        return finished + Length::mm(2.0 * rules.blind_side);
    }
    return needed_across(fullness, rules.fullness_slack, finished, parts.sizes.hangs_flat, Length::mm(rules.side_turn));
}

std::optional<double> widths_for(const PlanParts& parts, Length finished, double fullness) {
    return least_widths(needed_for_width(parts, finished, fullness), usable_width(*parts.fabrics.face),
                        Length::mm(parts.layer.rules.seam), step_of(parts.layer));
}

/// All the cloth that one drop takes before repeats, for a finished drop.
Length length_of_drop(const PlanParts& parts, Length drop) {
    const HouseRules& rules = parts.layer.rules;
    const Length head = head_allowance(parts.layer.asked.heading, parts.layer.asked.diameter(), rules);
    const Length hem = Length::mm(parts.layer.asked.is_blind() ? rules.blind_hem : rules.hem);
    return before_shrinking(drop + head + hem, parts.fabrics.face->shrinkage_pct);
}

bool may_be_turned(const Fabric& fabric) { return fabric.railroad.value_or(false) && !fabric.one_way.value_or(false); }

/// Cloth turned sideways: its width makes the drop, without repeat.
std::optional<Length> railroaded(const PlanParts& parts, Length least_drop, Length upright) {
    const Fabric& fabric = *parts.fabrics.face;
    if (parts.layer.asked.is_blind() || !may_be_turned(fabric) ||
        usable_width(fabric).mm() < least_drop.mm() - whole_tolerance) {
        return std::nullopt;
    }
    const Length one = parts.layer.asked.fullness * parts.sizes.width + Length::mm(2.0 * parts.layer.rules.side_turn);
    const Length total = cut_up(before_shrinking(parts.layer.asked.curtains() * one, fabric.shrinkage_pct));
    return total < upright ? std::optional(total) : std::nullopt;
}

void trace_widths(PlanParts& parts, const Cloth& cloth) {
    const HouseRules& rules = parts.layer.rules;
    const Length usable = usable_width(*parts.fabrics.face);
    const double joins = ceil_whole(cloth.widths_each) - 1.0;
    TraceOf(parts.findings, "cloth.widths_each")
        .mm("usable width of the cloth", usable, {"fabric width_mm", "fabric selvedge_mm"})
        .mm("needed across", needed_for_width(parts, parts.sizes.width, parts.layer.asked.fullness),
            {"finished.width_mm", parts.layer.asked.is_blind() ? "rule blind_side_mm" : "fullness"})
        .count("widths in each", cloth.widths_each);
    TraceOf(parts.findings, "cloth.widths")
        .count("widths in each", cloth.widths_each)
        .count("curtains", parts.layer.asked.curtains())
        .count("widths cut", cloth.widths);
    if (parts.layer.asked.is_blind()) {
        TraceOf(parts.findings, "cloth.flat_mm")
            .mm("finished width", parts.sizes.width, {"finished.width_mm"})
            .mm("side turns", Length::mm(2.0 * rules.blind_side), {"rule blind_side_mm"})
            .mm("cut across", cloth.flat);
    } else {
        TraceOf(parts.findings, "cloth.flat_mm")
            .mm("widths joined", cloth.widths_each * usable, {"cloth.widths_each"})
            .mm("seams", Length::mm(-2.0 * joins * rules.seam), {"rule seam_mm"})
            .mm("side turns", Length::mm(-2.0 * rules.side_turn), {"rule side_turn_mm"})
            .mm("flat width", cloth.flat);
    }
    if (cloth.fullness) {
        TraceOf(parts.findings, "cloth.fullness")
            .mm("flat width that is gathered", cloth.flat - parts.sizes.hangs_flat, {"cloth.flat_mm"})
            .mm("finished width it hangs in", parts.sizes.width - parts.sizes.hangs_flat, {"finished.width_mm"})
            .ratio("fullness reached", *cloth.fullness);
    }
}

void trace_drops(PlanParts& parts, const Cloth& cloth, const DropPlan& drops) {
    const Fabric& fabric = *parts.fabrics.face;
    const HouseRules& rules = parts.layer.rules;
    const Length head = head_allowance(parts.layer.asked.heading, parts.layer.asked.diameter(), rules);
    const Length hem = Length::mm(parts.layer.asked.is_blind() ? rules.blind_hem : rules.hem);
    const Length least = length_of_drop(parts, parts.sizes.drop);
    TraceOf cut(parts.findings, "cloth.cut_drop_mm");
    cut.mm("finished drop", parts.sizes.drop, {"finished.drop_mm"})
        .mm("head", head, {"rule head_mm"})
        .mm("hem", hem, {parts.layer.asked.is_blind() ? "rule blind_hem_mm" : "rule hem_mm"})
        .mm("before shrinkage", parts.sizes.drop + head + hem);
    if (fabric.shrinkage_pct > 0.0) {
        cut.mm("with shrinkage", least, {fmt::format("shrinkage {:g} %", fabric.shrinkage_pct)});
    }
    if (drops.repeats > 0.0) {
        cut.count("repeats", drops.repeats, {fmt::format("repeat {:g}", fabric.repeat.mm())})
            .mm("trim at the head", drops.cut_drop - least);
    }
    cut.mm("cut drop", cloth.cut_drop);
    TraceOf total(parts.findings, "cloth.length_mm");
    total.count("drops", cloth.widths, {"cloth.widths"}).mm("cut drop", cloth.cut_drop, {"cloth.cut_drop_mm"});
    if (drops.beside.mm() > 0.0) {
        total.mm("half a repeat between the phases", drops.beside);
    }
    total.mm("length", cloth.length);
}

void flag_fullness(PlanParts& parts, double fullness) {
    const HeadingRule& rule = heading_rule(parts.layer.asked.heading);
    if (fullness < rule.least - 1e-9 || fullness > rule.most + 1e-9) {
        parts.findings.flag(
            "fullness-range", Severity::decide,
            fmt::format("The curtains come to {:.2f} × fullness; this heading wants {:g} to {:g}. Change "
                        "the fullness, the pole or the cloth, or say that it is meant.",
                        fullness, rule.least, rule.most));
    }
}

/// Counts repeats in a drop, or 0.
double repeats_in(const PlanParts& parts, Length drop, int count) {
    const Fabric& fabric = *parts.fabrics.face;
    return plan_drops(length_of_drop(parts, drop), count, fabric.repeat, match_of(fabric)).repeats;
}

void flag_width_edge(PlanParts& parts, double widths_each) {
    const LayerAsked& asked = parts.layer.asked;
    const Length twice = 2.0 * parts.sizes.width_u;
    const auto say = [&](std::optional<double> other, const std::string& when) {
        if (!other || *other == widths_each) {
            return false;
        }
        parts.findings.flag(
            "on-the-edge", Severity::decide,
            fmt::format("{:g} widths in each as it stands; {:g} if {}. Decide before the cloth is ordered.",
                        widths_each, *other, when));
        return true;
    };
    for (const double sign : {-1.0, 1.0}) {
        if (twice.mm() > 0.0 &&
            say(widths_for(parts, parts.sizes.width + sign * twice, asked.fullness),
                fmt::format("the width is {} {}", said_length(twice, parts.layer.measured.entry_unit),
                            sign < 0 ? "less" : "more"))) {
            break;
        }
    }
    if (asked.is_blind()) {
        return;
    }
    for (const double change : {-0.05, 0.05}) {
        if (say(widths_for(parts, parts.sizes.width, asked.fullness + change),
                fmt::format("{:.2f} × fullness is asked instead of {:.2f} ×", asked.fullness + change,
                            asked.fullness))) {
            break;
        }
    }
}

/// The readings that the drop was worked from.
std::vector<std::string> stations_of_drop(const PlanParts& parts) {
    const auto& along = parts.sizes.drop_along;
    return along ? parts.layer.measured.plumb.way_between(along->line, along->from, along->to)
                 : std::vector<std::string>{};
}

void flag_drop_edge(PlanParts& parts, int count) {
    const Length twice = 2.0 * parts.sizes.drop_u;
    const double as_is = repeats_in(parts, parts.sizes.drop, count);
    const Length usable = usable_width(*parts.fabrics.face);
    const bool turned = length_of_drop(parts, parts.sizes.drop).mm() <= usable.mm() + whole_tolerance;
    for (const double sign : {-1.0, 1.0}) {
        const Length drop = parts.sizes.drop + sign * twice;
        const double repeats = repeats_in(parts, drop, count);
        if (repeats != as_is) {
            parts.findings.flag("on-the-edge", Severity::decide,
                                fmt::format("{:g} repeats in a drop as it stands; {:g} if the drop is {} {}. Decide "
                                            "before the cloth is ordered.",
                                            as_is, repeats, said_length(twice, parts.layer.measured.entry_unit),
                                            sign < 0 ? "less" : "more"),
                                stations_of_drop(parts));
            return;
        }
        const bool turned_then = length_of_drop(parts, drop).mm() <= usable.mm() + whole_tolerance;
        if (may_be_turned(*parts.fabrics.face) && !parts.layer.asked.is_blind() && turned_then != turned) {
            parts.findings.flag(
                "on-the-edge", Severity::decide,
                fmt::format("The cloth {} turned sideways as it stands; it {} if the drop is {} {}. "
                            "Decide before the cloth is ordered.",
                            turned ? "can be" : "can’t be", turned ? "couldn’t" : "could",
                            said_length(twice, parts.layer.measured.entry_unit), sign < 0 ? "less" : "more"),
                stations_of_drop(parts));
            return;
        }
    }
}

}  // namespace

bool plan_face(PlanParts& parts) {
    const Fabric& fabric = *parts.fabrics.face;
    const HouseRules& rules = parts.layer.rules;
    const bool blind = parts.layer.asked.is_blind();
    const auto widths_each = widths_for(parts, parts.sizes.width, parts.layer.asked.fullness);
    if (!widths_each) {
        parts.findings.flag("impossible", Severity::stop,
                            "The seams take all of this cloth’s width. Choose a wider cloth.");
        return false;
    }
    Cloth cloth;
    cloth.fabric = fabric.id;
    cloth.widths_each = *widths_each;
    cloth.widths = static_cast<int>(ceil_whole(parts.layer.asked.curtains() * *widths_each));
    cloth.flat =
        blind ? parts.sizes.width + Length::mm(2.0 * rules.blind_side)
              : across(*widths_each, usable_width(fabric), Length::mm(rules.seam)) - Length::mm(2.0 * rules.side_turn);
    if (!blind) {
        cloth.fullness = (cloth.flat - parts.sizes.hangs_flat) / (parts.sizes.width - parts.sizes.hangs_flat);
        flag_fullness(parts, *cloth.fullness);
    }
    const Length least = length_of_drop(parts, parts.sizes.drop);
    const DropPlan drops = plan_drops(least, cloth.widths, fabric.repeat, match_of(fabric));
    cloth.cut_drop = cut_up(drops.cut_drop);
    cloth.length = cut_up(drops.total);
    cloth.railroaded = railroaded(parts, least, cloth.length);
    trace_widths(parts, cloth);
    trace_drops(parts, cloth, drops);
    flag_width_edge(parts, *widths_each);
    flag_drop_edge(parts, cloth.widths);
    parts.plan.pieces.push_back({fabric.id, "drops", cloth.cut_drop, cloth.widths, drops.total - drops.beside});
    parts.plan.exact_cut_drop = drops.cut_drop;
    if (drops.beside.mm() > 0.0) {
        parts.plan.pieces.push_back({fabric.id, "half repeat", cut_up(drops.beside), 1, drops.beside});
    }
    parts.plan.cloth = std::move(cloth);
    return true;
}

}  // namespace truehang
