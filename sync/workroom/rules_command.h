// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <CLI/CLI.hpp>

#include <string>

namespace truehang::workroom {

/// `rules [FILE]`: without a file the defaults as a rules document, with one what it sets, or its faults and 2.
void add_rules(CLI::App& app, std::string& path, int& result);

}  // namespace truehang::workroom
