// SPDX-License-Identifier: Apache-2.0
#include "receiver_process.h"

#include "protocol/digest.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>

#include <csignal>

namespace truehang::sync::test {

namespace {

bool says(const Reply& reply, std::string_view line) { return reply.body.find(line) != std::string::npos; }

}  // namespace

TEST(Watched, isReadyWhileTheRecordsTakeWrites) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    EXPECT_EQ(receiver.ask("GET", "/ready").status, 200);
    EXPECT_EQ(receiver.ask("PUT", "/ready").status, 405);
}

TEST(Watched, isNotReadyWhileAnotherHoldsTheRecords) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    SQLite::Database holding((folder.path() / "workroom.sqlite").string(), SQLite::OPEN_READWRITE);
    holding.exec("BEGIN IMMEDIATE");
    EXPECT_EQ(receiver.ask("GET", "/ready").status, 503);
    holding.exec("ROLLBACK");
}

// The text format of Prometheus, version 0.0.4: samples as name{labels} value; a histogram's buckets add up to +Inf.
TEST(Watched, countsWhatWasAnswered) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    ASSERT_EQ(receiver.put_survey(token, "secret-house", 1, example_survey("secret-house", 1, "Mrs Secret")).status,
              201);
    ASSERT_EQ(receiver.put_survey("wrong", "secret-house", 2, example_survey("secret-house", 2)).status, 401);
    ASSERT_EQ(receiver.put_photo(token, hex(sha256("p")), "p").status, 201);
    const auto metrics = receiver.ask("GET", "/metrics");
    ASSERT_EQ(metrics.status, 200);
    EXPECT_EQ(metrics.headers.at("content-type"), "text/plain; version=0.0.4; charset=utf-8");
    EXPECT_TRUE(says(metrics, "truehang_answers_total{what=\"revision\",method=\"PUT\",status=\"201\"} 1\n"));
    EXPECT_TRUE(says(metrics, "truehang_answers_total{what=\"revision\",method=\"PUT\",status=\"401\"} 1\n"));
    EXPECT_TRUE(says(metrics, "truehang_answers_total{what=\"photo\",method=\"PUT\",status=\"201\"} 1\n"));
    EXPECT_TRUE(says(metrics, "truehang_answer_seconds_bucket{what=\"photo\",le=\"+Inf\"} 1\n"));
    EXPECT_TRUE(says(metrics, "# TYPE truehang_answer_seconds histogram\n"));
    EXPECT_FALSE(says(metrics, "ecret")) << "whose house it is, is nobody’s business there";
    EXPECT_FALSE(says(metrics, token));
}

TEST(Watched, tellsItsCountsOnThisMachineOnly) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    EXPECT_NE(receiver.ask("GET", "/metrics", {{"X-Forwarded-For", "192.0.2.9"}}).status, 200);
}

TEST(Watched, logsEachAnswerInALineOfJsonWithoutNames) {
    const TemporaryFolder folder;
    const auto log = folder.path() / "log";
    const auto data = folder.path() / "data";
    std::string token;
    {
        Receiver receiver(data, {"--log"}, {"sh", "-c", "exec \"$0\" \"$@\" 2>" + log.string()});
        token = receiver.pair();
        ASSERT_EQ(receiver.put_survey(token, "secret-house", 1, example_survey("secret-house", 1)).status, 201);
        EXPECT_EQ(receiver.end(SIGTERM), 0);
    }
    const auto text = file_text(log);
    EXPECT_NE(text.find(R"("method":"PUT","what":"revision","status":201,"ms":)"), std::string::npos) << text;
    EXPECT_EQ(text.find("secret"), std::string::npos) << text;
    EXPECT_EQ(text.find(token), std::string::npos) << text;
}

}  // namespace truehang::sync::test
