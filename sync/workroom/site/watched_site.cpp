// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/watched_site.h"

#include "protocol/paths.h"
#include "workroom/site/replies.h"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <fstream>
#include <utility>

namespace truehang::workroom {

using http::Admission;
using http::Request;
using http::RequestHead;
using http::Response;
using Kind = sync::Place::Kind;

namespace {

constexpr std::string_view ready_path = "/ready";
constexpr std::string_view metrics_path = "/metrics";
constexpr std::string_view arrivals_path = "/arrivals";  ///< held back on purpose: its times are no page's
constexpr std::array<std::string_view, 6> usual_methods{"GET", "HEAD", "PUT", "POST", "PATCH", "DELETE"};
constexpr std::chrono::seconds ready_holds{1};  ///< a stranger who asks all the time doesn’t make us write all the time

std::string_view word_of(Kind kind) {
    switch (kind) {
        case Kind::pair:
            return "pair";
        case Kind::health:
            return "health";
        case Kind::revision:
            return "revision";
        case Kind::receipt:
            return "receipt";
        case Kind::figures:
            return "figures";
        case Kind::photo:
            return "photo";
        case Kind::upload:
            return "upload";
        case Kind::rules:
            return "rules";
        case Kind::changes:
            return "changes";
        case Kind::marks:
            return "marks";
        case Kind::all_questions:
        case Kind::questions:
            return "questions";
        case Kind::answer:
            return "answer";
    }
    return "page";
}

/// A program on this machine itself, not one that a proxy here speaks for.
bool is_from_here(const RequestHead& head) { return head.from_this_machine && !came_through_proxy(head); }

std::string sample(std::string_view name, std::string_view help, std::string_view type, double value) {
    return fmt::format("# HELP {0} {1}\n# TYPE {0} {2}\n{0} {3}\n", name, help, type, value);
}

/// proc(5): the second number of /proc/self/statm is the pages that are in memory.
double resident_bytes() {
    std::ifstream file("/proc/self/statm");
    double all = 0.0;
    double resident = 0.0;
    file >> all >> resident;
    return resident * static_cast<double>(::sysconf(_SC_PAGESIZE));
}

}  // namespace

WatchedSite::WatchedSite(http::Site& site, Archive& archive, Now now, Log log)
    : site_(site), archive_(archive), now_(std::move(now)), log_(std::move(log)) {}

WatchedSite::Asked WatchedSite::asked_of(const RequestHead& head) const {
    const auto place = sync::read_path(head.path);
    const bool usual = std::find(usual_methods.begin(), usual_methods.end(), head.method) != usual_methods.end();
    const auto* what = head.path == arrivals_path ? "arrivals" : "page";
    return {usual ? head.method : "other", std::string(place ? word_of(place->kind) : what),
            head.content_length.value_or(0), now_()};
}

Admission WatchedSite::admit(const RequestHead& head) {
    auto admission = site_.admit(head);
    if (admission.refusal) {
        note(asked_of(head), admission.refusal->status);
    }
    return admission;
}

void WatchedSite::answer(Request request, Respond respond) {
    const auto& head = request.head;
    const bool read = head.method == "GET" || head.method == "HEAD";
    if (read && head.path == ready_path) {
        return respond(ready());
    }
    if (read && head.path == metrics_path && is_from_here(head)) {
        Response response;
        response.headers = {{"Content-Type", "text/plain; version=0.0.4; charset=utf-8"}};
        response.body = metrics();
        return respond(std::move(response));
    }
    const auto asked = asked_of(head);
    site_.answer(std::move(request), [this, asked, respond = std::move(respond)](Response response) {
        note(asked, response.status);
        respond(std::move(response));
    });
}

Response WatchedSite::refusal(int status, std::string_view text) {
    note({"other", "unread", 0, now_()}, status);
    return site_.refusal(status, text);
}

void WatchedSite::note(const Asked& asked, int status) {
    const double seconds = std::chrono::duration<double>(now_() - asked.at).count();
    const std::lock_guard lock(mutex_);
    ++answers_[{asked.what, asked.method, status}];
    auto& times = times_[asked.what];
    ++times.count;
    times.seconds += seconds;
    for (std::size_t i = 0; i < ends.size(); ++i) {
        times.up_to.at(i) += seconds <= ends.at(i) ? 1 : 0;
    }
    bytes_ += asked.bytes;
    if (log_) {
        log_(fmt::format(R"({{"time":"{}","method":"{}","what":"{}","status":{},"ms":{:.1f},"bytes":{}}})",
                         sync::write_time(archive_.clock()()), asked.method, asked.what, status, seconds * 1000.0,
                         asked.bytes));
    }
}

Response WatchedSite::ready() {
    // While one looks, which may take as long as a database is silent, the others hear what was found last.
    const std::unique_lock lock(ready_mutex_, std::try_to_lock);
    const auto now = now_();
    if (lock && (!looked_ || now - looked_at_ >= ready_holds)) {
        is_ready_ = archive_.database().try_writing().ok();
        looked_ = true;
        looked_at_ = now;
    }
    return is_ready_ ? json_reply(200, R"({"status": "ready"})")
                     : problem_reply(sync::ProblemKind::busy, "The records take nothing just now. Try again.");
}

std::string WatchedSite::metrics() {
    const auto traffic = archive_.database().traffic();
    std::string text =
        sample("process_resident_memory_bytes", "Memory that the receiver holds.", "gauge", resident_bytes());
    text += sample("truehang_commits_total", "Transactions that were committed.", "counter",
                   static_cast<double>(traffic.commits));
    text += sample("truehang_writes_total", "Writes that were asked of the records.", "counter",
                   static_cast<double>(traffic.writes));
    text += sample("truehang_writes_waiting", "Writes that wait for the records now.", "gauge",
                   static_cast<double>(traffic.waiting));
    const std::lock_guard lock(mutex_);
    text += sample("truehang_received_bytes_total", "Bytes of bodies that were announced.", "counter",
                   static_cast<double>(bytes_));
    text += "# HELP truehang_answers_total Requests that were answered.\n# TYPE truehang_answers_total counter\n";
    for (const auto& [of, count] : answers_) {
        const auto& [what, method, status] = of;
        text += fmt::format("truehang_answers_total{{what=\"{}\",method=\"{}\",status=\"{}\"}} {}\n", what, method,
                            status, count);
    }
    text +=
        "# HELP truehang_answer_seconds From the whole request to its answer.\n"
        "# TYPE truehang_answer_seconds histogram\n";
    for (const auto& [what, times] : times_) {
        for (std::size_t i = 0; i < ends.size(); ++i) {
            text += fmt::format("truehang_answer_seconds_bucket{{what=\"{}\",le=\"{}\"}} {}\n", what, ends.at(i),
                                times.up_to.at(i));
        }
        text += fmt::format(
            "truehang_answer_seconds_bucket{{what=\"{0}\",le=\"+Inf\"}} {1}\n"
            "truehang_answer_seconds_sum{{what=\"{0}\"}} {2}\ntruehang_answer_seconds_count{{what=\"{0}\"}} {1}\n",
            what, times.count, times.seconds);
    }
    return text;
}

}  // namespace truehang::workroom
