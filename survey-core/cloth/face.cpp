// SPDX-License-Identifier: Apache-2.0
#include "cloth/part.h"
#include "cloth/widths.h"
#include "cloth/wishes.h"
#include "units/length_text.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

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

UsableAcross usable_across(const Fabric& fabric) { return {usable_width(fabric), joined_width(fabric)}; }

/// What the cloth is worked for: the layer's sizes and fullness as they stand, or a little changed.
struct Wanted {
    Length width, drop;
    double fullness;
};

Wanted as_it_stands(const PlanParts& parts) {
    return {parts.sizes.width, parts.sizes.drop, parts.layer.asked.fullness};
}

std::optional<double> widths_for(const PlanParts& parts, const Wanted& wanted) {
    return least_widths(needed_for_width(parts, wanted.width, wanted.fullness), usable_across(*parts.fabrics.face),
                        Length::mm(parts.layer.rules.seam), step_of(parts.layer));
}

/// All the cloth that one drop takes before repeats, for a finished drop.
Length length_of_drop(const PlanParts& parts, Length drop) {
    const HouseRules& rules = parts.layer.rules;
    const Length head = head_allowance(parts.layer.asked.heading, parts.layer.asked.diameter(), rules);
    const Length hem = Length::mm(parts.layer.asked.is_blind() ? rules.blind_hem : rules.hem);
    const Fabric& fabric = *parts.fabrics.face;
    return before_shrinking(drop + head + hem, fabric.shrinkage_pct) + fabric.skew.value_or(Length());
}

bool may_be_turned(const Fabric& fabric) { return fabric.railroad.value_or(false) && !fabric.one_way.value_or(false); }

/// Cloth turned sideways: its width makes the drop, without repeat.
std::optional<Length> railroaded(const PlanParts& parts, const Wanted& wanted, Length least_drop, Length upright) {
    const Fabric& fabric = *parts.fabrics.face;
    if (parts.layer.asked.is_blind() || !may_be_turned(fabric) ||
        usable_width(fabric).mm() < least_drop.mm() - whole_tolerance) {
        return std::nullopt;
    }
    const Length one = wanted.fullness * wanted.width + Length::mm(2.0 * parts.layer.rules.side_turn);
    const Length total = cut_up(before_shrinking(parts.layer.asked.curtains() * one, fabric.shrinkage_pct));
    return total < upright ? std::optional(total) : std::nullopt;
}

/// The cloth for what is wanted, and how its drops lie along the roll.
struct WorkedFace {
    Cloth cloth;
    DropPlan drops;
};

std::optional<WorkedFace> work_face(const PlanParts& parts, const Wanted& wanted) {
    const auto widths_each = widths_for(parts, wanted);
    if (!widths_each) {
        return std::nullopt;
    }
    const Fabric& fabric = *parts.fabrics.face;
    const Length seam = Length::mm(parts.layer.rules.seam);
    const bool blind = parts.layer.asked.is_blind();
    WorkedFace worked;
    Cloth& cloth = worked.cloth;
    cloth.fabric = fabric.id;
    cloth.one_way = fabric.one_way.value_or(false);
    cloth.widths_each = *widths_each;
    cloth.widths = static_cast<int>(ceil_whole(parts.layer.asked.curtains() * *widths_each));
    if (blind) {
        const Length turn = Length::mm(parts.layer.rules.blind_side);
        cloth.flat = wanted.width + 2.0 * turn;
        cloth.joins = blind_joins(*widths_each, joined_width(fabric), seam, wanted.width, turn);
    } else {
        const Length turn = Length::mm(parts.layer.rules.side_turn);
        cloth.flat = across(*widths_each, usable_across(fabric), seam) - 2.0 * turn;
        cloth.fullness = (cloth.flat - parts.sizes.hangs_flat) / (wanted.width - parts.sizes.hangs_flat);
        cloth.joins = curtain_joins(*widths_each, joined_width(fabric), seam, turn);
    }
    const Length least = length_of_drop(parts, wanted.drop);
    worked.drops = plan_drops(least, cloth.widths, fabric.repeat, match_of(fabric));
    cloth.cut_drop = cut_up(worked.drops.cut_drop);
    cloth.length = cut_up(worked.drops.total);
    cloth.repeats = worked.drops.repeats;
    cloth.railroaded = railroaded(parts, wanted, least, cloth.length);
    return worked;
}

bool same(double one, double other) { return std::abs(one - other) < whole_tolerance; }

bool was_decided(const std::optional<double>& decided, double cut) { return decided && same(*decided, cut); }

const Decided& decided(const PlanParts& parts) {
    static const Decided nothing;
    const auto& asked = parts.layer.asked.treatment->decided;
    return asked ? *asked : nothing;
}

