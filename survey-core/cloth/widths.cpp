// SPDX-License-Identifier: Apache-2.0
#include "cloth/widths.h"

#include "units/rounding.h"

#include <cmath>

namespace truehang {

Length across(double widths, Length usable, Length seam) {
    return widths * usable - 2.0 * (ceil_whole(widths) - 1.0) * seam;
}

std::optional<double> least_widths(Length needed, Length usable, Length seam, WidthStep step) {
    constexpr int most = 1000;
    const double size = step == WidthStep::halves ? 0.5 : 1.0;
    for (int i = 1; i * size <= most; ++i) {
        if (across(i * size, usable, seam).mm() >= needed.mm() - whole_tolerance) {
            return i * size;
        }
    }
    return std::nullopt;
}

Length needed_across(double fullness, double slack, Length finished, Length hangs_flat, Length side_turn) {
    return (fullness - slack) * (finished - hangs_flat) + hangs_flat + 2.0 * side_turn;
}

Length before_shrinking(Length length, double shrinkage_pct) { return length / (1.0 - shrinkage_pct / 100.0); }

DropPlan plan_drops(Length least, int count, Length repeat, Match match) {
    if (match == Match::none || repeat.mm() <= 0.0) {
        const Length drop = cut_up(least);
        return {drop, count * drop, 0.0, Length()};
    }
    const double whole = ceil_whole(least / repeat);
    const DropPlan straight{whole * repeat, count * whole * repeat, whole, Length()};
    if (match == Match::straight || count < 2) {
        return straight;
    }
    const DropPlan by_phase{straight.cut_drop, straight.total + repeat / 2.0, whole, repeat / 2.0};
    const double halves = std::max(0.0, ceil_whole(least / repeat - 0.5)) + 0.5;
    const DropPlan in_turn{halves * repeat, count * halves * repeat, halves, Length()};
    return in_turn.total.mm() < by_phase.total.mm() - whole_tolerance ? in_turn : by_phase;
}

}  // namespace truehang
