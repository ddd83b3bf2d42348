// SPDX-License-Identifier: Apache-2.0
#include "slip.h"
#include "trials.h"
#include "verdict.h"

#include <fmt/format.h>

#include <algorithm>
#include <ctime>
#include <map>

namespace truehang::trial {

namespace {

double median(std::vector<double>& values) {
    if (values.empty()) {
        return 0.0;
    }
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::ranges::nth_element(values, middle);
    return *middle;
}

double tenth_from_top(std::vector<double>& values) {
    if (values.empty()) {
        return 0.0;
    }
    const auto at = values.begin() + static_cast<std::ptrdiff_t>(values.size() * 9 / 10);
    std::ranges::nth_element(values, at);
    return *at;
}

struct Times {
    std::vector<double> clean, slipped;  ///< microseconds

    std::vector<std::string> cells(const std::string& name) {
        return {name,
                fmt::format("{}", clean.size()),
                fmt::format("{:.0f}", median(clean)),
                fmt::format("{:.0f}", tenth_from_top(clean)),
                fmt::format("{}", slipped.size()),
                fmt::format("{:.0f}", median(slipped)),
                fmt::format("{:.0f}", tenth_from_top(slipped))};
    }
};

/// Processor time of this thread, in microseconds: what else the machine does isn't counted.
double processor_us() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) * 1e6 + static_cast<double>(now.tv_nsec) * 1e-3;
}

}  // namespace

void try_time(const Extent& extent, Report& report) {
    Random random(20260401);
    std::map<std::string, Times> by_group;
    for (int i = 0; i < extent.timed; ++i) {
        const Truth truth = crooked_window(in_turn(i), random);
        const Visit visit(truth, {}, random);
        Window window = visit.measure(truth, random);
        if (i % 2 == 1) {
            (void)plant_any(visit, window, random);
        }
        const double started = processor_us();
        const WindowFigures figures = figures_of(visit, window);
        const double took = processor_us() - started;
        Times& times = by_group[std::string(truth.kind().group)];
        (adds_up(figures) ? times.clean : times.slipped).push_back(took);
    }
    Table table{"Time of one window",
                "The figures of one window with all its stations taken and no treatment there yet, in microseconds of "
                "processor time: the median, and what nine of ten stay under.",
                {"", "all adds up", "median", "nine of ten", "something doesn't", "median", "nine of ten"},
                {}};
    Times all;
    for (auto& [group, times] : by_group) {
        all.clean.insert(all.clean.end(), times.clean.begin(), times.clean.end());
        all.slipped.insert(all.slipped.end(), times.slipped.begin(), times.slipped.end());
        table.rows.push_back(times.cells(group));
    }
    table.rows.push_back(all.cells("all"));
    const double clean = median(all.clean), slipped = median(all.slipped);
    report.criteria.push_back(
        {"one window within 100 µs at the median when all adds up", fmt::format("{:.0f} µs", clean), clean <= 100.0});
    report.criteria.push_back({"and within 5 ms when not", fmt::format("{:.0f} µs", slipped), slipped <= 5000.0});
    report.tables.push_back(std::move(table));
}

}  // namespace truehang::trial
