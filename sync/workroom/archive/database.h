// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"
#include "workroom/records/records.h"

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

// The records behind one writing thread and as many readers as ask. Exceptions of the engines end here.

namespace truehang::workroom {

/// What the exception under way means: `full`, `busy`, `damaged`, else `io`. To be called where one is being caught.
[[nodiscard]] Error records_error();

/// The records, opened and at this version's schema.
class Database {
public:
    /// Opens or makes them. Errors: `newer_version`, `damaged`, `busy`, `full`, `io`; they then stay as they are.
    [[nodiscard]] static Result<std::unique_ptr<Database>> open(std::unique_ptr<RecordsEngine> engine);
    /// Of one SQLite file.
    [[nodiscard]] static Result<std::unique_ptr<Database>> open(const std::filesystem::path& file);
    /// Ends the writing thread after what was queued is written.
    ~Database();
    Database(const Database&) = delete;
    Database& operator=(const Database&) = delete;

    /// Queues `work` for the writing thread. What waits together is committed together; `then` is called on that
    /// thread once the commit is on the disk, or with why not. A `work` that throws or gives an error is undone alone.
    /// `busy` at once, on the caller's thread, where the queue is full.
    template <class T>
    void write(std::function<Result<T>(Records&)> work, std::function<void(Result<T>)> then) {
        auto outcome = std::make_shared<std::optional<Result<T>>>();
        queue({[work = std::move(work), outcome](Records& database) {
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
    [[nodiscard]] Result<T> write_and_wait(std::function<Result<T>(Records&)> work) {
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

    /// Runs `work` on a reading connection of its own, on the caller's thread; once more on a new one where the
    /// connection had gone meanwhile.
    template <class T>
    [[nodiscard]] Result<T> read(const std::function<Result<T>(Records&)>& work) {
        std::optional<Result<T>> result;
        const auto error = read_on_one([&](Records& records) { result.emplace(work(records)); });
        return error ? Result<T>(*error) : std::move(*result);
    }

    /// What was written since they were opened, in transactions and single writes, and what waits now.
    struct Traffic {
        long long commits = 0, writes = 0, waiting = 0;
    };
    [[nodiscard]] Traffic traffic();
    /// Whether the records answer now, written to; `busy` or the like where they don't.
    [[nodiscard]] Result<Done> try_writing();
    /// True where photos' bytes are kept in the records.
    [[nodiscard]] bool hold_photos() const { return hold_photos_; }

private:
    struct Task {
        std::function<bool(Records&)> work;  ///< false: undo it
        std::function<void(const std::optional<Error>&)> finish;
    };

    Database(std::unique_ptr<RecordsEngine> engine, std::unique_ptr<Records> writer);
    void queue(Task task);
    void run();
    void write_batch(std::vector<Task>& batch);
    void begin_batch();
    static std::optional<Error> run_alone(Records& records, Task& task);
    [[nodiscard]] std::optional<Error> read_on_one(const std::function<void(Records&)>& work);
    [[nodiscard]] std::unique_ptr<Records> lend();
    void give_back(std::unique_ptr<Records> connection);

    std::unique_ptr<RecordsEngine> engine_;
    std::unique_ptr<Records> writer_;
    bool hold_photos_;
    std::mutex mutex_;
    std::condition_variable wake_;
    std::deque<Task> tasks_;
    bool ending_ = false;
    Traffic traffic_;
    std::mutex readers_mutex_;
    std::vector<std::unique_ptr<Records>> readers_;
    std::thread thread_;
};

}  // namespace truehang::workroom
