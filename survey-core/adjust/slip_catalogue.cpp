// SPDX-License-Identifier: Apache-2.0
#include "adjust/slip_catalogue.h"

#include "units/angle_text.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>

namespace truehang {

namespace {

/// Two readings of one value: nothing was changed.
constexpr double same_mm = 0.05;
constexpr double least_mm = 1.0;
constexpr double most_mm = 100'000.0;
constexpr double same_deg = 0.05;
constexpr double least_deg = 0.1;
constexpr double most_deg = 359.9;

bool is_digit(char letter) { return letter >= '0' && letter <= '9'; }

/// A number's text: where its digits stand, fractions apart.
struct Digits {
    std::vector<std::size_t> at;  ///< positions of digits that belong to no fraction
    std::size_t fraction_from = std::string::npos;
    std::size_t fraction_to = std::string::npos;
};

Digits digits_of(const std::string& text) {
    Digits digits;
    if (const auto slash = text.find('/'); slash != std::string::npos) {
        digits.fraction_from = slash;
        while (digits.fraction_from > 0 && is_digit(text[digits.fraction_from - 1])) {
            --digits.fraction_from;
        }
        digits.fraction_to = slash + 1;
        while (digits.fraction_to < text.size() && is_digit(text[digits.fraction_to])) {
            ++digits.fraction_to;
        }
    }
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool in_fraction = i >= digits.fraction_from && i < digits.fraction_to;
        if (is_digit(text[i]) && !in_fraction) {
            digits.at.push_back(i);
        }
    }
    return digits;
}

/// How texts of one quantity are read, and which values can have been meant.
struct Reads {
    std::function<std::optional<double>(const std::string&)> read;
    double value = 0.0;  ///< as it was put down
    double least = 0.0, most = 0.0;
    double same = 0.0;    ///< nearer than this nothing was changed
    double finest = 0.0;  ///< tells two values apart: nothing is written finer
};

/// Gathers values under the slips that lead to them.
class Gathering {
public:
    explicit Gathering(Reads reads) : reads_(std::move(reads)) {}

    void text(std::string_view slip, const std::string& text, double chance) {
        if (const auto read = reads_.read(text)) {
            value(slip, *read, chance);
        }
    }

    void value(std::string_view slip, double meant, double chance) {
        if (meant < reads_.least || meant > reads_.most || std::abs(meant - reads_.value) < reads_.same) {
            return;
        }
        auto& entry = by_value_[std::llround(meant / reads_.finest)];
        if (entry.chance == 0.0) {
            entry.value = meant;
        }
        if (chance > entry.largest) {
            entry.largest = chance;
            entry.slip = slip;
        }
        entry.chance += chance;
    }

