// SPDX-License-Identifier: Apache-2.0
#include "rolls/laying.h"

#include "rolls/appending.h"

#include <algorithm>
#include <limits>
#include <map>
#include <numeric>
#include <optional>

namespace truehang::laying {

std::vector<Kind> kinds_of(const std::vector<Run>& runs, const LayingRules& rules) {
    std::map<std::vector<Slot>, std::vector<int>> alike;
    for (std::size_t i = 0; i < runs.size(); ++i) {
        alike[runs[i].slots].push_back(static_cast<int>(i));
    }
    std::vector<Kind> kinds;
    for (auto& [slots, numbers] : alike) {
        Kind kind{slots, 0, 0, std::move(numbers)};
        for (const Slot& slot : slots) {
            kind.room += room_of(slot, rules.step);
        }
        kind.overhang = room_of(slots.back(), rules.step) - slots.back().length;
        kinds.push_back(std::move(kind));
    }
    std::ranges::stable_sort(kinds, std::ranges::greater(), &Kind::room);
    return kinds;
}

namespace {

/// A depth-first search over stretches, each with its best fillings; goes astray from the best at most `astray_` times.
class Search {
public:
    Search(const std::vector<Ground>& rolls, const std::vector<Run>& runs, const LayingRules& rules,
           const LayingAsked& asked)
        : rolls_(rolls),
          runs_(runs),
          rules_(rules),
          asked_(asked),
          kinds_(kinds_of(runs, rules)),
          order_(rolls.size()),
          begun_(rolls.size(), false),
          placed_(rolls.size()),
          used_by_(rolls.size(), 0),
          seed_(static_cast<unsigned>(asked.steps)) {
        for (const Kind& kind : kinds_) {
            left_.push_back(static_cast<int>(kind.runs.size()));
            Um sum = 0;
            for (const Slot& slot : kind.slots) {
                sum += slot.length;
            }
            lengths_.push_back(sum);
            remaining_ += sum * left_.back();
            remaining_runs_ += left_.back();
        }
        for (const Ground& roll : rolls) {
            like_.push_back(static_cast<std::size_t>(std::ranges::find(rolls, roll) - rolls.begin()));
        }
        differ_ = std::ranges::any_of(rolls, [&](const Ground& roll) { return !(roll == rolls.front()); });
    }

    /// First without chance, straying further and further; then again and again with equal fillings shuffled.
    Laid run() {
        begin_with_patterns();
        if (remaining_runs_ == 0) {
            finish();
            return std::move(best_);
        }
        for (const int astray : {0, 1, 2, 4}) {
            for (int order = 0; order < (differ_ ? 4 : 1) && !is_enough(); ++order) {
                forced_ = order % 2 == 0;
                attempt(order, astray, asked_.steps / (differ_ ? 64 : 16));
            }
        }
        shuffles_ = true;
        for (int turn = 0; !is_enough() && steps_ < asked_.steps; ++turn) {
            few_ = turn / 2 % 2 == 1;
            tolerated_ = turn % 8 < 2 ? 0 : spare() * (turn % 8) / 4;
            forced_ = !differ_ || turn % 2 == 1 || turn / 4 % 2 == 0;
            attempt(turn % 8 == 0 ? 0 : 1 + turn % 3, turn % 2 == 1 ? 1000 : 1 + turn % 3, 4000 + 500L * turn);
        }
        return std::move(best_);
    }

private:
    [[nodiscard]] bool is_enough() const { return best_.complete && best_.used <= asked_.enough; }
    [[nodiscard]] bool is_over() const { return steps_ > limit_ || is_enough(); }

    /// What may still be wasted on the way to a better plan.
    [[nodiscard]] Um bearable(std::size_t roll) const {
        const Um used = closed_ + (placed_[roll].empty() ? 0 : so_far(roll)) + remaining_;
        return most_used() - used;
    }

    /// What a plan that is good enough may waste on a roll.
    [[nodiscard]] Um spare() const {
        return std::max<Um>(0, asked_.enough - remaining_) / static_cast<Um>(std::max<std::size_t>(1, rolls_.size()));
    }

