// SPDX-License-Identifier: Apache-2.0
#include "rolls/house_plan.h"

#include "cloth/plan.h"
#include "survey/house_rules.h"
#include "units/rounding.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace truehang {

namespace {

/// Cloth for what couldn't be placed, as one more length.
Length missing_of(const FabricPlan& plan) {
    std::vector<PieceToCut> left;
    Length sum;
    for (const PieceToCut& piece : plan.pieces) {
        if (std::ranges::count(plan.plan.not_placed, piece.id) > 0) {
            left.push_back(piece);
            sum += piece.length + 2.0 * plan.rules.repeat;
        }
    }
    if (left.empty()) {
        return {};
    }
    Roll more;
    more.id = more.lot = "more";
    more.length = sum + 2.0 * plan.rules.useful;
    return plan_rolls({more}, left, plan.rules, {20000}).used;
}

/// `pieces` of the fabric, but those of windows in `without`.
FabricPlan plan_fabric(const RollRules& rules, const RollsOfFabric& of, std::vector<PieceToCut> pieces,
                       const std::set<std::string>& without, const RollEffort& effort) {
    FabricPlan plan;
    plan.fabric = of.fabric;
    plan.rules = rules;
    plan.pieces = std::move(pieces);
    std::erase_if(plan.pieces, [&](const PieceToCut& piece) { return without.contains(piece.window); });
    plan.plan = plan_rolls(of.rolls, plan.pieces, plan.rules, effort);
    plan.missing = missing_of(plan);
    return plan;
}

/// The pieces of windows that were left out, as not placed.
void tell_left_out(std::vector<PieceToCut> pieces, const std::set<std::string>& out, FabricPlan& plan) {
    plan.pieces = std::move(pieces);
    for (const PieceToCut& piece : plan.pieces) {
        if (!out.contains(piece.window)) {
            continue;
        }
        plan.plan.not_placed.push_back(piece.id);
        if (std::ranges::count(plan.plan.short_windows, piece.window) == 0) {
            plan.plan.short_windows.push_back(piece.window);
        }
    }
}

/// Which windows are whole in every fabric and which aren't, in the survey's order.
void tell_windows(const Survey& survey, const std::set<std::string>& out, HousePlan& house) {
    std::set<std::string> cut;
    for (const FabricPlan& plan : house.fabrics) {
        cut.insert(plan.plan.windows.begin(), plan.plan.windows.end());
    }
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            if (out.contains(window.id)) {
                house.short_windows.push_back(window.id);
            } else if (cut.contains(window.id)) {
                house.windows.push_back(window.id);
            }
        }
    }
}

/// How the plans of a whole house are made: how much each may try, and whether to go on.
struct Planning {
    RollEffort effort;
    std::stop_token stop;
};

HousePlan plan_all(const Survey& survey, const RollsThatCame& came, const Planning& planning) {
    HousePlan house;
    house.survey = survey.id;
    HousePieces pieces = house_pieces(survey);
    std::set<std::string> out;
    for (bool again = true; again;) {
        again = false;
        std::vector<FabricPlan> plans;
        for (const RollsOfFabric& of : came.fabrics) {
            if (planning.stop.stop_requested()) {
                return house;
            }
            const RollRules rules = roll_rules(survey, of.fabric, came.useful);
            plans.push_back(plan_fabric(rules, of, pieces[of.fabric], out, planning.effort));
        }
        for (const FabricPlan& plan : plans) {
            for (const std::string& window : plan.plan.short_windows) {
                again = out.insert(window).second || again;
            }
        }
        // A window that is left out isn’t asked for again: what it lacks was told before.
        for (std::size_t i = 0; i < plans.size() && !house.fabrics.empty(); ++i) {
            plans[i].missing += house.fabrics[i].missing;
        }
        house.fabrics = std::move(plans);
    }
    for (std::size_t i = 0; i < house.fabrics.size(); ++i) {
        tell_left_out(pieces[came.fabrics[i].fabric], out, house.fabrics[i]);
        house.fabrics[i].count_first = counted_first(came.fabrics[i].rolls, house.fabrics[i].pieces);
    }
    tell_windows(survey, out, house);
    return house;
}

/// "Parlour, south window", as the maker called them.
std::string name_of(const Survey& survey, const std::string& id) {
    for (const Room& room : survey.rooms) {
        const auto window = std::ranges::find(room.windows, id, &Window::id);
        if (window != room.windows.end()) {
            const std::string& own = window->name.empty() ? window->id : window->name;
            return room.name.empty() ? own : room.name + ", " + own;
        }
    }
    return id;
}

Window* find_window(Survey& survey, const std::string& id) {
    for (Room& room : survey.rooms) {
        const auto found = std::ranges::find(room.windows, id, &Window::id);
        if (found != room.windows.end()) {
            return &*found;
        }
    }
    return nullptr;
}

