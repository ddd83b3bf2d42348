// SPDX-License-Identifier: Apache-2.0
#include "cloth/widths.h"

#include "units/rounding.h"

#include <cmath>

namespace truehang {

Length across(double widths, Length usable, Length seam) {
    return widths * usable - 2.0 * (ceil_whole(widths) - 1.0) * seam;
}

Length across(double widths, const UsableAcross& usable, Length seam) {
    return across(widths, widths > 1.0 ? usable.joined : usable.alone, seam);
}

std::optional<double> least_widths(Length needed, const UsableAcross& usable, Length seam, WidthStep step) {
    constexpr int most = 1000;
    const double size = step == WidthStep::halves ? 0.5 : 1.0;
    for (int i = 1; i * size <= most; ++i) {
        if (across(i * size, usable, seam).mm() >= needed.mm() - whole_tolerance) {
            return i * size;
        }
    }
    return std::nullopt;
}

std::optional<double> least_widths(Length needed, Length usable, Length seam, WidthStep step) {
    return least_widths(needed, UsableAcross{usable, usable}, seam, step);
}

std::vector<Length> curtain_joins(double widths, Length usable, Length seam, Length side_turn) {
    std::vector<Length> joins;
    const int count = static_cast<int>(ceil_whole(widths)) - 1;
    for (int i = 1; i <= count; ++i) {
        joins.push_back(i * (usable - 2.0 * seam) + seam - side_turn);
    }
    return joins;
}

std::vector<Length> blind_joins(double widths, Length usable, Length seam, Length finished, Length side_turn) {
    const int count = static_cast<int>(ceil_whole(widths));
    if (count < 2) {
        return {};
    }
    const Length shown = usable - 2.0 * seam;  // of a width with a join at each side
    const int sides = count / 2;               // joins at each side of the middle width
    const Length split = count * usable - 2.0 * (2.0 * sides) * seam;
    if (split.mm() < (finished + 2.0 * side_turn).mm() - whole_tolerance) {
        return curtain_joins(widths, usable, seam, side_turn);
    }
    std::vector<Length> joins;
    for (int i = -sides; i < sides; ++i) {
        joins.push_back(finished / 2.0 + (i + 0.5) * shown);
    }
    return joins;
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