/// The usable width, and what of it is used where joins must match.
void trace_usable(const Fabric& fabric, double widths_each, TraceOf& trace) {
    const Length usable = usable_width(fabric);
    trace.mm("usable width of the cloth", usable, {"fabric width_mm", "fabric selvedge_mm"});
    const Length repeat = fabric.repeat_across.value_or(Length());
    if (repeat.mm() <= 0.0) {
        return;
    }
    const std::vector<std::string> from{fmt::format(to_say("repeat across {}"), fmt::format("{:g}", repeat.mm()))};
    if (widths_each <= 1.0) {
        trace.mm("no join to match: all of it is used", usable, from);
    } else if (fabric.match && fabric.match->is(Match::none)) {
        trace.mm("nothing is matched: all of it is used", usable, {"fabric match"});
    } else {
        trace.count("whole repeats across, where widths are joined", floor_whole(usable / repeat), from)
            .mm("used of each width", joined_width(fabric));
    }
}

void trace_joins(PlanParts& parts, const Cloth& cloth) {
    if (cloth.joins.empty()) {
        return;
    }
    const bool blind = parts.layer.asked.is_blind();
    TraceOf trace(parts.findings, "cloth.joins_mm");
    trace.mm("used of each width", joined_width(*parts.fabrics.face), {"cloth.widths_each"})
        .mm("seams", Length::mm(-2.0 * parts.layer.rules.seam), {"rule seam_mm"})
        .mm("side turn", Length::mm(blind ? parts.layer.rules.blind_side : parts.layer.rules.side_turn),
            {blind ? "rule blind_side_mm" : "rule side_turn_mm"})
        .mm(blind ? "first join from the left edge" : "first join from the leading edge, a full width",
            cloth.joins.front());
    if (cloth.joins.size() > 1) {
        trace.mm(blind ? "last join from the left edge" : "last join from the leading edge", cloth.joins.back());
    }
}

