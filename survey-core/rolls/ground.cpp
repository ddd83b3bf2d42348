// SPDX-License-Identifier: Apache-2.0
#include "rolls/ground.h"

#include "units/rounding.h"

#include <algorithm>

namespace truehang::laying {

Um down(Length length) { return static_cast<Um>(floor_whole(length.mm() * 1000.0)); }
Um up(Length length) { return static_cast<Um>(ceil_whole(length.mm() * 1000.0)); }
Length length_of(Um um) { return Length::mm(static_cast<double>(um) / 1000.0); }

bool operator==(const Ground& a, const Ground& b) {
    return a.length == b.length && std::ranges::equal(a.stretches, b.stretches, [](const Stretch& x, const Stretch& y) {
               return x.from == y.from && x.to == y.to && x.phase == y.phase;
           });
}

Ground ground_of(const Roll& roll) {
    struct Break {
        Um from, to;
        std::optional<Um> phase;
    };
    std::vector<Break> breaks;
    for (const RollFlaw& flaw : roll.flaws) {
        breaks.push_back({down(flaw.from), up(flaw.to), std::nullopt});
    }
    for (const RollJoin& join : roll.joins) {
        breaks.push_back({down(join.at), up(join.at), join.phase ? std::optional(down(*join.phase)) : std::nullopt});
    }
    std::ranges::stable_sort(breaks, {}, &Break::from);
    Ground ground;
    ground.length = down(roll.length);
    Um at = 0;
    Um phase = down(roll.phase);
    const auto close = [&](Um end) {
        if (end > at) {
            ground.stretches.push_back({at, end, phase});
        }
    };
    for (const Break& broken : breaks) {
        close(std::min(broken.from, ground.length));
        at = std::max(at, broken.to);
        phase = broken.phase.value_or(phase);
    }
    close(ground.length);
    return ground;
}

Um first_start(const Stretch& stretch, Um cursor, Um phase, Um repeat) {
    const Um at = std::max(cursor, stretch.from);
    if (phase == Slot::anywhere || repeat <= 0) {
        return at;
    }
    const Um behind = (at - stretch.phase - phase) % repeat;
    return behind == 0 ? at : at + (behind < 0 ? -behind : repeat - behind);
}

std::vector<Gap> gaps_of(const Ground& ground, std::span<const Placed> placed) {
    std::vector<Gap> gaps;
    auto next = placed.begin();
    for (const Stretch& stretch : ground.stretches) {
        Um at = stretch.from;
        for (; next != placed.end() && next->from < stretch.to; ++next) {
            if (next->from > at) {
                gaps.push_back({at, next->from, false});
            }
            at = std::max(at, next->to);
        }
        if (at < stretch.to) {
            gaps.push_back({at, stretch.to, true});
        }
    }
    return gaps;
}

RollUse use_of(const Ground& ground, std::span<const Placed> placed, Um useful) {
    if (placed.empty()) {
        return {};
    }
    const Um end = std::ranges::max(placed, {}, &Placed::to).to;
    RollUse use{end, 0};
    bool tail_useful = false;
    for (const Gap& gap : gaps_of(ground, placed)) {
        const Um size = gap.to - gap.from;
        if (size < useful || !gap.ends_stretch) {
            continue;
        }
        use.longest = std::max(use.longest, size);
        tail_useful = tail_useful || gap.from >= end;
        use.used -= gap.from >= end ? 0 : size;
    }
    use.used += tail_useful ? 0 : ground.length - end;
    return use;
}

}  // namespace truehang::laying
