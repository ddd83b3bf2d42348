// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sizing/run.h"
#include "sizing/shaped_top.h"

#include <optional>
#include <string>
#include <vector>

namespace truehang {

/// The finished drop at one plumb line, where the hem follows what it hangs from.
struct LineDrop {
    Line line = Line::left;
    Length drop, drop_u;
};

/// The bottom edge over what it hangs to.
struct HemPlace {
    PlumbMark to = PlumbMark::floor;  ///< floor or sill
    Length over;
};

/// The finished sizes of a layer in full precision; rounded only where they are reported.
struct FinishedSizes {
    int curtains = 1;
    Length width, width_u;                ///< of each
    Length drop, drop_u;                  ///< of each
    Length hangs_flat;                    ///< return and overlap of one curtain, which take no fullness
    std::optional<PlumbSpan> drop_along;  ///< the span of readings that the drop was worked from
    std::optional<Length> top;            ///< above the floor at the line that decides the drop
    std::optional<HemPlace> hem;          ///< of all but a blind inside its recess
    Length tab_hang, tab_cut;             ///< of a tab heading
    std::optional<Length> along;          ///< the hardware's length: as chosen, or round the corners
    std::optional<BentRun> run;           ///< where the hardware is bent with the facets
    std::optional<ShapedTop> shaped;      ///< where the top is shaped
    std::vector<LineDrop> line_drops;     ///< where there is one a line, from left to right; empty else
    std::vector<std::string> rests_on;
    bool has_width = false, has_drop = false;  ///< what the readings reach to
    bool is_possible = true;

    /// All of it is known and can be made: only then is anything cut.
    [[nodiscard]] bool can_be_made() const { return has_width && has_drop && is_possible; }
};

/// Works the finished width and drop (trade rules, sections 4 and 9) with flags for what is missing, impossible or out
/// of level, and the trace of both. What can't be worked is marked so.
[[nodiscard]] FinishedSizes finish(const LayerContext& layer, Findings& findings);

/// A tab's cut length for the hang that the house asks for, to the nearest 10 mm.
[[nodiscard]] Length tab_cut_for(Length hang, Length diameter, const HouseRules& rules);

/// From the pole's centre line down to the curtain's top edge, of a tab cut this long.
[[nodiscard]] Length tab_hang_of(Length cut, Length diameter, const HouseRules& rules);

/// The curtain's top edge over the pole's centre line (over a track's glider's eye); negative below it.
[[nodiscard]] Length top_over_pole(const LayerAsked& asked, Length tab_hang, const HouseRules& rules);

}  // namespace truehang
