// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "store/connection.h"

#include <string>
#include <string_view>
#include <vector>

namespace truehang {

/// Digests of the documents that a visit was made from, the newest first; at most as many as a document may tell. Those
/// that went out and may have arrived, then those that others have.
[[nodiscard]] std::vector<std::string> parents_of(Connection& connection, std::string_view visit_id);

/// Makes a document the newest of them. Of those before it only the digests stay, but for the next newest.
void put_parent(Connection& connection, std::string_view visit_id, std::string_view bytes);

/// The same of a document of which only the digest is known.
void put_parent_digest(Connection& connection, std::string_view visit_id, std::string_view sha256);

/// The bytes of what others have aren’t kept here any more.
void forget_parents_bytes(Connection& connection, std::string_view visit_id);

}  // namespace truehang
