// SPDX-License-Identifier: Apache-2.0
#include "outbox/inbox.h"

#include "outbox/outbox.h"
#include "protocol/digest.h"
#include "protocol/paths.h"
#include "protocol/problem.h"

#include <gtest/gtest.h>

// What the protocol's page says of asking what others sent, and that it holds nothing up that is to be sent.

using namespace truehang;
using namespace truehang::sync;

namespace {

constexpr Time begin = Time(std::chrono::milliseconds(1'773'483'600'000));

class Shelf : public OutboxShelf, public InboxShelf {
public:
    std::vector<Item> items;
    std::vector<Coming> comes;
    std::vector<std::string> lacking;
    std::string noted = "kept";
    std::string asked_until = "q1";
    std::vector<std::string> taken, passed, photos, asked;
    int notes = 0;
    bool full = false;  ///< nothing can be kept
    Inbox* inbox = nullptr;
    const Time* clock = nullptr;

    std::vector<Item> pending() override { return items; }
    void confirm(const Item&, const Receipt&) override { items.clear(); }
    void refuse(const Item&, const Refusal&) override { items.clear(); }
    void bring_together(const Item&, const WhatIsThere&, const std::string&, const std::string&) override {}
    void postpone(const Item&, int, Time, const std::string&) override {}

    std::string cursor() override { return noted; }
    std::vector<Coming> coming() override { return comes; }
    std::vector<std::string> photos_elsewhere() override { return lacking; }
    void note(const Changes& changes, const std::string& from) override {
        ++notes;
        if (full || !(from.empty() || from == noted)) {
            return inbox->not_noted(*clock);
        }
        noted = changes.next;
    }
    std::string questions_cursor() override { return asked_until; }
    void note_questions(const QuestionEntries& came, const std::string& from) override {
        if (full || !(from.empty() || from == asked_until)) {
            return inbox->questions_not_noted(*clock);
        }
        asked_until = came.next;
        for (const QuestionEntry& entry : came.entries) {
            asked.push_back(entry.question ? entry.question->words : entry.answer->answer.words);
        }
    }
    void take(const Coming&, const std::string& document) override { taken.push_back(document); }
    void pass_over(const Coming& one) override { passed.push_back(one.receipt.id); }
    void take_photo(const std::string&, const std::string& bytes, const std::string&) override {
        photos.push_back(bytes);
    }
};

class Asked : public testing::Test {
protected:
    Asked() {
        shelf.inbox = &inbox;
        shelf.clock = &now;
        outbox.also_ask(inbox);
        outbox.paired();
    }
    /// The path of the next request, answered so; empty where there is none. That nothing was asked is answered aside.
    std::string step(const Answer& answer) {
        auto next = outbox.next();
        while (next.request && next.request->path.starts_with(all_questions_path)) {
            outbox.answered(next.request->ticket, none_asked());
            next = outbox.next();
        }
        if (next.request) {
            outbox.answered(next.request->ticket, answer);
        }
        return next.request ? next.request->path : std::string();
    }
    static Answer told(const std::string& next, bool more = false) {
        return {200, {}, write_record(Changes{{}, next, more})};
    }
    static Answer none_asked() { return {200, {}, write_entries({{}, "q1", false})}; }
    /// As `step`, for what the workroom asks: the request after those for what came.
    std::string question_step(const Answer& answer) {
        auto next = outbox.next();
        while (next.request && !next.request->path.starts_with(all_questions_path)) {
            outbox.answered(next.request->ticket, told("kept"));
            next = outbox.next();
        }
        if (next.request) {
            outbox.answered(next.request->ticket, answer);
        }
        return next.request ? next.request->path : std::string();
    }
    static Question question(long long number) {
        return {"visit", number, "r1", "w1", "below.left", "Is it to the floor?", 3, "M. Holt", "2026-03-14T12:00:00Z"};
    }
    static Answer problem(ProblemKind kind) { return {status_of(kind), {}, write_problem({kind, "So it is.", {}})}; }
    static Coming coming(const std::string& document) {
        return {{"visit", 7, hex(sha256(document)), "2026-03-14T12:00:00Z"}, "Ben’s phone"};
    }

