// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/database.h"

#include "workroom/archive/schema.h"

#include <sqlite3.h>

#include <algorithm>

namespace truehang::workroom {

namespace {

constexpr std::size_t queue_limit = 1024;
constexpr std::size_t batch_limit = 512;
constexpr std::size_t kept_readers = 8;
constexpr int busy_ms = 5000;

void bring_to_schema(SQLite::Database& database) {
    SQLite::Transaction transaction(database, SQLite::TransactionBehavior::IMMEDIATE);
    int version = database.execAndGet("PRAGMA user_version").getInt();
    if (version == 0) {
        database.exec(schema);
        version = 1;
    }
    for (; version < schema_version; ++version) {
        database.exec(later_schemas.at(static_cast<std::size_t>(version) - 1));
    }
    database.exec("PRAGMA user_version = " + std::to_string(schema_version));
    transaction.commit();
}

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

Result<std::unique_ptr<Database>> Database::open(const std::filesystem::path& file) {
    try {
        auto writer =
            std::make_unique<SQLite::Database>(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE, busy_ms);
        if (writer->execAndGet("PRAGMA user_version").getInt() > schema_version) {
            return Error{ErrorCode::newer_version, file.string(),
                         "A later version of Truehang wrote these records; use that one."};
        }
        writer->exec("PRAGMA journal_mode = WAL");
        writer->exec("PRAGMA synchronous = FULL");
        writer->exec("PRAGMA foreign_keys = ON");
        writer->exec("PRAGMA secure_delete = ON");
        bring_to_schema(*writer);
        return std::unique_ptr<Database>(new Database(file, std::move(writer)));
    } catch (const SQLite::Exception& thrown) {
        return error_of(thrown);
    }
}

Database::Database(std::filesystem::path file, std::unique_ptr<SQLite::Database> writer)
    : file_(std::move(file)), writer_(std::move(writer)), thread_([this] { run(); }) {}

Database::~Database() {
    {
        const std::lock_guard lock(mutex_);
        ending_ = true;
    }
    wake_.notify_one();
    thread_.join();
}

void Database::queue(Task task) {
    {
        const std::lock_guard lock(mutex_);
        if (tasks_.size() < queue_limit && !ending_) {
            tasks_.push_back(std::move(task));
            wake_.notify_one();
            return;
        }
    }
    task.finish(Error{ErrorCode::busy, "workroom.sqlite", "The workroom has more to write than it can; try again."});
}

void Database::run() {
    while (true) {
        std::vector<Task> batch;
        {
            std::unique_lock lock(mutex_);
            wake_.wait(lock, [this] { return ending_ || !tasks_.empty(); });
            if (tasks_.empty()) {
                return;
            }
            const auto count = std::min(tasks_.size(), batch_limit);
            const auto end = tasks_.begin() + static_cast<std::ptrdiff_t>(count);
            batch.assign(std::make_move_iterator(tasks_.begin()), std::make_move_iterator(end));
            tasks_.erase(tasks_.begin(), end);
        }
        write_batch(batch);
    }
}

std::optional<Error> Database::run_alone(SQLite::Database& database, Task& task) {
    std::optional<Error> error;
    database.exec("SAVEPOINT task");
    bool keep = false;
    try {
        keep = task.work(database);
    } catch (const SQLite::Exception& thrown) {
        error = error_of(thrown);
        if (sqlite3_get_autocommit(database.getHandle()) != 0) {
            throw;  // the whole transaction is gone (a full disk, an i/o fault), not only this task
        }
    }
    if (!keep) {
        database.exec("ROLLBACK TO task");
    }
    database.exec("RELEASE task");
    return error;
}

void Database::write_batch(std::vector<Task>& batch) {
    std::vector<std::optional<Error>> errors(batch.size());
    try {
        SQLite::Transaction transaction(*writer_, SQLite::TransactionBehavior::IMMEDIATE);
        for (std::size_t i = 0; i < batch.size(); ++i) {
            errors[i] = run_alone(*writer_, batch[i]);
        }
        transaction.commit();
    } catch (const SQLite::Exception& thrown) {
        std::fill(errors.begin(), errors.end(), error_of(thrown));
    }
    for (std::size_t i = 0; i < batch.size(); ++i) {
        batch[i].finish(errors[i]);
    }
}

std::unique_ptr<SQLite::Database> Database::lend() {
    {
        const std::lock_guard lock(readers_mutex_);
        if (!readers_.empty()) {
            auto connection = std::move(readers_.back());
            readers_.pop_back();
            return connection;
        }
    }
    return std::make_unique<SQLite::Database>(file_.string(), SQLite::OPEN_READONLY, busy_ms);
}

void Database::give_back(std::unique_ptr<SQLite::Database> connection) {
    const std::lock_guard lock(readers_mutex_);
    if (readers_.size() < kept_readers) {
        readers_.push_back(std::move(connection));
    }
}

}  // namespace truehang::workroom
