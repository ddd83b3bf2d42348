// SPDX-License-Identifier: Apache-2.0
#include "adjust/leave_one_out.h"

#include "adjust/chi_square.h"

#include <cmath>

namespace truehang {

namespace {

/// An angle as 0 to 360 degrees.
double within_turn(double degrees) { return degrees - 360.0 * std::floor(degrees / 360.0); }

/// A station that enters once: its residual and redundancy number say where the others want it.
std::optional<LeftOut> from_residual(const std::vector<Observation>& observations, const Residuals& adjusted,
                                     std::size_t at) {
    const double r = adjusted.redundancy_numbers[at];
    if (r <= 0.0) {
        return std::nullopt;
    }
    const Observation& own = observations[at];
    const double slip = -adjusted.residuals[at] / r;
    const double curvature = r / (own.sigma * own.sigma);
    const double expected = own.is_angle ? within_turn(own.value - slip) : own.value - slip;
    return LeftOut{expected, curvature, adjusted.chi2 - curvature * slip * slip, own.is_angle};
}

/// A station that enters several times: the parabola through three values.
std::optional<LeftOut> from_parabola(const Network& network, std::vector<Observation> observations,
                                     const Residuals& adjusted, std::string_view station, double at) {
    constexpr double step = 5.0;
    const auto chi2_at = [&](double value) -> std::optional<double> {
        for (Observation& observation : observations) {
            if (observation.station == station) {
                observation.value = value;
            }
        }
        const auto moved = network.tried(observations);
        return moved ? std::optional(moved->chi2) : std::nullopt;
    };
    const auto above = chi2_at(at + step);
    const auto below = chi2_at(at - step);
    if (!above || !below) {
        return std::nullopt;
    }
    const double curvature = (*above + *below - 2.0 * adjusted.chi2) / (2.0 * step * step);
    if (curvature < 1e-9) {
        return std::nullopt;
    }
    const double slip = (*above - *below) / (4.0 * step * curvature);
    return LeftOut{at - slip, curvature, adjusted.chi2 - curvature * slip * slip, false};
}

/// A sigma that leaves a reading no weight to speak of: beyond it a figure starts without the reading too.
constexpr double loose = 1e6;

std::optional<Residuals> at_no_weight(const Network& network, std::string_view station) {
    auto observations = network.observations;
    for (Observation& observation : observations) {
        observation.sigma = observation.station == station ? loose : observation.sigma;
    }
    return network.tried(observations);
}

/// What is known of a reading that had no weight to speak of: where the others want it, and the variance of that.
struct Expected {
    double value, variance;
};
Expected expected_of(const Observation& own, const Residuals& others, std::size_t at) {
    const double share = others.hat[at * others.residuals.size() + at];
    const double value = own.value + others.residuals[at];
    return {own.is_angle ? within_turn(value) : value, loose * loose * share};
}

}  // namespace

double sigma_at(const Observation& observation, double value, const TapeRule& tape) {
    const bool by_tape =
        !observation.is_angle && observation.sigma == reading_u(Length::mm(observation.value), tape).mm();
    return by_tape ? reading_u(Length::mm(value), tape).mm() : observation.sigma;
}

double LeftOut::off(double value) const {
    return is_angle ? std::remainder(value - expected, 360.0) : value - expected;
}

bool LeftOut::agrees(double value) const { return std::abs(off(value)) * std::sqrt(curvature) < critical_w; }

void set_reading(std::vector<Observation>& observations, std::string_view station, double value, const TapeRule& tape) {
    for (Observation& observation : observations) {
        if (observation.station == station) {
            observation.sigma = sigma_at(observation, value, tape);
            observation.value = value;
        }
    }
}

double PairLeftOut::chi2_at(const std::array<double, 2>& off, const std::array<double, 2>& sigmas) const {
    const double one = variances[0] + sigmas[0] * sigmas[0];
    const double other = variances[1] + sigmas[1] * sigmas[1];
    const double determinant = one * other - covariance * covariance;
    const double sum = other * off[0] * off[0] - 2.0 * covariance * off[0] * off[1] + one * off[1] * off[1];
    return chi2 + sum / std::max(determinant, 1e-15 * one * other);
}

std::optional<PairLeftOut> leave_out(const Network& network, std::string_view one, std::string_view other) {
    auto observations = network.observations;
    std::array<std::size_t, 2> at{};
    std::array<std::size_t, 2> entries{};
    for (std::size_t i = observations.size(); i-- > 0;) {
        for (std::size_t which = 0; which < 2; ++which) {
            if (observations[i].station == (which == 0 ? one : other)) {
                observations[i].sigma = loose;
                at[which] = i;
                ++entries[which];
            }
        }
    }
    const auto others = network.tried(observations);
    if (!others || entries[0] == 0 || entries[1] == 0) {
        return std::nullopt;
    }
    PairLeftOut left;
    for (std::size_t which = 0; which < 2; ++which) {
        const Expected expected = expected_of(observations[at[which]], *others, at[which]);
        left.expected[which] = expected.value;
        left.variances[which] = expected.variance;
    }
    left.covariance = loose * loose * others->hat[at[0] * observations.size() + at[1]];
    left.chi2 = others->chi2;
    left.holds_widely = network.is_linear && entries[0] == 1 && entries[1] == 1;
    return left;
}

std::optional<LeftOut> leave_out(const Network& network, std::string_view station, const TapeRule& tape) {
    std::size_t first = network.observations.size();
    std::size_t entries = 0;
    for (std::size_t i = network.observations.size(); i-- > 0;) {
        if (network.observations[i].station == station) {
            first = i;
            ++entries;
        }
    }
    if (entries == 0 || network.adjustment.redundancy_numbers[first] <= 0.0) {
        return std::nullopt;
    }
    if (network.is_linear && entries == 1) {
        return from_residual(network.observations, network.adjustment, first);
    }
    std::vector<Observation> observations = network.observations;
    std::optional<Residuals> adjusted = network.adjustment;
    if (!network.adds_up()) {
        // The others alone: the reading may be so far off that the figure with it is another one.
        const auto others = at_no_weight(network, station);
        if (!others) {
            return std::nullopt;
        }
        set_reading(observations, station, observations[first].value + others->residuals[first], tape);
        adjusted = network.tried(observations);
    }
    constexpr int most_steps = 8;
    for (int step = 0; step < most_steps && adjusted; ++step) {
        const double value = observations[first].value;
        const auto left = entries == 1 ? from_residual(observations, *adjusted, first)
                                       : from_parabola(network, observations, *adjusted, station, value);
        // A hundredth of the reading's standard error is close enough.
        if (!left || std::abs(left->off(value)) * std::sqrt(left->curvature) < 0.01) {
            return left;
        }
        set_reading(observations, station, left->expected, tape);
        adjusted = network.tried(observations);
    }
    return std::nullopt;
}

}  // namespace truehang
