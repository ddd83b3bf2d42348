// SPDX-License-Identifier: Apache-2.0
// Who may send, with the clock in the test's hand.
#include "receiver_process.h"
#include "workroom/archive/access.h"
#include "workroom/archive/device_shelf.h"
#include "workroom/archive/schema.h"
#include "workroom/site/reception.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <gtest/gtest.h>

using namespace truehang;
using namespace truehang::workroom;
using namespace std::chrono_literals;

namespace {

struct Workroom {
    sync::test::TemporaryFolder folder;
    sync::Time now = *sync::read_time("2026-03-14T10:00:00Z");
    std::unique_ptr<Archive> archive = opened();
    std::optional<Access> access{std::in_place, *archive};

    [[nodiscard]] std::unique_ptr<Archive> opened() {
        return std::move(Archive::open(folder.path(), [this] { return now; })).value();
    }
    [[nodiscard]] std::string pair(const std::string& name) {
        return std::move(access->pair(*access->new_code(), name)).value();
    }
    /// The program ends and is started again.
    void restart() {
        access.reset();
        archive.reset();
        archive = opened();
        access.emplace(*archive);
    }
    /// What is queued was written when a later write has been.
    void let_write() { ASSERT_TRUE(access->new_code().ok()); }
    [[nodiscard]] std::vector<PairedDevice> devices() const { return std::move(DeviceShelf(*archive).all()).value(); }
    [[nodiscard]] std::optional<sync::Time> last_seen() const { return devices().front().last_seen; }
    void see(const std::string& token) {
        ASSERT_TRUE(access->device_of(token)->has_value());
        access->write_last_seen();
        let_write();
    }
};

std::string id_of(const std::string& token) { return token.substr(0, token.find('.')); }

}  // namespace

TEST(Devices, areListedAsTheyWerePaired) {
    Workroom workroom;
    EXPECT_TRUE(workroom.devices().empty());
    const auto first = workroom.pair("Zoe’s phone");
    workroom.now += 1h;
    const auto second = workroom.pair("Anna’s phone");
    const auto devices = workroom.devices();
    ASSERT_EQ(devices.size(), 2U);
    EXPECT_EQ(devices[0].id, id_of(first));
    EXPECT_EQ(devices[0].name, "Zoe’s phone");
    EXPECT_EQ(devices[0].paired_at, "2026-03-14T10:00:00.000Z");
    EXPECT_EQ(devices[1].paired_at, "2026-03-14T11:00:00.000Z");
    EXPECT_FALSE(devices[0].last_seen);
    EXPECT_EQ(devices[0].surveys, 0);
}

TEST(Devices, areWrittenDownAsSeenOnceInFiveMinutes) {
    Workroom workroom;
    const auto token = workroom.pair("phone");
    const auto first = workroom.now;
    workroom.see(token);
    EXPECT_EQ(workroom.last_seen(), first);
    workroom.now += 4min + 59s;
    workroom.see(token);
    EXPECT_EQ(workroom.last_seen(), first);
    workroom.restart();
    workroom.see(token);
    EXPECT_EQ(workroom.last_seen(), first) << "another run of the program keeps to it too";
    workroom.now = first + 5min;
    workroom.restart();
    workroom.see(token);
    EXPECT_EQ(workroom.last_seen(), first + 5min);
}

TEST(Devices, areSeenAgainAfterTheClockWasSetBack) {
    Workroom workroom;
    const auto token = workroom.pair("phone");
    workroom.see(token);
    workroom.now -= 24h;
    workroom.see(token);
    EXPECT_EQ(workroom.last_seen(), workroom.now);
}

TEST(Devices, areSeenWithoutAWriteUntilTheAnswerIsGiven) {
    Workroom workroom;
    const auto token = workroom.pair("phone");
    Reception reception(*workroom.archive, *workroom.access, {});
    http::Request request;
    request.head.method = "GET";
    request.head.path = "/rules";
    request.head.host = "workroom.example.org";
    request.head.headers = {{"Authorization", "Bearer " + token}};
    EXPECT_FALSE(reception.admit(request.head).refusal);
    int answers = 0;
    reception.answer(request, [&](const http::Response& response) {
        ++answers;
        EXPECT_EQ(response.status, 200);
        workroom.let_write();
        EXPECT_FALSE(workroom.last_seen()) << "nothing was queued before the answer";
    });
    EXPECT_EQ(answers, 1);
    workroom.let_write();
    EXPECT_EQ(workroom.last_seen(), workroom.now);
}

TEST(Devices, areKnownByTheirOwnTokensAlone) {
    Workroom workroom;
    const auto mine = workroom.pair("mine");
    const auto other = workroom.pair("other");
    EXPECT_EQ((*workroom.access->device_of(mine))->device, id_of(mine));
    const auto secret = other.substr(other.find('.'));
    for (const auto& token : {id_of(mine) + secret, id_of(mine) + ".", id_of(mine), secret, std::string("."),
                              std::string(), mine + "0", std::string(300, 'a') + "." + mine}) {
        EXPECT_FALSE(workroom.access->device_of(token)->has_value()) << token;
    }
}

