// SPDX-License-Identifier: Apache-2.0
#include "rolls/arrangement.h"

#include <algorithm>
#include <bit>
#include <limits>

namespace truehang::laying {

Um Draws::patience() {
    const std::uint32_t chance = next() | 1U;
    const int zeros = std::countl_zero(chance);
    const std::uint64_t within = (static_cast<std::uint64_t>(chance) << (zeros + 1)) & 0xffffffffU;
    return Um{1000} * (zeros + 1) - static_cast<Um>((within * 1000) >> 32U);
}

int split_rooms(const LotsProblem& problem, const std::vector<int>& lot_of) {
    constexpr int several = -2;
    std::vector<int> lot_of_room;
    int split = 0;
    for (std::size_t w = 0; w < lot_of.size(); ++w) {
        if (problem.windows[w].room < 0 || lot_of[w] == no_lot) {
            continue;
        }
        const auto room = static_cast<std::size_t>(problem.windows[w].room);
        lot_of_room.resize(std::max(lot_of_room.size(), room + 1), no_lot);
        int& lot = lot_of_room[room];
        if (lot == no_lot) {
            lot = lot_of[w];
        } else if (lot != several && lot != lot_of[w]) {
            lot = several;
            ++split;
        }
    }
    return split;
}

Arrangement::Arrangement(const LotsProblem& problem)
    : problem_(problem),
      lines_(problem),
      at_{std::vector<Row>(problem.grounds.size()), std::vector<Reckoned>(problem.grounds.size(), Reckoned{true, 0, 0}),
          std::vector<int>(problem.windows.size(), no_lot), Taken{}},
      roll_of_(lines_.runs().size(), 0) {
    count_lots(at_.taken);
}

std::tuple<Taken, int, Um> Arrangement::key() const {
    int used_lots = 0;
    Um longest = 0;
    for (const LotOfRolls& lot : problem_.lots) {
        used_lots += std::ranges::any_of(lot.rolls, [&](std::size_t r) { return !at_.rows[r].empty(); }) ? 1 : 0;
        for (const std::size_t r : lot.rolls) {
            longest = std::max(longest, at_.reckoned[r].longest);
        }
    }
    return {at_.taken, used_lots, -longest};
}

Row& Arrangement::change(std::size_t roll) {
    const auto end = saved_.begin() + static_cast<std::ptrdiff_t>(touched_);
    if (std::find_if(saved_.begin(), end, [&](const Saved& saved) { return saved.roll == roll; }) == end) {
        if (touched_ == saved_.size()) {
            saved_.emplace_back();
        }
        Saved& saved = saved_[touched_++];
        saved.roll = roll;
        saved.row = at_.rows[roll];
        saved.reckoned = at_.reckoned[roll];
    }
    return at_.rows[roll];
}

bool Arrangement::holds() {
    for (std::size_t i = 0; i < touched_; ++i) {
        const std::size_t roll = saved_[i].roll;
        at_.reckoned[roll] = lines_.reckon(roll, at_.rows[roll], steps_);
        if (!at_.reckoned[roll].lies) {
            return false;
        }
    }
    return true;
}

void Arrangement::note_rolls(std::size_t roll) {
    for (const InRow& each : at_.rows[roll]) {
        roll_of_[static_cast<std::size_t>(each.run)] = static_cast<int>(roll);
    }
}

void Arrangement::count_lots(Taken& taken) const {
    taken.split = split_rooms(problem_, at_.lot_of);
    taken.out = 0;
    taken.missing = 0;
    for (std::size_t w = 0; w < at_.lot_of.size(); ++w) {
        const bool is_out = at_.lot_of[w] == no_lot;
        taken.out += is_out ? 1 : 0;
        taken.missing += is_out ? problem_.windows[w].length : 0;
    }
}

Taken Arrangement::tried() const {
    Taken taken = at_.taken;
    for (std::size_t i = 0; i < touched_; ++i) {
        taken.used += at_.reckoned[saved_[i].roll].used - saved_[i].reckoned.used;
    }
    if (lots_changed_) {
        count_lots(taken);
    }
    return taken;
}

void Arrangement::settle() {
    at_.taken = tried();
    for (std::size_t i = 0; i < touched_; ++i) {
        note_rolls(saved_[i].roll);
    }
    touched_ = 0;
    lots_changed_ = false;
}

void Arrangement::undo() {
    for (std::size_t i = 0; i < touched_; ++i) {
        at_.rows[saved_[i].roll].swap(saved_[i].row);
        at_.reckoned[saved_[i].roll] = saved_[i].reckoned;
        note_rolls(saved_[i].roll);
    }
    if (lots_changed_) {
        at_.lot_of = lots_before_;
    }
    touched_ = 0;
    lots_changed_ = false;
}

bool Arrangement::read(const LotsPlan& plan) {
    Arranged read{{}, {}, plan.lot_of, {}};
    std::size_t runs = 0;
    for (std::size_t r = 0; r < plan.rolls.size(); ++r) {
        read.rows.push_back(lines_.read(r, plan.rolls[r]));
        read.reckoned.push_back(lines_.reckon(r, read.rows.back(), steps_));
        if (!read.reckoned.back().lies) {
            return false;
        }
        read.taken.used += read.reckoned.back().used;
        runs += read.rows.back().size();
    }
    for (std::size_t w = 0; w < plan.lot_of.size(); ++w) {
        const std::size_t asked = problem_.windows[w].runs.size();
        if (plan.lot_of[w] != no_lot && runs < asked) {
            return false;
        }
        runs -= plan.lot_of[w] == no_lot ? 0 : asked;
    }
    go_to(read);
    count_lots(at_.taken);
    return runs == 0;
}

void Arrangement::go_to(const Arranged& arranged) {
    at_ = arranged;
    touched_ = 0;
    lots_changed_ = false;
    for (std::size_t roll = 0; roll < at_.rows.size(); ++roll) {
        note_rolls(roll);
    }
}

void Arrangement::take_out(std::size_t window) {
    if (!lots_changed_) {
        lots_before_ = at_.lot_of;
        lots_changed_ = true;
    }
    if (at_.lot_of[window] == no_lot) {
        return;
    }
    for (int run = lines_.first_of(window); run < lines_.first_of(window + 1); ++run) {
        Row& row = change(roll_of(static_cast<std::size_t>(run)));
        row.erase(std::ranges::find(row, run, &InRow::run));
    }
    at_.lot_of[window] = no_lot;
}

bool Arrangement::put_in(std::size_t window, int lot) {
    at_.lot_of[window] = lot;
    for (int run = lines_.first_of(window); run < lines_.first_of(window + 1); ++run) {
        if (!insert_best(run, lot)) {
            return false;
        }
    }
    return true;
}

Row Arrangement::clear(std::size_t roll) {
    Row taken = change(roll);
    at_.rows[roll].clear();
    at_.reckoned[roll] = {true, 0, 0};
    return taken;
}

bool Arrangement::insert_best(int run, int lot) {
    Um least = std::numeric_limits<Um>::max();
    std::pair<std::size_t, std::size_t> best;
    for (const std::size_t roll : problem_.lots[static_cast<std::size_t>(lot)].rolls) {
        tried_ = at_.rows[roll];
        tried_.insert(tried_.begin(), {run, 0, 0});
        for (std::size_t place = 0; place < tried_.size(); ++place) {
            if (place > 0) {
                std::swap(tried_[place - 1], tried_[place]);
            }
            if (overlooks_ && draws_.below(8) == 0) {
                continue;
            }
            const Reckoned found = lines_.reckon(roll, tried_, steps_);
            if (found.lies && found.used - at_.reckoned[roll].used < least) {
                least = found.used - at_.reckoned[roll].used;
                best = {roll, place};
            }
        }
    }
    if (least == std::numeric_limits<Um>::max()) {
        return false;
    }
    insert(best.first, best.second, run);
    return true;
}

void Arrangement::insert(std::size_t roll, std::size_t place, int run) {
    Row& row = change(roll);
    row.insert(row.begin() + static_cast<std::ptrdiff_t>(place), {run, 0, 0});
    roll_of_[static_cast<std::size_t>(run)] = static_cast<int>(roll);
    at_.reckoned[roll] = lines_.reckon(roll, row, steps_);
}

Laid Arrangement::laid_lot(std::size_t lot) const {
    std::vector<Ground> grounds;
    Laid laid{true, {}, 0, 0};
    for (const std::size_t r : problem_.lots[lot].rolls) {
        grounds.push_back(problem_.grounds[r]);
        laid.rolls.push_back(lines_.laid(r, at_.rows[r]));
    }
    std::vector<Run> loose;
    for (std::size_t w = 0; w < at_.lot_of.size(); ++w) {
        if (at_.lot_of[w] == static_cast<int>(lot)) {
            loose.insert(loose.end(), problem_.windows[w].loose.begin(), problem_.windows[w].loose.end());
        }
    }
    return lay_loose(grounds, std::move(laid), loose, problem_.rules);
}

std::optional<LotsPlan> Arrangement::laid_out() const {
    LotsPlan plan;
    plan.lot_of = at_.lot_of;
    plan.rolls.resize(at_.rows.size());
    plan.dropped = static_cast<int>(std::ranges::count(at_.lot_of, no_lot));
    plan.split_rooms = split_rooms(problem_, at_.lot_of);
    for (std::size_t lot = 0; lot < problem_.lots.size(); ++lot) {
        Laid laid = laid_lot(lot);
        if (!laid.complete) {
            return std::nullopt;
        }
        plan.used += laid.used;
        plan.longest = std::max(plan.longest, laid.longest);
        plan.lots += std::ranges::all_of(laid.rolls, &std::vector<Placed>::empty) ? 0 : 1;
        for (std::size_t i = 0; i < laid.rolls.size(); ++i) {
            plan.rolls[problem_.lots[lot].rolls[i]] = std::move(laid.rolls[i]);
        }
    }
    return plan;
}

}  // namespace truehang::laying
