// SPDX-License-Identifier: Apache-2.0
#include "protocol/digest.h"
#include "protocol/paths.h"
#include "protocol/problem.h"
#include "protocol/records.h"
#include "receiver_process.h"

#include <gtest/gtest.h>

#include <csignal>
#include <thread>

using namespace truehang::sync;
using namespace truehang::sync::test;

namespace {

const std::string id = "01924f6a-7c00-7000-8000-0000000000a1";

ProblemKind problem_of(const Reply& reply) {
    const auto problem = read_problem(reply.body);
    EXPECT_TRUE(problem.ok()) << reply.status << " " << reply.body;
    EXPECT_EQ(reply.headers.at("content-type"), "application/problem+json");
    return problem ? problem->kind : ProblemKind::internal;
}

Fields bearer(const std::string& token) { return {{"Authorization", "Bearer " + token}}; }

}  // namespace

TEST(Receiver, pairsOnceWithACode) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    EXPECT_FALSE(receiver.pair().empty());
    const auto again = receiver.ask("POST", "/pair", {{"Content-Type", "application/json"}},
                                    write_record(PairRequest{receiver.code(), "Another phone"}));
    EXPECT_EQ(again.status, 403);
    EXPECT_EQ(problem_of(again), ProblemKind::wrong_code);
}

TEST(Receiver, aNewCodeComesFromTheCommandWhileItRuns) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    EXPECT_FALSE(receiver.pair().empty());
    const auto printed = run_workroom("pair", folder.path());
    ASSERT_EQ(printed.exit_code, 0) << printed.err;
    const auto reply = receiver.ask("POST", "/pair", {{"Content-Type", "application/json"}},
                                    write_record(PairRequest{printed.out.substr(0, 9), "Second phone"}));
    EXPECT_EQ(reply.status, 200);
}

TEST(Receiver, hearsOutFiveWrongCodesInAMinute) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const Fields json{{"Content-Type", "application/json"}};
    for (int i = 0; i < 5; ++i) {
        EXPECT_EQ(receiver.ask("POST", "/pair", json, write_record(PairRequest{"0000-0000", "x"})).status, 403);
    }
    const auto sixth = receiver.ask("POST", "/pair", json, write_record(PairRequest{receiver.code(), "x"}));
    EXPECT_EQ(sixth.status, 429);
    EXPECT_EQ(sixth.headers.at("retry-after"), "60");
}

TEST(Receiver, keepsARevisionAsItCameAndNeverReplacesIt) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    const auto survey = example_survey(id, 1) + "\n  ";
    const auto first = receiver.put_survey(token, id, 1, survey);
    ASSERT_EQ(first.status, 201) << first.body;
    const auto receipt = read_survey_receipt(first.body);
    ASSERT_TRUE(receipt.ok());
    EXPECT_EQ(receipt->id, id);
    EXPECT_EQ(receipt->revision, 1);
    EXPECT_EQ(receipt->sha256, hex(sha256(survey))) << "the bytes as they came, spaces and all";

    const auto again = receiver.put_survey(token, id, 1, survey);
    EXPECT_EQ(again.status, 200);
    EXPECT_EQ(again.body, first.body);

    const auto other = receiver.put_survey(token, id, 1, example_survey(id, 1, "Another title"));
    EXPECT_EQ(other.status, 409);
    EXPECT_EQ(problem_of(other), ProblemKind::conflict);
    EXPECT_EQ(receiver.put_survey(token, id, 2, example_survey(id, 2)).status, 201);

    const auto there = read_survey_there(receiver.ask("GET", receipt_path(id), bearer(token)).body);
    ASSERT_TRUE(there.ok());
    ASSERT_EQ(there->revisions.size(), 2U);
    EXPECT_EQ(there->revisions[0], *receipt);
    EXPECT_EQ(there->photos_missing, std::vector<std::string>(1, std::string(64, '0')));
}

TEST(Receiver, refusesAMalformedDocumentWithItsFaultsAndStoresNothing) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    const auto reply = receiver.put_survey(
        token, id, 1, R"({"format": "truehang.survey/1", "id": ")" + id + R"(", "rooms": [{}], "fabrics": []})");
    EXPECT_EQ(reply.status, 422);
    const auto problem = read_problem(reply.body);
    ASSERT_TRUE(problem.ok());
    ASSERT_FALSE(problem->faults.empty());
    EXPECT_TRUE(problem->faults[0].pointer.starts_with("/rooms/0")) << problem->faults[0].pointer;
    EXPECT_EQ(receiver.ask("GET", receipt_path(id), bearer(token)).status, 404);
}

