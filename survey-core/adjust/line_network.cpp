// SPDX-License-Identifier: Apache-2.0
#include "adjust/line_network.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace truehang {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

}  // namespace

int LineNetwork::add_mark() {
    parent_.push_back(static_cast<int>(parent_.size()));
    return parent_.back();
}

int LineNetwork::root(int mark) const {
    while (parent_[at(mark)] != mark) {
        mark = parent_[at(mark)];
    }
    return mark;
}

void LineNetwork::observe(int from, int to, const CountedReading& reading, const TapeRule& tape) {
    const int a = root(from);
    const int b = root(to);
    parent_[at(std::max(a, b))] = std::min(a, b);
    if (a != b || reading.independent) {
        observations_.push_back({from, to, reading.value.mm(), reading_u(reading, tape).mm(),
                                 std::string(reading.station.word), reading.measured});
    }
}

bool LineNetwork::adjust_all() {
    if (observations_.empty()) {
        return false;
    }
    int unknowns = 0;
    unknown_.clear();
    for (int mark = 0; mark < static_cast<int>(parent_.size()); ++mark) {
        unknown_.push_back(root(mark) == mark ? -1 : unknowns++);
    }
    adjustment_.unknowns.assign(at(unknowns), 0.0);
    std::vector<ObservationEquation> equations;
    for (const Observation& observation : observations_) {
        equations.push_back({difference(observation.from, observation.to), observation.value, observation.sigma});
    }
    auto adjusted = adjust(equations, at(unknowns));
    if (!adjusted) {
        return false;
    }
    adjustment_ = std::move(adjusted).value();
    return true;
}

std::vector<double> LineNetwork::difference(int from, int to) const {
    std::vector<double> f(adjustment_.unknowns.size(), 0.0);
    if (unknown_[at(to)] >= 0) {
        f[at(unknown_[at(to)])] += 1.0;
    }
    if (unknown_[at(from)] >= 0) {
        f[at(unknown_[at(from)])] -= 1.0;
    }
    return f;
}

std::optional<Estimate> LineNetwork::between(int from, int to) const {
    if (root(from) != root(to)) {
        return std::nullopt;
    }
    const auto f = difference(from, to);
    const auto& x = adjustment_.unknowns;
    Estimate estimate{
        Length::mm(std::inner_product(f.begin(), f.end(), x.begin(), 0.0)), Length::mm(adjustment_.sigma_of(f)), {}};
    const auto leverage = adjustment_.leverage_of(f);
    for (std::size_t i = 0; i < observations_.size(); ++i) {
        const Observation& observation = observations_[i];
        if (std::abs(leverage[i]) > 1e-9 && !observation.measured &&
            std::ranges::find(estimate.rests_on, observation.station) == estimate.rests_on.end()) {
            estimate.rests_on.push_back(observation.station);
        }
    }
    return estimate;
}

std::vector<std::string> LineNetwork::way_between(int from, int to) const {
    // Breadth first, the readings in the order in which they were observed.
    std::vector<int> reached{from};
    std::vector<std::vector<std::string>> ways{{}};
    for (std::size_t i = 0; i < reached.size(); ++i) {
        if (reached[i] == to) {
            return ways[i];
        }
        for (const Observation& observation : observations_) {
            const int next = observation.from == reached[i] ? observation.to
                             : observation.to == reached[i] ? observation.from
                                                            : -1;
            if (next >= 0 && std::ranges::find(reached, next) == reached.end()) {
                reached.push_back(next);
                ways.push_back(ways[i]);
                ways.back().push_back(observation.station);
            }
        }
    }
    return {};
}

std::optional<NetworkCheck> LineNetwork::check(std::string name) const {
    std::vector<std::string> stations;
    for (const Observation& observation : observations_) {
        stations.push_back(observation.station);
    }
    return check_of(adjustment_, std::move(name), stations);
}

}  // namespace truehang
