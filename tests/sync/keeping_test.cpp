// SPDX-License-Identifier: Apache-2.0
// What was received is looked through, copied and brought back by the program's commands.
#include "keeping_folder.h"

#include "protocol/paths.h"
#include "protocol/records.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <atomic>
#include <condition_variable>
#include <csignal>
#include <mutex>
#include <thread>

using namespace truehang::sync;
using namespace truehang::sync::test;

namespace fs = std::filesystem;

namespace {

const std::string id = "01924f6a-7c00-7000-8000-0000000000a1";
const std::string other_id = "01924f6a-7c00-7000-8000-0000000000a2";

/// Two surveys, the first with two revisions and a photo, and house rules.
struct Kept {
    TemporaryFolder folder;
    fs::path data = folder.path() / "data";
    fs::path copy = folder.path() / "copy";
    std::string photo = photo_of("the parlour");

    Kept() {
        fs::create_directory(data);
        Receiver receiver(data);
        const auto token = receiver.pair();
        EXPECT_EQ(receiver.put_survey(token, id, 1, survey_with_photo(id, 1, photo)).status, 201);
        EXPECT_EQ(receiver.put_survey(token, id, 2, survey_with_photo(id, 2, photo)).status, 201);
        EXPECT_EQ(receiver.put_survey(token, other_id, 1, example_survey(other_id, 1)).status, 201);
        EXPECT_EQ(receiver.put_photo(token, digest_of(photo), photo).status, 201);
        const auto site = "127.0.0.1:" + std::to_string(receiver.port());
        EXPECT_EQ(receiver
                      .ask("POST", "/house-rules",
                           {{"Content-Type", "application/x-www-form-urlencoded"},
                            {"Host", site},
                            {"Origin", "http://" + site}},
                           "from=0&name=Lined&hem_mm=160")
                      .status,
                  303);
        EXPECT_EQ(receiver.end(SIGTERM), 0);
    }

    [[nodiscard]] Outcome verify() const { return workroom({"verify", "--data", data}); }
    [[nodiscard]] Outcome backup() const { return workroom({"backup", "--data", data, copy}); }
    [[nodiscard]] Outcome restore(std::vector<std::string> more = {}) const {
        std::vector<std::string> words{"restore", "--data", folder.path() / "new", copy};
        words.insert(words.end(), more.begin(), more.end());
        return workroom(words);
    }
    /// Changes one byte of a file.
    static void flip(const fs::path& file, std::size_t at) {
        auto bytes = file_text(file);
        ASSERT_LT(at, bytes.size());
        bytes[at] = static_cast<char>(bytes[at] ^ 1);
        write_file(file, bytes);
    }
    /// Changes one byte of a kept document, behind the program's back.
    static void flip_document(const fs::path& folder, long long revision) {
        SQLite::Database records((folder / "workroom.sqlite").string(), SQLite::OPEN_READWRITE);
        SQLite::Statement change(records,
                                 "UPDATE revision SET bytes = CAST(replace(CAST(bytes AS TEXT), 'Pilot', 'Pilos') AS "
                                 "BLOB) WHERE survey = ? AND revision = ?");
        change.bind(1, id);
        change.bind(2, static_cast<std::int64_t>(revision));
        ASSERT_EQ(change.exec(), 1);
    }
};

/// Four phones that send surveys with a photo each, all the time.
class SendingPhones {
public:
    explicit SendingPhones(const fs::path& data) : receiver_(data), token_(receiver_.pair()) {
        for (int phone = 0; phone < 4; ++phone) {
            phones_.emplace_back([this, phone] { send(phone); });
        }
    }
    ~SendingPhones() {
        ended_ = true;
        for (auto& phone : phones_) {
            phone.join();
        }
    }
    SendingPhones(const SendingPhones&) = delete;
    SendingPhones& operator=(const SendingPhones&) = delete;