    Time now = begin;
    Shelf shelf;
    Inbox inbox{shelf};
    Outbox outbox{shelf, [this] { return now; }, [] { return std::uint64_t{1}; }};
};

TEST_F(Asked, AsksByTheCursorAndAgainAfterAWhile) {
    EXPECT_EQ(step(told("c2")), "/changes?limit=200&after=kept");
    EXPECT_EQ(shelf.noted, "c2");
    EXPECT_EQ(step({}), "");
    EXPECT_EQ(outbox.next().wake_at, begin + std::chrono::minutes(5));
    now += std::chrono::minutes(5);
    EXPECT_EQ(step(told("c3")), "/changes?limit=200&after=c2");
}

TEST_F(Asked, GoesOnAtOnceWhereThereIsMore) {
    step(told("c2", true));
    EXPECT_EQ(step(told("c3")), "/changes?limit=200&after=c2");
    EXPECT_EQ(step({}), "");
}

TEST_F(Asked, QuestionsComeByACursorOfTheirOwn) {
    QuestionEntries page{{{question(1), {}}}, "q2", true};
    EXPECT_EQ(question_step({200, {}, write_entries(page)}), "/questions?limit=200&after=q1");
    EXPECT_EQ(shelf.asked, std::vector<std::string>{"Is it to the floor?"});
    EXPECT_EQ(question_step({200, {}, write_entries({{}, "q3", false})}), "/questions?limit=200&after=q2");
    EXPECT_EQ(question_step({}), "");
    now += std::chrono::minutes(5);
    EXPECT_EQ(question_step({200, {}, write_entries({{}, "q3", false})}), "/questions?limit=200&after=q3");
}

TEST_F(Asked, QuestionsThatCouldntBeKeptComeAgain) {
    shelf.full = true;
    QuestionEntries page{{{question(1), {}}}, "q2", false};
    EXPECT_EQ(question_step({200, {}, write_entries(page)}), "/questions?limit=200&after=q1");
    shelf.full = false;
    now += std::chrono::minutes(5);
    EXPECT_EQ(question_step({200, {}, write_entries(page)}), "/questions?limit=200&after=q1");
    EXPECT_EQ(shelf.asked.size(), 1U);
}

// A workroom of an earlier version has none.
TEST_F(Asked, AWorkroomThatKnowsNoQuestionsHoldsNothingUp) {
    shelf.lacking = {hex(sha256("picture"))};
    EXPECT_EQ(question_step(problem(ProblemKind::not_there)), "/questions?limit=200&after=q1");
    EXPECT_EQ(outbox.link().state, Link::State::quiet);
    EXPECT_EQ(step({200, {}, "picture"}), photo_path(shelf.lacking[0]));
}

TEST_F(Asked, BeginsAnewWhereTheCursorIsUnknown) {
    step(problem(ProblemKind::unknown_cursor));
    EXPECT_EQ(step(told("other")), "/changes?limit=200");
    EXPECT_EQ(shelf.notes, 1);
}

TEST_F(Asked, WhatCouldntBeKeptIsAskedForAgainFromWhereItStands) {
    shelf.full = true;
    EXPECT_EQ(step(told("c2", true)), "/changes?limit=200&after=kept");
    EXPECT_EQ(step({}), "") << "not on and on while there is no room";
    shelf.full = false;
    now += std::chrono::minutes(5);
    EXPECT_EQ(step(told("c2")), "/changes?limit=200&after=kept");
    EXPECT_EQ(shelf.noted, "c2");
}

// Whatever it is that ends the connection each time, the others come.
TEST_F(Asked, OneThatBreaksTheConnectionOffHoldsUpNoOther) {
    Coming other = coming("another");
    other.receipt.id = "other";
    shelf.comes = {coming("theirs"), other};
    const auto first = outbox.next();
    ASSERT_TRUE(first.request);
    EXPECT_EQ(first.request->path, revision_path("visit", 7));
    outbox.failed(first.request->ticket, WireFailure::broken_off);
    const auto waits = outbox.next();
    ASSERT_TRUE(waits.wake_at);
    now = *waits.wake_at;
    EXPECT_EQ(step({200, {}, "another"}), revision_path("other", 7));
}

TEST_F(Asked, SurveysGoFirstAndPhotosLast) {
    Item item;
    item.key = "survey/a/1";
    item.survey = "a";
    item.revision = 1;
    item.sha256 = std::string(64, 'a');
    shelf.items = {item};
    shelf.lacking = {hex(sha256("picture"))};
    EXPECT_EQ(step({200, {}, write_record(SurveyReceipt{"a", 1, item.sha256, "2026-03-14T12:00:00Z"})}),
              revision_path("a", 1));
    EXPECT_EQ(step(told("c2")), "/changes?limit=200&after=kept");
    EXPECT_EQ(step({200, {}, "picture"}), photo_path(shelf.lacking[0]));
    EXPECT_EQ(shelf.photos, std::vector<std::string>{"picture"});
    EXPECT_EQ(step({}), "");
}

TEST_F(Asked, TakesOnlyWhatHasTheDigestThatWasTold) {
    shelf.comes = {coming("theirs")};
    shelf.lacking = {hex(sha256("picture"))};
    EXPECT_EQ(step({200, {}, "<html>sign in</html>"}), revision_path("visit", 7));
    step(told("c2"));
    EXPECT_EQ(step({200, {}, "<html>sign in</html>"}), photo_path(shelf.lacking[0]));
    EXPECT_TRUE(shelf.taken.empty());
    EXPECT_TRUE(shelf.photos.empty());
    EXPECT_EQ(outbox.link().state, Link::State::quiet);
    now += std::chrono::minutes(5);
    step({200, {}, "theirs"});
    EXPECT_EQ(shelf.taken, std::vector<std::string>{"theirs"});
}

TEST_F(Asked, WhatIsGoneIsPassedOverAndAPhotoAskedForLater) {
    shelf.comes = {coming("theirs")};
    shelf.lacking = {hex(sha256("picture"))};
    step(problem(ProblemKind::erased));
    EXPECT_EQ(shelf.passed, std::vector<std::string>{"visit"});
    step(told("c2"));
    EXPECT_EQ(step(problem(ProblemKind::not_there)), photo_path(shelf.lacking[0]));
    now += std::chrono::minutes(59);
    step(told("c3"));
    EXPECT_EQ(step({}), "");
    now += std::chrono::minutes(1);
    EXPECT_EQ(step({200, {}, "picture"}), photo_path(shelf.lacking[0]));
}

TEST_F(Asked, WhatCantBeKeptNowIsFetchedAgain) {
    shelf.comes = {coming("theirs")};
    step({200, {}, "theirs"});
    inbox.try_later(shelf.comes[0].receipt.sha256, now);
    EXPECT_EQ(step(told("c2")), "/changes?limit=200&after=kept");
    now += std::chrono::minutes(5);
    EXPECT_EQ(step({200, {}, "theirs"}), revision_path("visit", 7));
    EXPECT_EQ(shelf.taken.size(), 2U);
}

TEST_F(Asked, AWorkroomThatAsksForTimeGetsIt) {
    Answer busy = problem(ProblemKind::busy);
    busy.headers = {{"Retry-After", "600"}};
    step(busy);
    EXPECT_EQ(outbox.link().state, Link::State::asked_to_wait);
    EXPECT_EQ(step({}), "");
    step(problem(ProblemKind::unauthorised));
    now += std::chrono::minutes(11);
    step(problem(ProblemKind::unauthorised));
    EXPECT_EQ(outbox.link().state, Link::State::pair_again);
}

TEST_F(Asked, ACutIsAskedAgainOnceTheWayIsOpen) {
    const auto next = outbox.next();
    outbox.failed(next.request->ticket, WireFailure::broken_off);
    EXPECT_EQ(outbox.link().state, Link::State::unreachable);
    outbox.try_now();
    EXPECT_EQ(step(told("c2")), "/changes?limit=200&after=kept");
    EXPECT_EQ(outbox.link().state, Link::State::quiet);
}

TEST_F(Asked, AClockThatWasSetBackHoldsNothingUp) {
    step(told("c2"));
    now -= std::chrono::hours(24 * 365);
    EXPECT_EQ(step(told("c3")), "/changes?limit=200&after=c2");
}

}  // namespace
