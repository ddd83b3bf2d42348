// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

namespace truehang::workroom {

/// Copies into the empty database `to` whatever of `from` can be read: each table from its beginning to where it is
/// damaged, then from its end back to there. Throws SQLite::Exception where not even the tables' names can be read.
void salvage(SQLite::Database& from, SQLite::Database& to);

}  // namespace truehang::workroom
