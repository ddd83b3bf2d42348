// SPDX-License-Identifier: Apache-2.0
#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/pairing_code.h"
#include "protocol/paths.h"
#include "protocol/problem.h"
#include "protocol/records.h"
#include "protocol/time_text.h"

#include <gtest/gtest.h>

using namespace truehang;
using namespace truehang::sync;

// NIST, FIPS 180-2 with change notice 1, appendix B.1 and B.2; the empty message from NIST's SHAVS short messages.
TEST(Digest, ofThePublishedMessages) {
    EXPECT_EQ(hex(sha256("abc")), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    EXPECT_EQ(hex(sha256("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")),
              "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
    EXPECT_EQ(hex(sha256("")), "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
}

TEST(Digest, inPiecesIsTheSame) {
    Sha256Stream stream;
    stream.add("a");
    stream.add("");
    stream.add("bc");
    EXPECT_EQ(stream.finish(), sha256("abc"));
    stream.add("abc");
    EXPECT_EQ(stream.finish(), sha256("abc"));
}

// RFC 9530, appendix B.1: {"hello": "world"} with a line feed, and its sha-256 Content-Digest.
TEST(Digest, fieldOfTheRfcsExample) {
    const auto digest = sha256("{\"hello\": \"world\"}\n");
    EXPECT_EQ(digest_field(digest), "sha-256=:RK/0qy18MlBSVnWgjwz6lZEWjP/lF5HF9bvEF8FabDg=:");
    const auto read = read_digest_field("sha-256=:RK/0qy18MlBSVnWgjwz6lZEWjP/lF5HF9bvEF8FabDg=:");
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(*read, std::optional(digest));
}

TEST(Digest, fieldWithOtherAlgorithms) {
    const auto both = read_digest_field("sha-512=:AAAA:, sha-256=:RK/0qy18MlBSVnWgjwz6lZEWjP/lF5HF9bvEF8FabDg=:");
    ASSERT_TRUE(both.ok());
    EXPECT_TRUE(both->has_value());
    const auto none = read_digest_field("sha-512=:AAAA:");
    ASSERT_TRUE(none.ok());
    EXPECT_FALSE(none->has_value());
}

TEST(Digest, fieldThatCantBeRead) {
    for (const auto* field : {"", "sha-256", "sha-256=abc", "sha-256=:abc:", "sha-256=::", ",",
                              "sha-256=:RK/0qy18MlBSVnWgjwz6lZEWjP/lF5HF9bvEF8FabDg:",
                              "sha-256=:RK/0qy18MlBSVnWgjwz6lZEWjP/lF5HF9bvEF8FabDh=:"}) {
        EXPECT_FALSE(read_digest_field(field).ok()) << field;
    }
}

TEST(Digest, hexIsLowerCaseAndWhole) {
    const std::string good(64, 'a');
    EXPECT_TRUE(sha256_from_hex(good));
    EXPECT_FALSE(sha256_from_hex(std::string(64, 'A')));
    EXPECT_FALSE(sha256_from_hex(std::string(63, 'a')));
    EXPECT_FALSE(sha256_from_hex(std::string(64, 'g')));
}

TEST(Paths, comeBackAsTheyWent) {
    for (const std::string id : {"01924f6a-7c00-7000-8000-000000000001", "pilot house", "a/b", "Ä%2F", "x?y#z"}) {
        const auto place = read_path(revision_path(id, 7));
        ASSERT_TRUE(place) << id;
        EXPECT_EQ(place->kind, Place::Kind::revision);
        EXPECT_EQ(place->survey, id);
        EXPECT_EQ(place->revision, 7);
        ASSERT_TRUE(read_path(receipt_path(id))) << id;
        EXPECT_EQ(read_path(receipt_path(id))->survey, id);
    }
    EXPECT_EQ(revision_path("a/b", 1), "/surveys/a%2Fb/revisions/1");
}

TEST(Paths, thatAreNone) {
    for (const auto* path : {"", "surveys/a/receipt", "/surveys//receipt", "/surveys/%2e%2E/receipt",
                             "/surveys/./receipt", "/surveys/a/revisions/0", "/surveys/a/revisions/01",
                             "/surveys/a/revisions/-1", "/surveys/a/revisions/9007199254740992",
                             "/surveys/a/revisions/1/", "/surveys/a%2/receipt", "/surveys/a%00/receipt",
                             "/surveys/a/revisions/99999999999999999999", "/photos/abc", "/pair/", "/photos/../etc"}) {
        EXPECT_FALSE(read_path(path)) << path;
    }
    EXPECT_FALSE(read_path("/surveys/" + std::string(id_limit + 1, 'a') + "/receipt"));
    EXPECT_TRUE(read_path("/surveys/" + std::string(id_limit, 'a') + "/receipt"));
}

TEST(Records, comeBackAsTheyWent) {
    const SurveyReceipt receipt{"pilot \"house\"", 3, std::string(64, 'a'), "2026-03-14T10:20:00Z"};
    const auto read = read_survey_receipt(write_record(receipt));
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(*read, receipt);
    const auto there = read_survey_there(write_record(SurveyThere{"a", {receipt}, {std::string(64, 'b')}}));
    ASSERT_TRUE(there.ok());
    EXPECT_EQ(there->revisions.size(), 1U);
    EXPECT_EQ(there->photos_missing.size(), 1U);
}

TEST(Records, ofWhatCameInComeBackToo) {
    const SurveyReceipt receipt{"a", 3, std::string(64, 'a'), "2026-03-14T10:20:00Z"};
    Changes changes{{{receipt, "", "Ben’s phone"}, {receipt, "", ""}}, "cursor-2", true};
    changes.changes.push_back({{"b", 0, "", ""}, "2026-03-14T10:21:00Z", ""});
    const auto read = read_changes(write_record(changes));
    ASSERT_TRUE(read.ok());
    ASSERT_EQ(read->changes.size(), 3U);
    EXPECT_EQ(read->changes[0].receipt, receipt);
    EXPECT_EQ(read->changes[0].sent_by, "Ben’s phone");
    EXPECT_TRUE(read->changes[1].sent_by.empty());
    EXPECT_EQ(read->changes[2].receipt.id, "b");
    EXPECT_EQ(read->changes[2].erased_at, "2026-03-14T10:21:00Z");
    EXPECT_EQ(read->next, "cursor-2");
    EXPECT_TRUE(read->more);
    for (const char* wrong : {R"([])", R"({"changes": [{"id": "a"}], "next": "", "more": false})",
                              R"({"changes": [1], "next": ""})", R"({"changes": []})"}) {
        EXPECT_FALSE(read_changes(wrong).ok()) << wrong;
    }
}

TEST(Records, sayWhereTheyCantBeRead) {
    const auto wrong_type = read_survey_receipt(R"({"id": "a", "revision": "3"})");
    ASSERT_FALSE(wrong_type.ok());
    EXPECT_EQ(wrong_type.error().where, "/revision");
    EXPECT_EQ(read_survey_receipt("[]").error().where, "");
    EXPECT_FALSE(read_survey_receipt("<html>").ok());
    EXPECT_FALSE(
        read_survey_receipt(R"({"id": "a", "revision": 18446744073709551615, "sha256": "", "received_at": ""})").ok());
    EXPECT_EQ(read_pair_request(R"({"code": 1})").error().where, "/code");
}

TEST(Problems, areOnlyTheProtocolsOwn) {
    const auto read =
        read_problem(write_problem({ProblemKind::malformed_document, "It has faults.", {{"/rooms/0", "missing"}}}));
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(read->kind, ProblemKind::malformed_document);
    ASSERT_EQ(read->faults.size(), 1U);
    EXPECT_EQ(read->faults[0].pointer, "/rooms/0");
    EXPECT_FALSE(read_problem(R"({"type": "about:blank", "status": 409})").ok());
    EXPECT_FALSE(read_problem("<html>409</html>").ok());
    EXPECT_FALSE(read_problem(R"({"type": 5})").ok());
}

TEST(PairingCode, forgivesHowItIsTyped) {
    EXPECT_EQ(pairing_code(0), "0000-0000");
    const auto code = pairing_code(0x123456789abcdefULL);
    ASSERT_EQ(code.size(), 9U);
    const auto read = read_pairing_code(code);
    ASSERT_TRUE(read);
    EXPECT_EQ(read_pairing_code("7k2m qx4d"), read_pairing_code("7K2M-QX4D"));
    EXPECT_EQ(read_pairing_code("OIL0-1111"), std::optional<std::string>("01101111"));
    for (const auto* typed : {"", "7K2M-QX4", "7K2M-QX4DD", "7K2M-QX4U", "7K2M_QX4D"}) {
        EXPECT_FALSE(read_pairing_code(typed)) << typed;
    }
}

// RFC 3339, section 5.8: the first two examples.
TEST(Times, ofTheRfc) {
    const auto utc = read_time("1985-04-12T23:20:50.52Z");
    ASSERT_TRUE(utc);
    EXPECT_EQ(utc->time_since_epoch().count(), 482196050520LL);
    EXPECT_EQ(write_time(*utc), "1985-04-12T23:20:50.520Z");
    const auto offset = read_time("1996-12-19T16:39:57-08:00");
    ASSERT_TRUE(offset);
    EXPECT_EQ(offset, read_time("1996-12-20T00:39:57Z"));
    for (const auto* text :
         {"", "1996-12-19", "1996-12-19T16:39:57", "1996-13-19T16:39:57Z", "1996-12-19T16:39:57Zx"}) {
        EXPECT_FALSE(read_time(text)) << text;
    }
}

// RFC 9110, 5.6.7; the seconds as GNU date counts them.
TEST(Times, ofHttp) {
    const auto time = read_http_date("Sun, 06 Nov 1994 08:49:37 GMT");
    ASSERT_TRUE(time);
    EXPECT_EQ(time->time_since_epoch().count(), 784111777000LL);
    for (const auto* text : {"", "120", "Sun, 06 Nov 1994", "Sun, 06 Nov 1994 08:49:37 CET"}) {
        EXPECT_FALSE(read_http_date(text)) << text;
    }
}
