// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

// Times as they travel.

namespace truehang::sync {

/// Wall-clock time in UTC, to the millisecond.
using Time = std::chrono::sys_time<std::chrono::milliseconds>;

/// "2026-03-14T10:20:00.125Z" (RFC 3339).
[[nodiscard]] std::string write_time(Time time);

/// Reads an RFC 3339 time with an offset, cut to the millisecond; nothing for any other text.
[[nodiscard]] std::optional<Time> read_time(std::string_view text);

/// Reads "Sun, 06 Nov 1994 08:49:37 GMT" (RFC 9110, 5.6.7, the form that is sent today); nothing for any other text.
[[nodiscard]] std::optional<Time> read_http_date(std::string_view text);

}  // namespace truehang::sync
