// SPDX-License-Identifier: Apache-2.0
#include "figures/fixed_pole.h"

#include "units/length_text.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <algorithm>

namespace truehang {

namespace {

constexpr double told_from_mm = 3.0;
constexpr double least_hem_mm = 40.0;

bool is_fixed(const Reading& reading) { return reading.stage && reading.stage->is(Stage::fixed); }
bool is_of_pole(const Reading& reading) { return reading.station.starts_with("pole."); }

/// What lies in the hem of cloth that was cut by the plan.
struct CutCloth {
    Length head, hem;   ///< as the house makes them
    Length after_wash;  ///< the cut drop less the print’s skew, shrunken
    Length hem_left;    ///< below the hem line, the head made as planned
    Length trim;        ///< above the head, where a repeat was cut to; may be cut off already
};

CutCloth cut_of(const LayerContext& layer, const FinishedSizes& now, const PlannedSizes& planned, const Fabric& face) {
    CutCloth cut;
    const bool blind = layer.asked.is_blind();
    cut.head = head_allowance(layer.asked.heading, layer.asked.diameter(), layer.rules);
    cut.hem = Length::mm(blind ? layer.rules.blind_hem : layer.rules.hem);
    const Length straight = planned.cloth.exact_cut_drop - face.skew.value_or(Length());
    cut.after_wash = straight * (1.0 - face.shrinkage_pct / 100.0);
    cut.hem_left = cut.hem - (now.drop - planned.sizes.drop);
    cut.trim = std::max(Length(), cut.after_wash - planned.sizes.drop - cut.head - cut.hem);
    return cut;
}

std::string what_to_change(const CutCloth& cut, Length longer, Length short_by, const Planned& planned,
                           LengthUnit unit) {
    const auto said = [unit](Length length) { return said_length(length, unit); };
    if (longer.mm() < 0.0) {
        return say("If the cloth is cut already, take the hem up by {}: {} of cloth is then in it.", said(-longer),
                   said(cut.hem_left));
    }
    if (!planned.short_by) {
        return say("If the cloth is cut already, let the hem down by {}: {} of cloth is then left in it.", said(longer),
                   said(cut.hem_left));
    }
    const double in_trim = (cut.hem_left + cut.trim).mm();
    if (cut.trim.mm() > 1.0 && in_trim >= least_hem_mm - whole_tolerance) {
        return say(
            "If the cloth is cut already, the hem can’t be let down by {} alone: only {} would be left "
            "in it. The {} cut for the repeat above the head make it up, if they are still there; else "
            "cut again.",
            said(longer), said(std::max(Length(), cut.hem_left)), said(cut.trim));
    }
    return say("If the cloth is cut already, its cut drop of {} is too short by {}: cut again.",
               said(*planned.cut_drop), said(short_by));
}

std::string moved_says(bool longer, const std::string& drop, const std::string& by) {
    return longer ? say("As it hangs the drop is {}, {} longer than planned.", drop, by)
                  : say("As it hangs the drop is {}, {} shorter than planned.", drop, by);
}

}  // namespace

std::optional<Window> as_planned(const Window& window) {
    const bool is_up =
        std::ranges::any_of(window.readings, [](const Reading& r) { return is_fixed(r) && is_of_pole(r); });
    if (!is_up) {
        return std::nullopt;
    }
    Window planned = window;
    std::erase_if(planned.readings, is_fixed);
    return planned;
}

bool waits_for_the_pole(const LayerContext& layer) {
    const auto& hardware = layer.asked.hardware;
    if (hardware == nullptr || !hardware->stage || !hardware->stage->is(Stage::fixed) ||
        layer.asked.is_inside_blind() || layer.asked.is_shaped()) {
        return false;
    }
    return std::ranges::none_of(layer.measured.readings,
                                [](const CountedReading& r) { return is_of_pole(*r.reading) && is_fixed(*r.reading); });
}

void flag_waiting_pole(const LayerContext& layer, Findings& findings) {
    if (!waits_for_the_pole(layer)) {
        return;
    }
    const auto planned =
        std::ranges::find_if(layer.measured.readings, [](const CountedReading& r) { return is_of_pole(*r.reading); });
    const bool pointed = layer.measured.shape == Shape::arch || layer.measured.shape == Shape::gable;
    findings.flag("pole-to-measure", Severity::remeasure,
                  say("It is up, and its height is still the planned one. Measure it again before the hem is made."),
                  {planned != layer.measured.readings.end() ? std::string(planned->station.word)
                   : pointed                                ? std::string("pole.above.centre")
                                                            : std::string("pole.above")});
}

Planned held_against_plan(const LayerContext& layer, const FinishedSizes& now, const PlannedSizes& planned,
                          const LayerFabrics& fabrics, Findings& findings) {
    Planned told{finished_to_mm(planned.sizes.width),
                 finished_to_mm(planned.sizes.drop),
                 now.drop - planned.sizes.drop,
                 std::nullopt,
                 std::nullopt,
                 std::nullopt,
                 {}};
    const bool moved = std::abs(told.longer.mm()) > told_from_mm + whole_tolerance;
    std::string change = say("If the cloth is cut already, make the hem by the new drop.");
    if (planned.cloth.cloth && fabrics.face != nullptr) {
        const CutCloth cut = cut_of(layer, now, planned, *fabrics.face);
        told.cut_drop = planned.cloth.cloth->cut_drop;
        told.hem_left = cut.hem_left;
        const double least = std::min(least_hem_mm, cut.hem.mm());
        const Length short_by =
            cut_up((now.drop + cut.head + cut.hem - cut.after_wash) / (1.0 - fabrics.face->shrinkage_pct / 100.0));
        if (cut.hem_left.mm() < least - whole_tolerance) {
            told.short_by = std::max(Length(), short_by);
        }
        change = what_to_change(cut, told.longer, short_by, told, layer.measured.entry_unit);
    }
    if (moved) {
        const auto said = [&layer](Length length) { return said_length(length, layer.measured.entry_unit); };
        told.says = moved_says(told.longer.mm() > 0.0, said(finished_to_mm(now.drop)),
                               said(Length::mm(std::abs(told.longer.mm())))) +
                    " " + change;
        findings.flag("pole-moved", Severity::decide, told.says,
                      layer.measured.plumb.way_between(now.drop_along->line, now.drop_along->from, now.drop_along->to));
    }
    return told;
}

}  // namespace truehang
