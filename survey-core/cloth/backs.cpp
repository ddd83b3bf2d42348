// SPDX-License-Identifier: Apache-2.0
#include "cloth/part.h"
#include "cloth/widths.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <fmt/format.h>

// Lining and interlining (trade rules, sections 6 and 9).

namespace truehang {

namespace {

WidthStep back_step(const LayerContext& layer) {
    return layer.asked.curtains() == 2 ? WidthStep::halves : WidthStep::whole;
}

struct Back {
    const Fabric& fabric;
    std::string_view name;  ///< lining, second_lining or interlining, as the figures call it
    Length flat;            ///< finished
    Length needed;          ///< across the joined widths
    Length seam;
    Length drop;                      ///< before shrinking
    std::optional<Length> side_turn;  ///< where its own sides are hemmed: the flat width follows from its widths
};

std::string in_words(std::string_view name) { return name == "second_lining" ? say("second lining") : worded(name); }

/// Cuts a back to its needs; nothing, and a flag, where its seams take all the cloth.
std::optional<Lining> cut_back(PlanParts& parts, const Back& back) {
    const auto widths = least_widths(back.needed, usable_width(back.fabric), back.seam, back_step(parts.layer));
    if (!widths) {
        parts.findings.flag("impossible", Severity::stop,
                            say("The seams take all of the {}’s width. Choose a wider one.", in_words(back.name)));
        return std::nullopt;
    }
    Lining lining;
    lining.fabric = back.fabric.id;
    lining.widths_each = *widths;
    lining.widths = static_cast<int>(ceil_whole(parts.layer.asked.curtains() * *widths));
    lining.flat =
        back.side_turn ? across(*widths, usable_width(back.fabric), back.seam) - 2.0 * *back.side_turn : back.flat;
    lining.cut_drop = cut_up(before_shrinking(back.drop, back.fabric.shrinkage_pct));
    lining.length = lining.widths * lining.cut_drop;
    const std::string name(back.name);
    TraceOf(parts.findings, name + ".widths_each")
        .mm("usable width", usable_width(back.fabric), {"fabric width_mm", "fabric selvedge_mm"})
        .mm("needed across", back.needed)
        .count("widths in each", *widths);
    TraceOf(parts.findings, name + ".flat_mm")
        .mm("flat width", lining.flat, {back.side_turn ? name + ".widths_each" : "cloth.flat_mm"});
    TraceOf(parts.findings, name + ".length_mm")
        .count("drops", lining.widths, {name + ".widths_each"})
        .mm("cut drop", lining.cut_drop, {name + ".cut_drop_mm"})
        .mm("length", lining.length);
    parts.plan.pieces.push_back({back.fabric.id, "drops", lining.cut_drop, lining.widths, lining.length});
    return lining;
}

void trace_shrinkage(TraceOf& trace, const Back& back, Length cut_drop) {
    trace.mm("before shrinkage", back.drop);
    if (back.fabric.shrinkage_pct > 0.0) {
        trace.mm("with shrinkage", before_shrinking(back.drop, back.fabric.shrinkage_pct),
                 {fmt::format("shrinkage {:g} %", back.fabric.shrinkage_pct)});
    }
    trace.mm("cut drop", cut_drop);
}

/// One of the two linings a curtain or blind may have.
struct LiningAsked {
    const Fabric& fabric;
    std::string_view name;
};

bool starts_below_pocket(const PlanParts& parts) { return parts.layer.asked.heading == Heading::slot; }

Length pocket_and_frill(const PlanParts& parts) {
    return Length::mm(parts.layer.rules.slot_stand) + slot_pocket(parts.layer.asked.diameter(), parts.layer.rules);
}

Back sewn_in(const PlanParts& parts, const LiningAsked& asked) {
    const HouseRules& rules = parts.layer.rules;
    const Length flat = parts.plan.cloth->flat - Length::mm(2.0 * rules.lining_inset);
    Length drop = parts.sizes.drop + Length::mm(rules.lining_hem + rules.lining_head - rules.lining_rise);
    if (starts_below_pocket(parts)) {
        drop -= pocket_and_frill(parts);
    }
    return {asked.fabric, asked.name,  flat, flat + Length::mm(2.0 * rules.lining_side), Length::mm(rules.lining_seam),
            drop,         std::nullopt};
}

/// On its own tape: hemmed all round and gathered to a fullness of its own.
Back separate(const PlanParts& parts, const LiningAsked& asked) {
    const HouseRules& rules = parts.layer.rules;
    const Length side = Length::mm(rules.separate_side);
    return {
        asked.fabric,
        asked.name,
        Length(),
        needed_across(rules.separate_fullness, rules.fullness_slack, parts.sizes.width, parts.sizes.hangs_flat, side),
        Length::mm(rules.lining_seam),
        parts.sizes.drop + Length::mm(rules.separate_hem + rules.separate_head - rules.lining_rise),
        side};
}

Back blind_lining(const PlanParts& parts, const LiningAsked& asked) {
    const HouseRules& rules = parts.layer.rules;
    const Length drop =
        parts.sizes.drop + Length::mm(rules.lining_hem / 2.0 + parts.plan.blind->rods * rules.blind_pocket);
    return {asked.fabric, asked.name,  parts.sizes.width, parts.sizes.width, Length::mm(rules.lining_seam),
            drop,         std::nullopt};
}

void trace_allowances(const PlanParts& parts, bool is_separate, TraceOf& trace) {
    const HouseRules& rules = parts.layer.rules;
    trace.mm("finished drop", parts.sizes.drop, {"finished.drop_mm"});
    if (parts.layer.asked.is_blind()) {
        trace.mm("hem", Length::mm(rules.lining_hem / 2.0), {"rule lining_hem_mm"})
            .mm("rod pockets", Length::mm(parts.plan.blind->rods * rules.blind_pocket), {"rule blind_pocket_mm"});
        return;
    }
    trace.mm("above the curtain’s hem", Length::mm(-rules.lining_rise), {"rule lining_rise_mm"});
    if (is_separate) {
        trace.mm("hem", Length::mm(rules.separate_hem), {"rule separate_hem_mm"})
            .mm("head", Length::mm(rules.separate_head), {"rule separate_head_mm"});
        return;
    }
    trace.mm("hem", Length::mm(rules.lining_hem), {"rule lining_hem_mm"})
        .mm("head", Length::mm(rules.lining_head), {"rule lining_head_mm"});
    if (starts_below_pocket(parts)) {
        trace.mm("starts below the pocket", -pocket_and_frill(parts), {"rule slot_stand_mm", "rule slot_ease_mm"});
    }
}

std::optional<Lining> cut_lining(PlanParts& parts, const LiningAsked& asked) {
    const bool is_separate = lining_is_separate(parts.layer.asked);
    const Back back = parts.layer.asked.is_blind() ? blind_lining(parts, asked)
                      : is_separate                ? separate(parts, asked)
                                                   : sewn_in(parts, asked);
    auto lining = cut_back(parts, back);
    if (lining) {
        lining->separate = is_separate;
        TraceOf trace(parts.findings, std::string(asked.name) + ".cut_drop_mm");
        trace_allowances(parts, is_separate, trace);
        trace_shrinkage(trace, back, lining->cut_drop);
    }
    return lining;
}

void flag_no_hooks(PlanParts& parts) {
    const HangsFrom from = heading_rule(parts.layer.asked.heading).hangs_from;
    if (lining_is_separate(parts.layer.asked) && (from == HangsFrom::tabs || from == HangsFrom::threaded)) {
        parts.findings.flag(
            "lining-hung", Severity::decide,
            say("A lining that hangs on its own wants hooks or rings to hang from, and this heading has "
                "none. Sew it in, or choose a heading on hooks."));
    }
}

}  // namespace

bool lining_is_separate(const LayerAsked& asked) {
    const auto& hung = asked.treatment->lining_hung;
    return !asked.is_blind() && hung && hung->is(LiningHung::separate);
}

void plan_lining(PlanParts& parts) {
    if (parts.fabrics.lining != nullptr) {
        parts.plan.lining = cut_lining(parts, {*parts.fabrics.lining, "lining"});
    }
    if (parts.fabrics.second_lining != nullptr) {
        parts.plan.making.second_lining = cut_lining(parts, {*parts.fabrics.second_lining, "second_lining"});
    }
    if (parts.fabrics.lining != nullptr || parts.fabrics.second_lining != nullptr) {
        flag_no_hooks(parts);
    }
}

void plan_interlining(PlanParts& parts) {
    if (parts.fabrics.interlining == nullptr) {
        return;
    }
    const Length flat = parts.layer.asked.is_blind() ? parts.sizes.width : parts.plan.cloth->flat;
    const Back back{*parts.fabrics.interlining, "interlining", flat, flat, Length(), parts.sizes.drop, std::nullopt};
    parts.plan.interlining = cut_back(parts, back);
    if (parts.plan.interlining) {
        TraceOf trace(parts.findings, "interlining.cut_drop_mm");
        trace.mm("finished drop", parts.sizes.drop, {"finished.drop_mm"});
        trace_shrinkage(trace, back, parts.plan.interlining->cut_drop);
    }
}

}  // namespace truehang
