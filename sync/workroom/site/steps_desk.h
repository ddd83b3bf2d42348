// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/archive/archive.h"
#include "workroom/http/http_server.h"
#include "workroom/people/door.h"

#include <optional>
#include <string>
#include <string_view>

namespace truehang::workroom {

/// The survey of `/surveys/ID/steps`; nothing for any other path.
[[nodiscard]] std::optional<std::string> read_steps_path(std::string_view path);

/// The page for one that may look; nothing where the survey isn't here. `query`: the name that was typed before, `by`.
[[nodiscard]] std::optional<http::Response> look_at_steps(Archive& archive, const std::string& survey,
                                                          std::string_view query, const Caller& caller);

/// Takes a form that a person sent from this site: `revision`, `mark`, and `by` where nobody is signed in by name.
/// Nothing where the survey isn't here.
[[nodiscard]] std::optional<http::Response> take_steps(Archive& archive, const std::string& survey,
                                                       std::string_view body, const Caller& caller);

}  // namespace truehang::workroom
