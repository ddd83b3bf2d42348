// SPDX-License-Identifier: Apache-2.0
#include "sizing/finish.h"

#include "units/length_text.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <numbers>

namespace truehang {

namespace {

constexpr double told_from_mm = 10.0;

bool hangs_from_sill(HemAt hem_at) { return hem_at == HemAt::sill || hem_at == HemAt::below_sill; }

PlumbMark base_of(HemAt hem_at) { return hangs_from_sill(hem_at) ? PlumbMark::sill : PlumbMark::floor; }

/// The hem over what it hangs from, with the name of the rule it comes from.
struct Hem {
    Length over_base;
    std::string what;
    std::string from;
};

std::optional<Hem> hem_of(const LayerContext& layer) {
    const HouseRules& rules = layer.rules;
    switch (layer.asked.hem_at) {
        case HemAt::floor:
            return Hem{Length::mm(rules.floor_clearance), std::string(to_say("floor clearance")),
                       "rule floor_clearance_mm"};
        case HemAt::sill:
            return Hem{Length::mm(rules.sill_clearance), std::string(to_say("sill clearance")),
                       "rule sill_clearance_mm"};
        case HemAt::below_sill:
            return Hem{Length::mm(-rules.apron), std::string(to_say("below the sill")), "rule apron_mm"};
        case HemAt::break_:
            return Hem{Length::mm(-rules.break_on_floor), std::string(to_say("lies on the floor")), "rule break_mm"};
        case HemAt::puddle:
            return Hem{Length::mm(-rules.puddle_on_floor), std::string(to_say("lies on the floor")), "rule puddle_mm"};
        case HemAt::given:
            break;
    }
    if (!layer.asked.treatment->bottom) {
        return std::nullopt;
    }
    return Hem{*layer.asked.treatment->bottom, std::string(to_say("bottom edge above the floor")),
               "treatment bottom_mm"};
}

/// The stations that would give a drop on the line where the pole was or would be taken, less those that are there.
std::vector<std::string> missing_for_drop(const LayerContext& layer) {
    const auto& measured = layer.measured;
    const auto& readings = measured.readings;
    const bool pointed = measured.shape == Shape::arch || measured.shape == Shape::gable;
    Line line = pointed ? Line::centre : measured.plumb.pole_line();
    const auto pole =
        std::ranges::find_if(readings, [](const CountedReading& r) { return r.station.word.starts_with("pole."); });
    if (pole != readings.end() && pole->station.line) {
        line = *pole->station.line;
    }
    const std::string suffix = "." + std::string(word_of(line));
    const bool is_floor = base_of(layer.asked.hem_at) == PlumbMark::floor;
    std::vector<std::string> wanted;
    if (is_floor && measured.shape != Shape::door && !measured.plumb.height(line, PlumbMark::sill)) {
        wanted.push_back("below" + suffix);
    }
    if (!measured.plumb.between(line, measured.shape == Shape::door ? PlumbMark::floor : PlumbMark::sill,
                                PlumbMark::head)) {
        wanted.push_back(height_station(measured, line));
    }
    if (pole == readings.end()) {
        wanted.push_back(pointed ? "pole.above" + suffix : "pole.above");
    }
    std::erase_if(wanted, [&](const std::string& station) { return find_counted(readings, station) != nullptr; });
    return wanted;
}

void flag_missing(const LayerContext& layer, Findings& findings, const std::vector<std::string>& stations,
                  const std::string& figure) {
    findings.flag("missing-reading", Severity::stop,
                  stations.empty() ? say("The {} can’t be worked: the heights don’t reach from the pole to where "
                                         "the hem hangs. Take them on one plumb line.",
                                         figure)
                                   : say("The {} can’t be worked yet. Still to measure: {}.", figure,
                                         stations_words(stations, layer.measured.shape)),
                  stations);
}

struct DropAtLine {
    Line line;
    Estimate pole_over_base;
};

std::vector<DropAtLine> drops(const LayerContext& layer) {
    std::vector<DropAtLine> found;
    for (const Line line : all_lines) {
        if (auto estimate = layer.measured.plumb.between(line, base_of(layer.asked.hem_at), PlumbMark::pole)) {
            found.push_back({line, std::move(*estimate)});
        }
    }
    return found;
}

/// The lines whose heads a builder makes level: of an arch both springings, of a gable none.
std::vector<Line> lines_with_level_head(Shape shape) {
    switch (shape) {
        case Shape::arch:
            return {Line::left, Line::right};
        case Shape::gable:
            return {};
        default:
            return {all_lines.begin(), all_lines.end()};
    }
}

/// Flags a floor (or sill) out of level: by the drops where a level line ties the lines, else by base to head.
void flag_level(const LayerContext& layer, const std::vector<DropAtLine>& at_lines, Findings& findings) {
    const bool tied = std::ranges::any_of(all_lines, [&](Line line) { return layer.measured.plumb.is_tied(line); });
    std::vector<Length> heights;
    std::vector<std::string> stations;
    if (tied) {
        for (const DropAtLine& drop : at_lines) {
            heights.push_back(drop.pole_over_base.value);
            stations.push_back("level." + std::string(word_of(drop.line)));
        }
    } else {
        for (const Line line : lines_with_level_head(layer.measured.shape)) {
            if (const auto head = layer.measured.plumb.between(line, base_of(layer.asked.hem_at), PlumbMark::head)) {
                heights.push_back(head->value);
                stations.push_back(height_station(layer.measured, line));
            }
        }
    }
    if (heights.size() < 2) {
        return;
    }
    const auto [least, most] = std::ranges::minmax(heights);
    const double range = (most - least).mm();
    if (range <= told_from_mm + whole_tolerance) {
        return;
    }
    const bool sill = hangs_from_sill(layer.asked.hem_at);
    const std::string what = sill ? say("sill") : say("floor");
    const bool follows = tied && layer.asked.drops == DropsAt::per_line;
    const std::string by = said_length(most - least, layer.measured.entry_unit);
    findings.flag(sill ? "sill-not-level" : "floor-not-level", follows ? Severity::note : Severity::decide,
                  follows ? say("The {} is out of level by {} under the pole, and the hem follows it: a drop "
                                "was worked at each plumb line.",
                                what, by)
                  : tied  ? say("The {} is out of level by {} under the pole. One drop was worked; say whether "
                                 "the hem follows.",
                                what, by)
                          : say("From {} to head differs by {} along the window. It may be the {} or the "
                                 "head: take a level line.",
                                what, by, what),
                  stations);
}

/// The line whose drop the cut is made for: where the hem follows the longest.
const DropAtLine& deciding(const std::vector<DropAtLine>& at_lines, const LayerAsked& asked) {
    const HemAt hem_at = asked.hem_at;
    const auto by_value = [](const DropAtLine& a, const DropAtLine& b) {
        return a.pole_over_base.value.mm() < b.pole_over_base.value.mm() - whole_tolerance;  // ties go to the first
    };
    const bool least = (hem_at == HemAt::floor || hem_at == HemAt::sill) && asked.drops == DropsAt::one;
    return least ? *std::ranges::min_element(at_lines, by_value) : *std::ranges::max_element(at_lines, by_value);
}

/// What lies between the pole's centre and the top edge, as steps.
void trace_top(const LayerAsked& asked, const FinishedSizes& sizes, Length over_pole, TraceOf& trace) {
    if (asked.is_blind()) {
        return;
    }
    const std::string diameter = fmt::format("pole diameter {:g}", asked.diameter().mm());
    switch (asked.heading) {
        case Heading::tab:
            trace.mm("tab hang", over_pole, {fmt::format("tab cut {:g}", sizes.tab_cut.mm()), diameter});
            return;
        case Heading::eyelet:
            trace.mm("eyelet over the pole", over_pole, {"rule eyelet_top_mm", diameter});
            return;
        case Heading::slot:
            trace.mm("slot over the pole", over_pole, {"rule slot_stand_mm", diameter});
            return;
        default:
            break;
    }
    if (asked.is_on_track()) {
        trace.mm("hook over the glider’s eye", over_pole, {"rule hook_mm"});
    } else {
        trace.mm("ring and hook", over_pole, {"rule ring_drop_mm", "rule hook_mm", diameter});
    }
}

/// The bottom edge over the floor; for a hem at the sill by the first sill height there is.
std::optional<Length> hem_over_floor(const LayerContext& layer, const Hem& hem) {
    for (const Line line : all_lines) {
        const auto base = base_of(layer.asked.hem_at) == PlumbMark::sill
                              ? layer.measured.plumb.height(line, PlumbMark::sill)
                              : std::optional(Estimate{});
        if (base) {
            return base->value + hem.over_base;
        }
    }
    return std::nullopt;
}

/// Where the cloth hangs over the floor: at the line that decides the drop, else at the first where it is known.
void place_over_floor(const LayerContext& layer, Line deciding_line, PlumbMark from, Length over,
                      FinishedSizes& sizes) {
    for (const Line line : {deciding_line, Line::left, Line::centre, Line::right}) {
        if (const auto mark = layer.measured.plumb.height(line, from)) {
            sizes.top = mark->value + over;
            return;
        }
    }
}

/// A drop at each plumb line that the hem follows; with one line alone there is nothing to follow.
void work_line_drops(const LayerContext& layer, const std::vector<DropAtLine>& at_lines, Length less,
                     FinishedSizes& sizes, Findings& findings) {
    if (layer.asked.drops != DropsAt::per_line) {
        return;
    }
    for (const DropAtLine& at : at_lines) {
        sizes.line_drops.push_back({at.line, at.pole_over_base.value - less, at.pole_over_base.u});
    }
    if (at_lines.size() < 2) {
        findings.flag(
            "not-checked", Severity::note,
            say("The drop is known at one plumb line only: what the hem follows isn’t. Take a level line at two "
                "of them, or the pole’s height at each."),
            {"level." + std::string(word_of(at_lines.front().line))});
    }
}

/// The drop under a shaped top: the longest decides.
bool work_shaped(const LayerContext& layer, const std::optional<Hem>& hem, FinishedSizes& sizes, Findings& findings) {
    if (!hem) {
        findings.flag(
            "missing-reading", Severity::stop,
            say("The finished drop can’t be worked yet: say how far above the floor the bottom edge is to hang."));
        return false;
    }
    const PlumbMark base = base_of(layer.asked.hem_at);
    auto shaped = shaped_top(layer, base, hem->over_base, findings);
    if (!shaped) {
        return false;
    }
    sizes.drop = shaped->top.drop_at(shaped->top.longest_at());
    sizes.drop_u = shaped->drop_u;
    sizes.drop_along = shaped->drop_along;
    sizes.curtains = layer.asked.curtains();
    sizes.width = shaped->top.width() / sizes.curtains;
    sizes.width_u = shaped->width_u / sizes.curtains;
    sizes.rests_on = std::move(shaped->rests_on);
    if (const auto bottom = hem_over_floor(layer, *hem)) {
        sizes.top = *bottom + sizes.drop;
    }
    TraceOf(findings, "finished.width_mm")
        .mm("width that the top follows", shaped->top.width(),
            {layer.measured.shape == Shape::arch ? "opening.width.top" : "opening.width.bottom"})
        .count("curtains", sizes.curtains)
        .mm("finished width of each", finished_to_mm(sizes.width));
    TraceOf(findings, "finished.drop_mm")
        .mm("across to where it is longest", shaped->top.longest_at())
        .mm(hangs_from_sill(layer.asked.hem_at) ? "top edge above the sill there" : "top edge above the floor there",
            sizes.drop + hem->over_base,
            layer.measured.plumb.way_between(shaped->drop_along.line, base, PlumbMark::head))
        .mm(hem->what, -hem->over_base, {hem->from})
        .mm("finished drop", finished_to_mm(sizes.drop));
    findings.flag("shaped-top", Severity::note,
                  say("A shaped top is fixed along its edge and doesn’t draw: the curtains are held back below it, by "
                      "hand, tie-back or holdback."));
    sizes.shaped = std::move(shaped->top);
    return true;
}

bool work_drop(const LayerContext& layer, FinishedSizes& sizes, Findings& findings) {
    const LayerAsked& asked = layer.asked;
    if (hangs_from_sill(asked.hem_at) && layer.measured.shape == Shape::door) {
        findings.flag("impossible", Severity::stop,
                      say("A door has no sill for the curtain to hang to. Choose another length."));
        return false;
    }
    const auto at_lines = asked.is_shaped() ? std::vector<DropAtLine>() : drops(layer);
    const auto hem = hem_of(layer);
    flag_level(layer, at_lines, findings);
    if (asked.is_shaped()) {
        return work_shaped(layer, hem, sizes, findings);
    }
    if (at_lines.empty()) {
        flag_missing(layer, findings, missing_for_drop(layer), say("finished drop"));
        return false;
    }
    if (!hem) {
        findings.flag(
            "missing-reading", Severity::stop,
            say("The finished drop can’t be worked yet: say how far above the floor the bottom edge is to hang."));
        return false;
    }
    const DropAtLine& drop = deciding(at_lines, asked);
    const Length over_pole = top_over_pole(asked, sizes.tab_hang, layer.rules);
    work_line_drops(layer, at_lines, hem->over_base - over_pole, sizes, findings);
    sizes.drop = drop.pole_over_base.value + over_pole - hem->over_base;
    sizes.drop_u = drop.pole_over_base.u;
    sizes.drop_along = PlumbSpan{drop.line, base_of(asked.hem_at), PlumbMark::pole};
    sizes.rests_on = drop.pole_over_base.rests_on;
    place_over_floor(layer, drop.line, PlumbMark::pole, over_pole, sizes);
    TraceOf trace(findings, "finished.drop_mm");
    trace.mm(hangs_from_sill(asked.hem_at) ? "pole centre above sill" : "pole centre above floor",
             drop.pole_over_base.value,
             layer.measured.plumb.way_between(drop.line, base_of(asked.hem_at), PlumbMark::pole));
    trace_top(asked, sizes, over_pole, trace);
    trace.mm(hem->what, -hem->over_base, {hem->from});
    trace.mm("finished drop", finished_to_mm(sizes.drop));
    return true;
}

/// How long the hardware is that curtains hang from: as it was chosen or measured, or by the plan round the corners.
std::optional<Estimate> along_hardware(const LayerContext& layer, FinishedSizes& sizes, Findings& findings) {
    const Hardware& hardware = *layer.asked.hardware;
    if (layer.asked.is_bent()) {
        sizes.run = bent_run(layer, findings);
        return sizes.run ? std::optional(sizes.run->length) : std::nullopt;
    }
    if (!hardware.length) {
        findings.flag(
            "missing-reading", Severity::stop,
            say("The finished width can’t be worked yet: say how long the pole or track is, without finials."));
        return std::nullopt;
    }
    const bool is_measured = hardware.supply && hardware.supply->is(Supply::existing);
    return Estimate{*hardware.length, is_measured ? reading_u(*hardware.length, layer.measured.tape) : Length(), {}};
}

bool work_curtain_width(const LayerContext& layer, FinishedSizes& sizes, Findings& findings) {
    const Hardware& hardware = *layer.asked.hardware;
    const auto along = along_hardware(layer, sizes, findings);
    if (!along) {
        return false;
    }
    if (along->value < hardware.overlap || along->value.mm() <= 0.0) {
        findings.flag("impossible", Severity::stop,
                      say("A pole or track {:g} mm long is shorter than the {:g} mm that the curtains on it "
                          "overlap. Choose a longer one, or less overlap.",
                          along->value.mm(), hardware.overlap.mm()));
        return false;
    }
    const int n = layer.asked.curtains();
    const Length all = along->value + 2.0 * hardware.return_depth + hardware.overlap;
    sizes.along = along->value;
    sizes.curtains = n;
    sizes.width = all / n;
    sizes.hangs_flat =
        n == 2 ? hardware.return_depth + hardware.overlap / 2.0 : 2.0 * hardware.return_depth + hardware.overlap;
    sizes.width_u = along->u / n;
    sizes.rests_on.insert(sizes.rests_on.end(), along->rests_on.begin(), along->rests_on.end());
    TraceOf(findings, "finished.width_mm")
        .mm(sizes.run ? "hardware round the corners" : "hardware length", along->value,
            {sizes.run ? "run.length_mm" : "hardware length_mm"})
        .mm("two returns", 2.0 * hardware.return_depth, {"hardware return_mm"})
        .mm("overlap", hardware.overlap, {"hardware overlap_mm"})
        .count("curtains", n)
        .mm("finished width of each", finished_to_mm(sizes.width));
    return true;
}

bool work_blind_width(const LayerContext& layer, FinishedSizes& sizes, Findings& findings) {
    const Hardware* hardware = layer.asked.hardware;
    const bool inside = layer.asked.is_inside_blind();
    if (!inside && hardware != nullptr && hardware->length) {
        sizes.width = *hardware->length;
        const bool is_measured = hardware->supply && hardware->supply->is(Supply::existing);
        sizes.width_u = is_measured ? reading_u(*hardware->length, layer.measured.tape) : Length();
        TraceOf(findings, "finished.width_mm").mm("hardware length", sizes.width, {"hardware length_mm"});
        return true;
    }
    const auto opening = inside ? layer.measured.least_width() : layer.measured.largest_width();
    if (!opening) {
        flag_missing(layer, findings, {"opening.width.top", "opening.width.middle", "opening.width.bottom"},
                     say("finished width"));
        return false;
    }
    const Length change = inside ? Length::mm(-layer.rules.blind_ease) : Length::mm(2.0 * layer.rules.blind_over);
    sizes.width = opening->value + change;
    sizes.width_u = opening->u;
    sizes.rests_on.insert(sizes.rests_on.end(), opening->rests_on.begin(), opening->rests_on.end());
    TraceOf(findings, "finished.width_mm")
        .mm(inside ? "least width of the opening" : "largest width of the opening", opening->value,
            {std::string(to_say("opening.width"))})
        .mm(inside ? "ease" : "past the opening, both sides", change,
            {inside ? "rule blind_ease_mm" : "rule blind_over_mm"})
        .mm("finished width", finished_to_mm(sizes.width));
    return true;
}

bool work_inside_drop(const LayerContext& layer, FinishedSizes& sizes, Findings& findings) {
    const auto& plumb = layer.measured.plumb;
    const PlumbMark base = layer.measured.shape == Shape::door ? PlumbMark::floor : PlumbMark::sill;
    std::optional<Estimate> least;
    Line at = Line::left;
    for (const Line line : all_lines) {
        const auto height = plumb.between(line, base, PlumbMark::head);
        if (height && (!least || height->value.mm() < least->value.mm() - whole_tolerance)) {
            least = height;
            at = line;
        }
    }
    if (!least) {
        flag_missing(layer, findings, {"opening.height.left", "opening.height.centre", "opening.height.right"},
                     say("finished drop"));
        return false;
    }
    sizes.drop = least->value;
    sizes.drop_u = least->u;
    sizes.drop_along = PlumbSpan{at, base, PlumbMark::head};
    sizes.rests_on = least->rests_on;
    place_over_floor(layer, at, PlumbMark::head, Length(), sizes);
    TraceOf(findings, "finished.drop_mm")
        .mm("least height of the opening", least->value, plumb.way_between(at, base, PlumbMark::head))
        .mm("finished drop", finished_to_mm(sizes.drop));
    return true;
}

/// What the hardware must say before anything hangs from it.
bool hardware_is_there(const LayerContext& layer, Findings& findings) {
    if (layer.asked.is_blind() || layer.asked.is_shaped()) {
        return true;
    }
    if (layer.asked.hardware == nullptr) {
        findings.flag("missing-reading", Severity::stop,
                      say("Nothing can be worked yet: choose what the curtains hang from."));
        return false;
    }
    if (!layer.asked.is_on_track() && !layer.asked.hardware->diameter) {
        findings.flag("missing-reading", Severity::stop,
                      say("The finished drop can’t be worked yet: measure the pole’s diameter."));
        return false;
    }
    return true;
}

/// Why the finished sizes can't be made; nothing where they can.
std::optional<std::string> impossible_size(const LayerContext& layer, const FinishedSizes& sizes) {
    const bool blind = layer.asked.is_blind();
    const double hem = blind ? layer.rules.blind_hem : layer.rules.hem;
    const double drop = round_whole(sizes.drop.mm());
    if (layer.asked.heading == Heading::tab && sizes.tab_hang.mm() <= 0.0) {
        return say("A tab cut {:g} mm long doesn’t go round a pole of {:g} mm. Cut the tabs longer.",
                   sizes.tab_cut.mm(), layer.asked.diameter().mm());
    }
    if (sizes.drop.mm() <= 0.0) {
        return say("The bottom edge would hang above the top edge. Look at the heights and the length asked for.");
    }
    if (hem > sizes.drop.mm() + whole_tolerance) {
        return say(
            "A hem of {:g} mm is deeper than the finished drop of {:.0f} mm. Ask for a shallower hem in the house "
            "rules, or a longer {}.",
            hem, drop, blind ? say("blind") : say("curtain"));
    }
    if (sizes.width.mm() <= 0.0) {
        return blind ? say("Nothing is left of the width after the blind’s ease. Look at the widths of the opening.")
                     : say("Nothing is left of the width. Look at the length of the hardware.");
    }
    if (blind && sizes.drop.mm() <= layer.rules.blind_headrail) {
        return say(
            "A blind {:.0f} mm long is no longer than its headrail of {:g} mm. Hang it longer, or put the blind’s "
            "headrail in the house rules right.",
            drop, layer.rules.blind_headrail);
    }
    return std::nullopt;
}

bool is_possible(const LayerContext& layer, const FinishedSizes& sizes, Findings& findings) {
    const auto why = impossible_size(layer, sizes);
    if (!why) {
        return true;
    }
    findings.flag("impossible", Severity::stop, *why);
    return false;
}

}  // namespace

Length tab_cut_for(Length hang, Length diameter, const HouseRules& rules) {
    const double cut = std::numbers::pi * diameter.mm() / 2.0 + 2.0 * hang.mm() + 2.0 * rules.tab_seam;
    return Length::mm(round_to(cut, 10.0));
}

Length tab_hang_of(Length cut, Length diameter, const HouseRules& rules) {
    const Length loop = cut - Length::mm(2.0 * rules.tab_seam);
    return (loop - std::numbers::pi * diameter / 2.0) / 2.0;
}

Length top_over_pole(const LayerAsked& asked, Length tab_hang, const HouseRules& rules) {
    const double d = asked.diameter().mm();
    switch (asked.heading) {
        case Heading::tab:
            return -tab_hang;
        case Heading::eyelet:
            return Length::mm(rules.eyelet_top - (rules.eyelet_inner - d) / 2.0);
        case Heading::slot:
            return Length::mm(d / 2.0 + rules.slot_stand);
        case Heading::roman:
            return Length();
        default:
            break;
    }
    return Length::mm(asked.is_on_track() ? rules.hook : rules.hook - d / 2.0 - rules.ring_drop);
}

FinishedSizes finish(const LayerContext& layer, Findings& findings) {
    FinishedSizes sizes;
    const LayerAsked& asked = layer.asked;
    sizes.curtains = asked.curtains();
    if (const auto hem = hem_of(layer); hem && !asked.is_inside_blind()) {
        sizes.hem = HemPlace{base_of(asked.hem_at), hem->over_base};
    }
    if (!hardware_is_there(layer, findings)) {
        return sizes;
    }
    if (asked.heading == Heading::tab) {
        sizes.tab_cut = asked.treatment->tab_cut.value_or(
            tab_cut_for(Length::mm(layer.rules.tab_hang), asked.diameter(), layer.rules));
        sizes.tab_hang = tab_hang_of(sizes.tab_cut, asked.diameter(), layer.rules);
    }
    sizes.has_drop =
        asked.is_inside_blind() ? work_inside_drop(layer, sizes, findings) : work_drop(layer, sizes, findings);
    sizes.has_width = asked.is_shaped()  ? sizes.has_drop
                      : asked.is_blind() ? work_blind_width(layer, sizes, findings)
                                         : work_curtain_width(layer, sizes, findings);
    if (sizes.has_width && sizes.has_drop) {
        sizes.is_possible = is_possible(layer, sizes, findings);
    }
    return sizes;
}

}  // namespace truehang
