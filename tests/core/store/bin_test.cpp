// SPDX-License-Identifier: Apache-2.0
#include "store_fixture.h"

namespace truehang::testing {
namespace {

class Bin : public ::testing::Test {
protected:
    Folder folder;
    std::unique_ptr<Store> store = open_store(folder.path());

    void reopen() {
        store.reset();
        store = open_store(folder.path());
    }
    /// Whether these bytes stand in any file of the folder, or name one.
    bool anywhere(const std::string& bytes) {
        for (const auto& [name, text] : folder_bytes(folder.path())) {
            if (name.find(bytes) != std::string::npos || text.find(bytes) != std::string::npos) {
                return true;
            }
        }
        return false;
    }
    Survey secret() {
        Survey survey = pilot_house();
        survey.id = "to-erase";
        survey.title = "Zanzibarhouse";
        survey.rooms[0].windows[0].id = "zz-window";
        survey.rooms[0].windows[0].photos.clear();
        return survey;
    }
};

TEST_F(Bin, an_erased_visit_leaves_no_byte_in_the_folder) {
    must(store->keep(pilot_house(), "Visit made"));
    Survey survey = secret();
    const std::string photo = must(store->keep_photo("Quaggaphoto", "image/jpeg"));
    Photo mentioned;
    mentioned.sha256 = photo;
    mentioned.media_type = "image/jpeg";
    mentioned.bytes = 11;
    survey.rooms[0].windows[0].photos = {mentioned};
    must(store->keep(survey, "Visit made"));
    survey.rooms[0].windows[0].notes = "Xylophonenote";
    must(store->keep(survey, "Notes"));
    survey.rooms[0].windows[0].notes.clear();
    must(store->keep(survey, "Notes"));
    must(store->document_to_send(survey.id));
    must(store->keep_draft({survey.id, "parlour", "zz-window", "walk", "", "77", R"({"walk/zz-window/x":"77"})"}));
    std::filesystem::create_directories(folder.path() / thumbnail_folder);
    std::ofstream(folder.path() / thumbnail_folder / (photo + ".jpg")) << "small";
    must(store->mark_seen(survey.id, {"zz-window", "Quincecaution"}));
    must(store->remove_visit(survey.id));
    for (const char* const there : {"Zanzibarhouse", "Xylophonenote", "Quaggaphoto", "zz-window", "Quincecaution"}) {
        EXPECT_TRUE(anywhere(there)) << there;
    }
    must(store->erase_visits({survey.id}));
    for (const std::string& gone :
         {std::string("Zanzibarhouse"), std::string("Xylophonenote"), std::string("Quaggaphoto"),
          std::string("zz-window"), std::string("Quincecaution"), std::string("to-erase"), photo}) {
        EXPECT_FALSE(anywhere(gone)) << gone << " while open";
    }
    reopen();
    EXPECT_FALSE(anywhere("Zanzibarhouse"));
    EXPECT_EQ(store->visit(survey.id).error().code, ErrorCode::missing);
    EXPECT_EQ(document_of(must(store->visit(pilot_house().id))), document_of(pilot_house()));
    EXPECT_EQ(must(store->pending()).size(), 1U);
}

TEST_F(Bin, only_what_was_removed_is_erased) {
    must(store->keep(pilot_house(), "Visit made"));
    must(store->keep(secret(), "Visit made"));
    must(store->remove_visit("to-erase"));
    const auto refused = store->erase_visits({"to-erase", pilot_house().id});
    ASSERT_FALSE(refused.ok());
    EXPECT_EQ(refused.error().code, ErrorCode::conflict);
    EXPECT_EQ(must(store->visits()).size(), 2U) << "and the removed one stays too";
}

TEST_F(Bin, a_photo_stays_that_another_visit_mentions_or_would_by_undo) {
    const std::string shared = must(store->keep_photo("shared picture", "image/jpeg"));
    Photo photo;
    photo.sha256 = shared;
    photo.media_type = "image/jpeg";
    photo.bytes = 14;
    Survey survey = secret();
    survey.rooms[0].windows[0].photos = {photo};
    must(store->keep(survey, "Visit made"));
    Survey other = pilot_house();
    other.rooms[0].windows[0].photos = {photo};
    must(store->keep(other, "Visit made"));
    other.rooms[0].windows[0].photos.clear();
    must(store->keep(other, "A photo taken off"));
    must(store->remove_visit(survey.id));
    must(store->erase_visits({survey.id}));
    EXPECT_TRUE(store->photo_file(shared).ok());
    must(store->undo(other.id));
    EXPECT_EQ(must(store->photo_bytes(shared)), "shared picture");
}

TEST_F(Bin, windows_taken_out_are_there_after_a_restart_alone_or_with_their_room) {
    Survey survey = pilot_house();
    survey.rooms[0].windows.push_back(window("east"));
    survey.rooms[0].windows.back().readings = {reading("e1", "opening.width.top", 905)};
    must(store->keep(survey, "Visit made"));
    const Survey whole = survey;
    survey.rooms[0].windows.pop_back();
    must(store->keep(survey, "Window taken out"));
    reopen();
    auto removed = must(store->removed_windows(survey.id));
    ASSERT_EQ(removed.size(), 1U);
    EXPECT_EQ(removed[0].window.id, "east");
    EXPECT_EQ(removed[0].window.readings.at(0).id, "e1");
    EXPECT_EQ(removed[0].room.id, "parlour");
    survey.rooms.clear();
    must(store->keep(survey, "Room taken out"));
    removed = must(store->removed_windows(survey.id));
    ASSERT_EQ(removed.size(), 2U);
    EXPECT_EQ(removed[0].window.id, whole.rooms[0].windows[0].id) << "the last one taken out first";
    EXPECT_EQ(removed[0].room.name, whole.rooms[0].name);
    EXPECT_EQ(removed[0].window.readings.size(), whole.rooms[0].windows[0].readings.size());
    must(store->keep(whole, "Back"));
    EXPECT_TRUE(must(store->removed_windows(survey.id)).empty());
}

TEST_F(Bin, a_window_in_another_room_is_not_taken_out) {
    Survey survey = pilot_house();
    Room attic;
    attic.id = "attic";
    survey.rooms.push_back(attic);
    must(store->keep(survey, "Visit made"));
    survey.rooms[1].windows = std::move(survey.rooms[0].windows);
    survey.rooms[0].windows.clear();
    must(store->keep(survey, "Window to another room"));
    EXPECT_TRUE(must(store->removed_windows(survey.id)).empty());
}

TEST_F(Bin, erasing_what_was_taken_out_ends_undo_there_and_leaves_the_rest) {
    Survey survey = pilot_house();
    survey.rooms[0].windows.push_back(window("zz-east"));
    must(store->keep(survey, "Visit made"));
    survey.rooms[0].windows.pop_back();
    must(store->mark_seen(survey.id, {"zz-east", "first"}));
    must(store->mark_seen(survey.id, {survey.rooms[0].windows[0].id, "second"}));
    must(store->keep(survey, "Window taken out"));
    EXPECT_TRUE(anywhere("zz-east"));
    must(store->erase_removed_windows(survey.id));
    EXPECT_FALSE(anywhere("zz-east"));
    EXPECT_TRUE(must(store->removed_windows(survey.id)).empty());
    EXPECT_EQ(must(store->undo(survey.id)), std::nullopt);
    EXPECT_EQ(must(store->seen(survey.id)).size(), 1U);
    EXPECT_EQ(document_of(must(store->visit(survey.id))), document_of(survey));
    survey.title = "Later";
    must(store->keep(survey, "Title"));
    EXPECT_EQ(must(store->undo(survey.id)), "Title");
}

TEST_F(Bin, what_was_looked_at_is_kept_by_visit_and_window) {
    must(store->keep(pilot_house(), "Visit made"));
    must(store->keep(secret(), "Visit made"));
    const SeenMark mark{"south", "cords"};
    must(store->mark_seen(pilot_house().id, mark));
    must(store->mark_seen(pilot_house().id, mark));
    reopen();
    EXPECT_EQ(must(store->seen(pilot_house().id)), std::vector{mark});
    EXPECT_TRUE(must(store->seen("to-erase")).empty());
    EXPECT_EQ(must(store->undo(pilot_house().id)), std::nullopt) << "looking is no edit";
    EXPECT_FALSE(store->mark_seen("no such visit", mark).ok());
}

}  // namespace
}  // namespace truehang::testing
