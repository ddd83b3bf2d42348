// SPDX-License-Identifier: Apache-2.0
// A survey that is erased is gone from every file, isn't taken again, and leaves all others as they were.
#include "keeping_folder.h"

#include "protocol/paths.h"
#include "protocol/problem.h"
#include "protocol/records.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <atomic>
#include <csignal>
#include <thread>

using namespace truehang::sync;
using namespace truehang::sync::test;

namespace fs = std::filesystem;

namespace {

const std::string id = "01924f6a-7c00-7000-8000-0000000000b1";
const std::string other_id = "01924f6a-7c00-7000-8000-0000000000b2";
const std::string client = "Quillfeather-Ostrobothnia";
const std::string roll = "Vermiculated-Zephyr";

/// The files of a folder that hold a text, whatever kind of file they are.
std::vector<std::string> files_with(const fs::path& data, const std::string& text) {
    std::vector<std::string> found;
    for (const auto& entry : fs::recursive_directory_iterator(data)) {
        if (entry.is_regular_file() && file_text(entry.path()).find(text) != std::string::npos) {
            found.push_back(entry.path().string());
        }
    }
    return found;
}

/// A served folder with a survey of the client's and one of somebody else's.
struct Served {
    TemporaryFolder folder;
    fs::path data = folder.path();
    Receiver receiver{data};
    std::string token = receiver.pair();
    std::string own = photo_of("Marmoreal-Umbrage own");
    std::string shared = photo_of("Marmoreal-Umbrage shared");

    Served() {
        for (long long revision = 1; revision <= 3; ++revision) {
            EXPECT_EQ(send(id, revision, revision == 2 ? shared : own, client).status, 201);
        }
        EXPECT_EQ(send(other_id, 1, shared, "H. Kask").status, 201);
        EXPECT_EQ(receiver.put_photo(token, digest_of(own), own).status, 201);
        EXPECT_EQ(receiver.put_photo(token, digest_of(shared), shared).status, 201);
    }
    [[nodiscard]] Reply send(const std::string& survey, long long revision, const std::string& photo,
                             const std::string& whose) const {
        return receiver.put_survey(token, survey, revision, survey_with_photo(survey, revision, photo, whose));
    }
    /// A roll came and was written down, and its plan is worked out.
    void plan_rolls() const {
        const auto site = "127.0.0.1:" + std::to_string(receiver.port());
        const auto saved = receiver.ask(
            "POST", "/surveys/" + id + "/rolls",
            {{"Content-Type", "application/x-www-form-urlencoded"}, {"Host", site}, {"Origin", "http://" + site}},
            "from=0&fabric=sailcloth&rows=2&name.0=" + roll + "&length.0=9000");
        ASSERT_EQ(saved.status, 303) << saved.body;
        const auto plan = receiver.ask("GET", "/surveys/" + id + "/rolls/plan");
        ASSERT_EQ(plan.status, 200);
        ASSERT_NE(plan.body.find(roll), std::string::npos);
    }
    [[nodiscard]] Outcome erase(const std::string& survey) const {
        return workroom({"erase", "--data", data, survey, "--by", "M. Oja"});
    }
};

ProblemKind problem_of(const Reply& reply) {
    const auto problem = read_problem(reply.body);
    EXPECT_TRUE(problem.ok()) << reply.status << " " << reply.body;
    return problem ? problem->kind : ProblemKind::internal;
}

}  // namespace

TEST(Erase, leavesNoByteOfNamePhotoOrRollsInAnyFile) {
    const Served served;
    served.plan_rolls();
    ASSERT_FALSE(files_with(served.data, client).empty()) << "the search finds what is there";
    ASSERT_FALSE(files_with(served.data, "Marmoreal-Umbrage own").empty());
    ASSERT_FALSE(files_with(served.data, roll).empty());
    const auto erased = served.erase(id);
    ASSERT_EQ(erased.exit_code, 0) << erased.err;
    EXPECT_EQ(erased.out, id + ": erased for good: 3 revisions, 1 photo, 1 version of rolls. Copies made before still "
                               "hold it.\n");
    for (const auto& text : {client, std::string("Marmoreal-Umbrage own"), roll}) {
        EXPECT_EQ(files_with(served.data, text), std::vector<std::string>{}) << text;
    }
    EXPECT_EQ(workroom({"verify", "--data", served.data}).exit_code, 0);
    EXPECT_EQ(served.receiver.ask("GET", receipt_path(id)).status, 404);
    EXPECT_EQ(served.receiver.ask("GET", photo_path(digest_of(served.own))).status, 404);
}

