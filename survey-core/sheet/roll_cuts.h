// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "survey/survey.h"

#include <optional>
#include <string>
#include <vector>

namespace truehang {

/// One piece along a roll. Positions run from the roll's outer end and are exact; who writes them rounds so that no
/// piece falls short.
struct RollCut {
    Length start, end;
    std::string what;             ///< as in Cut: drops, tabs, facing, pelmet, …
    std::string window, layer;    ///< ids; empty where it is for the whole house
    int number = 1, of = 1;       ///< which of the pieces of its kind for its layer
    std::vector<int> curtains{};  ///< whose it is, 0 the left one; two where a width is split between them; none: all
    double repeats = 0.0;         ///< whole or half repeats in it; 0: cut without regard to a pattern
    bool left_out = false;        ///< no piece: cloth that is passed over to place the pattern, a flaw, a join
};

/// What is cut from one roll, each piece at or after the end of the one before.
struct RollCuts {
    std::string fabric;                ///< id
    std::string roll{};                ///< what the roll is called; empty: one roll as it is ordered
    std::optional<Length> measured{};  ///< its length, where it was measured
    std::vector<RollCut> cuts{};
};

/// The cuts of every order on one roll each, piece after piece in the survey's order; of a half-drop match cut phase by
/// phase, every other width, then the half repeat, then the widths between. Widths of one curtain lie next to each
/// other: those of the left one, one that is split between a pair, those of the right one.
[[nodiscard]] std::vector<RollCuts> cuts_as_ordered(const Survey& survey, const Figures& figures);

}  // namespace truehang
