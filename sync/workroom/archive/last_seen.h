// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/time_text.h"
#include "workroom/archive/database.h"

#include <chrono>
#include <functional>
#include <map>
#include <mutex>
#include <string>

namespace truehang::workroom {

/// When a device was last seen is written down at most once in this time.
inline constexpr std::chrono::minutes last_seen_grain{5};

/// When devices were last seen, coarsely: seeing one costs nothing, and what is due is written after the answers, so
/// that no receipt waits for it. Safe from several threads.
class LastSeen {
public:
    /// `database` must stand as long as this.
    LastSeen(Database& database, std::function<sync::Time()> clock) : database_(database), clock_(std::move(clock)) {}

    void saw(const std::string& device);
    /// Queues one write for all that are due, or none; doesn't wait for it.
    void write_due();

private:
    Database& database_;
    std::function<sync::Time()> clock_;
    std::mutex mutex_;
    std::map<std::string, sync::Time> written_;  ///< or queued to be, by device
    std::map<std::string, sync::Time> due_;
};

}  // namespace truehang::workroom
