// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/keeping/kept_at.h"

#include <CLI/CLI.hpp>

#include <string>

namespace truehang::workroom {

/// What is asked of `revoke`.
struct RevokeOptions {
    KeptAt kept;
    std::string device;  ///< id, or a name that only one has; empty: list them
};

/// Adds the command that revokes a device, or lists the devices where none is named.
void add_revoke(CLI::App& app, RevokeOptions& options, int& result);

}  // namespace truehang::workroom
