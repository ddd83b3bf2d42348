// SPDX-License-Identifier: Apache-2.0
#include "slip.h"
#include "trials.h"
#include "verdict.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>

namespace truehang::trial {

namespace {

double median(std::vector<double>& values) {
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::ranges::nth_element(values, middle);
    return *middle;
}

double tenth_from_top(std::vector<double>& values) {
    const auto at = values.begin() + static_cast<std::ptrdiff_t>(values.size() * 9 / 10);
    std::ranges::nth_element(values, at);
    return *at;
}

}  // namespace

void try_time(const Extent& extent, Report& report) {
    Random random(20260401);
    std::vector<double> clean;
    std::vector<double> slipped;
    const auto shapes = shapes_in_trial();
    for (int i = 0; i < extent.timed; ++i) {
        const Shape shape = shapes[static_cast<std::size_t>(i) % shapes.size()];
        const Truth truth = crooked_window(shape, random);
        const Visit visit(shape, {}, random);
        Window window = visit.measure(truth, random);
        if (i % 2 == 1) {
            (void)plant_any(visit, window, random);
        }
        const auto started = std::chrono::steady_clock::now();
        const WindowFigures figures = figures_of(visit, window);
        const std::chrono::duration<double, std::micro> took = std::chrono::steady_clock::now() - started;
        (adds_up(figures) ? clean : slipped).push_back(took.count());
    }
    Table table{"Time of one window",
                "The figures of one window with all its stations taken and nothing hung there yet, in microseconds.",
                {"", "windows", "median", "nine of ten under"},
                {}};
    table.rows.push_back({"all adds up", fmt::format("{}", clean.size()), fmt::format("{:.0f}", median(clean)),
                          fmt::format("{:.0f}", tenth_from_top(clean))});
    table.rows.push_back({"something doesn't", fmt::format("{}", slipped.size()),
                          fmt::format("{:.0f}", median(slipped)), fmt::format("{:.0f}", tenth_from_top(slipped))});
    report.tables.push_back(std::move(table));
    report.criteria.push_back({"one window within 100 µs at the median when all adds up",
                               fmt::format("{:.0f} µs", median(clean)), median(clean) <= 100.0});
    report.criteria.push_back(
        {"and within 5 ms when not", fmt::format("{:.0f} µs", median(slipped)), median(slipped) <= 5000.0});
}

}  // namespace truehang::trial
