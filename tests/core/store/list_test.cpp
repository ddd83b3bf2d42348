// SPDX-License-Identifier: Apache-2.0
#include "store_fixture.h"
#include "survey/stations.h"
#include "units/folded.h"
#include "version_1.h"

#include <SQLiteCpp/Database.h>

namespace truehang::testing {
namespace {

// Small letters as Unicode 15's CaseFolding.txt gives them (status C).
TEST(Folded, makes_the_capitals_of_three_alphabets_small) {
    EXPECT_EQ(folded("Möwe ÄÖÜ Łódź Žižkov"), "möwe äöü łódź žižkov");
    EXPECT_EQ(folded("ΣΊΔΗΣ Ёлка ЖУК"), "σΊδησ ёлка жук") << "accented Greek capitals are left as they are";
    EXPECT_EQ(folded("Ÿ × ÷ ß"), "ÿ × ÷ ß");
    EXPECT_EQ(folded("  4 Slipway\n Row\t"), "4 slipway row ");
    EXPECT_EQ(folded("\xC3"), "\xC3") << "cut short";
}

TEST(Folded, a_search_is_bounded) {
    EXPECT_EQ(search_words("a b c d e f g h").size(), most_search_words);
    EXPECT_EQ(search_words(std::string(5000, 'x')).at(0).size(), longest_search);
    EXPECT_TRUE(search_words(" \n ").empty());
}

class Listed : public ::testing::Test {
protected:
    Folder folder;
    std::unique_ptr<Store> store = open_store(folder.path());

