// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <vector>

namespace truehang::laying {

/// A linear programme whose columns come one by one: least cost, `demands` covered, no row of `supplies` exceeded. What
/// no column covers yet is bought at `dear` apiece, so that there is always an answer.
class ColumnProgramme {
public:
    ColumnProgramme(std::vector<double> demands, const std::vector<double>& supplies, double dear);

    /// What one more of each demand would cost, then of each supply (never above zero).
    [[nodiscard]] const std::vector<double>& prices() const { return prices_; }
    /// Brings in a column that takes one of `supply`; false where it doesn't make the whole cheaper.
    bool enter(const std::vector<int>& covers, std::size_t supply, double cost);
    /// How often each column that was entered is taken, in the order of entering.
    [[nodiscard]] std::vector<double> shares() const;

private:
    bool pivot(const std::vector<double>& column, double cost, long name);
    void drop_surplus();
    void reprice();

    std::size_t demands_;
    std::size_t rows_;
    std::vector<std::vector<double>> inverse_;
    std::vector<double> level_;  ///< of each basic column
    std::vector<double> cost_;
    std::vector<long> name_;  ///< of each basic column: its number, or negative where it only fills up
    std::vector<double> prices_;
    long entered_ = 0;
};

}  // namespace truehang::laying
