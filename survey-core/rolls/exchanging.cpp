// SPDX-License-Identifier: Apache-2.0
#include "rolls/exchanging.h"

#include "rolls/arrangement.h"
#include "rolls/fitting.h"

#include <algorithm>
#include <tuple>

namespace truehang::laying {

namespace {

/// Exchanges `gives` runs of one row from `at` on for `takes` of the other from `place` on.
void exchange_between(Row& one, std::size_t at, std::size_t gives, Row& other, std::size_t place, std::size_t takes) {
    const std::size_t both = std::min(gives, takes);
    const auto from = one.begin() + static_cast<std::ptrdiff_t>(at);
    const auto to = other.begin() + static_cast<std::ptrdiff_t>(place);
    const auto common = static_cast<std::ptrdiff_t>(both);
    std::swap_ranges(from, from + common, to);
    const auto more = from + static_cast<std::ptrdiff_t>(gives);
    const auto less = to + static_cast<std::ptrdiff_t>(takes);
    if (gives > both) {
        other.insert(less, from + common, more);
        one.erase(from + common, more);
    } else {
        one.insert(more, to + common, less);
        other.erase(to + common, less);
    }
}

/// A search from one arrangement to the next, each with a small change.
class Exchange {
public:
    Exchange(const LotsProblem& problem, Um enough) : problem_(problem), enough_(enough), at_(problem) {
        at_.overlooks(true);
        for (const WindowRuns& window : problem.windows) {
            has_loose_ = has_loose_ || !window.loose.empty();
        }
        for (const Ground& ground : problem.grounds) {
            all_cloth_ += ground.length;
        }
    }

    LotsPlan run(const std::vector<LotsPlan>& begun, long steps);

private:
    Draws& draws() { return at_.draws(); }
    std::size_t some_roll(int lot) {
        const auto& rolls = problem_.lots[static_cast<std::size_t>(lot)].rolls;
        return rolls[draws().below(rolls.size())];
    }
    int some_lot() { return static_cast<int>(draws().below(problem_.lots.size())); }
    std::size_t some_run() { return draws().below(at_.runs().size()); }
    std::size_t some_window() { return draws().below(problem_.windows.size()); }
    [[nodiscard]] bool is_enough() const { return std::get<0>(best_key_) <= Taken{0, 0, enough_}; }

    /// Whether the best plan leaves a window out or splits a room.
    [[nodiscard]] bool is_wanting() const { return std::get<0>(best_key_).out > 0 || std::get<0>(best_key_).split > 0; }
    [[nodiscard]] Um weight(const Taken& taken, bool is_hot) const;
    void keep_if_best();
    void round(long steps);
    void pass(const std::vector<LotsPlan>& begun, long steps);
    void fit_more(long steps);
    void step(Um left);
    bool try_move();
    bool exchange_parts();
    bool exchange_ends();
    bool reorder();
    bool bend();
    bool rebuild();
    bool change_windows();
    bool swap_windows();
    bool change_room();
    bool fill();
    bool leave_out();

