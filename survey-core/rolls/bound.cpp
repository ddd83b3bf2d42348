// SPDX-License-Identifier: Apache-2.0
#include "rolls/bound.h"

#include "rolls/pricing.h"
#include "rolls/simplex.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace truehang::laying {

namespace {

/// Room for pieces, each with what the pattern costs it.
Um clean_of(const BoundProblem& problem, const Ground& ground) {
    Um overhang = 0;
    for (const Demand& demand : problem.demands) {
        overhang = std::max(overhang, demand.length - demand.last);
    }
    Um clean = 0;
    for (const Stretch& stretch : ground.stretches) {
        clean += stretch.to - stretch.from + overhang;
    }
    return clean;
}

bool can_leave_useful(const BoundProblem& problem) {
    return std::ranges::any_of(problem.grounds, [&](const GroundClass& each) {
        return std::ranges::any_of(each.ground.stretches,
                                   [&](const Stretch& stretch) { return stretch.to - stretch.from >= problem.useful; });
    });
}

/// Where nothing that is left over is ever useful, whole rolls are used: the least sum of rolls at or above `least`
/// that has as much clean cloth as is asked.
Um up_to_whole_rolls(const BoundProblem& problem, Um least) {
    Um total = 0;
    Um common = 0;
    for (const GroundClass& each : problem.grounds) {
        total += each.count * each.ground.length;
        common = std::gcd(common, each.ground.length);
    }
    constexpr Um most_sums = 1000000;
    if (common == 0 || total / common > most_sums || least > total || can_leave_useful(problem)) {
        return least;
    }
    // The most clean cloth in rolls of each sum.
    std::vector<Um> clean(static_cast<std::size_t>(total / common) + 1, -1);
    clean[0] = 0;
    for (const GroundClass& each : problem.grounds) {
        const auto step = static_cast<std::size_t>(each.ground.length / common);
        const Um more = clean_of(problem, each.ground);
        for (int i = 0; i < each.count; ++i) {
            for (std::size_t sum = clean.size(); sum-- > step;) {
                if (clean[sum - step] >= 0) {
                    clean[sum] = std::max(clean[sum], clean[sum - step] + more);
                }
            }
        }
    }
    Um asked = 0;
    for (const Demand& demand : problem.demands) {
        asked += demand.count * demand.length;
    }
    auto sum = static_cast<std::size_t>((least + common - 1) / common);
    while (sum + 1 < clean.size() && clean[sum] < asked) {
        ++sum;
    }
    return static_cast<Um>(sum) * common;
}

/// The bound by column generation, step by step.
class Generation {
public:
    Generation(const BoundProblem& problem, Um enough)
        : problem_(problem), enough_(enough), pricing_(problem), programme_(demands(), supplies(), dear()) {
        // A round prices every length, then fills and brings in a roll of every class.
        const std::size_t rows = problem.demands.size() + problem.grounds.size();
        round_ = pricing_.steps() + static_cast<long>(problem.grounds.size() * rows * rows);
        for (const GroundClass& each : problem.grounds) {
            round_ += static_cast<long>(each.ground.stretches.size() * pricing_.fills());
        }
    }

    Bound run(long steps) {
        std::vector<std::int64_t> prices;
        for (const Demand& demand : problem_.demands) {
            prices.push_back(demand.length * price_scale);
        }
        // By their lengths first; where that leaves nothing to gain on any roll, the programme's own prices still may.
        bool better = true;
        for (bool is_first = true; better && bound_.least < enough_ && steps > 0; is_first = false) {
            better = improve(prices) || is_first;
            steps -= round_;
            prices = prices_now();
        }
        keep_patterns();
        return std::move(bound_);
    }

private:
    std::vector<double> demands() const {
        std::vector<double> counts;
        for (const Demand& demand : problem_.demands) {
            counts.push_back(demand.count);
        }
        return counts;
    }
    std::vector<double> supplies() const {
        std::vector<double> counts;
        for (const GroundClass& each : problem_.grounds) {
            counts.push_back(each.count);
        }
        return counts;
    }
    double dear() const {
        Um longest = 1;
        for (const GroundClass& each : problem_.grounds) {
            longest = std::max(longest, each.ground.length);
        }
        return 4.0 * static_cast<double>(longest);
    }

    std::vector<std::int64_t> prices_now() const {
        std::vector<std::int64_t> prices;
        for (std::size_t i = 0; i < problem_.demands.size(); ++i) {
            const double price = std::max(0.0, programme_.prices()[i]) * static_cast<double>(price_scale);
            prices.push_back(static_cast<std::int64_t>(std::floor(price + 1e-3)));
        }
        return prices;
    }

    /// One round: a bound from these prices, and the best roll of every class at them as a column.
    bool improve(const std::vector<std::int64_t>& prices) {
        pricing_.price(prices);
        std::int64_t worth = 0;
        for (std::size_t i = 0; i < prices.size(); ++i) {
            worth += prices[i] * problem_.demands[i].count;
        }
        bool better = false;
        for (std::size_t k = 0; k < problem_.grounds.size(); ++k) {
            BestFill fill = pricing_.best(problem_.grounds[k].ground);
            worth -= fill.gain * problem_.grounds[k].count;
            if (fill.gain == 0) {
                continue;
            }
            columns_.push_back({k, std::move(fill.counts), 0.0});
            better = programme_.enter(columns_.back().counts, k, static_cast<double>(fill.used)) || better;
        }
        const Um least = worth > 0 ? (worth + price_scale - 1) / price_scale : 0;
        bound_.least = std::max(bound_.least, up_to_whole_rolls(problem_, least));
        return better;
    }

    void keep_patterns() {
        const std::vector<double> shares = programme_.shares();
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            if (shares[i] > 1e-9) {
                columns_[i].share = shares[i];
                bound_.patterns.push_back(std::move(columns_[i]));
            }
        }
    }

    const BoundProblem& problem_;
    Um enough_;
    Pricing pricing_;
    ColumnProgramme programme_;
    long round_ = 0;
    std::vector<Pattern> columns_;
    Bound bound_;
};

}  // namespace

Bound least_use(const BoundProblem& problem, Um enough, long steps) {
    if (problem.demands.empty() || problem.grounds.empty()) {
        return {};
    }
    return Generation(problem, enough).run(steps);
}

}  // namespace truehang::laying
