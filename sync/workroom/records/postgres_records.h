// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/records/records.h"

#include <string>

struct pg_conn;

namespace truehang::workroom {

/// True of what `--database` takes: `postgresql://…` or `postgres://…`, as libpq reads it.
[[nodiscard]] bool is_postgres_url(std::string_view text);

/// Records in a PostgreSQL database (14 or later, UTF-8), which several receivers may share.
///
/// A transaction that writes begins by counting up the one row of the table `writing`. So it waits for the one before
/// it, whichever receiver runs that: places in the order of changes are given in the order of the commits. And so each
/// of them writes something: its COMMIT returns only when all that was committed before, here or elsewhere, is on the
/// disk, and on the standby where the database names a synchronous one.
class PostgresRecords final : public Records {
public:
    /// Throws `RecordsFault`: `busy` where it can't be reached.
    explicit PostgresRecords(const std::string& url);
    ~PostgresRecords() override;
    PostgresRecords(const PostgresRecords&) = delete;
    PostgresRecords& operator=(const PostgresRecords&) = delete;

    [[nodiscard]] std::unique_ptr<Rows> prepare(const std::string& sql) override;
    void run(const std::string& sql) override;
    void begin_writing() override;
    void begin_reading() override { run("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY"); }
    [[nodiscard]] bool in_transaction() const override;
    [[nodiscard]] bool is_alive() const override;
    [[nodiscard]] bool has_table(const std::string& name) override;
    [[nodiscard]] std::vector<std::string> tables_with(const std::string& column) override;
    /// The files of the tables; its write-ahead log, and those of its standbys and archives, let go in their own time.
    [[nodiscard]] bool overwrite_freed() override;
    [[nodiscard]] int version() override;
    void set_version(int version) override;
    [[nodiscard]] std::string own_words(std::string definitions) const override;
    [[nodiscard]] bool hold_photos() const override { return true; }

private:
    struct Closed {
        void operator()(pg_conn* connection) const;
    };
    void demand_durable();

    std::unique_ptr<pg_conn, Closed> connection_;
    bool warned_ = false;
    bool lost_ = false;  ///< not to be used again
};

/// Reads and writes alike go to the database that takes writes.
class PostgresEngine final : public RecordsEngine {
public:
    explicit PostgresEngine(std::string url) : url_(std::move(url)) {}
    /// Makes the table `writing` where it isn't there.
    [[nodiscard]] std::unique_ptr<Records> connect_to_write() override;
    [[nodiscard]] std::unique_ptr<Records> connect_to_read() override;

private:
    std::string url_;
    bool prepared_ = false;
};

}  // namespace truehang::workroom
