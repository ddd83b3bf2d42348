// SPDX-License-Identifier: Apache-2.0
#include "cloth/part.h"
#include "cloth/widths.h"
#include "units/rounding.h"
#include "units/saying.h"

// Tie-backs and holdbacks. Their height and their length by default are common practice, no source: a share of the drop
// below the top edge; once round the drawn-back curtain, taken as pressed flat (twice its stack), and an ease.

namespace truehang {

namespace {

std::optional<Length> height_of(PlanParts& parts, const TieBackAsked& asked) {
    if (asked.height) {
        return asked.height;
    }
    if (!parts.sizes.top) {
        return std::nullopt;
    }
    const Length down = parts.layer.rules.tie_back_share * parts.sizes.drop;
    const Length height = finished_to_mm(*parts.sizes.top - down);
    if (height.mm() <= 0.0) {
        return std::nullopt;
    }
    TraceOf(parts.findings, "tie_back.height_mm")
        .mm("top edge above the floor", *parts.sizes.top)
        .mm("down the drop", -down, {"finished.drop_mm", "rule tie_back_share"})
        .mm("above the floor", height);
    return height;
}

Length length_of(PlanParts& parts, const TieBackAsked& asked) {
    if (asked.length) {
        return *asked.length;
    }
    constexpr double step = 10.0;
    const Length round_stack = 2.0 * heading_rule(parts.layer.asked.heading).stack * parts.sizes.width;
    const Length ease = Length::mm(parts.layer.rules.tie_back_ease);
    const Length length = Length::mm(round_to((round_stack + ease).mm(), step));
    TraceOf(parts.findings, "tie_back.length_mm")
        .mm("once round the drawn-back curtain", round_stack, {"finished.width_mm"})
        .mm("ease", ease, {"rule tie_back_ease_mm"})
        .mm("length, to the nearest 10", length);
    return length;
}

/// Two pieces to each, lying across the cloth beside one another; along it where one is longer than the cloth is wide.
void cut_from_face(PlanParts& parts, TieBack& tie_back) {
    const Fabric& fabric = *parts.fabrics.face;
    const Length turns = Length::mm(2.0 * parts.layer.rules.tie_back_turn);
    tie_back.cut_length = cut_up(*tie_back.length + turns);
    tie_back.cut_width = cut_up(Length::mm(parts.layer.rules.tie_back_width) + turns);
    const Length usable = usable_width(fabric);
    const bool lies_across = tie_back.cut_length->mm() <= usable.mm() + whole_tolerance;
    const Length across = lies_across ? *tie_back.cut_length : *tie_back.cut_width;
    const Length along = lies_across ? *tie_back.cut_width : *tie_back.cut_length;
    const int in_row = across.mm() > 0.0 ? whole_count(floor_whole(usable / across)) : 0;
    if (in_row < 1) {
        parts.findings.flag("impossible", Severity::stop,
                            say("A tie-back is wider than the cloth it is cut from. Make it narrower."));
        return;
    }
    const int pieces = 2 * tie_back.count;
    const int rows = (pieces + in_row - 1) / in_row;
    const Length row = cut_up(before_shrinking(along, fabric.shrinkage_pct));
    TraceOf(parts.findings, "tie_back.cut_length_mm")
        .mm("length", *tie_back.length, {"tie_back.length_mm"})
        .mm("turnings", turns, {"rule tie_back_turn_mm"})
        .mm("cut length", *tie_back.cut_length);
    parts.plan.pieces.push_back({fabric.id, "tie-backs", row, rows, rows * row});
}

}  // namespace

void plan_tie_backs(PlanParts& parts) {
    const auto& asked = parts.layer.asked.treatment->tie_back;
    if (!asked) {
        return;
    }
    const bool is_holdback = asked->kind && asked->kind->is(TieBackKind::holdback);
    TieBack tie_back;
    tie_back.kind = Word<TieBackKind>::word_for(is_holdback ? TieBackKind::holdback : TieBackKind::tie_back);
    tie_back.count = parts.layer.asked.curtains();
    tie_back.height = height_of(parts, *asked);
    if (!is_holdback) {
        tie_back.length = length_of(parts, *asked);
        cut_from_face(parts, tie_back);
    }
    parts.plan.making.tie_back = std::move(tie_back);
}

}  // namespace truehang
