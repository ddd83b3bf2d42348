// SPDX-License-Identifier: Apache-2.0
#include <date/date.h>

#include "document/document.h"

#include <optional>

namespace truehang {
namespace {

/// Takes exactly `count` digits off the front of `text`.
std::optional<int> take_digits(std::string_view& text, std::size_t count) {
    if (text.size() < count) {
        return std::nullopt;
    }
    int value = 0;
    for (const char c : text.substr(0, count)) {
        if (c < '0' || c > '9') {
            return std::nullopt;
        }
        value = value * 10 + (c - '0');
    }
    text.remove_prefix(count);
    return value;
}

bool take_one_of(std::string_view& text, std::string_view characters) {
    if (text.empty() || characters.find(text.front()) == std::string_view::npos) {
        return false;
    }
    text.remove_prefix(1);
    return true;
}

/// A full-date of RFC 3339 that stands in the calendar.
std::optional<date::sys_days> take_date(std::string_view& text) {
    const auto year = take_digits(text, 4);
    if (!year || !take_one_of(text, "-")) {
        return std::nullopt;
    }
    const auto month = take_digits(text, 2);
    if (!month || !take_one_of(text, "-")) {
        return std::nullopt;
    }
    const auto day = take_digits(text, 2);
    if (!day) {
        return std::nullopt;
    }
    const date::year_month_day ymd{date::year{*year}, date::month{static_cast<unsigned>(*month)},
                                   date::day{static_cast<unsigned>(*day)}};
    return ymd.ok() ? std::optional(date::sys_days{ymd}) : std::nullopt;
}

struct ClockTime {
    std::chrono::minutes minutes{};
    int seconds = 0;
    std::chrono::milliseconds fraction{};
};

/// The digits of a fraction of a second; what is finer than a millisecond is cut off. None where there is no digit.
std::optional<std::chrono::milliseconds> take_fraction(std::string_view& text) {
    auto digit = take_digits(text, 1);
    if (!digit) {
        return std::nullopt;
    }
    std::chrono::milliseconds fraction{};
    for (int worth = 100; digit; worth /= 10, digit = take_digits(text, 1)) {
        fraction += std::chrono::milliseconds(*digit * worth);
    }
    return fraction;
}

/// A partial-time of RFC 3339, with its fraction; seconds up to 60.
std::optional<ClockTime> take_clock(std::string_view& text) {
    const auto hours = take_digits(text, 2);
    if (!hours || *hours > 23 || !take_one_of(text, ":")) {
        return std::nullopt;
    }
    const auto minutes = take_digits(text, 2);
    if (!minutes || *minutes > 59 || !take_one_of(text, ":")) {
        return std::nullopt;
    }
    const auto seconds = take_digits(text, 2);
    if (!seconds || *seconds > 60) {
        return std::nullopt;
    }
    std::optional<std::chrono::milliseconds> fraction(0);
    if (take_one_of(text, ".")) {
        fraction = take_fraction(text);
    }
    if (!fraction) {
        return std::nullopt;
    }
    return ClockTime{std::chrono::hours(*hours) + std::chrono::minutes(*minutes), *seconds, *fraction};
}

/// A time-offset of RFC 3339: Z, or hours and minutes with their sign.
std::optional<std::chrono::minutes> take_offset(std::string_view& text) {
    if (take_one_of(text, "Zz")) {
        return std::chrono::minutes(0);
    }
    const bool west = !text.empty() && text.front() == '-';
    if (!take_one_of(text, "+-")) {
        return std::nullopt;
    }
    const auto hours = take_digits(text, 2);
    if (!hours || *hours > 23 || !take_one_of(text, ":")) {
        return std::nullopt;
    }
    const auto minutes = take_digits(text, 2);
    if (!minutes || *minutes > 59) {
        return std::nullopt;
    }
    const std::chrono::minutes offset = std::chrono::hours(*hours) + std::chrono::minutes(*minutes);
    return west ? -offset : offset;
}

/// RFC 3339, 5.7: a second 60 stands only at the end of a month, 23:59 UTC.
bool may_be_leap_second(date::sys_days day, std::chrono::minutes clock, std::chrono::minutes offset) {
    const auto utc = day + clock - offset;
    const auto utc_day = date::floor<date::days>(utc);
    const date::year_month_day next_day{utc_day + date::days(1)};
    return utc - utc_day == std::chrono::hours(23) + std::chrono::minutes(59) && next_day.day() == date::day{1};
}

}  // namespace

std::optional<Moment> read_rfc3339(std::string_view text) {
    const auto day = take_date(text);
    if (!day || !take_one_of(text, "Tt")) {
        return std::nullopt;
    }
    const auto clock = take_clock(text);
    if (!clock) {
        return std::nullopt;
    }
    const auto offset = take_offset(text);
    if (!offset || !text.empty() || (clock->seconds == 60 && !may_be_leap_second(*day, clock->minutes, *offset))) {
        return std::nullopt;
    }
    return Moment(*day + clock->minutes - *offset + std::chrono::seconds(clock->seconds) + clock->fraction);
}

bool is_rfc3339(std::string_view text) { return read_rfc3339(text).has_value(); }

}  // namespace truehang
