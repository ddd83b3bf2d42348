// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/archive/archive.h"
#include "workroom/http/http_server.h"

#include <string_view>

namespace truehang::workroom {

/// The page of the house rules, and where its form goes.
inline constexpr std::string_view house_rules_path = "/house-rules";

/// Keeps what the house rules' form holds as a new version, or shows the page again with what is wrong: nothing is
/// saved then. Who sent it was looked at before.
[[nodiscard]] http::Response take_house_rules(Archive& archive, std::string_view form);

}  // namespace truehang::workroom
