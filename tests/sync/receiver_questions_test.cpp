// SPDX-License-Identifier: Apache-2.0
// What a workroom asks about a reading, how it is pulled, and what is answered. The shapes are those of
// sync/protocol/README.md, “Being asked”.
#include "older_records.h"
#include "protocol/paths.h"
#include "protocol/questions.h"
#include "receiver_process.h"

#include <gtest/gtest.h>
#include <csignal>
#include <nlohmann/json.hpp>

using namespace truehang::sync;
using namespace truehang::sync::test;
using Json = nlohmann::json;

namespace {

const std::string id = "01924f6a-7c00-7000-8000-0000000000c1";
const std::string page_path = "/surveys/" + id + "/ask";
const std::string top = "parlour/parlour-south/opening.width.top";

bool has(const Reply& page, const std::string& text) { return page.body.find(text) != std::string::npos; }

Fields bearer(const std::string& token) { return {{"Authorization", "Bearer " + token}}; }

/// As a browser sends a form of this site.
Reply post(const Receiver& receiver, const std::string& path, const std::string& body, Fields more = {}) {
    const auto here = "127.0.0.1:" + std::to_string(receiver.port());
    more.insert(more.end(),
                {{"Content-Type", "application/x-www-form-urlencoded"}, {"Host", here}, {"Origin", "http://" + here}});
    return receiver.ask("POST", path, more, body);
}

std::string form(const std::string& about, const std::string& words, const std::string& by = "Ann",
                 const std::string& revision = "1") {
    return "about=" + percent_encode(about) + "&words=" + percent_encode(words) + "&by=" + percent_encode(by) +
           "&revision=" + revision;
}

QuestionAnswer answer_of(long long number, const std::string& answer_id, const std::string& words) {
    QuestionAnswer answer;
    answer.survey = id;
    answer.number = number;
    answer.id = answer_id;
    answer.words = words;
    answer.by = "J. Tamm";
    answer.at = "2026-03-14T10:00:00.000Z";
    return answer;
}

struct Asking {
    TemporaryFolder folder;
    Receiver receiver{folder.path()};
    std::string token = receiver.pair();

    Asking() { EXPECT_EQ(receiver.put_survey(token, id, 1, example_survey(id, 1)).status, 201); }

    [[nodiscard]] Reply ask(const std::string& about, const std::string& words) const {
        return post(receiver, page_path, form(about, words));
    }
    [[nodiscard]] Reply page(const std::string& path = page_path) const { return receiver.ask("GET", path); }
    [[nodiscard]] Reply put(const QuestionAnswer& answer) const { return put(answer, write_answer(answer)); }
    [[nodiscard]] Reply put(const QuestionAnswer& answer, const std::string& body) const {
        auto fields = bearer(token);
        fields.emplace_back("Content-Type", "application/json");
        return receiver.ask("PUT", answer_path(answer.survey, answer.number, answer.id), fields, body);
    }
    [[nodiscard]] SurveyQuestions questions() const {
        const auto reply = receiver.ask("GET", questions_path(id), bearer(token));
        EXPECT_EQ(reply.status, 200) << reply.body;
        return read_questions(reply.body).value();
    }
    [[nodiscard]] QuestionEntries pull(const std::string& query) const {
        const auto reply = receiver.ask("GET", std::string(all_questions_path) + query, bearer(token));
        EXPECT_EQ(reply.status, 200) << reply.body;
        return read_entries(reply.body).value();
    }
};

}  // namespace

