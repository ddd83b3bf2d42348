// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/paths.h"
#include "workroom/archive/archive.h"
#include "workroom/http/http_server.h"

#include <cstddef>
#include <optional>
#include <string_view>

namespace truehang::workroom {

/// The answer to GET or HEAD of a place of the protocol by one who may look: a photo, a revision, receipts, figures,
/// rules, marks, questions, or what came in or was asked after a cursor.
[[nodiscard]] http::Response look_up(Archive& archive, const sync::Place& place, const http::RequestHead& head);

/// The number that a query’s `limit` asks for, within what is given at once; nothing where it isn’t one.
[[nodiscard]] std::optional<std::size_t> asked_limit(std::string_view query);

}  // namespace truehang::workroom
