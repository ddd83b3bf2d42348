// SPDX-License-Identifier: Apache-2.0
#include "rolls/fitting.h"

#include "rolls/rows.h"

#include <algorithm>
#include <bit>
#include <numeric>
#include <tuple>
#include <unordered_map>

namespace truehang::laying {

namespace {

using Set = std::uint64_t;
constexpr std::size_t most_members = 64;

Set member(std::size_t i) { return Set{1} << i; }
std::size_t first_of(Set set) { return static_cast<std::size_t>(std::countr_zero(set)); }
bool is_part(Set some, Set all) { return some != 0 && some != all; }

Um length_of(const Run& run) {
    return std::accumulate(run.slots.begin(), run.slots.end(), Um{0},
                           [](Um sum, const Slot& slot) { return sum + slot.length; });
}

/// A clean stretch, its places counted on through all rolls.
struct Along {
    Stretch on;
    std::size_t roll = 0, lot = 0;
    Um clean_behind = 0;  ///< in this lot and those after it
};

/// The rolls one behind the other, lot by lot.
class Cloth {
public:
    explicit Cloth(const LotsProblem& problem);

    [[nodiscard]] bool is_empty() const { return along_.empty(); }
    [[nodiscard]] const Along& operator[](std::size_t i) const { return along_[i]; }
    [[nodiscard]] std::size_t lots() const { return begins_.size() - 1; }
    /// The first stretch of a lot; nothing where the lot has none.
    [[nodiscard]] std::optional<std::size_t> begin_of(std::size_t lot) const {
        return begins_[lot] < begins_[lot + 1] ? std::optional(begins_[lot]) : std::nullopt;
    }
    /// Lays the run at or behind `at`, on one roll of the same lot; false where it fits nowhere.
    bool lay(const Run& run, std::size_t& along, Um& at) const;

private:
    const LotsProblem& problem_;
    std::vector<Along> along_;
    std::vector<std::size_t> begins_;  ///< by lot, and the end
};

/// Rolls of short stretches come first: what fits there is soon known.
Cloth::Cloth(const LotsProblem& problem) : problem_(problem) {
    const auto longest = [&](std::size_t roll) {
        Um most = 0;
        for (const Stretch& on : problem.grounds[roll].stretches) {
            most = std::max(most, on.to - on.from);
        }
        return most;
    };
    Um offset = 0;
    for (std::size_t lot = 0; lot < problem.lots.size(); ++lot) {
        begins_.push_back(along_.size());
        auto rolls = problem.lots[lot].rolls;
        std::ranges::stable_sort(rolls, {}, longest);
        for (const std::size_t roll : rolls) {
            for (const Stretch& on : problem.grounds[roll].stretches) {
                along_.push_back({{offset + on.from, offset + on.to, offset + on.phase}, roll, lot, 0});
            }
            offset += problem.grounds[roll].length;
        }
    }
    begins_.push_back(along_.size());
    Um clean = 0;
    for (std::size_t i = along_.size(); i-- > 0;) {
        along_[i].clean_behind = clean;
        clean += along_[i].on.to - along_[i].on.from;
    }
}

bool Cloth::lay(const Run& run, std::size_t& along, Um& at) const {
    const std::size_t end = begins_[along_[along].lot + 1];
    std::size_t slot = 0;
    for (; along < end; ++along) {
        if (slot > 0 && along_[along].roll != along_[along - 1].roll) {
            slot = 0;
        }
        const Stretch& on = along_[along].on;
        for (; slot < run.slots.size(); ++slot) {
            const Um from = first_start(on, at, run.slots[slot].phase, problem_.rules.repeat);
            if (from + run.slots[slot].length > on.to) {
                break;
            }
            at = from + run.slots[slot].length;
        }
        if (slot == run.slots.size()) {
            return true;
        }
    }
    return false;
}

/// What can be reached: some runs laid, the last of them ending at `at`.
struct Reached {
    Set laid = 0;   ///< runs
    Set split = 0;  ///< rooms that part of was laid when a later lot was begun
    std::size_t along = 0;
    Um at = 0;
    Um length = 0;    ///< of all that is laid
    int run = -1;     ///< the last one
    int before = -1;  ///< what it was reached from
};

class Fitting {
public:
    Fitting(const LotsProblem& problem, int out, int split, long steps);
    std::optional<LotsPlan> run();

private:
    struct Same {
        Set laid, split;
        std::size_t lot;
        friend bool operator==(const Same&, const Same&) = default;
    };
    struct Mixed {
        std::size_t operator()(const Same& same) const {
            constexpr Set odd = 0x9e3779b97f4a7c15U;
            const Set mixed = (same.laid * odd) ^ ((same.split + same.lot * odd) << 7U);
            return (mixed ^ (mixed >> 29U)) * odd;
        }
    };

