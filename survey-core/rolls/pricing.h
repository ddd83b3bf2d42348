// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/bound.h"

#include <cstdint>
#include <vector>

namespace truehang::laying {

/// What one roll of a class is best filled with at given prices, lots, runs and order let go.
struct BestFill {
    std::int64_t gain =
        0;  ///< prices of what it holds less the cloth used, in thousandths of a micrometre; 0: leave it
    Um used = 0;
    std::vector<int> counts;  ///< by demand
};

/// A bounded knapsack over the lengths, made once for given prices and read for every stretch.
class Pricing {
public:
    explicit Pricing(const BoundProblem& problem);

    /// Prices in thousandths of a micrometre of cloth, by demand.
    void price(const std::vector<std::int64_t>& prices);
    [[nodiscard]] BestFill best(const Ground& ground) const;
    /// How many ways to fill a stretch are weighed at most.
    [[nodiscard]] std::size_t fills() const { return cells_ * (problem_.step > 0 ? problem_.demands.size() : 1); }
    /// How much work one `price` is.
    [[nodiscard]] long steps() const { return static_cast<long>(cells_ * parts_.size()); }

private:
    /// A power of two of one demand's pieces.
    struct Part {
        std::size_t demand;
        int count;
        std::size_t cells;
    };
    struct Choice {
        std::int64_t net = 0;  ///< prices less cloth used
        Um used = 0;
        std::size_t cells = 0;  ///< filled up to here
        int last = -1;          ///< a piece more that lies at the end
    };
    [[nodiscard]] std::size_t cells_in(Um room) const;
    template <typename OnFill>
    void for_fills(Um room, bool all, OnFill on_fill) const;
    [[nodiscard]] Choice passed(const Stretch& stretch) const;
    [[nodiscard]] Choice last(const Ground& ground, std::size_t index, Um later) const;
    void count(const Choice& choice, std::vector<int>& counts) const;

    const BoundProblem& problem_;
    Um grain_ = 1;
    std::size_t cells_ = 0;
    std::vector<Part> parts_;
    std::vector<std::int64_t> prices_;
    std::vector<std::int64_t> value_;       ///< most, by cells
    std::vector<std::vector<char>> taken_;  ///< by part and cell
};

inline constexpr std::int64_t price_scale = 1000;

}  // namespace truehang::laying
