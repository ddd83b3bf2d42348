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
    if (station.is_angle()) {
        return station.number > 0 ? "corner.angle" : "mouth.angle";
    }
    const bool has_kin = station.kind == StationKind::width || station.kind == StationKind::diagonal ||
                         (station.kind == StationKind::height && station.line);
    if (!has_kin || station.word.starts_with("facet.")) {
        return {};
    }
    return std::string(station.word.substr(0, station.word.rfind('.')));
}

/// How near readings of one stretch lie to each other.
struct Nearness {
    double scale, floor;

    [[nodiscard]] double density(double apart) const {
        const double x = apart / scale;
        return 1.0 / ((1.0 + x * x / 3.0) * (1.0 + x * x / 3.0)) + floor;
    }
};

/// Floors and ceilings may step or slope by much, the sides of an opening hardly ever; not every bay is alike on both
/// sides.
Nearness nearness_of(const Station& station, std::string_view stretch) {
    if (station.is_angle()) {
        return {2.0, 0.05};
    }
    return {12.0, stretch.starts_with("opening") ? 1e-5 : 2e-3};
}

/// Mm, or degrees of an angle.
double number_of(const CountedReading& reading) {
    return reading.angle ? reading.angle->degrees() : reading.value.mm();
}

/// What a reading of the station says, in its unit; nothing of another station or without a value.
std::optional<double> number_of(const Reading& reading, const Station& station) {
    if (reading.station != station.word) {
        return std::nullopt;
    }
    if (station.is_angle()) {
        return reading.angle ? std::optional(reading.angle->degrees()) : std::nullopt;
    }
    return reading.value ? std::optional(reading.value->mm()) : std::nullopt;
}

}  // namespace

double unexplained_density(double slip, bool is_angle) {
    const double least = is_angle ? 1.0 : 2.0;
    const double most = is_angle ? 180.0 : 4000.0;
    const double size = std::clamp(std::abs(slip), least, most);
    return 1.0 / (2.0 * std::log(most / least) * size);
}

bool was_confirmed(const Window& window, const CountedReading& reading, const TapeRule& tape) {
    const double u = reading.angle ? angle_u(reading, tape).degrees() : reading_u(reading, tape).mm();
    const double near = critical_w * std::sqrt(2.0) * u;
    std::string earlier = reading.reading->replaces;
    for (std::size_t step = 0; !earlier.empty() && step < window.readings.size(); ++step) {
        const auto found = std::ranges::find(window.readings, earlier, &Reading::id);
        const auto before = found == window.readings.end() ? std::nullopt : number_of(*found, reading.station);
        if (!before || (found->how && !found->how->is(How::measured))) {
            return false;
        }
        if (std::abs(*before - number_of(reading)) < near) {
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
            kin.push_back(number_of(other));
        }
    }
    if (kin.empty()) {
        return 0.0;
    }
    // The nearer of two: one of them may be the odd one.
    const auto nearest = [&](double number) {
        double apart = std::abs(kin.front() - number);
        for (const double each : kin) {
            apart = std::min(apart, std::abs(each - number));
        }
        return apart;
    };
    const Nearness near = nearness_of(reading.station, stretch);
    return std::log(near.density(nearest(value)) / near.density(nearest(number_of(reading))));
}

}  // namespace truehang
