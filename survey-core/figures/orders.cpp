// SPDX-License-Identifier: Apache-2.0
#include "figures/orders.h"

#include "units/rounding.h"

#include <algorithm>
#include <array>
#include <string>

namespace truehang {

namespace {

/// Longest first, those of one length together.
void add_piece(std::vector<CutToLength>& pieces, int count, Length each) {
    const auto at = std::ranges::find_if(pieces, [&](const CutToLength& piece) { return piece.each <= each; });
    if (at != pieces.end() && at->each == each) {
        at->count += count;
    } else {
        pieces.insert(at, {count, each});
    }
}

}  // namespace

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
        for (const Bought& bought : layer.making.bought) {
            Haberdashery& all = entry(bought.what);
            all.count += bought.count;
            all.length += bought.length;
            if (bought.each.mm() > 0.0) {
                add_piece(all.pieces, bought.count, bought.each);
            }
        }
    }
}

Haberdashery& OrderBook::entry(std::string_view what) {
    const auto found = std::ranges::find(bought_, what, &Haberdashery::what);
    return found != bought_.end() ? *found : bought_.emplace_back(Haberdashery{std::string(what)});
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
    const double asked = house_rules(survey_.rules).haberdashery_step_m;
    const double step = asked > 0.0 ? asked : 0.001;
    std::vector<Haberdashery> bought = bought_;
    for (Haberdashery& item : bought) {
        if (item.count == 0) {
            item.order_m = step * ceil_whole(item.length.metres() / step);
        }
    }
    // Weights, eyelets and rods stand first; the rest follows as the windows ask for it.
    const auto place = [](const Haberdashery& item) {
        constexpr std::array first{"weights", "eyelets", "blind rods"};
        return std::ranges::find(first, item.what) - first.begin();
    };
    std::ranges::stable_sort(bought, {}, place);
    return bought;
}

}  // namespace truehang
