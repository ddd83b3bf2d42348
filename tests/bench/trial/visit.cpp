// SPDX-License-Identifier: Apache-2.0
#include "visit.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace truehang::trial {

namespace {

constexpr double eighth = 25.4 / 8.0;
constexpr double tape_m = 5.0;
constexpr double angle_u_deg = 0.5;  // the house rule's own

struct TapeChoice {
    TapeClass accuracy;
    double a, b;
};

/// EU 2014/32 Annex X (MI-008): a and b of the classes.
const std::vector<TapeChoice> tapes{{TapeClass::I, 0.1, 0.1}, {TapeClass::II, 0.3, 0.2}, {TapeClass::III, 0.6, 0.4}};

WrittenReading in_eighths(double mm) {
    const long long eighths = std::llround(mm / eighth);
    const long long whole = eighths / 8;
    const long long rest = eighths % 8;
    const double value = static_cast<double>(eighths) * eighth;
    if (rest == 0) {
        return {fmt::format("{}", whole), value};
    }
    const long long common = std::gcd(rest, 8LL);
    const std::string fraction = fmt::format("{}/{}", rest / common, 8 / common);
    return {whole == 0 ? fraction : fmt::format("{} {}", whole, fraction), value};
}

}  // namespace

WrittenReading write_down(double mm, LengthUnit unit) {
    if (unit == LengthUnit::in) {
        return in_eighths(mm);
    }
    const long long whole = std::llround(mm);
    const auto value = static_cast<double>(whole);
    return {unit == LengthUnit::cm ? fmt::format("{}.{}", whole / 10, whole % 10) : fmt::format("{}", whole), value};
}

WrittenReading write_angle_down(double degrees, double step) {
    const double shown = std::round(degrees / step) * step;
    const long long tenths = std::llround(shown * 10.0);
    const auto value = static_cast<double>(tenths) / 10.0;
    return {tenths % 10 == 0 ? fmt::format("{}", tenths / 10) : fmt::format("{}.{}", tenths / 10, tenths % 10), value};
}

double value_of(const Reading& reading) {
    return is_angle(reading.station) ? reading.angle->degrees() : reading.value->mm();
}

void set_value(Reading& reading, double value) {
    if (is_angle(reading.station)) {
        reading.angle = Angle::degrees(value);
    } else {
        reading.value = Length::mm(value);
    }
}

bool has_value(const Reading& reading) { return reading.value || reading.angle; }

double same_value(std::string_view station) { return is_angle(station) ? 0.26 : 1.6; }

Visit::Visit(const Truth& truth, const Conditions& conditions, Random& random) : conditions_(conditions) {
    const TapeChoice tape = tapes[random.by_share({0.1, 0.7, 0.2})];
    const std::vector<LengthUnit> units{LengthUnit::mm, LengthUnit::cm, LengthUnit::in};
    unit_ = units[random.by_share({0.5, 0.25, 0.25})];
    a_ = tape.a;
    b_ = tape.b;
    const double permitted = (a_ + b_ * tape_m) / (tape_m * 1000.0);
    scale_ = random.between(-permitted, permitted);
    // The house rules' words: 1 mm a planed frame, 2 sound plaster, 4 rough stone.
    edge_ = truth.built == Built::frame ? 1.0 : (random.chance(0.125) ? 4.0 : 2.0);
    case_mm_ = unit_ == LengthUnit::in ? 3.0 * 25.4 : random.pick(std::vector<double>{63.0, 70.0, 78.0, 85.0});

    bevel_step_ = random.chance(0.7) ? 0.1 : 0.5;

    survey_.id = "trial";
    survey_.entry_unit = unit_ == LengthUnit::in ? "in" : unit_ == LengthUnit::cm ? "cm" : "mm";
    survey_.tape = Tape{};
    survey_.tape->accuracy = tape.accuracy;
    survey_.tape->length = Length::metres(tape_m);
    survey_.tape->graduation = Length::mm(unit_ == LengthUnit::in ? eighth : 1.0);
    survey_.tape->case_length = Length::mm(case_mm_);
    survey_.rules.numbers["edge_u_mm"] = edge_;
}

Reading Visit::take(const std::string& station, double truth, Random& random, double slip) const {
    Reading reading;
    reading.station = station;
    if (is_angle(station)) {
        const double seen = truth + angle_u_deg * conditions_.rough * random.normal() + slip;
        const WrittenReading written = write_angle_down(std::clamp(seen, 0.0, 360.0), bevel_step_);
        reading.typed = written.text;
        reading.angle = Angle::degrees(written.value);
        return reading;
    }
    const double permitted = a_ + b_ * std::ceil(truth / 1000.0);
    const double tape = conditions_.one_scale ? scale_ * truth : random.between(-permitted, permitted);
    const double seen = truth + tape + edge_ * conditions_.rough * random.normal() + slip;
    const WrittenReading written = write_down(std::max(seen, 0.0), unit_);
    reading.typed = written.text;
    reading.value = Length::mm(written.value);
    return reading;
}

/// Round a bay hangs a rail whose track is asked for; elsewhere nothing.
Window Visit::empty_window(const Truth& truth) const {
    Window window;
    window.id = "window";
    window.shape = truth.kind().shape;
    if (truth.track_off > 0.0) {
        Layer layer;
        layer.hardware = Hardware{};
        layer.hardware->kind = HardwareKind::track;
        layer.hardware->projection = Length::mm(truth.track_off);
        window.layers.push_back(std::move(layer));
    }
    return window;
}

Window Visit::measure(const Truth& truth, Random& random) const {
    Window window = empty_window(truth);
    for (const std::string& station : truth.walk) {
        window.readings.push_back(take(station, truth.at(station), random));
        window.readings.back().id = fmt::format("r{}", window.readings.size());
    }
    return window;
}

Window Visit::without_error(const Truth& truth) const {
    Window window = empty_window(truth);
    for (const std::string& station : truth.walk) {
        Reading reading;
        reading.station = station;
        set_value(reading, truth.at(station));
        reading.id = fmt::format("r{}", window.readings.size() + 1);
        window.readings.push_back(std::move(reading));
    }
    return window;
}

}  // namespace truehang::trial
