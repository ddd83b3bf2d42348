// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "store/store.h"

#include <condition_variable>
#include <deque>
#include <exception>
#include <mutex>
#include <thread>
#include <type_traits>

namespace truehang {

/// The store for callers that may not wait: what they post runs in the order posted, on a thread that owns the Store,
/// or at once where there are no threads; each answer comes back through `post_to_caller`.
class AsyncStore {
public:
    using Task = std::function<void()>;
    /// Runs a task later on the caller's thread (an event loop's queue). Called from the store's thread; in the mode
    /// without threads from within `post`, where it should still queue, so that no answer comes before `post` returns.
    using PostToCaller = std::function<void(Task)>;
    using Open = std::function<Result<std::unique_ptr<Store>>()>;
    enum class Mode { own_thread, no_threads };

    /// Opens the store on its thread, or at the first post where there are no threads.
    AsyncStore(Open open, PostToCaller post_to_caller, Mode mode = Mode::own_thread);
    /// Does everything that was posted, then ends; answers may still be handed to `post_to_caller` until it returns.
    ~AsyncStore();
    AsyncStore(const AsyncStore&) = delete;
    AsyncStore& operator=(const AsyncStore&) = delete;

    /// Runs `work(Store&)`, which gives a Result<T>, and hands that to `then(Result<T>)` on the caller's side. Where
    /// the store isn't open, opening is tried again first, and its error is the answer if it fails again. Anything
    /// thrown by `work` comes back as `io`.
    template <class Work, class Then>
    void post(Work work, Then then) {
        using Answer = std::invoke_result_t<Work&, Store&>;
        enqueue([this, work = std::move(work), then = std::move(then)]() mutable {
            auto answer = std::make_shared<Answer>(run<Answer>(work));
            post_to_caller_([then = std::move(then), answer]() mutable { then(std::move(*answer)); });
        });
    }

    /// Tells once whether the store is open, opening it where it isn't.
    void opened(std::function<void(Result<Done>)> then) {
        post([](Store&) -> Result<Done> { return Done{}; }, std::move(then));
    }

private:
    template <class Answer, class Work>
    Answer run(Work& work) {
        try {
            if (const auto open = make_open(); !open) {
                return Answer(open.error());
            }
            return work(*store_);
        } catch (const std::exception& thrown) {
            return Answer(Error{ErrorCode::io, "store", thrown.what()});
        }
    }
    Result<Done> make_open();
    void enqueue(Task task);
    void run_thread();

    Open open_;
    PostToCaller post_to_caller_;
    Mode mode_;
    std::unique_ptr<Store> store_;  // touched by the running thread only
    std::mutex mutex_;
    std::condition_variable wake_;
    std::deque<Task> tasks_;
    bool ending_ = false;
    std::thread thread_;
};

}  // namespace truehang
