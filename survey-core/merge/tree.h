// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/json_reader.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

// Values of the tree, made and read.

namespace truehang::merging {

[[nodiscard]] JsonValue object_of(std::vector<std::pair<std::string, JsonValue>> members);
[[nodiscard]] JsonValue list_of(std::vector<JsonValue> items);
[[nodiscard]] JsonValue text_of(std::string text);

/// The value of a member that is a text; empty where it is none.
[[nodiscard]] std::string text_at(const JsonValue& object, std::string_view name);

}  // namespace truehang::merging
