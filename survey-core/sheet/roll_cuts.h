// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "rolls/house_plan.h"
#include "sheet/words.h"
#include "survey/survey.h"

#include <optional>
#include <string>
#include <vector>

namespace truehang {

/// One piece along a roll. Positions run from the roll's outer end and are exact; who writes them rounds so that no
/// piece falls short.
struct RollCut {
    Length start, end;
    std::string what;               ///< as in Cut: drops, tabs, facing, pelmet, …
    std::string window{}, layer{};  ///< ids; empty where it is for the whole house
    int number = 1, of = 1;         ///< which of the pieces of its kind for its layer
    std::vector<int> curtains{};    ///< whose it is, 0 the left one; two where a width is split between them; none: all
    double repeats = 0.0;           ///< whole or half repeats in it; 0: cut without regard to a pattern
    bool left_out = false;          ///< no piece: cloth that is passed over to place the pattern, a flaw, a join
    bool beside = false;            ///< lies beside the piece before it, in the other half of the width
};

/// What is cut from one roll, each piece at or after the end of the one before but where it lies beside it.
struct RollCuts {
    std::string fabric;                ///< id
    std::string roll{};                ///< what the roll is called; empty: one roll as it is ordered
    std::optional<Length> measured{};  ///< its length, where it came and was measured: the cuts are a plan's
    std::vector<RollCut> cuts{};
    bool counted_first = false;                ///< of one that came: measured metre by metre before the first cut
    std::vector<RollCut> flaws{};              ///< of one that came: every flaw and join on it
    std::vector<Remnant> left_over{};          ///< of one that came, without what lies between pieces
    std::vector<std::string> short_windows{};  ///< that no roll of this fabric is cut for, on its first sheet
};

/// The cuts of every order on one roll each, piece after piece in the survey's order; of a half-drop match cut phase by
/// phase, every other width, then the half repeat, then the widths between. Widths of one curtain lie next to each
/// other: those of the left one, one that is split between a pair, those of the right one.
[[nodiscard]] std::vector<RollCuts> cuts_as_ordered(const Survey& survey, const Figures& figures);

/// The cuts of every order from the rolls that came of it, as `plan` (of both) lays them: a roll that is cut into after
/// the other, flaws and joins and useful lengths that are passed over among the pieces. What no roll came of yet is cut
/// as ordered.
[[nodiscard]] std::vector<RollCuts> cuts_as_planned(const Survey& survey, const Figures& figures,
                                                    const RollsThatCame& came, const HousePlan& plan);

/// The same of one fabric that `rolls` came of: a roll that is cut into after the other, as in the plan.
[[nodiscard]] std::vector<RollCuts> cuts_as_planned(const Figures& figures, const std::vector<Roll>& rolls,
                                                    const FabricPlan& plan);

/// How many curtains the layer of a cut has; 0 where it has none.
[[nodiscard]] int curtains_of(const Figures& figures, const RollCut& cut);
/// "left curtain", "split: half to each curtain"; empty where it is for the whole window, or there is but one curtain.
[[nodiscard]] std::string whose_text(const RollCut& cut, int curtains);

/// What is written of one cut.
struct ShownCut {
    int number = 0;  ///< in the order of cutting; 0: none, for no piece is cut
    Length from, to, length;
};
/// One for each cut. Marks are rounded to what the style writes so that no piece falls short: each runs on from the one
/// before it, and what is passed over on a roll that came stands where it is.
[[nodiscard]] std::vector<ShownCut> shown_cuts(const RollCuts& roll, const SheetStyle& style);

}  // namespace truehang
