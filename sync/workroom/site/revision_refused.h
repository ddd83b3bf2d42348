// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"
#include "workroom/archive/archive.h"
#include "workroom/http/http_server.h"

#include <optional>
#include <string>
#include <vector>

namespace truehang::workroom {

/// The answer to a revision that wasn’t kept. A conflict says what is there, and which of the sender’s parents both
/// were made from.
[[nodiscard]] http::Response revision_refused(Archive& archive, const std::string& survey,
                                              const std::optional<std::vector<std::string>>& parents, const Error& why);

}  // namespace truehang::workroom
