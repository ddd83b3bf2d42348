// SPDX-License-Identifier: Apache-2.0
// What lies unfinished in the workroom's folder, and what takes it away: age, a person who revokes a device or erases a
// survey. What each answer is stands in sync/protocol/README.md; that all of it is taken away, in
// sync/workroom/README.md.
#include "keeping_folder.h"

#include "protocol/limits.h"
#include "protocol/paths.h"
#include "protocol/problem.h"
#include "protocol/upload.h"
#include "workroom/archive/upload_shelf.h"
#include "workroom/site/upload_desk.h"

#include <csignal>
#include <memory>

using namespace truehang::sync;
using namespace truehang::sync::test;
using truehang::ErrorCode;
using truehang::workroom::remove_uploads_of;
using truehang::workroom::unfinished_in;
using truehang::workroom::UnfinishedUploads;
using truehang::workroom::UploadKey;
using truehang::workroom::UploadShelf;

namespace fs = std::filesystem;

namespace {

const std::string id = "01924f6a-7c00-7000-8000-0000000000c1";
const std::string some_digest(64, 'a');

Time now() { return std::chrono::time_point_cast<std::chrono::milliseconds>(std::chrono::system_clock::now()); }

/// A shelf whose clock stands so long after the system's, by which the files are dated.
struct Shelf {
    TemporaryFolder folder;
    std::chrono::milliseconds later{0};
    UploadShelf shelf{folder.path(), [this] { return now() + later; }};

    [[nodiscard]] bool take(const UploadKey& key, long long offset, std::string_view bytes) {
        const auto piece = shelf.open_piece(key, offset);
        return piece && piece->intake && piece->intake->take(bytes) && piece->intake->finish().ok();
    }
    [[nodiscard]] long long offset(const UploadKey& key) {
        const auto state = shelf.look(key);
        return state && *state ? (*state)->offset : -1;
    }
};

/// A served folder with a device that has part of a photo there.
struct Served {
    TemporaryFolder folder;
    fs::path data = folder.path();
    std::string photo;
    std::string digest = digest_of(photo);
    std::unique_ptr<Receiver> process;
    const Receiver& receiver;
    std::string token = receiver.pair();

    explicit Served(std::string bytes = photo_of("Marmoreal-Umbrage"), std::vector<std::string> before = {})
        : photo(std::move(bytes)),
          process(std::make_unique<Receiver>(data, std::vector<std::string>(), std::move(before))),
          receiver(*process) {}

    [[nodiscard]] Reply ask(const std::string& method, const std::string& path, Fields fields = {},
                            std::string_view body = {}) const {
        fields.emplace_back("Authorization", "Bearer " + token);
        return receiver.ask(method, path, fields, body);
    }
    [[nodiscard]] Reply begin() const {
        return ask("POST", photo_path(digest),
                   {{"Upload-Complete", "?0"}, {"Upload-Length", std::to_string(photo.size())}});
    }
    [[nodiscard]] Reply piece(std::size_t from, std::size_t count, bool last = false) const {
        return ask("PATCH", upload_path(digest),
                   {{"Content-Type", std::string(partial_upload_type)},
                    {"Upload-Offset", std::to_string(from)},
                    {"Upload-Complete", write_truth(last)}},
                   std::string_view(photo).substr(from, count));
    }
    void send_part() const {
        EXPECT_EQ(begin().status, 201);
        EXPECT_EQ(piece(0, 2000).status, 204);
    }
    [[nodiscard]] UnfinishedUploads unfinished() const { return unfinished_in(data / "uploads"); }
};

ProblemKind problem_of(const Reply& reply) {
    const auto problem = read_problem(reply.body);
    EXPECT_TRUE(problem.ok()) << reply.status << " " << reply.body;
    return problem ? problem->kind : ProblemKind::internal;
}

}  // namespace