// protocol/README.md: a code holds ten minutes and once.
TEST(Devices, areNotPairedByACodeThatIsTooOld) {
    Workroom workroom;
    const auto code = *workroom.access->new_code();
    const auto other = *workroom.access->new_code();
    workroom.now += 10min - 1ms;
    EXPECT_TRUE(workroom.access->pair(code, "in time").ok());
    EXPECT_FALSE(workroom.access->pair(code, "again").ok());
    workroom.now += 1ms;
    EXPECT_EQ(workroom.access->pair(other, "too late").error().code, ErrorCode::unknown_word);
    EXPECT_FALSE(workroom.access->sign_in(other).ok());
    workroom.now -= 1h;
    EXPECT_FALSE(workroom.access->pair(other, "by a clock set back").ok()) << "it is gone for good";
    EXPECT_EQ(workroom.devices().size(), 1U);
}

TEST(Devices, areRevokedForGoodAndToldSoOnlyByTheirOwnToken) {
    Workroom workroom;
    const auto token = workroom.pair("lost");
    const auto stays = workroom.pair("kept");
    workroom.now += 1min;
    const DeviceShelf shelf(*workroom.archive);
    EXPECT_TRUE(*shelf.revoke(id_of(token)));
    workroom.now += 1min;
    EXPECT_FALSE(*shelf.revoke(id_of(token))) << "it was revoked already";
    EXPECT_EQ(shelf.revoke("none").error().code, ErrorCode::missing);
    workroom.restart();
    EXPECT_TRUE((*workroom.access->device_of(token))->revoked);
    EXPECT_FALSE((*workroom.access->device_of(stays))->revoked);
    EXPECT_FALSE(workroom.access->device_of(id_of(token) + ".guessed")->has_value());
    const auto devices = DeviceShelf(*workroom.archive).all();
    ASSERT_EQ(devices->size(), 2U);
    EXPECT_EQ((*devices)[0].name, "kept") << "those that may send come first";
    EXPECT_EQ((*devices)[1].revoked_at, "2026-03-14T10:01:00.000Z") << "the first time counts";
    workroom.access->write_last_seen();
    workroom.let_write();
    EXPECT_FALSE(workroom.devices()[1].last_seen) << "one that is refused isn’t seen";
}

TEST(Devices, areFoundByIdOrByANameThatOnlyOneHas) {
    Workroom workroom;
    const auto first = workroom.pair("phone");
    const auto second = workroom.pair("phone");
    const auto third = workroom.pair("tablet");
    EXPECT_EQ(find_device(workroom.devices(), "tablet")->id, id_of(third));
    EXPECT_EQ(find_device(workroom.devices(), id_of(second))->id, id_of(second));
    EXPECT_EQ(find_device(workroom.devices(), "phone").error().code, ErrorCode::conflict);
    EXPECT_EQ(find_device(workroom.devices(), "Phone").error().code, ErrorCode::missing);
    ASSERT_TRUE(DeviceShelf(*workroom.archive).revoke(id_of(first)).ok());
    EXPECT_EQ(find_device(workroom.devices(), "phone")->id, id_of(second)) << "the other is revoked";
}

// Version 3 knew neither when a device was last seen nor whether it was revoked.
TEST(Devices, ofRecordsOfTheVersionBeforeMaySend) {
    const sync::test::TemporaryFolder folder;
    {
        SQLite::Database database((folder.path() / "workroom.sqlite").string(),
                                  SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        database.exec(schema);
        database.exec(later_schemas.at(0));
        database.exec(later_schemas.at(1));
        // The SHA-256 of “abc”: FIPS 180-2, appendix B.1.
        database.exec(
            "INSERT INTO device VALUES('old', 'Old phone', "
            "'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad', '2026-03-01T08:00:00Z')");
        database.exec("INSERT INTO revision VALUES('a', 1, 'x', '2026-03-02T08:00:00Z', 'old', x'7b7d')");
        database.exec("INSERT INTO revision VALUES('a', 2, 'x', '2026-03-02T08:00:00Z', 'old', x'7b7d')");
        database.exec("INSERT INTO revision VALUES('b', 1, 'x', '2026-03-02T08:00:00Z', 'old', x'7b7d')");
        database.exec("PRAGMA user_version = 3");
    }
    const auto archive = std::move(Archive::open(folder.path(), [] { return sync::Time{}; })).value();
    Access access(*archive);
    ASSERT_TRUE(access.device_of("old.abc")->has_value());
    EXPECT_FALSE((*access.device_of("old.abc"))->revoked);
    const auto devices = DeviceShelf(*archive).all();
    ASSERT_EQ(devices->size(), 1U);
    EXPECT_EQ(devices->front().surveys, 2) << "surveys, not revisions";
    EXPECT_TRUE(devices->front().revoked_at.empty());
}
