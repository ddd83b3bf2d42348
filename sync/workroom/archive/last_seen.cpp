// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/last_seen.h"

#include <utility>

namespace truehang::workroom {

void LastSeen::saw(const std::string& device) {
    const auto now = clock_();
    const std::lock_guard lock(mutex_);
    const auto written = written_.find(device);
    // A clock that was set back counts as time gone by.
    if (written == written_.end() || now < written->second || now - written->second >= last_seen_grain) {
        due_[device] = now;
    }
}

void LastSeen::write_due() {
    std::map<std::string, sync::Time> due;
    {
        const std::lock_guard lock(mutex_);
        if (due_.empty()) {
            return;
        }
        due = std::exchange(due_, {});
        for (const auto& [device, at] : due) {
            written_[device] = at;
        }
    }
    database_.write<Done>(
        [due = std::move(due)](Records& records) -> Result<Done> {
            // What another run of the program wrote a moment ago stands.
            Query update(records,
                         "UPDATE device SET last_seen_ms = ?1 WHERE id = ?2 AND (last_seen_ms IS NULL OR "
                         "abs(?1 - last_seen_ms) >= ?3)");
            for (const auto& [device, at] : due) {
                update.bind(1, static_cast<std::int64_t>(at.time_since_epoch().count()));
                update.bind(2, device);
                update.bind(3, static_cast<std::int64_t>(std::chrono::milliseconds(last_seen_grain).count()));
                update.exec();
                update.reset();
            }
            return Done{};
        },
        [](const Result<Done>&) {});  // a date that couldn't be kept holds nobody up
}

}  // namespace truehang::workroom
