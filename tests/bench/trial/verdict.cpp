// SPDX-License-Identifier: Apache-2.0
#include "verdict.h"

#include "trials.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace truehang::trial {

namespace {

constexpr double same_weight = 1e-6;

bool doubts(const Flag& flag) { return flag.code == "does-not-add-up"; }

/// What a suspect or another of its corrections should read, mm or degrees.
template <class Named>
std::optional<double> proposed_of(const Named& named) {
    if (named.proposed_angle) {
        return named.proposed_angle->degrees();
    }
    return named.proposed ? std::optional(named.proposed->mm()) : std::nullopt;
}

bool is_same(const Suspect& a, const Suspect& b) {
    const auto value_a = proposed_of(a), value_b = proposed_of(b);
    return a.station == b.station && a.slip == b.slip && value_a.has_value() == value_b.has_value() &&
           (!value_a || std::abs(*value_a - *value_b) < same_value(a.station) / 10.0);
}

/// Whether a suspect, or a correction beside it, gives the value that stood there before.
template <class Named>
bool proposes(const Named& named, const Fault& fault) {
    const auto proposed = proposed_of(named);
    return proposed && std::abs(*proposed - fault.clean) <= same_value(fault.station);
}

std::string suspect_text(const Suspect& suspect) {
    std::string text = fmt::format("{:.3f} {} {}", suspect.weight, suspect.station, suspect.slip);
    const auto proposed = proposed_of(suspect);
    text += proposed ? fmt::format(" should be {:.1f}", *proposed) : std::string();
    for (const Correction& also : suspect.also) {
        text += fmt::format(" (also {} to {:.1f})", also.station, proposed_of(also).value_or(0.0));
    }
    return text;
}

}  // namespace

std::vector<Suspect> suspects_of(const WindowFigures& figures) {
    std::vector<Suspect> all;
    for (const Flag& flag : figures.flags) {
        if (!doubts(flag)) {
            continue;
        }
        for (const Suspect& suspect : flag.suspects) {
            const auto known = std::ranges::find_if(all, [&](const Suspect& other) { return is_same(other, suspect); });
            if (known == all.end()) {
                all.push_back(suspect);
            } else {
                known->weight = std::max(known->weight, suspect.weight);
            }
        }
    }
    std::ranges::stable_sort(all, [](const Suspect& a, const Suspect& b) { return a.weight > b.weight; });
    return all;
}

bool adds_up(const WindowFigures& figures) { return std::ranges::none_of(figures.flags, doubts); }

bool is_right(const Suspect& suspect, const Planted& planted) {
    const Fault* fault = planted.at(suspect.station);
    if (fault == nullptr) {
        return false;
    }
    return proposes(suspect, *fault) ||
           (!planted.recoverable() && (suspect.slip == "unexplained" || suspect.slip == "copied"));
}

bool is_right_with_others(const Suspect& suspect, const Planted& planted) {
    return is_right(suspect, planted) || std::ranges::any_of(suspect.also, [&](const Correction& also) {
               const Fault* fault = planted.at(also.station);
               return fault != nullptr && proposes(also, *fault);
           });
}

bool names_one(const std::vector<Suspect>& suspects) {
    if (suspects.empty() || suspects.front().weight < 0.5 || suspects.front().slip == "unexplained") {
        return false;
    }
    const Suspect& first = suspects.front();
    return std::ranges::none_of(suspects, [&](const Suspect& other) {
        return other.station != first.station && other.weight > first.weight / 3.0;
    });
}

Verdict verdict_on(const WindowFigures& figures, const Planted& planted) {
    Verdict verdict;
    verdict.flagged = !adds_up(figures);
    verdict.suspects = suspects_of(figures);
    double other_weight = 0.0;
    for (const Suspect& suspect : verdict.suspects) {
        const bool right = is_right(suspect, planted);
        verdict.station = verdict.station || planted.at(suspect.station) != nullptr;
        verdict.right = verdict.right || right;
        (right ? verdict.right_weight : other_weight) =
            std::max(right ? verdict.right_weight : other_weight, suspect.weight);
    }
    verdict.first = verdict.right && verdict.right_weight > other_weight + same_weight;
    if (!verdict.suspects.empty()) {
        const Suspect& top = verdict.suspects.front();
        verdict.alone = names_one(verdict.suspects);
        verdict.wrong_value = verdict.alone && !is_right(top, planted);
        verdict.wrong_station = verdict.alone && planted.at(top.station) == nullptr;
    }
    return verdict;
}

std::string told_in_full(const std::string& what, const Truth& truth, const Visit& visit, const Window& window,
                         const Planted& planted, const WindowFigures& figures) {
    const auto kind = std::ranges::find(slip_kinds, planted.slip, &SlipKind::slip);
    std::string text = fmt::format("{}: {} in a {}, entry unit {}, edge u {:.0f}, case {:.1f}\n", what, kind->name,
                                   truth.kind().name, visit.survey().entry_unit.value_or(""),
                                   visit.survey().rules.numbers.at("edge_u_mm"), visit.case_mm());
    for (const Fault& fault : planted.faults) {
        text += fmt::format("  planted: {} {:.1f}, before {:.1f}\n", fault.station, fault.wrong, fault.clean);
    }
    text += "  readings:";
    for (const Reading& reading : window.readings) {
        text += fmt::format(" {}=\"{}\" ({:.1f}; true {:.1f})", reading.station, reading.typed, value_of(reading),
                            truth.at(reading.station));
    }
    for (const Check& check : figures.checks) {
        text += check.adds_up
                    ? ""
                    : fmt::format("\n  {}: chi-square {:.1f} of {:.1f}", check.network, check.chi2, check.limit);
    }
    for (const Suspect& suspect : suspects_of(figures)) {
        text += "\n  suspect: " + suspect_text(suspect);
    }
    text += "\n  next: " +
            (figures.next ? figures.next->station + " - " + figures.next->why : "none - " + figures.nothing_more);
    return text + "\n";
}

}  // namespace truehang::trial
