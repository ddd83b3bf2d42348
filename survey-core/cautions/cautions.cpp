// SPDX-License-Identifier: Apache-2.0
#include "cautions/cautions.h"

#include "units/length_text.h"
#include "units/rounding.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace truehang {

namespace {

/// The most general caution of a moment.
std::string advice_at(Moment moment) { return std::string(cautions_at(moment).front().text); }

bool is_radiator(const Obstruction& obstruction) {
    return obstruction.kind && obstruction.kind->is(ObstructionKind::radiator);
}

bool is_hot(const Obstruction& obstruction) {
    return obstruction.kind && (obstruction.kind->is(ObstructionKind::heater) ||
                                obstruction.kind->is(ObstructionKind::fire) || is_radiator(obstruction));
}

double gap(double a0, double a1, double b0, double b1) { return std::max({0.0, b0 - a1, a0 - b1}); }

/// How far the cloth's area stays off a heater or fire on the wall, mm; 0 where an edge isn't known.
double distance_to(const Obstruction& obstruction, const HungAt& hung) {
    double across = 0.0;
    double up = 0.0;
    if (obstruction.left && obstruction.width && hung.left) {
        across = gap(obstruction.left->mm(), (*obstruction.left + *obstruction.width).mm(), hung.left->mm(),
                     hung.right->mm());
    }
    if (obstruction.bottom && obstruction.height && hung.top && hung.bottom) {
        up = gap(obstruction.bottom->mm(), (*obstruction.bottom + *obstruction.height).mm(), hung.bottom->mm(),
                 hung.top->mm());
    }
    return std::hypot(across, up);
}

/// How much of the room's heat has its place noted, at whichever window.
long placed_in(const Room& room) {
    long count = 0;
    for (const Window& window : room.windows) {
        count += std::ranges::count_if(window.obstructions, is_hot);
    }
    return count;
}

void flag_heat(const LayerContext& layer, const FinishedSizes& sizes, Findings& findings) {
    const std::string advice = advice_at(Moment::heat);
    const HungAt hung = placed(layer, sizes);
    bool noted = false;
    for (const Obstruction& obstruction : layer.window.obstructions) {
        if (!is_hot(obstruction)) {
            continue;
        }
        noted = true;
        const bool radiator = is_radiator(obstruction);
        const double clear = layer.rules.heat_clear;
        const bool near =
            radiator ? may_lie_behind(obstruction, hung) : distance_to(obstruction, hung) < clear - whole_tolerance;
        if (near) {
            const std::string where = radiator ? "The curtains hang in front of the radiator. "
                                               : fmt::format("The curtains hang within {} of the {}. ",
                                                             said_length(Length::mm(clear), layer.measured.entry_unit),
                                                             obstruction.kind->text());
            findings.flag("curtain-over-heat", Severity::caution, where + advice, {}, obstruction.id);
        }
    }
    if (!noted && placed_in(layer.room) < static_cast<long>(layer.room.heat.size())) {
        findings.flag(
            "curtain-over-heat", Severity::caution,
            fmt::format("The room has heat ({}) whose place wasn’t noted. {}", layer.room.heat.front(), advice));
    }
}

/// Whether cords or chains hang at it: a blind's, if nothing says otherwise; curtains', where they are drawn by them.
bool is_corded(const LayerAsked& asked) {
    const auto& operation = asked.treatment->operation;
    return operation ? operation->is(Operation::cord) || operation->is(Operation::chain) : asked.is_blind();
}

void flag_cords(const LayerContext& layer, Findings& findings) {
    if (!is_corded(layer.asked)) {
        return;
    }
    const char* what = layer.asked.treatment->operation
                           ? "Something corded in a room that small children may use. "
                           : "Nothing says what moves this blind, so it counts as corded, in a room that small "
                             "children may use. ";
    findings.flag("cord-within-reach", Severity::caution, what + advice_at(Moment::cord));
}

/// A tie-back is a loop at the height of a child.
void flag_tie_back(const LayerContext& layer, Findings& findings) {
    const auto& tie_back = layer.asked.treatment->tie_back;
    if (layer.asked.is_blind() || !tie_back || (tie_back->kind && tie_back->kind->is(TieBackKind::holdback))) {
        return;
    }
    findings.flag("loop-within-reach", Severity::caution,
                  "A tie-back is a loop that a small child can reach; a holdback has none. " + advice_at(Moment::cord));
}

void flag_lead(const LayerContext& layer, Findings& findings) {
    const auto& weights = layer.asked.treatment->weights;
    if (!layer.asked.is_blind() && weights && weights->is(WeightKind::lead)) {
        findings.flag("lead-weights", Severity::caution, advice_at(Moment::weights));
    }
}

void flag_motor(const LayerContext& layer, Findings& findings) {
    const auto& operation = layer.asked.treatment->operation;
    if (operation && operation->is(Operation::motor)) {
        findings.flag("power-at-the-window", Severity::caution, advice_at(Moment::power));
    }
}

void flag_heavy(const LayerContext& layer, const ClothPlan& plan, Findings& findings) {
    constexpr double carried_kg = 10.0;  // the most that one person takes up a ladder (the caution of that moment)
    if (!plan.mass) {
        return;
    }
    const double each = plan.mass->kg() / layer.asked.curtains();
    if (each > carried_kg + whole_tolerance) {
        findings.flag("heavy-curtain", Severity::caution,
                      fmt::format("{:.1f} kg in one piece. {}", each, advice_at(Moment::lifting)));
    }
}

}  // namespace

void flag_cautions(const LayerContext& layer, const FinishedSizes& sizes, const ClothPlan& plan, Findings& findings) {
    flag_heat(layer, sizes, findings);
    if (layer.room.young_children.value_or(true)) {
        flag_cords(layer, findings);
        flag_tie_back(layer, findings);
        flag_lead(layer, findings);
    }
    flag_motor(layer, findings);
    flag_heavy(layer, plan, findings);
}

}  // namespace truehang
