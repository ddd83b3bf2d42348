// SPDX-License-Identifier: Apache-2.0
#include "outbox/outbox.h"

#include "simulated_workroom.h"

#include <gtest/gtest.h>

using namespace truehang;
using namespace truehang::sync;
using namespace truehang::sync::test;
using std::chrono::milliseconds;
using std::chrono::seconds;

namespace {

/// An outbox in simulated time whose jitter takes the longest delay.
struct Phone {
    Shelf shelf;
    Workroom workroom;
    Time now = start;
    Outbox outbox{shelf, [this] { return now; }, [] { return std::uint64_t{0}; }};

    Phone() { outbox.paired(); }
    Request sent() {
        auto step = outbox.next();
        EXPECT_TRUE(step.request);
        return step.request.value_or(Request{});
    }
    void deliver() {
        const auto request = sent();
        outbox.answered(request.ticket, workroom.receive(request));
    }
    Request answer_with(const Answer& answer) {
        auto request = sent();
        outbox.answered(request.ticket, answer);
        return request;
    }
};

}  // namespace

TEST(Outbox, sendsNothingBeforeItIsPaired) {
    Shelf shelf;
    shelf.items = {survey_item("a")};
    Outbox outbox(
        shelf, [] { return start; }, [] { return std::uint64_t{0}; });
    EXPECT_FALSE(outbox.next().request);
    EXPECT_EQ(outbox.link().state, Link::State::not_paired);
    outbox.paired();
    EXPECT_TRUE(outbox.next().request);
}

TEST(Outbox, sendsSurveysBeforePhotosAndKeepsTheReceipts) {
    Phone phone;
    phone.shelf.items = {photo_item("p"), survey_item("a"), survey_item("b")};
    EXPECT_EQ(phone.sent().path, "/surveys/a/revisions/1");
    EXPECT_EQ(phone.outbox.state_of(survey_item("a")).standing, Standing::on_its_way);
    EXPECT_EQ(phone.outbox.state_of(survey_item("b")).standing, Standing::waiting);
    EXPECT_FALSE(phone.outbox.next().request) << "one at a time";
    phone.outbox.answered(
        1, {201, {}, write_record(SurveyReceipt{"a", 1, survey_item("a").sha256, "2026-03-14T12:00:00Z"})});
    phone.deliver();
    phone.deliver();
    EXPECT_TRUE(phone.shelf.items.empty());
    EXPECT_EQ(phone.shelf.confirmed.at(survey_item("a").key).received_at, "2026-03-14T12:00:00Z");
    EXPECT_EQ(phone.shelf.confirmed.size(), 3U);
}

TEST(Outbox, aPutCarriesItsDigest) {
    Phone phone;
    phone.shelf.items = {survey_item("a")};
    const auto request = phone.sent();
    ASSERT_TRUE(request.body_of);
    const auto digest = sha256_from_hex(request.body_of->sha256);
    ASSERT_TRUE(digest);
    EXPECT_NE(
        std::find(request.headers.begin(), request.headers.end(), Header{"Content-Digest", digest_field(*digest)}),
        request.headers.end());
    EXPECT_TRUE(request.with_token);
}

TEST(Outbox, aReceiptForSomethingElseSettlesNothing) {
    Phone phone;
    phone.shelf.items = {survey_item("a")};
    phone.answer_with({201, {}, write_record(SurveyReceipt{"a", 2, survey_item("a").sha256, ""})});
    EXPECT_TRUE(phone.shelf.confirmed.empty());
    EXPECT_EQ(phone.shelf.items.size(), 1U);
    EXPECT_EQ(phone.outbox.link().state, Link::State::unreachable);
}

TEST(Outbox, aSignInPageOfANetworkIsNeitherConfirmationNorRefusal) {
    for (const int status : {200, 302, 401, 403, 404, 409, 413, 422, 511}) {
        Phone phone;
        phone.shelf.items = {survey_item("a")};
        phone.answer_with({status, {{"Content-Type", "text/html"}}, "<html>Welcome aboard</html>"});
        EXPECT_TRUE(phone.shelf.confirmed.empty() && phone.shelf.refused.empty()) << status;
        EXPECT_EQ(phone.shelf.items.size(), 1U) << status;
        EXPECT_NE(phone.outbox.link().state, Link::State::pair_again) << status;
        phone.now += seconds(3600);
        phone.deliver();
        EXPECT_EQ(phone.shelf.confirmed.size(), 1U) << status;
    }
}

