// SPDX-License-Identifier: Apache-2.0
#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/paths.h"
#include "protocol/problem.h"
#include "receiver_process.h"

#include <gtest/gtest.h>

#include <memory>

using namespace truehang::sync;
using namespace truehang::sync::test;

// What is taken of HTTP and what isn't: RFC 9112 (framing, Host), RFC 9110 (statuses, Expect), RFC 6585 (431).

namespace {

const std::string id = "visit";

std::string put_head(const std::string& token, const std::string& path, const std::string& more) {
    return "PUT " + path + " HTTP/1.1\r\nHost: 127.0.0.1\r\nAuthorization: Bearer " + token +
           "\r\nContent-Type: application/json\r\n" + more + "\r\n";
}

Reply raw(const Receiver& receiver, const std::string& bytes) {
    Connection connection(receiver.port());
    connection.send(bytes);
    return connection.read_reply();
}

}  // namespace

TEST(ReceiverBounds, refusesWhatIsTooLargeBeforeItComes) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    const auto document =
        put_head(token, revision_path(id, 1), "Content-Length: " + std::to_string(document_limit + 1) + "\r\n");
    EXPECT_EQ(raw(receiver, document).status, 413);
    const auto photo = put_head(token, photo_path(std::string(64, 'a')),
                                "Content-Length: " + std::to_string(photo_limit + 1) + "\r\n");
    EXPECT_EQ(raw(receiver, photo).status, 413);
    const auto endless = put_head(token, revision_path(id, 1), "Content-Length: 99999999999999999999999999\r\n");
    EXPECT_GE(raw(receiver, endless).status, 400);
}

TEST(ReceiverBounds, refusesChunksThatNeverEnd) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    Connection connection(receiver.port());
    connection.send(put_head(token, revision_path(id, 1), "Transfer-Encoding: chunked\r\n"));
    const std::string chunk = "10000\r\n" + std::string(0x10000, ' ') + "\r\n";
    for (int i = 0; i < 70 && connection.send(chunk); ++i) {
    }
    EXPECT_EQ(connection.read_reply().status, 413);
}

TEST(ReceiverBounds, takesADocumentInChunks) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    const auto survey = example_survey(id, 1);
    std::string chunks;
    for (std::size_t at = 0; at < survey.size(); at += 256) {
        const auto piece = survey.substr(at, 256);
        std::array<char, 16> size{};
        std::snprintf(size.data(), size.size(), "%zx\r\n", piece.size());
        chunks += size.data() + piece + "\r\n";
    }
    const auto head =
        put_head(token, revision_path(id, 1),
                 "Transfer-Encoding: chunked\r\nContent-Digest: " + digest_field(sha256(survey)) + "\r\n");
    EXPECT_EQ(raw(receiver, head + chunks + "0\r\n\r\n").status, 201);
}

TEST(ReceiverBounds, storesNothingOfABodyThatStopsShort) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    const std::string photo(50'000, 'p');
    {
        Connection connection(receiver.port());
        connection.send(put_head(token, photo_path(hex(sha256(photo))), "Content-Length: 50000\r\n"));
        connection.send(photo.substr(0, 20'000));
        connection.end_sending();
        const auto reply = connection.read_reply();
        EXPECT_TRUE(reply.status == 0 || reply.status >= 400) << reply.status;
    }
    EXPECT_EQ(receiver.ask("HEAD", photo_path(hex(sha256(photo))), {{"Authorization", "Bearer " + token}}).status, 404);
    EXPECT_TRUE(std::filesystem::is_empty(folder.path() / "photos"));
}

TEST(ReceiverBounds, refusesLengthsThatContradictEachOther) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    const auto path = revision_path(id, 1);
    EXPECT_EQ(raw(receiver, put_head(token, path, "Content-Length: 2\r\nContent-Length: 3\r\n") + "{}").status, 400);
    EXPECT_EQ(raw(receiver,
                  put_head(token, path, "Content-Length: 2\r\nTransfer-Encoding: chunked\r\n") + "2\r\n{}\r\n0\r\n\r\n")
                  .status,
              400);
    EXPECT_EQ(raw(receiver, put_head(token, path, "Content-Length: -2\r\n")).status, 400);
    EXPECT_EQ(raw(receiver, put_head(token, path, "Transfer-Encoding: chunked\r\n") + "zz\r\n{}\r\n0\r\n\r\n").status,
              400);
}

TEST(ReceiverBounds, saysThatATransferCodingIsUnknown) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    EXPECT_EQ(raw(receiver, put_head(token, revision_path(id, 1), "Transfer-Encoding: gzip\r\n")).status, 501);
    EXPECT_EQ(raw(receiver, put_head(token, revision_path(id, 1), "Transfer-Encoding: gzip, chunked\r\n")).status, 501);
}

