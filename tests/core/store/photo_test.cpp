// SPDX-License-Identifier: Apache-2.0
#include "store/sha256.h"
#include "store_fixture.h"

namespace truehang::testing {
namespace {

namespace fs = std::filesystem;

class Photos : public ::testing::Test {
protected:
    Folder folder;
    std::unique_ptr<Store> store = open_store(folder.path());
};

TEST_F(Photos, lie_under_the_sha256_of_their_bytes) {
    // FIPS 180-4 test vector "abc".
    const std::string sha256 = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
    EXPECT_EQ(must(store->keep_photo("abc", "image/jpeg")), sha256);
    EXPECT_EQ(must(store->photo_file(sha256)), folder.path() / "photos" / "ba" / (sha256 + ".jpg"));
    EXPECT_EQ(must(store->photo_bytes(sha256)), "abc");
    EXPECT_EQ(must(store->keep_photo("abc", "image/jpeg")), sha256);
}

TEST_F(Photos, that_have_changed_are_said_to_be_damaged_and_can_be_kept_again) {
    const std::string sha256 = must(store->keep_photo("abc", "image/png"));
    std::ofstream(must(store->photo_file(sha256)), std::ios::binary) << "abd";
    EXPECT_EQ(store->photo_bytes(sha256).error().code, ErrorCode::damaged);
    must(store->keep_photo("abc", "image/png"));
    EXPECT_EQ(must(store->photo_bytes(sha256)), "abc");
}

TEST_F(Photos, that_are_not_here_are_missing_and_no_name_leads_elsewhere) {
    EXPECT_EQ(store->photo_file(sha256_hex("never kept")).error().code, ErrorCode::missing);
    EXPECT_EQ(store->photo_file("../truehang.sqlite").error().code, ErrorCode::missing);
    EXPECT_EQ(store->photo_bytes("").error().code, ErrorCode::missing);
}

TEST_F(Photos, that_were_half_written_are_tidied_away) {
    must(store->keep_photo("abc", "image/jpeg"));
    const fs::path left = folder.path() / "photos" / "ba" / "left.jpg.part";
    std::ofstream(left) << "half";
    store.reset();
    store = open_store(folder.path());
    EXPECT_FALSE(fs::exists(left));
}

TEST_F(Photos, that_cannot_be_written_change_nothing) {
    std::ofstream(folder.path() / "photos") << "a file where the folder should be";
    const auto kept = store->keep_photo("abc", "image/jpeg");
    ASSERT_FALSE(kept.ok());
    EXPECT_EQ(kept.error().code, ErrorCode::io);
    fs::remove(folder.path() / "photos");
    EXPECT_TRUE(store->keep_photo("abc", "image/jpeg").ok());
}

class Backup : public Photos {
protected:
    Folder elsewhere;
    fs::path copy = elsewhere.path() / "copy";
};

TEST_F(Backup, holds_everything_but_the_pairing_and_opens_as_a_store) {
    Survey survey = pilot_house();
    survey.rooms[0].windows[0].photos[0].sha256 = must(store->keep_photo("abc", "image/jpeg"));
    must(store->keep(survey, "Visit made"));
    survey.title = "Second title";
    must(store->keep(survey, "Title"));
    must(store->keep_draft({survey.id, "parlour", "parlour-south", "walk", "above.left", "14", ""}));
    must(store->set_pairing({"https://192.0.2.7:8443", "a-secret-of-the-workroom", ""}));
    must(store->backup_to(copy));
    survey.title = "Edited after the copy";
    must(store->keep(survey, "Title"));

    const auto copied = open_store(copy);
    EXPECT_EQ(must(copied->visit(survey.id)).title, "Second title");
    EXPECT_EQ(must(copied->undo(survey.id)), "Title");
    EXPECT_EQ(must(copied->photo_bytes(sha256_hex("abc"))), "abc");
    EXPECT_EQ(must(copied->draft()).typed, "14");
    EXPECT_EQ(must(copied->pairing()), std::nullopt);
    EXPECT_EQ(must(store->pairing())->token, "a-secret-of-the-workroom");
    EXPECT_EQ(file_text(copy / "truehang.sqlite").find("a-secret-of-the-workroom"), std::string::npos);
}

TEST_F(Backup, replaces_an_older_one_but_never_a_store_in_use) {
    Survey survey = pilot_house();
    must(store->keep(survey, "Visit made"));
    must(store->backup_to(copy));
    survey.title = "Second title";
    must(store->keep(survey, "Title"));
    must(store->backup_to(copy));
    {
        const auto copied = open_store(copy);
        EXPECT_EQ(must(copied->visit(survey.id)).title, "Second title");
        EXPECT_EQ(store->backup_to(copy).error().code, ErrorCode::busy);
    }
    EXPECT_EQ(store->backup_to(folder.path()).error().code, ErrorCode::busy);
    EXPECT_EQ(must(store->visit(survey.id)).title, "Second title");
}

TEST_F(Backup, that_cannot_be_written_leaves_nothing_half_done) {
    must(store->keep(pilot_house(), "Visit made"));
    std::ofstream(copy) << "a file where the folder should be";
    EXPECT_FALSE(store->backup_to(copy).ok());
    EXPECT_EQ(file_text(copy), "a file where the folder should be");
    EXPECT_EQ(must(store->visits()).size(), 1U);
}

}  // namespace
}  // namespace truehang::testing
