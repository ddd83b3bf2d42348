// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/keeping/kept_at.h"

#include <CLI/CLI.hpp>

#include <string>

namespace truehang::workroom {

struct KeepingOptions {
    KeptAt kept;
    std::string other;   ///< the backup or file that is written or read
    std::string survey;  ///< its id
    std::string by;      ///< who erases; empty: whoever runs the program
    bool what_is_whole = false;
    bool visit = false;  ///< export the newest revision as the app takes it in
};

/// `verify`, `backup`, `restore`, `export`, `import`, `erase`: exit codes 0 done, 1 done with faults found, 2 refused.
void add_keeping(CLI::App& app, KeepingOptions& options, int& result);

}  // namespace truehang::workroom
