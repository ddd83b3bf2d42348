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

}  // namespace truehang::sync
