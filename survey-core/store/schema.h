// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <SQLiteCpp/Database.h>

#include <span>
#include <string_view>

namespace truehang {

/// One step of the file's layout: the SQL that makes version `to` of version `to - 1`.
struct Migration {
    int to = 0;
    std::string_view sql;
};

/// Every step from the empty file on, in order. The file's `user_version` is the `to` of the last one taken.
[[nodiscard]] std::span<const Migration> migrations();

/// `user_version` of the file; 0 where it is new.
[[nodiscard]] int layout_version(SQLite::Database& database);

/// Takes the steps that are missing, each in a transaction of its own with its version; they call the function
/// `folded` (`units/folded.h`), which a Connection has. Throws SQLite::Exception.
void migrate(SQLite::Database& database, std::span<const Migration> steps);

}  // namespace truehang
