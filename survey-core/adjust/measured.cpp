// SPDX-License-Identifier: Apache-2.0
#include "adjust/measured.h"

#include "adjust/reading_flags.h"
#include "units/rounding.h"

#include <algorithm>

namespace truehang {

namespace {

std::vector<Estimate> widths_of(const Spans& spans) {
    std::vector<Estimate> widths;
    for (const auto* station : {"opening.width.top", "opening.width.middle", "opening.width.bottom"}) {
        if (const Estimate* estimate = spans.find(station)) {
            widths.push_back(*estimate);
        }
    }
    return widths;
}

/// Ties go to the first, whatever the last bits say.
bool is_less(const Estimate& a, const Estimate& b) { return a.value.mm() < b.value.mm() - whole_tolerance; }

void measure_plan(const Window& window, MeasuredWindow& measured) {
    measured.facets = facets_taken(window);
    if (!measured.spans.traverse) {
        return;
    }
    measured.plan = measured.spans.traverse->plan();
    const Hardware* hardware = leading_hardware(window);
    if (hardware != nullptr && hardware->projection) {
        measured.track = measured.spans.traverse->track(*hardware->projection);
    }
}

/// Holds the readings against the window's photos. What the tape's own networks say stays as it is.
void check_by_photos(const Window& window, MeasuredWindow& measured) {
    measured.photos = opening_by_photos(window, measured.shape);
    if (!measured.photos) {
        return;
    }
    measured.photo_check = photo_network(*measured.photos, measured.readings, measured.tape);
    if (!measured.photo_check || measured.photo_check->adds_up()) {
        return;
    }
    std::vector<Network> all = measured.networks;
    if (measured.spans.unformed) {
        all.push_back(*measured.spans.unformed);
    }
    all.push_back(*measured.photo_check);
    measured.photo_explanations = explain({window, measured.readings, all, measured.tape, measured.entry_unit});
}

}  // namespace

std::optional<Estimate> MeasuredWindow::largest_width() const {
    const auto widths = widths_of(spans);
    return widths.empty() ? std::nullopt : std::optional(*std::ranges::max_element(widths, is_less));
}

std::optional<Estimate> MeasuredWindow::wall_width() const {
    const auto widths = widths_of(spans);
    return widths.empty() ? std::nullopt : std::optional(widths.front());
}

std::optional<Estimate> MeasuredWindow::least_width() const {
    const auto widths = widths_of(spans);
    return widths.empty() ? std::nullopt : std::optional(*std::ranges::min_element(widths, is_less));
}

MeasuredWindow measure(const Window& window, Shape shape, Hang hang, const TapeRule& tape, LengthUnit entry_unit) {
    MeasuredWindow measured;
    measured.shape = shape;
    measured.tape = tape;
    measured.entry_unit = entry_unit;
    measured.readings = counted_readings(window, shape);
    measured.plumb = PlumbLines::adjusted(measured.readings, hang, tape);
    measured.spans = adjust_spans(measured.readings, shape, tape);
    measured.networks = measured.plumb.networks();
    std::ranges::move(measured.spans.networks, std::back_inserter(measured.networks));
    measured.spans.networks.clear();
    if (measured.spans.unformed) {
        measured.networks.push_back(*measured.spans.unformed);
    }
    measured.explanations = explain({window, measured.readings, measured.networks, tape, entry_unit});
    if (measured.spans.unformed) {
        measured.networks.pop_back();  // it is none: nothing was adjusted
    }
    check_by_photos(window, measured);
    measure_plan(window, measured);
    measured.flags = reading_flags(measured);
    return measured;
}

const Hardware* leading_hardware(const Window& window) {
    const Hardware* chosen = nullptr;
    for (const Layer& layer : window.layers) {
        const bool headrail =
            layer.hardware && layer.hardware->kind && layer.hardware->kind->is(HardwareKind::headrail);
        if (layer.hardware &&
            (chosen == nullptr || (!headrail && chosen->kind && chosen->kind->is(HardwareKind::headrail)))) {
            chosen = &*layer.hardware;
        }
    }
    return chosen;
}

Hang leading_hang(const Window& window) {
    const Hardware* chosen = leading_hardware(window);
    return chosen != nullptr && chosen->hang ? chosen->hang->known().value_or(Hang::level) : Hang::level;
}

std::string height_station(const MeasuredWindow& measured, Line line) {
    if (measured.shape != Shape::bay && measured.shape != Shape::corner) {
        return "opening.height." + std::string(word_of(line));
    }
    for (int facet = 1; facet <= measured.facets; ++facet) {
        if (line_of_facet(facet, measured.facets) == line) {
            return "facet." + std::to_string(facet) + ".height";
        }
    }
    return line == Line::left ? "facet.1.height" : "";
}

std::vector<MeasuredSize> sizes_of(const MeasuredWindow& measured) {
    std::vector<MeasuredSize> sizes;
    for (const Station& station : stations_of(measured.shape)) {
        if (const Estimate* estimate = measured.spans.find(station.word)) {
            sizes.push_back({std::string(station.word), *estimate});
        } else if (const auto angle = measured.spans.angles.find(station.word); angle != measured.spans.angles.end()) {
            sizes.push_back({angle->first, {Length(), Length(), angle->second.rests_on}, angle->second});
        }
    }
    for (const auto* name : {"arch.radius", "arch.radius.crown", "arch.radius.side"}) {
        if (const Estimate* estimate = measured.spans.find(name)) {
            sizes.push_back({name, *estimate});
        }
    }
    if (measured.track) {
        sizes.push_back({measured.shape == Shape::bay ? "bay.track" : "corner.track", *measured.track});
    }
    for (const Line line : all_lines) {
        for (const PlumbMark mark :
             {PlumbMark::sill, PlumbMark::head, PlumbMark::pole, PlumbMark::ceiling, PlumbMark::level}) {
            if (auto estimate = measured.plumb.height(line, mark)) {
                sizes.push_back({std::string(word_of(mark)) + "." + std::string(word_of(line)), *estimate});
            }
        }
    }
    return sizes;
}

}  // namespace truehang
