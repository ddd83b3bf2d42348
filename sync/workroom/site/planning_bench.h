// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/house_plan.h"
#include "units/result.h"
#include "workroom/site/rolls_table.h"

#include <chrono>
#include <condition_variable>
#include <deque>
#include <functional>
#include <map>
#include <mutex>
#include <optional>
#include <stop_token>
#include <string>
#include <thread>
#include <utility>
#include <vector>

namespace truehang::workroom {

/// Works out roll plans on a thread of its own, one survey after the other, and keeps them in the archive. Requests
/// wait for it only where they ask to.
class PlanningBench {
public:
    using Then = std::function<void(const Result<HousePlan>&)>;

    explicit PlanningBench(Archive& archive);
    /// Ends, and waits for what is under way.
    ~PlanningBench();
    PlanningBench(const PlanningBench&) = delete;
    PlanningBench& operator=(const PlanningBench&) = delete;

    /// Has the plan of a survey worked out unless the one that is kept still holds; `then` is called on the bench's
    /// thread with that plan. Errors: `missing` where the survey isn't here, `busy` once the bench ends, and what went
    /// wrong. Many may ask for one plan: it is worked out once.
    void want(const std::string& survey, Then then = {});
    /// A survey or its rolls changed: what is worked out for it now is dropped, and worked out anew.
    void changed(const std::string& survey);
    /// The plan of what lies on the table as it is kept, or what comes of waiting a moment for it, for many are worked
    /// out at once; nothing where it isn't worked out yet.
    [[nodiscard]] Result<std::optional<HousePlan>> by_now(const RollsTable& table);

    /// Takes nothing more, and waits at most so long for what is under way. From then on the archive isn't touched.
    /// False where a plan is still under way: it can't be broken off inside one cloth.
    [[nodiscard]] bool end(std::chrono::milliseconds time);

private:
    void run();
    /// Whether any were written down for a survey; true too where that can't be told now.
    [[nodiscard]] bool rolls_came(const std::string& survey);
    [[nodiscard]] Result<HousePlan> plan_of(const std::string& survey, const std::stop_token& stop);
    /// Lays the table; what is known without planning, or nothing.
    [[nodiscard]] std::optional<Result<HousePlan>> look_up(const std::string& survey, std::optional<RollsTable>& table);
    void answer(const std::string& survey, const Result<HousePlan>& plan);

    Archive& archive_;
    std::mutex archive_mutex_;  ///< held while the archive is touched, never while a plan is worked out
    std::mutex mutex_;          ///< of all that follows; taken after the other
    std::condition_variable wake_, ended_;
    std::deque<std::string> queue_;  ///< surveys, each once
    std::string under_way_;          ///< the survey that is worked for now; empty: none
    std::map<std::string, std::vector<Then>> waiting_;
    std::map<std::string, std::pair<PlanBasis, Error>> failed_;  ///< what can't be done isn't tried again and again
    std::stop_source stop_;                                      ///< of what is under way
    bool ending_ = false, done_ = false;
    std::thread thread_;
};

}  // namespace truehang::workroom