TEST(ReceiverBounds, aPhotoSaysHowLongItIs) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    EXPECT_EQ(raw(receiver, put_head(token, photo_path(std::string(64, 'a')), "Transfer-Encoding: chunked\r\n")).status,
              411);
}

TEST(ReceiverBounds, asksForOneHostAndAPath) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    EXPECT_EQ(raw(receiver, "GET /health HTTP/1.1\r\n\r\n").status, 400);
    EXPECT_EQ(raw(receiver, "GET /health HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n").status, 400);
    EXPECT_EQ(raw(receiver, "GET health HTTP/1.1\r\nHost: a\r\n\r\n").status, 400);
    EXPECT_EQ(raw(receiver, "\x16\x03\x01 not http at all\r\n\r\n").status, 400);
}

TEST(ReceiverBounds, headersHaveALimit) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const std::string start = "GET /health HTTP/1.1\r\nHost: a\r\n";
    EXPECT_EQ(raw(receiver, start + "X: " + std::string(20'000, 'x') + "\r\n\r\n").status, 431);
    std::string many = start;
    for (int i = 0; i < 5'000; ++i) {
        many += "X" + std::to_string(i) + ": y\r\n";
    }
    EXPECT_EQ(raw(receiver, many + "\r\n").status, 431);
}

TEST(ReceiverBounds, continuesOnlyWhatItWillTake) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    const auto token = receiver.pair();
    const auto survey = example_survey(id, 1);
    const auto more =
        "Expect: 100-continue\r\nContent-Digest: " + digest_field(sha256(survey)) + "\r\nContent-Length: ";
    Connection connection(receiver.port());
    connection.send(put_head(token, revision_path(id, 1), more + std::to_string(survey.size()) + "\r\n"));
    EXPECT_EQ(connection.read_reply(false).status, 100);
    connection.send(survey);
    EXPECT_EQ(connection.read_reply().status, 201);
    EXPECT_EQ(raw(receiver, put_head(token, revision_path(id, 2), more + "99999999\r\n")).status, 413);
}

TEST(ReceiverBounds, slowClientsAreDroppedAndOthersServedMeanwhile) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path(),
                            {"--header-seconds", "0.5", "--stall-seconds", "0.5", "--idle-seconds", "0.5"});
    const auto token = receiver.pair();
    std::vector<std::unique_ptr<Connection>> slow;
    for (int i = 0; i < 100; ++i) {
        slow.push_back(std::make_unique<Connection>(receiver.port()));
        slow.back()->send("GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX: ");
    }
    Connection body(receiver.port());
    body.send(put_head(token, revision_path(id, 1), "Content-Length: 1000\r\n") + "{");
    Connection silent(receiver.port());
    EXPECT_EQ(receiver.ask("GET", "/health").status, 200);
    for (auto& connection : slow) {
        EXPECT_TRUE(connection->is_closed_by_peer());
    }
    EXPECT_TRUE(body.is_closed_by_peer());
    EXPECT_TRUE(silent.is_closed_by_peer());
    EXPECT_EQ(receiver.ask("GET", "/health").status, 200);
}

TEST(ReceiverBounds, severalRequestsOnOneConnection) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    Connection connection(receiver.port());
    const std::string ask = "GET /health HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n";
    connection.send(ask + ask);
    EXPECT_EQ(connection.read_reply().status, 200);
    EXPECT_EQ(connection.read_reply().status, 200);
    connection.send(ask);
    EXPECT_EQ(connection.read_reply().status, 200);
}

TEST(ReceiverBounds, methodsAndPathsThatArentHere) {
    const TemporaryFolder folder;
    const Receiver receiver(folder.path());
    EXPECT_EQ(receiver.ask("DELETE", revision_path(id, 1)).status, 405);
    EXPECT_EQ(receiver.ask("GET", "/pair").status, 405);
    EXPECT_EQ(receiver.ask("GET", "/surveys/../../etc/passwd").status, 404);
    EXPECT_EQ(receiver.ask("GET", "/font/../lato.ttf").status, 404);
    EXPECT_EQ(receiver.ask("POST", "/pair", {{"Content-Type", "text/plain"}}, "{}").status, 415);
}
