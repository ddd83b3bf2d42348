// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/records/records.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <chrono>
#include <filesystem>
#include <unordered_map>

namespace truehang::workroom {

/// What a failed statement means: `full`, `busy`, `damaged`, else `io`.
[[nodiscard]] Error error_of(const SQLite::Exception& thrown);

/// Records in one SQLite file. Its exceptions are SQLiteCpp's own.
class SqliteRecords final : public Records {
public:
    /// Of a connection that another holds open for as long.
    explicit SqliteRecords(SQLite::Database& database) : database_(database) {}
    explicit SqliteRecords(std::unique_ptr<SQLite::Database> own) : own_(std::move(own)), database_(*own_) {}

    [[nodiscard]] std::unique_ptr<Rows> prepare(const std::string& sql) override;
    void run(const std::string& sql) override { database_.exec(sql); }
    void begin_writing() override { database_.exec("BEGIN IMMEDIATE"); }
    void begin_reading() override { database_.exec("BEGIN"); }
    [[nodiscard]] bool in_transaction() const override;
    [[nodiscard]] bool has_table(const std::string& name) override { return database_.tableExists(name); }
    [[nodiscard]] std::vector<std::string> tables_with(const std::string& column) override;
    [[nodiscard]] bool overwrite_freed() override;
    /// The engine’s own handle, for what only it can tell.
    [[nodiscard]] sqlite3* handle() const { return database_.getHandle(); }
    [[nodiscard]] int version() override { return database_.execAndGet("PRAGMA user_version").getInt(); }
    void set_version(int version) override { database_.exec("PRAGMA user_version = " + std::to_string(version)); }

private:
    std::unique_ptr<SQLite::Database> own_;
    SQLite::Database& database_;
    /// Statements at rest, by their text: preparing one costs more than most of them do. Gone before the connection.
    std::unordered_map<std::string, std::unique_ptr<SQLite::Statement>> at_rest_;
};

/// WAL, every commit on the disk before it counts, what is deleted overwritten.
class SqliteEngine final : public RecordsEngine {
public:
    /// Waits `patience` for other processes.
    explicit SqliteEngine(std::filesystem::path file, std::chrono::milliseconds patience = std::chrono::seconds(5))
        : file_(std::move(file)), patience_(patience) {}
    [[nodiscard]] std::unique_ptr<Records> connect_to_write() override;
    [[nodiscard]] std::unique_ptr<Records> connect_to_read() override;

private:
    [[nodiscard]] std::unique_ptr<SQLite::Database> opened(int flags) const;

    std::filesystem::path file_;
    std::chrono::milliseconds patience_;
};

}  // namespace truehang::workroom
