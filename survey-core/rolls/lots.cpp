// SPDX-License-Identifier: Apache-2.0
#include "rolls/lots.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <optional>
#include <set>
#include <tuple>

namespace truehang::laying {

namespace {

using Assignment = std::vector<int>;  ///< lot by window

struct Score {
    bool lies = false;  ///< everything assigned could be laid
    int dropped = 0, split_rooms = 0;
    Um used = 0;
    int lots = 0;
    Um longest = 0;

    [[nodiscard]] auto key() const { return std::tuple(!lies, dropped, split_rooms, used, lots, -longest); }
    friend bool operator<(const Score& a, const Score& b) { return a.key() < b.key(); }
};

class Chooser {
public:
    Chooser(const LotsProblem& problem, long steps) : problem_(problem), steps_(steps) {
        for (std::size_t w = 0; w < problem.windows.size(); ++w) {
            const int room = problem.windows[w].room;
            const auto same = std::ranges::find_if(
                units_, [&](const auto& unit) { return room >= 0 && problem.windows[unit.front()].room == room; });
            if (same == units_.end()) {
                units_.push_back({w});
            } else {
                same->push_back(w);
            }
        }
        std::ranges::stable_sort(units_, std::ranges::greater(),
                                 [&](const auto& unit) { return length_of_unit(unit); });
    }

    LotsPlan run() {
        begin();
        better_by_changes();
        return laid_out();
    }

private:
    using Unit = std::vector<std::size_t>;

    [[nodiscard]] int lots() const { return static_cast<int>(problem_.lots.size()); }
    [[nodiscard]] Um length_of_unit(const Unit& unit) const {
        Um sum = 0;
        for (const std::size_t w : unit) {
            sum += problem_.windows[w].length;
        }
        return sum;
    }

    struct LotLaid {
        Laid laid;
        long steps = 0;
    };

    /// A lot's windows laid with so many steps; what was laid with as many before is remembered.
    const Laid& lay_lot(int lot, const std::vector<std::size_t>& windows, long steps) {
        const auto key = std::pair(lot, windows);
        LotLaid& known = known_[key];
        if (known.steps < steps) {
            known = {lay_anew(lot, windows, steps), steps};
        }
        return known.laid;
    }
    Laid lay_anew(int lot, const std::vector<std::size_t>& windows, long steps);

    [[nodiscard]] std::vector<std::size_t> windows_of(const Assignment& assignment, int lot) const {
        std::vector<std::size_t> windows;
        for (std::size_t w = 0; w < assignment.size(); ++w) {
            if (assignment[w] == lot) {
                windows.push_back(w);
            }
        }
        return windows;
    }
    [[nodiscard]] int split_rooms(const Assignment& assignment) const;
    Score score(const Assignment& assignment, long steps);
    bool try_out(const Assignment& assignment);
    bool may_lie(const Assignment& assignment, int lot) {
        const auto windows = windows_of(assignment, lot);
        return windows.empty() || lay_lot(lot, windows, quick_).complete;
    }

    void begin();
    void try_every_way();
    void fill_up(int first);
    void fill_with_smallest();
    void better_by_changes();
    bool change_units();
    bool change_windows();
    bool swap_windows();
    [[nodiscard]] bool is_spent() const { return spent_ > steps_ / 2; }
    LotsPlan laid_out();

