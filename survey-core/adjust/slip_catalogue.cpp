// SPDX-License-Identifier: Apache-2.0
#include "adjust/slip_catalogue.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace truehang {

namespace {

/// Two readings of one value: nothing was changed.
constexpr double same_mm = 0.05;
constexpr double least_mm = 1.0;
constexpr double most_mm = 100'000.0;

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

/// Gathers values under the slips that lead to them.
class Gathering {
public:
    explicit Gathering(const Written& written) : written_(written) {}

    void text(std::string_view slip, const std::string& text, double chance) {
        if (const auto read = read_length(text, written_.unit)) {
            value(slip, read->length, chance);
        }
    }

    void value(std::string_view slip, Length length, double chance) {
        if (length.mm() < least_mm || length.mm() > most_mm || std::abs((length - written_.value).mm()) < same_mm) {
            return;
        }
        // A tenth of a millimetre tells two values apart: no unit is written finer.
        auto& entry = by_value_[std::llround(length.mm() * 10.0)];
        if (entry.chance == 0.0) {
            entry.value = length;
        }
        if (chance > entry.largest) {
            entry.largest = chance;
            entry.slip = slip;
        }
        entry.chance += chance;
    }

    [[nodiscard]] std::vector<Meant> result() const {
        std::vector<Meant> list;
        for (const auto& [tenths, entry] : by_value_) {
            list.push_back({entry.slip, entry.value, entry.chance});
        }
        return list;
    }

private:
    struct Entry {
        Length value;
        double chance = 0.0, largest = 0.0;
        std::string_view slip;
    };
    const Written& written_;
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
            gathering.value("wrong-unit", mm_of(meant) / mm_of(taken_for) * written.value,
                            slip_share::wrong_unit * share);
        }
    }
    // Where the unit was exchanged before it was written down in another.
    constexpr double inch_for_cm = Length::mm_per_inch / 10.0;
    for (const double factor : {10.0, 0.1, inch_for_cm, 1.0 / inch_for_cm}) {
        gathering.value("wrong-unit", factor * written.value, slip_share::wrong_unit * 0.05);
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
        gathering.value("wrong-fraction", Length::inches(whole + static_cast<double>(numerator) / parts), share);
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
    Gathering gathering(written);
    const Digits digits = digits_of(written.text);
    if (!digits.at.empty()) {
        add_wrong_digits(written.text, digits, gathering);
        add_carries(written.text, digits, gathering);
        add_exchanged_digits(written.text, digits, gathering);
        add_missing_digits(written.text, digits, gathering);
        add_doubled_digits(written.text, digits, gathering);
    }
    add_units(written, gathering);
    add_fractions(written, digits, gathering);
    if (case_length && case_length->mm() >= least_mm) {
        gathering.value("tape-case", written.value + *case_length, slip_share::tape_case / 2.0);
        gathering.value("tape-case", written.value - *case_length, slip_share::tape_case / 2.0);
    }
    return gathering.result();
}

}  // namespace truehang