    /// The surveys that were confirmed with their photo, once there are so many.
    std::vector<std::string> wait_for(std::size_t count) {
        std::unique_lock lock(mutex_);
        more_.wait(lock, [&] { return confirmed_.size() >= count; });
        return confirmed_;
    }

private:
    void send(int phone) {
        for (int i = 0; !ended_; ++i) {
            const auto survey = "phone-" + std::to_string(phone) + "-" + std::to_string(i);
            const auto photo = photo_of(survey);
            const bool there =
                receiver_.put_survey(token_, survey, 1, survey_with_photo(survey, 1, photo)).status == 201;
            const bool shown = receiver_.put_photo(token_, digest_of(photo), photo).status == 201;
            EXPECT_TRUE(there && shown);
            const std::lock_guard lock(mutex_);
            confirmed_.push_back(survey);
            more_.notify_one();
        }
    }

    Receiver receiver_;
    std::string token_;
    std::mutex mutex_;
    std::condition_variable more_;
    std::vector<std::string> confirmed_;
    std::atomic<bool> ended_{false};
    std::vector<std::thread> phones_;
};

bool says(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// The last line of what was said.
std::string last_line(const std::string& text) {
    const auto end = text.find_last_not_of('\n');
    const auto before = text.rfind('\n', end);
    return text.substr(before == std::string::npos ? 0 : before + 1, end - (before + 1) + 1);
}

}  // namespace

TEST(Verify, saysHowMuchIsWhole) {
    const Kept kept;
    const auto found = kept.verify();
    EXPECT_EQ(found.exit_code, 0) << found.out << found.err;
    EXPECT_EQ(found.out, kept.data.string() +
                             ": 3 documents, 1 photos (0.0 MB), 0 versions of rolls, 1 of house rules: all whole.\n");
}

TEST(Verify, findsOneByteOfAPhotoChanged) {
    const Kept kept;
    Kept::flip(photo_file(kept.data, kept.photo), 100);
    const auto found = kept.verify();
    EXPECT_EQ(found.exit_code, 1);
    EXPECT_TRUE(says(found.out, "photo " + digest_of(kept.photo) + ": Its bytes aren’t the ones that were received.\n"))
        << found.out;
    EXPECT_TRUE(last_line(found.out).ends_with("house rules: 1 fault.")) << found.out;
}

TEST(Verify, findsAPhotoThatIsGoneOrCutShort) {
    const Kept kept;
    const auto file = photo_file(kept.data, kept.photo);
    fs::resize_file(file, 1000);
    EXPECT_TRUE(says(kept.verify().out, "It is 1000 bytes long; 3015 were received."));
    fs::remove(file);
    const auto found = kept.verify();
    EXPECT_EQ(found.exit_code, 1);
    EXPECT_TRUE(says(found.out, "photo " + digest_of(kept.photo) + ": Its file isn’t there.")) << found.out;
}

TEST(Verify, findsOneByteOfADocumentChanged) {
    const Kept kept;
    Kept::flip_document(kept.data, 2);
    const auto found = kept.verify();
    EXPECT_EQ(found.exit_code, 1);
    EXPECT_TRUE(says(found.out, "revision 2 of " + id + ": Its bytes aren’t the ones that were received.\n"))
        << found.out;
    EXPECT_FALSE(says(found.out, "revision 1 of"));
}

TEST(Verify, findsRecordsAndHouseRulesThatDontRead) {
    const Kept kept;
    write_file(kept.data / "rules" / "1.json", "{");
    EXPECT_TRUE(says(kept.verify().out, "version 1 of the house rules: "));
    auto records = file_text(kept.data / "workroom.sqlite");
    records.replace(records.size() / 2, 4096, std::string(4096, '\x5a'));
    write_file(kept.data / "workroom.sqlite", records);
    const auto found = kept.verify();
    EXPECT_EQ(found.exit_code, 1) << found.err;
    EXPECT_TRUE(says(found.out, "workroom.sqlite: ")) << found.out;
}

TEST(Verify, tellsOfLooseFilesAmongThePhotosWithoutCallingThemAFault) {
    const Kept kept;
    const auto loose = photo_file(kept.data, "never recorded");
    fs::create_directories(loose.parent_path());
    write_file(loose, "never recorded");
    const auto found = kept.verify();
    EXPECT_EQ(found.exit_code, 0);
    EXPECT_TRUE(says(found.out, loose.string() + ": No record tells of it")) << found.out;
}

TEST(Verify, refusesWhatIsNoWorkroomsFolder) {
    const TemporaryFolder folder;
    const auto found = workroom({"verify", "--data", folder.path()});
    EXPECT_EQ(found.exit_code, 2);
    EXPECT_TRUE(says(found.err, "No workroom’s records are there.")) << found.err;
    EXPECT_TRUE(fs::is_empty(folder.path())) << "looking makes nothing";
}

TEST(Backup, holdsEveryReceiptGivenBeforeItBeganWhileOthersSend) {
    const Kept kept;
    std::vector<std::string> before;
    {
        SendingPhones phones(kept.data);
        before = phones.wait_for(20);
        const auto made = kept.backup();
        ASSERT_EQ(made.exit_code, 0) << made.out << made.err;
        EXPECT_GT(phones.wait_for(0).size(), before.size()) << "phones went on sending meanwhile";
    }
    const auto restored = kept.restore();
    ASSERT_EQ(restored.exit_code, 0) << restored.out << restored.err;
    EXPECT_EQ(workroom({"verify", "--data", kept.folder.path() / "new"}).exit_code, 0);
    const Receiver again(kept.folder.path() / "new");
    for (const auto& survey : before) {
        const auto there = read_survey_there(again.ask("GET", receipt_path(survey)).body);
        ASSERT_TRUE(there.ok()) << survey;
        EXPECT_TRUE(there->photos_missing.empty()) << survey;
    }
}

TEST(Backup, isAFolderThatCanBeServedWithItsTokens) {
    const Kept kept;
    std::string token;
    {
        const Receiver receiver(kept.data);
        token = receiver.pair();
        ASSERT_EQ(kept.backup().exit_code, 0);
    }
    EXPECT_TRUE(fs::exists(kept.copy / "rules" / "1.json"));
    const Receiver copy(kept.copy);
    EXPECT_EQ(copy.put_survey(token, id, 2, survey_with_photo(id, 2, kept.photo)).status, 200) << "there already";
    const auto photo = copy.ask("GET", photo_path(digest_of(kept.photo)));
    EXPECT_EQ(photo.body, kept.photo);
}

TEST(Backup, neverWritesOver) {
    const Kept kept;
    ASSERT_EQ(kept.backup().exit_code, 0);
    const auto again = kept.backup();
    EXPECT_EQ(again.exit_code, 2);
    EXPECT_TRUE(says(again.err, "Something is there already.")) << again.err;
    fs::create_directory(kept.folder.path() / "next.part");
    const auto part = workroom({"backup", "--data", kept.data, kept.folder.path() / "next"});
    EXPECT_EQ(part.exit_code, 2);
    EXPECT_TRUE(says(part.err, "next.part: It is left from a copy that was broken off")) << part.err;
}

TEST(Backup, saysWhichPhotosArentWhole) {
    const Kept kept;
    Kept::flip(photo_file(kept.data, kept.photo), 100);
    const auto made = kept.backup();
    EXPECT_EQ(made.exit_code, 1);
    EXPECT_TRUE(says(made.out, "photo " + digest_of(kept.photo))) << made.out;
    EXPECT_TRUE(fs::exists(kept.copy));
}

// A disk without room is played by a limit on the size of a file (setrlimit, RLIMIT_FSIZE; POSIX.1-2017).
TEST(Backup, thatCantBeWrittenLeavesNothing) {
    const Kept kept;
    const auto made = run_program({"/bin/sh", "-c", "trap '' XFSZ; ulimit -f 8; exec \"$@\"", "sh", TRUEHANG_WORKROOM,
                                   "backup", "--data", kept.data, kept.copy});
    EXPECT_EQ(made.exit_code, 2) << made.out;
    EXPECT_FALSE(fs::exists(kept.copy));
    EXPECT_FALSE(fs::exists(kept.copy.string() + ".part"));
}

TEST(Restore, refusesABackupWithAFaultAndMakesNothing) {
    const Kept kept;
    ASSERT_EQ(kept.backup().exit_code, 0);
    Kept::flip_document(kept.copy, 2);
    const auto restored = kept.restore();
    EXPECT_EQ(restored.exit_code, 2);
    EXPECT_TRUE(says(restored.err, "This backup has 1 fault. Nothing was restored")) << restored.err;
    EXPECT_FALSE(fs::exists(kept.folder.path() / "new"));
}

TEST(Restore, bringsBackWhatIsWholeWhereItIsAskedTo) {
    const Kept kept;
    ASSERT_EQ(kept.backup().exit_code, 0);
    Kept::flip_document(kept.copy, 2);
    Kept::flip(photo_file(kept.copy, kept.photo), 100);
    const auto restored = kept.restore({"--what-is-whole"});
    EXPECT_EQ(restored.exit_code, 1) << restored.err;
    EXPECT_TRUE(says(restored.out, "revision 2 of " + id)) << restored.out;
    EXPECT_TRUE(says(restored.out, "photo " + digest_of(kept.photo))) << restored.out;
    const auto made = kept.folder.path() / "new";
    EXPECT_EQ(workroom({"verify", "--data", made}).exit_code, 0);
    const Receiver receiver(made);
    const auto there = read_survey_there(receiver.ask("GET", receipt_path(id)).body);
    ASSERT_TRUE(there.ok());
    EXPECT_EQ(there->revisions.size(), 1U);
    EXPECT_EQ(there->photos_missing, std::vector<std::string>{digest_of(kept.photo)}) << "so that it is sent again";
    EXPECT_EQ(receiver.ask("GET", "/").status, 200);
}

TEST(Restore, readsWhatItCanOfDamagedRecords) {
    const Kept kept;
    {
        Receiver receiver(kept.data);
        const auto token = receiver.pair();
        for (int i = 0; i < 40; ++i) {
            const auto survey = "visit-" + std::to_string(i);
            ASSERT_EQ(receiver.put_survey(token, survey, 1, example_survey(survey, 1)).status, 201);
        }
        ASSERT_EQ(receiver.end(SIGTERM), 0);
    }
    ASSERT_EQ(kept.backup().exit_code, 0);
    auto records = file_text(kept.copy / "workroom.sqlite");
    records.replace(records.size() / 2 / 4096 * 4096, 4096, std::string(4096, '\x5a'));
    write_file(kept.copy / "workroom.sqlite", records);
    EXPECT_EQ(kept.restore().exit_code, 2);
    const auto restored = kept.restore({"--what-is-whole"});
    EXPECT_EQ(restored.exit_code, 1) << restored.out << restored.err;
    const auto made = kept.folder.path() / "new";
    const auto looked = workroom({"verify", "--data", made});
    EXPECT_EQ(looked.exit_code, 0) << looked.out;
    // One page of some hundred is gone: by far the most of the 43 documents must be there.
    const auto count = std::stoi(looked.out.substr(made.string().size() + 2));
    EXPECT_GE(count, 35) << looked.out;
    EXPECT_LT(count, 44);
}

TEST(Restore, refusesAFolderThatHoldsSomething) {
    const Kept kept;
    ASSERT_EQ(kept.backup().exit_code, 0);
    fs::create_directory(kept.folder.path() / "new");
    EXPECT_EQ(kept.restore().exit_code, 0) << "an empty folder is nothing";
    const auto again = kept.restore();
    EXPECT_EQ(again.exit_code, 2);
    EXPECT_TRUE(says(again.err, "Something is there already.")) << again.err;
}