TEST(Outbox, saysWhyAndWhatToDoWhenRefused) {
    Phone phone;
    phone.shelf.items = {survey_item("a"), survey_item("b")};
    phone.answer_with(problem_answer(ProblemKind::malformed_document, {{"/rooms/0/windows/1/shape", "is missing"}}));
    const auto& refusal = phone.shelf.refused.at(survey_item("a").key);
    EXPECT_NE(refusal.why.find("/rooms/0/windows/1/shape"), std::string::npos);
    EXPECT_FALSE(refusal.what_to_do.empty());
    phone.deliver();
    EXPECT_EQ(phone.shelf.confirmed.size(), 1U);
}

TEST(Outbox, pairsAgainWhenTheWorkroomDoesntKnowIt) {
    Phone phone;
    phone.shelf.items = {survey_item("a")};
    phone.answer_with(problem_answer(ProblemKind::unauthorised));
    EXPECT_EQ(phone.outbox.link().state, Link::State::pair_again);
    EXPECT_FALSE(phone.outbox.next().request);
    EXPECT_FALSE(phone.outbox.next().wake_at);
    phone.outbox.paired();
    phone.deliver();
    EXPECT_EQ(phone.shelf.confirmed.size(), 1U);
}

TEST(Outbox, asksFirstAfterAPutThatBrokeOff) {
    Phone phone;
    phone.shelf.items = {survey_item("a"), photo_item("p")};
    auto request = phone.sent();
    phone.workroom.receive(request);  // it arrived; the answer didn't
    phone.outbox.failed(request.ticket, WireFailure::broken_off);
    phone.now = *phone.outbox.next().wake_at;
    request = phone.sent();
    EXPECT_EQ(request.method, Method::get);
    EXPECT_EQ(request.path, "/surveys/a/receipt");
    phone.outbox.answered(request.ticket, phone.workroom.receive(request));
    EXPECT_EQ(phone.shelf.confirmed.count(survey_item("a").key), 1U);

    request = phone.sent();
    phone.outbox.failed(request.ticket, WireFailure::broken_off);  // this one never arrived
    phone.now = *phone.outbox.next().wake_at;
    request = phone.sent();
    EXPECT_EQ(request.method, Method::head);
    phone.outbox.answered(request.ticket, phone.workroom.receive(request));
    EXPECT_EQ(phone.sent().method, Method::put);
}

TEST(Outbox, obeysRetryAfterInSecondsAndAsADate) {
    Phone phone;
    phone.shelf.items = {survey_item("a")};
    auto busy = problem_answer(ProblemKind::busy);
    busy.headers.emplace_back("Retry-After", "120");
    phone.answer_with(busy);
    EXPECT_EQ(phone.outbox.next().wake_at, start + seconds(120));
    phone.outbox.try_now();
    EXPECT_FALSE(phone.outbox.next().request) << "asked to wait is asked to wait";
    phone.now = start + seconds(120);
    busy.headers = {{"date", "Sat, 14 Mar 2026 10:00:00 GMT"}, {"retry-after", "Sat, 14 Mar 2026 10:05:00 GMT"}};
    phone.answer_with(busy);
    EXPECT_EQ(phone.outbox.next().wake_at, start + seconds(420));
}

TEST(Outbox, aRetryAfterBeyondReasonIsCapped) {
    Phone phone;
    phone.shelf.items = {survey_item("a")};
    auto busy = problem_answer(ProblemKind::busy);
    busy.headers.emplace_back("Retry-After", "4000000000");
    phone.answer_with(busy);
    EXPECT_EQ(phone.outbox.next().wake_at, start + Delays{}.retry_after_cap);
}

