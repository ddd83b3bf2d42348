// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/length.h"

#include <optional>
#include <string>
#include <vector>

// The rolls that really came, the pieces to cut from them, and the plan that lays the one on the other. Positions are
// from the roll's start, where cutting begins; they and lengths are held to the micrometre.

namespace truehang {

/// Something in a roll that no piece may lie over, from `from` to `to`; a point where they are equal. A piece may end
/// or begin at it.
struct RollFlaw {
    Length from, to;
};

/// Where two lengths of cloth were sewn together in one roll.
struct RollJoin {
    Length at;
    /// Position of a repeat's line after the join; none: the pattern is taken to run on through it.
    std::optional<Length> phase;
};

struct Roll {
    std::string id;
    std::string lot;
    Length length;  ///< as measured
    Length phase;   ///< position of a repeat's line
    std::vector<RollFlaw> flaws;
    std::vector<RollJoin> joins;
};

struct PieceToCut {
    std::string id;  ///< unique in its list
    std::string window, room, layer;
    int curtain = 0;  ///< from the left, from 1; 0 where it belongs to both or to none
    std::string what;
    Length length;         ///< what must come out of the roll
    double widths = 1.0;   ///< of the roll: 1, or 1/2, which leaves as much beside it
    std::string run;       ///< pieces of one run lie next to each other on one roll, in their order; empty: anywhere
    bool matched = false;  ///< begins at `phase` in the pattern
    Length phase;          ///< behind a repeat's line, 0 to the repeat
};

struct RollRules {
    Length repeat;                     ///< along the roll; zero: none
    Length useful = Length::mm(1000);  ///< what is left in a shorter piece than this counts as used
};

struct PlannedCut {
    std::string piece;
    Length from, to;      ///< `to` is the running mark that is cut at
    bool beside = false;  ///< lies beside the cut before it, in the other half of the width
};

/// Cloth without flaw or join that nothing is cut from.
struct Remnant {
    Length from, to;
    bool useful = false;
};

struct PlannedRoll {
    std::string roll, lot;
    std::vector<PlannedCut> cuts;  ///< in the order of cutting
    std::vector<Remnant> remnants;
    Length used;  ///< to the last cut less useful remnants before it, and what follows where none of it is useful
};

struct RollPlan {
    std::vector<PlannedRoll> rolls;       ///< those that are cut into, in the order given
    std::vector<std::string> not_placed;  ///< pieces, in the order given: all of a window or none
    std::vector<std::string> lots;        ///< that something is cut from
    std::vector<std::string> windows;     ///< that can be cut whole
    std::vector<std::string> short_windows;
    std::vector<std::string> split_rooms;  ///< rooms whose windows come from several lots
    Length used;
    Length least;  ///< no plan of the placed pieces uses less
    /// How far `used` may be above the least possible, percent; 0 is proved.
    [[nodiscard]] double gap_pct() const { return used > least ? 100.0 * (used - least).mm() / least.mm() : 0.0; }
    Length longest_remnant;
    bool most_windows = true;  ///< no plan cuts more windows, proved
};

/// How much a plan may try. Counted in steps, never in time, so that a plan is the same everywhere.
struct RollEffort {
    long steps = 5000000;
};

/// Lays pieces on rolls of one fabric. No piece lies over a flaw or a join; a window's pieces come from one lot, and a
/// room's where it can be; a matched piece begins at its phase; a run lies next to each other on one roll, only loose
/// pieces (no run, not matched) in what the pattern leaves between. First as many whole windows as can be, then as few
/// rooms over several lots, then the least cloth used, the fewest lots, the longest useful remnant. Pieces without a
/// window are each a window of their own. Steps of a plan are deterministic.
[[nodiscard]] RollPlan plan_rolls(const std::vector<Roll>& rolls, const std::vector<PieceToCut>& pieces,
                                  const RollRules& rules, const RollEffort& effort = {});

}  // namespace truehang
