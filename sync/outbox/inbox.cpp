// SPDX-License-Identifier: Apache-2.0
#include "outbox/inbox.h"

#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/paths.h"
#include "protocol/problem.h"

#include <fmt/format.h>

namespace truehang::sync {
namespace {

Meaning done() {
    Meaning meaning;
    meaning.kind = Meaning::Kind::confirmed;
    return meaning;
}

bool is_problem(const Answer& answer, ProblemKind kind) {
    const auto problem = read_problem(answer.content);
    return problem && problem->kind == kind && status_of(kind) == answer.status;
}

/// How long one thing waits that failed by itself.
constexpr std::chrono::minutes pause{5};

}  // namespace

bool Inbox::is_due(const std::string& key, Time now) const {
    const auto found = not_before_.find(key);
    // A time further off than any pause can only mean that the clock was set back.
    return found == not_before_.end() || found->second <= now || found->second > now + asking_.photo_again;
}

bool Inbox::Feed::is_due(Time now, std::chrono::milliseconds every) const {
    return ask_at <= now || ask_at > now + every;
}

void Inbox::Feed::not_noted(Time again_at) {
    cursor.reset();
    ask_at = again_at;
}

void Inbox::ask_now() {
    changes_.ask_at = Time{};
    questions_.ask_at = Time{};
    not_before_.clear();
}

void Inbox::forget() {
    changes_.cursor.reset();
    questions_.cursor.reset();
    taken_.clear();
    ask_now();
}

Request Inbox::ask(Feed& feed, UnderWay::What what, std::string_view path, const std::string& shelf_cursor) {
    under_way_ = UnderWay{what, {}, {}};
    feed.asked_from = feed.cursor ? *feed.cursor : shelf_cursor;
    Request request;
    request.headers = {{"Accept", std::string(json_type)}};
    request.path = fmt::format("{}?limit={}", path, asking_.page);
    if (!feed.asked_from.empty()) {
        request.path += "&after=" + percent_encode(feed.asked_from);
    }
    return request;
}

std::optional<Request> Inbox::next(Time now) {
    for (const Coming& one : shelf_.coming()) {
        if (!taken_.contains(one.receipt.sha256) && is_due(one.receipt.sha256, now)) {
            under_way_ = UnderWay{UnderWay::What::document, one, {}};
            Request request;
            request.headers = {{"Accept", std::string(json_type)}};
            request.path = revision_path(one.receipt.id, one.receipt.revision);
            return request;
        }
    }
    if (changes_.is_due(now, asking_.every)) {
        return ask(changes_, UnderWay::What::changes, changes_path, shelf_.cursor());
    }
    if (questions_.is_due(now, asking_.every)) {
        return ask(questions_, UnderWay::What::questions, all_questions_path, shelf_.questions_cursor());
    }
    return std::nullopt;
}

std::optional<Request> Inbox::next_photo(Time now) {
    for (const std::string& photo : shelf_.photos_elsewhere()) {
        if (!taken_.contains(photo) && is_due(photo, now)) {
            UnderWay asked;
            asked.what = UnderWay::What::photo;
            asked.photo = photo;
            under_way_ = std::move(asked);
            Request request;
            request.path = photo_path(photo);
            request.answer_most = photo_limit;
            return request;
        }
    }
    return std::nullopt;
}

Meaning Inbox::answered(const Answer& answer, Time now) {
    if (!under_way_) {
        return done();
    }
    const UnderWay asked = *std::exchange(under_way_, std::nullopt);
    switch (asked.what) {
        case UnderWay::What::changes:
            return take_changes(answer, now);
        case UnderWay::What::questions:
            return take_questions(answer, now);
        case UnderWay::What::document:
            return take_document(asked.coming, answer, now);
        case UnderWay::What::photo:
            break;
    }
    return take_photo(asked.photo, answer, now);
}

std::optional<Meaning> Inbox::trouble_with(Feed& feed, const Answer& answer, Time now) const {
    feed.ask_at = now + asking_.every;
    if (is_problem(answer, ProblemKind::unknown_cursor)) {  // the workroom’s records were brought back from a copy
        feed.cursor = "";
        feed.ask_at = Time{};
        return done();
    }
    return answer.status == 200 ? std::nullopt : std::optional(meaning_of_trouble({}, answer));
}

Meaning Inbox::take_changes(const Answer& answer, Time now) {
    if (auto trouble = trouble_with(changes_, answer, now)) {
        return std::move(*trouble);
    }
    const auto changes = read_changes(answer.content);
    if (!changes) {
        return meaning_of_nonsense(answer);
    }
    changes_.cursor = changes->next;
    if (changes->more) {
        changes_.ask_at = Time{};
    }
    shelf_.note(*changes, changes_.asked_from);
    return done();
}

Meaning Inbox::take_questions(const Answer& answer, Time now) {
    if (auto trouble = trouble_with(questions_, answer, now)) {
        return std::move(*trouble);
    }
    const auto came = read_entries(answer.content);
    if (!came) {
        return meaning_of_nonsense(answer);
    }
    questions_.cursor = came->next;
    if (came->more) {
        questions_.ask_at = Time{};
    }
    shelf_.note_questions(*came, questions_.asked_from);
    return done();
}

Meaning Inbox::take_document(const Coming& one, const Answer& answer, Time now) {
    if (answer.status == 200) {
        if (hex(sha256(answer.content)) != one.receipt.sha256) {
            later(one.receipt.sha256, now + pause);
            return meaning_of_nonsense(answer);
        }
        taken_.insert(one.receipt.sha256);
        shelf_.take(one, answer.content);
        return done();
    }
    if (is_problem(answer, ProblemKind::not_there) || is_problem(answer, ProblemKind::erased)) {
        taken_.insert(one.receipt.sha256);
        shelf_.pass_over(one);
        return done();
    }
    const Meaning meaning = meaning_of_trouble({}, answer);
    later(one.receipt.sha256, now + pause);
    return meaning;
}

Meaning Inbox::take_photo(const std::string& photo, const Answer& answer, Time now) {
    if (answer.status == 200) {
        if (hex(sha256(answer.content)) != photo) {
            later(photo, now + pause);
            return meaning_of_nonsense(answer);
        }
        taken_.insert(photo);
        shelf_.take_photo(photo, answer.content, std::string(answer.header("Content-Type").value_or("")));
        return done();
    }
    if (is_problem(answer, ProblemKind::not_there) || is_problem(answer, ProblemKind::erased)) {
        later(photo, now + asking_.photo_again);  // the other phone may still be sending it
        return done();
    }
    later(photo, now + pause);
    return meaning_of_trouble({}, answer);
}

void Inbox::try_later(const std::string& sha256, Time now) {
    taken_.erase(sha256);
    later(sha256, now + pause);
}

void Inbox::broke_off(Time now) {
    const auto asked = std::exchange(under_way_, std::nullopt);
    if (asked && asked->what == UnderWay::What::photo) {
        later(asked->photo, now + pause);
    } else if (asked && asked->what == UnderWay::What::document) {
        later(asked->coming.receipt.sha256, now + pause);
    }
}

}  // namespace truehang::sync
