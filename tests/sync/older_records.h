// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <array>
#include <filesystem>
#include <string>
#include <utility>

namespace truehang::sync::test {

/// Takes a workroom's records back to how an earlier version wrote them: what later ones added goes.
inline void make_older(const std::filesystem::path& folder, int version) {
    static constexpr std::array<std::pair<int, const char*>, 20> added{{
        {2, "DROP TABLE rolls"},
        {3, "DROP TABLE roll_plan"},
        {4, "DROP INDEX revision_by_device"},
        {4, "ALTER TABLE device DROP COLUMN last_seen_ms"},
        {4, "ALTER TABLE device DROP COLUMN revoked_at"},
        {5, "DROP TABLE erased"},
        {5, "DROP TABLE erased_photo"},
        {6, "DROP TABLE instance"},
        {6, "DROP TABLE change"},
        {6, "DROP TABLE head"},
        {6, "DROP TABLE head_word"},
        {6, "DROP TABLE photo_named"},
        {7, "DROP TABLE layer_mark"},
        {8, "DROP INDEX revision_by_digest"},
        {8, "DROP TABLE erased_sheet"},
        {8, "DROP TABLE head_state"},
        {8, "DROP TABLE agreed_revision"},
        {9, "DROP TABLE person"},
        {9, "DROP TABLE person_session"},
        {10, "DROP TABLE question_entry"},
    }};
    SQLite::Database database((folder / "workroom.sqlite").string(), SQLite::OPEN_READWRITE);
    for (const auto& [since, what] : added) {
        if (since > version) {
            database.exec(what);
        }
    }
    database.exec("PRAGMA user_version = " + std::to_string(version));
}

}  // namespace truehang::sync::test
