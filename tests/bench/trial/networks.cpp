// SPDX-License-Identifier: Apache-2.0
#include "networks.h"

#include "adjust/plumb.h"
#include "adjust/spans.h"
#include "chi_square_theory.h"
#include "survey/counted.h"
#include "survey/house_rules.h"

#include <algorithm>

namespace truehang::trial {

Networks networks_of(const Visit& visit, const Window& window) {
    const Shape shape = *window.shape.known();
    const TapeRule tape = tape_rule(visit.survey(), house_rules(visit.survey().rules));
    const auto readings = counted_readings(window, shape);
    Networks result{PlumbLines::adjusted(readings, Hang::level, tape).networks(), false};
    Spans spans = adjust_spans(readings, shape, tape);
    std::ranges::move(spans.networks, std::back_inserter(result.networks));
    const bool opening = std::ranges::find(result.networks, "opening", &Network::name) != result.networks.end();
    result.no_figure = spans.unformed || (spans.impossible_triangle && !opening);
    return result;
}

Detection detection_of(const Visit& visit, const Truth& truth, const Planted& planted) {
    Window window = visit.without_error(truth);
    for (Reading& reading : window.readings) {
        if (const Fault* fault = planted.at(reading.station)) {
            const double least = is_angle(reading.station) ? 0.0 : 1.0;
            set_value(reading, std::max(least, value_of(reading) + fault->wrong - fault->clean));
        }
    }
    const Networks off = networks_of(visit, window);
    if (off.no_figure) {
        return {true, 1.0};
    }
    Detection detection;
    double unseen = 1.0;
    for (const Network& network : off.networks) {
        const Adjustment& adjusted = network.adjustment;
        unseen *= 1.0 - noncentral_above(network.limit, adjusted.redundancy, adjusted.chi2);
        detection.detectable = detection.detectable || adjusted.chi2 >= noncentrality;
    }
    detection.flag_probability = 1.0 - unseen;
    return detection;
}

}  // namespace truehang::trial
