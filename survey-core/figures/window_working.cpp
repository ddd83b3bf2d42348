// SPDX-License-Identifier: Apache-2.0
#include "figures/window_working.h"

#include "cautions/cautions.h"
#include "figures/asked_next.h"
#include "units/rounding.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {

namespace {

Flag not_understood(const std::string& what, std::string layer = {}) {
    return {"not-understood",
            Severity::stop,
            {},
            fmt::format("“{}” isn’t understood by this version of the program. Use "
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

Finished reported(const FinishedSizes& sizes) {
    return {sizes.curtains, finished_to_mm(sizes.width), finished_to_mm(sizes.drop), sizes.width_u, sizes.drop_u};
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
    const std::string word = Word<Shape>::word_for(shape);
    if (asked.is_blind() && bent) {
        return fmt::format(
            "A blind can’t go round the shape “{}”: this version works none there. Measure each facet as a "
            "window of its own.",
            word);
    }
    if (asked.is_inside_blind() && pointed) {
        return fmt::format(
            "This version can’t work a blind inside the shape “{}”: its head isn’t level. Hang it outside, "
            "or choose curtains.",
            word);
    }
    if (asked.hang == Hang::head && pointed) {
        return fmt::format(
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
        const bool same_hang = asked->hang == leading_hang(window) || asked->is_inside_blind();
        const MeasuredWindow own =
            same_hang ? measured : measure(window, measured.shape, asked->hang, measured.tape, measured.entry_unit);
        const LayerContext context{room, window, own, rules, *asked};
        const FinishedSizes sizes = finish(context, findings);
        worked.drop_along = worked.drop_along ? worked.drop_along : sizes.drop_along;
        ClothPlan plan;
        if (sizes.can_be_made()) {
            plan = plan_cloth(context, sizes, fabrics, findings);
            figures.finished = reported(sizes);
            figures.covers_glass = glass_covered(context, sizes);
        }
        flag_clearances(context, sizes, findings);
        flag_cautions(context, sizes, plan, findings);
        pieces = std::move(plan.pieces);
        report_plan(std::move(plan), figures);
        return figures;
    }
};

/// Flags that only figures of the cloth give cause for.
constexpr std::array<std::string_view, 6> of_the_cloth{"fullness-range",     "on-the-edge",      "lining-hung",
                                                       "weights-not-needed", "load-over-rating", "heavy-curtain"};

/// Flags that stop the cutting stand before the figures they would spoil, and before what these gave cause to flag.
void withdraw_if_impossible(Findings& findings, LayerFigures& figures, std::vector<Piece>& pieces) {
    if (std::ranges::any_of(findings.flags, [](const Flag& flag) { return flag.severity == Severity::stop; })) {
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
            work_layers({survey, room, window, measured, rules}, worked);
        }
        report_leanings(measured, worked);
        ask_next(window, measured, worked.drop_along, figures);
    }
    if (!understood) {
        for (const Layer& layer : window.layers) {
            figures.layers.push_back(blank(layer.id));
        }
    }
    return worked;
}

}  // namespace truehang
