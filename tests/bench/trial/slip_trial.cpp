// SPDX-License-Identifier: Apache-2.0
#include "in_parallel.h"
#include "networks.h"
#include "slip_tally.h"
#include "trials.h"
#include "verdict.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace truehang::trial {

namespace {

constexpr int most_readings = 4;

void retake(const std::string& station, const Truth& truth, const Visit& visit, Random& random, Window& window,
            Planted& planted) {
    Reading taken = visit.take(station, truth.at(station), random);
    taken.id = fmt::format("again{}", window.readings.size());
    for (const Reading& reading : window.readings) {
        if (reading.station == station) {
            taken.replaces = reading.id;
        }
    }
    window.readings.push_back(std::move(taken));
    std::erase_if(planted.faults, [&](const Fault& fault) { return fault.station == station; });
}

/// Answers what `next` asks for with the truth, up to four times, and notes after how many readings all was settled.
void follow_next(const Truth& truth, const Visit& visit, Window window, Planted planted, WindowFigures figures,
                 Random& random, SlipCase& told) {
    for (int taken = 1; taken <= most_readings; ++taken) {
        if (!figures.next) {
            told.stuck = true;
            return;
        }
        if (!truth.knows(figures.next->station)) {
            told.asked_in_vain = figures.next->station;
            window.not_taken.push_back({figures.next->station, "it isn't there", {}});
            figures = figures_of(visit, window);
            continue;
        }
        retake(figures.next->station, truth, visit, random, window, planted);
        figures = figures_of(visit, window);
        if (adds_up(figures) || verdict_on(figures, planted).is_settled()) {
            told.settled_wrongly = adds_up(figures) && !planted.faults.empty();
            told.settled_after = told.settled_wrongly ? 0 : taken;
            return;
        }
    }
}

SlipCase one_case(Built built, Random& random, bool with_example) {
    const Truth truth = crooked_window(built, random);
    const Visit visit(truth, {}, random);
    Window window = visit.measure(truth, random);
    const Planted planted = plant_any(visit, window, random);
    const WindowFigures figures = figures_of(visit, window);

    SlipCase told;
    told.built = built;
    told.slip = planted.slip;
    told.of_angle = planted.of_angle();
    told.recoverable = planted.recoverable();
    const Detection detection = detection_of(visit, truth, planted);
    told.detectable = detection.detectable;
    told.flag_probability = detection.flag_probability;
    told.verdict = verdict_on(figures, planted);
    for (const Suspect& suspect : told.verdict.suspects) {
        told.rightness.push_back(is_right(suspect, planted));
    }
    if (told.verdict.flagged && told.detectable) {
        told.given_away = told.recoverable && gives_itself_away(visit, window, planted);
        if (!told.verdict.is_settled()) {
            follow_next(truth, visit, window, planted, figures, random, told);
        }
    }
    if (const auto what = told.what_is_bad(); with_example && !what.empty()) {
        told.in_full = told_in_full(what, truth, visit, window, planted, figures);
    }
    return told;
}

}  // namespace

void try_slips(const Extent& extent, Report& report) {
    Examples examples(extent.examples);
    const bool with_examples = extent.examples > 0;
    const auto cases = in_parallel<SlipCase>(extent.slips, [&](int i) {
        // A generator for each window: what the figures ask for in one leaves the others as they were.
        Random random(20260301ULL + 7919ULL * static_cast<unsigned long long>(i));
        return one_case(in_turn(i), random, with_examples);
    });
    for (const SlipCase& told : cases) {
        if (!told.in_full.empty()) {
            examples.offer(told.what_is_bad(), told.in_full);
        }
    }
    tell_slips(cases, report);
    tell_weights(cases, report);
    examples.put_into(report);
}

}  // namespace truehang::trial
