// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "rolls/rolls.h"

#include <map>
#include <set>
#include <stop_token>
#include <string>
#include <vector>

// A whole house cut from the rolls that came: the survey's own figures, planned fabric by fabric.

namespace truehang {

struct RollsOfFabric {
    std::string fabric;
    std::vector<Roll> rolls;
};

/// What came (format truehang.rolls/1).
struct RollsThatCame {
    std::string survey;
    Length useful = Length::mm(1000);  ///< the least remnant that is kept (common practice, no source)
    std::vector<RollsOfFabric> fabrics;
};

/// Longer than this, a roll or an order is measured metre by metre before the first cut (common practice, no source).
inline constexpr Length counted_above = Length::mm(27000);

struct FabricPlan {
    std::string fabric;
    RollRules rules;
    std::vector<PieceToCut> pieces;
    RollPlan plan;
    Length missing;                        ///< for the windows that can't be cut, as one more length
    std::vector<std::string> count_first;  ///< rolls to be measured metre by metre
};

/// A change that makes more of the house fit, worked through the figures like any other survey.
struct Alternative {
    std::string change;                      ///< `hem` or `widths`
    std::string window;                      ///< empty: all
    std::string text;                        ///< a sentence
    double value = 0.0;                      ///< mm of hem, or fullness reached
    std::vector<std::string> short_windows;  ///< that it still leaves
};

struct HousePlan {
    std::string survey;
    std::vector<FabricPlan> fabrics;   ///< of those that rolls came of, in the survey's order
    std::vector<std::string> windows;  ///< whole in every one of these fabrics
    std::vector<std::string> short_windows;
    std::vector<Alternative> alternatives;  ///< where a window is short; those that fit everything first
};

/// What a survey has cut from one fabric: each drop its own piece with the length that it needs, the drops of one
/// curtain a run (of a pair that shares a width: both), half-drops phase by phase or in turn as the figures cut them.
/// Windows in `without` are left out.
[[nodiscard]] std::vector<PieceToCut> pieces_of(const Survey& survey, const std::string& fabric,
                                                const std::set<std::string>& without = {});

/// The same of every fabric that something is cut from, by its id: the figures are worked once.
using HousePieces = std::map<std::string, std::vector<PieceToCut>>;
[[nodiscard]] HousePieces house_pieces(const Survey& survey, const std::set<std::string>& without = {});

/// How one fabric of a survey is planned.
[[nodiscard]] RollRules roll_rules(const Survey& survey, const std::string& fabric, Length useful);

/// A window that one fabric is too short for is left out of the others, and their cloth planned again. It looks at
/// `stop` before each cloth: what it gives once that asks it to stop is no plan.
[[nodiscard]] HousePlan plan_house(const Survey& survey, const RollsThatCame& came, const RollEffort& effort = {},
                                   const std::stop_token& stop = {});

/// Raised where the same rolls are planned otherwise than before: plans that were kept are worked out again.
inline constexpr int planner_version = 2;

/// Rolls of one fabric that are measured metre by metre first: those that are long, all where the pieces ask for more.
[[nodiscard]] std::vector<std::string> counted_first(const std::vector<Roll>& rolls,
                                                     const std::vector<PieceToCut>& pieces);

/// How far a plan may be above the least possible as people read it: percent, rounded up to hundredths; 0 is proved.
[[nodiscard]] double shown_gap_pct(const RollPlan& plan);

/// One metre mark of a roll, as it is counted off before the first cut.
struct MetreMark {
    int metre = 0;
    Length at;  ///< the end of this metre; the roll's own end for the last
    std::vector<RollFlaw> flaws;
    std::vector<Length> joins;
};
/// Metre by metre, with what is known to lie in each.
[[nodiscard]] std::vector<MetreMark> metre_marks(const Roll& roll);

}  // namespace truehang
