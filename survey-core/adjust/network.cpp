// SPDX-License-Identifier: Apache-2.0
#include "adjust/network.h"

#include "adjust/chi_square.h"

#include <algorithm>
#include <cmath>

namespace truehang {

std::vector<std::string> Network::stations() const {
    std::vector<std::string> judged;
    for (std::size_t i = 0; i < observations.size(); ++i) {
        if (adjustment.redundancy_numbers[i] > 0.0 &&
            std::ranges::find(judged, observations[i].station) == judged.end()) {
            judged.push_back(observations[i].station);
        }
    }
    return judged;
}

Network::Misclosure Network::misclosure() const {
    Misclosure largest;
    double largest_w = -1.0;
    for (std::size_t i = 0; i < observations.size(); ++i) {
        const double r = adjustment.redundancy_numbers[i];
        const double w = std::abs(adjustment.normalised[i]);
        if (r > 0.0 && w > largest_w) {
            largest_w = w;
            // The estimate of a slip, -v/r, has the standard error sigma/sqrt(r); w is their quotient.
            largest = {std::abs(adjustment.residuals[i]) / r, critical_w * observations[i].sigma / std::sqrt(r),
                       observations[i].is_angle};
        }
    }
    return largest;
}

std::optional<Network> network_of(std::string name, std::vector<Observation> observations, Adjustment adjustment,
                                  Solve solve) {
    if (adjustment.redundancy < 1) {
        return std::nullopt;
    }
    const double limit = chi_square_limit(adjustment.redundancy);
    return Network{std::move(name), std::move(observations), std::move(adjustment), std::move(solve), limit, false};
}

Network unformed_network(std::string name, std::vector<Observation> observations, Solve solve) {
    // Beyond any figure that could be formed.
    constexpr double hopeless_w = 1e3;
    Adjustment none;
    none.redundancy = 1;
    none.chi2 = hopeless_w * hopeless_w;
    none.residuals.assign(observations.size(), 0.0);
    none.redundancy_numbers.assign(observations.size(), 1.0);
    none.normalised.assign(observations.size(), hopeless_w);
    return {std::move(name), std::move(observations), std::move(none), std::move(solve), chi_square_limit(1), false};
}

}  // namespace truehang