TEST(Receiver, refusesADocumentSentUnderAnotherNameOrRevision) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    const auto wrong_revision = read_problem(receiver.put_survey(token, id, 2, example_survey(id, 1)).body);
    ASSERT_TRUE(wrong_revision.ok());
    EXPECT_EQ(wrong_revision->faults.at(0).pointer, "/revision");
    const auto wrong_id = read_problem(receiver.put_survey(token, "other", 1, example_survey(id, 1)).body);
    ASSERT_TRUE(wrong_id.ok());
    EXPECT_EQ(wrong_id->faults.at(0).pointer, "/id");
}

TEST(Receiver, noticesBytesThatChangedOnTheWay) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    const auto survey = example_survey(id, 1);
    auto fields = bearer(token);
    fields.emplace_back("Content-Type", "application/json");
    EXPECT_EQ(receiver.ask("PUT", revision_path(id, 1), fields, survey).status, 400) << "a digest is asked for";
    fields.emplace_back("Content-Digest", digest_field(sha256("something else")));
    EXPECT_EQ(problem_of(receiver.ask("PUT", revision_path(id, 1), fields, survey)), ProblemKind::digest_mismatch);
    EXPECT_EQ(receiver.ask("GET", receipt_path(id), bearer(token)).status, 404);
}

TEST(Receiver, keepsAPhotoOnlyUnderItsOwnDigest) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    const std::string photo = "\xff\xd8\xff" + std::string(300'000, 'p');
    const auto name = hex(sha256(photo));
    const auto wrong = receiver.put_photo(token, hex(sha256("other")), photo);
    EXPECT_EQ(wrong.status, 400);
    EXPECT_EQ(problem_of(wrong), ProblemKind::digest_mismatch);
    EXPECT_TRUE(std::filesystem::is_empty(folder.path() / "incoming"));
    EXPECT_TRUE(std::filesystem::is_empty(folder.path() / "photos"));
    EXPECT_EQ(receiver.ask("HEAD", photo_path(name), bearer(token)).status, 404);

    const auto first = receiver.put_photo(token, name, photo);
    ASSERT_EQ(first.status, 201) << first.body;
    EXPECT_EQ(read_photo_receipt(first.body)->bytes, static_cast<long long>(photo.size()));
    const auto again = receiver.put_photo(token, name, photo);
    EXPECT_EQ(again.status, 200);
    EXPECT_EQ(again.body, first.body);
    EXPECT_TRUE(std::filesystem::is_empty(folder.path() / "incoming"));

    const auto head = receiver.ask("HEAD", photo_path(name), bearer(token));
    EXPECT_EQ(head.status, 200);
    EXPECT_EQ(head.headers.at("repr-digest"), digest_field(sha256(photo)));
    EXPECT_EQ(head.headers.at("truehang-received-at"), read_photo_receipt(first.body)->received_at);
    EXPECT_EQ(head.headers.at("content-length"), std::to_string(photo.size()));
    const auto fetched = receiver.ask("GET", photo_path(name), bearer(token));
    EXPECT_EQ(fetched.body, photo);
    EXPECT_EQ(fetched.headers.at("content-type"), "image/jpeg");
}

TEST(Receiver, takesNothingFromADeviceItDoesntKnow) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    auto wrong = token;
    wrong.back() = wrong.back() == '0' ? '1' : '0';
    for (const auto& shown : {std::string(), std::string("x"), std::string("a.b"), wrong}) {
        const auto reply = receiver.put_survey(shown, id, 1, example_survey(id, 1));
        EXPECT_EQ(reply.status, 401) << shown;
        EXPECT_EQ(reply.headers.at("www-authenticate"), "Bearer realm=\"truehang\"");
        EXPECT_EQ(problem_of(reply), ProblemKind::unauthorised);
        EXPECT_EQ(receiver.put_photo(shown, hex(sha256("p")), "p").status, 401);
    }
    EXPECT_TRUE(std::filesystem::is_empty(folder.path() / "incoming"));
    EXPECT_EQ(receiver.put_survey(token, id, 1, example_survey(id, 1)).status, 201);
}