    /// Calls `take` with slip, value and chance of each.
    template <class Take>
    void each(const Take& take) const {
        for (const auto& [place, entry] : by_value_) {
            take(entry.slip, entry.value, entry.chance);
        }
    }

private:
    struct Entry {
        double value = 0.0;
        double chance = 0.0, largest = 0.0;
        std::string_view slip;
    };
    Reads reads_;
    std::map<long long, Entry> by_value_;
};

void add_wrong_digits(const std::string& text, const Digits& digits, Gathering& gathering) {
    const double each = slip_share::wrong_digit / (9.0 * static_cast<double>(digits.at.size()));
    for (const std::size_t at : digits.at) {
        for (char digit = '0'; digit <= '9'; ++digit) {
            std::string other = text;
            other[at] = digit;
            if (!(at == digits.at.front() && digit == '0' && digits.at.size() > 1)) {
                gathering.text("wrong-digit", other, each);
            }
        }
    }
}

/// Ten, a hundred or a thousand out, where that carries into the next digit.
void add_carries(const std::string& text, const Digits& digits, Gathering& gathering) {
    const double each = slip_share::wrong_digit / (9.0 * static_cast<double>(digits.at.size()));
    for (std::size_t place = 0; place + 1 < digits.at.size(); ++place) {
        for (const int step : {1, -1}) {
            std::string other = text;
            std::size_t at = place;
            const char limit = step > 0 ? '9' : '0';
            if (other[digits.at[at]] != limit) {
                continue;
            }
            while (at > 0 && other[digits.at[at]] == limit) {
                other[digits.at[at]] = step > 0 ? '0' : '9';
                --at;
            }
            if (other[digits.at[at]] != limit) {
                other[digits.at[at]] = static_cast<char>(other[digits.at[at]] + step);
                gathering.text("wrong-digit", other, each);
            }
        }
    }
}

void add_exchanged_digits(const std::string& text, const Digits& digits, Gathering& gathering) {
    if (digits.at.size() < 2) {
        return;
    }
    const double each = slip_share::transposed / static_cast<double>(digits.at.size() - 1);
    for (std::size_t i = 0; i + 1 < digits.at.size(); ++i) {
        std::string other = text;
        std::swap(other[digits.at[i]], other[digits.at[i + 1]]);
        gathering.text("transposed-digits", other, each);
    }
}

/// One digit more was meant: of a text with n digits, each is left out with the chance 1 / n.
void add_missing_digits(const std::string& text, const Digits& digits, Gathering& gathering) {
    const double each = slip_share::missing_digit / static_cast<double>(digits.at.size() + 1);
    // Before the first digit and after each: a point may follow.
    for (std::size_t i = 0; i <= digits.at.size(); ++i) {
        const std::size_t at = i == 0 ? digits.at.front() : digits.at[i - 1] + 1;
        for (char digit = i == 0 ? '1' : '0'; digit <= '9'; ++digit) {
            gathering.text("missing-digit", text.substr(0, at) + digit + text.substr(at), each);
        }
    }
    // Or right after a point.
    if (const auto point = text.find_first_of(".,"); point != std::string::npos) {
        for (char digit = '0'; digit <= '9'; ++digit) {
            gathering.text("missing-digit", text.substr(0, point + 1) + digit + text.substr(point + 1), each);
        }
    }
}

void add_doubled_digits(const std::string& text, const Digits& digits, Gathering& gathering) {
    if (digits.at.size() < 2) {
        return;
    }
    const double each = slip_share::doubled_digit / static_cast<double>(digits.at.size() - 1);
    for (std::size_t i = 0; i + 1 < digits.at.size(); ++i) {
        if (digits.at[i] + 1 == digits.at[i + 1] && text[digits.at[i]] == text[digits.at[i + 1]] &&
            (i == 0 || text[digits.at[i - 1]] != text[digits.at[i]])) {
            gathering.text("doubled-digit", text.substr(0, digits.at[i]) + text.substr(digits.at[i + 1]), each);
        }
    }
}

void add_digits(const std::string& text, const Digits& digits, Gathering& gathering) {
    if (!digits.at.empty()) {
        add_wrong_digits(text, digits, gathering);
        add_carries(text, digits, gathering);
        add_exchanged_digits(text, digits, gathering);
        add_missing_digits(text, digits, gathering);
        add_doubled_digits(text, digits, gathering);
    }
}

double mm_of(LengthUnit unit) {
    switch (unit) {
        case LengthUnit::mm:
            return 1.0;
        case LengthUnit::cm:
            return 10.0;
        case LengthUnit::m:
            return 1000.0;
        case LengthUnit::in:
            break;
    }
    return Length::mm_per_inch;
}

/// The figure of one unit under the name of another: read off the tape in one, taken for the other.
void add_units(const Written& written, Gathering& gathering) {
    const auto read = read_length(written.text, written.unit);
    const LengthUnit taken_for = read ? read->unit : LengthUnit::mm;
    for (const LengthUnit meant : {LengthUnit::mm, LengthUnit::cm, LengthUnit::m, LengthUnit::in}) {
        if (meant != taken_for) {
            const double share = meant == LengthUnit::m ? 0.1 : 0.4;
            gathering.value("wrong-unit", mm_of(meant) / mm_of(taken_for) * written.value.mm(),
                            slip_share::wrong_unit * share);
        }
    }
    // Where the unit was exchanged before it was written down in another.
    constexpr double inch_for_cm = Length::mm_per_inch / 10.0;
    for (const double factor : {10.0, 0.1, inch_for_cm, 1.0 / inch_for_cm}) {
        gathering.value("wrong-unit", factor * written.value.mm(), slip_share::wrong_unit * 0.05);
    }
}

/// Another fraction on the same whole inch: eighths, or the sixteenths that were read.
void add_fractions(const Written& written, const Digits& digits, Gathering& gathering) {
    const auto read = read_length(written.text, written.unit);
    if (!read || read->unit != LengthUnit::in || written.text.find_first_of(".,") != std::string::npos) {
        return;
    }
    const bool has_fraction = digits.fraction_from != std::string::npos;
    const bool sixteenths = has_fraction && written.text.substr(digits.fraction_from).find("/16") != std::string::npos;
    const int parts = sixteenths ? 16 : 8;
    const double whole = std::floor(read->length.mm() / Length::mm_per_inch + 1e-6);
    // A fraction left out altogether is rarer than one misread.
    const double share = slip_share::wrong_fraction * (has_fraction ? 1.0 : 0.3) / (parts - 1.0);
    for (int numerator = 0; numerator < parts; ++numerator) {
        gathering.value("wrong-fraction", Length::inches(whole + static_cast<double>(numerator) / parts).mm(), share);
    }
}

}  // namespace

