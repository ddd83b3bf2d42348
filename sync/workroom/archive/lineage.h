// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/records.h"
#include "units/result.h"
#include "workroom/records/records.h"

#include <optional>
#include <string>
#include <vector>

// From what revisions were made: each document’s `parents`, as they stand in the bytes that came.

namespace truehang::workroom {

class Database;

/// Whether a revision made from these parents comes too late: something is there, and its newest revision isn’t one of
/// them or isn’t lower.
[[nodiscard]] bool is_stale(Records& records, const std::string& survey, long long revision,
                            const std::vector<std::string>& parents);

/// The newest revision of a survey, who sent it, and the first of `parents` that it is or that it was made from,
/// nearest or further back; nothing where nothing is there. A revision that doesn’t tell its parents ends the search
/// behind it.
[[nodiscard]] Result<std::optional<sync::WhatIsThere>> what_is_there(Database& database, const std::string& survey,
                                                                     const std::vector<std::string>& parents);

}  // namespace truehang::workroom