    const LotsProblem& problem_;
    long steps_;
    long quick_ = 600;
    long spent_ = 0;
    std::vector<Unit> units_;
    std::map<std::pair<int, std::vector<std::size_t>>, LotLaid> known_;
    Assignment best_;
    std::optional<Score> best_score_;
};

Laid Chooser::lay_anew(int lot, const std::vector<std::size_t>& windows, long steps) {
    const LotOfRolls& of = problem_.lots[static_cast<std::size_t>(lot)];
    std::vector<Ground> grounds;
    for (const std::size_t r : of.rolls) {
        grounds.push_back(problem_.grounds[r]);
    }
    std::vector<Run> runs;
    std::vector<Run> loose;
    Um length = 0;
    for (const std::size_t w : windows) {
        const WindowRuns& window = problem_.windows[w];
        runs.insert(runs.end(), window.runs.begin(), window.runs.end());
        loose.insert(loose.end(), window.loose.begin(), window.loose.end());
        length += window.length;
    }
    if (length > of.clean) {
        return {};
    }
    spent_ += std::min(steps, quick_);
    const bool is_quick = steps <= quick_;
    const long first_steps = is_quick ? steps : steps / 4;
    Relaxed relaxed;
    if (!is_quick) {
        relaxed = relax(problem_, of.rolls, windows, length, 1);
    }
    Laid laid = lay(grounds, runs, problem_.rules, {std::max(length, relaxed.bound.least), first_steps, {}, {}, {}});
    if (!is_quick && !(laid.complete && laid.used <= relaxed.bound.least)) {
        relaxed =
            relax(problem_, of.rolls, windows, laid.complete ? laid.used : std::numeric_limits<Um>::max(), 50 * steps);
        Laid again = lay(grounds, runs, problem_.rules,
                         {relaxed.bound.least, steps - first_steps, relaxed.bound.patterns, relaxed.problem.demands,
                          relaxed.problem.grounds});
        if (again.complete && (!laid.complete || again.used <= laid.used)) {
            laid = std::move(again);
        }
    }
    return laid.complete ? lay_loose(grounds, std::move(laid), loose, problem_.rules) : laid;
}

int Chooser::split_rooms(const Assignment& assignment) const {
    int split = 0;
    for (const Unit& unit : units_) {
        std::set<int> used;
        for (const std::size_t w : unit) {
            if (assignment[w] != no_lot) {
                used.insert(assignment[w]);
            }
        }
        split += used.size() > 1 ? 1 : 0;
    }
    return split;
}

Score Chooser::score(const Assignment& assignment, long steps) {
    Score score;
    score.dropped = static_cast<int>(std::ranges::count(assignment, no_lot));
    score.split_rooms = split_rooms(assignment);
    for (int lot = 0; lot < lots(); ++lot) {
        const auto windows = windows_of(assignment, lot);
        if (windows.empty()) {
            continue;
        }
        const Laid& laid = lay_lot(lot, windows, steps);
        if (!laid.complete) {
            return score;
        }
        score.used += laid.used;
        score.longest = std::max(score.longest, laid.longest);
        ++score.lots;
    }
    score.lies = true;
    return score;
}

bool Chooser::try_out(const Assignment& assignment) {
    const Score found = score(assignment, quick_);
    if (found.lies && (!best_score_ || found < *best_score_)) {
        best_score_ = found;
        best_ = assignment;
        return true;
    }
    return false;
}

void Chooser::try_every_way() {
    constexpr double most_ways = 300;
    if (std::pow(lots(), static_cast<double>(units_.size())) > most_ways) {
        return;
    }
    std::vector<int> lot(units_.size(), 0);
    Assignment assignment(problem_.windows.size(), 0);
    while (!is_spent()) {
        for (std::size_t u = 0; u < units_.size(); ++u) {
            for (const std::size_t w : units_[u]) {
                assignment[w] = lot[u];
            }
        }
        try_out(assignment);
        std::size_t next = 0;
        while (next < lot.size() && ++lot[next] == lots()) {
            lot[next++] = 0;
        }
        if (next == lot.size()) {
            return;
        }
    }
}

/// Rooms, the largest first, each to the first lot from `first` on where it still lies; then what is left window by
/// window, the smallest first, so that as many as can be are cut.
void Chooser::fill_up(int first) {
    Assignment assignment(problem_.windows.size(), no_lot);
    const auto put = [&](const Unit& unit) {
        for (int i = 0; i < lots(); ++i) {
            const int lot = (first + i) % lots();
            for (const std::size_t w : unit) {
                assignment[w] = lot;
            }
            if (may_lie(assignment, lot)) {
                return true;
            }
            for (const std::size_t w : unit) {
                assignment[w] = no_lot;
            }
        }
        return false;
    };
    std::vector<std::size_t> left;
    for (const Unit& unit : units_) {
        if (is_spent() || !put(unit)) {
            left.insert(left.end(), unit.begin(), unit.end());
        }
    }
    if (!left.empty()) {
        // Short, or rooms have to be split: small windows first.
        std::ranges::stable_sort(left, {}, [&](std::size_t w) { return problem_.windows[w].length; });
        for (const std::size_t w : left) {
            put({w});
        }
    }
    try_out(assignment);
}

void Chooser::begin() {
    best_.assign(problem_.windows.size(), no_lot);
    try_out(best_);
    for (int lot = 0; lot < lots(); ++lot) {
        try_out(Assignment(problem_.windows.size(), lot));
    }
    if (best_score_->dropped == 0 && lots() == 1) {
        return;
    }
    const long deep = lots() == 1 ? steps_ : steps_ / 4;
    for (int lot = 0; lot < lots() && best_score_->dropped > 0; ++lot) {
        const Assignment all(problem_.windows.size(), lot);
        if (score(all, deep).lies) {
            try_out(all);
        }
    }
    if (best_score_->dropped == 0 && lots() == 1) {
        return;
    }
    try_every_way();
    for (int lot = 0; lot < lots(); ++lot) {
        fill_up(lot);
    }
    if (best_score_->dropped > 0) {
        fill_with_smallest();
    }
}

/// Every window by itself, the smallest first: the most windows where cloth is short.
void Chooser::fill_with_smallest() {
    std::vector<std::size_t> order(problem_.windows.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::stable_sort(order, {}, [&](std::size_t w) { return problem_.windows[w].length; });
    Assignment assignment(problem_.windows.size(), no_lot);
    for (const std::size_t w : order) {
        for (int lot = 0; lot < lots() && !is_spent(); ++lot) {
            assignment[w] = lot;
            if (may_lie(assignment, lot)) {
                break;
            }
            assignment[w] = no_lot;
        }
    }
    try_out(assignment);
}

bool Chooser::change_units() {
    for (const Unit& unit : units_) {
        for (int lot = 0; lot < lots() && !is_spent(); ++lot) {
            Assignment changed = best_;
            for (const std::size_t w : unit) {
                changed[w] = lot;
            }
            if (changed != best_ && try_out(changed)) {
                return true;
            }
        }
    }
    return false;
}

bool Chooser::change_windows() {
    for (std::size_t w = 0; w < best_.size(); ++w) {
        for (int lot = 0; lot < lots() && !is_spent(); ++lot) {
            Assignment changed = best_;
            changed[w] = lot;
            if (changed != best_ && try_out(changed)) {
                return true;
            }
        }
    }
    return false;
}

bool Chooser::swap_windows() {
    for (std::size_t a = 0; a < best_.size(); ++a) {
        for (std::size_t b = a + 1; b < best_.size() && !is_spent(); ++b) {
            if (best_[a] == best_[b]) {
                continue;
            }
            Assignment changed = best_;
            std::swap(changed[a], changed[b]);
            if (try_out(changed)) {
                return true;
            }
        }
    }
    return false;
}

void Chooser::better_by_changes() {
    if (lots() == 1 && best_score_->dropped == 0) {
        return;
    }
    while (!is_spent() && (change_units() || change_windows() || swap_windows())) {
    }
}

LotsPlan Chooser::laid_out() {
    const Score quick = *best_score_;
    LotsPlan plan;
    plan.lot_of = best_;
    plan.rolls.resize(problem_.grounds.size());
    plan.dropped = quick.dropped;
    plan.split_rooms = quick.split_rooms;
    for (int lot = 0; lot < lots(); ++lot) {
        const auto windows = windows_of(best_, lot);
        if (windows.empty()) {
            continue;
        }
        const Laid first = lay_lot(lot, windows, quick_);
        const Laid& deep = lay_lot(lot, windows, steps_);
        const bool better = deep.complete && (!first.complete || deep.used <= first.used);
        const Laid& laid = better ? deep : first;
        const auto& rolls = problem_.lots[static_cast<std::size_t>(lot)].rolls;
        for (std::size_t i = 0; i < rolls.size(); ++i) {
            plan.rolls[rolls[i]] = laid.rolls[i];
        }
        plan.used += laid.used;
        plan.longest = std::max(plan.longest, laid.longest);
        ++plan.lots;
    }
    return plan;
}

}  // namespace

LotsPlan choose_lots(const LotsProblem& problem, long steps) { return Chooser(problem, steps).run(); }

}  // namespace truehang::laying
