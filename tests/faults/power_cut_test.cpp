// SPDX-License-Identifier: Apache-2.0
#include "faulty_disk.h"
#include "store_fixture.h"

// The power goes at any moment: what a call confirmed is there when the store is opened again.

namespace truehang::testing {
namespace {

constexpr const char* visit_id = "01924f6a-7c00-7000-8000-000000000001";

Window with_readings(int count) {
    Window south = pilot_house().rooms.at(0).windows.at(0);
    south.readings.clear();
    for (int i = 0; i < count; ++i) {
        south.readings.push_back(reading("r" + std::to_string(i), "opening.width.top", 1000 + i));
    }
    return south;
}

/// How many readings the window has on this disk; -1 where the visit isn't there, -2 where the store doesn't open.
int readings_on(const DiskImage& image) {
    const Folder folder;
    write_image(image, folder.path());
    StoreSurroundings given = surroundings();
    given.survives_power_cut = false;  // this copy is only looked at
    const auto opened = Store::open(folder.path(), given);
    if (!opened) {
        ADD_FAILURE() << opened.error().text;
        return -2;
    }
    const auto visit = opened.value()->visit(visit_id);
    if (!visit) {
        EXPECT_EQ(visit.error().code, ErrorCode::missing) << visit.error().text;
        return -1;
    }
    const auto& readings = visit->rooms.at(0).windows.at(0).readings;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        EXPECT_EQ(readings[i].id, "r" + std::to_string(i));
        EXPECT_EQ(readings[i].value, Length::mm(1000.0 + static_cast<double>(i)));
    }
    return static_cast<int>(readings.size());
}

/// Takes 30 readings, cuts the power after each that was confirmed, and counts the cuts after which one was lost.
int cuts_that_lose(bool survives_power_cut) {
    FaultyDisk disk;
    const Folder folder;
    StoreSurroundings given = surroundings(faulty_disk_vfs);
    given.survives_power_cut = survives_power_cut;
    auto store = open_store(folder.path(), given);
    Survey survey = pilot_house();
    survey.rooms[0].windows[0] = with_readings(0);
    must(store->keep(survey, "Visit made"));
    int lost = 0;
    for (int count = 1; count <= 30; ++count) {
        must(store->keep_draft({visit_id, "parlour", "parlour-south", "walk", "", std::to_string(count), ""}));
        must(store->keep_window(visit_id, "parlour", with_readings(count), "A reading"));
        lost += readings_on(disk.synced()) < count ? 1 : 0;
    }
    return lost;
}

TEST(PowerCut, loses_no_reading_that_was_confirmed) { EXPECT_EQ(cuts_that_lose(true), 0); }

// The same with synchronous=OFF must lose, or the test above would prove nothing.
TEST(PowerCut, would_lose_readings_without_syncing) { EXPECT_EQ(cuts_that_lose(false), 30); }

TEST(PowerCut, a_draft_reaches_the_disk_with_the_next_edit) {
    FaultyDisk disk;
    const Folder folder;
    auto store = open_store(folder.path(), surroundings(faulty_disk_vfs));
    must(store->keep(pilot_house(), "Visit made"));
    const Draft draft{visit_id, "parlour", "parlour-south", "walk", "above.left", "14", ""};
    must(store->keep_draft(draft));
    must(store->remove_visit(visit_id));
    const Folder after;
    write_image(disk.synced(), after.path());
    EXPECT_EQ(must(open_store(after.path())->draft()), draft);
}

struct Moment {
    DiskImage image;
    int confirmed = 0;
};

/// A script of readings and drafts long enough to fold the log in and start it anew, cut before each of the first 60
/// writes and syncs and before every 29th after that.
std::vector<Moment> moments_of_a_script(std::mt19937* chance) {
    FaultyDisk disk;
    const Folder folder;
    std::vector<Moment> moments;
    int confirmed = -1;  // not even the visit
    int operations = 0;
    disk.before_each = [&] {
        if (operations++ < 60 || operations % 29 == 0) {
            moments.push_back({chance != nullptr ? disk.torn(*chance) : disk.synced(), confirmed});
        }
    };
    auto store = open_store(folder.path(), surroundings(faulty_disk_vfs));
    Survey survey = pilot_house();
    survey.rooms[0].windows[0] = with_readings(0);
    must(store->keep(survey, "Visit made"));
    confirmed = 0;
    for (int count = 1; count <= 40; ++count) {
        for (int digit = 0; digit < 20; ++digit) {
            must(store->keep_draft({visit_id, "", "", "", "", std::string(2000, '1'), ""}));
        }
        must(store->keep_window(visit_id, "parlour", with_readings(count), "A reading"));
        confirmed = count;
    }
    return moments;
}

void expect_nothing_confirmed_missing(const std::vector<Moment>& moments) {
    EXPECT_GT(moments.size(), 60U);
    for (const Moment& moment : moments) {
        EXPECT_GE(readings_on(moment.image), moment.confirmed);
    }
}

TEST(PowerCut, at_any_write_or_sync_opens_again_with_all_that_was_confirmed) {
    expect_nothing_confirmed_missing(moments_of_a_script(nullptr));
}

TEST(PowerCut, that_leaves_some_writes_and_tears_others_opens_again_too) {
    std::mt19937 chance(20260314);
    expect_nothing_confirmed_missing(moments_of_a_script(&chance));
}

}  // namespace
}  // namespace truehang::testing
