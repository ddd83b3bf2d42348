// SPDX-License-Identifier: Apache-2.0
#include "protocol/time_text.h"

#include <date/date.h>

#include <cctype>
#include <locale>
#include <sstream>

namespace truehang::sync {

std::string write_time(Time time) { return date::format("%FT%TZ", time); }

std::optional<Time> read_time(std::string_view text) {
    std::string upper(text);
    for (char& c : upper) {
        c = c == 't' ? 'T' : c == 'z' ? 'Z' : c;
    }
    std::istringstream in(upper);
    in.imbue(std::locale::classic());
    Time time;
    if (!upper.empty() && upper.back() == 'Z') {
        in >> date::parse("%FT%TZ", time);
    } else {
        in >> date::parse("%FT%T%Ez", time);
    }
    return in.fail() || in.peek() != std::istringstream::traits_type::eof() ? std::nullopt : std::optional(time);
}

std::optional<Time> read_http_date(std::string_view text) {
    std::istringstream in{std::string(text)};
    in.imbue(std::locale::classic());
    date::sys_seconds time;
    in >> date::parse("%a, %d %b %Y %H:%M:%S GMT", time);
    return in.fail() ? std::nullopt : std::optional(Time(time));
}

}  // namespace truehang::sync
