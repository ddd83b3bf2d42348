// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/words.h"
#include "units/length.h"

#include <optional>
#include <vector>

// How much cloth: widths across and drops along (trade rules, section 5), in full precision.

namespace truehang {

/// In what steps widths are joined into one curtain.
enum class WidthStep { halves, whole };

/// Cloth across `widths` joined widths: each join takes a seam allowance of both.
[[nodiscard]] Length across(double widths, Length usable, Length seam);

/// What is used of each width: all that lies between its selvedges where nothing is joined, whole repeats across where
/// joins must match.
struct UsableAcross {
    Length alone;
    Length joined;
};

/// The least number of widths, at least one step, that come to `needed` across; nothing where no number up to 1,000
/// does (the seams eat the cloth).
[[nodiscard]] std::optional<double> least_widths(Length needed, const UsableAcross& usable, Length seam,
                                                 WidthStep step);
[[nodiscard]] std::optional<double> least_widths(Length needed, Length usable, Length seam, WidthStep step);

/// Cloth across `widths` widths, joined where it takes more than one.
[[nodiscard]] Length across(double widths, const UsableAcross& usable, Length seam);

/// Where a curtain's widths are joined, from its finished leading edge: full widths to the leading edge, a half width
/// at the outer edge.
[[nodiscard]] std::vector<Length> curtain_joins(double widths, Length usable, Length seam, Length side_turn);

/// Where a blind's widths are joined, from its finished left edge: a full width in the middle, the rest at both sides
/// alike; one join alone where two widths would not reach with a join at each side.
[[nodiscard]] std::vector<Length> blind_joins(double widths, Length usable, Length seam, Length finished,
                                              Length side_turn);

/// What a curtain needs across for its fullness: (fullness - slack) on what is gathered, and what hangs flat or is
/// turned in as it is.
[[nodiscard]] Length needed_across(double fullness, double slack, Length finished, Length hangs_flat, Length side_turn);

/// A drop before repeats: all that hangs and is turned in, with the shrinkage (percent, along the length) put on.
[[nodiscard]] Length before_shrinking(Length length, double shrinkage_pct);

/// How the drops of a window lie along the roll.
struct DropPlan {
    Length cut_drop;  ///< of each, exact: whole mm without a repeat, else whole (half) repeats
    Length total;
    double repeats = 0.0;  ///< in one drop; 0 without a repeat
    Length beside;         ///< what is added once: half a repeat where a half-drop is cut phase by phase
};

/// Plans `count` drops of at least `least` each. Straight match: whole repeats. Half-drop: the lesser of all widths of
/// one phase then all of the other, and phases in turn; on a tie the first.
[[nodiscard]] DropPlan plan_drops(Length least, int count, Length repeat, Match match);

}  // namespace truehang
