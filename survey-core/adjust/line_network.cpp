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
        observations_.push_back(
            {std::string(reading.station.word), reading.value.mm(), reading_u(reading, tape).mm(), false});
        stretches_.push_back({from, to, reading.measured});
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
    for (std::size_t i = 0; i < observations_.size(); ++i) {
        equations.push_back(
            {difference(stretches_[i].from, stretches_[i].to), observations_[i].value, observations_[i].sigma});
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
        const std::string& station = observations_[i].station;
        if (std::abs(leverage[i]) > 1e-9 && !stretches_[i].measured &&
            std::ranges::find(estimate.rests_on, station) == estimate.rests_on.end()) {
            estimate.rests_on.push_back(station);
        }
    }
    return estimate;
}

std::vector<Share> LineNetwork::shares(int from, int to) const {
    std::vector<Share> shares;
    if (root(from) != root(to)) {
        return shares;
    }
    const auto leverage = adjustment_.leverage_of(difference(from, to));
    for (std::size_t i = 0; i < observations_.size(); ++i) {
        if (std::abs(leverage[i]) > 1e-9) {
            shares.push_back({observations_[i].station, leverage[i]});
        }
    }
    return shares;
}

std::optional<double> LineNetwork::u_with(int from, int to, int reading_from, int reading_to, double sigma) const {
    if (root(from) != root(to) || root(reading_from) != root(reading_to) || root(from) != root(reading_from)) {
        return std::nullopt;
    }
    const auto f = difference(from, to);
    const auto g = difference(reading_from, reading_to);
    double common = 0.0;
    for (std::size_t i = 0; i < f.size(); ++i) {
        for (std::size_t j = 0; j < g.size(); ++j) {
            common += f[i] * adjustment_.cofactors[i * f.size() + j] * g[j];
        }
    }
    const double own = adjustment_.sigma_of(f);
    const double other = adjustment_.sigma_of(g);
    return std::sqrt(std::max(0.0, own * own - common * common / (sigma * sigma + other * other)));
}

std::vector<std::string> LineNetwork::way_between(int from, int to) const {
    // Breadth first, the readings in the order in which they were observed.
    std::vector<int> reached{from};
    std::vector<std::vector<std::string>> ways{{}};
    for (std::size_t i = 0; i < reached.size(); ++i) {
        if (reached[i] == to) {
            return ways[i];
        }
        for (std::size_t k = 0; k < stretches_.size(); ++k) {
            const int next = stretches_[k].from == reached[i] ? stretches_[k].to
                             : stretches_[k].to == reached[i] ? stretches_[k].from
                                                              : -1;
            if (next >= 0 && std::ranges::find(reached, next) == reached.end()) {
                reached.push_back(next);
                ways.push_back(ways[i]);
                ways.back().push_back(observations_[k].station);
            }
        }
    }
    return {};
}

std::optional<Network> LineNetwork::network(std::string name) const {
    std::vector<std::vector<double>> design;
    for (const Stretch& stretch : stretches_) {
        design.push_back(difference(stretch.from, stretch.to));
    }
    const auto unknowns = adjustment_.unknowns.size();
    auto solve = [design = std::move(design), unknowns](const std::vector<Observation>& observations,
                                                        double /*hopeless*/) {
        std::vector<ObservationEquation> equations;
        for (std::size_t i = 0; i < design.size(); ++i) {
            equations.push_back({design[i], observations[i].value, observations[i].sigma});
        }
        return residuals_of(equations, unknowns);
    };
    auto network = network_of(std::move(name), observations_, adjustment_, std::move(solve));
    if (network) {
        network->is_linear = true;
    }
    return network;
}

}  // namespace truehang
