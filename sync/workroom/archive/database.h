// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <condition_variable>
#include <deque>
#include <filesystem>
#include <functional>
#include <memory>
#include <mutex>
#include <optional>
#include <string>
#include <thread>
#include <utility>
#include <vector>

// One SQLite file behind one writing thread and as many readers as ask. Exceptions of the library end here.

namespace truehang::workroom {

/// What a failed statement means: `full`, `busy`, `damaged`, else `io`.
[[nodiscard]] Error error_of(const SQLite::Exception& thrown);

/// The file, opened and at this version's schema.
class Database {
public:
    /// Opens or makes the file: WAL, every commit on the disk before it counts. Errors: `newer_version`, `damaged`,
    /// `busy`, `full`, `io`; the file then stays as it is.
    [[nodiscard]] static Result<std::unique_ptr<Database>> open(const std::filesystem::path& file);
    /// Ends the writing thread after what was queued is written.
    ~Database();
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;

    /// Queues `work` for the writing thread. What waits together is committed together; `then` is called on that
    /// thread once the commit is on the disk, or with why not. A `work` that throws or gives an error is undone alone.
    /// `busy` at once, on the caller's thread, where the queue is full.
    template <class T>
    void write(std::function<Result<T>(SQLite::Database&)> work, std::function<void(Result<T>)> then) {
        auto outcome = std::make_shared<std::optional<Result<T>>>();
        queue({[work = std::move(work), outcome](SQLite::Database& database) {
                   outcome->emplace(work(database));
                   return (*outcome)->ok();
               },
               [outcome, then = std::move(then)](const std::optional<Error>& error) {
                   const bool own_word = outcome->has_value() && (!error || !(*outcome)->ok());
                   then(own_word ? std::move(**outcome) : Result<T>(error.value_or(Error{ErrorCode::io, "", ""})));
               }});
    }

    /// The same, waited for; not to be called on the writing thread.
    template <class T>
    [[nodiscard]] Result<T> write_and_wait(std::function<Result<T>(SQLite::Database&)> work) {
        std::mutex mutex;
        std::condition_variable done;
        std::optional<Result<T>> outcome;
        write<T>(std::move(work), [&](Result<T> result) {
            const std::lock_guard lock(mutex);
            outcome.emplace(std::move(result));
            done.notify_one();
        });
        std::unique_lock lock(mutex);
        done.wait(lock, [&] { return outcome.has_value(); });
        return std::move(*outcome);
    }

    /// Runs `work` on a reading connection of its own, on the caller's thread.
    template <class T>
    [[nodiscard]] Result<T> read(const std::function<Result<T>(SQLite::Database&)>& work) {
        try {
            auto connection = lend();
            auto result = work(*connection);
            give_back(std::move(connection));
            return result;
        } catch (const SQLite::Exception& thrown) {
            return error_of(thrown);
        }
    }

private:
    struct Task {
        std::function<bool(SQLite::Database&)> work;  ///< false: undo it
        std::function<void(const std::optional<Error>&)> finish;
    };

    Database(std::filesystem::path file, std::unique_ptr<SQLite::Database> writer);
    void queue(Task task);
    void run();
    void write_batch(std::vector<Task>& batch);
    static std::optional<Error> run_alone(SQLite::Database& database, Task& task);
    [[nodiscard]] std::unique_ptr<SQLite::Database> lend();
    void give_back(std::unique_ptr<SQLite::Database> connection);

    std::filesystem::path file_;
    std::unique_ptr<SQLite::Database> writer_;
    std::mutex mutex_;
    std::condition_variable wake_;
    std::deque<Task> tasks_;
    bool ending_ = false;
    std::mutex readers_mutex_;
    std::vector<std::unique_ptr<SQLite::Database>> readers_;
    std::thread thread_;
};

}  // namespace truehang::workroom
