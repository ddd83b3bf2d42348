// SPDX-License-Identifier: Apache-2.0
#include "cloth/part.h"
#include "cloth/widths.h"
#include "cloth/wishes.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>

// Tabs, eyelets, corner weights and masses (trade rules, section 7), blinds' rods and pelmets (section 9).

namespace truehang {

namespace {

int next_odd(int count) { return count % 2 == 0 ? count + 1 : count; }
int next_even(int count) { return count % 2 == 0 ? count : count + 1; }

/// An unlined tab heading is faced with its own cloth.
void plan_facing(PlanParts& parts) {
    const bool lined = parts.fabrics.lining != nullptr || parts.fabrics.second_lining != nullptr;
    if (lined && !lining_is_separate(parts.layer.asked)) {
        return;
    }
    constexpr double turnings = 20.0;  // 10 mm at each edge (trade rules, section 7)
    const Fabric& fabric = *parts.fabrics.face;
    const Length deep = cut_up(before_shrinking(Length::mm(parts.layer.rules.facing + turnings), fabric.shrinkage_pct));
    const int widths = parts.plan.cloth->widths;
    parts.plan.pieces.push_back({fabric.id, "facing", deep, widths, widths * deep});
}

/// How the tabs lie in rows across the cloth.
struct TabRows {
    Length span;  ///< first tab's centre to the last one's
    Length row;
    int all = 0, per_row = 0, count = 0;
};

void trace_tabs(PlanParts& parts, const Tabs& tabs, const TabRows& rows) {
    TraceOf(parts.findings, "tabs.each")
        .mm("first centre to last", rows.span, {"cloth.flat_mm", "rule tab_width_mm"})
        .mm("largest spacing", Length::mm(parts.layer.rules.tab_gap), {"rule tab_gap_mm"})
        .count("tabs, one in the middle", tabs.each);
    TraceOf(parts.findings, "tabs.spacing_mm")
        .mm("first centre to last", rows.span, {"cloth.flat_mm", "rule tab_width_mm"})
        .count("spaces", tabs.each - 1)
        .mm("centre to centre", tabs.spacing);
    TraceOf(parts.findings, "tabs.hang_mm")
        .mm("cut length", tabs.cut_length)
        .mm("seam at each end", Length::mm(-2.0 * parts.layer.rules.tab_seam), {"rule tab_seam_mm"})
        .mm("hang", tabs.hang, {fmt::format("pole diameter {:g}", parts.layer.asked.diameter().mm())});
    TraceOf(parts.findings, "tabs.length_mm")
        .count("tabs in all", rows.all)
        .count("tabs in a row across the cloth", rows.per_row)
        .count("rows", rows.count)
        .mm("each row", rows.row, {fmt::format("shrinkage {:g} %", parts.fabrics.face->shrinkage_pct)})
        .mm("length", tabs.length);
}

}  // namespace

void plan_tabs(PlanParts& parts) {
    if (parts.layer.asked.heading != Heading::tab) {
        return;
    }
    const HouseRules& rules = parts.layer.rules;
    const Fabric& fabric = *parts.fabrics.face;
    const Length flat = parts.plan.cloth->flat;
    Tabs tabs;
    tabs.cut_length = parts.sizes.tab_cut;
    tabs.hang = parts.sizes.tab_hang;
    tabs.cut_width = Length::mm(2.0 * rules.tab_width + 2.0 * rules.tab_seam);
    const Length span = flat - Length::mm(rules.tab_width);
    const int per_row = static_cast<int>(floor_whole(usable_width(fabric) / tabs.cut_width));
    if (per_row < 1 || span.mm() <= 0.0) {
        parts.findings.flag("impossible", Severity::stop, say("A tab is wider than the cloth it is cut from."));
        return;
    }
    tabs.each = next_odd(1 + whole_count(ceil_whole(span.mm() / rules.tab_gap)));
    tabs.spacing = tabs.each > 1 ? span / (tabs.each - 1) : Length();
    tabs.positions = evenly(Length::mm(rules.tab_width / 2.0), flat - Length::mm(rules.tab_width / 2.0), tabs.each);
    const int all = parts.layer.asked.curtains() * tabs.each;
    const int rows = (all + per_row - 1) / per_row;
    const Length row = cut_up(before_shrinking(tabs.cut_length, fabric.shrinkage_pct));
    tabs.length = rows * row;
    trace_tabs(parts, tabs, {span, row, all, per_row, rows});
    parts.plan.pieces.push_back({fabric.id, "tabs", row, rows, tabs.length});
    plan_facing(parts);
    parts.plan.tabs = tabs;
}

void plan_eyelets(PlanParts& parts) {
    if (parts.layer.asked.heading != Heading::eyelet) {
        return;
    }
    constexpr double first = 50.0;  // first and last eyelet in from the edge (trade rules, section 7)
    const Length span = parts.plan.cloth->flat - Length::mm(2.0 * first);
    Eyelets eyelets;
    eyelets.each = std::max(2, next_even(whole_count(ceil_whole(1.0 + span.mm() / parts.layer.rules.eyelet_gap))));
    eyelets.spacing = span / (eyelets.each - 1);
    eyelets.first = Length::mm(first);
    eyelets.positions = evenly(eyelets.first, parts.plan.cloth->flat - Length::mm(first), eyelets.each);
    TraceOf(parts.findings, "eyelets.each")
        .mm("first centre to last", span, {"cloth.flat_mm"})
        .mm("largest spacing", Length::mm(parts.layer.rules.eyelet_gap), {"rule eyelet_gap_mm"})
        .count("eyelets, an even number", eyelets.each);
    TraceOf(parts.findings, "eyelets.spacing_mm")
        .mm("first centre to last", span, {"cloth.flat_mm"})
        .count("spaces", eyelets.each - 1)
        .mm("centre to centre", eyelets.spacing);
    parts.plan.eyelets = eyelets;
}

void plan_weights(PlanParts& parts) {
    const double k = parts.plan.cloth->widths_each;
    parts.plan.weights = Weights{1 + whole_count(ceil_whole(k / parts.layer.rules.weight_every))};
    TraceOf(parts.findings, "weights.each")
        .count("widths in each", k, {"cloth.widths_each"})
        .count("widths between weights", parts.layer.rules.weight_every, {"rule weight_every"})
        .count("weights in each", parts.plan.weights->each);
    if (parts.fabrics.interlining != nullptr) {
        parts.findings.flag("weights-not-needed", Severity::note,
                            say("A heavy interlined curtain hangs by its own weight: corner weights may be left out "
                                "(common practice, no source). They are counted here; say so if none are sewn in."));
    }
}

void plan_blind(PlanParts& parts) {
    const HouseRules& rules = parts.layer.rules;
    const Length folding = parts.sizes.drop - Length::mm(rules.blind_headrail);
    Blind blind;
    blind.rods = std::max(1, static_cast<int>(ceil_whole((folding.mm() / rules.blind_fold - 1.0) / 2.0)));
    blind.fold = folding / (2.0 * blind.rods + 1.0);
    blind.up = blind.fold + Length::mm(rules.blind_headrail);
    TraceOf(parts.findings, "blind.fold_mm")
        .mm("finished drop", parts.sizes.drop, {"finished.drop_mm"})
        .mm("headrail", Length::mm(-rules.blind_headrail), {"rule blind_headrail_mm"})
        .count("rods", blind.rods, {"rule blind_fold_mm"})
        .mm("fold", blind.fold);
    parts.plan.blind = blind;
}

void plan_pelmet(PlanParts& parts) {
    const auto& asked = parts.layer.asked.treatment->pelmet;
    const Hardware* hardware = parts.layer.asked.hardware;
    const auto along = parts.sizes.along || hardware == nullptr ? parts.sizes.along : hardware->length;
    if (!asked || !along) {
        return;
    }
    const HouseRules& rules = parts.layer.rules;
    const Fabric& fabric = *parts.fabrics.face;
    constexpr double end_turning = 40.0;  // at each end (trade rules, section 9)
    constexpr double turnings = 100.0;    // above and below
    PelmetFigures pelmet;
    pelmet.depth = asked->depth.value_or(Length::mm(round_to(rules.pelmet_share * parts.sizes.drop.mm(), 5.0)));
    pelmet.face = *along + Length::mm(2.0 * rules.pelmet_over);
    const Length needed = pelmet.face + 2.0 * asked->return_depth + Length::mm(2.0 * end_turning);
    const auto widths =
        least_widths(needed, {usable_width(fabric), joined_width(fabric)}, Length::mm(rules.seam), WidthStep::whole);
    if (!widths) {
        parts.findings.flag("impossible", Severity::stop, cant_be_joined(parts));
        return;
    }
    pelmet.widths = static_cast<int>(*widths);
    const DropPlan drops =
        plan_drops(pelmet.depth + Length::mm(turnings), pelmet.widths, fabric.repeat, match_of(fabric));
    pelmet.cut_drop = cut_up(drops.cut_drop);
    pelmet.length = cut_up(drops.total);
    TraceOf(parts.findings, "pelmet.depth_mm")
        .mm("finished drop", parts.sizes.drop, {"finished.drop_mm"})
        .mm("pelmet depth", pelmet.depth, {asked->depth ? "pelmet depth_mm" : "rule pelmet_share"});
    TraceOf(parts.findings, "pelmet.face_mm")
        .mm("hardware length", *along, {parts.sizes.run ? "run.length_mm" : "hardware length_mm"})
        .mm("past the hardware, both ends", Length::mm(2.0 * rules.pelmet_over), {"rule pelmet_over_mm"})
        .mm("pelmet face", pelmet.face);
    TraceOf(parts.findings, "pelmet.length_mm")
        .count("widths", pelmet.widths)
        .mm("cut depth", pelmet.cut_drop)
        .mm("length", pelmet.length);
    parts.plan.pieces.push_back({fabric.id, "pelmet", pelmet.cut_drop, pelmet.widths, drops.total,
                                 cut_up(pelmet.depth + Length::mm(turnings)), drops.repeats > 0.0});
    parts.plan.pelmet = pelmet;
}

void weigh(PlanParts& parts) {
    double grams = 0.0;
    const auto add = [&](const Fabric* fabric, int widths, Length drop) {
        if (fabric == nullptr) {
            return true;
        }
        if (!fabric->mass_gsm) {
            return false;
        }
        grams += widths * usable_width(*fabric).metres() * drop.metres() * *fabric->mass_gsm;
        return true;
    };
    const ClothPlan& plan = parts.plan;
    const bool known =
        add(parts.fabrics.face, plan.cloth->widths, plan.exact_cut_drop) &&
        (!plan.lining || add(parts.fabrics.lining, plan.lining->widths, plan.lining->cut_drop)) &&
        (!plan.interlining || add(parts.fabrics.interlining, plan.interlining->widths, plan.interlining->cut_drop)) &&
        (!plan.making.second_lining ||
         add(parts.fabrics.second_lining, plan.making.second_lining->widths, plan.making.second_lining->cut_drop));
    if (!known) {
        return;
    }
    const Hardware* hardware = parts.layer.asked.hardware;
    const bool three = hardware != nullptr && hardware->brackets.value_or(0) >= 3;
    const double share = parts.layer.asked.curtains() == 1 ? 1.0 : three ? 0.625 : 0.5;
    const bool weighed = hardware != nullptr && hardware->mass.has_value();
    const Mass own = weighed ? *hardware->mass : Mass();
    parts.plan.mass = Mass::kg(grams / 1000.0);
    parts.plan.bracket_mass = share * *parts.plan.mass + own;
    TraceOf(parts.findings, "mass_kg").count("kg of face, linings and interlining", parts.plan.mass->kg());
    TraceOf(parts.findings, "bracket_kg")
        .count("kg of cloth", parts.plan.mass->kg(), {"mass_kg"})
        .ratio("share on the worst bracket", share)
        .count(weighed ? "kg of hardware" : "kg of hardware: not known, weigh it", own.kg())
        .count("kg on the worst bracket", parts.plan.bracket_mass->kg());
}

}  // namespace truehang
