// SPDX-License-Identifier: Apache-2.0
#include "verdict.h"

#include "trials.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace truehang::trial {

namespace {

/// Half the coarsest mark (an eighth of an inch), and what a centimetre with one decimal loses in inches.
constexpr double same_value_mm = 1.6;
constexpr double same_weight = 1e-6;
constexpr double critical = 3.2905;    // Baarda 1968
constexpr double as_well = 4.6052;     // chi-square: a tenth of the likelihood, twice the logarithm of 10
constexpr double detectable = 4.1321;  // Baarda 1968

bool doubts(const Flag& flag) { return flag.code == "does-not-add-up"; }

bool is_same(const Suspect& a, const Suspect& b) {
    return a.station == b.station && a.slip == b.slip && a.proposed.has_value() == b.proposed.has_value() &&
           (!a.proposed || std::abs((*a.proposed - *b.proposed).mm()) < same_value_mm / 10.0);
}

/// One network's judgement of one reading: chi-square with the reading elsewhere is that without it plus (value -
/// expected) over the standard error, squared.
struct Judgement {
    const Check* check;
    double expected, error;

    [[nodiscard]] double off(double value) const { return (value - expected) / error; }
    [[nodiscard]] double chi2_with(double value, double now) const {
        return check->chi2 - off(now) * off(now) + off(value) * off(value);
    }
    [[nodiscard]] bool passes_with(double value, double now) const {
        return std::abs(off(value)) <= critical && chi2_with(value, now) < check->limit;
    }
};

using Judgements = std::vector<Judgement>;

Judgements judgements_of(const WindowFigures& figures, const Reading& reading) {
    Judgements judgements;
    for (const Check& check : figures.checks) {
        for (const CheckedReading& checked : check.readings) {
            if (checked.station == reading.station && checked.redundancy > 1e-6) {
                judgements.push_back({&check, reading.value->mm() + checked.residual / checked.redundancy,
                                      checked.least_slip / detectable});
            }
        }
    }
    return judgements;
}

/// Whether every failing network is among them.
bool answer_for_all(const WindowFigures& figures, const Judgements& judgements) {
    return std::ranges::all_of(figures.checks, [&](const Check& check) {
        return check.adds_up ||
               std::ranges::any_of(judgements, [&](const Judgement& judgement) { return judgement.check == &check; });
    });
}

double chi2_of(const WindowFigures& figures) {
    double sum = 0.0;
    for (const Check& check : figures.checks) {
        sum += check.chi2;
    }
    return sum;
}

/// What chi-square sinks by, over the reading's networks, with this value; nothing where one of them fails then.
std::optional<double> gain_by(const Judgements& judgements, double value, double now) {
    double gain = 0.0;
    for (const Judgement& judgement : judgements) {
        if (!judgement.passes_with(value, now)) {
            return std::nullopt;
        }
        gain += judgement.check->chi2 - judgement.chi2_with(value, now);
    }
    return gain;
}

bool share_a_network(const Judgements& a, const Judgements& b) {
    return std::ranges::any_of(a, [&](const Judgement& x) {
        return std::ranges::any_of(b, [&](const Judgement& y) { return x.check == y.check; });
    });
}

/// The sum of chi-squares with two readings exchanged, where everything adds up then.
std::optional<double> chi2_exchanged(const WindowFigures& figures, const Visit& visit, const Window& window,
                                     std::size_t a, std::size_t b) {
    const auto of_a = judgements_of(figures, window.readings[a]);
    const auto of_b = judgements_of(figures, window.readings[b]);
    const double value_a = window.readings[a].value->mm();
    const double value_b = window.readings[b].value->mm();
    const double apart = std::abs(value_a - value_b);
    const auto fails = [](const Judgement& judgement) { return !judgement.check->adds_up; };
    if (apart < same_value_mm || (std::ranges::none_of(of_a, fails) && std::ranges::none_of(of_b, fails))) {
        return std::nullopt;
    }
    if (!share_a_network(of_a, of_b)) {
        auto both = of_a;
        both.insert(both.end(), of_b.begin(), of_b.end());
        const auto gain_a = gain_by(of_a, value_b, value_a);
        const auto gain_b = gain_by(of_b, value_a, value_b);
        return gain_a && gain_b && answer_for_all(figures, both) ? std::optional(chi2_of(figures) - *gain_a - *gain_b)
                                                                 : std::nullopt;
    }
    double furthest = 0.0;
    for (const Judgement& judgement : of_a) {
        furthest = std::max(furthest, std::abs(judgement.expected - value_a));
    }
    if (apart > 1.1 * furthest || apart < 0.3 * furthest) {
        return std::nullopt;
    }
    Window exchanged = window;
    exchanged.readings[a].value = Length::mm(value_b);
    exchanged.readings[b].value = Length::mm(value_a);
    const WindowFigures then = figures_of(visit, exchanged);
    return adds_up(then) ? std::optional(chi2_of(then)) : std::nullopt;
}

std::string suspect_text(const Suspect& suspect) {
    std::string text =
        fmt::format("{:.3f} {} {} was {:.1f}", suspect.weight, suspect.station, suspect.slip, suspect.was.mm());
    text += suspect.proposed ? fmt::format(" should be {:.1f}", suspect.proposed->mm()) : std::string();
    for (const Correction& also : suspect.also) {
        text += fmt::format(" (also {} to {:.1f})", also.station, also.proposed ? also.proposed->mm() : 0.0);
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
    const bool right_value = suspect.proposed && std::abs(suspect.proposed->mm() - fault->clean_mm) <= same_value_mm;
    return right_value || (!planted.recoverable() && (suspect.slip == "unexplained" || suspect.slip == "copied"));
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
        verdict.alone = top.weight >= 0.5 && top.slip != "unexplained" &&
                        std::ranges::none_of(verdict.suspects, [&](const Suspect& other) {
                            return other.station != top.station && other.weight > top.weight / 3.0;
                        });
        verdict.wrong_value = verdict.alone && !is_right(top, planted);
        verdict.wrong_station = verdict.alone && planted.at(top.station) == nullptr;
    }
    return verdict;
}

bool gives_itself_away(const WindowFigures& figures, const Visit& visit, const Window& window, const Planted& planted) {
    std::optional<double> right;
    std::vector<double> others;
    const double now = chi2_of(figures);
    for (const Reading& reading : window.readings) {
        const auto judgements = judgements_of(figures, reading);
        if (judgements.empty() || !answer_for_all(figures, judgements)) {
            continue;
        }
        const Fault* fault = planted.at(reading.station);
        for (const double value : could_have_been(reading, visit)) {
            if (const auto gain = gain_by(judgements, value, reading.value->mm())) {
                const bool is_it = fault != nullptr && std::abs(value - fault->clean_mm) <= same_value_mm;
                is_it ? void(right = now - *gain) : others.push_back(now - *gain);
            }
        }
    }
    for (std::size_t a = 0; a < window.readings.size(); ++a) {
        for (std::size_t b = a + 1; b < window.readings.size(); ++b) {
            if (const auto chi2 = chi2_exchanged(figures, visit, window, a, b)) {
                const bool is_it = planted.slip == Slip::swapped && planted.at(window.readings[a].station) != nullptr &&
                                   planted.at(window.readings[b].station) != nullptr;
                is_it ? void(right = *chi2) : others.push_back(*chi2);
            }
        }
    }
    return right && std::ranges::none_of(others, [&](double chi2) { return chi2 <= *right + as_well; });
}

std::string told_in_full(const std::string& what, const Truth& truth, const Visit& visit, const Window& window,
                         const Planted& planted, const WindowFigures& figures) {
    const auto kind = std::ranges::find(slip_kinds, planted.slip, &SlipKind::slip);
    std::string text = fmt::format("{}: {} in a {}, entry unit {}, edge u {:.0f}, case {:.1f}\n", what, kind->name,
                                   Word<Shape>::word_for(truth.shape), visit.survey().entry_unit.value_or(""),
                                   visit.survey().rules.numbers.at("edge_u_mm"), visit.case_mm());
    for (const Fault& fault : planted.faults) {
        text += fmt::format("  planted: {} {:.1f}, before {:.1f}\n", fault.station, fault.wrong_mm, fault.clean_mm);
    }
    text += "  readings:";
    for (const Reading& reading : window.readings) {
        text += fmt::format(" {}=\"{}\" ({:.1f}; true {:.1f})", reading.station, reading.typed,
                            reading.value ? reading.value->mm() : 0.0, truth.at(reading.station));
    }
    for (const Check& check : figures.checks) {
        text += check.adds_up ? ""
                              : fmt::format("\n  {}: chi-square {:.1f} of {:.1f}, off by {:.1f}", check.network,
                                            check.chi2, check.limit, check.off_by.mm());
    }
    for (const Suspect& suspect : suspects_of(figures)) {
        text += "\n  suspect: " + suspect_text(suspect);
    }
    text += "\n  next: " +
            (figures.next ? figures.next->station + " - " + figures.next->why : "none - " + figures.nothing_more);
    return text + "\n";
}

}  // namespace truehang::trial
