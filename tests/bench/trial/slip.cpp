// SPDX-License-Identifier: Apache-2.0
#include "slip.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <cstdlib>

namespace truehang::trial {

namespace {

constexpr double eighth = 25.4 / 8.0;
constexpr double most_mm = 100'000.0;  // the contract's range
constexpr double most_deg = 359.5;

bool is_digit(char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; }

/// Where the digits stand that a slip of digits may touch: of inches those of the whole number.
std::vector<std::size_t> digits_of(const std::string& text) {
    const auto slash = text.find('/');
    const auto end = slash == std::string::npos ? text.size() : std::min(text.find(' '), slash);
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < std::min(end, text.size()); ++i) {
        if (is_digit(text[i])) {
            places.push_back(i);
        }
    }
    if (slash != std::string::npos && text.find(' ') == std::string::npos) {
        places.clear();  // a fraction alone
    }
    return places;
}

/// What a text says, in mm: whole or decimal numbers, or inches with a fraction.
double read_text(const std::string& text, LengthUnit unit) {
    double number = 0.0;
    const auto slash = text.find('/');
    if (slash == std::string::npos) {
        number = std::strtod(text.c_str(), nullptr);
    } else {
        const auto space = text.find(' ');
        const std::size_t top = space == std::string::npos ? 0 : space + 1;
        const double whole = space == std::string::npos ? 0.0 : std::strtod(text.substr(0, space).c_str(), nullptr);
        number = whole + std::strtod(text.substr(top, slash - top).c_str(), nullptr) /
                             std::strtod(text.substr(slash + 1).c_str(), nullptr);
    }
    return number * (unit == LengthUnit::in ? 25.4 : unit == LengthUnit::cm ? 10.0 : 1.0);
}

/// What a text says of a station, in its own unit.
double read_at(const std::string& station, const std::string& text, LengthUnit unit) {
    return is_angle(station) ? std::strtod(text.c_str(), nullptr) : read_text(text, unit);
}

/// What a tape, or a bevel, can say and differs from what was read.
bool is_another(const std::string& station, double value, double read) {
    return is_angle(station) ? value >= 0.5 && value <= most_deg && std::abs(value - read) >= 0.3
                             : value >= 1.0 && value <= most_mm && std::abs(value - read) >= 0.5;
}

/// Rewrites a reading; false where that changes nothing or leaves what a tape can say.
bool rewrite(Reading& reading, const std::string& text, LengthUnit unit, Planted& planted) {
    const double wrong = read_at(reading.station, text, unit);
    const double clean = value_of(reading);
    if (text.empty() || !is_another(reading.station, wrong, clean)) {
        return false;
    }
    planted.faults.push_back({reading.station, clean, wrong});
    reading.typed = text;
    set_value(reading, wrong);
    return true;
}

/// Half of the time the neighbouring digit (the next decimetre or centimetre on the tape), else any other: common
/// practice, no source.
char another_digit(char digit, Random& random) {
    const int now = digit - '0';
    if (random.chance(0.5)) {
        const int next = random.chance(0.5) ? now + 1 : now - 1;
        return static_cast<char>('0' + (next + 10) % 10);
    }
    return static_cast<char>('0' + (now + 1 + static_cast<int>(random.below(9))) % 10);
}

std::string slip_of_digits(Slip slip, const std::string& text, Random& random) {
    const auto places = digits_of(text);
    if (places.size() < 2) {
        return {};
    }
    std::string wrong = text;
    const std::size_t which = random.below(places.size());
    const std::size_t at = places[which];
    switch (slip) {
        case Slip::wrong_digit:
            wrong[at] = another_digit(text[at], random);
            return wrong.front() == '0' ? std::string() : wrong;
        case Slip::transposed_digits:
            if (which + 1 == places.size()) {
                return {};
            }
            std::swap(wrong[at], wrong[places[which + 1]]);
            return wrong.front() == '0' ? std::string() : wrong;
        case Slip::missing_digit:
            wrong.erase(at, 1);
            if (wrong.front() == '0' || wrong.front() == '.' || wrong.front() == ' ') {
                return {};
            }
            return wrong.back() == '.' ? wrong.substr(0, wrong.size() - 1) : wrong;
        default:
            wrong.insert(at, 1, text[at]);
            return wrong;
    }
}

std::string slip_of_unit(const Reading& reading, LengthUnit unit, Random& random) {
    const double mm = reading.value->mm();
    if (unit == LengthUnit::in) {
        return fmt::format("{:.1f}", mm / 10.0);  // cm read, typed as inches
    }
    if (unit == LengthUnit::cm) {
        return random.chance(0.5) ? fmt::format("{:.1f}", mm / 25.4) : fmt::format("{:.0f}", mm);
    }
    return fmt::format("{:.1f}", mm / 10.0);  // cm read, typed as mm
}

std::string slip_of_fraction(const Reading& reading, Random& random) {
    const long long eighths = std::llround(reading.value->mm() / eighth);
    const auto other = static_cast<long long>(1 + random.below(7));
    if (eighths % 8 == 0 || eighths % 8 == other) {
        return {};
    }
    return write_down(static_cast<double>(eighths - eighths % 8 + other) * eighth, LengthUnit::in).text;
}

/// What a person may take with the case against one face: the sides of the opening, its diagonals with them, the floor
/// to the ceiling and the wall from stop to stop with them. Who does what: common practice, no source.
bool is_inside(const std::string& station, std::size_t habit) {
    return station.starts_with("opening.width") || station.starts_with("opening.height") ||
           (habit >= 1 && station.starts_with("opening.diagonal")) ||
           (habit >= 2 && (station.starts_with("ceiling.") || station == "wall.total"));
}

bool add_case(Reading& reading, double by, const Visit& visit, Planted& planted) {
    return rewrite(reading, write_down(reading.value->mm() + by, visit.unit()).text, visit.unit(), planted);
}

/// Stations that differ in the last word, or in their number, are mistaken for each other more often.
std::string family(const std::string& station) {
    const auto dot = station.find('.');
    const bool numbered = dot != std::string::npos && dot + 1 < station.size() && is_digit(station[dot + 1]);
    return numbered ? station.substr(0, dot) + station.substr(station.rfind('.'))
                    : station.substr(0, station.rfind('.'));
}

/// Another reading to be mistaken for this one; seven times in ten of its family.
Reading* other_reading(const Reading& reading, Window& window, Random& random) {
    std::vector<Reading*> others;
    std::vector<Reading*> relatives;
    for (Reading& other : window.readings) {
        if (&other != &reading && is_angle(other.station) == is_angle(reading.station)) {
            others.push_back(&other);
            if (family(other.station) == family(reading.station)) {
                relatives.push_back(&other);
            }
        }
    }
    if (others.empty()) {
        return nullptr;
    }
    return !relatives.empty() && random.chance(0.7) ? random.pick(relatives) : random.pick(others);
}

bool plant_pair(Slip slip, const Visit& visit, Reading& reading, Window& window, Random& random, Planted& planted) {
    Reading* other = other_reading(reading, window, random);
    if (other == nullptr) {
        return false;
    }
    const std::string text = reading.typed;
    if (!rewrite(reading, other->typed, visit.unit(), planted)) {
        return false;
    }
    return slip == Slip::copied || rewrite(*other, text, visit.unit(), planted);
}

bool plant_case(Slip slip, const Visit& visit, Reading& reading, Window& window, Random& random, Planted& planted) {
    if (is_angle(reading.station)) {
        return false;
    }
    const double by = random.chance(0.7) ? -visit.case_mm() : visit.case_mm();
    if (slip == Slip::tape_case) {
        return add_case(reading, by, visit, planted);
    }
    if (window.shape.is(Shape::frame)) {
        return false;  // a frame is taken over its face
    }
    const std::size_t habit = random.below(3);
    for (Reading& each : window.readings) {
        if (is_inside(each.station, habit) && !add_case(each, by, visit, planted)) {
            return false;
        }
    }
    return !planted.faults.empty();
}

/// Whether some reading of the visit may have this slip.
bool can_happen(Slip slip, const Visit& visit, const Window& window) {
    const auto any = [&](const auto& belongs) {
        return std::ranges::any_of(window.readings, belongs, &Reading::station);
    };
    switch (slip) {
        case Slip::wrong_fraction:
            return visit.unit() == LengthUnit::in;
        case Slip::case_for_all:
            return !window.shape.is(Shape::frame) &&
                   any([](const std::string& station) { return is_inside(station, 0); });
        case Slip::supplement:
        case Slip::outside_angle:
        case Slip::half_angle:
            return any([](const std::string& station) { return is_angle(station); });
        default:
            return true;
    }
}

/// As often in each doubling from the least to the most, to either side.
double free_error(double least, double most, Random& random) {
    return (random.chance(0.5) ? 1.0 : -1.0) * least * std::exp(random.uniform() * std::log(most / least));
}

/// What a bevel's user may do wrong: common practice, no source.
bool plant_angle(Slip slip, const Visit& visit, Reading& reading, Random& random, Planted& planted) {
    const double read = value_of(reading);
    std::string text;
    switch (slip) {
        case Slip::supplement:
            text = write_angle_down(180.0 - read, visit.bevel_step()).text;
            break;
        case Slip::outside_angle:
            text = write_angle_down(360.0 - read, visit.bevel_step()).text;
            break;
        case Slip::half_angle:
            // The mitre, or what the saw's scale shows for it.
            text = write_angle_down(random.chance(0.5) ? read / 2.0 : 90.0 - read / 2.0, visit.bevel_step()).text;
            break;
        case Slip::free:
            // From 2 to 30 degrees: common practice, no source.
            text = write_angle_down(std::max(0.0, read + free_error(2.0, 30.0, random)), visit.bevel_step()).text;
            break;
        case Slip::wrong_digit:
        case Slip::transposed_digits:
        case Slip::missing_digit:
        case Slip::doubled_digit:
            text = slip_of_digits(slip, reading.typed, random);
            break;
        default:
            break;
    }
    return rewrite(reading, text, visit.unit(), planted);
}

bool plant_text(Slip slip, const Visit& visit, Reading& reading, Random& random, Planted& planted) {
    if (is_angle(reading.station)) {
        return plant_angle(slip, visit, reading, random, planted);
    }
    const LengthUnit unit = visit.unit();
    std::string text;
    if (slip == Slip::supplement || slip == Slip::outside_angle || slip == Slip::half_angle) {
        return false;
    }
    if (slip == Slip::wrong_unit) {
        text = slip_of_unit(reading, unit, random);
    } else if (slip == Slip::wrong_fraction) {
        text = unit == LengthUnit::in ? slip_of_fraction(reading, random) : std::string();
    } else if (slip == Slip::free) {
        // From 8 to 500 mm: common practice, no source.
        const double wrong = value_of(reading) + free_error(8.0, 500.0, random);
        text = wrong < 1.0 ? std::string() : write_down(wrong, unit).text;
    } else {
        text = slip_of_digits(slip, reading.typed, random);
    }
    return !text.empty() && rewrite(reading, text, unit, planted);
}

/// What a slip of digits may have made this text out of.
std::vector<double> by_digits(const std::string& station, const std::string& text, LengthUnit unit) {
    std::vector<double> values;
    const auto add = [&](const std::string& meant) { values.push_back(read_at(station, meant, unit)); };
    const auto places = digits_of(text);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const std::size_t at = places[i];
        for (char digit = '0'; digit <= '9'; ++digit) {
            std::string meant = text;
            meant[at] = digit;
            add(meant);
            add(std::string(text).insert(at, 1, digit));
            add(std::string(text).insert(at + 1, 1, digit));
        }
        if (i + 1 < places.size()) {
            std::string meant = text;
            std::swap(meant[at], meant[places[i + 1]]);
            add(meant);
            if (text[at] == text[places[i + 1]]) {
                add(std::string(text).erase(at, 1));
            }
        }
    }
    return values;
}

}  // namespace