TEST(Erase, takesWhatWasFreedBeforeItToo) {
    const Served served;
    {
        // As an earlier version left it: freed without being overwritten.
        SQLite::Database records((served.data / "workroom.sqlite").string(), SQLite::OPEN_READWRITE, 5000);
        records.exec("PRAGMA secure_delete = OFF");
        records.exec("CREATE TABLE gone(text TEXT)");
        records.exec("INSERT INTO gone VALUES('" + client + " " + std::string(20'000, 'x') + "')");
        records.exec("DROP TABLE gone");
    }
    ASSERT_EQ(served.erase(id).exit_code, 0);
    EXPECT_EQ(files_with(served.data, client), std::vector<std::string>{});
}

TEST(Erase, takesWhatADeadReceiverLeftHalfReceived) {
    Served served;
    {
        Connection phone(served.receiver.port());
        ASSERT_TRUE(phone.send("PUT " + photo_path(digest_of(served.own)) + " HTTP/1.1\r\nHost: 127.0.0.1\r\n" +
                               "Authorization: Bearer " + served.token + "\r\nContent-Length: 4000000\r\n\r\n" +
                               served.own + std::string(2'000'000, 'h')));
        served.receiver.end(SIGKILL);
    }
    write_file(served.data / "incoming" / "half", served.own);  // whether or not it got as far as the disk
    ASSERT_EQ(served.erase(id).exit_code, 0);
    EXPECT_EQ(files_with(served.data, "Marmoreal-Umbrage own"), std::vector<std::string>{});
}

TEST(Erase, leavesOtherSurveysAndTheirPhotos) {
    const Served served;
    const auto before = served.receiver.ask("GET", receipt_path(other_id)).body;
    ASSERT_EQ(served.erase(id).exit_code, 0);
    EXPECT_EQ(served.receiver.ask("GET", receipt_path(other_id)).body, before);
    EXPECT_EQ(served.receiver.ask("GET", photo_path(digest_of(served.shared))).body, served.shared)
        << "the other survey names it too";
    EXPECT_EQ(served.send(other_id, 2, served.shared, "H. Kask").status, 201);
}

TEST(Erase, takesNothingOfItAgain) {
    const Served served;
    ASSERT_EQ(served.erase(id).exit_code, 0);
    for (const long long revision : {1, 4}) {
        const auto again = served.send(id, revision, served.own, client);
        EXPECT_EQ(again.status, 410);
        EXPECT_EQ(problem_of(again), ProblemKind::erased);
    }
    const auto photo = served.receiver.put_photo(served.token, digest_of(served.own), served.own);
    EXPECT_EQ(photo.status, 410);
    EXPECT_EQ(problem_of(photo), ProblemKind::erased);
    EXPECT_FALSE(fs::exists(photo_file(served.data, served.own)));
    EXPECT_EQ(files_with(served.data, client), std::vector<std::string>{});
}

TEST(Erase, takesAPhotoThatAnotherSurveyNamesLater) {
    const Served served;
    ASSERT_EQ(served.erase(id).exit_code, 0);
    ASSERT_EQ(served.send(other_id, 2, served.own, "H. Kask").status, 201);
    EXPECT_EQ(served.receiver.put_photo(served.token, digest_of(served.own), served.own).status, 201);
    EXPECT_EQ(served.erase(id).exit_code, 0) << "finishes what may be left";
    EXPECT_EQ(served.receiver.ask("GET", photo_path(digest_of(served.own))).body, served.own);
}

TEST(Erase, holdsBesidePhonesThatSendTheSame) {
    const Served served;
    std::atomic<bool> ended{false};
    std::vector<std::thread> phones;
    for (int phone = 0; phone < 3; ++phone) {
        phones.emplace_back([&, phone] {
            for (long long i = 0; !ended; ++i) {
                const auto status = served.send(id, 10 + phone + 10 * i, served.own, client).status;
                EXPECT_TRUE(status == 201 || status == 410 || status == 503) << status;
                const auto sent = served.receiver.put_photo(served.token, digest_of(served.own), served.own).status;
                EXPECT_TRUE(sent == 200 || sent == 201 || sent == 410 || sent == 503) << sent;
            }
        });
    }
    const auto erased = served.erase(id);
    ended = true;
    for (auto& phone : phones) {
        phone.join();
    }
    ASSERT_EQ(erased.exit_code, 0) << erased.err;
    EXPECT_EQ(files_with(served.data, client), std::vector<std::string>{});
    EXPECT_EQ(files_with(served.data, "Marmoreal-Umbrage own"), std::vector<std::string>{});
    const auto looked = workroom({"verify", "--data", served.data});
    EXPECT_EQ(looked.exit_code, 0) << looked.out;
}

TEST(Erase, isToldOnItsPageAndInNothingElse) {
    const Served served;
    EXPECT_NE(served.receiver.ask("GET", "/erased").body.find("Nothing was erased yet."), std::string::npos);
    ASSERT_EQ(served.erase(id).exit_code, 0);
    const auto page = served.receiver.ask("GET", "/erased");
    EXPECT_EQ(page.status, 200);
    EXPECT_NE(page.body.find(id), std::string::npos) << page.body;
    EXPECT_NE(page.body.find("M. Oja"), std::string::npos);
    EXPECT_EQ(page.body.find("Pilot house"), std::string::npos);
    EXPECT_NE(served.receiver.ask("GET", "/").body.find("href=\"/erased\""), std::string::npos);
}

TEST(Erase, refusesWhatIsntThere) {
    const Served served;
    const auto refused = served.erase("another");
    EXPECT_EQ(refused.exit_code, 2);
    EXPECT_NE(refused.err.find("another: No such survey is here. Nothing was erased."), std::string::npos);
    EXPECT_EQ(served.send("another", 1, served.own, client).status, 201) << "no mark of it was left";
}

// A disk without room is played by a limit on the size of a file (setrlimit, RLIMIT_FSIZE; POSIX.1-2017): with a small
// one not even the rows go, with larger ones they go and the overwriting fails.
TEST(Erase, brokenOffByAFullDiskSaysSoAndIsDoneByRunningItAgain) {
    bool rows_stayed = false;
    bool rows_went = false;
    for (const auto* blocks : {"1", "40", "80", "120", "160", "240"}) {
        Served served;
        served.plan_rolls();
        ASSERT_EQ(served.receiver.end(SIGTERM), 0);
        const auto broken = run_program({"/bin/sh", "-c", "trap '' XFSZ; ulimit -f \"$0\"; exec \"$@\"", blocks,
                                         TRUEHANG_WORKROOM, "erase", "--data", served.data, id});
        if (broken.exit_code == 0) {
            continue;
        }
        EXPECT_EQ(broken.exit_code, 2) << broken.out;
        const auto looked = workroom({"verify", "--data", served.data});
        const bool says_gone = broken.err.find("Run the same command again.") != std::string::npos;
        (says_gone ? rows_went : rows_stayed) = true;
        EXPECT_TRUE(looked.exit_code == 0 || says_gone) << blocks << looked.out << broken.err;
        EXPECT_EQ(looked.out.find(": 4 documents, 2 photos") == std::string::npos, says_gone) << blocks << looked.out;
        const auto again = workroom({"erase", "--data", served.data, id});
        EXPECT_EQ(again.exit_code, 0) << blocks << again.err;
        EXPECT_EQ(files_with(served.data, client), std::vector<std::string>{}) << blocks;
        EXPECT_EQ(files_with(served.data, "Marmoreal-Umbrage own"), std::vector<std::string>{}) << blocks;
    }
    EXPECT_TRUE(rows_stayed && rows_went) << "both cases were met";
}

TEST(Erase, saysTruthfullyThatACopyMadeBeforeHoldsIt) {
    const Served served;
    ASSERT_EQ(workroom({"backup", "--data", served.data, served.data.string() + "-copy"}).exit_code, 0);
    ASSERT_EQ(served.erase(id).exit_code, 0);
    EXPECT_FALSE(files_with(served.data.string() + "-copy", client).empty()) << "a copy made before still holds it";
    fs::remove_all(served.data.string() + "-copy");
}