    Survey add(const std::string& id, const std::string& title, const std::string& measured_at) {
        Survey survey;
        survey.id = id;
        survey.title = title;
        survey.measured_at = measured_at;
        must(store->keep(survey, "Visit made"));
        return survey;
    }
    std::vector<std::string> ids(const VisitsAsked& asked) {
        std::vector<std::string> found;
        for (const VisitSummary& visit : must(store->visits(asked)).visits) {
            found.push_back(visit.id);
        }
        return found;
    }
};

using Ids = std::vector<std::string>;

TEST_F(Listed, the_newest_day_comes_first_and_in_it_the_newest_edit) {
    add("old", "Old", "2026-03-01T09:00:00+01:00");
    Survey early = add("early", "Early", "2026-03-14T08:00:00+00:00");
    add("late", "Late", "2026-03-14T16:00:00+00:00");
    // The day is the one of the place, not of Greenwich: 23:30 two hours east is that same evening.
    add("evening", "Evening", "2026-03-13T23:30:00-02:00");
    EXPECT_EQ(ids({}), (Ids{"late", "early", "evening", "old"}));
    early.title = "Early again";
    must(store->keep(early, "Title"));
    EXPECT_EQ(ids({}), (Ids{"early", "late", "evening", "old"}));
    EXPECT_EQ(must(store->summary("evening")).day, "2026-03-13");
}

TEST_F(Listed, a_visit_without_a_time_stands_on_the_day_it_was_made) {
    add("bare", "Bare", "");
    EXPECT_EQ(must(store->summary("bare")).day, "2026-03-14") << "the day of the test's clock";
}

TEST_F(Listed, pages_follow_each_other_without_gap) {
    for (int i = 0; i < 7; ++i) {
        add("v" + std::to_string(i), "Visit", "2026-03-14T08:00:00+00:00");
    }
    const auto first = must(store->visits(VisitsAsked{.most = 3}));
    EXPECT_TRUE(first.more);
    EXPECT_EQ(ids({.most = 3}), (Ids{"v6", "v5", "v4"}));
    EXPECT_EQ(ids({.from = 3, .most = 3}), (Ids{"v3", "v2", "v1"}));
    const auto last = must(store->visits(VisitsAsked{.from = 6, .most = 3}));
    EXPECT_EQ(last.visits.size(), 1U);
    EXPECT_FALSE(last.more);
}

TEST_F(Listed, words_are_found_in_title_client_and_address_large_or_small) {
    Survey survey = add("a", "Möwennest", "");
    survey.client.emplace();
    survey.client->name = "R. Oduya";
    survey.site.emplace();
    survey.site->address = "4 Slipway Row, Ferrymouth";
    must(store->keep(survey, "Client"));
    add("b", "Sail loft", "");
    EXPECT_EQ(ids({.words = "MÖWEN oduya slip"}), Ids{"a"});
    EXPECT_EQ(ids({.words = "loft"}), Ids{"b"});
    EXPECT_EQ(ids({.words = "%"}), Ids{}) << "no sign stands for others";
    EXPECT_EQ(ids({.words = "' OR 1=1 --"}), Ids{});
    EXPECT_EQ(ids({.words = ""}), (Ids{"b", "a"}));
    survey.client->name = "Someone else";
    must(store->keep(survey, "Client"));
    EXPECT_EQ(ids({.words = "oduya"}), Ids{});
    must(store->undo("a"));
    EXPECT_EQ(ids({.words = "oduya"}), Ids{"a"});
    EXPECT_EQ(ids({.id = "a", .words = "loft"}), Ids{});
}

TEST_F(Listed, removed_visits_are_listed_apart) {
    add("a", "One", "");
    add("b", "Two", "");
    must(store->remove_visit("a"));
    EXPECT_EQ(ids({}), Ids{"b"});
    EXPECT_EQ(ids({.removed = true}), Ids{"a"});
}

TEST_F(Listed, states_follow_readings_undo_and_what_the_workroom_confirmed) {
    Survey survey = pilot_house();
    Window& south = survey.rooms[0].windows[0];
    south.readings.clear();
    south.not_taken.clear();
    south.photos.clear();
    must(store->keep(survey, "Visit made"));
    const auto only = [&](VisitState state) { return ids({.state = state}) == Ids{survey.id}; };
    EXPECT_TRUE(only(VisitState::to_measure));
    south.readings.push_back(reading("m1", "opening.width.top", 1240));
    must(store->keep_window(survey.id, "parlour", south, "Across the top"));
    EXPECT_TRUE(only(VisitState::measuring));
    EXPECT_EQ(must(store->summary(survey.id)).windows_begun, 1);
    must(store->undo(survey.id));
    EXPECT_EQ(must(store->summary(survey.id)).windows_begun, 0);
    EXPECT_TRUE(only(VisitState::to_measure));
    must(store->redo(survey.id));
    must(store->summary(survey.id));
    EXPECT_TRUE(only(VisitState::measuring));
    for (const Station& station : walk_of(south)) {
        NotTaken reason;
        reason.station = station.word;
        south.not_taken.push_back(reason);
    }
    must(store->keep_window(survey.id, "parlour", south, "Reasons"));
    EXPECT_TRUE(only(VisitState::to_send)) << must(store->summary(survey.id)).windows_measured;
    const auto sent = must(store->document_to_send(survey.id));
    OutboxItem item;
    item.id = survey.id;
    item.revision = sent.revision;
    must(store->confirm(item, "receipt"));
    EXPECT_TRUE(only(VisitState::there));
    south.notes = "One word more";
    must(store->keep_window(survey.id, "parlour", south, "Notes"));
    EXPECT_TRUE(only(VisitState::to_send));
}

TEST_F(Listed, a_visit_lacking_a_photo_in_the_workroom_is_still_to_send) {
    const Survey survey = pilot_house();
    must(store->keep(survey, "Visit made"));
    OutboxItem item;
    item.id = survey.id;
    item.revision = must(store->document_to_send(survey.id)).revision;
    must(store->confirm(item, "receipt"));
    EXPECT_EQ(ids({.state = VisitState::there}), Ids{});
    EXPECT_EQ(ids({.state = VisitState::to_send}), Ids{survey.id});
}

TEST_F(Listed, a_file_of_version_1_is_searched_and_counted) {
    store.reset();
    const Folder older;
    {
        SQLite::Database database((older.path() / "truehang.sqlite").string(),
                                  SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        database.exec(std::string(version_1_file));
        database.exec("UPDATE visit SET title = 'SAIL LÖFT'");
    }
    store = open_store(older.path());
    EXPECT_EQ(ids({.words = "löft ropewalk"}), Ids{"visit-1"});
    EXPECT_EQ(must(store->visits(VisitsAsked{})).visits.at(0).windows_begun, 1);
    EXPECT_EQ(must(store->summary("visit-1")).day, "2026-03-14");
    EXPECT_EQ(ids({.state = VisitState::measuring}), Ids{"visit-1"});
}

TEST_F(Listed, visits_of_an_earlier_version_are_counted_a_few_at_a_time) {
    for (int i = 0; i < 5; ++i) {
        add("v" + std::to_string(i), "Visit", "");
    }
    store.reset();
    {
        SQLite::Database database((folder.path() / "truehang.sqlite").string(), SQLite::OPEN_READWRITE);
        database.exec("UPDATE store SET value = 'earlier' WHERE name = 'walk_edition'");
        database.exec("UPDATE visit_body SET body = '{' WHERE visit_id = 'v3'");
    }
    store = open_store(folder.path());
    EXPECT_EQ(ids({.state = VisitState::to_measure}), Ids{}) << "not counted yet";
    EXPECT_EQ(must(store->count_windows(2)), 3);
    EXPECT_EQ(must(store->count_windows(60)), 0);
    EXPECT_EQ(ids({.state = VisitState::to_measure}).size(), 5U) << "one that can't be read counts too";
}

}  // namespace
}  // namespace truehang::testing
