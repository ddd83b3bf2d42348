// SPDX-License-Identifier: Apache-2.0
#include "cautions/cautions.h"

#include "units/length_text.h"
#include "units/rounding.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <string>

namespace truehang {

namespace {

/// The most general caution of a moment.
std::string advice_at(Hazard hazard) { return worded(cautions_at(hazard).front().text); }

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
    const std::string advice = advice_at(Hazard::heat);
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
            const std::string where = radiator ? say("The curtains hang in front of the radiator.")
                                               : say("The curtains hang within {} of the {}.",
                                                     said_length(Length::mm(clear), layer.measured.entry_unit),
                                                     worded(obstruction.kind->text()));
            findings.flag("curtain-over-heat", Severity::caution, fmt::format("{} {}", where, advice), {},
                          obstruction.id);
        }
    }
    if (!noted && placed_in(layer.room) < static_cast<long>(layer.room.heat.size())) {
        findings.flag(
            "curtain-over-heat", Severity::caution,
            say("The room has heat ({}) whose place wasn’t noted. {}", worded(layer.room.heat.front()), advice));
    }
}

bool is_blind(const Treatment& treatment) { return treatment.heading && treatment.heading->is(Heading::roman); }

/// Whether cords or chains hang at it: a blind's, if nothing says otherwise; curtains', where they are drawn by them.
bool is_corded(const Treatment& treatment) {
    const auto& operation = treatment.operation;
    return operation ? operation->is(Operation::cord) || operation->is(Operation::chain) : is_blind(treatment);
}

/// A tie-back is a loop at the height of a child; a holdback isn't.
bool is_looped(const Treatment& treatment) {
    const auto& tie_back = treatment.tie_back;
    return !is_blind(treatment) && tie_back && !(tie_back->kind && tie_back->kind->is(TieBackKind::holdback));
}

bool is_weighted_with_lead(const Treatment& treatment) {
    return !is_blind(treatment) && treatment.weights && treatment.weights->is(WeightKind::lead);
}

/// Words in what a room is used as that tell of a public place, a workplace or lodgings; common practice, no source.
constexpr std::array public_words{"hotel",   "guest",   "hostel",   "lodging", "office",  "shop",    "school",
                                  "college", "nursery", "hospital", "clinic",  "surgery", "care",    "church",
                                  "chapel",  "hall",    "theatre",  "cinema",  "stage",   "library", "restaurant",
                                  "café",    "cafe",    "pub",      "bar",     "public"};

/// Whether one of them stands there as a word of its own.
bool is_public(std::string use) {
    std::ranges::transform(use, use.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    const auto is_letter = [&](std::size_t at) {
        return at < use.size() &&
               (static_cast<unsigned char>(use[at]) >= 0x80 || std::isalpha(static_cast<unsigned char>(use[at])) != 0);
    };
    return std::ranges::any_of(public_words, [&](std::string_view word) {
        const std::size_t at = use.find(word);
        return at != std::string::npos && !is_letter(at + word.size()) && (at == 0 || !is_letter(at - 1));
    });
}

Flag caution_flag(const char* code, std::string text) {
    Flag flag;
    flag.code = code;
    flag.severity = Severity::caution;
    flag.text = std::move(text);
    return flag;
}

void flag_heavy(const LayerContext& layer, const ClothPlan& plan, Findings& findings) {
    constexpr double carried_kg = 10.0;  // the most that one person takes up a ladder (the caution of that moment)
    if (!plan.mass) {
        return;
    }
    const double each = plan.mass->kg() / layer.asked.curtains();
    if (each > carried_kg + whole_tolerance) {
        findings.flag("heavy-curtain", Severity::caution,
                      say("{:.1f} kg in one piece. {}", each, advice_at(Hazard::lifting)));
    }
}

}  // namespace

std::vector<Flag> cautions_of_choice(const Room& room, const Treatment& treatment) {
    std::vector<Flag> flags;
    const bool children = room.young_children.value_or(true);
    if (children && is_corded(treatment)) {
        const std::string what =
            treatment.operation
                ? say("Something corded in a room that small children may use.")
                : say("Nothing says what moves this blind, so it counts as corded, in a room that small "
                      "children may use.");
        flags.push_back(caution_flag("cord-within-reach", what + " " + advice_at(Hazard::cord)));
    }
    if (children && is_looped(treatment)) {
        flags.push_back(caution_flag(
            "loop-within-reach", say("A tie-back is a loop that a small child can reach; a holdback has none.") + " " +
                                     advice_at(Hazard::cord)));
    }
    if (children && is_weighted_with_lead(treatment)) {
        flags.push_back(caution_flag("lead-weights", advice_at(Hazard::weights)));
    }
    if (treatment.operation && treatment.operation->is(Operation::motor)) {
        flags.push_back(caution_flag("power-at-the-window", advice_at(Hazard::power)));
    }
    if (is_public(room.use)) {
        flags.push_back(caution_flag("cloth-for-public-place",
                                     say("This room is noted as {}.", room.use) + " " + advice_at(Hazard::fire)));
    }
    return flags;
}

void flag_cautions(const LayerContext& layer, const FinishedSizes& sizes, const ClothPlan& plan, Findings& findings) {
    flag_heat(layer, sizes, findings);
    for (const Flag& flag : cautions_of_choice(layer.room, *layer.asked.treatment)) {
        findings.flag(flag.code, flag.severity, flag.text);
    }
    flag_heavy(layer, plan, findings);
}

}  // namespace truehang
