// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/paths.h"
#include "workroom/archive/archive.h"
#include "workroom/http/http_server.h"

namespace truehang::workroom {

/// The answer to GET or HEAD of a place of the protocol by one who may look: a photo, a revision, receipts, figures,
/// rules, or what came in after a cursor.
[[nodiscard]] http::Response look_up(Archive& archive, const sync::Place& place, const http::RequestHead& head);

}  // namespace truehang::workroom
