// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/arrivals_desk.h"

#include "workroom/archive/arrivals.h"
#include "workroom/site/replies.h"
#include "workroom/site/rules_page.h"

#include <fmt/format.h>

#include <utility>

namespace truehang::workroom {

namespace {

constexpr int asks_again_ms = 1'000;
constexpr int asks_later_ms = 30'000;

/// Nothing to tell: the browser asks again after `again_ms`.
http::Response nothing_new(int again_ms) { return events_reply(fmt::format("retry: {}\n\n", again_ms)); }

http::Response told(const Arrivals& arrivals) {
    return events_reply(
        fmt::format("retry: {}\nid: {}\nevent: arrived\ndata: {}\n\n", asks_again_ms, arrivals.next, arrivals.says));
}

}  // namespace

ArrivalsDesk::ArrivalsDesk(Archive& archive, Times times)
    : archive_(archive), times_(times), thread_([this] { run(); }) {}

ArrivalsDesk::~ArrivalsDesk() { end(); }

void ArrivalsDesk::answer(const http::Request& request, http::Site::Respond respond) {
    auto fields = read_form(request.head.query);
    if (fields["since"].empty()) {
        return respond(problem_reply(sync::ProblemKind::malformed_request,
                                     "since is the place in the order of arrival after which to tell."));
    }
    const auto heard = request.head.header("last-event-id");
    Waiting waiting{fields["since"], fields["survey"], std::string(heard), Clock::now() + times_.held,
                    std::move(respond)};
    {
        const std::lock_guard lock(mutex_);
        if (!ending_ && held_ < most_held) {
            ++held_;
            come_.push_back(std::move(waiting));
            wake_.notify_one();
            return;
        }
    }
    waiting.respond(nothing_new(asks_later_ms));
}

void ArrivalsDesk::let_go() {
    const std::lock_guard lock(mutex_);
    ending_ = true;
    wake_.notify_one();
}

void ArrivalsDesk::end() {
    let_go();
    if (thread_.joinable()) {
        thread_.join();
    }
}

void ArrivalsDesk::run() {
    std::list<Waiting> waiting;
    std::unique_lock lock(mutex_);
    for (bool all = false; !all;) {
        const auto is_wanted = [this] { return ending_ || !come_.empty(); };
        if (waiting.empty()) {
            wake_.wait(lock, is_wanted);
        } else {
            wake_.wait_for(lock, times_.look, is_wanted);
        }
        waiting.splice(waiting.end(), come_);
        all = ending_;
        lock.unlock();
        look_for(waiting, all);
        lock.lock();
        held_ = waiting.size() + come_.size();
    }
}

void ArrivalsDesk::look_for(std::list<Waiting>& waiting, bool all) {
    const auto newest = all ? Result<std::string>("") : newest_cursor(archive_);
    const auto now = Clock::now();
    for (auto one = waiting.begin(); one != waiting.end();) {
        auto answer = all || now >= one->until ? std::optional(nothing_new(asks_again_ms)) : std::nullopt;
        if (!all && newest && one->heard != *newest) {
            const auto fresh = arrivals_since(archive_, one->heard.empty() ? one->since : one->heard, one->survey);
            const auto all_of_it = arrivals_since(archive_, one->since, one->survey);
            if (fresh && all_of_it && !fresh->says.empty() && !all_of_it->says.empty()) {
                answer = told(*all_of_it);
            } else if (fresh) {
                one->heard = fresh->next;
            }
        }
        if (answer) {
            one->respond(std::move(*answer));
        }
        one = answer ? waiting.erase(one) : std::next(one);
    }
}

}  // namespace truehang::workroom
