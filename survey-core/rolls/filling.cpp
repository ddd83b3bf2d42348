// SPDX-License-Identifier: Apache-2.0
#include "rolls/filling.h"

#include <algorithm>
#include <tuple>

namespace truehang::laying {

Um room_of(const Slot& slot, Um step) {
    return slot.phase == Slot::anywhere || step <= 0 ? slot.length : (slot.length + step - 1) / step * step;
}

namespace {

bool is_better(const Filling& a, const Filling& b) {
    return std::tie(a.counts, a.slots, a.lot, a.rest) < std::tie(b.counts, b.slots, b.lot, b.rest);
}

/// The next number of a linear congruential row (D. E. Knuth, The Art of Computer Programming 2, 3.3.4).
unsigned drawn(unsigned& seed) {
    seed = seed * 1664525U + 1013904223U;
    return seed >> 8U;
}

/// Subsets in the order of largest first, cut off where none of the wanted fillings could still be bettered.
class Filler {
public:
    Filler(const std::vector<Kind>& kinds, const std::vector<int>& left, const FillingAsked& asked)
        : kinds_(kinds), left_(left), asked_(asked), tries_(asked.tries), sum_after_(kinds.size() + 1, 0) {
        for (std::size_t k = kinds.size(); k-- > 0;) {
            sum_after_[k] = sum_after_[k + 1] + left[k] * kinds[k].room;
            overhang_ = std::max(overhang_, kinds[k].overhang);
            smallest_ = left[k] > 0 && (smallest_ == 0 || kinds[k].room < smallest_) ? kinds[k].room : smallest_;
        }
    }

    std::vector<Filling> run(long& steps) {
        if (asked_.must < 0) {
            descend(0, asked_.room);
        } else if (fits(static_cast<std::size_t>(asked_.must), asked_.room)) {
            const auto must = static_cast<std::size_t>(asked_.must);
            left_[must]--;
            chosen_.emplace_back(asked_.must, 1);
            sum_after_[must] -= kinds_[must].room;
            descend(must, asked_.room - kinds_[must].room);
        }
        steps += asked_.tries - std::max(0L, tries_);
        return std::move(found_);
    }

private:
    [[nodiscard]] bool fits(std::size_t k, Um room) const { return kinds_[k].room - kinds_[k].overhang <= room; }

    /// The first kind from `k` on of which there is one left that fits.
    [[nodiscard]] std::size_t first_fitting(std::size_t k, Um room) const {
        const auto is_larger = [&](const Kind& kind) { return kind.room > room + overhang_; };
        const auto from = kinds_.begin() + static_cast<std::ptrdiff_t>(k);
        k = static_cast<std::size_t>(std::partition_point(from, kinds_.end(), is_larger) - kinds_.begin());
        while (k < kinds_.size() && (left_[k] == 0 || !fits(k, room))) {
            ++k;
        }
        return k;
    }

    [[nodiscard]] Um waste_of(Um rest) const { return rest >= asked_.useful ? 0 : std::max<Um>(0, rest); }

    [[nodiscard]] bool is_hopeless(Um rest_at_least) const {
        if (waste_of(rest_at_least) > asked_.bearable) {
            return true;
        }
        if (found_.size() < asked_.most) {
            return false;
        }
        Filling best;
        best.rest = std::max<Um>(0, rest_at_least);
        best.counts = std::max<Um>(0, waste_of(best.rest) - asked_.tolerated);
        return !is_better(best, found_.back());
    }

    void descend(std::size_t k, Um room) {
        k = first_fitting(k, room);
        if (k == kinds_.size()) {
            keep(room);
            return;
        }
        // No more than so many runs fit, none of them larger than this one.
        const Um more = (room + overhang_) / smallest_;
        if (--tries_ < 0 || is_hopeless(room - std::min(sum_after_[k], more * kinds_[k].room))) {
            return;
        }
        const int most =
            static_cast<int>(std::min<Um>(left_[k], (room + kinds_[k].overhang) / std::max<Um>(1, kinds_[k].room)));
        for (int count = most; count >= 0; --count) {
            if (count > 0) {
                chosen_.emplace_back(static_cast<int>(k), count);
            }
            left_[k] -= count;
            descend(k + 1, room - count * kinds_[k].room);
            left_[k] += count;
            if (count > 0) {
                chosen_.pop_back();
            }
            if (tries_ < 0) {
                return;
            }
        }
    }

    [[nodiscard]] bool more_fits(Um rest) const {
        for (std::size_t k = kinds_.size(); k-- > 0;) {
            if (left_[k] > 0 && fits(k, rest)) {
                return true;
            }
        }
        return false;
    }

    void keep(Um rest) {
        if (chosen_.empty() || !more_fits(rest)) {
            put({chosen_, -1, 0, waste_of(rest), std::max<Um>(0, rest), 0, 0, 0});
        }
        if (asked_.may_straddle) {
            straddle(rest);
        }
    }

    void straddle(Um rest) {
        for (std::size_t k = 0; k < kinds_.size(); ++k) {
            const auto& slots = kinds_[k].slots;
            if (left_[k] == 0 || slots.size() < 2) {
                continue;
            }
            Um room = rest;
            int before = 0;
            while (before + 1 < static_cast<int>(slots.size())) {
                const Slot& slot = slots[static_cast<std::size_t>(before)];
                if (slot.length > room) {
                    break;
                }
                room -= room_of(slot, asked_.step);
                ++before;
            }
            if (before > 0) {
                put({chosen_, static_cast<int>(k), before, waste_of(room), std::max<Um>(0, room), 0, 0, 0});
            }
        }
    }

    [[nodiscard]] int slots_in(const Filling& filling) const {
        int slots = filling.slots_before;
        for (const auto& [kind, count] : filling.kinds) {
            slots += count * static_cast<int>(kinds_[static_cast<std::size_t>(kind)].slots.size());
        }
        return slots;
    }

    void put(Filling filling) {
        if ((filling.kinds.empty() && filling.straddles < 0) || filling.waste > asked_.bearable) {
            return;
        }
        filling.counts = std::max<Um>(0, filling.waste - asked_.tolerated);
        filling.slots = asked_.few ? slots_in(filling) : 0;
        filling.lot = asked_.shuffle != nullptr ? drawn(*asked_.shuffle) : 0;
        const auto place = std::ranges::upper_bound(found_, filling, is_better);
        found_.insert(place, std::move(filling));
        if (found_.size() > asked_.most) {
            found_.pop_back();
        }
    }

    const std::vector<Kind>& kinds_;
    std::vector<int> left_;
    const FillingAsked& asked_;
    long tries_;
    Um smallest_ = 0, overhang_ = 0;
    std::vector<Um> sum_after_;
    std::vector<std::pair<int, int>> chosen_;
    std::vector<Filling> found_;
};

}  // namespace

std::vector<Filling> fillings(const std::vector<Kind>& kinds, const std::vector<int>& left, const FillingAsked& asked,
                              long& steps) {
    return Filler(kinds, left, asked).run(steps);
}

}  // namespace truehang::laying