    [[nodiscard]] bool is_too_large() const {
        return std::max(lengths_.size(), problem_.windows.size()) > most_members;
    }
    void number_runs(std::size_t window);
    [[nodiscard]] const Reached& reached(int number) const { return reached_[static_cast<std::size_t>(number)]; }
    [[nodiscard]] Um left_behind(const Reached& here) const {
        const Along& along = cloth_[here.along];
        return along.clean_behind + along.on.to - here.at;
    }
    [[nodiscard]] bool is_whole(Set laid) const {
        return std::ranges::none_of(windows_, [&](Set runs) { return is_part(laid & runs, runs); });
    }
    [[nodiscard]] Set begun_rooms(Set laid) const;
    void go_on_from(int number);
    void lay_next(Reached next, std::size_t run);
    void keep(const Reached& next);
    void narrow(std::size_t level);
    void note_end(int number);
    [[nodiscard]] LotsPlan plan_of(int end) const;
    [[nodiscard]] int lot_of_room(const LotsPlan& plan, int room) const;

    const LotsProblem& problem_;
    Rows lines_;
    Cloth cloth_;
    std::vector<Set> alike_;            ///< runs of one window that are cut alike: they come in their order
    std::vector<Set> windows_, rooms_;  ///< the runs of each
    std::vector<Um> lengths_;           ///< by run
    Um needed_ = 0;                     ///< length of the runs that a better plan lays at least
    int most_split_ = 0;
    std::size_t width_ = 0;  ///< so many sets of as many runs go on
    std::vector<Reached> reached_;
    std::unordered_map<Same, std::size_t, Mixed> numbers_;  ///< of those with the most runs
    std::pair<int, int> best_;                              ///< windows left out, rooms split
    int best_end_ = -1;
};

Fitting::Fitting(const LotsProblem& problem, int out, int split, long steps)
    : problem_(problem),
      lines_(problem),
      cloth_(problem),
      most_split_(out > 0 ? static_cast<int>(most_members) : split - 1),
      best_(out, split) {
    for (const Run& run : lines_.runs()) {
        lengths_.push_back(length_of(run));
    }
    std::vector<Um> windows;
    for (std::size_t w = 0; w < problem.windows.size(); ++w) {
        windows.push_back(
            std::accumulate(lengths_.begin() + lines_.first_of(w), lengths_.begin() + lines_.first_of(w + 1), Um{0}));
        if (!is_too_large()) {
            number_runs(w);
        }
    }
    std::ranges::sort(windows);
    needed_ = std::accumulate(windows.begin(), windows.end() - std::max(0, out - 1), Um{0});
    const auto runs = static_cast<long>(lengths_.size());
    width_ = static_cast<std::size_t>(std::max(16L, steps / std::max(1L, runs * runs)));
}

void Fitting::number_runs(std::size_t window) {
    const auto first = static_cast<std::ptrdiff_t>(alike_.size());
    windows_.push_back(0);
    for (int i = lines_.first_of(window); i < lines_.first_of(window + 1); ++i) {
        const auto run = static_cast<std::size_t>(i);
        const auto same = std::find_if(alike_.begin() + first, alike_.end(), [&](Set runs) {
            return lines_.runs()[first_of(runs)].slots == lines_.runs()[run].slots;
        });
        (same == alike_.end() ? alike_.emplace_back(0) : *same) |= member(run);
        windows_.back() |= member(run);
    }
    if (problem_.windows[window].room >= 0) {
        const auto room = static_cast<std::size_t>(problem_.windows[window].room);
        rooms_.resize(std::max(rooms_.size(), room + 1), 0);
        rooms_[room] |= windows_.back();
    }
}

/// Rooms that part of is laid.
Set Fitting::begun_rooms(Set laid) const {
    Set begun = 0;
    for (std::size_t room = 0; room < rooms_.size(); ++room) {
        begun |= is_part(laid & rooms_[room], rooms_[room]) ? member(room) : 0;
    }
    return begun;
}

/// Each run that isn't laid is the next: in the same lot, or in a later one where all windows begun are whole.
void Fitting::go_on_from(int number) {
    Reached here = reached(number);
    here.before = number;
    Reached later = here;
    later.split |= begun_rooms(here.laid);
    const bool may_leave = is_whole(here.laid) && std::popcount(later.split) <= most_split_;
    for (const Set runs : alike_) {
        if ((runs & ~here.laid) == 0) {
            continue;
        }
        const std::size_t run = first_of(runs & ~here.laid);
        lay_next(here, run);
        for (std::size_t lot = cloth_[here.along].lot + 1; may_leave && lot < cloth_.lots(); ++lot) {
            if (const auto begin = cloth_.begin_of(lot)) {
                later.along = *begin;
                later.at = cloth_[*begin].on.from;
                lay_next(later, run);
            }
        }
    }
}

void Fitting::lay_next(Reached next, std::size_t run) {
    if (!cloth_.lay(lines_.runs()[run], next.along, next.at)) {
        return;
    }
    next.laid |= member(run);
    next.length += lengths_[run];
    next.run = static_cast<int>(run);
    if (next.length + left_behind(next) >= needed_) {
        keep(next);
    }
}

void Fitting::keep(const Reached& next) {
    const auto [known, is_new] = numbers_.try_emplace({next.laid, next.split, cloth_[next.along].lot}, reached_.size());
    if (is_new) {
        reached_.push_back(next);
    } else if (next.at < reached_[known->second].at) {
        reached_[known->second] = next;
    }
}

/// Of those from `level` on only the ones that waste least; of that a tenth of what is laid is taken off, so that long
/// runs don't stay to the end.
void Fitting::narrow(std::size_t level) {
    if (reached_.size() - level <= width_) {
        return;
    }
    const auto begin = reached_.begin() + static_cast<std::ptrdiff_t>(level);
    const auto end = begin + static_cast<std::ptrdiff_t>(width_);
    const auto key = [&](const Reached& each) {
        return std::tuple(-(each.length + left_behind(each) + each.length / 10), each.laid, each.split, each.along);
    };
    std::ranges::nth_element(begin, end, reached_.end(), {}, key);
    reached_.erase(end, reached_.end());
    std::ranges::sort(begin, reached_.end(), {}, key);  // the same order everywhere
}

void Fitting::note_end(int number) {
    const Reached& here = reached(number);
    if (!is_whole(here.laid)) {
        return;
    }
    const auto out = std::ranges::count_if(windows_, [&](Set runs) { return runs != 0 && (here.laid & runs) == 0; });
    const std::pair found(static_cast<int>(out), std::popcount(here.split));
    if (found < best_) {
        best_ = found;
        best_end_ = number;
    }
}

LotsPlan Fitting::plan_of(int end) const {
    std::vector<Row> rows(problem_.grounds.size());
    LotsPlan plan;
    plan.lot_of.assign(problem_.windows.size(), no_lot);
    for (int number = end; reached(number).run >= 0; number = reached(number).before) {
        const Reached& each = reached(number);
        const Along& along = cloth_[each.along];
        plan.lot_of[static_cast<std::size_t>(lines_.window_of(each.run))] = static_cast<int>(along.lot);
        rows[along.roll].insert(rows[along.roll].begin(), {each.run, 0, 0});
    }
    for (std::size_t roll = 0; roll < rows.size(); ++roll) {
        plan.rolls.push_back(lines_.laid(roll, rows[roll]));
    }
    for (std::size_t w = 0; w < windows_.size(); ++w) {
        if (windows_[w] == 0) {
            plan.lot_of[w] = lot_of_room(plan, problem_.windows[w].room);
        }
    }
    return plan;
}

/// Where a window of loose pieces alone goes: with its room, else to the first lot.
int Fitting::lot_of_room(const LotsPlan& plan, int room) const {
    for (std::size_t w = 0; w < windows_.size(); ++w) {
        if (room >= 0 && problem_.windows[w].room == room && plan.lot_of[w] != no_lot) {
            return plan.lot_of[w];
        }
    }
    return 0;
}

/// All sets of one run, of two, and so on.
std::optional<LotsPlan> Fitting::run() {
    if (is_too_large() || cloth_.is_empty()) {
        return std::nullopt;
    }
    reached_.push_back({0, 0, 0, cloth_[0].on.from, 0, -1, -1});
    for (std::size_t level = 0; level < reached_.size();) {
        const std::size_t next = reached_.size();
        numbers_.clear();
        for (; level < next; ++level) {
            note_end(static_cast<int>(level));
            go_on_from(static_cast<int>(level));
        }
        narrow(level);
    }
    return best_end_ < 0 ? std::nullopt : std::optional(plan_of(best_end_));
}

}  // namespace

std::optional<LotsPlan> fit_windows(const LotsProblem& problem, int out, int split, long steps) {
    return Fitting(problem, out, split, steps).run();
}

}  // namespace truehang::laying
