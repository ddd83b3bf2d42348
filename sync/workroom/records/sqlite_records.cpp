// SPDX-License-Identifier: Apache-2.0
#include "workroom/records/sqlite_records.h"

#include "workroom/archive/schema.h"

#include <sqlite3.h>

namespace truehang::workroom {

namespace {

using AtRest = std::unordered_map<std::string, std::unique_ptr<SQLite::Statement>>;

constexpr std::size_t most_at_rest = 128;  ///< texts; some are put together for what is asked

/// A statement in use, at rest again when it is done with.
class SqliteRows final : public Rows {
public:
    SqliteRows(std::unique_ptr<SQLite::Statement> statement, std::string sql, AtRest& at_rest)
        : statement_(std::move(statement)), sql_(std::move(sql)), at_rest_(at_rest) {}
    ~SqliteRows() override {
        statement_->tryReset();  // a step that failed has been told of
        if (at_rest_.size() < most_at_rest) {
            statement_->clearBindings();
            at_rest_.try_emplace(std::move(sql_), std::move(statement_));
        }
    }
    SqliteRows(const SqliteRows&) = delete;
    SqliteRows& operator=(const SqliteRows&) = delete;

    void bind(int place, std::int64_t number) override { statement_->bind(place, number); }
    void bind(int place, std::string_view text) override { statement_->bind(place, std::string(text)); }
    void bind_bytes(int place, std::string_view bytes) override {
        statement_->bind(place, bytes.data(), static_cast<int>(bytes.size()));
    }
    bool step() override { return statement_->executeStep(); }
    long long exec() override { return statement_->exec(); }
    void reset() override { statement_->reset(); }
    [[nodiscard]] bool is_null(int column) const override { return statement_->isColumnNull(column); }
    [[nodiscard]] std::int64_t number(int column) const override { return at(column).getInt64(); }
    [[nodiscard]] std::string text(int column) const override { return at(column).getString(); }

private:
    [[nodiscard]] SQLite::Column at(int column) const { return statement_->getColumn(column); }

    std::unique_ptr<SQLite::Statement> statement_;
    std::string sql_;
    AtRest& at_rest_;
};

}  // namespace

Error error_of(const SQLite::Exception& thrown) {
    switch (thrown.getErrorCode()) {
        case SQLITE_FULL:
            return {ErrorCode::full, "workroom.sqlite", "There is no room left on the disk."};
        case SQLITE_BUSY:
        case SQLITE_LOCKED:
            return {ErrorCode::busy, "workroom.sqlite", "Another process holds the workroom’s records."};
        case SQLITE_CORRUPT:
        case SQLITE_NOTADB:
            return {ErrorCode::damaged, "workroom.sqlite", "The workroom’s records are damaged; bring back a copy."};
        default:
            return {ErrorCode::io, "workroom.sqlite", thrown.what()};
    }
}

std::unique_ptr<Rows> SqliteRecords::prepare(const std::string& sql) {
    auto resting = at_rest_.extract(sql);
    auto statement =
        resting.empty() ? std::make_unique<SQLite::Statement>(database_, sql) : std::move(resting.mapped());
    return std::make_unique<SqliteRows>(std::move(statement), sql, at_rest_);
}

std::vector<std::string> SqliteRecords::tables_with(const std::string& column) {
    SQLite::Statement query(database_,
                            "SELECT t.name FROM sqlite_schema AS t JOIN pragma_table_info(t.name) AS c"
                            " WHERE t.type = 'table' AND c.name = ? ORDER BY t.name");
    query.bind(1, column);
    std::vector<std::string> names;
    while (query.executeStep()) {
        names.push_back(query.getColumn(0).getString());
    }
    return names;
}

bool SqliteRecords::overwrite_freed() {
    database_.exec("VACUUM");
    SQLite::Statement empty(database_, "PRAGMA wal_checkpoint(TRUNCATE)");
    return empty.executeStep() && empty.getColumn(0).getInt() == 0;
}

bool SqliteRecords::in_transaction() const { return sqlite3_get_autocommit(database_.getHandle()) == 0; }

std::unique_ptr<SQLite::Database> SqliteEngine::opened(int flags) const {
    return std::make_unique<SQLite::Database>(file_.string(), flags, static_cast<int>(patience_.count()));
}

std::unique_ptr<Records> SqliteEngine::connect_to_write() {
    auto database = opened(SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    if (database->execAndGet("PRAGMA user_version").getInt() <= schema_version) {
        database->exec("PRAGMA journal_mode = WAL");
        database->exec("PRAGMA synchronous = FULL");
        database->exec("PRAGMA foreign_keys = ON");
        database->exec("PRAGMA secure_delete = ON");
    }
    return std::make_unique<SqliteRecords>(std::move(database));
}

std::unique_ptr<Records> SqliteEngine::connect_to_read() {
    return std::make_unique<SqliteRecords>(opened(SQLite::OPEN_READONLY));
}

}  // namespace truehang::workroom
