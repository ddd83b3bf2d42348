// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <CLI/CLI.hpp>

#include <string>
#include <vector>

namespace truehang::workroom {

/// What a window is compared for; every combination of the values is one choice.
struct ChoicesOptions {
    std::string survey, window, layer;
    std::vector<std::string> headings, lengths, fabrics, linings;
    std::vector<double> fullness, hardware_mm;
};

/// `choices SURVEY --window ID …`: prints the choices document. 2 and a line on standard error where it can't.
void add_choices(CLI::App& app, ChoicesOptions& options, int& result);

}  // namespace truehang::workroom
