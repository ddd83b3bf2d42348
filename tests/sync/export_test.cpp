// SPDX-License-Identifier: Apache-2.0
// One survey goes out as a file and comes in again, whole or not at all.
#include "keeping_folder.h"

#include "protocol/paths.h"
#include "protocol/records.h"
#include "store/visit_file.h"

#include <zip.h>

#include <csignal>

using namespace truehang::sync;
using namespace truehang::sync::test;

namespace fs = std::filesystem;

namespace {

const std::string id = "01924f6a-7c00-7000-8000-0000000000c1";

bool says(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

using Entries = std::vector<std::pair<std::string, std::string>>;

/// A zip of these entries; with `deflated`, packed.
void write_zip(const fs::path& file, const Entries& entries, bool deflated = false) {
    zip_t* zip = zip_open(file.c_str(), ZIP_CREATE | ZIP_TRUNCATE, nullptr);
    ASSERT_NE(zip, nullptr);
    for (const auto& [name, bytes] : entries) {
        const auto at = zip_file_add(zip, name.c_str(), zip_source_buffer(zip, bytes.data(), bytes.size(), 0), 0);
        ASSERT_GE(at, 0);
        zip_set_file_compression(zip, static_cast<zip_uint64_t>(at), deflated ? ZIP_CM_DEFLATE : ZIP_CM_STORE, 0);
    }
    ASSERT_EQ(zip_close(zip), 0);
}

/// A workroom with one survey of two revisions, a photo and rolls; and an empty one beside it.
struct Two {
    TemporaryFolder folder;
    fs::path data = folder.path() / "data", other = folder.path() / "other", file = folder.path() / "out.zip";
    std::string photo = photo_of("the parlour");

    Two() {
        fs::create_directory(data);
        fs::create_directory(other);
        const Receiver receiver(data);
        const auto token = receiver.pair();
        EXPECT_EQ(receiver.put_survey(token, id, 1, survey_with_photo(id, 1, photo)).status, 201);
        EXPECT_EQ(receiver.put_survey(token, id, 3, survey_with_photo(id, 3, photo)).status, 201);
        EXPECT_EQ(receiver.put_photo(token, digest_of(photo), photo).status, 201);
        const auto site = "127.0.0.1:" + std::to_string(receiver.port());
        EXPECT_EQ(receiver
                      .ask("POST", "/surveys/" + id + "/rolls",
                           {{"Content-Type", "application/x-www-form-urlencoded"},
                            {"Host", site},
                            {"Origin", "http://" + site}},
                           "from=0&fabric=sailcloth&rows=2&name.0=A&length.0=9000")
                      .status,
                  303);
        const Receiver empty(other);
    }
    [[nodiscard]] Outcome put_out(std::vector<std::string> more = {}) const {
        std::vector<std::string> words{"export", "--data", data, id, file};
        words.insert(words.end(), more.begin(), more.end());
        return workroom(words);
    }
    [[nodiscard]] Outcome take_in(const fs::path& from) const { return workroom({"import", "--data", other, from}); }
    [[nodiscard]] std::size_t revisions_there() const {
        const Receiver receiver(other);
        const auto there = read_survey_there(receiver.ask("GET", receipt_path(id)).body);
        return there ? there->revisions.size() : 0;
    }
};

}  // namespace

TEST(Export, andImportBringAWholeSurveyOver) {
    const Two two;
    const auto out = two.put_out();
    ASSERT_EQ(out.exit_code, 0) << out.err;
    EXPECT_EQ(out.out, two.file.string() + ": 2 revisions, 1 photo, 1 version of rolls of " + id + ".\n");
    {
        const Receiver serving(two.other);
        const auto in = two.take_in(two.file);
        ASSERT_EQ(in.exit_code, 0) << in.err;
        EXPECT_EQ(in.out, id + ": imported 2 revisions, 1 photo, 1 version of rolls.\n");
        const auto there = read_survey_there(serving.ask("GET", receipt_path(id)).body);
        ASSERT_TRUE(there.ok());
        ASSERT_EQ(there->revisions.size(), 2U);
        EXPECT_EQ(there->revisions[1].sha256, digest_of(survey_with_photo(id, 3, two.photo))) << "byte by byte";
        EXPECT_EQ(serving.ask("GET", photo_path(digest_of(two.photo))).body, two.photo);
        EXPECT_EQ(serving.ask("GET", "/surveys/" + id + "/rolls/document/1").status, 200);
        EXPECT_TRUE(says(serving.ask("GET", "/devices").body, "imported"));
    }
    EXPECT_EQ(workroom({"verify", "--data", two.other}).exit_code, 0);
    const auto again = two.take_in(two.file);
    EXPECT_EQ(again.exit_code, 0) << again.err;
    EXPECT_TRUE(says(again.out, "2 revisions (2 here before), 1 photo (1 here before)")) << again.out;
}

TEST(Export, writesTheSameBytesAgainAndNothingOver) {
    const Two two;
    ASSERT_EQ(two.put_out().exit_code, 0);
    EXPECT_EQ(two.put_out().exit_code, 2);
    const auto second = two.folder.path() / "second.zip";
    ASSERT_EQ(workroom({"export", "--data", two.data, id, second}).exit_code, 0);
    EXPECT_EQ(file_text(two.file), file_text(second));
    const auto missing = workroom({"export", "--data", two.data, "another", two.folder.path() / "third.zip"});
    EXPECT_EQ(missing.exit_code, 2);
    EXPECT_TRUE(says(missing.err, "another: No such survey is here.")) << missing.err;
    EXPECT_FALSE(fs::exists(two.folder.path() / "third.zip"));
}

// docs/visit-file.md; read by the app's own reader.
TEST(Export, writesTheNewestRevisionAsTheAppTakesItIn) {
    const Two two;
    ASSERT_EQ(two.put_out({"--visit"}).exit_code, 0);
    const auto visit = truehang::VisitFile::open(two.file, {});
    ASSERT_TRUE(visit.ok()) << visit.error().text;
    EXPECT_EQ((*visit)->document(), survey_with_photo(id, 3, two.photo));
    EXPECT_EQ((*visit)->photos().size(), 1U);
    EXPECT_EQ((*visit)->missing(), 0);
    const auto in = two.take_in(two.file);
    EXPECT_EQ(in.exit_code, 0) << in.err;
    EXPECT_EQ(two.revisions_there(), 1U);
}

TEST(Export, leavesOutAPhotoThatIsntWholeAndNamesIt) {
    const Two two;
    write_file(photo_file(two.data, two.photo), "something else");
    const auto out = two.put_out();
    EXPECT_EQ(out.exit_code, 1);
    EXPECT_TRUE(says(out.out, "photo " + digest_of(two.photo))) << out.out;
    EXPECT_EQ(two.take_in(two.file).exit_code, 0);
}

TEST(Import, takesADocumentAlone) {
    const Two two;
    const auto file = two.folder.path() / "survey.json";
    write_file(file, example_survey(id, 2));
    EXPECT_EQ(two.take_in(file).exit_code, 0);
    EXPECT_EQ(two.take_in(file).exit_code, 0) << "the same twice is no fault";
    write_file(file, example_survey(id, 2, "Another house"));
    const auto other = two.take_in(file);
    EXPECT_EQ(other.exit_code, 2);
    EXPECT_TRUE(says(other.err, "revision 2 of " + id + ": It is here already with other content")) << other.err;
    write_file(file, "{");
    EXPECT_EQ(two.take_in(file).exit_code, 2);
    EXPECT_EQ(two.revisions_there(), 1U);
}

TEST(Import, takesNothingOfAFileThatIsntSound) {
    const Two two;
    const auto good = survey_with_photo(id, 1, two.photo);
    const auto place = "photos/" + digest_of(two.photo) + ".jpg";
    const std::vector<std::pair<Entries, std::string>> spoilt{
        {{{"survey.json", good}, {"../outside.json", "{}"}}, "doesn’t belong"},
        {{{"survey.json", good}, {"photos/../../" + digest_of(two.photo), two.photo}}, "doesn’t belong"},
        {{{"survey.json", good}, {"revisions/01.json", good}}, "doesn’t belong"},
        {{{"revisions/2.json", good}}, "isn’t the one that it is named for"},
        {{{"revisions/1.json", good}, {"survey.json", good}}, "twice"},
        {{{"revisions/1.json", good}, {"revisions/2.json", example_survey("x", 2)}}, "another survey"},
        {{{"survey.json", good}, {place, "other bytes"}}, "aren’t the ones"},
        {{{"survey.json", good}, {"photos/" + digest_of("x"), "x"}}, "names no such photo"},
        {{{"survey.json", good}, {"rolls/1.json", "{}"}}, "doesn’t read as rolls"},
        {{{"revisions/1.json", good}, {"receipts.json", R"({"revisions": [{"revision": 1, "sha256": "00"}]})"}},
         "isn’t the one that it tells of"},
        {{{place, two.photo}}, "No survey is in this file"}};
    for (const auto& [entries, why] : spoilt) {
        write_zip(two.file, entries);
        const auto in = two.take_in(two.file);
        EXPECT_EQ(in.exit_code, 2) << why;
        EXPECT_TRUE(says(in.err, why)) << in.err;
    }
    EXPECT_EQ(two.revisions_there(), 0U);
    EXPECT_FALSE(fs::exists(photo_file(two.other, two.photo)));
}

// sync/protocol/README.md: a document is at most 4 MiB, a photo 32 MiB.
TEST(Import, takesNothingThatUnpacksToMoreThanItMay) {
    const Two two;
    write_zip(two.file, {{"survey.json", std::string((4U << 20U) + 1, ' ')}}, true);
    EXPECT_LT(fs::file_size(two.file), 100'000U);
    auto in = two.take_in(two.file);
    EXPECT_EQ(in.exit_code, 2);
    EXPECT_TRUE(says(in.err, "survey.json: It is larger than it may be.")) << in.err;
    const std::string photo((32U << 20U) + 1, 'p');
    write_zip(two.file,
              {{"survey.json", survey_with_photo(id, 1, photo)}, {"photos/" + digest_of(photo) + ".jpg", photo}}, true);
    in = two.take_in(two.file);
    EXPECT_EQ(in.exit_code, 2);
    EXPECT_TRUE(says(in.err, "It is larger than it may be.")) << in.err;
    auto cut = file_text(two.file);
    write_file(two.file, cut.substr(0, cut.size() / 2));
    EXPECT_EQ(two.take_in(two.file).exit_code, 2);
}

TEST(Import, takesNothingThatWasErased) {
    const Two two;
    ASSERT_EQ(two.put_out().exit_code, 0);
    ASSERT_EQ(workroom({"erase", "--data", two.data, id}).exit_code, 0);
    const auto in = workroom({"import", "--data", two.data, two.file});
    EXPECT_EQ(in.exit_code, 2);
    EXPECT_TRUE(says(in.err, "was erased here for good")) << in.err;
}
