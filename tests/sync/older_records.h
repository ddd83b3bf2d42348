// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "receiver_process.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>

#include <array>
#include <filesystem>
#include <string>
#include <utility>

namespace truehang::sync::test {

/// Runs statements on a workroom's records, whichever engine they lie in; nobody serves them meanwhile.
inline void run_on_records(const std::filesystem::path& folder, const std::string& sql) {
    if (const auto url = database_for(folder); !url.empty()) {
        const auto done = run_program({"psql", "-q", "-v", "ON_ERROR_STOP=1", "-c", sql, url});
        ASSERT_EQ(done.exit_code, 0) << done.err;
        return;
    }
    SQLite::Database((folder / "workroom.sqlite").string(), SQLite::OPEN_READWRITE).exec(sql);
}

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
        {9, "DROP TABLE person"},
        {9, "DROP TABLE person_session"},
        {10, "DROP TABLE question_entry"},
        {11, "DROP TABLE agreed_revision"},
    }};
    std::string sql;
    for (const auto& [since, what] : added) {
        if (since > version) {
            sql += std::string(what) + "; ";
        }
    }
    const auto number = std::to_string(version);
    run_on_records(folder, sql + (database_for(folder).empty() ? "PRAGMA user_version = " + number
                                                               : "UPDATE writing SET version = " + number));
}

}  // namespace truehang::sync::test
