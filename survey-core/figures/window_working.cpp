// SPDX-License-Identifier: Apache-2.0
#include "figures/window_working.h"

#include "cautions/cautions.h"
#include "figures/agreement.h"
#include "figures/asked_next.h"
#include "figures/changed_twice.h"
#include "figures/fixed_pole.h"
#include "figures/layers_together.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {

namespace {

Flag not_understood(const std::string& what, std::string layer = {}) {
    return {"not-understood",
            Severity::stop,
            {},
            say("“{}” isn’t understood by this version of the program. Use "
                "a newer one, or measure it as something else.",
                what),
            "",
            std::move(layer),
            {}};
}

/// Words of the whole survey that every window rests on.
std::vector<std::string> unknown_in_survey(const Survey& survey) {
    std::vector<std::string> unknown = unknown_rules(survey.rules);
    if (survey.tape && survey.tape->accuracy && !survey.tape->accuracy->known()) {
        unknown.push_back(survey.tape->accuracy->text());
    }
    if (survey.entry_unit && !length_unit(*survey.entry_unit)) {
        unknown.push_back(*survey.entry_unit);
    }
    return unknown;
}

std::vector<Flag> unknown_in_readings(const Window& window) {
    std::vector<Flag> flags;
    const auto shape = window.shape.known();
    for (const Reading& reading : window.readings) {
        if (shape && !find_station(*shape, reading.station)) {
            flags.push_back(not_understood(reading.station));
            flags.back().stations.push_back(reading.station);
        }
        if (reading.how && !reading.how->known()) {
            flags.push_back(not_understood(reading.how->text()));
        }
        if (reading.stage && !reading.stage->known()) {
            flags.push_back(not_understood(reading.stage->text()));
        }
    }
    for (const Obstruction& obstruction : window.obstructions) {
        if (obstruction.kind && !obstruction.kind->known()) {
            flags.push_back(not_understood(obstruction.kind->text()));
            flags.back().obstruction = obstruction.id;
        }
    }
    return flags;
}

std::vector<Flag> unknown_in_fabrics(const LayerFabrics& fabrics) {
    std::vector<Flag> flags;
    for (const Fabric* fabric : {fabrics.face, fabrics.lining, fabrics.interlining, fabrics.second_lining}) {
        if (fabric != nullptr && fabric->match && !fabric->match->known()) {
            flags.push_back(not_understood(fabric->match->text()));
        }
    }
    return flags;
}

/// Power 0.80 at 0.001: the slip that is found in four of five cases is this many times its standard error
/// (J. Baarda 1968: the root of lambda 17.0746).
constexpr double detectable_w = 4.1321;

Check reported(const Network& network) {
    const Adjustment& adjusted = network.adjustment;
    const auto misclosure = network.misclosure();
    Check check{network.name,
                adjusted.redundancy,
                adjusted.chi2,
                network.limit,
                network.adds_up(),
                Length::mm(misclosure.is_angle ? 0.0 : misclosure.off_by),
                Length::mm(misclosure.is_angle ? 0.0 : misclosure.explained)};
    if (misclosure.is_angle) {
        check.off_by_angle = Angle::degrees(misclosure.off_by);
        check.explained_angle = Angle::degrees(misclosure.explained);
    }
    for (std::size_t i = 0; i < network.observations.size(); ++i) {
        const Observation& observation = network.observations[i];
        const double r = adjusted.redundancy_numbers[i];
        check.readings.push_back({observation.station, adjusted.residuals[i], r, adjusted.normalised[i],
                                  r > 0.0 ? detectable_w * observation.sigma / std::sqrt(r) : 0.0, 0.0});
    }
    return check;
}

void report_sizes(const MeasuredWindow& measured, WindowFigures& figures) {
    for (MeasuredSize& size : sizes_of(measured)) {
        figures.sizes.push_back(
            {std::move(size.name), size.estimate.value, size.estimate.u, std::move(size.estimate.rests_on)});
        if (size.angle) {
            figures.sizes.back().angle = size.angle->value;
            figures.sizes.back().angle_u = size.angle->u;
        }
    }
    figures.plan = measured.plan;
    figures.form = measured.spans.arch_form ? word_of(*measured.spans.arch_form) : "";
    for (const Network& network : measured.networks) {
        figures.checks.push_back(reported(network));
    }
    if (measured.photo_check) {
        figures.checks.push_back(reported(*measured.photo_check));
    }
}

/// How far a slip that just isn't found would move the finished drop.
void report_leanings(const MeasuredWindow& measured, WorkedWindow& worked) {
    if (!worked.drop_along) {
        return;
    }
    for (const Share& share : measured.plumb.shares(*worked.drop_along)) {
        for (Check& check : worked.figures.checks) {
            for (CheckedReading& reading : check.readings) {
                if (reading.station == share.station && check.network.starts_with("plumb")) {
                    reading.moves_drop = std::abs(share.share) * reading.least_slip;
                }
            }
        }
    }
}

/// A layer of which nothing is worked.
LayerFigures blank(const std::string& id) {
    LayerFigures figures;
    figures.id = id;
    return figures;
}

/// The curtains of a pair that hang at a plumb line: the outer edges at the left and the right one, where they meet in
/// the centre.
std::vector<std::string> curtains_at(Line line, int curtains) {
    if (curtains != 2) {
        return {};
    }
    return line == Line::left    ? std::vector<std::string>{"left"}
           : line == Line::right ? std::vector<std::string>{"right"}
                                 : std::vector<std::string>{"left", "right"};
}

Finished reported(const FinishedSizes& sizes) {
    Finished finished{
        sizes.curtains, finished_to_mm(sizes.width), finished_to_mm(sizes.drop), sizes.width_u, sizes.drop_u, {},
        std::nullopt};
    for (const LineDrop& at : sizes.line_drops) {
        finished.drops.push_back(
            {std::string(word_of(at.line)), finished_to_mm(at.drop), at.drop_u, curtains_at(at.line, sizes.curtains)});
    }
    return finished;
}

/// The points between two of an edge, none where no chord lies more than a quarter of a millimetre off on the table.
void bend(const ShapedTop& top, Length from, const TopPoint& left, const TopPoint& right, int depth,
          std::vector<TopPoint>& outline) {
    const Length hung = (left.hung + right.hung) / 2.0;
    const TopPoint middle{hung, (left.flat + right.flat) / 2.0, top.drop_at(from + hung)};
    const double across = (right.flat - left.flat).mm();
    const double up = (right.drop - left.drop).mm();
    const double off = across * ((middle.drop - left.drop).mm() - up / 2.0) / std::hypot(across, up);
    if (depth == 0 || !(std::abs(off) > 0.25)) {
        return;
    }
    bend(top, from, left, middle, depth - 1, outline);
    outline.push_back(middle);
    bend(top, from, middle, right, depth - 1, outline);
}

/// An edge every 10 mm, and closer where it bends more.
std::vector<TopPoint> outline_of(const ShapedTop& top, Length from, const std::vector<TopPoint>& points) {
    std::vector<TopPoint> outline;
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (i > 0) {
            bend(top, from, points[i - 1], points[i], 8, outline);
        }
        outline.push_back(points[i]);
    }
    return outline;
}

