// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <filesystem>

namespace truehang::workroom {

/// What the last call to the system that failed (errno) says of a file: `full` or `io`.
[[nodiscard]] Error system_error(const std::filesystem::path& where);

/// The names in a folder on the disk, so that a file that was moved there is found after a loss of power.
[[nodiscard]] bool sync_folder(const std::filesystem::path& folder);

}  // namespace truehang::workroom
