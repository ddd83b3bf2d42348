// SPDX-License-Identifier: Apache-2.0
// What is asked on the workroom's page reaches phones by themselves, and what is answered there the page: phones with
// their real stores against a receiver as a process.
#include "protocol/questions.h"
#include "receiver_process.h"
#include "two_phones.h"

#include <algorithm>
#include <csignal>

using namespace truehang;
using namespace truehang::sync;
using namespace truehang::sync::test;

namespace {

const std::string about = "parlour/parlour-south/opening.width.top";

struct Asked {
    TemporaryFolder folder;
    std::unique_ptr<Receiver> receiver = std::make_unique<Receiver>(folder.path());
    std::string token = receiver->pair();
    StorePhone anna{"anna"}, ben{"ben"};
    bool up = true;  ///< the receiver runs

    Asked() {
        const Survey survey = read_survey(example_survey(id, 1)).value();
        for (StorePhone* phone : {&anna, &ben}) {
            phone->asks = true;
            phone->start();
            EXPECT_TRUE(phone->store().keep(survey, "Visit made"));
        }
        run(anna);
    }

    /// A phone goes on for a while of its own time; the answer to its request number `lost` from here doesn't arrive.
    void run(StorePhone& phone, int lost = -1) const {
        const Time until = phone.now + std::chrono::minutes(20);
        for (int i = 0; i < 300 && phone.now < until; ++i) {
            const auto next = phone.outbox->next();
            if (!next.request) {
                phone.now = std::max(phone.now + std::chrono::seconds(1), next.wake_at.value_or(until));
                continue;
            }
            Fields fields(next.request->headers.begin(), next.request->headers.end());
            fields.emplace_back("Authorization", "Bearer " + token);
            const auto body = phone.body_of(*next.request);
            if (!up) {
                phone.outbox->failed(next.request->ticket, WireFailure::not_reached);
                continue;
            }
            const auto reply = receiver->ask(std::string(word_of(next.request->method)), next.request->path, fields,
                                             body.value_or(""));
            if (lost-- == 0) {
                phone.start();  // the program dies with the answer
            } else if (reply.status == 0) {
                phone.outbox->failed(next.request->ticket, WireFailure::broken_off);
            } else {
                phone.outbox->answered(next.request->ticket,
                                       {reply.status, {reply.headers.begin(), reply.headers.end()}, reply.body});
            }
        }
    }

    void ask(const std::string& words) const {
        const auto here = "127.0.0.1:" + std::to_string(receiver->port());
        const Fields fields{
            {"Content-Type", "application/x-www-form-urlencoded"}, {"Host", here}, {"Origin", "http://" + here}};
        const auto reply = receiver->ask(
            "POST", "/surveys/" + id + "/ask", fields,
            "about=" + percent_encode(about) + "&words=" + percent_encode(words) + "&by=M.+Holt&revision=1");
        ASSERT_EQ(reply.status, 303) << reply.body;
    }

    static void answer(StorePhone& phone, const VisitQuestion& question, const std::string& words) {
        QuestionAnswer made;
        made.survey = question.visit;
        made.number = question.number;
        made.id = "answer-" + std::to_string(question.number);
        made.words = words;
        made.by = "J. Tamm";
        made.at = "2026-03-14T13:00:00+00:00";
        ASSERT_TRUE(phone.store().keep_answer(
            {made.survey, made.number, made.id, made.words, "", "", made.by, made.at, "", write_answer(made)}));
    }

    [[nodiscard]] std::string page() const { return receiver->ask("GET", "/surveys/" + id + "/ask").body; }
};

std::size_t times(const std::string& text, const std::string& part) {
    std::size_t count = 0;
    for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + 1)) {
        ++count;
    }
    return count;
}

bool answer_waits(StorePhone& phone) {
    const auto pending = phone.store().pending().value();
    return std::ranges::any_of(pending, [](const OutboxItem& item) { return item.kind == truehang::ItemKind::answer; });
}

}  // namespace

