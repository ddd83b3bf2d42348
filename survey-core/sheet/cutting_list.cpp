// SPDX-License-Identifier: Apache-2.0
#include "sheet/cutting_list.h"

#include "units/saying.h"

#include <algorithm>
#include <iterator>

namespace truehang {

namespace {

/// Cloth over which a roll is measured before it is cut; common practice, no source.
constexpr double long_order_m = 27.0;

std::string where_of(const Survey& survey, const std::string& window_id) {
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            if (window.id == window_id) {
                return window_title(room, window);
            }
        }
    }
    return window_id;
}

bool is_provisional(const Figures& figures, const std::string& window_id) {
    const auto window = std::ranges::find(figures.windows, window_id, &WindowFigures::id);
    return window != figures.windows.end() && std::ranges::any_of(window->flags, [](const Flag& flag) {
               return flag.severity == Severity::stop || flag.severity == Severity::remeasure;
           });
}

/// "4480 in 2 drops, 410 in 2 rows of tabs": one phrase for each kind of piece.
std::string summary_of(const Order& order, const SheetStyle& style) {
    struct Kind {
        std::string what;
        Length length;
        int count = 0;
    };
    std::vector<Kind> kinds;
    for (const Cut& cut : order.cuts) {
        auto kind = std::ranges::find(kinds, cut.what, &Kind::what);
        if (kind == kinds.end()) {
            kinds.push_back({cut.what, Length(), 0});
            kind = std::prev(kinds.end());
        }
        kind->length += cut.count * cut.length;
        kind->count += cut.count;
    }
    std::string text;
    for (const Kind& kind : kinds) {
        text += (text.empty() ? "" : ", ") +
                say("{} in {}", written_cut(kind.length, style), piece_text(kind.what, kind.count));
    }
    return text;
}

/// "6 weights", "4.9 m of heading tape", "5 blind rods (3 of 980, 2 of 1180)".
std::string bought_text(const Haberdashery& bought, const SheetStyle& style) {
    if (bought.count == 0) {
        return say("{} of {}", order_text(bought.order_m, style), worded(bought.what));
    }
    std::string pieces;
    for (const CutToLength& piece : bought.pieces) {
        pieces += (pieces.empty() ? " (" : ", ") + say("{} of {}", piece.count, written(piece.each, style));
    }
    return std::to_string(bought.count) + " " + worded(bought.what) + (pieces.empty() ? "" : pieces + ")");
}

}  // namespace

CuttingList cutting_list(const Survey& survey, const Figures& figures, const SheetStyle& style) {
    CuttingList list;
    for (const Order& order : figures.orders) {
        const auto fabric = std::ranges::find(survey.fabrics, order.fabric, &Fabric::id);
        ClothCuts cloth;
        cloth.fabric = order.fabric;
        cloth.name = fabric == survey.fabrics.end()
                         ? order.fabric
                         : say("{}, {} wide", short_name(*fabric), written(fabric->width, style));
        for (const Cut& cut : order.cuts) {
            cloth.lines.push_back({.window = cut.window,
                                   .where = cut.window.empty() ? std::string() : where_of(survey, cut.window),
                                   .layer = cut.layer,
                                   .piece = piece_text(cut.what, cut.count),
                                   .length = written_cut(cut.length, style),
                                   .total = written_cut(cut.count * cut.length, style),
                                   .provisional = is_provisional(figures, cut.window)});
        }
        cloth.length = written_cut(order.length, style);
        cloth.order = order_text(order.order_m, style);
        cloth.summary = summary_of(order, style);
        cloth.measure_roll = order.order_m > long_order_m;
        cloth.provisional = order.provisional;
        list.cloths.push_back(std::move(cloth));
    }
    for (const Haberdashery& bought : figures.haberdashery) {
        list.haberdashery.push_back(bought_text(bought, style));
    }
    return list;
}

}  // namespace truehang
