// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "report.h"
#include "visit.h"

#include <cstdint>

// The trials, each with a seed of its own, so that what one draws leaves the others as they were.

namespace truehang::trial {

/// How many windows each trial takes.
struct Extent {
    int clean = 160'000;  ///< windows without a slip, at the stated edges
    int rough = 30'000;   ///< at twice as rough edges, and with tape errors drawn anew for each reading
    int power = 22'000;   ///< slips of the least detectable size
    int slips = 11'000;   ///< slips of the list, over all shapes
    int two = 3'300;      ///< two slips at once
    int timed = 2'200;    ///< windows timed
    int examples = 0;     ///< windows told in full, of each kind of failure

    /// That share of all windows.
    [[nodiscard]] Extent share(double of_all) const {
        const auto some = [&](int count) { return static_cast<int>(of_all * count); };
        return {some(clean), some(rough), some(power), some(slips), some(two), some(timed), examples};
    }
};

/// What a test has time for.
inline constexpr Extent quick{400, 88, 88, 33, 22, 0, 0};

/// The figures of one window, by the call that phone, page and paper make.
[[nodiscard]] WindowFigures figures_of(const Visit& visit, const Window& window);

/// False alarms of each network, and how often a size's 95 % interval holds the truth.
void try_clean_windows(const Extent& extent, Report& report);
/// How often a slip of the least detectable size is seen.
void try_power(const Extent& extent, Report& report);
/// What is said of each kind of slip, how far the stated weights can be believed, and what the next reading settles.
void try_slips(const Extent& extent, Report& report);
/// Whether two slips at once are found, or said to be unexplained, and how often one reading is wrongly named alone.
void try_two_slips(const Extent& extent, Report& report);
/// How long one window takes.
void try_time(const Extent& extent, Report& report);

}  // namespace truehang::trial
