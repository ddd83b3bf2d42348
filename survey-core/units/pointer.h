// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace truehang {

/// The steps of a JSON pointer (RFC 6901), `~1` and `~0` read as `/` and `~`; none of the empty one. What stands before
/// the first slash is passed over.
[[nodiscard]] std::vector<std::string> pointer_steps(std::string_view pointer);

}  // namespace truehang
