// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <thread>
#include <vector>

namespace truehang::trial {

/// `make(0)` to `make(count - 1)`, in order, made by all processors; each must draw from a generator of its own.
template <class Made, class Make>
[[nodiscard]] std::vector<Made> in_parallel(int count, const Make& make) {
    std::vector<Made> made(static_cast<std::size_t>(std::max(0, count)));
    const int threads = std::max(1, static_cast<int>(std::thread::hardware_concurrency()));
    std::vector<std::jthread> running;
    for (int thread = 0; thread < threads; ++thread) {
        running.emplace_back([&made, &make, count, threads, thread] {
            for (int i = thread; i < count; i += threads) {
                made[static_cast<std::size_t>(i)] = make(i);
            }
        });
    }
    running.clear();
    return made;
}

}  // namespace truehang::trial
