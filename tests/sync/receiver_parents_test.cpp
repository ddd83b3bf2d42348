// SPDX-License-Identifier: Apache-2.0
#include "protocol/digest.h"
#include "protocol/paths.h"
#include "protocol/problem.h"
#include "protocol/records.h"
#include "receiver_process.h"

#include <gtest/gtest.h>

// What the protocol's page says of parents, asked of the real receiver.

using namespace truehang::sync;
using namespace truehang::sync::test;

namespace {

const std::string id = "01924f6a-7c00-7000-8000-0000000000c3";

std::string document(long long revision, const std::string& title, const std::string& parents) {
    return R"({"format":"truehang.survey/1","id":")" + id + R"(","revision":)" + std::to_string(revision) +
           (parents.empty() ? "" : R"(,"parents":)" + parents) + R"(,"title":")" + title +
           R"(","fabrics":[],"rooms":[]})";
}

std::string digest_of(const std::string& bytes) { return hex(sha256(bytes)); }
std::string listed(const std::string& bytes) { return "[\"" + digest_of(bytes) + "\"]"; }

Problem problem_of(const Reply& reply) {
    EXPECT_EQ(reply.status, 409) << reply.body;
    const auto problem = read_problem(reply.body);
    EXPECT_TRUE(problem.ok()) << reply.body;
    return problem ? *problem : Problem{};
}

class Parents : public testing::Test {
protected:
    int put(long long revision, const std::string& bytes) {
        return receiver_.put_survey(token_, id, revision, bytes).status;
    }
    Problem refused(long long revision, const std::string& bytes) {
        return problem_of(receiver_.put_survey(token_, id, revision, bytes));
    }
    Reply fetched(long long revision) {
        return receiver_.ask("GET", revision_path(id, revision), {{"Authorization", "Bearer " + token_}});
    }

    TemporaryFolder folder_;
    Receiver receiver_{folder_.path()};
    std::string token_ = receiver_.pair();
};

TEST_F(Parents, ARevisionMadeFromTheNewestIsTaken) {
    const auto first = document(1, "first", "[]");
    EXPECT_EQ(put(1, first), 201);
    const auto second = document(4, "second", listed(first));
    EXPECT_EQ(put(4, second), 201);
    EXPECT_EQ(put(4, second), 200) << "the same content twice is success";
    EXPECT_EQ(put(1, first), 200) << "also once something newer is there";
}

TEST_F(Parents, AStaleOneIsAnsweredWithWhatIsThere) {
    const auto first = document(1, "first", "[]");
    const auto second = document(2, "second", listed(first));
    const auto third = document(3, "third", listed(second));
    ASSERT_EQ(put(1, first), 201);
    ASSERT_EQ(put(2, second), 201);
    ASSERT_EQ(put(3, third), 201);
    const auto stale = document(5, "stale", listed(first));
    const auto problem = refused(5, stale);
    EXPECT_EQ(problem.kind, ProblemKind::conflict);
    ASSERT_TRUE(problem.there);
    EXPECT_EQ(problem.there->newest.revision, 3);
    EXPECT_EQ(problem.there->newest.sha256, digest_of(third));
    EXPECT_EQ(problem.there->sent_by, "A test's phone");
    EXPECT_EQ(problem.there->common_sha256, digest_of(first));
    EXPECT_EQ(problem.there->common_revision, 1);
    EXPECT_EQ(fetched(3).body, third) << "nothing was replaced";
    EXPECT_EQ(fetched(5).status, 404);
    const auto both = document(6, "both", "[\"" + digest_of(third) + "\",\"" + digest_of(first) + "\"]");
    EXPECT_EQ(put(6, both), 201);
}

