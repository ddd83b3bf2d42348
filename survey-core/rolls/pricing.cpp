// SPDX-License-Identifier: Apache-2.0
#include "rolls/pricing.h"

#include <algorithm>
#include <numeric>

namespace truehang::laying {

namespace {
constexpr Um most_cells = 60000;
}

Pricing::Pricing(const BoundProblem& problem) : problem_(problem) {
    Um longest = 1;
    for (const GroundClass& each : problem.grounds) {
        for (const Stretch& stretch : each.ground.stretches) {
            longest = std::max(longest, stretch.to - stretch.from);
        }
    }
    Um common = 0;
    for (const Demand& demand : problem.demands) {
        common = std::gcd(common, demand.length);
    }
    grain_ = std::max({common, longest / most_cells + 1, Um{1}});
    if (common > 0 && longest / common < most_cells) {
        grain_ = common;
    }
    cells_ = cells_in(longest) + 1;
    for (std::size_t i = 0; i < problem.demands.size(); ++i) {
        const auto cells = static_cast<std::size_t>(problem.demands[i].length / grain_);
        int left = std::min<Um>(problem.demands[i].count, longest / std::max<Um>(1, problem.demands[i].length)) > 0
                       ? static_cast<int>(std::min<Um>(problem.demands[i].count,
                                                       longest / std::max<Um>(1, problem.demands[i].length)))
                       : 0;
        for (int part = 1; left > 0; part *= 2) {
            const int count = std::min(part, left);
            parts_.push_back({i, count, cells * static_cast<std::size_t>(count)});
            left -= count;
        }
    }
}

std::size_t Pricing::cells_in(Um room) const { return static_cast<std::size_t>(std::max<Um>(0, room) / grain_); }

void Pricing::price(const std::vector<std::int64_t>& prices) {
    prices_ = prices;
    value_.assign(cells_, 0);
    taken_.assign(parts_.size(), {});
    for (std::size_t p = 0; p < parts_.size(); ++p) {
        const Part& part = parts_[p];
        const std::int64_t worth = prices[part.demand] * part.count;
        taken_[p].assign(cells_, 0);
        if (worth <= 0 || part.cells >= cells_) {
            continue;
        }
        std::vector<std::int64_t> better = value_;
        const std::int64_t* const without = value_.data() + part.cells;
        const std::int64_t* const before = value_.data();
        std::int64_t* const now = better.data() + part.cells;
        char* const taken = taken_[p].data() + part.cells;
        for (std::size_t cell = 0; cell < cells_ - part.cells; ++cell) {
            const std::int64_t with = before[cell] + worth;
            taken[cell] = with > without[cell] ? 1 : 0;
            now[cell] = std::max(with, without[cell]);
        }
        value_.swap(better);
    }
}

/// Calls with how far a filling reaches, what it is worth, its cells and its last piece. Where the pattern costs
/// nothing those of least reach alone, and the fullest, unless `all` are asked.
template <typename OnFill>
void Pricing::for_fills(Um room, bool all, OnFill on_fill) const {
    if (room < 0) {
        return;
    }
    if (problem_.step > 0) {
        for (std::size_t i = 0; i < problem_.demands.size(); ++i) {
            Um reach = problem_.demands[i].last;
            for (std::size_t cell = 0; reach <= room && cell < cells_; ++cell, reach += grain_) {
                on_fill(reach, prices_[i] + value_[cell], cell, static_cast<int>(i));
            }
        }
        return;
    }
    const std::size_t full = cells_in(room);
    on_fill(static_cast<Um>(full) * grain_, value_[full], full, -1);
    if (all || room >= problem_.useful) {
        const std::size_t end = all ? full : cells_in(room - problem_.useful);
        for (std::size_t cell = 0; cell <= end; ++cell) {
            on_fill(static_cast<Um>(cell) * grain_, value_[cell], cell, -1);
        }
    }
}

/// A stretch behind which the roll is cut on.
Pricing::Choice Pricing::passed(const Stretch& stretch) const {
    const Um whole = stretch.to - stretch.from;
    Choice best{0, 0, 0, -1};
    if (whole < problem_.useful) {
        best = {-whole * price_scale, whole, 0, -1};
    }
    const Um first = first_start(stretch, stretch.from, problem_.phase, problem_.step);
    for_fills(stretch.to - first, false, [&](Um reach, std::int64_t worth, std::size_t cells, int last) {
        const Um end = first + reach;
        const Um used = stretch.to - end >= problem_.useful ? end - stretch.from : whole;
        if (worth - used * price_scale > best.net) {
            best = {worth - used * price_scale, used, cells, last};
        }
    });
    return best;
}

/// The stretch that is cut last; `later` is the longest one after it.
Pricing::Choice Pricing::last(const Ground& ground, std::size_t index, Um later) const {
    const Stretch& stretch = ground.stretches[index];
    const Um rest = ground.length - stretch.from;
    Choice best{-rest * price_scale, rest, 0, -1};
    const Um first = first_start(stretch, stretch.from, problem_.phase, problem_.step);
    const bool later_useful = later >= problem_.useful;
    for_fills(stretch.to - first, later_useful, [&](Um reach, std::int64_t worth, std::size_t cells, int last) {
        const Um end = first + reach;
        const Um used = later_useful || stretch.to - end >= problem_.useful ? end - stretch.from : rest;
        if (worth - used * price_scale > best.net) {
            best = {worth - used * price_scale, used, cells, last};
        }
    });
    return best;
}

void Pricing::count(const Choice& choice, std::vector<int>& counts) const {
    std::size_t cells = choice.cells;
    for (std::size_t p = parts_.size(); p-- > 0;) {
        if (taken_[p][cells] != 0) {
            counts[parts_[p].demand] += parts_[p].count;
            cells -= parts_[p].cells;
        }
    }
    if (choice.last >= 0) {
        ++counts[static_cast<std::size_t>(choice.last)];
    }
}

BestFill Pricing::best(const Ground& ground) const {
    std::vector<Choice> before;
    BestFill best;
    best.counts.assign(problem_.demands.size(), 0);
    std::int64_t net = 0;
    Um used = 0;
    Um at = 0;
    std::vector<Choice> fills;
    for (std::size_t i = 0; i < ground.stretches.size(); ++i) {
        const Um lost = ground.stretches[i].from - at;  // flaws on the way
        at = ground.stretches[i].to;
        Um later = 0;
        for (std::size_t j = i + 1; j < ground.stretches.size(); ++j) {
            later = std::max(later, ground.stretches[j].to - ground.stretches[j].from);
        }
        net -= lost * price_scale;
        used += lost;
        const Choice end = last(ground, i, later);
        if (net + end.net > best.gain) {
            best.gain = net + end.net;
            best.used = used + end.used;
            fills = before;
            fills.push_back(end);
        }
        before.push_back(passed(ground.stretches[i]));
        net += before.back().net;
        used += before.back().used;
    }
    for (const Choice& choice : fills) {
        count(choice, best.counts);
    }
    return best;
}

}  // namespace truehang::laying
