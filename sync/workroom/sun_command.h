// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <CLI/CLI.hpp>

namespace truehang::workroom {

/// `sun LAT LON TIME`: prints where the sun stands. 2 and a line on standard error for anything else than two numbers
/// and an RFC 3339 time of the years 2000 to 2060.
void add_sun(CLI::App& app, int& result);

}  // namespace truehang::workroom
