// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/bound.h"
#include "rolls/filling.h"

#include <span>
#include <vector>

// Runs laid on the rolls of one lot; used by the files of this folder alone.

namespace truehang::laying {

struct LayingRules {
    Um repeat = 0;
    Um step = 0;  ///< all starts lie whole steps apart: the repeat, or its half for a half-drop
    Um useful = 0;
};

struct Laid {
    bool complete = false;
    std::vector<std::vector<Placed>> rolls;  ///< `Placed::slot` counts slots over all runs
    Um used = 0;
    Um longest = 0;  ///< useful remnant
};

/// One run: its slots, and the number of the first of them over all runs.
struct Run {
    std::vector<Slot> slots;
    int first = 0;
};

/// Kinds of the runs, largest first.
[[nodiscard]] std::vector<Kind> kinds_of(const std::vector<Run>& runs, const LayingRules& rules);

struct LayingAsked {
    Um enough = 0;  ///< a plan that uses no more than this needs no better one
    long steps = 0;
    std::span<const Pattern> patterns{};     ///< of the relaxed plan over the same rolls; may be empty
    std::span<const Demand> demands{};       ///< what the patterns count
    std::span<const GroundClass> grounds{};  ///< what the patterns lie on
    bool any_plan = false;  ///< every order of the rolls looks for any better plan, not only for one that is enough
};

/// The best laying found of all runs: least cloth used, then the longest useful remnant. Not complete where none was
/// found. Stretches are filled one after the other, the fullest filling first, and taken back where what is wasted so
/// far can't lead to a better plan (limited discrepancy: W. D. Harvey, M. L. Ginsberg, 1995; bin completion: R. E.
/// Korf, 2002).
[[nodiscard]] Laid lay(const std::vector<Ground>& rolls, const std::vector<Run>& runs, const LayingRules& rules,
                       const LayingAsked& asked);

/// Lays loose slots into what a laying leaves, the largest first, each where the least is left beside it and no cloth
/// is begun for it while an old gap does.
[[nodiscard]] Laid lay_loose(const std::vector<Ground>& rolls, Laid laid, const std::vector<Run>& loose,
                             const LayingRules& rules);

}  // namespace truehang::laying
