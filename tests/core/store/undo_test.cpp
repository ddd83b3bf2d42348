// SPDX-License-Identifier: Apache-2.0
#include "store_fixture.h"

namespace truehang::testing {
namespace {

class Undo : public ::testing::Test {
protected:
    Folder folder;
    std::unique_ptr<Store> store = open_store(folder.path());
    Survey survey = pilot_house();

    void SetUp() override { must(store->keep(survey, "Visit made")); }
    void reopen() {
        store.reset();
        store = open_store(folder.path());
    }
    std::string document() { return document_of(must(store->visit(survey.id))); }
};

TEST_F(Undo, takes_back_a_reading_and_puts_it_there_again_also_after_a_restart) {
    const std::string before = document();
    survey.rooms[0].windows[0].readings.push_back(reading("m10", "opening.height.centre", 1131));
    must(store->keep_window(survey.id, "parlour", survey.rooms[0].windows[0], "Centre: 1131"));
    reopen();
    EXPECT_EQ(must(store->undo(survey.id)), "Centre: 1131");
    EXPECT_EQ(document(), before);
    reopen();
    EXPECT_EQ(must(store->redo(survey.id)), "Centre: 1131");
    EXPECT_EQ(document(), document_of(survey));
    EXPECT_EQ(must(store->redo(survey.id)), std::nullopt);
}

TEST_F(Undo, brings_back_a_removed_window_and_a_removed_room_whole) {
    const std::string before = document();
    Survey without = survey;
    without.rooms[0].windows.clear();
    must(store->keep(without, "Window removed"));
    without.rooms.clear();
    must(store->keep(without, "Room removed"));
    EXPECT_EQ(must(store->summary(survey.id)).windows, 0);
    EXPECT_EQ(must(store->undo(survey.id)), "Room removed");
    EXPECT_EQ(must(store->undo(survey.id)), "Window removed");
    EXPECT_EQ(document(), before);
    EXPECT_EQ(must(store->summary(survey.id)).photos, 1);
}

TEST_F(Undo, brings_back_a_removed_visit) {
    must(store->remove_visit(survey.id));
    EXPECT_TRUE(must(store->summary(survey.id)).removed);
    EXPECT_EQ(must(store->undo(survey.id)), "Visit removed");
    EXPECT_FALSE(must(store->summary(survey.id)).removed);
    must(store->redo(survey.id));
    EXPECT_TRUE(must(store->summary(survey.id)).removed);
    must(store->bring_back(survey.id));
    EXPECT_FALSE(must(store->summary(survey.id)).removed);
    EXPECT_EQ(must(store->summary(survey.id)).revision, 1) << "the document never changed";
}

TEST_F(Undo, is_an_edit_of_its_own_with_a_revision_and_an_outbox_row) {
    survey.title = "Second title";
    must(store->keep(survey, "Title"));
    const OutboxItem sent = must(store->items_of(survey.id)).at(0);
    must(store->confirm(sent, "receipt"));
    must(store->undo(survey.id));
    const OutboxItem queued = must(store->items_of(survey.id)).at(0);
    EXPECT_EQ(queued.revision, 3);
    EXPECT_EQ(queued.state, ItemState::waiting);
    const auto history = must(store->history(survey.id));
    ASSERT_EQ(history.size(), 3U);
    EXPECT_EQ(history[1].what, "Title");
    EXPECT_TRUE(history[1].undone);
    EXPECT_EQ(history[2].kind, EditSummary::Kind::undo);
    EXPECT_EQ(history[2].revision, 3);
    must(store->redo(survey.id));
    EXPECT_EQ(must(store->history(survey.id)).back().kind, EditSummary::Kind::redo);
    EXPECT_FALSE(must(store->history(survey.id))[1].undone);
    EXPECT_EQ(must(store->summary(survey.id)).revision, 4);
}

TEST_F(Undo, stops_at_the_making_of_the_visit) {
    EXPECT_EQ(must(store->undo(survey.id)), std::nullopt);
    EXPECT_EQ(must(store->undo_offer(survey.id)).undo, std::nullopt);
    EXPECT_EQ(document(), document_of(survey));
}

TEST_F(Undo, offers_what_it_would_do) {
    survey.title = "Second title";
    must(store->keep(survey, "Title"));
    survey.measured_by = "A. Quill";
    must(store->keep(survey, "Measured by"));
    must(store->undo(survey.id));
    const UndoOffer offer = must(store->undo_offer(survey.id));
    EXPECT_EQ(offer.undo, "Title");
    EXPECT_EQ(offer.redo, "Measured by");
}

TEST_F(Undo, cannot_redo_once_something_else_was_done_but_keeps_its_record) {
    survey.title = "Second title";
    must(store->keep(survey, "Title"));
    must(store->undo(survey.id));
    survey = pilot_house();
    survey.measured_by = "A. Quill";
    must(store->keep(survey, "Measured by"));
    EXPECT_EQ(must(store->redo(survey.id)), std::nullopt);
    EXPECT_EQ(must(store->undo(survey.id)), "Measured by");
    EXPECT_EQ(must(store->undo(survey.id)), std::nullopt);
    const auto history = must(store->history(survey.id));
    EXPECT_EQ(history[1].what, "Title");
}

TEST_F(Undo, of_one_visit_leaves_others_alone) {
    Survey other = survey;
    other.id = "sail-loft";
    must(store->keep(other, "Visit made"));
    other.title = "Sail loft";
    must(store->keep(other, "Title"));
    EXPECT_EQ(must(store->undo(survey.id)), std::nullopt);
    EXPECT_EQ(document_of(must(store->visit("sail-loft"))), document_of(other));
}

}  // namespace
}  // namespace truehang::testing
