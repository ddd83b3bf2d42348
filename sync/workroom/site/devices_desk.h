// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/archive/access.h"
#include "workroom/archive/archive.h"
#include "workroom/http/http_server.h"

#include <optional>
#include <string>
#include <string_view>

// The devices: who may send, and the page on which a person sees and revokes them.

namespace truehang::workroom {

/// What a device is told whose token isn't known.
inline constexpr const char* unknown_device = "This device isn't known here. Pair it with a new code.";

/// Nothing where the token is a device's that may do what a device does; else the answer, which says so where the
/// device was revoked, and `unknown` where no device has that token.
[[nodiscard]] std::optional<http::Response> why_not_a_device(const Result<TokenHolder>& holder, std::string unknown);

/// Whether a path is the devices' page or one of its forms. Who asks was looked at before the two below are called.
[[nodiscard]] bool is_devices_path(std::string_view path);
[[nodiscard]] http::Response look_at_devices(Archive& archive, std::string_view path);
[[nodiscard]] http::Response take_devices_form(Archive& archive, const http::Request& request);

}  // namespace truehang::workroom