TEST(QuestionsOnPhones, comeByThemselvesAndTheAnswerReachesThePageAndTheOtherPhone) {
    Asked asked;
    asked.ask("Reads 40 more than the sill. Again, please?");
    asked.run(asked.anna);
    asked.run(asked.ben);
    for (StorePhone* phone : {&asked.anna, &asked.ben}) {
        const auto questions = phone->store().questions(id).value();
        ASSERT_EQ(questions.size(), 1U);
        EXPECT_EQ(questions[0].words, "Reads 40 more than the sill. Again, please?");
        EXPECT_EQ(questions[0].station, "opening.width.top");
        EXPECT_EQ(questions[0].by, "M. Holt");
        EXPECT_EQ(phone->store().summary(id)->questions, 1);
    }
    Asked::answer(asked.anna, asked.anna.store().questions(id)->front(), "Measured twice: the plaster bulges.");
    asked.run(asked.anna);
    EXPECT_EQ(times(asked.page(), "the plaster bulges"), 1U) << asked.page();
    EXPECT_TRUE(asked.anna.refusals.empty());
    asked.run(asked.ben);
    const auto there = asked.ben.store().questions(id).value();
    ASSERT_EQ(there.at(0).answers.size(), 1U);
    EXPECT_EQ(there[0].answers[0].words, "Measured twice: the plaster bulges.");
    EXPECT_EQ(asked.ben.store().summary(id)->questions, 0);
    EXPECT_EQ(asked.anna.store().questions(id)->front().answers.size(), 1U) << "its own, not once more";
    EXPECT_FALSE(answer_waits(asked.anna));
}

// Wherever the program dies before it hears of it, the answer is there once, and the phone knows in the end.
TEST(QuestionsOnPhones, anAnswerIsThereOnceWhateverReplyIsLost) {
    for (int lost = 0; lost < 4; ++lost) {
        Asked asked;
        asked.ask("Again, please?");
        asked.run(asked.anna, lost);
        ASSERT_EQ(asked.anna.store().questions(id)->size(), 1U) << lost;
        Asked::answer(asked.anna, asked.anna.store().questions(id)->front(), "It is as it was.");
        asked.run(asked.anna, lost);
        EXPECT_EQ(times(asked.page(), "It is as it was."), 1U) << lost;
        EXPECT_FALSE(answer_waits(asked.anna)) << lost;
    }
}

TEST(QuestionsOnPhones, anAnswerOutlivesAWorkroomThatIsKilled) {
    Asked asked;
    asked.ask("Again, please?");
    asked.run(asked.anna);
    Asked::answer(asked.anna, asked.anna.store().questions(id)->front(), "It is as it was.");
    asked.receiver->end(SIGKILL);
    asked.up = false;
    asked.run(asked.anna);
    EXPECT_EQ(asked.anna.store().pending()->front().kind, truehang::ItemKind::answer);
    asked.receiver = std::make_unique<Receiver>(asked.folder.path());
    asked.up = true;
    asked.run(asked.anna);
    EXPECT_EQ(times(asked.page(), "It is as it was."), 1U);
}

TEST(QuestionsOnPhones, anAnswerToAQuestionOfAnotherWorkroomIsRefusedAndKept) {
    Asked asked;
    const VisitQuestion of_another{
        id, 7, "parlour", "parlour-south", "", "Is it dry?", "M. Holt", "2026-03-14T12:00:00Z"};
    ASSERT_TRUE(
        asked.anna.store().note_questions({of_another}, {}, "", asked.anna.store().questions_asked_until().value()));
    Asked::answer(asked.anna, of_another, "It is.");
    asked.run(asked.anna);
    EXPECT_EQ(asked.anna.refusals, std::vector<std::string>{"The workroom doesn’t know this question."});
    EXPECT_EQ(asked.anna.store().questions(id)->front().answers.at(0).words, "It is.");
}
