// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/window_working.h"

#include <string_view>
#include <vector>

namespace truehang {

/// Gathers what every window has cut into one order a fabric, and counts what else is bought.
class OrderBook {
public:
    explicit OrderBook(const Survey& survey) : survey_(survey) {}

    void take(const WorkedWindow& window);
    /// One for each fabric that something is cut from, in the survey's order: the sum of its cuts, upward to the step
    /// it is sold by (trade rules, sections 1 and 5).
    [[nodiscard]] std::vector<Order> orders() const;
    /// What else is bought, by number or by length, upward to the step it is sold by.
    [[nodiscard]] std::vector<Haberdashery> haberdashery() const;

private:
    Haberdashery& entry(std::string_view what);

    struct Taken {
        Piece piece;
        std::string window, layer;
        bool provisional;
    };
    const Survey& survey_;
    std::vector<Taken> taken_;
    std::vector<Haberdashery> bought_;
};

}  // namespace truehang
