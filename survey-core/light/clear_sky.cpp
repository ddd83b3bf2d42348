// SPDX-License-Identifier: Apache-2.0
#include "light/clear_sky.h"

#include "light/degrees.h"

#include <cmath>

namespace truehang {
double air_mass(Angle altitude) {
    const double h = altitude.degrees();
    return 1.0 / (std::sin(h * per_degree) + 0.50572 * std::pow(h + 6.07995, -1.6364));
}

ClearSky clear_sky(const SkyDepths& depths, int day_of_year, Angle altitude) {
    if (altitude.degrees() <= 0.0) {
        return {};
    }
    const double outside = 1367.0 * (1.0 + 0.033 * std::cos(360.0 * (day_of_year - 3) / 365.0 * per_degree));
    const double ab = 1.219 - 0.043 * depths.beam - 0.151 * depths.diffuse - 0.204 * depths.beam * depths.diffuse;
    const double ad = 0.202 + 0.852 * depths.beam - 0.007 * depths.diffuse - 0.357 * depths.beam * depths.diffuse;
    const double mass = air_mass(altitude);
    return {outside * std::exp(-depths.beam * std::pow(mass, ab)),
            outside * std::exp(-depths.diffuse * std::pow(mass, ad))};
}

double level_clear_sky(Angle altitude) {
    const double cosine = std::sin(altitude.degrees() * per_degree);
    return cosine > 0.0 ? 1098.0 * cosine * std::exp(-0.059 / cosine) : 0.0;
}

}  // namespace truehang
