// SPDX-License-Identifier: Apache-2.0
#include "adjust/network.h"

#include "adjust/chi_square.h"

#include <algorithm>
#include <cmath>

namespace truehang {

std::optional<NetworkCheck> check_of(const Adjustment& adjustment, std::string network,
                                     const std::vector<std::string>& stations) {
    if (adjustment.redundancy < 1) {
        return std::nullopt;
    }
    NetworkCheck check;
    check.network = std::move(network);
    check.redundancy = adjustment.redundancy;
    check.chi2 = adjustment.chi2;
    check.limit = chi_square_limit(adjustment.redundancy);
    check.adds_up = check.chi2 < check.limit;
    double largest_w = -1.0;
    for (std::size_t i = 0; i < stations.size(); ++i) {
        const double r = adjustment.redundancy_numbers[i];
        if (r <= 0.0) {
            continue;
        }
        if (std::ranges::find(check.stations, stations[i]) == check.stations.end()) {
            check.stations.push_back(stations[i]);
        }
        const double w = std::abs(adjustment.normalised[i]);
        if (w > largest_w) {
            largest_w = w;
            check.off_by = Length::mm(std::abs(adjustment.residuals[i]) / r);
            // The estimate -v/r has the standard error sigma/sqrt(r); w is their quotient.
            check.explained = w > 0.0 ? Length::mm(critical_w * check.off_by.mm() / w) : Length();
        }
    }
    return check;
}

}  // namespace truehang