Written written(const CountedReading& reading, LengthUnit entry_unit) {
    const std::string& typed = reading.reading->typed;
    if (!typed.empty()) {
        const auto read = read_length(typed, entry_unit);
        if (read && std::abs((read->length - reading.value).mm()) < same_mm) {
            return {typed, entry_unit, reading.value};
        }
    }
    return {write_length(reading.value, LengthStyle{}), LengthUnit::mm, reading.value};
}

std::vector<Meant> meant_by(const Written& written, std::optional<Length> case_length) {
    const auto read = [&](const std::string& text) {
        const auto length = read_length(text, written.unit);
        return length ? std::optional(length->length.mm()) : std::nullopt;
    };
    Gathering gathering({read, written.value.mm(), least_mm, most_mm, same_mm, 0.1});
    const Digits digits = digits_of(written.text);
    add_digits(written.text, digits, gathering);
    add_units(written, gathering);
    add_fractions(written, digits, gathering);
    if (case_length && case_length->mm() >= least_mm) {
        for (const double sign : {1.0, -1.0}) {
            gathering.value("tape-case", written.value.mm() + sign * case_length->mm(), slip_share::tape_case / 2.0);
        }
    }
    std::vector<Meant> list;
    gathering.each([&](std::string_view slip, double mm, double chance) {
        list.push_back({slip, Length::mm(mm), chance});
    });
    return list;
}

WrittenAngle written_angle(const CountedReading& reading) {
    const Angle value = reading.angle.value_or(Angle());
    const auto read = read_angle(reading.reading->typed);
    const bool reads_so = read && std::abs(read->degrees() - value.degrees()) < same_deg;
    return {reads_so ? reading.reading->typed : write_angle(value), value};
}

std::vector<MeantAngle> meant_by(const WrittenAngle& written) {
    const auto read = [](const std::string& text) {
        const auto angle = read_angle(text);
        return angle ? std::optional(angle->degrees()) : std::nullopt;
    };
    const double value = written.value.degrees();
    Gathering gathering({read, value, least_deg, most_deg, same_deg, 0.01});
    add_digits(written.text, digits_of(written.text), gathering);
    gathering.value("supplement", 180.0 - value, slip_share::supplement);
    gathering.value("outside-angle", 360.0 - value, slip_share::outside_angle);
    // The saw is set to half the angle, or by its scale to what is left of a right angle.
    gathering.value("half-angle", 2.0 * value, slip_share::half_angle / 2.0);
    gathering.value("half-angle", 180.0 - 2.0 * value, slip_share::half_angle / 2.0);
    std::vector<MeantAngle> list;
    gathering.each([&](std::string_view slip, double degrees, double chance) {
        list.push_back({slip, Angle::degrees(degrees), chance});
    });
    return list;
}

}  // namespace truehang
