// SPDX-License-Identifier: Apache-2.0
#include "cloth/part.h"
#include "cloth/widths.h"
#include "units/rounding.h"

#include <fmt/format.h>

// Lining and interlining (trade rules, sections 6 and 9).

namespace truehang {

namespace {

WidthStep step_of(const LayerContext& layer) {
    return layer.asked.curtains() == 2 ? WidthStep::halves : WidthStep::whole;
}

struct Back {
    const Fabric& fabric;
    std::string_view name;  ///< lining or interlining, as the figures call it
    Length flat;            ///< finished
    Length needed;          ///< across the joined widths
    Length seam;
    Length drop;  ///< before shrinking
};

/// Cuts a back to its needs; nothing, and a flag, where its seams take all the cloth.
std::optional<Lining> cut_back(PlanParts& parts, const Back& back) {
    const auto widths = least_widths(back.needed, usable_width(back.fabric), back.seam, step_of(parts.layer));
    if (!widths) {
        parts.findings.flag("impossible", Severity::stop,
                            fmt::format("The seams take all of the {}’s width. Choose a wider one.", back.name));
        return std::nullopt;
    }
    Lining lining;
    lining.fabric = back.fabric.id;
    lining.widths_each = *widths;
    lining.widths = static_cast<int>(ceil_whole(parts.layer.asked.curtains() * *widths));
    lining.flat = back.flat;
    lining.cut_drop = cut_up(before_shrinking(back.drop, back.fabric.shrinkage_pct));
    lining.length = lining.widths * lining.cut_drop;
    const std::string name(back.name);
    TraceOf(parts.findings, name + ".widths_each")
        .mm("usable width", usable_width(back.fabric), {"fabric width_mm", "fabric selvedge_mm"})
        .mm("needed across", back.needed)
        .count("widths in each", *widths);
    TraceOf(parts.findings, name + ".flat_mm").mm("flat width", back.flat, {"cloth.flat_mm"});
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

Back curtain_lining(const PlanParts& parts) {
    const HouseRules& rules = parts.layer.rules;
    const Length flat = parts.plan.cloth->flat - Length::mm(2.0 * rules.lining_inset);
    Length drop = parts.sizes.drop + Length::mm(rules.lining_hem + rules.lining_head - rules.lining_rise);
    if (parts.layer.asked.heading == Heading::slot) {
        drop -= Length::mm(rules.slot_stand) + slot_pocket(parts.layer.asked.diameter(), rules);
    }
    return {*parts.fabrics.lining,         "lining", flat, flat + Length::mm(2.0 * rules.lining_side),
            Length::mm(rules.lining_seam), drop};
}

Back blind_lining(const PlanParts& parts) {
    const HouseRules& rules = parts.layer.rules;
    const Length drop =
        parts.sizes.drop + Length::mm(rules.lining_hem / 2.0 + parts.plan.blind->rods * rules.blind_pocket);
    return {*parts.fabrics.lining, "lining", parts.sizes.width, parts.sizes.width, Length::mm(rules.lining_seam), drop};
}

}  // namespace

void plan_lining(PlanParts& parts) {
    if (parts.fabrics.lining == nullptr) {
        return;
    }
    const bool blind = parts.layer.asked.is_blind();
    const HouseRules& rules = parts.layer.rules;
    const Back back = blind ? blind_lining(parts) : curtain_lining(parts);
    parts.plan.lining = cut_back(parts, back);
    if (!parts.plan.lining) {
        return;
    }
    TraceOf trace(parts.findings, "lining.cut_drop_mm");
    trace.mm("finished drop", parts.sizes.drop, {"finished.drop_mm"});
    if (blind) {
        trace.mm("hem", Length::mm(rules.lining_hem / 2.0), {"rule lining_hem_mm"})
            .mm("rod pockets", Length::mm(parts.plan.blind->rods * rules.blind_pocket), {"rule blind_pocket_mm"});
    } else {
        trace.mm("above the curtain’s hem", Length::mm(-rules.lining_rise), {"rule lining_rise_mm"})
            .mm("hem", Length::mm(rules.lining_hem), {"rule lining_hem_mm"})
            .mm("head", Length::mm(rules.lining_head), {"rule lining_head_mm"});
        if (parts.layer.asked.heading == Heading::slot) {
            trace.mm("starts below the pocket",
                     -(Length::mm(rules.slot_stand) + slot_pocket(parts.layer.asked.diameter(), rules)),
                     {"rule slot_stand_mm", "rule slot_ease_mm"});
        }
    }
    trace_shrinkage(trace, back, parts.plan.lining->cut_drop);
}

void plan_interlining(PlanParts& parts) {
    if (parts.fabrics.interlining == nullptr) {
        return;
    }
    const Length flat = parts.layer.asked.is_blind() ? parts.sizes.width : parts.plan.cloth->flat;
    const Back back{*parts.fabrics.interlining, "interlining", flat, flat, Length(), parts.sizes.drop};
    parts.plan.interlining = cut_back(parts, back);
    if (parts.plan.interlining) {
        TraceOf trace(parts.findings, "interlining.cut_drop_mm");
        trace.mm("finished drop", parts.sizes.drop, {"finished.drop_mm"});
        trace_shrinkage(trace, back, parts.plan.interlining->cut_drop);
    }
}

}  // namespace truehang
