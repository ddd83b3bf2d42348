// SPDX-License-Identifier: Apache-2.0
#include "store_fixture.h"

namespace truehang::testing {
namespace {

class Visits : public ::testing::Test {
protected:
    Folder folder;
    std::unique_ptr<Store> store = open_store(folder.path());

    void reopen() {
        store.reset();
        store = open_store(folder.path());
    }
};

TEST_F(Visits, a_survey_comes_back_as_it_was_kept) {
    const Survey survey = pilot_house();
    EXPECT_EQ(must(store->keep(survey, "Visit made")), 1);
    EXPECT_EQ(document_of(must(store->visit(survey.id))), document_of(survey));
    reopen();
    EXPECT_EQ(document_of(must(store->visit(survey.id))), document_of(survey));
    EXPECT_EQ(must(store->visit(survey.id)).revision, 1);
}

TEST_F(Visits, the_list_tells_title_address_windows_and_revisions) {
    Survey survey = pilot_house();
    must(store->keep(survey, "Visit made"));
    survey.title = "Pilot house, second visit";
    must(store->keep(survey, "Title"));
    const auto visits = must(store->visits());
    ASSERT_EQ(visits.size(), 1U);
    EXPECT_EQ(visits[0].title, "Pilot house, second visit");
    EXPECT_EQ(visits[0].address, "4 Slipway Row, Ferrymouth");
    EXPECT_EQ(visits[0].windows, 1);
    EXPECT_EQ(visits[0].revision, 2);
    EXPECT_EQ(visits[0].confirmed_revision, 0);
    EXPECT_EQ(visits[0].photos, 1);
    EXPECT_EQ(visits[0].photos_confirmed, 0);
    EXPECT_FALSE(visits[0].removed);
    EXPECT_EQ(visits[0].updated_at, must(store->history(survey.id)).back().at);
}

TEST_F(Visits, the_visit_edited_last_stands_first) {
    Survey first = pilot_house();
    Survey second = pilot_house();
    second.id = "sail-loft";
    must(store->keep(first, "Visit made"));
    must(store->keep(second, "Visit made"));
    EXPECT_EQ(must(store->visits())[0].id, "sail-loft");
    first.title = "Pilot house again";
    must(store->keep(first, "Title"));
    EXPECT_EQ(must(store->visits())[0].id, first.id);
}

TEST_F(Visits, keeping_what_is_there_already_makes_no_edit) {
    const Survey survey = pilot_house();
    must(store->keep(survey, "Visit made"));
    EXPECT_EQ(must(store->keep(survey, "Nothing")), 1);
    EXPECT_EQ(must(store->keep_window(survey.id, "parlour", survey.rooms[0].windows[0], "Nothing")), 1);
    EXPECT_EQ(must(store->history(survey.id)).size(), 1U);
}

TEST_F(Visits, a_reading_goes_to_its_window_alone) {
    Survey survey = pilot_house();
    must(store->keep(survey, "Visit made"));
    Window& south = survey.rooms[0].windows[0];
    south.readings.push_back(reading("m10", "opening.height.centre", 1131));
    EXPECT_EQ(must(store->keep_window(survey.id, "parlour", south, "Sill to head, centre: 1131")), 2);
    reopen();
    EXPECT_EQ(document_of(must(store->visit(survey.id))), document_of(survey));
    EXPECT_EQ(must(store->history(survey.id)).back().what, "Sill to head, centre: 1131");
}

TEST_F(Visits, a_new_window_comes_last_in_its_room) {
    Survey survey = pilot_house();
    must(store->keep(survey, "Visit made"));
    must(store->keep_window(survey.id, "parlour", window("parlour-east"), "Window"));
    survey.rooms[0].windows.push_back(window("parlour-east"));
    EXPECT_EQ(document_of(must(store->visit(survey.id))), document_of(survey));
    EXPECT_EQ(must(store->summary(survey.id)).windows, 2);
}

TEST_F(Visits, rooms_windows_and_readings_keep_their_order) {
    Survey survey = pilot_house();
    survey.rooms[0].windows.insert(survey.rooms[0].windows.begin(), window("zz"));
    survey.rooms[0].windows.push_back(window("aa"));
    Room attic;
    attic.id = "attic";
    attic.windows.push_back(window("mm"));
    survey.rooms.push_back(attic);
    must(store->keep(survey, "Visit made"));
    EXPECT_EQ(document_of(must(store->visit(survey.id))), document_of(survey));
    std::swap(survey.rooms[0], survey.rooms[1]);
    auto& readings = survey.rooms[1].windows[1].readings;
    std::reverse(readings.begin(), readings.end());
    must(store->keep(survey, "Order"));
    EXPECT_EQ(document_of(must(store->visit(survey.id))), document_of(survey));
}

TEST_F(Visits, readings_of_old_documents_need_no_id) {
    Survey survey = pilot_house();
    for (Reading& each : survey.rooms[0].windows[0].readings) {
        each.id.clear();
    }
    must(store->keep(survey, "Visit taken in"));
    survey.rooms[0].windows[0].readings.erase(survey.rooms[0].windows[0].readings.begin() + 2);
    must(store->keep(survey, "A reading less"));
    EXPECT_EQ(document_of(must(store->visit(survey.id))), document_of(survey));
}

TEST_F(Visits, keys_of_a_newer_version_survive_wherever_they_stand) {
    Survey survey = pilot_house();
    survey.extra.emplace_back("weather", R"({"sky":"overcast","gusts":[12,14.50,12345678901234567890123,null]})");
    survey.rooms[0].extra.emplace_back("beams", "3");
    Window& south = survey.rooms[0].windows[0];
    south.extra.emplace_back("stained_glass", "true");
    south.readings[0].extra.emplace_back("instrument", R"("laser")");
    must(store->keep(survey, "Visit taken in"));
    south.readings.push_back(reading("m10", "opening.height.centre", 1131));
    must(store->keep_window(survey.id, "parlour", south, "A reading"));
    must(store->undo(survey.id));
    must(store->redo(survey.id));
    reopen();
    const std::string document = document_of(must(store->visit(survey.id)));
    EXPECT_EQ(document, document_of(survey));
    for (const char* const kept : {"gusts", "beams", "stained_glass", "laser"}) {
        EXPECT_NE(document.find(kept), std::string::npos) << kept;
    }
}

TEST_F(Visits, a_survey_that_could_not_be_read_back_is_refused_with_its_place) {
    const Survey good = pilot_house();
    must(store->keep(good, "Visit made"));
    Survey bad = good;
    bad.rooms[0].windows[0].layers[0].treatment->fabric = "velvet nobody has";
    const auto refused = store->keep(bad, "Fabric");
    ASSERT_FALSE(refused.ok());
    EXPECT_EQ(refused.error().code, ErrorCode::unreadable);
    EXPECT_NE(refused.error().where.find("/rooms/0/windows/0"), std::string::npos) << refused.error().where;
    const Window& bad_window = bad.rooms[0].windows[0];
    const auto window_refused = store->keep_window(bad.id, "parlour", bad_window, "Fabric");
    ASSERT_FALSE(window_refused.ok());
    EXPECT_EQ(window_refused.error().code, ErrorCode::unreadable);
    EXPECT_NE(window_refused.error().text.find("velvet nobody has"), std::string::npos) << window_refused.error().text;
    EXPECT_EQ(document_of(must(store->visit(good.id))), document_of(good));
    EXPECT_EQ(must(store->history(good.id)).size(), 1U);
}

TEST_F(Visits, a_length_out_of_range_is_refused) {
    const Survey good = pilot_house();
    must(store->keep(good, "Visit made"));
    Window bad = good.rooms[0].windows[0];
    bad.readings.push_back(reading("m10", "opening.height.centre", 100'001));
    const auto refused = store->keep_window(good.id, "parlour", bad, "A reading");
    ASSERT_FALSE(refused.ok());
    EXPECT_EQ(refused.error().code, ErrorCode::unreadable);
    EXPECT_EQ(document_of(must(store->visit(good.id))), document_of(good));
}

TEST_F(Visits, one_window_id_in_two_rooms_is_refused) {
    Survey survey = pilot_house();
    Room attic;
    attic.id = "attic";
    survey.rooms.push_back(attic);
    must(store->keep(survey, "Visit made"));
    const auto refused = store->keep_window(survey.id, "attic", window("parlour-south"), "Window");
    ASSERT_FALSE(refused.ok());
    EXPECT_EQ(refused.error().code, ErrorCode::unreadable);
    EXPECT_EQ(document_of(must(store->visit(survey.id))), document_of(survey));
}

TEST_F(Visits, a_visit_never_grows_beyond_what_can_be_read) {
    Survey survey = pilot_house();
    survey.rooms[0].windows[0].notes = std::string(4'000'000, 'n');
    must(store->keep(survey, "Visit made"));
    Window large = window("large");
    large.notes = std::string(300'000, 'n');
    const auto refused = store->keep_window(survey.id, "parlour", large, "Window");
    ASSERT_FALSE(refused.ok());
    EXPECT_EQ(refused.error().code, ErrorCode::unreadable);
    EXPECT_NE(refused.error().text.find("4 MiB"), std::string::npos) << refused.error().text;
    EXPECT_EQ(must(store->visit(survey.id)).rooms.at(0).windows.size(), 1U);
    survey.rooms[0].windows[0].notes.clear();
    must(store->keep_window(survey.id, "parlour", survey.rooms[0].windows[0], "Notes"));
    must(store->keep_window(survey.id, "parlour", large, "Window"));
}

TEST_F(Visits, text_that_is_not_utf8_is_kept_readable) {
    Survey survey = pilot_house();
    survey.title = "Pilot \xff house";
    must(store->keep(survey, "Visit made"));
    EXPECT_EQ(must(store->visit(survey.id)).title, "Pilot \xef\xbf\xbd house");
}

TEST_F(Visits, what_is_not_there_is_said_to_be_missing) {
    EXPECT_EQ(store->visit("nowhere").error().code, ErrorCode::missing);
    EXPECT_EQ(store->summary("nowhere").error().code, ErrorCode::missing);
    EXPECT_EQ(store->undo("nowhere").error().code, ErrorCode::missing);
    EXPECT_EQ(store->history("nowhere").error().code, ErrorCode::missing);
    EXPECT_EQ(store->remove_visit("nowhere").error().code, ErrorCode::missing);
    EXPECT_EQ(store->document_to_send("nowhere").error().code, ErrorCode::missing);
    EXPECT_EQ(store->keep_window("nowhere", "parlour", window("w"), "A window").error().code, ErrorCode::missing);
    must(store->keep(pilot_house(), "Visit made"));
    EXPECT_EQ(store->keep_window(pilot_house().id, "cellar", window("w"), "A window").error().code, ErrorCode::missing);
}

TEST_F(Visits, a_document_taken_in_keeps_its_revision_and_later_ones_rise) {
    Survey survey = pilot_house();
    survey.revision = 7;
    EXPECT_EQ(must(store->keep(survey, "Visit taken in")), 7);
    survey.title = "Changed here";
    EXPECT_EQ(must(store->keep(survey, "Title")), 8);
    survey.revision = 12;
    survey.title = "Changed elsewhere";
    EXPECT_EQ(must(store->keep(survey, "Newer document taken in")), 12);
}

TEST_F(Visits, the_device_has_one_id_for_good) {
    const std::string id = store->device_id();
    EXPECT_FALSE(id.empty());
    store.reset();
    StoreSurroundings others = surroundings();
    others.new_id = [] { return std::string("another"); };
    store = open_store(folder.path(), std::move(others));
    EXPECT_EQ(store->device_id(), id);
}

}  // namespace
}  // namespace truehang::testing
