// SPDX-License-Identifier: Apache-2.0
#include "faulty_disk.h"
#include "store_fixture.h"

// The disk is full from the nth write on, for every n of a script: one error that says so, nothing changed, and the
// same call works when there is room.

namespace truehang::testing {
namespace {

using Step = std::function<std::optional<Error>(Store&)>;

template <class T>
std::optional<Error> error_in(const Result<T>& result) {
    return result ? std::nullopt : std::optional(result.error());
}

std::vector<Step> script() {
    const Survey survey = pilot_house();
    Survey renamed = survey;
    renamed.title = "Second title";
    Window south = survey.rooms.at(0).windows.at(0);
    south.readings.push_back(reading("m10", "opening.height.centre", 1131));
    return {
        [=](Store& store) { return error_in(store.keep(survey, "Visit made")); },
        [=](Store& store) {
            return error_in(store.keep_draft({survey.id, "", "", "", "", "113", ""}));
        },
        [=](Store& store) { return error_in(store.keep_window(survey.id, "parlour", south, "A reading")); },
        [=](Store& store) { return error_in(store.document_to_send(survey.id)); },
        [=](Store& store) { return error_in(store.confirm(store.pending().value().at(0), "receipt")); },
        [=](Store& store) { return error_in(store.undo(survey.id)); },
        [=](Store& store) { return error_in(store.keep(renamed, "Title")); },
        [=](Store& store) { return error_in(store.remove_visit(survey.id)); },
    };
}

/// All that can be asked of the store, as text.
std::string all_of(Store& store) {
    std::string text = must(store.draft()).typed + "\n";
    for (const VisitSummary& visit : must(store.visits())) {
        text += document_of(must(store.visit(visit.id))) + std::to_string(visit.revision) +
                std::to_string(visit.confirmed_revision) + (visit.removed ? "removed\n" : "\n");
        for (const EditSummary& edit : must(store.history(visit.id))) {
            text += edit.what + (edit.undone ? " undone\n" : "\n");
        }
    }
    for (const OutboxItem& item : must(store.pending())) {
        text += item.id + std::to_string(item.revision) + "\n";
    }
    return text;
}

std::unique_ptr<Store> open_with_room_in_the_end(const std::filesystem::path& folder, FaultyDisk& disk) {
    auto opened = Store::open(folder, surroundings(faulty_disk_vfs));
    if (!opened) {
        EXPECT_EQ(opened.error().code, ErrorCode::full) << opened.error().text;
        disk.make_room();
        return open_store(folder, surroundings(faulty_disk_vfs));
    }
    return std::move(opened).value();
}

/// Whether the disk was full at some step.
bool run_script_filling_up_after(int writes) {
    FaultyDisk disk;
    const Folder folder;
    disk.fill_up_after(writes);
    auto store = open_with_room_in_the_end(folder.path(), disk);
    for (const Step& step : script()) {
        const std::string before = all_of(*store);
        if (const auto error = step(*store)) {
            EXPECT_EQ(error->code, ErrorCode::full) << error->text;
            EXPECT_EQ(all_of(*store), before) << "after write " << writes;
            disk.make_room();
            EXPECT_EQ(all_of(*store), before) << "after write " << writes;
            const auto again = step(*store);
            EXPECT_FALSE(again) << (again ? again->text : "");
        }
    }
    const std::string in_the_end = all_of(*store);
    store.reset();
    disk.make_room();
    EXPECT_EQ(all_of(*open_store(folder.path())), in_the_end);
    return disk.was_full();
}

TEST(FullDisk, at_any_write_is_said_loses_nothing_and_works_again) {
    int writes = 1;
    while (run_script_filling_up_after(writes) && !::testing::Test::HasFailure()) {
        ++writes;
    }
    EXPECT_GT(writes, 50) << "the script writes at least this often";
}

// A damaged page is said, and the file stays as it was.
TEST(DamagedPage, is_said_or_did_no_harm_and_the_file_is_left) {
    const Folder folder;
    const auto file = folder.path() / "truehang.sqlite";
    {
        const auto store = open_store(folder.path());
        must(store->keep(pilot_house(), "Visit made"));
    }
    const std::string sound = file_text(file);
    int said = 0;
    for (std::size_t page = 0; page < sound.size() / 4096; ++page) {
        std::string bytes = sound;
        bytes.replace(page * 4096 + (page == 0 ? 100 : 0), 900, std::string(900, '\x5a'));
        std::ofstream(file, std::ios::binary) << bytes;
        const auto opened = Store::open(folder.path(), surroundings());
        if (!opened) {
            ++said;
            EXPECT_EQ(opened.error().code, ErrorCode::damaged) << opened.error().text;
            EXPECT_EQ(file_text(file), bytes);
            EXPECT_EQ(folder_bytes(folder.path()).size(), 1U);
        } else {
            ADD_FAILURE() << "page " << page << " was torn up and nothing said";
        }
    }
    EXPECT_GT(said, 10);
    std::ofstream(file, std::ios::binary) << sound;
    EXPECT_EQ(document_of(must(open_store(folder.path())->visit(pilot_house().id))), document_of(pilot_house()));
}

}  // namespace
}  // namespace truehang::testing