TEST(Questions, areAskedByAPersonAndStandOnThePageAndInTheList) {
    const Asking asking;
    EXPECT_TRUE(has(asking.page("/surveys/" + id), "href=\"" + page_path + "\""));
    // The worked example’s top width is 1242 mm (tests/reference/contract/survey.example.json).
    EXPECT_TRUE(has(asking.page(), "1242 mm</option>")) << asking.page().body;
    EXPECT_FALSE(has(asking.page("/"), "no answer yet</span>"));
    const auto asked = asking.ask(top, "Reads 40 more than the sill.\r\nAgain, please?");
    ASSERT_EQ(asked.status, 303) << asked.body;
    EXPECT_EQ(asked.headers.at("location"), page_path + "?by=Ann#question-1");
    EXPECT_TRUE(has(asking.page(page_path + "?by=Ann"), "value=\"Ann\"")) << "the name stays in the form";
    for (const auto& path : {page_path, "/surveys/" + id}) {
        EXPECT_TRUE(has(asking.page(path), "Reads 40 more than the sill.\nAgain, please?")) << path;
        EXPECT_TRUE(has(asking.page(path), "no answer yet")) << path;
    }
    EXPECT_TRUE(has(asking.page("/?state=question"), "Pilot house"));
    EXPECT_TRUE(has(asking.page("/"), "asked, no answer yet</span>"));

    const auto questions = asking.questions().questions;
    ASSERT_EQ(questions.size(), 1U);
    EXPECT_EQ(questions[0].question.number, 1);
    EXPECT_EQ(questions[0].question.room, "parlour");
    EXPECT_EQ(questions[0].question.window, "parlour-south");
    EXPECT_EQ(questions[0].question.station, "opening.width.top");
    EXPECT_EQ(questions[0].question.by, "Ann");
    EXPECT_EQ(questions[0].question.revision, 1);
    EXPECT_TRUE(questions[0].answers.empty());

    ASSERT_EQ(asking.ask(top, "Reads 40 more than the sill.\nAgain, please?").status, 303);
    EXPECT_EQ(asking.questions().questions.size(), 1U) << "sent twice it is asked once";
    ASSERT_EQ(asking.ask("parlour/parlour-south/", "Is the radiator on?").status, 303);
    EXPECT_EQ(asking.questions().questions[1].question.station, "") << "about the whole window";
}

TEST(Questions, areAnsweredByAReadingAndByWordsOnceHoweverOftenSent) {
    const Asking asking;
    ASSERT_EQ(asking.ask(top, "Again, please?").status, 303);
    auto reading = answer_of(1, "a-1", "");
    reading.reading = AnswerReading{"opening.width.top", "124.6 cm", 1246.0, {}};
    reading.revision = 2;
    const auto first = asking.put(reading);
    ASSERT_EQ(first.status, 201) << first.body;
    const auto receipt = read_answer_receipt(first.body).value();
    EXPECT_EQ(receipt.id, "a-1");
    const auto again = asking.put(reading);
    EXPECT_EQ(again.status, 200);
    EXPECT_EQ(read_answer_receipt(again.body).value(), receipt);
    auto other = reading;
    other.reading->value_mm = 1243.0;
    EXPECT_EQ(asking.put(other).status, 409) << "what was answered is never replaced";
    ASSERT_EQ(asking.put(answer_of(1, "a-2", "The plaster bulges there.")).status, 201);

    const auto answers = asking.questions().questions.at(0).answers;
    ASSERT_EQ(answers.size(), 2U);
    EXPECT_EQ(answers[0].answer, reading);
    EXPECT_FALSE(answers[0].device.empty()) << "who answered";
    EXPECT_EQ(answers[0].received_at, receipt.received_at);
    EXPECT_EQ(answers[1].answer.words, "The plaster bulges there.");
    for (const auto& path : {page_path, "/surveys/" + id}) {
        const auto page = asking.page(path);
        EXPECT_TRUE(has(page, "1246 mm</strong>")) << page.body;
        EXPECT_TRUE(has(page, "typed “124.6 cm”"));
        EXPECT_TRUE(has(page, "The plaster bulges there."));
        EXPECT_TRUE(has(page, "J. Tamm, 14 March 2026, 10:00 UTC")) << page.body;
        EXPECT_FALSE(has(page, "no answer yet"));
    }
    EXPECT_FALSE(has(asking.page("/"), "asked, no answer yet</span>"));
    EXPECT_FALSE(has(asking.page("/?state=question"), "Pilot house"));
}

