// SPDX-License-Identifier: Apache-2.0
#include "sizing/run.h"

#include "units/length_text.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace truehang {

namespace {

std::string facet_width(int facet) { return fmt::format("facet.{}.width", facet); }
std::string corner_angle(int corner) { return fmt::format("corner.{}.angle_deg", corner); }

std::string kind_of(const LayerAsked& asked) { return asked.is_on_track() ? say("track") : say("pole"); }

/// What each of the two facets loses at a corner: p tan(d/2), of a corner that turns by d.
double lost_at(const LayerContext& layer, int corner) {
    const double inside = layer.measured.spans.angles.at(corner_angle(corner)).value.degrees();
    const double half = (180.0 - inside) / 2.0 * std::numbers::pi / 180.0;
    return layer.asked.hardware->projection->mm() * std::tan(half);
}

void flag_missing_plan(const LayerContext& layer, Findings& findings) {
    const auto& readings = layer.measured.readings;
    const int facets = facets_asked(layer.window);
    std::vector<std::string> stations;
    for (int n = 1; n <= facets; ++n) {
        stations.push_back(facet_width(n));
    }
    for (int n = 1; n < facets; ++n) {
        stations.push_back(corner_angle(n));
    }
    std::erase_if(stations, [&](const std::string& word) { return find_counted(readings, word) != nullptr; });
    std::string said;
    for (const std::string& word : stations) {
        const auto station = find_station(layer.measured.shape, word);
        said += (said.empty() ? "" : "; ") + (station ? station_words(*station) : word);
    }
    findings.flag(
        "missing-reading", Severity::stop,
        stations.empty()
            ? say("The run round the corners can’t be worked: the widths and angles give no plan. Take them again.")
            : say("The run round the corners can’t be worked yet. Still to measure: {}.", said),
        stations);
}

void trace_run(const LayerContext& layer, const BentRun& run, int facets, Findings& findings) {
    TraceOf trace(findings, "run.length_mm");
    for (int n = 1; n <= facets; ++n) {
        trace.mm(fmt::format("facet {}, along the wall", n),
                 layer.measured.spans.by_station.find(facet_width(n))->second.value, {facet_width(n)});
    }
    for (int n = 1; n < facets; ++n) {
        trace.mm(fmt::format("less at corner {}, both facets", n), Length::mm(-2.0 * lost_at(layer, n)),
                 {corner_angle(n), "hardware projection_mm"});
    }
    trace.mm("length of the run", run.length.value);
}

/// A length was given, and the plan says another.
void flag_other_length(const LayerContext& layer, const BentRun& run, Findings& findings) {
    constexpr double told_from = 10.0;
    const auto& given = layer.asked.hardware->length;
    if (!given) {
        return;
    }
    const auto said = [&layer](Length length) { return said_length(length, layer.measured.entry_unit); };
    const double off = std::abs((*given - run.length.value).mm());
    if (off > std::max(told_from, 3.29 * run.length.u.mm()) + whole_tolerance) {
        findings.flag(
            "run-differs", Severity::decide,
            say("The {} was given as {} long; by the plan it is {} ± {} round the corners, and that was worked "
                "with. Look at its length, or at how far off the wall it hangs.",
                kind_of(layer.asked), said(*given), said(run.length.value), said(2.0 * run.length.u)));
    }
}

}  // namespace

std::optional<BentRun> bent_run(const LayerContext& layer, Findings& findings) {
    const Shape shape = layer.measured.shape;
    const auto kind = kind_of(layer.asked);
    if (shape != Shape::bay && shape != Shape::corner) {
        findings.flag("impossible", Severity::stop,
                      say("There is no corner for the {} to be bent round. Let it run straight across.", kind));
        return std::nullopt;
    }
    if (!layer.asked.hardware->projection) {
        findings.flag(
            "missing-reading", Severity::stop,
            say("The run round the corners can’t be worked yet: say how far off the wall the {} hangs.", kind));
        return std::nullopt;
    }
    const auto& traverse = layer.measured.spans.traverse;
    if (!traverse || !traverse->figure().is_determined()) {
        flag_missing_plan(layer, findings);
        return std::nullopt;
    }
    auto length = traverse->track(*layer.asked.hardware->projection);
    if (!length) {
        findings.flag("impossible", Severity::stop,
                      say("So far off the wall the {} can’t follow the corners: a facet is too short, or a "
                          "corner too sharp. Hang it nearer to the wall, or straight across.",
                          kind));
        return std::nullopt;
    }
    BentRun run{std::move(*length), {}};
    double at = 0.0;
    for (int n = 1; n < traverse->facets(); ++n) {
        at += layer.measured.spans.by_station.find(facet_width(n))->second.value.mm() - lost_at(layer, n) -
              (n > 1 ? lost_at(layer, n - 1) : 0.0);
        run.bends.push_back({Length::mm(at), layer.measured.spans.angles.at(corner_angle(n)).value});
    }
    trace_run(layer, run, traverse->facets(), findings);
    flag_other_length(layer, run, findings);
    return run;
}

std::vector<Bend> bends_in_the_way(const LayerAsked& asked, const BentRun& run) {
    constexpr double at_the_join = 50.0;
    const double middle = run.length.value.mm() / 2.0;
    std::vector<Bend> found;
    for (const Bend& bend : run.bends) {
        if (asked.curtains() == 1 || std::abs(bend.at.mm() - middle) > at_the_join + whole_tolerance) {
            found.push_back(bend);
        }
    }
    return found;
}

}  // namespace truehang
