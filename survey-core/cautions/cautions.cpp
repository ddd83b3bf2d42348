// SPDX-License-Identifier: Apache-2.0
#include "cautions/cautions.h"

#include "units/length_text.h"
#include "units/rounding.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {

namespace {

constexpr std::array table{
    Caution{Moment::heat, "any",
            "Keep the clearance that its maker asks for, follow local rules, and use a qualified person where the law "
            "asks for one.",
            "common practice, no source", "2026-11-25"},
    Caution{
        Moment::heat, "US",
        "Keep 0.9 m clear of a space heater; other heaters want the clearance that their maker asks for. Follow local "
        "rules, and use a qualified person where the law asks for one.",
        "NFPA, 3 ft clearance for space heaters; value from memory of the standard, check the edition", "2026-11-25"},
    Caution{
        Moment::cord, "any",
        "Small children can be strangled by cords and loops. Choose one without a cord; else keep every cord and loop "
        "out of reach, check the standard that holds where it hangs, follow local rules, and use a qualified person "
        "where the law asks for one.",
        "EN 13120, EN 16433, EN 16434 (check the standard)", "2026-11-25"},
    Caution{
        Moment::cord, "Australia",
        "No loose loop of 220 mm or more at or below 1600 mm from the floor, and cleats at 1600 mm or higher. Check "
        "the standard, follow local rules, and use a qualified person where the law asks for one.",
        "Trade Practices corded internal window coverings standard, 2014", "2026-11-25"},
    Caution{Moment::cord, "Canada",
            "A cord within reach at most 220 mm long and a loop at most 440 mm round, under a pull of 35 N. Check the "
            "regulation, follow local rules, and use a qualified person where the law asks for one.",
            "SOR/2019-97", "2026-11-25"},
    Caution{
        Moment::cord, "US",
        "No free-hanging operating cord on what is made to order. Check the standard, follow local rules, and use a "
        "qualified person where the law asks for one.",
        "ANSI/WCMA A100.1-2022", "2026-11-25"},
    Caution{
        Moment::drilling, "any",
        "Before drilling: old coatings and boards may hold asbestos and old paint lead; cables and pipes run in walls, "
        "most likely straight above, below and beside any switch or socket. Never cut a lintel. If in doubt stop, "
        "follow local rules, and use a qualified person where the law asks for one.",
        "BS 7671 (zones for cables); common practice, no source, for the rest", "2026-11-25"},
    Caution{
        Moment::ladder, "any",
        "Ladder for short jobs only, three points of contact, at most 10 kg in hand, on a floor that is level. Follow "
        "local rules, and use a qualified person where the law asks for one.",
        "HSE guidance on ladders; value from memory, check the edition", "2026-11-25"},
    Caution{
        Moment::load, "any",
        "No rating of pole, bracket and fixing is known until their makers say it: without it this load isn’t shown to "
        "hold. Two people for a heavy curtain. Follow local rules, and use a qualified person where the law asks for "
        "one.",
        "common practice, no source", "2026-11-25"},
    Caution{Moment::escape, "any",
            "A window that someone may have to leave by stays openable without tools. Follow local rules, and use a "
            "qualified person where the law asks for one.",
            "common practice, no source", "2026-11-25"},
    Caution{Moment::weights, "any",
            "No lead weights where small children are: steel or chain instead. Follow local rules, and use a qualified "
            "person where the law asks for one.",
            "common practice, no source", "2026-11-25"},
};

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
    const std::string advice(table.front().text);
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

}  // namespace

std::span<const Caution> cautions() { return table; }

std::vector<Caution> cautions_at(Moment moment) {
    std::vector<Caution> due;
    std::ranges::copy_if(table, std::back_inserter(due), [&](const Caution& c) { return c.moment == moment; });
    return due;
}

void flag_cautions(const LayerContext& layer, const FinishedSizes& sizes, Findings& findings) {
    flag_heat(layer, sizes, findings);
    if (layer.asked.is_blind() && layer.room.young_children.value_or(true)) {
        findings.flag("cord-within-reach", Severity::caution,
                      "A corded blind in a room that small children may use. " +
                          std::string(cautions_at(Moment::cord).front().text));
    }
}

}  // namespace truehang
