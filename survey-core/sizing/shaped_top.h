// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/arch.h"
#include "sizing/layer.h"
#include "units/plan_point.h"

#include <optional>
#include <utility>
#include <vector>

namespace truehang {

/// One place across a curtain with a shaped top.
struct TopPoint {
    Length hung;  ///< from the curtain's left edge as it hangs
    Length flat;  ///< from its left edge on the table: hung times the fullness reached
    Length drop;  ///< finished, from the top edge down to the hem there
};

/// The finished top of curtains that follows an arch, or the two slopes of a gable: the drop at every place across the
/// opening. The top edge lies on the arch itself (common practice, no source). An arch stands on its springings, which
/// lie where each plumb line has them over what the hem hangs from; without ordinates it is taken as part of one
/// circle, where they fit no curve it runs straight between them.
class ShapedTop {
public:
    using Corner = std::pair<double, double>;  ///< mm across, mm up

    /// `feet` is the springing line over the hem, `rise` what stands over it; both run straight between their corners,
    /// of which there is at least one each, from left to right. `curve` stands in place of `rise`.
    ShapedTop(Length width, std::vector<Corner> feet, std::vector<Corner> rise, std::optional<ArchCurve> curve);

    [[nodiscard]] Length width() const { return width_; }
    /// The finished drop so far across from the opening's left edge, held within its width.
    [[nodiscard]] Length drop_at(Length across) const;
    /// Where the drop is longest (of several the first), and the shortest drop there is.
    [[nodiscard]] Length longest_at() const;
    [[nodiscard]] Length shortest() const;
    /// The places across where the edge has a corner, both ends included.
    [[nodiscard]] std::vector<Length> corners() const;

private:
    Length width_;
    std::vector<Corner> feet_, rise_;
    std::optional<ArchCurve> curve_;
};

/// What a layer's shaped top was worked from.
struct ShapedSizes {
    ShapedTop top;
    Length width_u, drop_u;
    PlumbSpan drop_along;
    std::vector<std::string> rests_on;
};

/// The shaped top of a layer, its hem `hem` over `base`. Nothing, and a flag, where the shape has no such top, the
/// heading or the readings don't allow it, or nothing would be left at its sides.
[[nodiscard]] std::optional<ShapedSizes> shaped_top(const LayerContext& layer, PlumbMark base, Length hem,
                                                    Findings& findings);

/// The points of one curtain that hangs from `from` to `to` across the opening: every `step`, at corners, where the
/// drop is longest, and at both its edges. `fullness` is what was reached, flat over hung.
[[nodiscard]] std::vector<TopPoint> top_points(const ShapedTop& top, Length from, Length to, double fullness,
                                               Length step);

/// The top edge as it hangs and as it lies on the table: x from the curtain's left edge, y over its hem.
[[nodiscard]] std::vector<PlanPoint> hung_outline(const std::vector<TopPoint>& points);
[[nodiscard]] std::vector<PlanPoint> flat_outline(const std::vector<TopPoint>& points);

}  // namespace truehang