    void attempt(int order, int astray, long steps) {
        sort_rolls(order);
        limit_ = ++steps_ + steps;
        astray_ = astray;
        aims_high_ = order > 0 && !asked_.any_plan;
        open_roll();
    }

    /// Orders in which rolls are begun: the shortest first, the longest first, as given, from the last.
    void sort_rolls(int order) {
        std::iota(order_.begin(), order_.end(), std::size_t{0});
        const auto length = [&](std::size_t roll) { return rolls_[roll].length; };
        if (order == 0) {
            std::ranges::stable_sort(order_, {}, length);
        } else if (order == 1) {
            std::ranges::stable_sort(order_, std::ranges::greater(), length);
        } else if (order == 3) {
            std::ranges::reverse(order_);
        }
    }

    /// Whole times that the relaxed plan takes a pattern are laid as they are; the search does the rest.
    void begin_with_patterns();
    bool lay_pattern(const Pattern& pattern, std::size_t roll);

    void finish() {
        Laid laid{true, placed_, 0, 0};
        for (std::size_t r = 0; r < rolls_.size(); ++r) {
            const RollUse use = use_of(rolls_[r], placed_[r], rules_.useful);
            laid.used += use.used;
            // A roll that nothing is cut from is no remnant.
            laid.longest = std::max(laid.longest, use.longest);
        }
        if (!best_.complete || std::pair(laid.used, -laid.longest) < std::pair(best_.used, -best_.longest)) {
            best_ = std::move(laid);
        }
    }

    void open_roll() {
        if (remaining_runs_ == 0) {
            finish();
            return;
        }
        std::vector<char> tried;
        int strayed = 0;
        const int astray = astray_;
        for (const std::size_t roll : order_) {
            if (begun_[roll] || rolls_[roll].stretches.empty()) {
                continue;
            }
            tried.resize(rolls_.size(), 0);
            if (tried[like_[roll]] != 0) {
                if (!differ_) {
                    break;
                }
                continue;
            }
            if (strayed > astray || is_over()) {
                break;
            }
            astray_ = astray - strayed;
            tried[like_[roll]] = 1;
            begun_[roll] = true;
            const long before = filled_;
            stretch(roll, 0, {});
            strayed += filled_ > before ? 1 : 0;  // a roll that takes nothing was no choice
            begun_[roll] = false;
        }
        astray_ = astray;
    }

    void close_roll(std::size_t roll) {
        if (placed_[roll].empty()) {
            return;
        }
        used_by_[roll] = use_of(rolls_[roll], placed_[roll], rules_.useful).used;
        closed_ += used_by_[roll];
        if (can_better(closed_)) {
            open_roll();
        }
        closed_ -= used_by_[roll];
    }

    /// Whether a plan that has used so much for what is laid can still become better than the best.
    [[nodiscard]] bool can_better(Um used) const { return used + remaining_ <= most_used(); }
    [[nodiscard]] Um most_used() const {
        if (aims_high_) {
            return asked_.enough;
        }
        return best_.complete ? best_.used - 1 : std::numeric_limits<Um>::max();
    }

    struct Carried {
        int kind = -1;
        int run = 0;
        std::size_t next = 0;  ///< slot
    };

    void stretch(std::size_t roll, std::size_t index, Carried carried);
    void fill(std::size_t roll, std::size_t index, const std::vector<Filling>& ways);
    bool put_slots(std::size_t roll, std::size_t index, Carried& carried);
    bool put_filling(std::size_t roll, std::size_t index, const Filling& filling, Carried& carried);
    void take(int kind, int count) {
        left_[static_cast<std::size_t>(kind)] -= count;
        remaining_ -= count * lengths_[static_cast<std::size_t>(kind)];
        remaining_runs_ -= count;
    }
    [[nodiscard]] Carried next_run(int kind) const {
        const Kind& of = kinds_[static_cast<std::size_t>(kind)];
        return {kind, of.runs[static_cast<std::size_t>(left_[static_cast<std::size_t>(kind)] - 1)], 0};
    }
    [[nodiscard]] Um cursor(std::size_t roll, std::size_t index) const {
        const Um from = rolls_[roll].stretches[index].from;
        return placed_[roll].empty() ? from : std::max(from, placed_[roll].back().to);
    }
    [[nodiscard]] Um so_far(std::size_t roll) const;
    /// The largest kind left that fits; -1: none.
    [[nodiscard]] int largest_within(Um room) const {
        for (std::size_t k = 0; k < kinds_.size(); ++k) {
            if (left_[k] > 0 && kinds_[k].room - kinds_[k].overhang <= room) {
                return static_cast<int>(k);
            }
        }
        return -1;
    }
    [[nodiscard]] FillingAsked asked_for(std::size_t roll, std::size_t index);

