// SPDX-License-Identifier: Apache-2.0
#include "rolls/simplex.h"

#include <algorithm>
#include <limits>

// The revised simplex with the basis' inverse written out: G. B. Dantzig, Linear Programming and Extensions, 1963; with
// columns made as they are asked for: P. C. Gilmore, R. E. Gomory, Operations Research 9 (1961).

namespace truehang::laying {

namespace {
constexpr double tolerance = 1e-9;
constexpr long filler = -1;
}  // namespace

ColumnProgramme::ColumnProgramme(std::vector<double> demands, const std::vector<double>& supplies, double dear)
    : demands_(demands.size()), rows_(demands.size() + supplies.size()), level_(std::move(demands)) {
    level_.insert(level_.end(), supplies.begin(), supplies.end());
    inverse_.assign(rows_, std::vector<double>(rows_, 0.0));
    cost_.assign(rows_, 0.0);
    name_.assign(rows_, filler);
    for (std::size_t i = 0; i < rows_; ++i) {
        inverse_[i][i] = 1.0;
        cost_[i] = i < demands_ ? dear : 0.0;
    }
    reprice();
}

void ColumnProgramme::reprice() {
    prices_.assign(rows_, 0.0);
    for (std::size_t i = 0; i < rows_; ++i) {
        if (cost_[i] == 0.0) {
            continue;
        }
        for (std::size_t j = 0; j < rows_; ++j) {
            prices_[j] += cost_[i] * inverse_[i][j];
        }
    }
}

bool ColumnProgramme::pivot(const std::vector<double>& column, double cost, long name) {
    std::vector<double> way(rows_, 0.0);
    for (std::size_t j = 0; j < rows_; ++j) {
        if (column[j] == 0.0) {
            continue;
        }
        for (std::size_t i = 0; i < rows_; ++i) {
            way[i] += inverse_[i][j] * column[j];
        }
    }
    std::size_t leaves = rows_;
    double step = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < rows_; ++i) {
        if (way[i] > tolerance && level_[i] / way[i] < step - tolerance) {
            step = level_[i] / way[i];
            leaves = i;
        }
    }
    if (leaves == rows_) {
        return false;
    }
    for (double& value : inverse_[leaves]) {
        value /= way[leaves];
    }
    for (std::size_t i = 0; i < rows_; ++i) {
        if (i == leaves || way[i] == 0.0) {
            continue;
        }
        level_[i] = std::max(0.0, level_[i] - step * way[i]);
        for (std::size_t j = 0; j < rows_; ++j) {
            inverse_[i][j] -= way[i] * inverse_[leaves][j];
        }
    }
    level_[leaves] = step;
    cost_[leaves] = cost;
    name_[leaves] = name;
    reprice();
    return true;
}

void ColumnProgramme::drop_surplus() {
    for (std::size_t tries = 0; tries < rows_; ++tries) {
        std::size_t worst = rows_;
        double most = 1e-7;
        for (std::size_t j = 0; j < rows_; ++j) {
            const double wrong = j < demands_ ? -prices_[j] : prices_[j];
            if (wrong > most) {
                most = wrong;
                worst = j;
            }
        }
        if (worst == rows_) {
            return;
        }
        std::vector<double> column(rows_, 0.0);
        column[worst] = worst < demands_ ? -1.0 : 1.0;
        if (!pivot(column, 0.0, filler)) {
            return;
        }
    }
}

bool ColumnProgramme::enter(const std::vector<int>& covers, std::size_t supply, double cost) {
    std::vector<double> column(rows_, 0.0);
    double reduced = cost - prices_[demands_ + supply];
    for (std::size_t i = 0; i < demands_; ++i) {
        column[i] = covers[i];
        reduced -= prices_[i] * covers[i];
    }
    column[demands_ + supply] = 1.0;
    const long name = entered_++;
    if (reduced > -1e-7 * std::max(1.0, cost) || !pivot(column, cost, name)) {
        return false;
    }
    drop_surplus();
    return true;
}

std::vector<double> ColumnProgramme::shares() const {
    std::vector<double> shares(static_cast<std::size_t>(entered_), 0.0);
    for (std::size_t i = 0; i < rows_; ++i) {
        if (name_[i] != filler) {
            shares[static_cast<std::size_t>(name_[i])] = level_[i];
        }
    }
    return shares;
}

}  // namespace truehang::laying
