// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/keeping/kept_at.h"

#include <CLI/CLI.hpp>

#include <string>

namespace truehang::workroom {

struct PersonOptions {
    KeptAt kept;
    std::string action;         ///< list, add, role, password, out
    std::string name;           ///< whose
    std::string role;           ///< of add and role
    std::string password_file;  ///< its first line; empty: typed at the terminal
};

/// Adds the command `person`: who may sign in to the pages. Whoever may read and write the records may use it.
void add_person(CLI::App& app, PersonOptions& options, int& result);

}  // namespace truehang::workroom