TEST(Questions, arePulledByACursorAndByATag) {
    const Asking asking;
    EXPECT_TRUE(asking.pull("").entries.empty());
    const auto before = asking.pull("").next;
    ASSERT_EQ(asking.ask(top, "One?").status, 303);
    ASSERT_EQ(asking.ask(top, "Two?").status, 303);
    ASSERT_EQ(asking.put(answer_of(1, "a-1", "Yes.")).status, 201);
    const auto first = asking.pull("?limit=2&after=" + before);
    ASSERT_EQ(first.entries.size(), 2U);
    EXPECT_TRUE(first.more);
    EXPECT_EQ(first.entries[0].question->words, "One?");
    EXPECT_EQ(first.entries[1].question->words, "Two?");
    const auto rest = asking.pull("?limit=2&after=" + first.next);
    ASSERT_EQ(rest.entries.size(), 1U);
    EXPECT_FALSE(rest.more);
    EXPECT_EQ(rest.entries[0].answer->answer.words, "Yes.");
    EXPECT_TRUE(asking.pull("?after=" + rest.next).entries.empty());
    EXPECT_EQ(asking.pull("?after=" + rest.next).next, rest.next);
    const auto changes = Json::parse(asking.receiver.ask("GET", "/changes", bearer(asking.token)).body)["next"];
    const auto wrong =
        asking.receiver.ask("GET", "/questions?after=" + changes.get<std::string>(), bearer(asking.token));
    EXPECT_EQ(wrong.status, 410);
    EXPECT_TRUE(has(wrong, "unknown-cursor"));
    EXPECT_EQ(asking.receiver.ask("GET", "/questions?limit=0", bearer(asking.token)).status, 400);

    auto fields = bearer(asking.token);
    const auto whole = asking.receiver.ask("GET", questions_path(id), fields);
    fields.emplace_back("If-None-Match", whole.headers.at("etag"));
    EXPECT_EQ(asking.receiver.ask("GET", questions_path(id), fields).status, 304);
    ASSERT_EQ(asking.ask(top, "Three?").status, 303);
    EXPECT_EQ(asking.receiver.ask("GET", questions_path(id), fields).status, 200);
}

TEST(Questions, refuseWhatCantBeAskedOrAnsweredAndSayWhy) {
    const Asking asking;
    const auto refused = [&](const std::string& body, const std::string& why) {
        const auto page = post(asking.receiver, page_path, body);
        EXPECT_EQ(page.status, 422) << page.body;
        EXPECT_TRUE(has(page, why)) << page.body;
    };
    refused(form(top, " \r\n "), "write what you ask");
    refused(form(top, std::string(2001, 'a')), "write what you ask");
    refused(form(top, "Again?", " "), "say who asks");
    refused(form("parlour/attic/", "Again?"), "choose a window");
    refused(form("parlour/parlour-south/opening.width.nowhere", "Again?"), "choose a window");
    refused(form(top, "Again?", "Ann", "7"), "That revision isn’t here");
    EXPECT_EQ(post(asking.receiver, "/surveys/elsewhere/ask", form(top, "Again?")).status, 404);
    EXPECT_EQ(post(asking.receiver, page_path, form(top, std::string(20000, 'a'))).status, 413);
    EXPECT_EQ(asking.receiver.ask("GET", questions_path("elsewhere")).status, 404);
    EXPECT_TRUE(asking.questions().questions.empty());

    ASSERT_EQ(asking.ask(top, "<script>x</script>").status, 303);
    EXPECT_TRUE(has(asking.page(), "&lt;script&gt;x")) << "words are shown, not run";
    EXPECT_EQ(asking.put(answer_of(2, "a-1", "Yes.")).status, 404) << "no such question";
    const auto answer = answer_of(1, "a-1", "Yes.");
    for (const auto& [was, is, pointer] :
         {std::tuple{"\"Yes.\"", "\"\"", "/words"}, std::tuple{"\"a-1\"", "\"a/1\"", "/id"},
          std::tuple{"\"number\": 1", "\"number\": 2", "/number"}, std::tuple{"2026-03-14T", "yesterday ", "/at"},
          std::tuple{"\"words\": \"Yes.\"", "\"reading\": {\"station\": \"opening.width.top\"}",
                     "/reading/value_mm"}}) {
        auto body = write_answer(answer);
        body.replace(body.find(was), std::string(was).size(), is);
        const auto reply = asking.put(answer, body);
        EXPECT_EQ(reply.status, 422) << reply.body;
        EXPECT_TRUE(has(reply, "\"" + std::string(pointer) + "\"")) << reply.body;
    }
    EXPECT_EQ(asking.put(answer, "no JSON").status, 422);
    EXPECT_EQ(asking.put(answer, std::string(70000, ' ')).status, 413);
    EXPECT_EQ(asking.receiver.ask("DELETE", answer_path(id, 1, "a-1"), bearer(asking.token)).status, 405);
    EXPECT_TRUE(asking.questions().questions.at(0).answers.empty());
}

