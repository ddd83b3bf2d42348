// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/archive/access.h"
#include "workroom/archive/archive.h"
#include "workroom/http/http_server.h"
#include "workroom/people/door.h"
#include "workroom/site/reach.h"

#include <optional>
#include <string>
#include <string_view>

// The devices: who may send, and the page on which a person sees and revokes them.

namespace truehang::workroom {

/// What a device is told whose token isn't known.
inline constexpr const char* unknown_device = "This device isn’t known here. Pair it with a new code.";

/// Nothing where the token is a device's that may do what a device does; else the answer, which says so where the
/// device was revoked, and `unknown` where no device has that token.
[[nodiscard]] std::optional<http::Response> why_not_a_device(const Result<TokenHolder>& holder, std::string unknown);

/// What the devices' pages stand on.
struct DevicesDesk {
    Archive& archive;
    Access& access;
    const Reach& reach;
};

/// The page. Who asks was looked at before this and the next are called.
[[nodiscard]] http::Response look_at_devices(const DevicesDesk& desk, const Caller& caller);
/// Revokes a device, or answers with the page that shows a new code.
[[nodiscard]] http::Response take_devices_form(const DevicesDesk& desk, const http::Request& request);

}  // namespace truehang::workroom
