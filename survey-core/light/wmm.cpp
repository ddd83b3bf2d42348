// SPDX-License-Identifier: Apache-2.0
#include "light/wmm.h"

#include "light/degrees.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace truehang {
namespace {

constexpr int degrees = 12;
constexpr double model_radius = 6371.2;             ///< km
constexpr double equator = 6378.137;                ///< km, WGS 84
constexpr double flattening = 1.0 / 298.257223563;  ///< WGS 84
constexpr double epoch = 2025.0;
constexpr double ends = 2030.0;
constexpr double weakest = 6000.0;  ///< nT: below it the model’s authors warn of compasses
constexpr double iron_share = 0.1;  ///< common practice, no source

/// Where the place is for a round Earth.
struct Geocentric {
    double latitude = 0.0;  ///< radians
    double radius = 0.0;    ///< km
};

Geocentric geocentric(double latitude, double height) {
    const double e2 = flattening * (2.0 - flattening);
    const double curve = equator / std::sqrt(1.0 - e2 * std::pow(std::sin(latitude), 2));
    const double out = (curve + height) * std::cos(latitude);
    const double along = (curve * (1.0 - e2) + height) * std::sin(latitude);
    return {std::atan2(along, out), std::hypot(out, along)};
}

/// Schmidt’s half-normalised associated Legendre functions of the cosine of a colatitude, and their derivatives by it.
struct Legendre {
    explicit Legendre(double colatitude) {
        const double c = std::cos(colatitude);
        const double s = std::sin(colatitude);
        value[0][0] = 1.0;
        for (std::size_t n = 1; n <= degrees; ++n) {
            for (std::size_t m = 0; m < n; ++m) {
                const auto nn = static_cast<double>(n);
                const auto mm = static_cast<double>(m);
                const double k = n > 1 ? ((nn - 1) * (nn - 1) - mm * mm) / ((2 * nn - 1) * (2 * nn - 3)) : 0.0;
                const double before = n > 1 ? value[n - 2][m] : 0.0;
                const double before_slope = n > 1 ? slope[n - 2][m] : 0.0;
                value[n][m] = c * value[n - 1][m] - k * before;
                slope[n][m] = c * slope[n - 1][m] - s * value[n - 1][m] - k * before_slope;
            }
            value[n][n] = s * value[n - 1][n - 1];
            slope[n][n] = s * slope[n - 1][n - 1] + c * value[n - 1][n - 1];
        }
        normalise();
    }

    std::array<std::array<double, degrees + 1>, degrees + 1> value{}, slope{};

private:
    void normalise() {
        double first = 1.0;
        for (std::size_t n = 1; n <= degrees; ++n) {
            const auto nn = static_cast<double>(n);
            first *= (2 * nn - 1) / nn;
            double factor = first;
            for (std::size_t m = 0; m <= n; ++m) {
                const auto mm = static_cast<double>(m);
                factor *= m > 0 ? std::sqrt((nn - mm + 1) * (m == 1 ? 2.0 : 1.0) / (nn + mm)) : 1.0;
                value[n][m] *= factor;
                slope[n][m] *= factor;
            }
        }
    }
};

/// The model’s error in declination, degrees (technical report of 2025, section 3.4; its numbers from memory).
double declination_error(double level) { return std::hypot(0.26, 5417.0 / std::max(level, 1.0)); }

}  // namespace

bool wmm::holds(double years) { return years >= epoch && years < ends; }

double decimal_year(Moment moment) {
    const auto year = std::chrono::year_month_day(std::chrono::floor<std::chrono::days>(moment)).year();
    const std::chrono::sys_days first = year / 1 / 1;
    const std::chrono::sys_days next = (year + std::chrono::years(1)) / 1 / 1;
    return static_cast<int>(year) +
           std::chrono::duration<double>(moment - first) / std::chrono::duration<double>(next - first);
}

MagneticField magnetic_field(const Place& place, double height_km, double years) {
    const double latitude = std::clamp(place.latitude.degrees(), -89.999999, 89.999999) * per_degree;
    const double longitude = place.longitude.degrees() * per_degree;
    const auto at = geocentric(latitude, height_km);
    const double colatitude = std::numbers::pi / 2.0 - at.latitude;
    const Legendre legendre(colatitude);
    double north = 0.0;
    double east = 0.0;
    double down = 0.0;
    for (const auto& term : wmm::terms) {
        const auto n = static_cast<std::size_t>(term.degree);
        const auto m = static_cast<std::size_t>(term.order);
        const double g = term.g + (years - epoch) * term.g_a_year;
        const double h = term.h + (years - epoch) * term.h_a_year;
        const double fall = std::pow(model_radius / at.radius, term.degree + 2);
        const double cosine = std::cos(term.order * longitude);
        const double sine = std::sin(term.order * longitude);
        const double wave = fall * (g * cosine + h * sine);
        north += wave * legendre.slope[n][m];
        east += fall * term.order * (g * sine - h * cosine) * legendre.value[n][m] / std::sin(colatitude);
        down -= wave * (term.degree + 1) * legendre.value[n][m];
    }
    const double lean = at.latitude - latitude;
    MagneticField field;
    field.north = north * std::cos(lean) - down * std::sin(lean);
    field.east = east;
    field.down = north * std::sin(lean) + down * std::cos(lean);
    field.level = std::hypot(field.north, field.east);
    field.total = std::hypot(field.level, field.down);
    field.declination = Angle::degrees(std::atan2(field.east, field.north) / per_degree);
    field.inclination = Angle::degrees(std::atan2(field.down, field.level) / per_degree);
    field.declination_uncertainty = Angle::degrees(declination_error(field.level));
    return field;
}

CompassBearing bearing_from_compass(const Place& place, const CompassReading& reading, Moment at) {
    const double years = decimal_year(at);
    const auto field = magnetic_field(place, 0.0, years);
    CompassBearing found;
    found.bearing = {as_bearing(reading.magnetic.degrees() + field.declination.degrees()),
                     Angle::degrees(std::hypot(reading.uncertainty.degrees(), field.declination_uncertainty.degrees())),
                     BearingFrom::compass};
    found.iron = reading.field && std::abs(*reading.field - field.total) > iron_share * field.total;
    found.dated = !wmm::holds(years);
    found.no_north = field.level < weakest;
    return found;
}

}  // namespace truehang
