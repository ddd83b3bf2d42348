// SPDX-License-Identifier: Apache-2.0
#include "units/angle_text.h"

#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace truehang {

namespace {

std::string angles_understood() { return say("An angle is read in degrees: 135, 134.5 or 134,5°."); }

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && text.front() == ' ') {
        text.remove_prefix(1);
    }
    while (!text.empty() && text.back() == ' ') {
        text.remove_suffix(1);
    }
    return text;
}

std::string_view without_unit(std::string_view text) {
    for (const std::string_view unit : {"°", "degrees", "deg"}) {
        if (text.ends_with(unit)) {
            return trimmed(text.substr(0, text.size() - unit.size()));
        }
    }
    return text;
}

/// Digits with at most one decimal mark among them, and no more than 9.
bool is_number(std::string_view text) {
    constexpr std::size_t longest = 10;
    const auto is_digit = [](char c) { return c >= '0' && c <= '9'; };
    const auto is_mark = [](char c) { return c == '.' || c == ','; };
    return !text.empty() && text.size() <= longest && is_digit(text.front()) && is_digit(text.back()) &&
           std::ranges::all_of(text, [&](char c) { return is_digit(c) || is_mark(c); }) &&
           std::ranges::count_if(text, is_mark) <= 1;
}

}  // namespace

Result<Angle> read_angle(std::string_view typed) {
    std::string number(without_unit(trimmed(typed)));
    if (!is_number(number)) {
        return Error{ErrorCode::unreadable, "", angles_understood()};
    }
    std::ranges::replace(number, ',', '.');
    double degrees = 0.0;
    std::from_chars(number.data(), number.data() + number.size(), degrees);
    if (degrees > 360.0) {
        return Error{ErrorCode::out_of_range, "", say("That is more than a full turn: an angle is 0 to 360 degrees.")};
    }
    return Angle::degrees(degrees);
}

std::string write_angle(Angle angle, char decimal, bool with_unit) {
    const double tenths = std::round(angle.degrees() * 10.0);
    std::string text =
        std::fmod(tenths, 10.0) == 0.0 ? fmt::format("{:.0f}", tenths / 10.0) : fmt::format("{:.1f}", tenths / 10.0);
    std::ranges::replace(text, '.', decimal);
    return with_unit ? text + "°" : text;
}

}  // namespace truehang
