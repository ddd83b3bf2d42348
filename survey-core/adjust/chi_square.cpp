// SPDX-License-Identifier: Apache-2.0
#include "adjust/chi_square.h"

#include <array>
#include <boost/math/distributions/chi_squared.hpp>

namespace truehang {

namespace {

double limit_of(std::size_t redundancy) {
    return boost::math::quantile(boost::math::chi_squared(static_cast<double>(redundancy)), 0.999);
}

}  // namespace

double chi_square_limit(int redundancy) {
    // Every network of a window is asked for its own, again and again.
    static const auto usual = [] {
        std::array<double, 64> limits{};
        for (std::size_t r = 1; r < limits.size(); ++r) {
            limits[r] = limit_of(r);
        }
        return limits;
    }();
    const auto r = static_cast<std::size_t>(redundancy);
    return r < usual.size() ? usual[r] : limit_of(r);
}

}  // namespace truehang