// RFC 9651, 3.3.1 and 3.3.6; other values count as not sent (draft-ietf-httpbis-resumable-upload-12, 4.1).
TEST(UploadFields, areItemsOfRfc9651) {
    EXPECT_EQ(read_byte_count("0"), 0);
    EXPECT_EQ(read_byte_count(" 5000 "), 5000);
    EXPECT_EQ(read_byte_count("42;a=1"), 42);
    EXPECT_EQ(read_byte_count("999999999999999"), 999999999999999LL);
    for (const auto* other : {"", "-1", "1.0", "1e3", "0x10", "1000000000000000", "\"1\"", "1, 2", "?1", "1 2"}) {
        EXPECT_FALSE(read_byte_count(other)) << other;
    }
    EXPECT_EQ(read_truth("?1"), true);
    EXPECT_EQ(read_truth("?0;a"), false);
    for (const auto* other : {"", "1", "true", "?2", "? 1", "?1, ?0"}) {
        EXPECT_FALSE(read_truth(other)) << other;
    }
}

TEST(UploadShelf, isSweptSevenDaysAfterItsLastByteAndNotBefore) {
    Shelf it;
    const UploadKey key{"one", some_digest};
    ASSERT_TRUE(it.shelf.begin(key, 10).ok());
    ASSERT_TRUE(it.take(key, 0, "12345"));
    // `max-age` is the remaining lifetime in seconds (draft-ietf-httpbis-resumable-upload-12, 4.1.4).
    it.later = upload_life - std::chrono::minutes(1);
    it.shelf.sweep();
    ASSERT_EQ(it.offset(key), 5);
    EXPECT_LE((*it.shelf.look(key))->left.count(), 60);
    EXPECT_GT((*it.shelf.look(key))->left.count(), 0);
    it.later = upload_life + std::chrono::seconds(1);
    EXPECT_EQ(it.offset(key), -1) << "too old is gone, swept or not";
    EXPECT_FALSE(it.take(key, 5, "6"));
    EXPECT_EQ(unfinished_in(it.folder.path()).uploads, 1U);
    it.shelf.sweep();
    EXPECT_EQ(unfinished_in(it.folder.path()).uploads, 0U);
    const auto again = it.shelf.begin(key, 10);
    ASSERT_TRUE(again.ok());
    EXPECT_FALSE(again->was_there);
}

TEST(UploadShelf, aClockThatWasSetBackKeepsIt) {
    Shelf it;
    const UploadKey key{"one", some_digest};
    it.later = -std::chrono::hours(24 * 365);
    ASSERT_TRUE(it.shelf.begin(key, 10).ok());
    it.shelf.sweep();
    EXPECT_EQ(it.offset(key), 0);
    EXPECT_EQ((*it.shelf.look(key))->left, upload_life);
}

TEST(UploadShelf, onePieceAtATimeAndAskingEndsIt) {
    Shelf it;
    const UploadKey key{"one", some_digest};
    ASSERT_TRUE(it.shelf.begin(key, 10).ok());
    const auto first = it.shelf.open_piece(key, 0);
    ASSERT_TRUE(first && first->intake);
    const auto second = it.shelf.open_piece(key, 0);
    ASSERT_TRUE(second.ok());
    EXPECT_TRUE(second->under_way);
    EXPECT_FALSE(second->intake);
    EXPECT_TRUE(it.shelf.open_piece({"two", some_digest}, 0)->state == std::nullopt) << "another device has none";
    EXPECT_TRUE(first->intake->take("123"));
    EXPECT_EQ(it.offset(key), 3);
    EXPECT_FALSE(first->intake->take("456")) << "who asked had given it up";
    EXPECT_EQ(first->intake->finish().error().code, ErrorCode::conflict);
    EXPECT_EQ(it.offset(key), 3);
    EXPECT_TRUE(it.take(key, 3, "4567890"));
}

TEST(UploadShelf, whatWasTakenAwayAndBegunAnewIsntPutByAnOlderPiece) {
    Shelf it;
    const std::string whole = "0123456789";
    const UploadKey key{"one", digest_of(whole)};
    ASSERT_TRUE(it.shelf.begin(key, 10).ok());
    const auto older = it.shelf.open_piece(key, 0);
    ASSERT_TRUE(older && older->intake && older->intake->take(whole) && older->intake->finish().ok());
    EXPECT_TRUE(remove_uploads_of(it.folder.path(), key.sha256)) << "as another process erases";
    ASSERT_TRUE(it.shelf.begin(key, 10).ok());
    const auto put = older->intake->put(key.sha256, it.folder.path() / "beside", it.folder.path() / "ab" / "place");
    EXPECT_EQ(put.error().code, ErrorCode::missing);
    EXPECT_FALSE(fs::exists(it.folder.path() / "beside"));
    EXPECT_FALSE(fs::exists(it.folder.path() / "ab" / "place"));
    EXPECT_EQ(it.offset(key), 0);
}

