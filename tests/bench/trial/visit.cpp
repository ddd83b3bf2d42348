// SPDX-License-Identifier: Apache-2.0
#include "visit.h"

#include <fmt/format.h>

#include <cmath>
#include <numeric>

namespace truehang::trial {

namespace {

constexpr double eighth = 25.4 / 8.0;
constexpr double tape_m = 5.0;

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

Visit::Visit(Shape shape, const Conditions& conditions, Random& random) : conditions_(conditions) {
    const TapeChoice tape = tapes[random.by_share({0.1, 0.7, 0.2})];
    const std::vector<LengthUnit> units{LengthUnit::mm, LengthUnit::cm, LengthUnit::in};
    unit_ = units[random.by_share({0.5, 0.25, 0.25})];
    a_ = tape.a;
    b_ = tape.b;
    const double permitted = (a_ + b_ * tape_m) / (tape_m * 1000.0);
    scale_ = random.between(-permitted, permitted);
    // The house rules' words: 1 mm a planed frame, 2 sound plaster, 4 rough stone.
    edge_ = shape == Shape::frame ? 1.0 : (random.chance(0.125) ? 4.0 : 2.0);
    case_mm_ = unit_ == LengthUnit::in ? 3.0 * 25.4 : random.pick(std::vector<double>{63.0, 70.0, 78.0, 85.0});

    survey_.id = "trial";
    survey_.entry_unit = unit_ == LengthUnit::in ? "in" : unit_ == LengthUnit::cm ? "cm" : "mm";
    survey_.tape = Tape{};
    survey_.tape->accuracy = tape.accuracy;
    survey_.tape->length = Length::metres(tape_m);
    survey_.tape->graduation = Length::mm(unit_ == LengthUnit::in ? eighth : 1.0);
    survey_.tape->case_length = Length::mm(case_mm_);
    survey_.rules.numbers["edge_u_mm"] = edge_;
}

Reading Visit::take(const std::string& station, double truth, Random& random, double slip_mm) const {
    Reading reading;
    reading.station = station;
    const double permitted = a_ + b_ * std::ceil(truth / 1000.0);
    const double tape = conditions_.one_scale ? scale_ * truth : random.between(-permitted, permitted);
    const double seen = truth + tape + edge_ * conditions_.rough * random.normal() + slip_mm;
    const WrittenReading written = write_down(std::max(seen, 0.0), unit_);
    reading.typed = written.text;
    reading.value = Length::mm(written.mm);
    return reading;
}

Window Visit::measure(const Truth& truth, Random& random) const {
    Window window;
    window.id = "window";
    window.shape = truth.shape;
    for (const std::string& station : truth.walk) {
        window.readings.push_back(take(station, truth.at(station), random));
        window.readings.back().id = fmt::format("r{}", window.readings.size());
    }
    return window;
}

Window Visit::without_error(const Truth& truth) const {
    Window window;
    window.id = "window";
    window.shape = truth.shape;
    for (const std::string& station : truth.walk) {
        Reading reading;
        reading.station = station;
        reading.value = Length::mm(truth.at(station));
        reading.id = fmt::format("r{}", window.readings.size() + 1);
        window.readings.push_back(std::move(reading));
    }
    return window;
}

}  // namespace truehang::trial
