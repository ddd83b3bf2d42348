// SPDX-License-Identifier: Apache-2.0
#include "networks.h"

#include "chi_square_theory.h"
#include "verdict.h"

#include <algorithm>
#include <cmath>

namespace truehang::trial {

namespace {

constexpr double as_well = 4.6052;  // chi-square: a tenth of the likelihood, twice the logarithm of 10

using NetworkList = std::vector<Network>;

bool adds_up(const NetworkList& networks) { return std::ranges::all_of(networks, &Network::adds_up); }

double chi2_of(const NetworkList& networks) {
    double sum = 0.0;
    for (const Network& network : networks) {
        sum += network.adjustment.chi2;
    }
    return sum;
}

/// One network's judgement of one reading: chi-square with the reading elsewhere is that without it plus (value -
/// expected) over the standard error, squared.
struct Judgement {
    std::string network;
    double now = 0.0;      ///< chi-square as it is
    double without = 0.0;  ///< chi-square without the reading
    double limit = 0.0;
    double expected = 0.0, error = 1.0;

    [[nodiscard]] double off(double value) const { return (value - expected) / error; }
    [[nodiscard]] double chi2_with(double value) const { return without + off(value) * off(value); }
    [[nodiscard]] bool passes_with(double value) const {
        return std::abs(off(value)) <= critical && chi2_with(value) < limit;
    }
};

using Judgements = std::vector<Judgement>;

Judgements judgements_of(const NetworkList& networks, const Reading& reading) {
    Judgements judgements;
    for (const Network& network : networks) {
        const Adjustment& adjusted = network.adjustment;
        for (std::size_t i = 0; i < network.observations.size(); ++i) {
            const double r = adjusted.redundancy_numbers[i];
            if (network.observations[i].station == reading.station && r > 1e-6) {
                Judgement judgement{network.name, adjusted.chi2, 0.0, network.limit, 0.0, 1.0};
                judgement.expected = value_of(reading) + adjusted.residuals[i] / r;
                judgement.error = network.observations[i].sigma / std::sqrt(r);
                const double off = judgement.off(value_of(reading));
                judgement.without = adjusted.chi2 - off * off;
                judgements.push_back(std::move(judgement));
            }
        }
    }
    return judgements;
}

bool is_along_a_line(const std::string& network) { return network.starts_with("plumb") || network == "wall"; }

/// The same with the figures worked about where they expect the reading, not about where they were bent to by it.
Judgements judgements_about(const NetworkList& networks, const Visit& visit, const Window& window, std::size_t at) {
    Judgements judgements = judgements_of(networks, window.readings[at]);
    const auto is_figure = [](const Judgement& judgement) { return !is_along_a_line(judgement.network); };
    const auto own = std::ranges::find_if(judgements, is_figure);
    if (own == judgements.end()) {
        return judgements;
    }
    Window moved = window;
    for (int step = 0; step < 2; ++step) {
        const bool angle = is_angle(window.readings[at].station);
        set_value(moved.readings[at], std::clamp(own->expected, angle ? 0.5 : 1.0, angle ? 359.5 : 1e5));
        const Judgements there = judgements_of(networks_of(visit, moved).networks, moved.readings[at]);
        const auto found = std::ranges::find(there, own->network, &Judgement::network);
        if (found == there.end()) {
            break;
        }
        const double now = own->now;
        *own = *found;
        own->now = now;
    }
    return judgements;
}

/// Whether every failing network is among them.
bool answer_for_all(const NetworkList& networks, const Judgements& judgements) {
    return std::ranges::all_of(networks, [&](const Network& network) {
        return network.adds_up() ||
               std::ranges::find(judgements, network.name, &Judgement::network) != judgements.end();
    });
}

/// What chi-square sinks by, over the reading's networks, with this value; nothing where one of them fails then.
std::optional<double> gain_by(const Judgements& judgements, double value) {
    double gain = 0.0;
    for (const Judgement& judgement : judgements) {
        if (!judgement.passes_with(value)) {
            return std::nullopt;
        }
        gain += judgement.now - judgement.chi2_with(value);
    }
    return gain;
}

/// Whether exchanging two readings could mend what fails: one of them is judged by a failing network, and their
/// difference is about what is amiss.
bool may_be_exchanged(const Judgements& of_a, const Judgements& of_b, const Reading& a, const Reading& b) {
    const double apart = std::abs(value_of(a) - value_of(b));
    double furthest = 0.0;
    bool any_fails = false;
    for (const auto* judgements : {&of_a, &of_b}) {
        const double value = value_of(judgements == &of_a ? a : b);
        for (const Judgement& judgement : *judgements) {
            any_fails = any_fails || judgement.now >= judgement.limit;
            furthest = std::max(furthest, std::abs(judgement.expected - value));
        }
    }
    return any_fails && apart >= same_value(a.station) && apart <= 1.2 * furthest;
}

/// The sum of chi-squares with two readings exchanged, where everything adds up then.
std::optional<double> chi2_exchanged(const Visit& visit, const Window& window, std::size_t a, std::size_t b) {
    Window exchanged = window;
    set_value(exchanged.readings[a], value_of(window.readings[b]));
    set_value(exchanged.readings[b], value_of(window.readings[a]));
    const NetworkList then = networks_of(visit, exchanged).networks;
    return adds_up(then) ? std::optional(chi2_of(then)) : std::nullopt;
}

/// What chi-square is with each explanation under which everything adds up.
struct Explained {
    std::optional<double> right;
    std::vector<double> others;

