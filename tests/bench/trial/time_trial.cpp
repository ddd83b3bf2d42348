// SPDX-License-Identifier: Apache-2.0
#include "slip.h"
#include "trials.h"
#include "verdict.h"

#include <fmt/format.h>

#include <algorithm>
#include <chrono>
#include <map>

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
    struct Times {
        std::vector<double> clean, slipped;
    };
    Random random(20260401);
    std::map<std::string, Times> by_group;
    for (int i = 0; i < extent.timed; ++i) {
        const Truth truth = crooked_window(in_turn(i), random);
        const Visit visit(truth, {}, random);
        Window window = visit.measure(truth, random);
        if (i % 2 == 1) {
            (void)plant_any(visit, window, random);
        }
        const auto started = std::chrono::steady_clock::now();
        const WindowFigures figures = figures_of(visit, window);
        const std::chrono::duration<double, std::micro> took = std::chrono::steady_clock::now() - started;
        Times& times = by_group[std::string(truth.kind().group)];
        (adds_up(figures) ? times.clean : times.slipped).push_back(took.count());
    }
    Table table{
        "Time of one window",
        "The figures of one window with all its stations taken and no treatment there yet, in microseconds: the "
        "median, and what nine of ten stay under.",
        {"", "all adds up", "median", "nine of ten", "something doesn't", "median", "nine of ten"},
        {}};
    for (auto& [group, times] : by_group) {
        if (times.clean.empty() || times.slipped.empty()) {
            continue;
        }
        const double clean = median(times.clean), slipped = median(times.slipped);
        table.rows.push_back({group, fmt::format("{}", times.clean.size()), fmt::format("{:.0f}", clean),
                              fmt::format("{:.0f}", tenth_from_top(times.clean)),
                              fmt::format("{}", times.slipped.size()), fmt::format("{:.0f}", slipped),
                              fmt::format("{:.0f}", tenth_from_top(times.slipped))});
        report.criteria.push_back({"one window within 100 µs at the median when all adds up, " + group,
                                   fmt::format("{:.0f} µs", clean), clean <= 100.0});
        report.criteria.push_back(
            {"and within 5 ms when not, " + group, fmt::format("{:.0f} µs", slipped), slipped <= 5000.0});
    }
    report.tables.push_back(std::move(table));
}

}  // namespace truehang::trial
