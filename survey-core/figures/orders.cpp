// SPDX-License-Identifier: Apache-2.0
#include "figures/orders.h"

#include "units/rounding.h"

#include <algorithm>

namespace truehang {

void OrderBook::take(const WorkedWindow& window) {
    const bool provisional = std::ranges::any_of(window.figures.flags, [](const Flag& flag) {
        return flag.severity == Severity::stop || flag.severity == Severity::remeasure;
    });
    for (const LayerPieces& layer : window.pieces) {
        for (const Piece& piece : layer.pieces) {
            taken_.push_back({piece, window.figures.id, window.figures.layered ? layer.layer : "", provisional});
        }
    }
    for (const LayerFigures& layer : window.figures.layers) {
        const int curtains = layer.finished ? layer.finished->curtains : 0;
        weights_ += layer.weights ? curtains * layer.weights->each : 0;
        eyelets_ += layer.eyelets ? curtains * layer.eyelets->each : 0;
        rods_ += layer.blind ? layer.blind->rods : 0;
    }
}

std::vector<Order> OrderBook::orders() const {
    const HouseRules rules = house_rules(survey_.rules);
    std::vector<Order> orders;
    for (const Fabric& fabric : survey_.fabrics) {
        Order order;
        order.fabric = fabric.id;
        for (const Taken& taken : taken_) {
            if (taken.piece.fabric != fabric.id) {
                continue;
            }
            order.length += taken.piece.total;
            order.provisional = order.provisional || taken.provisional;
            order.cuts.push_back({taken.window, taken.piece.what, taken.piece.length, taken.piece.count, taken.layer});
        }
        if (order.cuts.empty()) {
            continue;
        }
        if (fabric.repeat.mm() > 0.0 && rules.placing_repeats > 0.0 && match_of(fabric) != Match::none) {
            const Length placing = rules.placing_repeats * fabric.repeat;
            order.length += placing;
            order.cuts.push_back({"", "placing the pattern", cut_up(placing), 1, ""});
        }
        const double step = rules.order_step_m > 0.0 ? rules.order_step_m : 0.001;
        order.length = cut_up(order.length);
        order.order_m = step * ceil_whole(order.length.metres() / step);
        orders.push_back(std::move(order));
    }
    return orders;
}

std::vector<Haberdashery> OrderBook::haberdashery() const {
    std::vector<Haberdashery> bought;
    const auto add = [&](const char* what, int count) {
        if (count > 0) {
            bought.push_back({what, count});
        }
    };
    add("weights", weights_);
    add("eyelets", eyelets_);
    add("blind rods", rods_);
    return bought;
}

}  // namespace truehang