// Draft-ietf-httpbis-resumable-upload-12, 4.4.1: after a piece was answered the client goes on. The next one may come
// on another connection before the one that answered has come back.
TEST(UploadDesk, takesTheNextPieceFromTheMomentTheLastIsAnswered) {
    const TemporaryFolder folder;
    const auto archive = truehang::workroom::Archive::open(folder.path(), now);
    ASSERT_TRUE(archive.ok());
    const truehang::Result<truehang::workroom::TokenHolder> holder(truehang::workroom::TokenHolder{"a1", false});
    const auto place = read_path(upload_path(some_digest));
    truehang::workroom::UploadDesk desk(**archive);
    truehang::http::Request begun;
    begun.head.method = "POST";
    begun.head.headers = {{"Upload-Length", "300"}, {"Upload-Complete", "?0"}};
    desk.answer(*read_path(photo_path(some_digest)), begun, holder,
                [](const truehang::http::Response& response) { EXPECT_EQ(response.status, 201); });
    const auto piece_at = [](int offset) {
        truehang::http::Request request;
        request.head.method = "PATCH";
        request.head.content_length = 100;
        request.head.headers = {{"Content-Type", std::string(partial_upload_type)},
                                {"Upload-Offset", std::to_string(offset)},
                                {"Upload-Complete", "?0"}};
        return request;
    };
    auto first = piece_at(0);
    first.sink = desk.admit(*place, first.head, holder).sink;
    ASSERT_TRUE(first.sink && first.sink->take(std::string(100, 'x')));
    bool taken = false;
    desk.answer(*place, first, holder, [&](const truehang::http::Response& response) {
        EXPECT_EQ(response.status, 204);
        taken = desk.admit(*place, piece_at(100).head, holder).sink != nullptr;
    });
    EXPECT_TRUE(taken);
}

// Another receiver's folder can't be reached by who erases: only the mark in the records that they share is.
TEST(UploadDesk, takesAwayWithinTheHourWhatWasErasedElsewhere) {
    const TemporaryFolder folder;
    auto later = std::chrono::milliseconds(0);
    const auto archive = truehang::workroom::Archive::open(folder.path(), [&later] { return now() + later; });
    ASSERT_TRUE(archive.ok());
    truehang::workroom::UploadDesk desk(**archive);
    UploadShelf shelf((*archive)->uploads_folder(), (*archive)->clock());
    const UploadKey erased{"a1", some_digest};
    const UploadKey other{"a1", std::string(64, 'b')};
    ASSERT_TRUE(shelf.begin(erased, 10).ok() && shelf.begin(other, 10).ok());
    const auto marked = (*archive)->database().write_and_wait<truehang::Done>(
        [](truehang::workroom::Records& records) -> truehang::Result<truehang::Done> {
            truehang::workroom::Query mark(records, "INSERT INTO erased_photo(sha256, erased_with) VALUES(?, 'one')");
            mark.bind(1, some_digest);
            mark.exec();
            return truehang::Done{};
        });
    ASSERT_TRUE(marked.ok());
    desk.sweep_due();
    EXPECT_EQ(unfinished_in((*archive)->uploads_folder()).uploads, 2U) << "not looked at before an hour is over";
    later = std::chrono::hours(1);
    desk.sweep_due();
    EXPECT_FALSE(shelf.glance(erased));
    EXPECT_TRUE(shelf.glance(other));
}

TEST(Uploads, goWithARevokedDevice) {
    const Served served;
    served.send_part();
    EXPECT_EQ(served.unfinished().bytes, 2000);
    ASSERT_EQ(workroom({"revoke", "--data", served.data, "A test's phone"}).exit_code, 0);
    EXPECT_EQ(served.unfinished().uploads, 0U);
    EXPECT_EQ(problem_of(served.piece(2000, 10)), ProblemKind::unauthorised);
    EXPECT_EQ(problem_of(served.begin()), ProblemKind::unauthorised);
}

