// SPDX-License-Identifier: Apache-2.0
#include "store/sha256.h"
#include "store_fixture.h"

namespace truehang::testing {
namespace {

class OutboxRows : public ::testing::Test {
protected:
    Folder folder;
    std::unique_ptr<Store> store = open_store(folder.path());
    Survey survey = pilot_house();
    std::string photo_bytes = std::string("\xff\xd8 not much of a picture \0 but bytes", 37);

    void reopen() {
        store.reset();
        store = open_store(folder.path());
    }
    /// The visit with one photo that is here.
    std::string keep_with_photo() {
        const std::string sha256 = must(store->keep_photo(photo_bytes, "image/jpeg"));
        Photo& photo = survey.rooms[0].windows[0].photos[0];
        photo.sha256 = sha256;
        photo.bytes = static_cast<long long>(photo_bytes.size());
        must(store->keep(survey, "Visit made"));
        return sha256;
    }
    OutboxItem survey_item() { return must(store->items_of(survey.id)).at(0); }
};

TEST_F(OutboxRows, an_edit_queues_the_survey_then_its_photos) {
    const std::string sha256 = keep_with_photo();
    reopen();
    const auto items = must(store->pending());
    ASSERT_EQ(items.size(), 2U);
    EXPECT_EQ(items[0].kind, ItemKind::survey);
    EXPECT_EQ(items[0].id, survey.id);
    EXPECT_EQ(items[0].revision, 1);
    EXPECT_EQ(items[1].kind, ItemKind::photo);
    EXPECT_EQ(items[1].id, sha256);
    EXPECT_EQ(items[1].media_type, "image/jpeg");
    EXPECT_EQ(items[1].bytes, static_cast<long long>(photo_bytes.size()));
}

TEST_F(OutboxRows, a_photo_that_is_not_here_waits_for_its_bytes) {
    survey.rooms[0].windows[0].photos[0].sha256 = sha256_hex(photo_bytes);
    must(store->keep(survey, "Visit taken in"));
    EXPECT_EQ(must(store->pending()).size(), 1U);
    must(store->keep_photo(photo_bytes, "image/jpeg"));
    ASSERT_EQ(must(store->pending()).size(), 2U);
    EXPECT_EQ(must(store->pending())[1].id, sha256_hex(photo_bytes));
}

TEST_F(OutboxRows, the_bytes_to_send_are_the_document_and_stay_the_same) {
    must(store->keep(survey, "Visit made"));
    const DocumentToSend first = must(store->document_to_send(survey.id));
    const auto read = read_survey(first.bytes);
    ASSERT_TRUE(read.ok());
    EXPECT_EQ(read->revision, 1);
    EXPECT_EQ(read->parents, std::vector<std::string>()) << "nothing of it is known elsewhere";
    Survey told = *read;
    told.parents.reset();
    EXPECT_EQ(document_of(told), document_of(survey));
    EXPECT_EQ(first.sha256, sha256_hex(first.bytes));
    reopen();
    const DocumentToSend again = must(store->document_to_send(survey.id));
    EXPECT_EQ(again.bytes, first.bytes);
    EXPECT_EQ(again.sha256, first.sha256);
    survey.title = "Second title";
    must(store->keep(survey, "Title"));
    const DocumentToSend second = must(store->document_to_send(survey.id));
    EXPECT_EQ(second.revision, 2);
    EXPECT_NE(second.sha256, first.sha256);
}

TEST_F(OutboxRows, a_confirmed_survey_is_done_and_its_receipt_stays) {
    must(store->keep(survey, "Visit made"));
    must(store->document_to_send(survey.id));
    must(store->confirm(survey_item(), "{\"number\":17}"));
    reopen();
    EXPECT_TRUE(must(store->pending()).empty());
    EXPECT_EQ(survey_item().state, ItemState::confirmed);
    EXPECT_EQ(must(store->summary(survey.id)).confirmed_revision, 1);
    EXPECT_EQ(must(store->receipt(ItemKind::survey, survey.id, 1)), "{\"number\":17}");
    EXPECT_EQ(must(store->receipt(ItemKind::survey, survey.id, 2)), std::nullopt);
}

TEST_F(OutboxRows, confirming_an_older_revision_leaves_the_newer_waiting) {
    must(store->keep(survey, "Visit made"));
    const OutboxItem on_its_way = survey_item();
    survey.title = "Edited while it was on its way";
    must(store->keep(survey, "Title"));
    must(store->confirm(on_its_way, "receipt 1"));
    EXPECT_EQ(survey_item().state, ItemState::waiting);
    EXPECT_EQ(survey_item().revision, 2);
    EXPECT_EQ(must(store->summary(survey.id)).confirmed_revision, 1);
    must(store->refuse(on_its_way, "late answer to the old one"));
    EXPECT_EQ(survey_item().state, ItemState::waiting);
}

TEST_F(OutboxRows, a_refusal_waits_for_an_edit_or_a_person) {
    must(store->keep(survey, "Visit made"));
    must(store->refuse(survey_item(), "The workroom doesn't take this format."));
    EXPECT_TRUE(must(store->pending()).empty());
    EXPECT_EQ(survey_item().state, ItemState::refused);
    EXPECT_EQ(survey_item().why, "The workroom doesn't take this format.");
    must(store->send_again(survey_item()));
    EXPECT_EQ(must(store->pending()).size(), 1U);
    must(store->refuse(survey_item(), "Still not."));
    survey.title = "Second title";
    must(store->keep(survey, "Title"));
    EXPECT_EQ(must(store->pending()).at(0).revision, 2);
    EXPECT_EQ(must(store->pending()).at(0).why, "");
}

TEST_F(OutboxRows, a_postponed_item_says_until_when_why_and_how_often) {
    must(store->keep(survey, "Visit made"));
    must(store->postpone(survey_item(), "2026-03-14T12:00:00+00:00", "No network"));
    must(store->postpone(survey_item(), "2026-03-14T12:05:00+00:00", "No answer"));
    reopen();
    const OutboxItem item = must(store->pending()).at(0);
    EXPECT_EQ(item.until, "2026-03-14T12:05:00+00:00");
    EXPECT_EQ(item.why, "No answer");
    EXPECT_EQ(item.tries, 2);
    survey.title = "Second title";
    must(store->keep(survey, "Title"));
    EXPECT_EQ(survey_item().until, "");
    EXPECT_EQ(survey_item().tries, 0);
}

TEST_F(OutboxRows, photos_are_confirmed_one_by_one) {
    const std::string sha256 = keep_with_photo();
    const OutboxItem photo = must(store->items_of(survey.id)).at(1);
    EXPECT_EQ(must(store->summary(survey.id)).photos_confirmed, 0);
    must(store->confirm(photo, "there"));
    EXPECT_EQ(must(store->summary(survey.id)).photos_confirmed, 1);
    EXPECT_EQ(must(store->receipt(ItemKind::photo, sha256, 0)), "there");
    survey.title = "Second title";
    must(store->keep(survey, "Title"));
    EXPECT_EQ(must(store->summary(survey.id)).photos_confirmed, 1) << "an edit doesn't send photos again";
}

TEST_F(OutboxRows, a_rooms_photo_goes_like_a_windows) {
    const std::string of_window = keep_with_photo();
    Photo photo;
    photo.sha256 = must(store->keep_photo("from the door", "image/jpeg"));
    photo.media_type = "image/jpeg";
    photo.bytes = 13;
    survey.rooms[0].photos = {photo};
    must(store->keep(survey, "A photo"));
    const auto items = must(store->items_of(survey.id));
    ASSERT_EQ(items.size(), 3u);
    EXPECT_EQ(items[1].id, photo.sha256) << "a room’s own come before its windows’";
    EXPECT_EQ(items[2].id, of_window);
    EXPECT_EQ(must(store->summary(survey.id)).photos, 2);
    must(store->confirm(items[1], "there"));
    EXPECT_EQ(must(store->summary(survey.id)).photos_confirmed, 1);
    reopen();
    EXPECT_EQ(must(store->visit(survey.id)).rooms[0].photos.at(0).sha256, photo.sha256);
    survey.rooms[0].photos.clear();
    must(store->keep(survey, "A photo taken off"));
    EXPECT_EQ(must(store->summary(survey.id)).photos, 1);
}

TEST_F(OutboxRows, the_oldest_that_waits_is_known_until_it_is_confirmed) {
    const std::string sha256 = keep_with_photo();
    const std::string made = must(store->history(survey.id)).at(0).at;
    survey.title = "Pilot house, again";
    must(store->keep(survey, "Title"));
    EXPECT_EQ(must(store->summary(survey.id)).unsent_since, made) << "a later edit doesn't begin the day anew";
    EXPECT_EQ(must(store->visits())[0].unsent_since, made);
    EXPECT_EQ(must(store->visits(VisitsAsked{})).visits.at(0).unsent_since, made);
    OutboxItem first = survey_item();
    first.revision = 1;
    must(store->confirm(first, "there"));
    EXPECT_EQ(must(store->summary(survey.id)).unsent_since, made) << "its photo waits still";
    must(store->confirm(must(store->items_of(survey.id)).at(1), "there"));
    EXPECT_EQ(must(store->summary(survey.id)).unsent_since, must(store->history(survey.id)).at(1).at);
    must(store->confirm(survey_item(), "there"));
    EXPECT_EQ(must(store->summary(survey.id)).unsent_since, "");
    must(store->undo(survey.id));
    EXPECT_EQ(must(store->summary(survey.id)).unsent_since, must(store->history(survey.id)).at(2).at);
}

TEST_F(OutboxRows, a_photo_that_is_not_here_is_nothing_to_send) {
    survey.rooms[0].windows[0].photos[0].sha256 = sha256_hex(photo_bytes);
    must(store->keep(survey, "Visit taken in"));
    must(store->confirm(survey_item(), "there"));
    EXPECT_EQ(must(store->summary(survey.id)).unsent_since, "");
}

TEST_F(OutboxRows, what_is_no_item_is_refused) {
    must(store->keep(survey, "Visit made"));
    OutboxItem unknown;
    unknown.id = "nowhere";
    EXPECT_EQ(store->confirm(unknown, "").error().code, ErrorCode::missing);
    OutboxItem future = survey_item();
    future.revision = 9;
    EXPECT_EQ(store->confirm(future, "").error().code, ErrorCode::conflict);
    EXPECT_EQ(must(store->summary(survey.id)).confirmed_revision, 0);
}

TEST_F(OutboxRows, the_pairing_is_kept_and_forgotten) {
    EXPECT_EQ(must(store->pairing()), std::nullopt);
    const Pairing pairing{"https://192.0.2.7:8443", "token", std::string(64, 'a')};
    must(store->set_pairing(pairing));
    reopen();
    EXPECT_EQ(must(store->pairing()), pairing);
    must(store->clear_pairing());
    EXPECT_EQ(must(store->pairing()), std::nullopt);
}

}  // namespace
}  // namespace truehang::testing
