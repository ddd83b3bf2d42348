// SPDX-License-Identifier: Apache-2.0
#include "adjust/slips.h"

#include "adjust/slip_search.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace truehang {

namespace {

double log_sum(double a, double b) {
    const double most = std::max(a, b);
    return std::isinf(most) ? most : most + std::log(std::exp(a - most) + std::exp(b - most));
}

/// Sums the ways in which a set of failing networks is explained: each by chance, or with others by one hypothesis.
class WaysToExplain {
public:
    WaysToExplain(const std::vector<Hypothesis>& hypotheses, const std::vector<double>& log_chance)
        : hypotheses_(hypotheses), log_chance_(log_chance) {}

    double log_of(unsigned networks) {
        if (networks == 0U) {
            return 0.0;
        }
        if (const auto known = known_.find(networks); known != known_.end()) {
            return known->second;
        }
        unsigned first = 0;
        while ((networks & (1U << first)) == 0U) {
            ++first;
        }
        double sum = log_chance_[first] + log_of(networks & ~(1U << first));
        for (const Hypothesis& hypothesis : hypotheses_) {
            const unsigned clears = hypothesis.explanation.clears;
            if ((clears & (1U << first)) != 0U && (clears & ~networks) == 0U) {
                sum = log_sum(sum, hypothesis.log_weight + log_of(networks & ~clears));
            }
        }
        return known_[networks] = sum;
    }

private:
    const std::vector<Hypothesis>& hypotheses_;
    const std::vector<double>& log_chance_;
    std::map<unsigned, double> known_;
};

/// Below this nobody is told.
constexpr double least_weight = 0.002;

bool same_corrections(const Explanation& a, const Explanation& b) {
    const auto same = [](const Correction& x, const Correction& y) {
        return x.station == y.station && x.proposed.has_value() == y.proposed.has_value() &&
               x.proposed_angle.has_value() == y.proposed_angle.has_value() &&
               (!x.proposed || std::abs((*x.proposed - *y.proposed).mm()) < 0.05) &&
               (!x.proposed_angle || std::abs(x.proposed_angle->degrees() - y.proposed_angle->degrees()) < 0.005);
    };
    return std::ranges::equal(a.corrections, b.corrections, same);
}

/// Several ways to one correction are one suspect, under the name of the likeliest.
void gather(std::vector<Explanation>& list, Explanation explanation) {
    const auto found =
        std::ranges::find_if(list, [&](const Explanation& each) { return same_corrections(each, explanation); });
    if (found == list.end()) {
        list.push_back(std::move(explanation));
        return;
    }
    const double together = found->weight + explanation.weight;
    if (explanation.weight > found->weight) {
        *found = std::move(explanation);
    }
    found->weight = together;
}

Suspect suspect_of(const Explanation& explanation) {
    const Correction& first = explanation.corrections.front();
    return {first.station,  explanation.slip,    first.was,
            first.proposed, explanation.weight,  {explanation.corrections.begin() + 1, explanation.corrections.end()},
            first.angle,    first.proposed_angle};
}

}  // namespace

std::vector<Explanation> explain(const SlipEvidence& evidence) {
    SlipSearch search(evidence);
    if (search.failing().empty()) {
        return {};
    }
    const std::vector<Hypothesis> hypotheses = search.run();
    std::vector<double> log_chance;
    for (const Network* network : search.failing()) {
        log_chance.push_back(log_sum(0.0, log_unfound_pair(*network)));
    }
    WaysToExplain ways(hypotheses, log_chance);
    const unsigned all = (1U << search.failing().size()) - 1U;
    const double whole = ways.log_of(all);
    std::vector<Explanation> explanations;
    for (const Hypothesis& hypothesis : hypotheses) {
        Explanation explanation = hypothesis.explanation;
        explanation.weight = std::exp(hypothesis.log_weight + ways.log_of(all & ~explanation.clears) - whole);
        gather(explanations, std::move(explanation));
    }
    std::erase_if(explanations, [](const Explanation& each) { return each.weight < least_weight; });
    std::ranges::stable_sort(explanations, std::ranges::greater{}, &Explanation::weight);
    return explanations;
}

std::vector<Suspect> suspects_of(const Network& network, unsigned bit, const std::vector<Explanation>& explanations) {
    constexpr std::size_t most = 6;
    std::vector<Suspect> suspects;
    for (const Explanation& explanation : explanations) {
        if ((explanation.clears & (1U << bit)) != 0U && suspects.size() < most) {
            suspects.push_back(suspect_of(explanation));
        }
    }
    if (suspects.empty()) {
        const auto& w = network.adjustment.normalised;
        const auto largest = std::ranges::max_element(w, {}, [](double each) { return std::abs(each); });
        const Observation& observation = network.observations[static_cast<std::size_t>(largest - w.begin())];
        Suspect suspect{observation.station, "unexplained", Length(), {}, 0.0, {}, {}, {}};
        if (observation.is_angle) {
            suspect.angle = Angle::degrees(observation.value);
        } else {
            suspect.was = Length::mm(observation.value);
        }
        suspects.push_back(std::move(suspect));
    }
    return suspects;
}

bool tells_value(std::string_view slip) { return slip != "unexplained" && slip != "copied"; }

std::string standing_out(const std::vector<Suspect>& suspects) {
    constexpr double least = 0.5;
    constexpr double share = 1.0 / 3.0;
    if (suspects.empty() || !tells_value(suspects.front().slip)) {
        return {};
    }
    std::map<std::string, double> explained;
    for (const Suspect& suspect : suspects) {
        explained[suspect.station] += suspect.slip == "unexplained" ? 0.0 : suspect.weight;
    }
    const std::string& first = suspects.front().station;
    const double own = explained[first];
    const bool alone = std::ranges::all_of(
        explained, [&](const auto& each) { return each.first == first || each.second <= share * own; });
    return own >= least && alone ? first : std::string();
}

}  // namespace truehang
