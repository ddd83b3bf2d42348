// SPDX-License-Identifier: Apache-2.0
#include "store/connection.h"

#include "units/folded.h"

#include <sqlite3.h>

namespace truehang {
namespace {

// The write-ahead log is folded into the file when it has this many pages (4 MB), always within an edit and never
// within a draft.
constexpr int long_log = 1000;

bool log_is_empty(const std::filesystem::path& file) {
    std::error_code code;
    const auto size = std::filesystem::file_size(file.string() + "-wal", code);
    return code || size == 0;
}

int note_log_pages(void* noted, sqlite3*, const char*, int pages) {
    *static_cast<int*>(noted) = pages;
    return SQLITE_OK;
}

/// `folded(text)` in SQL.
void fold_in_sql(sqlite3_context* context, int, sqlite3_value** values) {
    const auto* text = reinterpret_cast<const char*>(sqlite3_value_text(values[0]));
    const std::string made = folded(text == nullptr ? "" : text);
    sqlite3_result_text(context, made.data(), static_cast<int>(made.size()), SQLITE_TRANSIENT);
}

}  // namespace

Connection::Connection(const std::filesystem::path& file, const std::string& vfs)
    : database_(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, 0, vfs) {
    fold_in_on_close(false);
    database_.createFunction("folded", 1, true, nullptr, fold_in_sql);
    database_.exec("PRAGMA locking_mode = EXCLUSIVE");
    static_cast<void>(database_.execAndGet("PRAGMA user_version"));
    fold_in_on_close(log_is_empty(file));  // that writes nothing, and takes the empty log away
}

void Connection::start_writing(bool sync_commits) {
    sync_commits_ = sync_commits;
    if (database_.execAndGet("PRAGMA journal_mode = WAL").getString() != "wal") {
        throw SQLite::Exception("no write-ahead log here", SQLITE_IOERR);
    }
    database_.exec("PRAGMA foreign_keys = ON");
    sqlite3_wal_hook(database_.getHandle(), note_log_pages, &log_pages_);  // in place of folding in at any commit
    syncing_ = false;
    set_syncing(true);
    fold_in_on_close(true);
}

std::string Connection::faults() {
    Query check(prepared("PRAGMA quick_check(1)"));
    const std::string verdict = check.next() ? check.text(0) : "no verdict";
    return verdict == "ok" ? "" : verdict;
}

void Connection::write_anew() {
    database_.exec("VACUUM");
    if (database_.execAndGet("PRAGMA wal_checkpoint(TRUNCATE)").getInt() != 0) {
        throw SQLite::Exception("the write-ahead log can’t be folded in", SQLITE_BUSY);
    }
}

void Connection::fold_in_on_close(bool folds) {
    sqlite3_db_config(database_.getHandle(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, folds ? 0 : 1, nullptr);
}

SQLite::Statement& Connection::prepared(std::string_view sql) {
    const auto found = statements_.find(sql);
    if (found != statements_.end()) {
        return found->second;
    }
    return statements_.try_emplace(sql, database_, std::string(sql)).first->second;
}

void Connection::set_syncing(bool syncing) {
    if (syncing == syncing_) {
        return;
    }
    // NORMAL, not OFF, for what needs no sync: when the log starts anew, its header still reaches the disk before it.
    const char* const level = !sync_commits_ ? "OFF" : syncing ? "FULL" : "NORMAL";
    database_.exec(std::string("PRAGMA synchronous = ") + level);
    syncing_ = syncing;
}

void Connection::fold_in_when_long() {
    if (log_pages_ >= long_log) {
        // The edit is on the disk already: where this is refused the log stays, and the next edit tries again.
        static_cast<void>(database_.tryExec("PRAGMA wal_checkpoint(PASSIVE)"));
    }
}

}  // namespace truehang