// The first of its parents that is in the line, however far back, and whatever of them isn’t.
TEST_F(Parents, TheNearestOfTheirsThatIsInTheLineIsInCommon) {
    std::vector<std::string> line{document(1, "revision 1", "[]")};
    ASSERT_EQ(put(1, line[0]), 201);
    for (int revision = 2; revision <= 6; ++revision) {
        line.push_back(document(revision, "revision", listed(line.back())));
        ASSERT_EQ(put(revision, line.back()), 201);
    }
    const auto nowhere = digest_of("nowhere");
    for (const auto& [parents, common] : {std::pair{std::vector{digest_of(line[4]), digest_of(line[1])}, 5},
                                          std::pair{std::vector{digest_of(line[1]), digest_of(line[4])}, 2},
                                          std::pair{std::vector{nowhere, digest_of(line[0])}, 1}}) {
        const auto problem = refused(9, document(9, "stale", "[\"" + parents[0] + "\",\"" + parents[1] + "\"]"));
        ASSERT_TRUE(problem.there);
        EXPECT_EQ(problem.there->common_sha256, digest_of(line[static_cast<std::size_t>(common) - 1]));
        EXPECT_EQ(problem.there->common_revision, common);
    }
}

TEST_F(Parents, ANumberThatIsTakenIsAnsweredSoToo) {
    const auto first = document(1, "first", "[]");
    ASSERT_EQ(put(1, first), 201);
    const auto ours = document(2, "ours", listed(first));
    ASSERT_EQ(put(2, ours), 201);
    const auto problem = refused(2, document(2, "theirs", listed(first)));
    ASSERT_TRUE(problem.there);
    EXPECT_EQ(problem.there->newest.sha256, digest_of(ours));
    EXPECT_EQ(problem.there->common_sha256, digest_of(first));
    EXPECT_EQ(fetched(2).body, ours);
}

TEST_F(Parents, AFileThatNeverCameIsAParentOfBoth) {
    const std::string file = document(1, "file", "[]");
    ASSERT_EQ(put(3, document(3, "ours", listed(file))), 201);
    const auto problem = refused(4, document(4, "theirs", listed(file)));
    ASSERT_TRUE(problem.there);
    EXPECT_EQ(problem.there->common_sha256, digest_of(file));
    EXPECT_EQ(problem.there->common_revision, 0);
}

TEST_F(Parents, StrangersHaveNoneInCommon) {
    ASSERT_EQ(put(3, document(3, "ours", "[]")), 201);
    for (const std::string& parents : {std::string("[]"), listed("something else")}) {
        const auto problem = refused(4, document(4, "theirs", parents));
        ASSERT_TRUE(problem.there);
        EXPECT_EQ(problem.there->newest.revision, 3);
        EXPECT_TRUE(problem.there->common_sha256.empty());
    }
}

TEST_F(Parents, ALowerNumberThanTheNewestIsStale) {
    const auto first = document(5, "first", "[]");
    ASSERT_EQ(put(5, first), 201);
    EXPECT_EQ(refused(4, document(4, "lower", listed(first))).there->newest.revision, 5);
}

TEST_F(Parents, WhatCameInTellsWhoSentIt) {
    const auto first = document(1, "first", "[]");
    ASSERT_EQ(put(1, first), 201);
    const auto reply = receiver_.ask("GET", "/changes", {{"Authorization", "Bearer " + token_}});
    const auto changes = read_changes(reply.body);
    ASSERT_TRUE(changes.ok()) << reply.body;
    ASSERT_EQ(changes->changes.size(), 1U);
    EXPECT_EQ(changes->changes[0].receipt.sha256, digest_of(first));
    EXPECT_EQ(changes->changes[0].sent_by, "A test's phone");
    EXPECT_FALSE(changes->next.empty());
}

TEST_F(Parents, ADocumentWithoutThemIsTakenAsEver) {
    ASSERT_EQ(put(1, document(1, "first", "[]")), 201);
    EXPECT_EQ(put(2, document(2, "second", "")), 201);
    const auto problem = refused(2, document(2, "other", ""));
    ASSERT_TRUE(problem.there);
    EXPECT_EQ(problem.there->newest.revision, 2);
}

}  // namespace