TEST(Receiver, hasWhatItConfirmedAfterItWasKilled) {
    const TemporaryFolder folder;
    const auto survey = example_survey(id, 1);
    const std::string photo = "a photo";
    std::string token;
    std::string receipt;
    {
        Receiver receiver(folder.path());
        token = receiver.pair();
        ASSERT_EQ(receiver.put_photo(token, hex(sha256(photo)), photo).status, 201);
        const auto reply = receiver.put_survey(token, id, 1, survey);
        ASSERT_EQ(reply.status, 201);
        receipt = reply.body;
        EXPECT_EQ(receiver.end(SIGKILL), -SIGKILL);
    }
    const Receiver receiver(folder.path());
    EXPECT_EQ(receiver.put_survey(token, id, 1, survey).body, receipt) << "the token holds and the receipt is the same";
    EXPECT_EQ(receiver.ask("GET", photo_path(hex(sha256(photo))), bearer(token)).body, photo);
}

TEST(Receiver, saysThatAPhotoDoesntFitOnTheDiskAndGoesOn) {
    const TemporaryFolder folder;
    // A file may grow to 260 KiB here: the photo's write fails half way, as on a disk that is full.
    const Receiver receiver(folder.path(), {}, {"bash", "-c", "ulimit -f 260; trap '' XFSZ; exec \"$@\"", "limited"});
    const auto token = receiver.pair();
    const std::string photo(300'000, 'p');
    const auto reply = receiver.put_photo(token, hex(sha256(photo)), photo);
    EXPECT_EQ(reply.status, 500);
    EXPECT_EQ(problem_of(reply), ProblemKind::internal) << "temporary, so the phone keeps it and tries again";
    EXPECT_TRUE(std::filesystem::is_empty(folder.path() / "incoming"));
    EXPECT_TRUE(std::filesystem::is_empty(folder.path() / "photos"));
    EXPECT_EQ(receiver.ask("HEAD", photo_path(hex(sha256(photo))), bearer(token)).status, 404);
    EXPECT_EQ(receiver.put_photo(token, hex(sha256("small")), "small").status, 201);
    EXPECT_EQ(receiver.put_survey(token, id, 1, example_survey(id, 1)).status, 201);
}

TEST(Receiver, endsCleanlyWhenAsked) {
    const TemporaryFolder folder;
    Receiver receiver(folder.path());
    Connection idle(receiver.port());
    EXPECT_EQ(receiver.ask("GET", "/health").status, 200);
    EXPECT_EQ(receiver.end(SIGTERM), 0);
    EXPECT_TRUE(idle.is_closed_by_peer());
}

TEST(Receiver, doesntShareItsFolder) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto second = run_program({TRUEHANG_WORKROOM, "serve", "--data", folder.path().string(), "--port", "0"});
    EXPECT_EQ(second.exit_code, 2);
    EXPECT_NE(second.err.find("already"), std::string::npos);
}

TEST(Receiver, manyPhonesAtOnceEachGetTheirReceipts) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    constexpr int phones = 8;
    constexpr int revisions = 10;
    std::vector<int> kept(phones, 0);
    std::vector<std::thread> threads;
    for (int phone = 0; phone < phones; ++phone) {
        threads.emplace_back([&, phone] {
            const auto name = "visit-" + std::to_string(phone);
            for (long long revision = 1; revision <= revisions; ++revision) {
                kept.at(static_cast<std::size_t>(phone)) +=
                    receiver.put_survey(token, name, revision, example_survey(name, revision)).status == 201 ? 1 : 0;
            }
        });
    }
    for (auto& thread : threads) {
        thread.join();
    }
    EXPECT_EQ(kept, std::vector<int>(phones, revisions));
    for (int phone = 0; phone < phones; ++phone) {
        const auto there =
            read_survey_there(receiver.ask("GET", receipt_path("visit-" + std::to_string(phone)), bearer(token)).body);
        ASSERT_TRUE(there.ok());
        EXPECT_EQ(there->revisions.size(), static_cast<std::size_t>(revisions));
    }
}