/// The shaped tops of a layer's curtains, from left to right.
std::vector<CurtainTop> tops_of(const FinishedSizes& sizes, const std::optional<Cloth>& cloth) {
    const Length table_step = Length::mm(100.0);
    const Length outline_step = Length::mm(10.0);
    std::vector<CurtainTop> tops;
    for (int i = 0; sizes.shaped && i < sizes.curtains; ++i) {
        const Length from = i * sizes.width;
        const double fullness = cloth && sizes.width.mm() > 0.0 ? cloth->flat / sizes.width : 1.0;
        const auto points = [&](Length step) {
            return top_points(*sizes.shaped, from, from + sizes.width, fullness, step);
        };
        tops.push_back({sizes.curtains == 1 ? "single"
                        : i == 0            ? "left"
                                            : "right",
                        points(table_step), outline_of(*sizes.shaped, from, points(outline_step))});
    }
    return tops;
}

void report_run(const FinishedSizes& sizes, const LayerAsked& asked, LayerFigures& figures) {
    figures.run = sizes.run;
    figures.has_joints = sizes.run && asked.hardware_kind == HardwareKind::pole;
}

void report_plan(ClothPlan plan, LayerFigures& figures) {
    figures.cloth = std::move(plan.cloth);
    figures.lining = std::move(plan.lining);
    figures.interlining = std::move(plan.interlining);
    figures.tabs = std::move(plan.tabs);
    figures.eyelets = std::move(plan.eyelets);
    figures.weights = plan.weights;
    figures.blind = plan.blind;
    figures.pelmet = plan.pelmet;
    figures.mass = plan.mass;
    figures.bracket_mass = plan.bracket_mass;
    figures.making = std::move(plan.making);
}