TEST(Questions, areAskedByNoOtherSiteAndByNoDeviceAndAnsweredByNoStranger) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path(), {"--sign-in"});
    const auto token = receiver.pair();
    ASSERT_EQ(receiver.put_survey(token, id, 1, example_survey(id, 1)).status, 201);
    EXPECT_EQ(receiver.ask("GET", page_path).status, 401);
    EXPECT_EQ(post(receiver, page_path, form(top, "Again?")).status, 401);
    EXPECT_EQ(post(receiver, page_path, form(top, "Again?"), bearer(token)).status, 401);
    for (const auto& path : {std::string(all_questions_path), questions_path(id)}) {
        EXPECT_EQ(receiver.ask("GET", path).status, 401);
        EXPECT_EQ(receiver.ask("GET", path, bearer("nobody.nothing")).status, 401);
        EXPECT_EQ(receiver.ask("GET", path, bearer(token)).status, 200);
    }
    const auto body = write_answer(answer_of(1, "a-1", "Yes."));
    EXPECT_EQ(receiver.ask("PUT", answer_path(id, 1, "a-1"), {{"Content-Type", "application/json"}}, body).status, 401);
    auto typed = bearer(token);
    typed.emplace_back("Content-Type", "text/plain");
    EXPECT_EQ(receiver.ask("PUT", answer_path(id, 1, "a-1"), typed, body).status, 415);
    const Asking open;
    EXPECT_EQ(
        open.receiver.ask("POST", page_path, {{"Origin", "http://elsewhere.example.org"}}, form(top, "A?")).status,
        400);
    EXPECT_TRUE(open.questions().questions.empty());
}

TEST(Questions, goWithTheirSurveyIntoAFileAndOutOfTheRecordsWithIt) {
    const TemporaryFolder out;
    const auto zip = (out.path() / "visit.zip").string();
    const auto other = (out.path() / "other").string();
    SurveyQuestions questions;
    {
        Asking asking;
        ASSERT_EQ(asking.ask(top, "Zwieback?").status, 303);
        ASSERT_EQ(asking.put(answer_of(1, "a-1", "Haferflocken.")).status, 201);
        questions = asking.questions();
        const auto data = asking.folder.path().string();
        const auto run = [&](std::vector<std::string> words) {
            words.insert(words.begin(), TRUEHANG_WORKROOM);
            return run_program(words);
        };
        EXPECT_EQ(run({"verify", "--data", data}).exit_code, 0);
        ASSERT_EQ(run({"export", "--data", data, id, zip}).exit_code, 0);
        ASSERT_EQ(run({"erase", "--data", data, id}).exit_code, 0);
        EXPECT_EQ(asking.page().status, 404);
        EXPECT_EQ(post(asking.receiver, page_path, form(top, "Again?")).status, 404);
        EXPECT_EQ(asking.put(answer_of(1, "a-2", "Late.")).status, 410);
        EXPECT_TRUE(asking.pull("").entries.empty());
        const auto records = file_text(asking.folder.path() / "workroom.sqlite");
        EXPECT_EQ(records.find("Zwieback"), std::string::npos);
        EXPECT_EQ(records.find("Haferflocken"), std::string::npos);
    }
    {
        const Receiver made(other);
        static_cast<void>(made);
    }
    const auto imported = run_program({TRUEHANG_WORKROOM, "import", "--data", other, zip});
    ASSERT_EQ(imported.exit_code, 0) << imported.err;
    EXPECT_EQ(run_program({TRUEHANG_WORKROOM, "import", "--data", other, zip}).exit_code, 0) << "again is no fault";
    const Receiver receiver(other);
    const auto there = receiver.ask("GET", questions_path(id));
    ASSERT_EQ(there.status, 200);
    EXPECT_EQ(read_questions(there.body).value(), questions);
    ASSERT_EQ(post(receiver, page_path, form(top, "More?")).status, 303);
    EXPECT_EQ(run_program({TRUEHANG_WORKROOM, "import", "--data", other, zip}).exit_code, 0) << "more questions stay";
}

