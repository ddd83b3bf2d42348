// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/words.h"
#include "survey/survey.h"

#include <string>
#include <string_view>
#include <vector>

// The figures' traces in words and numbers. Nothing is worked here: every number comes from a step.

namespace truehang {

/// The trace of a figure for one layer, or null. A trace without a layer is the window's.
[[nodiscard]] const Trace* find_trace(const WindowFigures& figures, std::string_view figure, std::string_view layer);

/// The value of a trace's step in mm or as a count, or nothing.
[[nodiscard]] std::optional<double> step_value(const Trace& trace, std::string_view what);

/// How a cut length came about: "1992 + 10 + 150 = 2152, with 2 % shrinkage 2196; 7 repeats of 320; trim 44 at the
/// head". Empty without a trace.
[[nodiscard]] std::string cut_working(const Trace* trace, const SheetStyle& style);

/// How the tabs are cut: "200 with 2 % shrinkage; in 2 rows of 11; hang 68 over the pole; seven to a curtain".
[[nodiscard]] std::string tab_working(const Trace* trace, const Tabs& tabs, const SheetStyle& style);

/// What a trace's step came from, in words: a station's own, "house rule: floor clearance", a figure's name.
[[nodiscard]] std::string source_in_words(const std::string& from, const Window& window);

/// A trace's steps, one line each: "Tab hang: −68.01 (tab cut 200, pole diameter 28)".
[[nodiscard]] std::vector<std::string> steps_in_words(const Trace& trace, const Window& window,
                                                      const SheetStyle& style);

}  // namespace truehang
