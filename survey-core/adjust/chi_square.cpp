// SPDX-License-Identifier: Apache-2.0
#include "adjust/chi_square.h"

#include <boost/math/distributions/chi_squared.hpp>

namespace truehang {

double chi_square_limit(int redundancy) {
    return boost::math::quantile(boost::math::chi_squared(static_cast<double>(redundancy)), 0.999);
}

}  // namespace truehang
