// SPDX-License-Identifier: Apache-2.0
#include "chi_square_theory.h"
#include "slip_tally.h"
#include "trials.h"
#include "verdict.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace truehang::trial {

namespace {

constexpr double noncentrality = 17.0746;  // Baarda 1968: 0.80 at 0.001
constexpr int most_readings = 4;

/// The same window without noise but with the slip: its chi-squares are how far off the slip makes each network.
WindowFigures noiseless(const Visit& visit, const Truth& truth, const Planted& planted) {
    Window window = visit.without_error(truth);
    for (Reading& reading : window.readings) {
        if (const Fault* fault = planted.at(reading.station)) {
            const double off = fault->wrong_mm - fault->clean_mm;
            reading.value = Length::mm(std::max(1.0, reading.value->mm() + off));
        }
    }
    return figures_of(visit, window);
}

/// How probable it is that some network is flagged, and whether the slip is above the detectable size in one.
void weigh_detection(const WindowFigures& figures, SlipCase& told) {
    double unseen = 1.0;
    for (const Check& check : figures.checks) {
        unseen *= 1.0 - noncentral_above(check.limit, check.redundancy, check.chi2);
        told.detectable = told.detectable || check.chi2 >= noncentrality;
    }
    const bool no_figure = std::ranges::any_of(figures.flags, [](const Flag& flag) {
        return flag.code == "does-not-add-up" && flag.text.find("triangle") != std::string::npos;
    });
    told.detectable = told.detectable || no_figure;
    told.flag_probability = no_figure ? 1.0 : 1.0 - unseen;
}

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

SlipCase one_case(Shape shape, Random& random, Examples& examples) {
    const Truth truth = crooked_window(shape, random);
    const Visit visit(shape, {}, random);
    Window window = visit.measure(truth, random);
    const Planted planted = plant_any(visit, window, random);
    const WindowFigures figures = figures_of(visit, window);

    SlipCase told;
    told.shape = shape;
    told.slip = planted.slip;
    told.recoverable = planted.recoverable();
    weigh_detection(noiseless(visit, truth, planted), told);
    told.verdict = verdict_on(figures, planted);
    for (const Suspect& suspect : told.verdict.suspects) {
        told.rightness.push_back(is_right(suspect, planted));
    }
    if (told.verdict.flagged && told.detectable) {
        told.given_away = told.recoverable && gives_itself_away(figures, visit, window, planted);
        if (!told.verdict.is_settled()) {
            follow_next(truth, visit, window, planted, figures, random, told);
        }
    }
    if (const auto what = told.what_is_bad(); !what.empty()) {
        examples.offer(what, [&] { return told_in_full(what, truth, visit, window, planted, figures); });
    }
    return told;
}

}  // namespace

void try_slips(const Extent& extent, Report& report) {
    Examples examples(extent.examples);
    std::vector<SlipCase> cases;
    const auto shapes = shapes_in_trial();
    for (int i = 0; i < extent.slips; ++i) {
        // A generator for each window: what the figures ask for in one leaves the others as they were.
        Random random(20260301ULL + 7919ULL * static_cast<unsigned long long>(i));
        cases.push_back(one_case(shapes[static_cast<std::size_t>(i) % shapes.size()], random, examples));
    }
    tell_slips(cases, report);
    tell_weights(cases, report);
    examples.put_into(report);
}

}  // namespace truehang::trial
