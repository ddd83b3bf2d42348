// SPDX-License-Identifier: Apache-2.0
#include "cloth/part.h"
#include "units/rounding.h"

#include <algorithm>

// Pleats and hooks. Size of a pleat: S. Woodcock, “Calculating Pleats and Spaces”, Capper’s Farmer, 2019: (flat less
// finished) over the number of pleats; 5, 7, 10, 15 of them in 1, 1½, 2, 3 widths. By the cloth that one takes: How to
// Make Draperies, Sewing Library No. 102, 1960. The return and the overlap stay flat in both.

namespace truehang {

namespace {

bool is_pleated(Heading heading) {
    return heading == Heading::pinch_pleat || heading == Heading::goblet || heading == Heading::box_pleat;
}

bool is_gathered_on_tape(Heading heading) { return heading == Heading::pencil_pleat || heading == Heading::s_fold; }

int pleats_in_each(const PlanParts& parts, Length taken) {
    const HouseRules& rules = parts.layer.rules;
    const double asked = rules.pleat > 0.0 ? round_whole(taken.mm() / rules.pleat)
                                           : floor_whole(rules.pleats_per_width * parts.plan.cloth->widths_each);
    return std::max(2, whole_count(asked));
}

void trace_pleats(PlanParts& parts, const Pleats& pleats, Length taken) {
    const bool by_size = parts.layer.rules.pleat > 0.0;
    TraceOf(parts.findings, "pleats.each")
        .mm("flat width", parts.plan.cloth->flat, {"cloth.flat_mm"})
        .mm("finished width", -parts.sizes.width, {"finished.width_mm"})
        .mm("goes into the pleats", taken)
        .count(by_size ? "pleats of the size asked for" : "pleats for its widths", pleats.each,
               {by_size ? "rule pleat_mm" : "rule pleats_per_width"});
    TraceOf(parts.findings, "pleats.pleat_mm")
        .mm("goes into the pleats", taken)
        .count("pleats", pleats.each, {"pleats.each"})
        .mm("each pleat", pleats.pleat);
    TraceOf(parts.findings, "pleats.space_mm")
        .mm("finished width", parts.sizes.width, {"finished.width_mm"})
        .mm("return and overlap, left flat", -parts.sizes.hangs_flat)
        .count("spaces", pleats.each - 1)
        .mm("each space", pleats.space);
}

/// Nothing where the cloth isn’t wider than the curtain: there is nothing to pleat.
std::optional<Pleats> pleats_of(PlanParts& parts) {
    const Length taken = parts.plan.cloth->flat - parts.sizes.width;
    const Length hung = parts.sizes.width - parts.sizes.hangs_flat;
    if (taken.mm() <= whole_tolerance || hung.mm() <= whole_tolerance) {
        return std::nullopt;
    }
    Pleats pleats;
    pleats.each = pleats_in_each(parts, taken);
    pleats.pleat = taken / pleats.each;
    pleats.space = hung / (pleats.each - 1);
    const Length leading = flat_at_leading_edge(parts.layer, parts.sizes.hangs_flat);
    const Length trailing = parts.sizes.hangs_flat - leading;
    pleats.positions =
        evenly(leading + pleats.pleat / 2.0, parts.plan.cloth->flat - trailing - pleats.pleat / 2.0, pleats.each);
    trace_pleats(parts, pleats, taken);
    return pleats;
}

/// A hook behind each pleat and one at each edge that hangs flat beyond the last pleat (common practice, no source).
Hooks hooks_of(PlanParts& parts, const Pleats& pleats) {
    const Length leading = flat_at_leading_edge(parts.layer, parts.sizes.hangs_flat);
    const int edges =
        (leading.mm() > whole_tolerance ? 1 : 0) + ((parts.sizes.hangs_flat - leading).mm() > whole_tolerance ? 1 : 0);
    const Hooks hooks{pleats.each + edges, parts.layer.asked.curtains() * (pleats.each + edges), pleats.space};
    TraceOf(parts.findings, "hooks.each")
        .count("pleats", pleats.each, {"pleats.each"})
        .count("edges left flat", edges)
        .count("hooks in each", hooks.each);
    return hooks;
}

/// Along a gathering tape at most a gap apart, both ends included (common practice, no source).
Hooks hooks_along(PlanParts& parts) {
    const double gaps = std::max(1.0, ceil_whole(parts.sizes.width.mm() / parts.layer.rules.hook_gap));
    const int each = 1 + whole_count(gaps);
    const Hooks hooks{each, parts.layer.asked.curtains() * each, parts.sizes.width / (each - 1)};
    TraceOf(parts.findings, "hooks.each")
        .mm("finished width", parts.sizes.width, {"finished.width_mm"})
        .mm("largest gap", Length::mm(parts.layer.rules.hook_gap), {"rule hook_gap_mm"})
        .count("hooks in each", hooks.each);
    return hooks;
}

}  // namespace

void plan_pleats_and_hooks(PlanParts& parts) {
    const Heading heading = parts.layer.asked.heading;
    if (is_pleated(heading)) {
        parts.plan.making.pleats = pleats_of(parts);
        if (parts.plan.making.pleats) {
            parts.plan.making.hooks = hooks_of(parts, *parts.plan.making.pleats);
        }
    } else if (is_gathered_on_tape(heading)) {
        parts.plan.making.hooks = hooks_along(parts);
    }
}

}  // namespace truehang
