// SPDX-License-Identifier: Apache-2.0
#include "sheet/roll_cuts.h"

#include "units/rounding.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

constexpr std::string_view phase_gap = "half repeat";

bool is_left_out(std::string_view what) { return what == phase_gap || what == "placing the pattern"; }

/// Half repeats in a length that was rounded up to a whole millimetre; 0 where it is no number of them.
double repeats_in(Length length, const Fabric& fabric) {
    const bool none = fabric.match && fabric.match->is(Match::none);
    if (fabric.repeat.mm() <= 0.0 || none) {
        return 0.0;
    }
    const double repeats = std::round(2.0 * (length / fabric.repeat)) / 2.0;
    const double over = length.mm() - repeats * fabric.repeat.mm();
    return over > -whole_tolerance && over < 1.0 ? repeats : 0.0;
}

const LayerFigures* layer_of(const Figures& figures, const Cut& cut) {
    const auto window = std::ranges::find(figures.windows, cut.window, &WindowFigures::id);
    if (window == figures.windows.end()) {
        return nullptr;
    }
    const auto layer = std::ranges::find(window->layers, cut.layer, &LayerFigures::id);
    return layer == window->layers.end() ? nullptr : &*layer;
}

/// How many widths one curtain has of the cloth that a cut is of: the part of the layer with this cloth and count.
double widths_each(const LayerFigures& layer, const std::string& fabric, const Cut& cut) {
    if (layer.cloth && layer.cloth->fabric == fabric && layer.cloth->widths == cut.count) {
        return layer.cloth->widths_each;
    }
    for (const auto& back : {layer.lining, layer.interlining}) {
        if (back && back->fabric == fabric && back->widths == cut.count) {
            return back->widths_each;
        }
    }
    return 0.0;
}

/// Whose each width is: of a pair the left one's, one that is split, the right one's.
std::vector<std::vector<int>> shared_out(int curtains, double each, int count) {
    std::vector<std::vector<int>> whose(static_cast<std::size_t>(count));
    const int whole = static_cast<int>(floor_whole(each));
    const bool split = each > whole + whole_tolerance;
    if (curtains != 2 || 2 * whole + (split ? 1 : 0) != count) {
        return curtains == 1 ? std::vector<std::vector<int>>(whose.size(), {0}) : whose;
    }
    for (int i = 0; i < count; ++i) {
        const bool middle = split && i == whole;
        whose[static_cast<std::size_t>(i)] = middle ? std::vector<int>{0, 1} : std::vector<int>{i < whole ? 0 : 1};
    }
    return whose;
}

/// The cuts of one cloth, in their order.
class RollWriter {
public:
    RollWriter(const Figures& figures, const Fabric& fabric, const Order& order)
        : figures_(figures), fabric_(fabric), order_(order) {
        roll_.fabric = order.fabric;
    }

    RollCuts write() {
        for (const Cut& cut : order_.cuts) {
            if (cut.window.empty() && is_left_out(cut.what)) {
                add(cut, 1, {});  // before the first piece, where the pattern is placed
            }
        }
        for (const Cut& cut : order_.cuts) {
            if (cut.what == "drops" && gap_of(cut) != nullptr) {
                phase_by_phase(cut, *gap_of(cut));
            } else if (!is_left_out(cut.what)) {
                all_of(cut);
            }
        }
        return roll_;
    }

private:
    [[nodiscard]] const Cut* gap_of(const Cut& drops) const {
        const auto found = std::ranges::find_if(order_.cuts, [&](const Cut& cut) {
            return cut.what == phase_gap && cut.window == drops.window && cut.layer == drops.layer;
        });
        return found == order_.cuts.end() ? nullptr : &*found;
    }

    [[nodiscard]] std::vector<std::vector<int>> whose(const Cut& cut) const {
        const LayerFigures* layer = layer_of(figures_, cut);
        const bool in_widths = cut.what == "drops" || cut.what == "facing";
        if (layer == nullptr || !layer->finished || !in_widths) {
            return std::vector<std::vector<int>>(static_cast<std::size_t>(cut.count));
        }
        return shared_out(layer->finished->curtains, widths_each(*layer, order_.fabric, cut), cut.count);
    }

    void all_of(const Cut& cut) {
        const auto curtains = whose(cut);
        for (int i = 0; i < cut.count; ++i) {
            add(cut, i + 1, curtains[static_cast<std::size_t>(i)]);
        }
    }

    void phase_by_phase(const Cut& drops, const Cut& gap) {
        const auto curtains = whose(drops);
        for (const int phase : {0, 1}) {
            if (phase == 1) {
                add(gap, 1, {});
            }
            for (int i = phase; i < drops.count; i += 2) {
                add(drops, i + 1, curtains[static_cast<std::size_t>(i)]);
            }
        }
    }

    void add(const Cut& cut, int number, std::vector<int> curtains) {
        const double repeats = repeats_in(cut.length, fabric_);
        const Length length = repeats > 0.0 ? repeats * fabric_.repeat : cut.length;
        roll_.cuts.push_back({.start = at_,
                              .end = at_ + length,
                              .what = cut.what,
                              .window = cut.window,
                              .layer = cut.layer,
                              .number = number,
                              .of = cut.count,
                              .curtains = std::move(curtains),
                              .repeats = repeats,
                              .left_out = is_left_out(cut.what)});
        at_ += length;
    }

    const Figures& figures_;
    const Fabric& fabric_;
    const Order& order_;
    RollCuts roll_;
    Length at_;
};

}  // namespace

std::vector<RollCuts> cuts_as_ordered(const Survey& survey, const Figures& figures) {
    std::vector<RollCuts> rolls;
    for (const Order& order : figures.orders) {
        const auto fabric = std::ranges::find(survey.fabrics, order.fabric, &Fabric::id);
        if (fabric != survey.fabrics.end()) {
            rolls.push_back(RollWriter(figures, *fabric, order).write());
        }
    }
    return rolls;
}

}  // namespace truehang
