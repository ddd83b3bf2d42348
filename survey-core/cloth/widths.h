// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/words.h"
#include "units/length.h"

#include <optional>

// How much cloth: widths across and drops along (trade rules, section 5), in full precision.

namespace truehang {

/// In what steps widths are joined into one curtain.
enum class WidthStep { halves, whole };

/// Cloth across `widths` joined widths: each join takes a seam allowance of both.
[[nodiscard]] Length across(double widths, Length usable, Length seam);

/// The least number of widths, at least one step, that come to `needed` across; nothing where no number up to 1,000
/// does (the seams eat the cloth).
[[nodiscard]] std::optional<double> least_widths(Length needed, Length usable, Length seam, WidthStep step);

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