const Fault* Planted::at(std::string_view station) const {
    const auto found = std::ranges::find(faults, station, &Fault::station);
    return found == faults.end() ? nullptr : &*found;
}

std::optional<Planted> plant(Slip slip, const Visit& visit, Window& window, Random& random) {
    Planted planted{slip, {}};
    const Window before = window;
    Reading& reading = window.readings[random.below(window.readings.size())];
    bool done = false;
    if (slip == Slip::swapped || slip == Slip::copied) {
        done = plant_pair(slip, visit, reading, window, random, planted);
    } else if (slip == Slip::tape_case || slip == Slip::case_for_all) {
        done = plant_case(slip, visit, reading, window, random, planted);
    } else {
        done = plant_text(slip, visit, reading, random, planted);
    }
    if (!done) {
        window = before;
        return std::nullopt;
    }
    return planted;
}

Planted plant_any(const Visit& visit, Window& window, Random& random) {
    std::vector<double> shares;
    for (const SlipKind& kind : slip_kinds) {
        shares.push_back(can_happen(kind.slip, visit, window) ? kind.share : 0.0);
    }
    const Slip slip = slip_kinds[random.by_share(shares)].slip;
    for (int attempt = 0; attempt < 1000; ++attempt) {
        if (auto planted = plant(slip, visit, window, random)) {
            return *planted;
        }
    }
    return plant_any(visit, window, random);
}

std::vector<double> could_have_been(const Reading& reading, const Visit& visit) {
    const double read = value_of(reading);
    std::vector<double> values = by_digits(reading.station, reading.typed, visit.unit());
    if (is_angle(reading.station)) {
        values.insert(values.end(), {180.0 - read, 360.0 - read, 2.0 * read, 180.0 - 2.0 * read});
    } else {
        if (visit.unit() == LengthUnit::in) {
            const double whole = std::floor(read / 25.4 + 1e-9) * 25.4;
            for (int n = 1; n < 8; ++n) {
                values.push_back(whole + n * eighth);
            }
        }
        for (const double factor : {10.0, 0.1, 2.54, 1.0 / 2.54}) {
            values.push_back(read * factor);
        }
        values.push_back(read + visit.case_mm());
        values.push_back(read - visit.case_mm());
    }
    std::erase_if(values, [&](double value) { return !is_another(reading.station, value, read); });
    std::ranges::sort(values);
    const double alike = is_angle(reading.station) ? 0.05 : 0.5;
    values.erase(std::unique(values.begin(), values.end(), [&](double a, double b) { return b - a < alike; }),
                 values.end());
    return values;
}

}  // namespace truehang::trial
