// SPDX-License-Identifier: Apache-2.0
#include "sheet/roll_cuts.h"

#include "units/rounding.h"
#include "units/saying.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

namespace truehang {

namespace {

constexpr std::string_view phase_gap = to_say("half repeat");
constexpr std::string_view left_over = to_say("left over");

bool is_left_out(std::string_view what) { return what == phase_gap || what == to_say("placing the pattern"); }

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

/// Whose each piece of a cut is, as far as it goes by widths.
std::vector<std::vector<int>> whose(const Figures& figures, const std::string& fabric, const Cut& cut) {
    const LayerFigures* layer = layer_of(figures, cut);
    const bool in_widths = cut.what == "drops" || cut.what == "facing";
    if (layer == nullptr || !layer->finished || !in_widths) {
        return std::vector<std::vector<int>>(static_cast<std::size_t>(cut.count));
    }
    return shared_out(layer->finished->curtains, widths_each(*layer, fabric, cut), cut.count);
}

/// The cuts of one cloth, in their order.
class RollCutter {
public:
    RollCutter(const Figures& figures, const Fabric& fabric, const Order& order)
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

    void all_of(const Cut& cut) {
        const auto curtains = whose(figures_, order_.fabric, cut);
        for (int i = 0; i < cut.count; ++i) {
            add(cut, i + 1, curtains[static_cast<std::size_t>(i)]);
        }
    }