    const LotsProblem& problem_;
    Um enough_;
    Arrangement at_;
    bool has_loose_ = false;
    Um all_cloth_ = 1;
    Arranged best_;
    std::tuple<Taken, int, Um> best_key_;
    LotsPlan best_plan_;
};

/// None to two runs of one roll against none to two of another.
bool Exchange::exchange_parts() {
    const auto run = some_run();
    const int lot = at_.lot_of_run(run);
    if (lot == no_lot) {
        return false;
    }
    const auto a = at_.roll_of(run);
    const std::size_t b = some_roll(lot);
    if (a == b) {
        return reorder();
    }
    Row& from = at_.change(a);
    Row& to = at_.change(b);
    const auto at =
        static_cast<std::size_t>(std::ranges::find(from, static_cast<int>(run), &InRow::run) - from.begin());
    const std::size_t gives = std::min(from.size() - at, 1 + (draws().below(4) == 0 ? std::size_t{1} : 0));
    const std::size_t place = draws().below(to.size() + 1);
    const std::size_t takes = std::min(to.size() - place, draws().below(3));
    exchange_between(from, at, gives, to, place, takes);
    return at_.holds();
}

bool Exchange::exchange_ends() {
    const int lot = at_.lot_of_run(some_run());
    if (lot == no_lot) {
        return false;
    }
    const std::size_t a = some_roll(lot);
    const std::size_t b = some_roll(lot);
    if (a == b) {
        return false;
    }
    Row& one = at_.change(a);
    Row& other = at_.change(b);
    const std::size_t at = draws().below(one.size() + 1);
    const std::size_t place = draws().below(other.size() + 1);
    exchange_between(one, at, one.size() - at, other, place, other.size() - place);
    return at_.holds();
}

bool Exchange::reorder() {
    const int lot = at_.lot_of_run(some_run());
    if (lot == no_lot) {
        return false;
    }
    const std::size_t roll = some_roll(lot);
    const std::size_t count = at_.row(roll).size();
    const std::size_t from = draws().below(std::max<std::size_t>(1, count));
    const std::size_t to = draws().below(std::max<std::size_t>(1, count));
    if (from == to) {
        return false;
    }
    Row& row = at_.change(roll);
    const InRow each = row[from];
    row.erase(row.begin() + static_cast<std::ptrdiff_t>(from));
    row.insert(row.begin() + static_cast<std::ptrdiff_t>(to), each);
    return at_.holds();
}

/// A stretch passed over or left early, or no longer.
bool Exchange::bend() {
    const auto run = some_run();
    if (at_.lot_of_run(run) == no_lot) {
        return false;
    }
    const auto roll = at_.roll_of(run);
    const std::size_t slots = at_.runs()[run].slots.size();
    const auto each = std::ranges::find(at_.change(roll), static_cast<int>(run), &InRow::run);
    if (slots > 1 && draws().below(2) == 0) {
        each->early = each->early > 0 ? 0 : 1 + static_cast<int>(draws().below(slots - 1));
    } else {
        each->skips = each->skips > 0 ? 0 : 1;
    }
    return at_.holds();
}

/// A roll is emptied, and what lay on it laid anew wherever it takes least.
bool Exchange::rebuild() {
    const int lot = at_.lot_of_run(some_run());
    if (lot == no_lot) {
        return false;
    }
    const std::size_t roll = some_roll(lot);
    Row taken = at_.clear(roll);
    while (!taken.empty()) {
        const auto next = taken.begin() + static_cast<std::ptrdiff_t>(draws().below(taken.size()));
        if (!at_.insert_best(next->run, lot)) {
            return false;
        }
        taken.erase(next);
    }
    return true;
}

/// One to four windows, each to some lot.
bool Exchange::change_windows() {
    std::vector<std::pair<std::size_t, int>> go;
    for (std::size_t count = draws().below(2) == 0 ? 1 : 2 + draws().below(3); count > 0; --count) {
        const std::size_t window = some_window();
        if (at_.lot_of(window) != no_lot) {
            at_.take_out(window);
            go.emplace_back(window, some_lot());
        }
    }
    return !go.empty() && at_.holds() &&
           std::ranges::all_of(go, [&](const auto& each) { return at_.put_in(each.first, each.second); });
}

bool Exchange::swap_windows() {
    const std::size_t a = some_window();
    const std::size_t b = some_window();
    const int lot_a = at_.lot_of(a);
    const int lot_b = at_.lot_of(b);
    if (lot_a == lot_b) {
        return false;
    }
    at_.take_out(a);
    at_.take_out(b);
    return at_.holds() && (lot_b == no_lot || at_.put_in(a, lot_b)) && (lot_a == no_lot || at_.put_in(b, lot_a));
}

/// All windows of a room to one lot; now and then another room that lies there comes out for it.
bool Exchange::change_room() {
    const int room = problem_.windows[some_window()].room;
    const int lot = some_lot();
    const std::size_t other_window = some_window();
    const int other = problem_.windows[other_window].room;
    const bool swaps = other != room && other >= 0 && at_.lot_of(other_window) == lot && draws().below(2) == 0;
    if (room < 0) {
        return false;
    }
    int back = no_lot;
    std::vector<std::size_t> go, come;
    for (std::size_t w = 0; w < problem_.windows.size(); ++w) {
        if (at_.lot_of(w) != no_lot && problem_.windows[w].room == room && at_.lot_of(w) != lot) {
            back = at_.lot_of(w);
            go.push_back(w);
        } else if (at_.lot_of(w) == lot && swaps && problem_.windows[w].room == other) {
            come.push_back(w);
        }
    }
    if (go.empty()) {
        return false;
    }
    std::ranges::for_each(go, [&](std::size_t w) { at_.take_out(w); });
    std::ranges::for_each(come, [&](std::size_t w) { at_.take_out(w); });
    return at_.holds() && std::ranges::all_of(go, [&](std::size_t w) { return at_.put_in(w, lot); }) &&
           std::ranges::all_of(come, [&](std::size_t w) { return at_.put_in(w, back); });
}

bool Exchange::leave_out() {
    const std::size_t window = some_window();
    if (at_.lot_of(window) == no_lot) {
        return false;
    }
    at_.take_out(window);
    return at_.holds();
}

/// A window that was left out.
bool Exchange::fill() {
    std::vector<std::size_t> out;
    for (std::size_t w = 0; w < problem_.windows.size(); ++w) {
        if (at_.lot_of(w) == no_lot) {
            out.push_back(w);
        }
    }
    if (out.empty()) {
        return false;
    }
    const std::size_t window = out[draws().below(out.size())];
    const int lot = some_lot();
    at_.take_out(window);
    return at_.put_in(window, lot);
}

bool Exchange::try_move() {
    const std::size_t drawn = draws().below(64);
    if ((is_wanting() || at_.arranged().taken.out > 0) && drawn < 4) {
        return drawn == 0 ? leave_out() : drawn < 3 ? fill() : swap_windows();
    }
    if (problem_.lots.size() > 1 && drawn < 8) {
        return drawn < 5 ? change_windows() : drawn == 5 ? swap_windows() : change_room();
    }
    if (drawn < 10) {
        return rebuild();
    }
    if (drawn < 16) {
        return exchange_ends();
    }
    if (drawn < 20) {
        return bend();
    }
    return drawn < 26 ? reorder() : exchange_parts();
}

/// While it is hot a split room weighs no more than some cloth, so that rooms can change places; and so does a window
/// left out as long as no plan is known without one or the other. Later they weigh more than all cloth.
Um Exchange::weight(const Taken& taken, bool is_hot) const {
    constexpr Um some_cloth = 1500000;
    const Um split = is_hot ? some_cloth : all_cloth_;
    const Um out = is_hot && is_wanting() ? some_cloth * taken.out + taken.missing
                                          : all_cloth_ * static_cast<Um>(problem_.windows.size()) * taken.out;
    return taken.used + split * taken.split + out;
}

void Exchange::step(Um left) {
    constexpr Um hottest = 200000;
    constexpr Um half = 512;
    const Um heat = (hottest * left * left * left) >> 30U;
    const bool is_hot = left > half;
    if (!try_move()) {
        at_.undo();
        return;
    }
    const Um worse = weight(at_.tried(), is_hot) - weight(at_.arranged().taken, is_hot);
    if (worse > 0 && worse * 1000 > heat * draws().patience()) {
        at_.undo();
        return;
    }
    at_.settle();
    keep_if_best();
}

/// Loose pieces are put where they cost least only here: what is best before they are need not be best with them.
void Exchange::keep_if_best() {
    if (at_.arranged().taken > std::get<0>(best_key_)) {
        return;
    }
    const auto found = at_.key();
    if (found >= best_key_) {
        return;
    }
    if (has_loose_) {
        auto plan = at_.laid_out();
        if (!plan || !is_better(*plan, best_plan_)) {
            return;
        }
        best_plan_ = std::move(*plan);
    }
    best_key_ = found;
    best_ = at_.arranged();
}

void Exchange::round(long steps) {
    const long begun = at_.steps();
    for (long moves = 0; !is_enough(); ++moves) {
        const Um left = 1024 - (at_.steps() - begun + moves) * 1024 / std::max(1L, steps);
        if (left <= 0) {
            return;
        }
        step(left);
    }
}

/// A short round from each plan where there are several, so that rooms try other lots; then long ones from the best.
void Exchange::pass(const std::vector<LotsPlan>& begun, long steps) {
    const long early = begun.size() > 1 ? steps / 2 : 0;
    for (const LotsPlan& each : begun) {
        if (begun.size() > 1 && at_.read(each)) {
            round(early / static_cast<long>(begun.size()));
        }
    }
    constexpr int rounds = 4;
    for (int i = 0; i < rounds; ++i) {
        at_.go_to(best_);
        round((steps - early) / rounds);
    }
}

/// While a window is left out or a room split: whole windows fitted in otherwise, and what changes make of that.
void Exchange::fit_more(long steps) {
    const Taken before = std::get<0>(best_key_);
    for (bool goes_on = is_wanting(); goes_on;) {
        const Taken wanting = std::get<0>(best_key_);
        const auto fitted = fit_windows(problem_, wanting.out, wanting.split, steps);
        if (fitted && at_.read(*fitted)) {
            keep_if_best();
        }
        goes_on = is_wanting() && std::get<0>(best_key_) < wanting;
    }
    if (std::get<0>(best_key_) < before) {
        pass({}, steps);
    }
}

/// More than one pass only while a window is left out or a room split.
LotsPlan Exchange::run(const std::vector<LotsPlan>& begun, long steps) {
    LotsPlan plan = *std::ranges::min_element(begun, is_better);
    if (at_.runs().empty() || !at_.read(plan)) {
        return plan;
    }
    best_ = at_.arranged();
    best_key_ = at_.key();
    best_plan_ = plan;
    pass(begun, steps);
    for (int more = 0; more < 2 && is_wanting(); ++more) {
        pass(begun, steps);
    }
    fit_more(steps);
    at_.go_to(best_);
    auto found = at_.laid_out();
    return found && is_better(*found, plan) ? std::move(*found) : plan;
}

}  // namespace

LotsPlan exchange(const LotsProblem& problem, const std::vector<LotsPlan>& begun, Um enough, long steps) {
    return Exchange(problem, enough).run(begun, steps);
}

}  // namespace truehang::laying
