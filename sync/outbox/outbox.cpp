// SPDX-License-Identifier: Apache-2.0
#include "outbox/outbox.h"

#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/paths.h"

#include <algorithm>
#include <tuple>

namespace truehang::sync {

namespace {

/// How often an item may be refused in a way that a broken wire can cause before it counts as refused.
constexpr int suspect_limit = 3;
/// How many answers in a row may leave an upload where it stood before it waits as other failures do.
constexpr int stall_limit = 4;

/// A survey goes before a photo that failed as often; what failed less goes first, so that no item starves another.
int rank(const Item& item) { return item.attempts + (item.kind == ItemKind::photo ? 1 : 0); }

std::string media_type_of(const Item& item) {
    if (item.kind != ItemKind::photo) {
        return std::string(json_type);
    }
    return item.media_type.empty() ? "application/octet-stream" : item.media_type;
}

std::string path_of(const Item& item) {
    return item.kind == ItemKind::survey   ? revision_path(item.survey, item.revision)
           : item.kind == ItemKind::answer ? answer_path(item.survey, item.question, item.answer)
                                           : photo_path(item.sha256);
}

std::string why_failed(WireFailure failure) {
    return failure == WireFailure::not_reached
               ? "The workroom can’t be reached. Everything is kept here and goes when it can."
           : failure == WireFailure::not_trusted
               ? "The workroom’s certificate isn’t one this device trusts. Nothing was sent."
               : "The connection to the workroom broke off.";
}

bool before(const Item& a, const Item& b) {
    return std::tuple(rank(a), a.kind, a.not_before) < std::tuple(rank(b), b.kind, b.not_before);
}

}  // namespace

Outbox::Outbox(OutboxShelf& shelf, Clock clock, Random random, Delays delays, Pieces pieces)
    : shelf_(shelf), clock_(std::move(clock)), random_(std::move(random)), delays_(delays), pieces_(pieces) {
    unpaired();
}

void Outbox::paired() {
    link_is_well();
    if (inbox_ != nullptr) {
        inbox_->forget();
    }
    for (auto& [key, known] : known_) {  // it may be another workroom
        known.whole = false;
        known.offset.reset();
        known.furthest = 0;
    }
}

void Outbox::link_is_well() {
    link_ = {Link::State::quiet, std::nullopt, ""};
    link_failures_ = 0;
}

void Outbox::unpaired() { link_ = {Link::State::not_paired, std::nullopt, "No workroom yet. Everything stays here."}; }

std::vector<Item> Outbox::pending() {
    std::vector<Item> items;
    std::map<std::string, Known> still_known;
    for (auto& item : shelf_.pending()) {
        const auto known = known_.find(item.key);
        if (known != known_.end()) {
            still_known.insert(*known);
            if (known->second.settled) {
                continue;
            }
            item.attempts = std::max(item.attempts, known->second.attempts);
            item.not_before = std::max(item.not_before, known->second.not_before);
        }
        items.push_back(std::move(item));
    }
    if (under_way_ && known_.contains(under_way_->item.key)) {
        still_known.insert(*known_.find(under_way_->item.key));
    }
    known_ = std::move(still_known);
    return items;
}

bool Outbox::due(const Item& item, Time now) const {
    const auto known = known_.find(item.key);
    const bool lifted = known != known_.end() && known->second.delay_lifted;
    // A time further off than any delay can only mean that the clock was set back.
    return lifted || item.not_before <= now || item.not_before > now + delays_.item_cap;
}

bool Outbox::link_waits(Time now) const {
    const auto longest = std::max(delays_.link_cap, delays_.retry_after_cap);
    return link_.again_at && *link_.again_at > now && *link_.again_at <= now + longest;
}

Step Outbox::next() {
    Step step;
    if (under_way_ || asking_ || link_.state == Link::State::not_paired || link_.state == Link::State::pair_again) {
        return step;
    }
    const Time now = clock_();
    const auto items = pending();
    if (items.empty() && inbox_ == nullptr) {
        return step;
    }
    if (link_waits(now)) {
        step.wake_at = link_.again_at;
        return step;
    }
    const Item* chosen = nullptr;
    for (const auto& item : items) {
        if (!due(item, now)) {
            step.wake_at = std::min(step.wake_at.value_or(item.not_before), item.not_before);
        } else if (chosen == nullptr || before(item, *chosen)) {
            chosen = &item;
        }
    }
    if (chosen == nullptr || chosen->kind == ItemKind::photo) {
        step.request = asked_for(now, chosen == nullptr);
    }
    if (!step.request && chosen != nullptr) {
        step.request = request_for(*chosen);
    }
    if (step.request) {
        step.wake_at.reset();
    } else if (inbox_ != nullptr) {
        step.wake_at = std::min(step.wake_at.value_or(inbox_->wake_at()), inbox_->wake_at());
    }
    return step;
}

std::optional<Request> Outbox::asked_for(Time now, bool photos) {
    auto request = inbox_ != nullptr ? inbox_->next(now) : std::nullopt;
    if (!request && inbox_ != nullptr && photos) {
        request = inbox_->next_photo(now);
    }
    if (request) {
        request->ticket = ++last_ticket_;
        asking_ = request->ticket;
    }
    return request;
}

/// What was asked for concerns no item: only the way to the workroom may stand differently.
void Outbox::act_on_coming(const Meaning& meaning) {
    switch (meaning.kind) {
        case Meaning::Kind::wait:
            return link_asked_to_wait(meaning);
        case Meaning::Kind::pair_again:
            link_ = {Link::State::pair_again, std::nullopt, meaning.why};
            return;
        case Meaning::Kind::confirmed:
            return link_is_well();
        default:  // whatever else was said holds nothing up that is to be sent
            return;
    }
}

bool Outbox::in_pieces(const Item& item) const {
    const auto known = known_.find(item.key);
    return item.kind == ItemKind::photo && item.bytes > pieces_.above &&
           (known == known_.end() || !known->second.whole);
}

Request Outbox::upload_request_for(const Item& item, Way& way) const {
    const auto known = known_.find(item.key);
    if (known != known_.end() && known->second.ask_first) {
        way = Way::ask_upload;
        return question_about(item);
    }
    if (known != known_.end() && known->second.offset) {
        way = Way::send_piece;
        return piece_of(item, *known->second.offset, pieces_.piece);
    }
    way = Way::begin_upload;
    return beginning_of(item);
}

Request Outbox::request_for(const Item& item) {
    const auto known = known_.find(item.key);
    const bool survey = item.kind == ItemKind::survey;
    // An answer that may be there is sent once more: the same twice is the same, and small.
    const bool asks = known != known_.end() && known->second.ask_first && item.kind != ItemKind::answer;
    Way way = asks ? Way::ask : Way::send;
    Request request;
    if (in_pieces(item)) {
        request = upload_request_for(item, way);
    } else if (known != known_.end() && known->second.gathering) {
        way = Way::fetch;
        request.headers = {{"Accept", std::string(json_type)}};
        request.path = revision_path(item.survey, known->second.gathering->revision());
    } else if (way == Way::ask) {
        request.headers = {{"Accept", std::string(json_type)}};
        request.method = survey ? Method::get : Method::head;
        request.path = survey ? receipt_path(item.survey) : photo_path(item.sha256);
    } else {
        request.method = Method::put;
        request.path = path_of(item);
        request.headers = {{"Accept", std::string(json_type)}, {"Content-Type", media_type_of(item)}};
        if (const auto digest = sha256_from_hex(item.sha256)) {
            request.headers.emplace_back(std::string(content_digest_header), digest_field(*digest));
        }
        request.body_of = item;
    }
    request.ticket = ++last_ticket_;
    under_way_ = UnderWay{request.ticket, item, way, request.range.value_or(ByteRange{})};
    return request;
}

void Outbox::answered(long long ticket, const Answer& answer) {
    if (asking_ == ticket) {
        asking_.reset();
        return act_on_coming(inbox_->answered(answer, clock_()));
    }
    if (!under_way_ || under_way_->ticket != ticket) {
        return;
    }
    const UnderWay sent = *std::exchange(under_way_, std::nullopt);
    switch (sent.way) {
        case Way::send:
            return act_on(sent, meaning_of_send(sent.item, answer));
        case Way::ask:
            return act_on(sent, meaning_of_ask(sent.item, answer));
        case Way::fetch:
            return take_document(sent, meaning_of_fetch(sent.item, known_[sent.item.key].gathering->sha256(), answer));
        case Way::begin_upload:
            return act_on_upload(sent, meaning_of_beginning(sent.item, answer));
        case Way::ask_upload:
            return act_on_upload(sent, meaning_of_question(sent.item, answer));
        case Way::send_piece:
            return act_on_upload(sent, meaning_of_piece(sent.item, sent.range, answer));
    }
}

void Outbox::act_on_upload(const UnderWay& sent, const UploadMeaning& meaning) {
    using Kind = UploadMeaning::Kind;
    if (meaning.kind == Kind::other) {
        return act_on(sent, meaning.meaning);
    }
    auto& known = known_[sent.item.key];
    link_is_well();
    const bool forward = meaning.kind == Kind::stands && meaning.offset > known.furthest;
    known.furthest = forward ? meaning.offset : known.furthest;
    known.stalls = forward ? 0 : known.stalls + 1;
    known.forgiven = forward ? sent.item.attempts : known.forgiven;
    known.ask_first = meaning.kind == Kind::ask;
    known.offset = meaning.kind == Kind::stands ? std::optional(meaning.offset) : std::nullopt;
    known.whole = meaning.kind == Kind::whole;
    known.delay_lifted = true;
    if (!meaning.meaning.why.empty()) {
        return postpone(sent.item, meaning.meaning.why);
    }
    if (known.stalls > stall_limit) {
        known.stalls = 0;
        known.offset.reset();
        postpone(sent.item, "The workroom doesn’t take the photo further. It will be tried again.");
    }
}

void Outbox::act_on(const UnderWay& sent, const Meaning& meaning) {
    auto& known = known_[sent.item.key];
    if (meaning.kind != Meaning::Kind::nonsense && meaning.kind != Meaning::Kind::wait) {
        link_is_well();
        known.ask_first = false;
    }
    switch (meaning.kind) {
        case Meaning::Kind::confirmed:
            return confirm(sent.item, meaning.receipt);
        case Meaning::Kind::stale:
            known.gathering = Gathering{meaning.there, std::nullopt};
            known.delay_lifted = true;
            return;
        case Meaning::Kind::fetched:
        case Meaning::Kind::absent:
            known.delay_lifted = true;
            return;
        case Meaning::Kind::refused:
            return refuse(sent.item, meaning.refusal);
        case Meaning::Kind::suspect:
            return sent.item.attempts - known.forgiven + 1 < suspect_limit ? postpone(sent.item, meaning.why)
                                                                           : refuse(sent.item, meaning.refusal);
        case Meaning::Kind::item_failed:
            return postpone(sent.item, meaning.why);
        case Meaning::Kind::wait:
            return link_asked_to_wait(meaning);
        case Meaning::Kind::nonsense:
            postpone(sent.item, meaning.why);
            return link_failed(meaning.why);
        case Meaning::Kind::pair_again:
            link_ = {Link::State::pair_again, std::nullopt, meaning.why};
            return;
    }
}

void Outbox::take_document(const UnderWay& sent, const Meaning& meaning) {
    auto& known = known_[sent.item.key];
    if (meaning.kind == Meaning::Kind::absent) {  // what was there has gone: begin again
        known.gathering.reset();
        link_is_well();
        return postpone(sent.item, "The workroom doesn’t have it any more. It will be tried again.");
    }
    act_on(sent, meaning);
    if (meaning.kind != Meaning::Kind::fetched) {
        return;
    }
    const auto& here = sent.item.parents_here;
    const WhatIsThere there = known.gathering->there;
    const bool common_here = std::ranges::find(here, there.common_sha256) != here.end();
    if (!known.gathering->theirs && !common_here && there.common_revision > 0 &&
        there.common_sha256 != there.newest.sha256) {
        known.gathering->theirs = meaning.document;
        return;
    }
    const bool common_now = known.gathering->theirs.has_value();
    const std::string theirs = common_now ? *known.gathering->theirs : meaning.document;
    const std::string common = common_now ? meaning.document : there.common_sha256 == there.newest.sha256 ? theirs : "";
    known.gathering.reset();
    if (common.empty() && !common_here) {
        return refuse(sent.item,
                      {"Somebody else sent this visit meanwhile, and what both were made from isn’t here any more.",
                       "Look at both, there and here. Nothing of either is lost; they can’t be put together by "
                       "themselves."});
    }
    known.settled = true;
    known.state = {Standing::waiting, meaning.why, "", std::nullopt};
    shelf_.bring_together(sent.item, there, theirs, common);
}

void Outbox::failed(long long ticket, WireFailure failure) {
    if (asking_ == ticket) {
        asking_.reset();
        failure == WireFailure::broken_off ? inbox_->broke_off(clock_()) : inbox_->failed();
        return link_failed(why_failed(failure));
    }
    if (!under_way_ || under_way_->ticket != ticket) {
        return;
    }
    const UnderWay sent = *std::exchange(under_way_, std::nullopt);
    switch (failure) {
        case WireFailure::not_reached:
        case WireFailure::not_trusted:
            return link_failed(why_failed(failure));
        case WireFailure::broken_off:
            known_[sent.item.key].ask_first = sent.way != Way::fetch;
            postpone(sent.item, "The connection broke off. The workroom will be asked what it has.");
            return link_failed(why_failed(failure));
        case WireFailure::no_bytes:
            return postpone(sent.item, "It couldn’t be read from this device’s storage.");
    }
}

void Outbox::called_off(long long ticket) {
    if (asking_ == ticket) {
        asking_.reset();
        inbox_->failed();
    }
    if (under_way_ && under_way_->ticket == ticket) {
        known_[under_way_->item.key].ask_first = under_way_->way != Way::fetch;
        under_way_.reset();
    }
}

void Outbox::confirm(const Item& item, const Receipt& receipt) {
    auto& known = known_[item.key];
    known.settled = true;
    known.state = {Standing::there, "", "", std::nullopt};
    shelf_.confirm(item, receipt);
}

void Outbox::refuse(const Item& item, const Refusal& refusal) {
    auto& known = known_[item.key];
    known.settled = true;
    known.state = {Standing::refused, refusal.why, refusal.what_to_do, std::nullopt};
    shelf_.refuse(item, refusal);
}

void Outbox::postpone(const Item& item, const std::string& why) {
    auto& known = known_[item.key];
    known.attempts = item.attempts + 1;
    known.not_before = clock_() + delay(known.attempts - known.forgiven, delays_.item_cap);
    known.delay_lifted = false;
    known.state = {Standing::waiting, why, "", known.not_before};
    shelf_.postpone(item, known.attempts, known.not_before, why);
}

std::chrono::milliseconds Outbox::delay(int failures, std::chrono::milliseconds cap) {
    auto whole = std::min(delays_.first, cap);
    for (int i = 1; i < failures && whole < cap; ++i) {
        whole = std::min(whole * 2, cap);
    }
    const auto half = whole.count() / 2;
    const auto share = static_cast<long long>(random_() % static_cast<std::uint64_t>(whole.count() - half + 1));
    return std::chrono::milliseconds(half + share);
}

void Outbox::link_failed(const std::string& why) {
    link_ = {Link::State::unreachable, clock_() + delay(++link_failures_, delays_.link_cap), why};
}

void Outbox::link_asked_to_wait(const Meaning& meaning) {
    const auto own = delay(++link_failures_, delays_.link_cap);
    const auto asked = std::min(meaning.retry_after.value_or(own), delays_.retry_after_cap);
    link_ = {Link::State::asked_to_wait, clock_() + std::max(own, asked), meaning.why};
}

void Outbox::try_now() {
    for (const auto& item : pending()) {
        known_[item.key].delay_lifted = true;
    }
    if (inbox_ != nullptr) {
        inbox_->ask_now();
    }
    if (link_.state == Link::State::unreachable) {
        link_.again_at.reset();
    }
}

void Outbox::try_later(const Item& item, const std::string& why) {
    known_[item.key].settled = false;
    postpone(item, why);
}

void Outbox::take_up_again(const std::string& key) { known_.erase(key); }

Link Outbox::link() const { return link_; }

ItemState Outbox::state_of(const Item& item) const {
    const auto known = known_.find(item.key);
    const long long there = known != known_.end() ? known->second.offset.value_or(0) : 0;
    if (under_way_ && under_way_->item.key == item.key) {
        return {Standing::on_its_way, "", "", std::nullopt, there};
    }
    ItemState state = known != known_.end() ? known->second.state : ItemState{};
    state.bytes_there = there;
    if (state.standing == Standing::waiting && link_.again_at) {
        state.again_at = std::max(state.again_at.value_or(*link_.again_at), *link_.again_at);
    }
    return state;
}

}  // namespace truehang::sync