TEST(Uploads, goWithASurveyThatIsErasedAndArentTakenAgain) {
    const Served served;
    ASSERT_EQ(served.receiver.put_survey(served.token, id, 1, survey_with_photo(id, 1, served.photo)).status, 201);
    served.send_part();
    ASSERT_EQ(workroom({"erase", "--data", served.data, id}).exit_code, 0);
    EXPECT_EQ(served.unfinished().uploads, 0U);
    EXPECT_EQ(problem_of(served.piece(2000, 100)), ProblemKind::not_there);
    EXPECT_EQ(problem_of(served.begin()), ProblemKind::erased);
    EXPECT_EQ(served.unfinished().uploads, 0U) << "refused, it leaves nothing behind";
}

TEST(Uploads, erasedBetweenItsLastByteAndItsEndAreRefusedThere) {
    const Served served;
    ASSERT_EQ(served.begin().status, 201);
    ASSERT_EQ(served.piece(0, served.photo.size()).status, 204);
    ASSERT_EQ(served.receiver.put_survey(served.token, id, 1, survey_with_photo(id, 1, served.photo)).status, 201);
    // An erasure that came to see the folder before the upload stood there: only its mark is left.
    const auto file = *fs::directory_iterator(*fs::directory_iterator(served.data / "uploads"));
    const auto aside = served.data / "aside";
    fs::rename(file, aside);
    ASSERT_EQ(workroom({"erase", "--data", served.data, id}).exit_code, 0);
    fs::rename(aside, file);
    auto ended = served.piece(served.photo.size(), 0, true);
    EXPECT_EQ(problem_of(ended), ProblemKind::erased);
    EXPECT_EQ(ended.headers["upload-complete"], "?1");
    EXPECT_EQ(served.unfinished().uploads, 0U);
    EXPECT_FALSE(fs::exists(photo_file(served.data, served.photo)));
}

TEST(Uploads, arePassedOverByVerifyAndBackupKnowingly) {
    const Served served;
    served.send_part();
    const auto looked = workroom({"verify", "--data", served.data});
    EXPECT_EQ(looked.exit_code, 0) << looked.out;
    EXPECT_NE(looked.out.find("1 unfinished upload of photos (0.0 MB), passed over"), std::string::npos) << looked.out;
    const TemporaryFolder elsewhere;
    const auto copy = elsewhere.path() / "copy";
    ASSERT_EQ(workroom({"backup", "--data", served.data, copy}).exit_code, 0);
    EXPECT_FALSE(fs::exists(copy / "uploads"));
    EXPECT_EQ(served.piece(2000, served.photo.size() - 2000, true).status, 201) << "it goes on";
}

// A disk without room is played by a limit on the size of a file (setrlimit, RLIMIT_FSIZE; POSIX.1-2017): 200 KiB here.
TEST(Uploads, onADiskWithoutRoomKeepWhatCameAndGoOnOnceThereIsSome) {
    const std::string photo(300'000, 'p');
    Served served(photo, {"bash", "-c", "ulimit -f 200; trap '' XFSZ; exec \"$@\"", "limited"});
    ASSERT_EQ(served.begin().status, 201);
    const auto failed = served.piece(0, photo.size(), true);
    EXPECT_GE(failed.status, 500);
    const auto there = served.ask("HEAD", upload_path(served.digest)).headers["upload-offset"];
    EXPECT_EQ(there, std::to_string(200 * 1024));
    served.process->end(SIGKILL);
    const Receiver roomy(served.data);
    const auto rest = roomy.ask("PATCH", upload_path(served.digest),
                                {{"Authorization", "Bearer " + served.token},
                                 {"Content-Type", std::string(partial_upload_type)},
                                 {"Upload-Offset", there},
                                 {"Upload-Complete", "?1"}},
                                std::string_view(photo).substr(200 * 1024));
    EXPECT_EQ(rest.status, 201) << rest.body;
}

TEST(Uploads, ofAPhotoThatAnotherDeviceSentMeanwhileEndWell) {
    const Served served;
    served.send_part();
    EXPECT_EQ(served.receiver.put_photo(served.token, served.digest, served.photo).status, 201);
    EXPECT_EQ(served.piece(2000, served.photo.size() - 2000, true).status, 200);
    EXPECT_EQ(served.unfinished().uploads, 0U);
    EXPECT_EQ(served.ask("GET", photo_path(served.digest)).body, served.photo);
    EXPECT_EQ(problem_of(served.piece(0, 1)), ProblemKind::not_there);
}
