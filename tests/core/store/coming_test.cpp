// SPDX-License-Identifier: Apache-2.0
#include "store_fixture.h"

// What others sent, until it is in the visit here.

namespace truehang::testing {
namespace {

class ComingRows : public ::testing::Test {
protected:
    Folder folder;
    std::unique_ptr<Store> store = open_store(folder.path());
    Survey survey = pilot_house();
};

TEST_F(ComingRows, what_came_is_noted_from_where_it_stands_only) {
    must(store->keep(survey, "Visit made"));
    const ComingRevision one{survey.id, 7, std::string(64, 'a'), "2026-03-14T11:00:00Z", "Ben’s phone"};
    must(store->note_coming({}, "", "c1"));
    const auto ahead = store->note_coming({one}, "c2", "c3");
    ASSERT_FALSE(ahead.ok()) << "what came between c1 and c2 would never come";
    EXPECT_EQ(ahead.error().code, ErrorCode::conflict);
    EXPECT_EQ(must(store->asked_until()), "c1");
    EXPECT_TRUE(must(store->coming()).empty());
    must(store->note_coming({one}, "c1", "c2"));
    EXPECT_EQ(must(store->asked_until()), "c2");
    EXPECT_EQ(must(store->coming()).size(), 1U);
    must(store->note_coming({}, "", "other"));
    EXPECT_EQ(must(store->asked_until()), "other") << "a workroom that begins anew is asked from the first";
}

TEST_F(ComingRows, theirs_may_be_made_from_what_went_out_unheard) {
    must(store->keep(survey, "Visit made"));
    const DocumentToSend sent = must(store->document_to_send(survey.id));
    Survey theirs = survey;
    theirs.revision = sent.revision + 1;
    theirs.parents = {sent.sha256};
    theirs.rooms[0].windows[0].notes = "Damp.";
    const std::string bytes = write_survey(theirs, false);
    EXPECT_EQ(must(store->common_with(survey.id, bytes)), std::nullopt) << "nobody has it who wasn’t sent it";
    must(store->note_going_out(survey.id, sent.revision));
    EXPECT_EQ(must(store->common_with(survey.id, bytes)), sent.bytes);
}

TEST_F(ComingRows, what_is_met_is_in_the_visit_as_one_edit) {
    must(store->keep(survey, "Visit made"));
    Survey theirs = survey;
    theirs.revision = 9;
    theirs.rooms[0].windows[0].notes = "Damp.";
    MetRevision met;
    met.revision = 9;
    met.bytes = write_survey(theirs, false);
    Survey both = theirs;
    both.rooms[0].windows[0].readings.push_back(reading("more", "wall.left", 512));
    EXPECT_EQ(must(store->keep_met(both, "Put together", met)), 10);
    EXPECT_EQ(must(store->summary(survey.id)).revision, 10);
    EXPECT_EQ(must(store->last_met(survey.id))->bytes, met.bytes);
    EXPECT_EQ(must(store->undo(survey.id)), "Put together");
}

}  // namespace
}  // namespace truehang::testing
