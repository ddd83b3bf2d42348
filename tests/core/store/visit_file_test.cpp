// SPDX-License-Identifier: Apache-2.0
#include "store/visit_file.h"

#include "store/picture_kind.h"
#include "store/sha256.h"
#include "store_fixture.h"

#include <rapidcheck/gtest.h>

#include <algorithm>
#include <set>

namespace truehang::testing {
namespace {

namespace fs = std::filesystem;

const fs::path demo_photos = fs::path(TRUEHANG_SOURCE_DIR) / "demo-surveys" / "photos";

Photo photo_of(const std::string& bytes) {
    Photo photo;
    photo.sha256 = sha256_hex(bytes);
    photo.media_type = "image/jpeg";
    photo.bytes = static_cast<long long>(bytes.size());
    return photo;
}

/// A few bytes that begin as a JPEG does.
std::string picture(int which) { return "\xff\xd8\xff" + std::to_string(which) + std::string(20, '.'); }

/// The contract's example with these photos in its window, kept in the store.
Survey kept_with(Store& store, const std::vector<std::string>& pictures) {
    Survey survey = pilot_house();
    survey.rooms[0].windows[0].photos.clear();
    for (const std::string& bytes : pictures) {
        must(store.keep_photo(bytes, "image/jpeg"));
        survey.rooms[0].windows[0].photos.push_back(photo_of(bytes));
    }
    must(store.keep(survey, "Taken in"));
    return must(store.visit(survey.id));
}

VisitFile opened(const fs::path& file) {
    auto found = VisitFile::open(file, {});
    if (!found) {
        throw std::runtime_error(found.error().where + ": " + found.error().text);
    }
    return std::move(std::move(found).value()).value();
}

std::vector<std::string> names_in(const fs::path& folder) {
    std::vector<std::string> names;
    for (const auto& entry : fs::directory_iterator(folder)) {
        names.push_back(entry.path().filename().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

/// What Python's zipfile says of a file: names, sizes, times and methods.
std::string listed_by_python(const fs::path& file) {
    const std::string command =
        "python3 -c 'import sys,zipfile; z=zipfile.ZipFile(sys.argv[1]); assert z.testzip() is None;"
        " [print(i.filename,i.file_size,*i.date_time,i.compress_type) for i in z.infolist()]' '" +
        file.string() + "'";
    std::string text;
    if (FILE* const out = ::popen(command.c_str(), "r")) {
        for (int c = std::fgetc(out); c != EOF; c = std::fgetc(out)) {
            text += static_cast<char>(c);
        }
        EXPECT_EQ(::pclose(out), 0);
    }
    return text;
}

class VisitAsAFile : public ::testing::Test {
protected:
    Folder folder;
    Folder place;
    std::unique_ptr<Store> store = open_store(folder.path());
    fs::path file = place.path() / ("Pilot house" + std::string(visit_file_ending));

    PackedVisit write(const std::string& id, const LongWork& work = {}) {
        const auto written = write_visit_file(file, must(visit_to_pack(*store, id)), work);
        return must(written).value_or(PackedVisit{-1, -1});
    }
};

TEST_F(VisitAsAFile, comes_back_equal_with_its_photos) {
    Survey survey = kept_with(*store, {picture(1), picture(2)});
    survey.parents.emplace();  // nothing of it is known elsewhere yet
    const PackedVisit packed = write(survey.id);
    EXPECT_EQ(packed.photos, 2);
    EXPECT_EQ(packed.missing, 0);
    const VisitFile read = opened(file);
    EXPECT_EQ(read.document(), write_survey(survey, false));
    EXPECT_EQ(write_survey(read.survey(), false), write_survey(survey, false));
    ASSERT_EQ(read.photos().size(), 2U);
    EXPECT_EQ(must(read.bytes_of(read.photos()[0])), picture(1));
    EXPECT_EQ(must(read.bytes_of(read.photos()[1])), picture(2));
    EXPECT_EQ(read.photos()[0].media_type, "image/jpeg");
    EXPECT_EQ(read.missing(), 0);
}

TEST_F(VisitAsAFile, is_a_zip_as_others_read_it_with_the_survey_first) {
    Survey survey = kept_with(*store, {picture(1)});
    survey.parents.emplace();
    write(survey.id);
    // Python's zipfile reads it: stored (0), at 1980-01-01.
    const std::string document = write_survey(survey, false);
    EXPECT_EQ(listed_by_python(file), "survey.json " + std::to_string(document.size()) + " 1980 1 1 0 0 0 0\nphotos/" +
                                          sha256_hex(picture(1)) + ".jpg " + std::to_string(picture(1).size()) +
                                          " 1980 1 1 0 0 0 0\n");
}

TEST_F(VisitAsAFile, is_the_same_bytes_each_time) {
    const Survey survey = kept_with(*store, {picture(1), picture(2)});
    write(survey.id);
    const std::string first = file_text(file);
    fs::last_write_time(must(store->photo_file(sha256_hex(picture(1)))),
                        fs::file_time_type::clock::now() - std::chrono::hours(1000));
    write(survey.id);
    EXPECT_EQ(file_text(file), first);
    EXPECT_EQ(names_in(place.path()), std::vector<std::string>{file.filename().string()});
}

TEST_F(VisitAsAFile, says_how_many_photos_are_not_in_it) {
    Survey survey = kept_with(*store, {picture(1), picture(2), "no picture"});
    survey.rooms[0].windows[0].photos.push_back(photo_of(picture(3)));  // never kept here
    must(store->keep(survey, "A photo"));
    std::ofstream(must(store->photo_file(sha256_hex(picture(2)))), std::ios::binary) << picture(7);
    const PackedVisit packed = write(survey.id);
    EXPECT_EQ(packed.photos, 1);
    EXPECT_EQ(packed.missing, 3);
    const VisitFile read = opened(file);
    EXPECT_EQ(read.missing(), 3);
    EXPECT_EQ(read.survey().rooms[0].windows[0].photos.size(), 4U);
}

TEST_F(VisitAsAFile, holds_the_photo_of_a_cloth_too) {
    Survey survey = kept_with(*store, {picture(1)});
    must(store->keep_photo(picture(9), "image/jpeg"));
    ASSERT_FALSE(survey.fabrics.empty());
    survey.fabrics[0].photo = photo_of(picture(9));
    must(store->keep(survey, "A photo of the cloth"));
    EXPECT_EQ(write(survey.id).photos, 2);
    EXPECT_EQ(opened(file).photos()[0].sha256, sha256_hex(picture(9)));
}

TEST_F(VisitAsAFile, tells_how_far_it_is_and_rises_to_one) {
    const Survey survey = kept_with(*store, {picture(1), picture(2)});
    std::vector<double> told;
    const LongWork work{[&](double done) { told.push_back(done); }, {}};
    write(survey.id, work);
    EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
    EXPECT_DOUBLE_EQ(told.back(), 1.0);
    told.clear();
    ASSERT_TRUE(VisitFile::open(file, work).ok());
    EXPECT_TRUE(std::is_sorted(told.begin(), told.end()));
    EXPECT_DOUBLE_EQ(told.back(), 1.0);
}

TEST_F(VisitAsAFile, stopped_at_any_look_leaves_what_stood_there) {
    const Survey survey = kept_with(*store, {picture(1), picture(2)});
    std::ofstream(file, std::ios::binary) << "what stood there";
    const VisitToPack visit = must(visit_to_pack(*store, survey.id));
    int looks = 0;
    bool whole = false;
    for (int last = 0; last < 200 && !whole; ++last) {
        looks = 0;
        const auto written = write_visit_file(file, visit, {{}, [&] { return ++looks > last; }});
        ASSERT_TRUE(written.ok());
        whole = written->has_value();
        EXPECT_EQ(file_text(file) == "what stood there", !whole);
        EXPECT_EQ(names_in(place.path()), std::vector<std::string>{file.filename().string()});
    }
    EXPECT_TRUE(whole);  // where the stop comes after the last look
    EXPECT_GT(looks, 4);
}

TEST_F(VisitAsAFile, reading_can_be_stopped_at_any_look) {
    write(kept_with(*store, {picture(1), picture(2)}).id);
    bool whole = false;
    for (int last = 0; last < 200 && !whole; ++last) {
        int looks = 0;
        const auto read = VisitFile::open(file, {{}, [&] { return ++looks > last; }});
        ASSERT_TRUE(read.ok());
        whole = read.value().has_value();
    }
    EXPECT_TRUE(whole);
}

TEST_F(VisitAsAFile, that_cannot_be_written_leaves_nothing) {
    const Survey survey = kept_with(*store, {picture(1)});
    std::ofstream(place.path() / "taken") << "a file where the folder should be";
    const auto written =
        write_visit_file(place.path() / "taken" / "x.truehang.zip", must(visit_to_pack(*store, survey.id)), {});
    ASSERT_FALSE(written.ok());
    EXPECT_EQ(written.error().code, ErrorCode::io);
    EXPECT_EQ(names_in(place.path()), std::vector<std::string>{"taken"});
}

TEST_F(VisitAsAFile, of_a_visit_that_is_not_here_is_missing) {
    EXPECT_EQ(visit_to_pack(*store, "no such visit").error().code, ErrorCode::missing);
}

RC_GTEST_PROP(VisitFiles, bring_every_survey_back_byte_by_byte, ()) {
    const Folder folder;
    const fs::path file = folder.path() / "x.truehang.zip";
    Survey survey = pilot_house();
    const auto words = [] { return *rc::gen::container<std::string>(rc::gen::inRange<char>(' ', '~')); };
    survey.title = words() + *rc::gen::element<std::string>("", " – Öland", "\xe2\x80\x8f\xd7\xa9", "\t\"\\/");
    survey.revision = *rc::gen::inRange<long long>(1, 1'000'000'000);
    survey.rooms[0].windows[0].name = words();
    survey.rooms[0].windows[0].photos.clear();
    VisitToPack visit;
    const auto pictures = *rc::gen::resize(8, rc::gen::container<std::set<int>>(rc::gen::inRange(0, 1000)));
    for (const int which : pictures) {
        const fs::path kept = folder.path() / std::to_string(which);
        std::ofstream(kept, std::ios::binary) << picture(which);
        survey.rooms[0].windows[0].photos.push_back(photo_of(picture(which)));
        visit.photos.push_back({sha256_hex(picture(which)), kept});
    }
    visit.document = write_survey(survey, *rc::gen::arbitrary<bool>());
    must(write_visit_file(file, visit, {}));
    const VisitFile read = opened(file);
    RC_ASSERT(read.document() == visit.document);
    RC_ASSERT(read.photos().size() == pictures.size());
    RC_ASSERT(write_survey(read.survey(), false) == write_survey(survey, false));
}

TEST(PictureKind, is_told_by_how_a_file_begins) {
    using namespace std::string_literals;
    // The signatures of the standards that picture_kind.h names.
    EXPECT_EQ(picture_ending("\xff\xd8\xff\xe0"s), ".jpg");
    EXPECT_EQ(picture_ending("\x89PNG\r\n\x1a\n"s), ".png");
    EXPECT_EQ(picture_ending("RIFF\1\2\3\4WEBP"s), ".webp");
    EXPECT_EQ(picture_ending("\0\0\0\x20"s + "ftypheic"), ".heic");
    EXPECT_EQ(picture_ending("\0\0\0\x20"s + "ftypavif"), ".avif");
    EXPECT_EQ(picture_ending("\0\0\0\x20"s + "ftypisom"), "");
    EXPECT_EQ(picture_ending("MZ\x90"s), "");
    EXPECT_EQ(picture_ending("<html><body>"s), "");
    EXPECT_EQ(picture_ending(""), "");
}

struct Case {
    const char* name;
    ErrorCode code;
    std::string says;  // somewhere in the sentence
};

/// What becomes of each file of foreign_zips.py that isn’t sound; `entry` is its photo’s name without the ending.
std::vector<Case> refused_files(const std::string& entry) {
    return {
        {"empty", ErrorCode::missing, "survey.json: "},
        {"no-survey", ErrorCode::missing, "survey.json: "},
        {"survey-twice", ErrorCode::unreadable, "survey.json: it is in the file twice."},
        {"photo-twice", ErrorCode::unreadable, entry + ".jpg: it is in the file twice."},
        {"climbing", ErrorCode::unreadable, "../outside.jpg: "},
        {"climbing-within", ErrorCode::unreadable, "photos/../../outside.jpg: "},
        {"rooted", ErrorCode::unreadable, "/etc/outside.jpg: "},
        {"backslash", ErrorCode::unreadable, "photos"},
        {"folder", ErrorCode::unreadable, "photos/: "},
        {"capital-digest", ErrorCode::unreadable, "photos/"},
        {"long-name", ErrorCode::unreadable, "photos/aaaa"},
        {"control-name", ErrorCode::unreadable, "photos/?[2J?.jpg: "},
        {"program", ErrorCode::unreadable, entry + ".exe: "},
        {"note", ErrorCode::unreadable, "read me.txt: "},
        {"other-picture-kind", ErrorCode::unreadable, entry + ".png: "},
        {"wrong-digest", ErrorCode::damaged, entry + ".jpg: "},
        {"unmentioned", ErrorCode::unreadable, "photos/"},
        {"not-json", ErrorCode::unreadable, "survey.json: "},
        {"other-json", ErrorCode::unreadable, "survey.json: "},
        {"survey-too-large", ErrorCode::out_of_range, "survey.json: "},
        {"packed-otherwise", ErrorCode::unreadable, "survey.json: "},
        {"bomb", ErrorCode::out_of_range, entry + ".jpg: "},
        {"lying-bomb", ErrorCode::damaged, entry + ".jpg: "},
        {"many", ErrorCode::out_of_range, ""},
        {"locked", ErrorCode::unreadable, "survey.json: "},
        {"byte-changed", ErrorCode::damaged, entry + ".jpg: "},
        {"no-zip", ErrorCode::unreadable, "didn’t come whole"},
        {"nothing", ErrorCode::unreadable, "didn’t come whole"},
    };
}

/// Files that others made: by Python's zipfile, and by changing bytes.
class ForeignFile : public ::testing::Test {
protected:
    Folder folder;
    fs::path photo = *fs::directory_iterator(demo_photos);

    void SetUp() override {
        Survey survey = pilot_house();
        survey.rooms[0].windows[0].photos = {photo_of(file_text(photo))};
        std::ofstream(folder.path() / "survey", std::ios::binary) << write_survey(survey, false);
        const std::string command = "python3 '" TRUEHANG_SOURCE_DIR "/tests/core/store/foreign_zips.py' '" +
                                    (folder.path() / "survey").string() + "' '" + photo.string() + "' '" +
                                    folder.path().string() + "'";
        ASSERT_EQ(std::system(command.c_str()), 0);
    }

    Result<std::optional<VisitFile>> read(const std::string& name) {
        return VisitFile::open(folder.path() / (name + ".zip"), {});
    }
};

TEST_F(ForeignFile, that_is_sound_is_read) {
    for (const char* const name : {"sound", "sound-deflated", "sound-other-order"}) {
        const auto found = read(name);
        ASSERT_TRUE(found.ok()) << name << ": " << found.error().text;
        const VisitFile& file = **found;
        EXPECT_EQ(file.document(), file_text(folder.path() / "survey")) << name;
        ASSERT_EQ(file.photos().size(), 1U);
        EXPECT_EQ(must(file.bytes_of(file.photos()[0])), file_text(photo)) << name;
    }
    const auto without = read("without-photo");
    ASSERT_TRUE(without.ok());
    EXPECT_EQ((**without).missing(), 1);
}

TEST_F(ForeignFile, is_refused_with_the_entry_that_is_wrong) {
    const std::string entry = "photos/" + sha256_hex(file_text(photo));
    for (const auto& [name, code, says] : refused_files(entry)) {
        const auto found = read(name);
        ASSERT_FALSE(found.ok()) << name;
        EXPECT_EQ(found.error().code, code) << name << ": " << found.error().text;
        EXPECT_NE(found.error().text.find(says), std::string::npos) << name << ": " << found.error().text;
        EXPECT_TRUE(found.error().text.ends_with("Nothing was taken in.")) << name << ": " << found.error().text;
        EXPECT_LT(found.error().text.size(), 300U) << name;
    }
    EXPECT_EQ(read("not there").error().code, ErrorCode::missing);
}

TEST_F(ForeignFile, cut_short_at_any_place_is_refused) {
    const std::string whole = file_text(folder.path() / "sound.zip");
    for (std::size_t part = 0; part < 20; ++part) {
        std::ofstream(folder.path() / "cut.zip", std::ios::binary | std::ios::trunc)
            << whole.substr(0, whole.size() * part / 20);
        const auto found = read("cut");
        ASSERT_FALSE(found.ok()) << part;
        EXPECT_EQ(found.error().code, ErrorCode::unreadable) << part;
    }
    std::ofstream(folder.path() / "cut.zip", std::ios::binary | std::ios::trunc) << whole.substr(0, whole.size() - 1);
    EXPECT_FALSE(read("cut").ok());
}

}  // namespace
}  // namespace truehang::testing
