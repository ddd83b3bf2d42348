// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <chrono>

namespace truehang {

/// UTC, as POSIX counts it: a leap second isn’t one of its own.
using Moment = std::chrono::sys_time<std::chrono::milliseconds>;

}  // namespace truehang