    void phase_by_phase(const Cut& drops, const Cut& gap) {
        const auto curtains = whose(figures_, order_.fabric, drops);
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

/// A piece without its place among those of its kind: what comes before the last "/" of its id.
std::string kind_of(const PieceToCut& piece) { return piece.id.substr(0, piece.id.rfind('/')); }

/// The cuts of one fabric that rolls came of.
class PlanReader {
public:
    PlanReader(const Figures& figures, const std::vector<Roll>& rolls, const FabricPlan& plan)
        : figures_(figures), rolls_(rolls), plan_(plan) {}

    [[nodiscard]] std::vector<RollCuts> read() const {
        std::vector<RollCuts> all;
        for (const PlannedRoll& planned : plan_.plan.rolls) {
            const auto roll = std::ranges::find(rolls_, planned.roll, &Roll::id);
            if (roll != rolls_.end() && !planned.cuts.empty()) {
                all.push_back(cuts_of(*roll, planned));
            }
        }
        if (all.empty() && !plan_.plan.short_windows.empty()) {
            all.push_back({.fabric = plan_.fabric, .roll = "no roll", .measured = Length()});
        }
        if (!all.empty()) {
            all.front().short_windows = plan_.plan.short_windows;
        }
        return all;
    }

private:
    [[nodiscard]] RollCuts cuts_of(const Roll& roll, const PlannedRoll& planned) const {
        RollCuts cuts{.fabric = plan_.fabric,
                      .roll = "roll " + roll.id + (roll.lot.empty() ? "" : ", lot " + roll.lot),
                      .measured = roll.length};
        cuts.counted_first = std::ranges::count(plan_.count_first, roll.id) > 0;
        Length end;
        for (const PlannedCut& cut : planned.cuts) {
            cuts.cuts.push_back(cut_of(cut));
            end = std::max(end, cut.to);
        }
        for (const RollFlaw& flaw : roll.flaws) {
            cuts.flaws.push_back(
                {.start = flaw.from, .end = flaw.to, .what = std::string(to_say("flaw")), .left_out = true});
        }
        for (const RollJoin& join : roll.joins) {
            cuts.flaws.push_back(
                {.start = join.at, .end = join.at, .what = std::string(to_say("join")), .left_out = true});
        }
        std::ranges::stable_sort(cuts.flaws, {}, &RollCut::start);
        for (const RollCut& flaw : cuts.flaws) {
            pass_over(cuts.cuts, flaw, end);
        }
        for (const Remnant& remnant : planned.remnants) {
            if (remnant.useful) {
                pass_over(cuts.cuts,
                          {.start = remnant.from, .end = remnant.to, .what = std::string(left_over), .left_out = true},
                          end);
            }
            if (remnant.useful || remnant.from >= end) {
                cuts.left_over.push_back(remnant);
            }
        }
        return cuts;
    }

    /// Puts what is passed over before the first piece that begins behind it; nothing behind the last piece.
    static void pass_over(std::vector<RollCut>& cuts, const RollCut& passed, Length end) {
        if (passed.start < end) {
            const auto behind = [&](const RollCut& cut) {
                return !cut.beside && (cut.start > passed.start || (cut.start == passed.start && !cut.left_out));
            };
            cuts.insert(std::ranges::find_if(cuts, behind), passed);
        }
    }

    [[nodiscard]] RollCut cut_of(const PlannedCut& planned) const {
        const auto piece = std::ranges::find(plan_.pieces, planned.piece, &PieceToCut::id);
        const auto same = [&](const PieceToCut& each) { return kind_of(each) == kind_of(*piece); };
        Cut kind;
        kind.what = piece->what;
        kind.window = piece->window;
        kind.layer = piece->layer;
        kind.count = static_cast<int>(std::ranges::count_if(plan_.pieces, same));
        const auto number = std::count_if(plan_.pieces.begin(), piece, same);
        return {.start = planned.from,
                .end = planned.to,
                .what = piece->what,
                .window = piece->window,
                .layer = piece->layer,
                .number = static_cast<int>(number) + 1,
                .of = kind.count,
                .curtains = whose(figures_, plan_.fabric, kind)[static_cast<std::size_t>(number)],
                .beside = planned.beside};
    }

    const Figures& figures_;
    const std::vector<Roll>& rolls_;
    const FabricPlan& plan_;
};

}  // namespace

std::vector<RollCuts> cuts_as_ordered(const Survey& survey, const Figures& figures) {
    std::vector<RollCuts> rolls;
    for (const Order& order : figures.orders) {
        const auto fabric = std::ranges::find(survey.fabrics, order.fabric, &Fabric::id);
        if (fabric != survey.fabrics.end()) {
            rolls.push_back(RollCutter(figures, *fabric, order).write());
        }
    }
    return rolls;
}

std::vector<RollCuts> cuts_as_planned(const Survey& survey, const Figures& figures, const RollsThatCame& came,
                                      const HousePlan& plan) {
    std::vector<RollCuts> all;
    for (RollCuts& ordered : cuts_as_ordered(survey, figures)) {
        const auto planned = std::ranges::find(plan.fabrics, ordered.fabric, &FabricPlan::fabric);
        const auto of = std::ranges::find(came.fabrics, ordered.fabric, &RollsOfFabric::fabric);
        if (planned == plan.fabrics.end() || of == came.fabrics.end()) {
            all.push_back(std::move(ordered));
        } else {
            std::ranges::move(cuts_as_planned(figures, of->rolls, *planned), std::back_inserter(all));
        }
    }
    return all;
}

std::vector<RollCuts> cuts_as_planned(const Figures& figures, const std::vector<Roll>& rolls, const FabricPlan& plan) {
    return PlanReader(figures, rolls, plan).read();
}

int curtains_of(const Figures& figures, const RollCut& cut) {
    const auto window = std::ranges::find(figures.windows, cut.window, &WindowFigures::id);
    if (window == figures.windows.end()) {
        return 0;
    }
    const auto layer = std::ranges::find(window->layers, cut.layer, &LayerFigures::id);
    return layer == window->layers.end() || !layer->finished ? 0 : layer->finished->curtains;
}

std::string whose_text(const RollCut& cut, int curtains) {
    if (cut.curtains.size() == 2) {
        return say("split: half to each curtain");
    }
    if (cut.curtains.empty() || curtains < 2) {
        return {};
    }
    return cut.curtains.front() == 0 ? say("left curtain") : say("right curtain");
}

std::vector<ShownCut> shown_cuts(const RollCuts& roll, const SheetStyle& style) {
    std::vector<ShownCut> shown;
    Length end;
    int number = 0;
    for (const RollCut& cut : roll.cuts) {
        if (cut.left_out && roll.measured) {
            shown.push_back({0, cut.start, cut.end, cut.end - cut.start});
            continue;
        }
        const Length length = cut_length(cut.end - cut.start, style);
        const Length from = cut.beside && !shown.empty() && cut.start < end
                                ? cut_length(cut.start, style)
                                : std::max(end, cut_length(cut.start, style));
        shown.push_back({++number, from, from + length, length});
        end = std::max(end, from + length);
    }
    return shown;
}

}  // namespace truehang
