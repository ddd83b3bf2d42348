// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "store/store.h"
#include "thread_mark.h"

#include <QString>

namespace truehang {

/// How something stands: words, and the stitch that says the same.
struct StandsAs {
    QString words;
    thread_mark::Mark mark = thread_mark::Mark::ToDo;
};

/// One window: "to measure", "6 of 12 stations", "measured", from its walk.
[[nodiscard]] StandsAs standing_of(const Window& window);
/// Every station of the walk has a reading or a reason.
[[nodiscard]] bool is_measured(const Window& window);

/// A visit by what is measured and what has arrived: "measuring, 2 windows left", "measured, on this phone only",
/// "at the workroom, 3 of 5 photos".
[[nodiscard]] StandsAs standing_of(const VisitSummary& summary);
/// The same, with the windows as the survey has them at the moment.
[[nodiscard]] StandsAs standing_of(const Survey& survey, VisitSummary summary);

/// Something of the visit has waited for the workroom's receipt for 24 hours at `now` (RFC 3339); not where it was
/// removed, or where either time isn't one.
[[nodiscard]] bool waits_for_a_day(const VisitSummary& summary, const std::string& now);

}  // namespace truehang
