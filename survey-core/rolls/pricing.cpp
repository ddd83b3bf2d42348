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
    longest += problem.overhang;
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

/// Cloth used of a stretch filled up to `cells`, where what is left at its end is useful.
Um Pricing::used_by(std::size_t cells) const {
    const Um fill = static_cast<Um>(cells) * grain_;
    return std::max<Um>(0, fill - problem_.overhang);
}

Pricing::Choice Pricing::passed(const Stretch& stretch) const {
    const Um whole = stretch.to - stretch.from;
    const Um room = whole + problem_.overhang;
    const std::size_t full = cells_in(room);
    Choice best{value_[full] - whole * price_scale, whole, full};
    const Um kept = problem_.useful - problem_.overhang;
    if (room < kept) {
        return best;
    }
    for (std::size_t cell = 0; cell <= cells_in(room - kept); ++cell) {
        const Um used = used_by(cell);
        const std::int64_t net = value_[cell] - used * price_scale;
        if (net > best.net) {
            best = {net, used, cell};
        }
    }
    return best;
}

/// The stretch that is cut last; `later` is the longest one after it.
Pricing::Choice Pricing::last(const Ground& ground, std::size_t index, Um later) const {
    const Stretch& stretch = ground.stretches[index];
    const Um room = stretch.to - stretch.from + problem_.overhang;
    const Um kept = problem_.useful - problem_.overhang;
    const Um rest = ground.length - stretch.from;
    const std::size_t full = cells_in(room);
    Choice best{value_[full] - rest * price_scale, rest, full};
    if (later < problem_.useful && room < kept) {
        return best;
    }
    const std::size_t end = later >= problem_.useful ? full : cells_in(room - kept);
    for (std::size_t cell = 0; cell <= end; ++cell) {
        const Um used = used_by(cell);
        const std::int64_t net = value_[cell] - used * price_scale;
        if (net > best.net) {
            best = {net, used, cell};
        }
    }
    return best;
}

void Pricing::count(std::size_t cells, std::vector<int>& counts) const {
    for (std::size_t p = parts_.size(); p-- > 0;) {
        if (taken_[p][cells] != 0) {
            counts[parts_[p].demand] += parts_[p].count;
            cells -= parts_[p].cells;
        }
    }
}

BestFill Pricing::best(const Ground& ground) const {
    std::vector<Choice> before;
    BestFill best;
    best.counts.assign(problem_.demands.size(), 0);
    std::int64_t net = 0;
    Um used = 0;
    Um at = 0;
    std::vector<std::size_t> fills;
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
            fills.clear();
            for (const Choice& choice : before) {
                fills.push_back(choice.cells);
            }
            fills.push_back(end.cells);
        }
        before.push_back(passed(ground.stretches[i]));
        net += before.back().net;
        used += before.back().used;
    }
    for (const std::size_t cells : fills) {
        count(cells, best.counts);
    }
    return best;
}

}  // namespace truehang::laying