/// Why this version doesn't work what hangs there on a window of this shape; nothing where it does.
std::optional<std::string> refusal(const LayerAsked& asked, Shape shape) {
    const bool bent = shape == Shape::bay || shape == Shape::corner;
    const bool pointed = shape == Shape::arch || shape == Shape::gable;
    const std::string word = worded(Word<Shape>::word_for(shape));
    if (asked.is_blind() && bent) {
        return say(
            "One blind can’t go round the corners of the shape “{}”. Measure each facet as a window of its own, each "
            "with a blind, and leave room at the corners for both to draw up.",
            word);
    }
    if (asked.is_inside_blind() && pointed) {
        return say(
            "A blind can’t draw up inside the shape “{}”: its head isn’t level. Hang it outside, or choose curtains, "
            "straight across or with a shaped top.",
            word);
    }
    if (asked.hang == Hang::head && pointed && !asked.is_shaped()) {
        return say(
            "Hardware can’t run parallel to the head of the shape “{}”. Say that it hangs level, or parallel "
            "to the ceiling.",
            word);
    }
    return std::nullopt;
}

/// One layer, worked for itself: its heights are adjusted for what its own hardware runs parallel to.
struct LayerWorking {
    const Survey& survey;
    const Room& room;
    const Window& window;
    const MeasuredWindow& measured;
    const HouseRules& rules;
    std::vector<StandingLayer>& standing;  ///< every layer that was worked, from glass to room

    LayerFigures work(const Layer& layer, Findings& findings, WorkedWindow& worked, std::vector<Piece>& pieces) const {
        LayerFigures figures = blank(layer.id);
        const auto asked = asked_of(layer);
        if (!asked) {
            return figures;
        }
        if (const auto why = refusal(*asked, measured.shape)) {
            findings.flag("not-understood", Severity::stop, *why);
            return figures;
        }
        const LayerFabrics fabrics = fabrics_of(*layer.treatment, survey.fabrics);
        if (auto unknown = unknown_in_fabrics(fabrics); !unknown.empty()) {
            findings.flags = std::move(unknown);
            return figures;
        }
        const auto own = hung_apart(*asked);
        const LayerContext context{room, window, own ? *own : measured, rules, *asked};
        const FinishedSizes sizes = finish(context, findings);
        worked.drop_along = worked.drop_along ? worked.drop_along : sizes.drop_along;
        ClothPlan plan;
        if (sizes.can_be_made()) {
            plan = plan_cloth(context, sizes, fabrics, findings);
            figures.finished = reported(sizes);
            figures.covers_glass = glass_covered(context, sizes);
            figures.tops = tops_of(sizes, plan.cloth);
            if (const auto before = planned(*asked, fabrics)) {
                figures.finished->planned = held_against_plan(context, sizes, *before, fabrics, findings);
            }
        }
        flag_clearances(context, sizes, findings);
        flag_cautions(context, sizes, plan, findings);
        flag_waiting_pole(context, findings);
        report_run(sizes, *asked, figures);
        standing.push_back(standing_of(context, sizes, plan.blind ? &*plan.blind : nullptr,
                                       static_cast<std::size_t>(&layer - window.layers.data()) + 1, layer.id,
                                       findings));
        pieces = std::move(plan.pieces);
        report_plan(std::move(plan), figures);
        return figures;
    }

    /// The window measured for the layer's own hang, where that isn't the one that it was measured for.
    [[nodiscard]] std::optional<MeasuredWindow> hung_apart(const LayerAsked& asked) const {
        if (asked.hang == leading_hang(window) || asked.is_inside_blind()) {
            return std::nullopt;
        }
        return measure(window, measured.shape, asked.hang, measured.tape, measured.entry_unit);
    }

