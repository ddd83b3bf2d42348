// SPDX-License-Identifier: Apache-2.0
#include "store/async_store.h"

namespace truehang {

AsyncStore::AsyncStore(Open open, PostToCaller post_to_caller, Mode mode)
    : open_(std::move(open)), post_to_caller_(std::move(post_to_caller)), mode_(mode) {
    if (mode_ == Mode::own_thread) {
        thread_ = std::thread([this] { run_thread(); });
    }
}

AsyncStore::~AsyncStore() {
    if (mode_ == Mode::own_thread) {
        {
            const std::lock_guard lock(mutex_);
            ending_ = true;
        }
        wake_.notify_one();
        thread_.join();
    }
}

Result<Done> AsyncStore::make_open() {
    if (!store_) {
        auto opened = open_();
        if (!opened) {
            return opened.error();
        }
        store_ = std::move(opened).value();
    }
    return Done{};
}

void AsyncStore::enqueue(Task task) {
    if (mode_ == Mode::no_threads) {
        task();
        return;
    }
    {
        const std::lock_guard lock(mutex_);
        tasks_.push_back(std::move(task));
    }
    wake_.notify_one();
}

void AsyncStore::run_thread() {
    try {
        // A failure is told to whoever posts first: it is tried again there.
        static_cast<void>(make_open());
    } catch (const std::exception&) {
        store_.reset();
    }
    std::unique_lock lock(mutex_);
    while (true) {
        wake_.wait(lock, [this] { return ending_ || !tasks_.empty(); });
        if (tasks_.empty()) {
            break;
        }
        Task task = std::move(tasks_.front());
        tasks_.pop_front();
        lock.unlock();
        task();
        task = nullptr;
        lock.lock();
    }
    store_.reset();
}

}  // namespace truehang