void trace_widths(PlanParts& parts, const Cloth& cloth) {
    const HouseRules& rules = parts.layer.rules;
    const Fabric& fabric = *parts.fabrics.face;
    const double joins = ceil_whole(cloth.widths_each) - 1.0;
    {
        TraceOf widths(parts.findings, "cloth.widths_each");
        trace_usable(fabric, cloth.widths_each, widths);
        widths
            .mm("needed across", needed_for_width(parts, parts.sizes.width, parts.layer.asked.fullness),
                {"finished.width_mm",
                 parts.layer.asked.is_blind() ? std::string("rule blind_side_mm") : std::string(to_say("fullness"))})
            .count(was_decided(decided(parts).widths_each, cloth.widths_each) ? "widths in each, as was decided"
                                                                              : "widths in each",
                   cloth.widths_each);
    }
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
            .mm("widths joined", cloth.widths_each * (joins > 0.0 ? joined_width(fabric) : usable_width(fabric)),
                {"cloth.widths_each"})
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

void trace_drops(PlanParts& parts, const Cloth& cloth, const DropPlan& drops, Length cut_for) {
    const Fabric& fabric = *parts.fabrics.face;
    const HouseRules& rules = parts.layer.rules;
    const Length head = head_allowance(parts.layer.asked.heading, parts.layer.asked.diameter(), rules);
    const Length hem = Length::mm(parts.layer.asked.is_blind() ? rules.blind_hem : rules.hem);
    const Length least = length_of_drop(parts, cut_for);
    const Length skew = fabric.skew.value_or(Length());
    TraceOf cut(parts.findings, "cloth.cut_drop_mm");
    cut.mm("finished drop", parts.sizes.drop, {"finished.drop_mm"});
    if (cut_for != parts.sizes.drop) {
        cut.mm("drop that it is cut for, as was decided", cut_for, {"repeats decided"});
    }
    cut.mm("head", head, {"rule head_mm"})
        .mm("hem", hem, {parts.layer.asked.is_blind() ? "rule blind_hem_mm" : "rule hem_mm"})
        .mm("before shrinkage", cut_for + head + hem);
    if (fabric.shrinkage_pct > 0.0) {
        cut.mm("with shrinkage", least - skew, {fmt::format("shrinkage {:g} %", fabric.shrinkage_pct)});
    }
    if (skew.mm() > 0.0) {
        cut.mm("skew of the print over a width", skew, {"fabric skew_mm"}).mm("cut straight to the print", least);
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
        parts.findings.flag("fullness-range", Severity::decide,
                            say("The curtains come to {:.2f} × fullness; this heading wants {:g} to {:g}. Change "
                                "the fullness, the pole or the cloth, or say that it is meant.",
                                fullness, rule.least, rule.most));
    }
}

/// Another thing that may turn out to be so, and how it is said.
struct Other {
    Wanted wanted;
    std::string when;
};

std::string width_says(bool less, const std::string& by) {
    return less ? say("the width is {} less", by) : say("the width is {} more", by);
}

std::string drop_says(bool less, const std::string& by) {
    return less ? say("the drop is {} less", by) : say("the drop is {} more", by);
}

/// The widths and fullnesses near by; of each kind the first counts that takes another number of widths.
std::array<std::vector<Other>, 2> other_widths(const PlanParts& parts) {
    const Wanted wanted = as_it_stands(parts);
    const Length twice = 2.0 * parts.sizes.width_u;
    std::array<std::vector<Other>, 2> others;
    for (const double sign : {-1.0, 1.0}) {
        if (twice.mm() > 0.0) {
            others[0].push_back({{wanted.width + sign * twice, wanted.drop, wanted.fullness},
                                 width_says(sign < 0, said_length(twice, parts.layer.measured.entry_unit))});
        }
    }
    for (const double change : {-0.05, 0.05}) {
        if (!parts.layer.asked.is_blind()) {
            others[1].push_back(
                {{wanted.width, wanted.drop, wanted.fullness + change},
                 say("{:.2f} × fullness is asked instead of {:.2f} ×", wanted.fullness + change, wanted.fullness)});
        }
    }
    return others;
}

/// The drops near by.
std::vector<Other> other_drops(const PlanParts& parts) {
    const Wanted wanted = as_it_stands(parts);
    const Length twice = 2.0 * parts.sizes.drop_u;
    std::vector<Other> others;
    for (const double sign : {-1.0, 1.0}) {
        others.push_back({{wanted.width, wanted.drop + sign * twice, wanted.fullness},
                          drop_says(sign < 0, said_length(twice, parts.layer.measured.entry_unit))});
    }
    return others;
}

/// What the cloth is cut for: as the readings have it, or as was decided, where that is one of the answers.
Wanted as_decided(const PlanParts& parts, const WorkedFace& stands) {
    Wanted wanted = as_it_stands(parts);
    const Decided& chosen = decided(parts);
    if (chosen.widths_each && !was_decided(chosen.widths_each, stands.cloth.widths_each)) {
        for (const auto& kind : other_widths(parts)) {
            const auto other = std::ranges::find_if(kind, [&](const Other& one) {
                return was_decided(chosen.widths_each, widths_for(parts, one.wanted).value_or(0.0));
            });
            if (other != kind.end()) {
                wanted.width = other->wanted.width;
                wanted.fullness = other->wanted.fullness;
                break;
            }
        }
    }
    if (chosen.repeats && !was_decided(chosen.repeats, stands.drops.repeats)) {
        for (const Other& other : other_drops(parts)) {
            const auto worked = work_face(parts, other.wanted);
            if (worked && was_decided(chosen.repeats, worked->drops.repeats)) {
                wanted.drop = other.wanted.drop;
                break;
            }
        }
    }
    return wanted;
}

/// The cloth as it is cut; the fullness that it reaches is that of the finished width.
WorkedFace cut_as_decided(const PlanParts& parts, const Wanted& wanted, WorkedFace stands) {
    auto worked = work_face(parts, wanted);
    if (!worked) {
        return stands;
    }
    Cloth& cloth = worked->cloth;
    if (cloth.fullness) {
        cloth.fullness = (cloth.flat - parts.sizes.hangs_flat) / (parts.sizes.width - parts.sizes.hangs_flat);
    }
    cloth.railroaded = stands.cloth.railroaded;
    return std::move(*worked);
}

ClothEdge edge_of(const WorkedFace& other, std::string when, bool of_repeats) {
    ClothEdge edge;
    edge.when = std::move(when);
    if (of_repeats) {
        edge.repeats = other.drops.repeats;
    }
    edge.widths_each = other.cloth.widths_each;
    edge.widths = other.cloth.widths;
    edge.cut_drop = other.cloth.cut_drop;
    edge.length = other.cloth.length;
    edge.railroaded = other.cloth.railroaded;
    return edge;
}

std::string as_read() { return say("it is cut as the readings have it"); }

/// Says one edge: what is cut, and the other answer; whether it was decided. Of a decided one that is the answer that
/// was left.
void say_edge(PlanParts& parts, Cloth& cloth, ClothEdge other, bool is_decided, const std::string& text,
              std::vector<std::string> stations = {}) {
    const auto again = [&](const ClothEdge& said) {
        return said.when == other.when && same(said.widths_each, other.widths_each) && said.repeats == other.repeats;
    };
    if (std::ranges::any_of(cloth.edges, again)) {
        return;
    }
    cloth.edges.push_back(std::move(other));
    if (is_decided) {
        parts.findings.flag("edge-decided", Severity::note, text + ".", std::move(stations));
    } else {
        parts.findings.flag("on-the-edge", Severity::decide, text + ". " + say("Decide before the cloth is ordered."),
                            std::move(stations));
    }
}

/// Flags where another width or fullness would take another number of widths, and keeps that other answer.
void flag_width_edge(PlanParts& parts, const WorkedFace& stands, Cloth& cloth) {
    const bool is_decided = was_decided(decided(parts).widths_each, cloth.widths_each);
    for (const auto& kind : other_widths(parts)) {
        for (const auto& [wanted, when] : kind) {
            const auto worked = work_face(parts, wanted);
            if (!worked || worked->cloth.widths_each == stands.cloth.widths_each) {
                continue;
            }
            const bool is_taken = same(worked->cloth.widths_each, cloth.widths_each);
            const WorkedFace& left = is_taken ? stands : *worked;
            const std::string then = is_taken ? as_read() : when;
            say_edge(parts, cloth, edge_of(left, then, false), is_decided,
                     is_decided ? say("{:g} widths in each as was decided; {:g} if {}", cloth.widths_each,
                                      left.cloth.widths_each, then)
                                : say("{:g} widths in each as it stands; {:g} if {}", cloth.widths_each,
                                      left.cloth.widths_each, then));
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

/// Flags where another drop would take other repeats, or change whether the cloth can lie sideways.
void flag_drop_edge(PlanParts& parts, const WorkedFace& stands, const DropPlan& drops, Cloth& cloth) {
    const Fabric& fabric = *parts.fabrics.face;
    const auto fits_sideways = [&](Length drop) {
        return length_of_drop(parts, drop).mm() <= usable_width(fabric).mm() + whole_tolerance;
    };
    const bool is_decided = was_decided(decided(parts).repeats, drops.repeats);
    const bool turned = fits_sideways(parts.sizes.drop);
    for (const auto& [wanted, when] : other_drops(parts)) {
        const auto other = work_face(parts, wanted);
        if (other && other->drops.repeats != stands.drops.repeats) {
            const bool is_taken = same(other->drops.repeats, drops.repeats);
            const WorkedFace& left = is_taken ? stands : *other;
            const std::string then = is_taken ? as_read() : when;
            say_edge(
                parts, cloth, edge_of(left, then, true), is_decided,
                is_decided
                    ? say("{:g} repeats in a drop as was decided; {:g} if {}", drops.repeats, left.drops.repeats, then)
                    : say("{:g} repeats in a drop as it stands; {:g} if {}", drops.repeats, left.drops.repeats, then),
                stations_of_drop(parts));
            return;
        }
        const bool turned_then = fits_sideways(wanted.drop);
        if (other && may_be_turned(fabric) && !parts.layer.asked.is_blind() && turned_then != turned) {
            say_edge(parts, cloth, edge_of(*other, when, false), false,
                     turned ? say("The cloth can be turned sideways as it stands; it couldn’t if {}", when)
                            : say("The cloth can’t be turned sideways as it stands; it could if {}", when),
                     stations_of_drop(parts));
            return;
        }
    }
}

}  // namespace

bool plan_face(PlanParts& parts) {
    const auto stands = work_face(parts, as_it_stands(parts));
    if (!stands) {
        parts.findings.flag("impossible", Severity::stop, cant_be_joined(parts));
        return false;
    }
    const Wanted wanted = as_decided(parts, *stands);
    WorkedFace worked = cut_as_decided(parts, wanted, *stands);
    Cloth& cloth = worked.cloth;
    const DropPlan& drops = worked.drops;
    if (cloth.fullness) {
        flag_fullness(parts, *cloth.fullness);
    }
    trace_widths(parts, cloth);
    trace_joins(parts, cloth);
    trace_drops(parts, cloth, drops, wanted.drop);
    flag_width_edge(parts, *stands, cloth);
    flag_drop_edge(parts, *stands, drops, cloth);
    parts.plan.pieces.push_back({cloth.fabric, "drops", cloth.cut_drop, cloth.widths, drops.total - drops.beside,
                                 cut_up(length_of_drop(parts, wanted.drop)), drops.repeats > 0.0});
    parts.plan.exact_cut_drop = drops.cut_drop;
    if (drops.beside.mm() > 0.0) {
        parts.plan.pieces.push_back({cloth.fabric, "half repeat", cut_up(drops.beside), 1, drops.beside});
    }
    parts.plan.cloth = std::move(cloth);
    return true;
}

}  // namespace truehang
