// SPDX-License-Identifier: Apache-2.0
#include "adjust/slip_priors.h"

#include "adjust/chi_square.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

/// What stations of one stretch have in common: `opening.width`, `below`, `facet.height`. Empty where a station stands
/// alone: the crown and the apex are higher than the jambs.
std::string stretch_of(const Station& station, Shape shape) {
    const bool pointed = shape == Shape::arch || shape == Shape::gable;
    if (pointed && station.line == Line::centre) {
        return {};
    }
    if (station.kind == StationKind::height && station.line && station.word.starts_with("facet.")) {
        return "facet.height";
    }
    const bool has_kin = station.kind == StationKind::width || station.kind == StationKind::diagonal ||
                         (station.kind == StationKind::height && station.line);
    if (!has_kin || station.word.starts_with("facet.")) {
        return {};
    }
    return std::string(station.word.substr(0, station.word.rfind('.')));
}

/// Floors and ceilings may step or slope by much, the sides of an opening hardly ever.
double floor_of(std::string_view stretch) { return stretch.starts_with("opening") ? 1e-5 : 2e-3; }

double density(double apart, double floor) {
    constexpr double scale = 12.0;
    const double x = apart / scale;
    return 1.0 / ((1.0 + x * x / 3.0) * (1.0 + x * x / 3.0)) + floor;
}

}  // namespace

double unexplained_density(double slip_mm) {
    constexpr double least = 2.0;
    constexpr double most = 4000.0;
    const double size = std::clamp(std::abs(slip_mm), least, most);
    return 1.0 / (2.0 * std::log(most / least) * size);
}

bool was_confirmed(const Window& window, const CountedReading& reading, const TapeRule& tape) {
    const double near = critical_w * std::sqrt(2.0) * reading_u(reading, tape).mm();
    std::string earlier = reading.reading->replaces;
    for (std::size_t step = 0; !earlier.empty() && step < window.readings.size(); ++step) {
        const auto found = std::ranges::find(window.readings, earlier, &Reading::id);
        if (found == window.readings.end() || found->station != reading.station.word || !found->value ||
            (found->how && !found->how->is(How::measured))) {
            return false;
        }
        if (std::abs((*found->value - reading.value).mm()) < near) {
            return true;
        }
        earlier = found->replaces;
    }
    return false;
}

std::optional<double> earlier_value(const Window& window, const CountedReading& reading) {
    const std::string& earlier = reading.reading->replaces;
    const auto found =
        earlier.empty() ? window.readings.end() : std::ranges::find(window.readings, earlier, &Reading::id);
    const bool is_own = found != window.readings.end() && found->station == reading.station.word && found->value;
    return is_own ? std::optional(found->value->mm()) : std::nullopt;
}

bool are_kin(const Station& a, const Station& b, Shape shape) {
    const std::string stretch = stretch_of(a, shape);
    return !stretch.empty() && stretch == stretch_of(b, shape);
}

double log_kinship(const SlipEvidence& evidence, const CountedReading& reading, double value) {
    const Shape shape = evidence.window.shape.known().value_or(Shape::recess);
    const std::string stretch = stretch_of(reading.station, shape);
    if (stretch.empty()) {
        return 0.0;
    }
    std::vector<double> kin;
    for (const CountedReading& other : evidence.readings) {
        if (other.independent && other.station.word != reading.station.word &&
            stretch_of(other.station, shape) == stretch) {
            kin.push_back(other.value.mm());
        }
    }
    if (kin.empty()) {
        return 0.0;
    }
    // The nearer of two: one of them may be the odd one.
    const auto nearest = [&](double mm) {
        double apart = std::abs(kin.front() - mm);
        for (const double each : kin) {
            apart = std::min(apart, std::abs(each - mm));
        }
        return apart;
    };
    const double floor = floor_of(stretch);
    return std::log(density(nearest(value), floor) / density(nearest(reading.value.mm()), floor));
}

}  // namespace truehang
