// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>

namespace truehang {

/// One run of a prepared statement: values bound in order, rows read one by one; put back when it goes.
class Query {
public:
    template <class... Values>
    explicit Query(SQLite::Statement& statement, const Values&... values) : statement_(statement) {
        int index = 0;
        (bind(++index, values), ...);
    }
    ~Query() { statement_.tryReset(); }
    Query(const Query&) = delete;
    Query& operator=(const Query&) = delete;

    [[nodiscard]] bool next() { return statement_.executeStep(); }
    void run() { statement_.exec(); }
    [[nodiscard]] std::string text(int column) const { return statement_.getColumn(column).getString(); }
    [[nodiscard]] std::int64_t number(int column) const { return statement_.getColumn(column).getInt64(); }
    [[nodiscard]] bool is_null(int column) const { return statement_.getColumn(column).isNull(); }

private:
    void bind(int index, std::string_view value) { statement_.bind(index, std::string(value)); }
    void bind(int index, const std::string& value) { statement_.bind(index, value); }
    void bind(int index, const char* value) { statement_.bind(index, value); }
    void bind(int index, int value) { statement_.bind(index, value); }
    void bind(int index, long value) { statement_.bind(index, static_cast<std::int64_t>(value)); }
    void bind(int index, long long value) { statement_.bind(index, static_cast<std::int64_t>(value)); }

    SQLite::Statement& statement_;
};

/// The one connection to the file, held against every other process. Throws SQLite::Exception.
class Connection {
public:
    /// Opens or creates `file` and takes hold of it; until start_writing() nothing in it is changed, nor by closing.
    Connection(const std::filesystem::path& file, const std::string& vfs);

    /// From here on: WAL, foreign keys, and commits that are on the disk (`sync_commits` false: that only outlive the
    /// program).
    void start_writing(bool sync_commits);

    /// What SQLite's own check of the pages says; empty where it finds nothing.
    [[nodiscard]] std::string faults();

    /// A statement with its values; `sql` must be a literal, and is prepared once.
    template <class... Values>
    [[nodiscard]] Query query(std::string_view sql, const Values&... values) {
        return Query(prepared(sql), values...);
    }
    template <class... Values>
    void run(std::string_view sql, const Values&... values) {
        query(sql, values...).run();
    }

    /// Runs `work` in one transaction that is on the disk when this returns; any exception takes all of it back.
    template <class Work>
    auto transact(Work&& work) {
        set_syncing(true);
        SQLite::Transaction transaction(database_, SQLite::TransactionBehavior::IMMEDIATE);
        auto result = std::forward<Work>(work)();
        transaction.commit();
        fold_in_when_long();
        return result;
    }

    /// Runs one statement that outlives the program, but only after the next transact() a loss of power.
    template <class... Values>
    void run_unsynced(std::string_view sql, const Values&... values) {
        set_syncing(false);
        run(sql, values...);
        set_syncing(true);
    }

    /// Writes the file anew from what is in it, so that nothing of what was deleted is left in its bytes. Takes as long
    /// as the file is large, and for that time as much room again.
    void write_anew();

    [[nodiscard]] SQLite::Database& database() { return database_; }

private:
    SQLite::Statement& prepared(std::string_view sql);
    void fold_in_on_close(bool folds);
    void set_syncing(bool syncing);
    void fold_in_when_long();

    SQLite::Database database_;
    std::unordered_map<std::string_view, SQLite::Statement> statements_;  // goes before the database
    bool sync_commits_ = true;
    bool syncing_ = false;
    int log_pages_ = 0;
};

}  // namespace truehang