    const std::vector<Ground>& rolls_;
    const std::vector<Run>& runs_;
    const LayingRules& rules_;
    const LayingAsked& asked_;
    std::vector<Kind> kinds_;
    std::vector<std::size_t> order_;
    std::vector<std::size_t> like_;  ///< the first roll that is just like this one
    std::vector<char> begun_;
    std::vector<std::vector<Placed>> placed_;
    std::vector<Um> used_by_;
    std::vector<int> left_;
    std::vector<Um> lengths_;  ///< of one run of each kind
    Um remaining_ = 0;
    int remaining_runs_ = 0;
    Um closed_ = 0;
    long steps_ = 0, limit_ = 0;
    long filled_ = 0;  ///< stretches, so far
    int astray_ = 0;
    bool forced_ = true;   ///< a stretch begins with the largest run left
    bool differ_ = false;  ///< the rolls
    bool shuffles_ = false, few_ = false;
    Um tolerated_ = 0;
    unsigned seed_;
    bool aims_high_ = false;  ///< only plans that are good enough are looked for
    Laid best_;
};

/// Lays the carried run's slots on the stretch; true where all of them lie.
bool Search::put_slots(std::size_t roll, std::size_t index, Carried& carried) {
    const Run& run = runs_[static_cast<std::size_t>(carried.run)];
    const Stretch& on = rolls_[roll].stretches[index];
    while (carried.next < run.slots.size()) {
        const Slot& slot = run.slots[carried.next];
        const Um from = first_start(on, cursor(roll, index), slot.phase, rules_.repeat);
        if (from + slot.length > on.to) {
            return false;
        }
        placed_[roll].push_back({run.first + static_cast<int>(carried.next), from, from + slot.length});
        ++carried.next;
    }
    carried = {};
    return true;
}

/// Runs whose pattern begins where the last one ended come first, so that a half-drop changes phase as seldom, or as
/// often, as is cheapest; the largest overhang comes last.
bool Search::put_filling(std::size_t roll, std::size_t index, const Filling& filling, Carried& carried) {
    std::vector<std::pair<int, int>> todo = filling.kinds;
    const Stretch& on = rolls_[roll].stretches[index];
    for (std::size_t left = todo.size(); left > 0;) {
        std::size_t next = todo.size();
        std::pair<Um, Um> least;
        for (std::size_t i = 0; i < todo.size(); ++i) {
            if (todo[i].second == 0) {
                continue;
            }
            const Kind& kind = kinds_[static_cast<std::size_t>(todo[i].first)];
            const Um at = cursor(roll, index);
            const std::pair key(first_start(on, at, kind.slots.front().phase, rules_.repeat) - at, kind.overhang);
            if (next == todo.size() || key < least) {
                least = key;
                next = i;
            }
        }
        Carried run = next_run(todo[next].first);
        take(todo[next].first, 1);
        if (!put_slots(roll, index, run)) {
            return false;
        }
        left -= --todo[next].second == 0 ? 1 : 0;
    }
    if (filling.straddles < 0) {
        return true;
    }
    carried = next_run(filling.straddles);
    take(filling.straddles, 1);
    return !put_slots(roll, index, carried) && carried.next > 0;
}

FillingAsked Search::asked_for(std::size_t roll, std::size_t index) {
    const Stretch& on = rolls_[roll].stretches[index];
    FillingAsked asked;
    asked.room = on.to - cursor(roll, index);
    if (rules_.step > 0) {
        // Rooms are whole steps of the pattern: the first one begins at a line of it.
        const Um from = cursor(roll, index);
        const Um start = first_start(on, from, 0, rules_.step);
        asked.room = std::max<Um>(0, on.to - start);
    }
    asked.useful = rules_.useful;
    asked.step = rules_.step;
    asked.may_straddle = index + 1 < rolls_[roll].stretches.size();
    asked.most = static_cast<std::size_t>(std::min(astray_, 11)) + 1;
    asked.few = few_;
    asked.bearable = bearable(roll);
    asked.tolerated = tolerated_;
    asked.shuffle = shuffles_ ? &seed_ : nullptr;
    asked.tries = 100 + 40L * std::min(astray_, 20);
    return asked;
}

void Search::stretch(std::size_t roll, std::size_t index, Carried carried) {
    if (++steps_ > limit_ || is_enough()) {
        return;
    }
    const auto& stretches = rolls_[roll].stretches;
    if (index == stretches.size()) {
        if (carried.kind < 0) {
            close_roll(roll);
        }
        return;
    }
    const std::size_t mark = placed_[roll].size();
    const bool lies = carried.kind < 0 || put_slots(roll, index, carried);
    if (!lies) {
        stretch(roll, index + 1, carried);
    } else if (remaining_runs_ == 0) {
        finish();
    } else {
        FillingAsked asked = asked_for(roll, index);
        const bool must = forced_ && mark == placed_[roll].size();
        asked.must = must ? largest_within(asked.room) : -1;
        fill(roll, index, fillings(kinds_, left_, asked, steps_));
    }
    placed_[roll].resize(mark);
}

void Search::fill(std::size_t roll, std::size_t index, const std::vector<Filling>& ways) {
    const int astray = astray_;
    const auto left = left_;
    const Um remaining = remaining_;
    const int remaining_runs = remaining_runs_;
    const std::size_t mark = placed_[roll].size();
    int strayed = 0;
    for (const Filling& way : ways) {
        if (strayed > astray || is_over()) {
            break;
        }
        Carried carried;
        if (put_filling(roll, index, way, carried)) {
            ++filled_;
            astray_ = astray - strayed;
            if (can_better(closed_ + so_far(roll))) {
                stretch(roll, index + 1, carried);
            }
            ++strayed;
        }
        left_ = left;
        remaining_ = remaining;
        remaining_runs_ = remaining_runs;
        placed_[roll].resize(mark);
    }
    if ((ways.empty() || strayed <= astray) && !is_over()) {
        astray_ = astray - (ways.empty() ? 0 : strayed);
        stretch(roll, index + 1, {});
    }
    astray_ = astray;
}

/// Cloth used of a roll up to what is laid on it, whatever comes after.
Um Search::so_far(std::size_t roll) const {
    const Um end = placed_[roll].back().to;
    Um used = end;
    for (const Gap& gap : gaps_of(rolls_[roll], placed_[roll])) {
        const Um size = gap.to - gap.from;
        used -= gap.from < end && gap.ends_stretch && size >= rules_.useful ? size : 0;
    }
    return used;
}

bool Search::lay_pattern(const Pattern& pattern, std::size_t roll) {
    std::vector<std::size_t> asked;
    for (std::size_t i = 0; i < pattern.counts.size(); ++i) {
        const auto kind = std::ranges::find_if(
            kinds_, [&](const Kind& each) { return each.slots.size() == 1 && each.room == asked_.demands[i].length; });
        asked.push_back(static_cast<std::size_t>(kind - kinds_.begin()));
        if (pattern.counts[i] > 0 && (kind == kinds_.end() || left_[asked.back()] < pattern.counts[i])) {
            return false;
        }
    }
    for (std::size_t i = 0; i < pattern.counts.size(); ++i) {
        for (int n = 0; n < pattern.counts[i]; ++n) {
            Carried run = next_run(static_cast<int>(asked[i]));
            take(static_cast<int>(asked[i]), 1);
            put_slots(roll, 0, run);
        }
    }
    begun_[roll] = true;
    closed_ += use_of(rolls_[roll], placed_[roll], rules_.useful).used;
    return true;
}

void Search::begin_with_patterns() {
    for (const Pattern& pattern : asked_.patterns) {
        const Ground& ground = asked_.grounds[pattern.ground].ground;
        int times = static_cast<int>(pattern.share + 1e-6);
        for (std::size_t roll = 0; roll < rolls_.size() && times > 0 && ground.stretches.size() == 1; ++roll) {
            if (!begun_[roll] && rolls_[roll] == ground) {
                times = lay_pattern(pattern, roll) ? times - 1 : 0;
            }
        }
    }
}

}  // namespace

Laid lay(const std::vector<Ground>& rolls, const std::vector<Run>& runs, const LayingRules& rules,
         const LayingAsked& asked) {
    Laid laid;
    if (!asked.patterns.empty()) {
        LayingAsked guided = asked;
        guided.steps = asked.steps / 8;
        laid = Search(rolls, runs, rules, guided).run();
    }
    if (!laid.complete || laid.used > asked.enough) {
        LayingAsked freely = asked;
        freely.patterns = {};
        Laid other = Search(rolls, runs, rules, freely).run();
        if (other.complete && (!laid.complete || other.used < laid.used)) {
            laid = std::move(other);
        }
    }
    if (!laid.complete || laid.used > asked.enough) {
        LayingAsked modestly = asked;
        modestly.patterns = {};
        modestly.steps = asked.steps / 4;
        modestly.any_plan = true;
        Laid other = Search(rolls, runs, rules, modestly).run();
        if (other.complete && (!laid.complete || other.used < laid.used)) {
            laid = std::move(other);
        }
    }
    return laid.complete ? laid : append(rolls, runs, rules);
}

namespace {

struct Place {
    std::size_t roll = 0;
    Um at = 0;
    std::pair<Um, Um> cost;  ///< cloth used for it, then what is left beside it
};

std::optional<Place> cheapest_place(const std::vector<Ground>& rolls, const Laid& laid, Um length, Um useful) {
    std::optional<Place> best;
    for (std::size_t r = 0; r < rolls.size(); ++r) {
        const Um before = use_of(rolls[r], laid.rolls[r], useful).used;
        for (const Gap& gap : gaps_of(rolls[r], laid.rolls[r])) {
            if (gap.to - gap.from < length) {
                continue;
            }
            std::vector<Placed> with = laid.rolls[r];
            with.push_back({0, gap.from, gap.from + length});
            std::ranges::sort(with, {}, &Placed::from);
            const std::pair cost(use_of(rolls[r], with, useful).used - before, gap.to - gap.from - length);
            if (!best || cost < best->cost) {
                best = Place{r, gap.from, cost};
            }
        }
    }
    return best;
}

}  // namespace

Laid lay_loose(const std::vector<Ground>& rolls, Laid laid, const std::vector<Run>& loose, const LayingRules& rules) {
    laid.rolls.resize(rolls.size());
    std::vector<Run> sorted = loose;
    std::ranges::stable_sort(sorted, std::ranges::greater(), [](const Run& run) { return run.slots.front().length; });
    for (const Run& run : sorted) {
        const Um length = run.slots.front().length;
        const auto place = cheapest_place(rolls, laid, length, rules.useful);
        if (!place) {
            laid.complete = false;
            return laid;
        }
        auto& placed = laid.rolls[place->roll];
        placed.push_back({run.first, place->at, place->at + length});
        std::ranges::sort(placed, {}, &Placed::from);
    }
    laid.used = laid.longest = 0;
    for (std::size_t r = 0; r < rolls.size(); ++r) {
        const RollUse use = use_of(rolls[r], laid.rolls[r], rules.useful);
        laid.used += use.used;
        laid.longest = std::max(laid.longest, use.longest);
    }
    return laid;
}

}  // namespace truehang::laying
