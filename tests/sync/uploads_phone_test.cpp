// SPDX-License-Identifier: Apache-2.0
// The phone's outbox against a receiver as a process, over sockets that are cut: what is sent, and what is sent again.
#include "outbox/outbox.h"

#include "protocol/limits.h"
#include "receiver_process.h"
#include "simulated_workroom.h"

#include <gtest/gtest.h>

#include <csignal>
#include <random>

using namespace truehang::sync;
using namespace truehang::sync::test;

namespace {

constexpr std::size_t five_megabytes = 5'000'000;

std::string noise(std::size_t count) {
    std::mt19937_64 random(7);
    std::string bytes(count, '\0');
    for (auto& byte : bytes) {
        byte = static_cast<char>(random() & 0xffU);
    }
    return bytes;
}

/// An outbox whose wire is a real one, in time that passes only where it waits.
struct Phone {
    TemporaryFolder folder;
    std::unique_ptr<Receiver> receiver = std::make_unique<Receiver>(folder.path());
    std::string token = receiver->pair();
    std::string content = noise(five_megabytes);
    Item photo = item_with(content);
    Shelf shelf;
    Time now = start;
    Outbox outbox{shelf, [this] { return now; }, [] { return std::uint64_t{0}; }};
    std::size_t sent = 0;  ///< bytes of the photo that were put on the wire

    Phone() {
        shelf.items = {photo};
        outbox.paired();
    }
    void restart() {
        receiver->end(SIGKILL);
        receiver = std::make_unique<Receiver>(folder.path());
    }
    Request next() {
        auto step = outbox.next();
        if (!step.request && step.wake_at) {
            now = *step.wake_at;
            step = outbox.next();
        }
        EXPECT_TRUE(step.request);
        return step.request.value_or(Request{});
    }
    [[nodiscard]] std::string_view body_of(const Request& request) const {
        const std::string_view whole = request.body_of ? std::string_view(content) : std::string_view();
        return request.range ? whole.substr(static_cast<std::size_t>(request.range->from),
                                            static_cast<std::size_t>(request.range->bytes))
                             : whole;
    }
    void deliver(const Request& request) {
        Fields fields(request.headers.begin(), request.headers.end());
        fields.emplace_back("Authorization", "Bearer " + token);
        const auto body = body_of(request);
        sent += body.size();
        const auto reply = receiver->ask(std::string(word_of(request.method)), request.path, fields, body);
        if (reply.status == 0) {
            return outbox.failed(request.ticket, WireFailure::broken_off);
        }
        outbox.answered(request.ticket, {reply.status, {reply.headers.begin(), reply.headers.end()}, reply.body});
    }
    /// Sends so much of the body, and no more; waits until the receiver has seen the end of it.
    void cut(const Request& request, std::size_t after) {
        const auto body = body_of(request);
        std::string head =
            std::string(word_of(request.method)) + " " + request.path + " HTTP/1.1\r\nHost: 127.0.0.1\r\n";
        for (const auto& [name, value] : request.headers) {
            head += name + ": " + value + "\r\n";
        }
        head += "Authorization: Bearer " + token + "\r\nContent-Length: " + std::to_string(body.size()) + "\r\n\r\n";
        Connection connection(receiver->port());
        sent += after;
        EXPECT_TRUE(connection.send(head + std::string(body.substr(0, after))));
        connection.end_sending();
        EXPECT_TRUE(connection.is_closed_by_peer());
        outbox.failed(request.ticket, WireFailure::broken_off);
    }
    void end() {
        for (int i = 0; i < 100 && !shelf.items.empty(); ++i) {
            deliver(next());
        }
    }
    void expect_there() const {
        EXPECT_TRUE(shelf.confirmed.contains(photo.key));
        const auto reply = receiver->ask("GET", photo_path(photo.sha256), {{"Authorization", "Bearer " + token}});
        EXPECT_EQ(reply.body, content);
    }
};

}  // namespace

// A cut at nine tenths: of a PUT 4,500,000 bytes would be sent again.
TEST(PhoneUploads, aCutAtNineTenthsSendsNoByteTwice) {
    Phone phone;
    auto request = phone.next();
    while (!request.range || request.range->from + request.range->bytes < 4'500'000) {
        phone.deliver(request);
        request = phone.next();
    }
    phone.cut(request, 4'500'000U - static_cast<std::size_t>(request.range->from));
    phone.end();
    phone.expect_there();
    EXPECT_EQ(phone.sent, five_megabytes);
}

TEST(PhoneUploads, aReceiverThatIsKilledAfterEveryPieceStillGetsIt) {
    Phone phone;
    for (int i = 0; i < 30 && !phone.shelf.items.empty(); ++i) {
        phone.deliver(phone.next());
        phone.restart();
    }
    phone.expect_there();
    EXPECT_EQ(phone.sent, five_megabytes) << "what was confirmed is never asked for again";
}

TEST(PhoneUploads, aReceiverThatIsKilledWithinAPieceLosesThatPieceAtMost) {
    Phone phone;
    auto request = phone.next();
    while (!request.range || request.range->from == 0) {
        phone.deliver(request);
        request = phone.next();
    }
    const auto piece = static_cast<std::size_t>(request.range->bytes);
    {
        Connection connection(phone.receiver->port());
        std::string head = "PATCH " + request.path + " HTTP/1.1\r\nHost: 127.0.0.1\r\nExpect: 100-continue\r\n";
        for (const auto& [name, value] : request.headers) {
            head += name + ": " + value + "\r\n";
        }
        connection.send(head + "Authorization: Bearer " + phone.token + "\r\nContent-Length: " + std::to_string(piece) +
                        "\r\n\r\n");
        EXPECT_EQ(connection.read_reply(false).status, 100);
        connection.send(phone.body_of(request).substr(0, piece / 2));
        phone.sent += piece / 2;
        phone.restart();
    }
    phone.outbox.failed(request.ticket, WireFailure::broken_off);
    phone.end();
    phone.expect_there();
    EXPECT_LE(phone.sent, five_megabytes + piece / 2);
}

TEST(PhoneUploads, aRevokedDeviceIsToldToPairAgainAndLeavesNothing) {
    Phone phone;
    phone.deliver(phone.next());
    phone.deliver(phone.next());
    ASSERT_EQ(run_program({TRUEHANG_WORKROOM, "revoke", "--data", phone.folder.path(), "A test's phone"}).exit_code, 0);
    phone.deliver(phone.next());
    EXPECT_EQ(phone.outbox.link().state, Link::State::pair_again);
    EXPECT_EQ(phone.shelf.items.size(), 1U) << "it stays on the phone";
}