    void add(bool is_it, double chi2) { is_it ? void(right = chi2) : others.push_back(chi2); }
};

void explain_by_one(const NetworkList& networks, const Visit& visit, const Window& window, const Planted& planted,
                    Explained& explained) {
    const double now = chi2_of(networks);
    for (std::size_t at = 0; at < window.readings.size(); ++at) {
        const Reading& reading = window.readings[at];
        if (const auto coarsely = judgements_of(networks, reading);
            coarsely.empty() || !answer_for_all(networks, coarsely)) {
            continue;
        }
        const auto judgements = judgements_about(networks, visit, window, at);
        const Fault* fault = planted.at(reading.station);
        for (const double value : could_have_been(reading, visit)) {
            if (const auto gain = gain_by(judgements, value)) {
                const bool is_it = fault != nullptr && std::abs(value - fault->clean) <= same_value(reading.station);
                explained.add(is_it, now - *gain);
            }
        }
    }
}

void explain_by_exchange(const NetworkList& networks, const Visit& visit, const Window& window, const Planted& planted,
                         Explained& explained) {
    std::vector<Judgements> judgements;
    for (const Reading& reading : window.readings) {
        judgements.push_back(judgements_of(networks, reading));
    }
    for (std::size_t a = 0; a < window.readings.size(); ++a) {
        for (std::size_t b = a + 1; b < window.readings.size(); ++b) {
            const Reading& one = window.readings[a];
            const Reading& other = window.readings[b];
            Judgements both = judgements[a];
            both.insert(both.end(), judgements[b].begin(), judgements[b].end());
            if (is_angle(one.station) != is_angle(other.station) || !answer_for_all(networks, both) ||
                !may_be_exchanged(judgements[a], judgements[b], one, other)) {
                continue;
            }
            if (const auto chi2 = chi2_exchanged(visit, window, a, b)) {
                explained.add(planted.slip == Slip::swapped && planted.at(one.station) != nullptr &&
                                  planted.at(other.station) != nullptr,
                              *chi2);
            }
        }
    }
}

}  // namespace

bool gives_itself_away(const Visit& visit, const Window& window, const Planted& planted) {
    const NetworkList networks = networks_of(visit, window).networks;
    Explained explained;
    explain_by_one(networks, visit, window, planted, explained);
    if (planted.slip != Slip::swapped && !explained.right) {
        return false;
    }
    explain_by_exchange(networks, visit, window, planted, explained);
    return explained.right &&
           std::ranges::none_of(explained.others, [&](double chi2) { return chi2 <= *explained.right + as_well; });
}

}  // namespace truehang::trial