/// Tries changes of the survey, each through the figures and a plan of its own.
class Alternatives {
public:
    Alternatives(const Survey& survey, const RollsThatCame& came, const HousePlan& house, std::stop_token stop)
        : survey_(survey), came_(came), house_(house), planning_{{100000}, std::move(stop)} {}

    std::vector<Alternative> run() {
        shorter_hem();
        for (const std::string& window : house_.short_windows) {
            if (!planning_.stop.stop_requested()) {
                fewer_widths(window);
            }
        }
        std::ranges::stable_sort(found_, {}, [](const Alternative& each) { return each.short_windows.size(); });
        return std::move(found_);
    }

private:
    void offer(const Survey& changed, Alternative alternative) {
        alternative.short_windows = plan_all(changed, came_, planning_).short_windows;
        if (alternative.short_windows.size() < house_.short_windows.size()) {
            alternative.text +=
                alternative.short_windows.empty() ? " everything can be cut." : still_short(alternative);
            found_.push_back(std::move(alternative));
        }
    }

    [[nodiscard]] std::string still_short(const Alternative& alternative) const {
        const std::size_t left = alternative.short_windows.size();
        return fmt::format(" {} still short, instead of {}.",
                           left == 1 ? "1 window is" : fmt::format("{} windows are", left),
                           house_.short_windows.size());
    }

    void shorter_hem() {
        constexpr double hem = 100.0;
        const double now = house_rules(survey_.rules).hem;
        if (now <= hem) {
            return;
        }
        Survey changed = survey_;
        changed.rules.numbers["hem_mm"] = hem;
        offer(changed, {"hem", "", fmt::format("With hems of {:g} mm instead of {:g} mm", hem, now), hem, {}});
    }

    /// The first step of fullness at which the figures cut fewer widths, no less than the heading takes.
    void fewer_widths(const std::string& id) {
        Survey changed = survey_;
        Window* window = find_window(changed, id);
        for (std::size_t l = 0; window != nullptr && l < window->layers.size(); ++l) {
            const auto before = cloth_of(changed, id, l);
            auto& treatment = window->layers[l].treatment;
            if (!before || !before->fullness || !treatment) {
                continue;
            }
            const auto asked = treatment->fullness;
            for (double fullness = *before->fullness; fullness > 1.0; fullness -= 0.01) {
                treatment->fullness = fullness;
                const auto after = cloth_of(changed, id, l);
                if (after && after->widths < before->widths) {
                    offer(changed, {"widths",
                                    id,
                                    fmt::format("With {} widths instead of {} for {}, fullness {:.2f},", after->widths,
                                                before->widths, name_of(survey_, id), after->fullness.value_or(0.0)),
                                    after->fullness.value_or(0.0),
                                    {}});
                    break;
                }
            }
            treatment->fullness = asked;
        }
    }

    static std::optional<Cloth> cloth_of(const Survey& survey, const std::string& id, std::size_t layer) {
        for (const Room& room : survey.rooms) {
            for (const Window& window : room.windows) {
                if (window.id == id) {
                    return work_out_window(survey, room, window).layers[layer].cloth;
                }
            }
        }
        return std::nullopt;
    }

    const Survey& survey_;
    const RollsThatCame& came_;
    const HousePlan& house_;
    Planning planning_;
    std::vector<Alternative> found_;
};

}  // namespace

RollRules roll_rules(const Survey& survey, const std::string& fabric, Length useful) {
    RollRules rules;
    rules.useful = useful;
    const auto of = std::ranges::find(survey.fabrics, fabric, &Fabric::id);
    if (of != survey.fabrics.end() && match_of(*of) != Match::none) {
        rules.repeat = of->repeat;
    }
    return rules;
}

std::vector<std::string> counted_first(const std::vector<Roll>& rolls, const std::vector<PieceToCut>& pieces) {
    Length asked;
    for (const PieceToCut& piece : pieces) {
        asked += piece.length;
    }
    std::vector<std::string> ids;
    for (const Roll& roll : rolls) {
        if (roll.length > counted_above || asked > counted_above) {
            ids.push_back(roll.id);
        }
    }
    return ids;
}

double shown_gap_pct(const RollPlan& plan) {
    // Up, so that it never says less than is proved; no −0 where it is nothing.
    return std::max(0.0, std::ceil(plan.gap_pct() * 100.0 - 1e-9) / 100.0);
}

HousePlan plan_house(const Survey& survey, const RollsThatCame& came, const RollEffort& effort,
                     const std::stop_token& stop) {
    HousePlan house = plan_all(survey, came, {effort, stop});
    if (!house.short_windows.empty() && !stop.stop_requested()) {
        house.alternatives = Alternatives(survey, came, house, stop).run();
    }
    return house;
}

}  // namespace truehang