    /// The layer as it was planned, where its pole has been measured again since; nothing where that can't be made.
    [[nodiscard]] std::optional<PlannedSizes> planned(const LayerAsked& asked, const LayerFabrics& fabrics) const {
        const auto before = as_planned(window);
        if (!before || asked.is_inside_blind() || asked.is_shaped()) {
            return std::nullopt;
        }
        const MeasuredWindow was = measure(*before, measured.shape, asked.hang, measured.tape, measured.entry_unit);
        const LayerContext context{room, *before, was, rules, asked};
        Findings aside;
        PlannedSizes planned{finish(context, aside), {}};
        if (!planned.sizes.can_be_made()) {
            return std::nullopt;
        }
        planned.cloth = plan_cloth(context, planned.sizes, fabrics, aside);
        return planned;
    }
};

/// Flags that only figures of the cloth give cause for.
constexpr std::array<std::string_view, 7> of_the_cloth{"fullness-range", "pole-moved",         "on-the-edge",
                                                       "lining-hung",    "weights-not-needed", "load-over-rating",
                                                       "heavy-curtain"};

/// Flags that stop the cutting stand before the figures they would spoil, and before what these gave cause to flag.
void withdraw_if_impossible(Findings& findings, LayerFigures& figures, std::vector<Piece>& pieces) {
    if (findings.stops()) {
        figures = blank(figures.id);
        pieces.clear();
        std::erase_if(findings.flags, [](const Flag& flag) {
            return std::ranges::find(of_the_cloth, flag.code) != of_the_cloth.end();
        });
    }
}

void work_layers(const LayerWorking& working, WorkedWindow& worked) {
    for (const Layer& layer : working.window.layers) {
        Findings findings;
        std::vector<Piece> pieces;
        for (const std::string& word : unknown_words(layer)) {
            findings.flags.push_back(not_understood(word));
        }
        LayerFigures figures = blank(layer.id);
        if (findings.flags.empty()) {
            figures = working.work(layer, findings, worked, pieces);
        }
        withdraw_if_impossible(findings, figures, pieces);
        for (Flag& flag : findings.flags) {
            flag.layer = working.window.layered ? layer.id : "";
            worked.figures.flags.push_back(std::move(flag));
        }
        for (Trace& trace : findings.trace) {
            trace.layer = working.window.layered ? layer.id : "";
            worked.figures.trace.push_back(std::move(trace));
        }
        worked.figures.layers.push_back(std::move(figures));
        worked.pieces.push_back({layer.id, std::move(pieces)});
    }
}

}  // namespace

WorkedWindow work_window(const Survey& survey, const Room& room, const Window& window) {
    WorkedWindow worked;
    WindowFigures& figures = worked.figures;
    figures.id = window.id;
    figures.room = room.id;
    figures.layered = window.layered;
    for (const std::string& word : unknown_in_survey(survey)) {
        figures.flags.push_back(not_understood(word));
    }
    const auto shape = window.shape.known();
    if (!shape) {
        figures.flags.push_back(not_understood(window.shape.text()));
    }
    std::ranges::move(unknown_in_readings(window), std::back_inserter(figures.flags));
    const bool understood = figures.flags.empty();
    if (shape) {
        const HouseRules rules = house_rules(survey.rules);
        const auto unit = length_unit(survey.entry_unit.value_or("mm")).value_or(LengthUnit::mm);
        const MeasuredWindow measured = measure(window, *shape, leading_hang(window), tape_rule(survey, rules), unit);
        report_sizes(measured, figures);
        std::ranges::copy(measured.flags, std::back_inserter(figures.flags));
        if (understood) {
            std::vector<StandingLayer> standing;
            work_layers({survey, room, window, measured, rules, standing}, worked);
            std::ranges::move(layer_flags(standing, unit), std::back_inserter(figures.flags));
        }
        report_leanings(measured, worked);
        ask_next(window, measured, worked.drop_along, figures);
    }
    if (!understood) {
        for (const Layer& layer : window.layers) {
            figures.layers.push_back(blank(layer.id));
        }
    }
    std::ranges::move(agreement_flags(survey, room, window, worked), std::back_inserter(figures.flags));
    std::ranges::move(changed_twice_flags(survey, window), std::back_inserter(figures.flags));
    return worked;
}

}  // namespace truehang