TEST(Questions, thatCantBeReadAnyMoreAreNamedAndLeftOutOfWhatIsBroughtBack) {
    const TemporaryFolder out;
    Asking asking;
    ASSERT_EQ(asking.ask(top, "One?").status, 303);
    ASSERT_EQ(asking.ask(top, "Two?").status, 303);
    ASSERT_EQ(asking.put(answer_of(2, "a-1", "Yes.")).status, 201);
    asking.receiver.end(SIGTERM);
    SQLite::Database((asking.folder.path() / "workroom.sqlite").string(), SQLite::OPEN_READWRITE)
        .exec("UPDATE question_entry SET record = 'broken' WHERE answer = 'a-1'");
    const auto data = asking.folder.path().string();
    const auto looked = run_program({TRUEHANG_WORKROOM, "verify", "--data", data});
    EXPECT_EQ(looked.exit_code, 1);
    EXPECT_NE(looked.out.find("question 2 of " + id), std::string::npos) << looked.out;
    const auto copy = (out.path() / "copy").string();
    const auto back = (out.path() / "back").string();
    static_cast<void>(run_program({TRUEHANG_WORKROOM, "backup", "--data", data, copy}));
    const auto restored = run_program({TRUEHANG_WORKROOM, "restore", "--what-is-whole", "--data", back, copy});
    const Receiver receiver(back);
    const auto questions = read_questions(receiver.ask("GET", questions_path(id)).body).value().questions;
    ASSERT_EQ(questions.size(), 2U) << restored.err;
    EXPECT_TRUE(questions[1].answers.empty());
}

TEST(Questions, thatAreLeftOutOfWhatIsBroughtBackDontStandInTheList) {
    const TemporaryFolder out;
    Asking asking;
    ASSERT_EQ(asking.ask(top, "One?").status, 303);
    ASSERT_TRUE(has(asking.page("/?state=question"), "Pilot house"));
    asking.receiver.end(SIGTERM);
    run_on_records(asking.folder.path(), "UPDATE question_entry SET record = 'broken'");
    const auto copy = (out.path() / "copy").string();
    const auto back = (out.path() / "back").string();
    static_cast<void>(run_program({TRUEHANG_WORKROOM, "backup", "--data", asking.folder.path().string(), copy}));
    const auto restored = run_program({TRUEHANG_WORKROOM, "restore", "--what-is-whole", "--data", back, copy});
    const Receiver receiver(back);
    EXPECT_TRUE(has(receiver.ask("GET", "/"), "Pilot house")) << restored.err;
    EXPECT_FALSE(has(receiver.ask("GET", "/?state=question"), "Pilot house"));
}

// RFC 3629: 0xff begins no character. Written as JSON each becomes three bytes (U+FFFD), and 700 of them longer words
// than a question may have.
TEST(Questions, ofWordsThatArentTextAreRefusedAndBlockNoOthers) {
    const Asking asking;
    for (const auto& body : {form(top, std::string(700, '\xff')), form(top, "Again?", "Ann\xc3")}) {
        const auto refused = post(asking.receiver, page_path, body);
        EXPECT_EQ(refused.status, 422);
        EXPECT_TRUE(has(refused, "isn’t text in UTF-8")) << refused.body;
        EXPECT_EQ(refused.body.find('\xff'), std::string::npos) << "the page is UTF-8 itself";
    }
    EXPECT_TRUE(asking.questions().questions.empty());
    ASSERT_EQ(asking.ask(top, "Again, please?").status, 303);
    EXPECT_EQ(asking.questions().questions.at(0).question.number, 1);
}

TEST(Questions, areNumberedPastOneThatCantBeReadAnyMore) {
    const Asking asking;
    ASSERT_EQ(asking.ask(top, "Again, please?").status, 303);
    run_on_records(asking.folder.path(), "UPDATE question_entry SET record = '{' WHERE question = 1");
    const auto asked = asking.ask(top, "And what is it now?");
    ASSERT_EQ(asked.status, 303) << asked.body;
    const auto questions = asking.questions().questions;
    ASSERT_EQ(questions.size(), 1U);
    EXPECT_EQ(questions[0].question.number, 2);
}

