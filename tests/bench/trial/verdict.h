// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "slip.h"
#include "visit.h"

#include <string>
#include <vector>

namespace truehang::trial {

/// All that doesn't add up, each explanation once, likeliest first.
[[nodiscard]] std::vector<Suspect> suspects_of(const WindowFigures& figures);
[[nodiscard]] bool adds_up(const WindowFigures& figures);

/// Whether a suspect says what was planted: the station, and the value that stood there before; of a slip from which no
/// value comes back, the station, as copied or unexplained.
[[nodiscard]] bool is_right(const Suspect& suspect, const Planted& planted);

/// The same with one of the other readings that the suspect's explanation corrects.
[[nodiscard]] bool is_right_with_others(const Suspect& suspect, const Planted& planted);
/// Whether the first of a flag's suspects stands out: half of the weight, no other station above a third of its.
[[nodiscard]] bool names_one(const std::vector<Suspect>& suspects);

/// What the figures said of one window with a slip in it.
struct Verdict {
    bool flagged = false;
    bool station = false;        ///< one of the suspects' stations is the slip's
    bool right = false;          ///< the right station and value is among the suspects
    bool first = false;          ///< and no other has as much weight
    bool alone = false;          ///< the first stands out: half of the weight, no other station above a third of its
    bool wrong_value = false;    ///< and it isn't the right station and value
    bool wrong_station = false;  ///< nor even the right station
    double right_weight = 0.0;
    std::vector<Suspect> suspects;

    /// Nothing left to settle: the right one first with half of the weight.
    [[nodiscard]] bool is_settled() const { return first && right_weight >= 0.5; }
};

[[nodiscard]] Verdict verdict_on(const WindowFigures& figures, const Planted& planted);

/// Whether the digits give the slip away: put right, everything adds up, and no other value of a single reading nor
/// exchange of two, of those that one slip of this trial's list would make into what stands there, does so with a tenth
/// of the likelihood or more. Worked from the networks' residuals alone.
[[nodiscard]] bool gives_itself_away(const Visit& visit, const Window& window, const Planted& planted);

/// The window, its truth, the slip and what was said of it, in a few lines.
[[nodiscard]] std::string told_in_full(const std::string& what, const Truth& truth, const Visit& visit,
                                       const Window& window, const Planted& planted, const WindowFigures& figures);

}  // namespace truehang::trial
