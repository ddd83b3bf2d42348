// SPDX-License-Identifier: Apache-2.0
#include "store_fixture.h"

namespace truehang::testing {
namespace {

TEST(Drafts, come_back_as_they_were_kept) {
    const Folder folder;
    const Draft draft{"visit", "parlour", "south", "walk", "opening.width.top", "48 3/", "{\"keypad\":\"left\"}"};
    {
        const auto store = open_store(folder.path());
        must(store->keep_draft({"visit", "", "", "rooms", "", "", ""}));
        must(store->keep_draft(draft));
        EXPECT_EQ(must(store->draft()), draft);
    }
    EXPECT_EQ(must(open_store(folder.path())->draft()), draft);
}

TEST(Drafts, are_no_edits) {
    const Folder folder;
    const auto store = open_store(folder.path());
    must(store->keep(pilot_house(), "Visit made"));
    must(store->keep_draft({pilot_house().id, "", "", "", "", "1", ""}));
    EXPECT_EQ(must(store->history(pilot_house().id)).size(), 1U);
    EXPECT_EQ(must(store->undo(pilot_house().id)), std::nullopt);
}

TEST(Drafts, and_edits_fold_the_log_in_now_and_then) {
    const Folder folder;
    const auto store = open_store(folder.path());
    Survey survey = pilot_house();
    must(store->keep(survey, "Visit made"));
    for (int i = 0; i < 1500; ++i) {
        must(store->keep_draft({survey.id, "", "", "", "", std::to_string(i), ""}));
    }
    const auto log = folder.path() / "truehang.sqlite-wal";
    EXPECT_GT(std::filesystem::file_size(log), 1000U * 4096U) << "drafts alone only lengthen it";
    for (int i = 0; i < 200; ++i) {
        survey.title = std::to_string(i);
        must(store->keep(survey, "Title"));
    }
    EXPECT_LT(std::filesystem::file_size(log), 2000U * 4200U) << "it starts anew after it was folded in";
    EXPECT_EQ(must(store->draft()).typed, "1499");
}

}  // namespace
}  // namespace truehang::testing
