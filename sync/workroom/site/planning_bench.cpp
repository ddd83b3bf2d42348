// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/planning_bench.h"

#include "workroom/archive/rolls_shelf.h"

#include <algorithm>
#include <future>
#include <memory>

namespace truehang::workroom {

namespace {

constexpr std::chrono::milliseconds moment{100};  ///< within what a page may take to be shown

Error ends() { return {ErrorCode::busy, "plan", "The workroom is being closed."}; }

}  // namespace

PlanningBench::PlanningBench(Archive& archive) : archive_(archive), thread_([this] { run(); }) {}

PlanningBench::~PlanningBench() {
    static_cast<void>(end(std::chrono::milliseconds(0)));
    thread_.join();
}

void PlanningBench::want(const std::string& survey, Then then) {
    {
        const std::lock_guard lock(mutex_);
        if (!ending_) {
            if (under_way_ != survey && std::ranges::find(queue_, survey) == queue_.end()) {
                queue_.push_back(survey);
            }
            if (then) {
                waiting_[survey].push_back(std::move(then));
            }
            wake_.notify_one();
            return;
        }
    }
    if (then) {
        then(ends());
    }
}

void PlanningBench::changed(const std::string& survey) {
    {
        const std::lock_guard lock(mutex_);
        failed_.erase(survey);
        if (under_way_ == survey) {
            stop_.request_stop();
            queue_.push_front(survey);
            under_way_.clear();
            return;
        }
    }
    want(survey);
}

Result<std::optional<HousePlan>> PlanningBench::by_now(const RollsTable& table) {
    auto kept = kept_plan(archive_, table);
    if (!kept || *kept) {
        return kept;
    }
    auto done = std::make_shared<std::promise<Result<HousePlan>>>();
    auto coming = done->get_future();
    want(table.survey.id, [done](const Result<HousePlan>& result) { done->set_value(result); });
    if (coming.wait_for(moment) != std::future_status::ready) {
        return std::optional<HousePlan>();
    }
    auto plan = coming.get();
    return plan ? Result<std::optional<HousePlan>>(std::move(plan).value()) : plan.error();
}

bool PlanningBench::end(std::chrono::milliseconds time) {
    std::unique_lock archive_lock(archive_mutex_);
    std::unique_lock lock(mutex_);
    ending_ = true;
    stop_.request_stop();
    wake_.notify_one();
    archive_lock.unlock();
    return ended_.wait_for(lock, time, [this] { return done_; });
}

void PlanningBench::run() {
    std::unique_lock lock(mutex_);
    while (true) {
        wake_.wait(lock, [this] { return ending_ || !queue_.empty(); });
        if (ending_) {
            break;
        }
        const auto survey = queue_.front();
        queue_.pop_front();
        under_way_ = survey;
        stop_ = std::stop_source();
        const auto stop = stop_.get_token();
        lock.unlock();
        const bool has_rolls = rolls_came(survey);
        lock.lock();
        if (!has_rolls && under_way_ == survey && !waiting_.contains(survey)) {
            under_way_.clear();  // nobody asks, and nothing is there to plan: most of what comes in
            continue;
        }
        lock.unlock();
        const auto plan = plan_of(survey, stop);
        lock.lock();
        if (under_way_ == survey && !ending_) {
            under_way_.clear();
            lock.unlock();
            answer(survey, plan);
            lock.lock();
        }
    }
    const auto waiting = std::move(waiting_);
    lock.unlock();
    for (const auto& [survey, all] : waiting) {
        std::ranges::for_each(all, [](const Then& then) { then(ends()); });
    }
    lock.lock();
    done_ = true;
    ended_.notify_all();
}

bool PlanningBench::rolls_came(const std::string& survey) {
    const std::lock_guard archive_lock(archive_mutex_);
    {
        const std::lock_guard lock(mutex_);
        if (ending_) {
            return true;
        }
    }
    const auto versions = RollsShelf(archive_).versions(survey);
    return !versions || !versions->empty();
}

Result<HousePlan> PlanningBench::plan_of(const std::string& survey, const std::stop_token& stop) {
    std::optional<RollsTable> table;
    const auto fails = [&](Error error) {
        const std::lock_guard lock(mutex_);
        if (table && error.code != ErrorCode::busy) {
            failed_.insert_or_assign(survey, std::pair(table->basis, error));
        }
        return error;
    };
    try {
        if (auto known = look_up(survey, table)) {
            return std::move(*known);
        }
        auto plan = plan_house(table->survey, table->came, {}, stop);
        const std::lock_guard lock(archive_mutex_);
        if (stop.stop_requested()) {
            return ends();
        }
        const auto kept = keep_plan(archive_, *table, plan);
        return kept ? Result<HousePlan>(std::move(plan)) : fails(kept.error());
    } catch (const std::exception& thrown) {
        return fails({ErrorCode::io, "plan", thrown.what()});
    }
}

std::optional<Result<HousePlan>> PlanningBench::look_up(const std::string& survey, std::optional<RollsTable>& table) {
    const std::lock_guard archive_lock(archive_mutex_);
    {
        const std::lock_guard lock(mutex_);
        if (ending_) {
            return ends();
        }
    }
    auto found = lay_out_rolls(archive_, survey);
    if (!found) {
        return found.error();
    }
    if (!*found) {
        return Error{ErrorCode::missing, "plan", "The survey isn’t here."};
    }
    table = std::move(**found);
    auto kept = kept_plan(archive_, *table);
    if (!kept || *kept) {
        return kept ? Result<HousePlan>(std::move(**kept)) : kept.error();
    }
    const std::lock_guard lock(mutex_);
    const auto failed = failed_.find(survey);
    return failed != failed_.end() && failed->second.first == table->basis
               ? std::optional<Result<HousePlan>>(failed->second.second)
               : std::nullopt;
}

void PlanningBench::answer(const std::string& survey, const Result<HousePlan>& plan) {
    std::vector<Then> waiting;
    {
        const std::lock_guard lock(mutex_);
        waiting = std::move(waiting_[survey]);
        waiting_.erase(survey);
    }
    for (const Then& then : waiting) {
        then(plan);
    }
}

}  // namespace truehang::workroom
