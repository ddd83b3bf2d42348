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

}  // namespace

std::optional<Estimate> MeasuredWindow::largest_width() const {
    const auto widths = widths_of(spans);
    return widths.empty() ? std::nullopt : std::optional(*std::ranges::max_element(widths, is_less));
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
    measured.spans = adjust_spans(measured.readings, tape);
    measured.networks = measured.plumb.networks();
    std::ranges::copy(measured.spans.networks, std::back_inserter(measured.networks));
    std::vector<Network> judging = measured.networks;
    if (measured.spans.unformed) {
        judging.push_back(*measured.spans.unformed);
    }
    measured.explanations = explain({window, measured.readings, judging, tape, entry_unit});
    measured.flags = reading_flags(measured);
    return measured;
}

Hang leading_hang(const Window& window) {
    const Hardware* chosen = nullptr;
    for (const Layer& layer : window.layers) {
        const bool headrail =
            layer.hardware && layer.hardware->kind && layer.hardware->kind->is(HardwareKind::headrail);
        if (layer.hardware &&
            (chosen == nullptr || (!headrail && chosen->kind && chosen->kind->is(HardwareKind::headrail)))) {
            chosen = &*layer.hardware;
        }
    }
    return chosen != nullptr && chosen->hang ? chosen->hang->known().value_or(Hang::level) : Hang::level;
}

std::vector<MeasuredSize> sizes_of(const MeasuredWindow& measured) {
    std::vector<MeasuredSize> sizes;
    for (const Station& station : stations_of(measured.shape)) {
        if (const Estimate* estimate = measured.spans.find(station.word)) {
            sizes.push_back({std::string(station.word), *estimate});
        }
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