TEST(Outbox, noNetworkIsAQuietStateThatEndsWhenItComesBack) {
    Phone phone;
    phone.shelf.items = {survey_item("a"), photo_item("p")};
    phone.outbox.failed(phone.sent().ticket, WireFailure::not_reached);
    EXPECT_EQ(phone.outbox.link().state, Link::State::unreachable);
    EXPECT_EQ(phone.outbox.state_of(survey_item("a")).standing, Standing::waiting);
    EXPECT_EQ(phone.shelf.items[0].attempts, 0) << "the item isn't at fault";
    EXPECT_FALSE(phone.outbox.next().request);
    phone.outbox.try_now();
    phone.deliver();
    phone.deliver();
    EXPECT_EQ(phone.shelf.confirmed.size(), 2U);
    EXPECT_EQ(phone.outbox.link().state, Link::State::quiet);
}

TEST(Outbox, aDamagedPhotoIsRefusedOnlyWhenItHappensAgainAndAgain) {
    Phone phone;
    phone.shelf.items = {photo_item("p")};
    for (int i = 0; i < 2; ++i) {
        phone.answer_with(problem_answer(ProblemKind::digest_mismatch));
        EXPECT_TRUE(phone.shelf.refused.empty());
        phone.now += seconds(3600);
    }
    phone.answer_with(problem_answer(ProblemKind::digest_mismatch));
    EXPECT_EQ(phone.shelf.refused.size(), 1U);
}

TEST(Outbox, aClockSetBackHoldsNothingUpForLong) {
    Phone phone;
    phone.shelf.items = {survey_item("a")};
    phone.answer_with(problem_answer(ProblemKind::internal));
    phone.now = start - std::chrono::hours(24 * 365);
    EXPECT_TRUE(phone.outbox.next().request);
}

TEST(Outbox, anAnswerThatCameTooLateIsIgnored) {
    Phone phone;
    phone.shelf.items = {survey_item("a")};
    const auto first = phone.sent();
    phone.outbox.called_off(first.ticket);
    phone.outbox.answered(first.ticket, phone.workroom.receive(first));
    EXPECT_TRUE(phone.shelf.confirmed.empty());
    EXPECT_EQ(phone.sent().method, Method::get) << "what became of it is asked";
}

// sync/protocol/README.md: `erased` is for good; a person is told.
TEST(Outbox, sendsNoMoreOfAVisitThatTheWorkroomErased) {
    Phone phone;
    phone.shelf.items = {survey_item("a")};
    phone.answer_with(problem_answer(ProblemKind::erased));
    EXPECT_FALSE(phone.outbox.next().request);
    ASSERT_EQ(phone.shelf.refused.size(), 1U);
    EXPECT_EQ(phone.shelf.refused.begin()->second.why, "The workroom erased this visit for good.");
}

TEST(Outbox, aRefusedItemCanBeTakenUpAgain) {
    Phone phone;
    phone.shelf.items = {survey_item("a")};
    phone.answer_with(problem_answer(ProblemKind::too_large));
    EXPECT_FALSE(phone.outbox.next().request);
    phone.shelf.items = {survey_item("a")};
    phone.outbox.take_up_again(survey_item("a").key);
    phone.deliver();
    EXPECT_EQ(phone.shelf.confirmed.size(), 1U);
}

TEST(Pairing, saysWhatWentWrong) {
    EXPECT_TRUE(read_pairing({200, {}, write_record(PairAnswer{"id.secret", "Harbour workroom"})}).ok());
    EXPECT_EQ(read_pairing(problem_answer(ProblemKind::wrong_code)).error().where, "code");
    EXPECT_EQ(read_pairing(problem_answer(ProblemKind::too_many_tries)).error().code, ErrorCode::busy);
    EXPECT_EQ(read_pairing({200, {}, "<html>"}).error().where, "address");
    EXPECT_FALSE(read_pairing({200, {}, write_record(PairAnswer{"", "x"})}).ok());
    const auto request = pairing_request({"7K2M-QX4D", "A phone"});
    EXPECT_FALSE(request.with_token);
    EXPECT_EQ(read_pair_request(request.content)->code, "7K2M-QX4D");
}
