// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/database.h"

#include "workroom/archive/schema.h"
#include "workroom/records/sqlite_records.h"

#include <algorithm>

namespace truehang::workroom {

namespace {

constexpr std::size_t queue_limit = 1024;
constexpr std::size_t batch_limit = 512;
constexpr std::size_t kept_readers = 8;

void bring_to_schema(Records& records) {
    Transaction transaction(records, Transaction::Use::writing);
    int version = records.version();
    if (version == 0) {
        records.run(records.own_words(schema));
        version = 1;
    }
    for (; version < schema_version; ++version) {
        records.run(records.own_words(later_schemas.at(static_cast<std::size_t>(version) - 1)));
    }
    if (records.hold_photos()) {
        records.run(records.own_words(all_within_schema));
    }
    records.set_version(schema_version);
    transaction.commit();
}

}  // namespace

Error records_error() {
    try {
        throw;
    } catch (const RecordsFault& thrown) {
        return thrown.error();
    } catch (const SQLite::Exception& thrown) {
        return error_of(thrown);
    } catch (const std::exception& thrown) {
        return {ErrorCode::io, "records", thrown.what()};
    }
}

Result<std::unique_ptr<Database>> Database::open(std::unique_ptr<RecordsEngine> engine) {
    try {
        auto writer = engine->connect_to_write();
        if (writer->version() > schema_version) {
            return Error{ErrorCode::newer_version, "records",
                         "A later version of Truehang wrote these records; use that one."};
        }
        bring_to_schema(*writer);
        return std::unique_ptr<Database>(new Database(std::move(engine), std::move(writer)));
    } catch (const std::exception&) {
        return records_error();
    }
}

Result<std::unique_ptr<Database>> Database::open(const std::filesystem::path& file) {
    auto database = open(std::make_unique<SqliteEngine>(file));
    if (!database && database.error().code == ErrorCode::newer_version) {
        auto error = database.error();
        error.where = file.string();
        return error;
    }
    return database;
}

Database::Database(std::unique_ptr<RecordsEngine> engine, std::unique_ptr<Records> writer)
    : engine_(std::move(engine)),
      writer_(std::move(writer)),
      hold_photos_(writer_->hold_photos()),
      thread_([this] { run(); }) {}

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
            ++traffic_.writes;
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

std::optional<Error> Database::run_alone(Records& records, Task& task) {
    std::optional<Error> error;
    records.run("SAVEPOINT task");
    bool keep = false;
    try {
        keep = task.work(records);
    } catch (const std::exception&) {
        error = records_error();
        if (!records.in_transaction()) {
            throw;  // the whole transaction is gone (a full disk, an i/o fault, the connection), not only this task
        }
    }
    if (!keep) {
        records.run("ROLLBACK TO task");
    }
    records.run("RELEASE task");
    return error;
}

/// Nothing was done on it yet: a connection that went away since the last batch is made anew.
void Database::begin_batch() {
    try {
        if (writer_) {
            writer_->begin_writing();
            return;
        }
    } catch (const std::exception&) {
        if (writer_->is_alive()) {
            throw;
        }
    }
    writer_.reset();
    writer_ = engine_->connect_to_write();
    writer_->begin_writing();
}

void Database::write_batch(std::vector<Task>& batch) {
    std::vector<std::optional<Error>> errors(batch.size());
    try {
        begin_batch();
        Transaction transaction = Transaction::taken_over(*writer_);
        for (std::size_t i = 0; i < batch.size(); ++i) {
            errors[i] = run_alone(*writer_, batch[i]);
        }
        transaction.commit();
        const std::lock_guard lock(mutex_);
        ++traffic_.commits;
    } catch (const std::exception&) {
        std::fill(errors.begin(), errors.end(), records_error());
    }
    for (std::size_t i = 0; i < batch.size(); ++i) {
        batch[i].finish(errors[i]);
    }
}

Database::Traffic Database::traffic() {
    const std::lock_guard lock(mutex_);
    auto traffic = traffic_;
    traffic.waiting = static_cast<long long>(tasks_.size());
    return traffic;
}

Result<Done> Database::try_writing() {
    return write_and_wait<Done>([](Records& records) -> Result<Done> {
        records.run("UPDATE instance SET id = id");  // a transaction that changes nothing would pass on a full disk
        return Done{};
    });
}

std::optional<Error> Database::read_on_one(const std::function<void(Records&)>& work) {
    for (bool again = false;; again = true) {
        std::unique_ptr<Records> connection;
        try {
            connection = again ? engine_->connect_to_read() : lend();
            work(*connection);
            give_back(std::move(connection));
            return std::nullopt;
        } catch (const std::exception&) {
            if (again || !connection || connection->is_alive()) {
                return records_error();
            }
        }
    }
}

std::unique_ptr<Records> Database::lend() {
    {
        const std::lock_guard lock(readers_mutex_);
        if (!readers_.empty()) {
            auto connection = std::move(readers_.back());
            readers_.pop_back();
            return connection;
        }
    }
    return engine_->connect_to_read();
}

void Database::give_back(std::unique_ptr<Records> connection) {
    const std::lock_guard lock(readers_mutex_);
    if (readers_.size() < kept_readers) {
        readers_.push_back(std::move(connection));
    }
}

}  // namespace truehang::workroom