// sync/protocol/README.md, “Being asked”: a station has at most 200 bytes, in both directions.
TEST(Questions, areAnsweredForAStationOfAtMost200Bytes) {
    const Asking asking;
    ASSERT_EQ(asking.ask(top, "Again?").status, 303);
    auto answer = answer_of(1, "a-1", "");
    answer.reading = AnswerReading{std::string(201, 's'), "124.6 cm", 1246.0, {}};
    const auto refused = asking.put(answer);
    EXPECT_EQ(refused.status, 422);
    EXPECT_TRUE(has(refused, "/reading/station")) << refused.body;
    answer.reading->station = std::string(200, 's');
    EXPECT_EQ(asking.put(answer).status, 201);
    EXPECT_EQ(asking.pull("").entries.size(), 2U);
}

// The same page: about 1 MiB at once. A control character is six bytes of JSON (RFC 8259, section 7).
TEST(Questions, arePulledAMebibyteAtATime) {
    const Asking asking;
    ASSERT_EQ(asking.ask(top, "Again, please?").status, 303);
    constexpr int answers = 95;
    for (int i = 0; i < answers; ++i) {
        ASSERT_EQ(asking.put(answer_of(1, "a-" + std::to_string(i), std::string(2000, '\x01'))).status, 201);
    }
    std::size_t pulled = 0;
    bool more = true;
    std::string query = "?limit=1000";
    for (int pages = 1; more; ++pages) {
        ASSERT_LE(pages, 2);
        const auto reply = asking.receiver.ask("GET", std::string(all_questions_path) + query, bearer(asking.token));
        EXPECT_LE(reply.body.size(), 1100U * 1024U);
        const auto page = read_entries(reply.body).value();
        pulled += page.entries.size();
        more = page.more;
        query = "?limit=1000&after=" + percent_encode(page.next);
    }
    EXPECT_EQ(pulled, 1U + answers);
}

TEST(Questions, areAskedOnRecordsOfTheVersionBefore) {
    const TemporaryFolder folder;
    {
        Receiver receiver(folder.path());
        ASSERT_EQ(receiver.put_survey(receiver.pair(), id, 1, example_survey(id, 1)).status, 201);
        receiver.end(SIGTERM);
    }
    make_older(folder.path(), 9);
    const Receiver receiver(folder.path());
    EXPECT_EQ(post(receiver, page_path, form(top, "Again?")).status, 303);
    EXPECT_TRUE(has(receiver.ask("GET", "/?state=question"), "Pilot house"));
}

TEST(QuestionRecords, areReadAsTheyWereWrittenAndRefusedWhereTheyAreNot) {
    const std::string at = "2026-03-14T09:00:00.000Z";
    auto answer = answer_of(2, "a-1", "Yes.");
    answer.survey = "s";
    answer.reading = AnswerReading{"corner.1.angle_deg", "135°", {}, 135.0};
    answer.revision = 4;
    const SurveyQuestions questions{
        "s",
        {{{"s", 1, "r", "w", "", "Is it on?", 3, "Ann", at}, {}},
         {{"s", 2, "r", "w", "corner.1.angle_deg", "Again?", 3, "Bo", at}, {{answer, at, "Phone"}}}}};
    EXPECT_EQ(read_questions(write_questions(questions)).value(), questions);
    EXPECT_EQ(read_answer(write_answer(answer)).value(), answer);
    const QuestionEntries entries{
        {{questions.questions[0].question, {}}, {{}, ReceivedAnswer{answer, at, ""}}}, "q-2", true};
    const auto read = read_entries(write_entries(entries)).value();
    EXPECT_EQ(read.entries, entries.entries);
    EXPECT_EQ(read.next, "q-2");
    EXPECT_TRUE(read.more);
    EXPECT_TRUE(read_entries(R"({"entries": [{"later": {}}], "next": "c", "more": false})").ok())
        << "what a later version adds is passed over";
    for (const auto& [was, is, where] :
         {std::tuple{"truehang.questions/1", "truehang.questions/2", "/format"},
          std::tuple{"\"Is it on?\"", "\"\"", "/questions/0/words"},
          std::tuple{"\"number\": 1", "\"number\": 0", "/questions/0/number"},
          std::tuple{"\"number\": 1", "\"number\": 9", "/questions/1"},
          std::tuple{"\"value_deg\": 135.0", "\"value_deg\": 361.0", "/questions/1/answers/0/reading/value_deg"}}) {
        auto text = write_questions(questions);
        text.replace(text.find(was), std::string(was).size(), is);
        const auto refused = read_questions(text);
        ASSERT_FALSE(refused.ok()) << where;
        EXPECT_EQ(refused.error().where, where);
    }
}
