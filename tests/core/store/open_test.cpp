// SPDX-License-Identifier: Apache-2.0
#include "store/schema.h"
#include "store_fixture.h"
#include "version_1.h"

#include <SQLiteCpp/SQLiteCpp.h>

#include <sys/wait.h>
#include <unistd.h>

namespace truehang::testing {
namespace {

namespace fs = std::filesystem;

class Opening : public ::testing::Test {
protected:
    Folder folder;
    fs::path file = folder.path() / "truehang.sqlite";

    ErrorCode refusal() {
        const auto opened = Store::open(folder.path(), surroundings());
        EXPECT_FALSE(opened.ok());
        return opened.ok() ? ErrorCode::missing : opened.error().code;
    }
};

TEST_F(Opening, makes_the_folder_and_an_empty_store) {
    const auto store = open_store(folder.path() / "new" / "deeper");
    EXPECT_TRUE(must(store->visits()).empty());
    EXPECT_EQ(must(store->draft()), Draft{});
}

TEST_F(Opening, writes_through_the_log_to_the_disk_with_foreign_keys) {
    { const auto store = open_store(folder.path()); }
    SQLite::Database database(file.string());
    EXPECT_EQ(database.execAndGet("PRAGMA journal_mode").getString(), "wal");
    EXPECT_EQ(database.execAndGet("PRAGMA user_version").getInt(), migrations().back().to);
}

TEST_F(Opening, refuses_a_file_of_a_later_version_and_leaves_it) {
    { must(open_store(folder.path())->keep(pilot_house(), "Visit made")); }
    {
        SQLite::Database database(file.string(), SQLite::OPEN_READWRITE);
        database.exec("PRAGMA user_version = " + std::to_string(migrations().back().to + 1));
    }
    const auto before = folder_bytes(folder.path());
    EXPECT_EQ(refusal(), ErrorCode::newer_version);
    EXPECT_EQ(folder_bytes(folder.path()), before);
}

TEST_F(Opening, refuses_another_programs_file_and_leaves_it) {
    {
        SQLite::Database database(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        database.exec("CREATE TABLE recipe (name TEXT)");
    }
    const auto before = folder_bytes(folder.path());
    EXPECT_EQ(refusal(), ErrorCode::conflict);
    EXPECT_EQ(folder_bytes(folder.path()), before);
}

TEST_F(Opening, refuses_what_is_no_database_and_leaves_it) {
    std::ofstream(file) << std::string(5000, 'x');
    const auto before = folder_bytes(folder.path());
    EXPECT_EQ(refusal(), ErrorCode::damaged);
    EXPECT_EQ(folder_bytes(folder.path()), before);
}

TEST_F(Opening, says_io_where_the_folder_cannot_be_made) {
    std::ofstream(folder.path() / "file") << "no folder";
    EXPECT_EQ(Store::open(folder.path() / "file", surroundings()).error().code, ErrorCode::io);
}

TEST_F(Opening, is_refused_while_another_process_has_it) {
    auto store = open_store(folder.path());
    must(store->keep(pilot_house(), "Visit made"));
    const pid_t child = ::fork();
    if (child == 0) {
        const auto opened = Store::open(folder.path(), surroundings());
        ::_exit(!opened.ok() && opened.error().code == ErrorCode::busy ? 0 : 1);
    }
    int status = -1;
    ::waitpid(child, &status, 0);
    EXPECT_TRUE(WIFEXITED(status) && WEXITSTATUS(status) == 0);
    EXPECT_EQ(refusal(), ErrorCode::busy) << "nor twice in one process";
    must(store->remove_visit(pilot_house().id));
    store.reset();
    EXPECT_TRUE(open_store(folder.path()) != nullptr);
}

TEST_F(Opening, reads_a_file_of_version_1) {
    {
        SQLite::Database database(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        database.exec(std::string(version_1_file));
    }
    auto store = open_store(folder.path());
    ASSERT_TRUE(store);
    EXPECT_EQ(store->device_id(), "01924f6a-7c00-7000-8000-00000000beef");
    const Survey survey = must(store->visit("visit-1"));
    EXPECT_EQ(survey.title, "Sail loft");
    EXPECT_EQ(survey.revision, 3);
    ASSERT_EQ(survey.rooms.at(0).windows.at(0).readings.size(), 2U);
    EXPECT_EQ(survey.rooms[0].windows[0].readings[1].typed, "2 2/8 in");
    EXPECT_EQ(must(store->draft()).typed, "12");
    EXPECT_EQ(must(store->pairing())->token, "token-1");
    EXPECT_EQ(must(store->pending()).at(0).revision, 3);
    EXPECT_EQ(must(store->summary("visit-1")).confirmed_revision, 2);
    EXPECT_EQ(must(store->receipt(ItemKind::survey, "visit-1", 2)), "receipt-2");
    EXPECT_EQ(must(store->document_to_send("visit-1")).revision, 3);
    EXPECT_EQ(must(store->undo("visit-1")), "Sill to head, left: 2 2/8 in");
    EXPECT_EQ(must(store->visit("visit-1")).rooms.at(0).windows.at(0).readings.size(), 1U);
}

TEST_F(Opening, reads_a_file_of_version_2) {
    must(open_store(folder.path())->keep(pilot_house(), "Visit made"));
    const auto waited = must(open_store(folder.path())->pending());
    {  // versions 3 to 5 add tables to version 2; version 6 makes the view anew, and the outbox with what is in it
        SQLite::Database database(file.string(), SQLite::OPEN_READWRITE);
        database.exec(
            "DROP TABLE erasing; DROP TABLE seen; DROP TABLE parent; DROP TABLE met; DROP TABLE asked; DROP TABLE "
            "coming; DROP VIEW visit_summary; CREATE VIEW visit_summary AS SELECT 1; DROP TABLE answer;"
            " DROP TABLE question; DROP TABLE questions_asked;"
            " ALTER TABLE sending DROP COLUMN gone_out; PRAGMA user_version = 2");
    }
    auto store = open_store(folder.path());
    ASSERT_TRUE(store);
    EXPECT_EQ(document_of(must(store->visit(pilot_house().id))), document_of(pilot_house()));
    const auto waits = must(store->pending());
    ASSERT_EQ(waits.size(), waited.size());
    for (std::size_t i = 0; i < waits.size(); ++i) {
        EXPECT_EQ(waits[i].id, waited[i].id);
        EXPECT_EQ(waits[i].since, waited[i].since);
    }
    must(store->mark_seen(pilot_house().id, {"south", "cords"}));
    must(store->remove_visit(pilot_house().id));
    must(store->erase_visits({pilot_house().id}));
    EXPECT_TRUE(must(store->visits()).empty());
}

// The version-1 file is written by hand, not by the program: what it says must be what migrations() makes.
TEST_F(Opening, makes_version_1_as_it_was_written_down) {
    SQLite::Database written(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    written.exec(std::string(version_1_file));
    SQLite::Database made(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    migrate(made, migrations().first(1));
    const auto layout = [](SQLite::Database& database) {
        std::string text;
        SQLite::Statement columns(database,
                                  "SELECT t.name, c.name, c.type, c.\"notnull\", c.pk FROM sqlite_schema t"
                                  " JOIN pragma_table_info(t.name) c WHERE t.type = 'table' ORDER BY t.name, c.cid");
        while (columns.executeStep()) {
            for (int i = 0; i < 5; ++i) {
                text += columns.getColumn(i).getString() + " ";
            }
            text += "\n";
        }
        return text;
    };
    EXPECT_EQ(layout(made), layout(written));
    EXPECT_EQ(layout_version(made), 1);
}

TEST_F(Opening, takes_the_missing_steps_only_and_a_broken_step_takes_nothing) {
    SQLite::Database database(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    const Migration first{1, "CREATE TABLE a (x)"};
    const Migration second{2, "CREATE TABLE b (x); INSERT INTO b VALUES (7)"};
    const Migration broken{3, "CREATE TABLE c (x); INSERT INTO nowhere VALUES (1)"};
    migrate(database, std::vector{first});
    EXPECT_EQ(layout_version(database), 1);
    migrate(database, std::vector{first, second});
    EXPECT_EQ(layout_version(database), 2);
    EXPECT_EQ(database.execAndGet("SELECT x FROM b").getInt(), 7);
    EXPECT_THROW(migrate(database, std::vector{first, second, broken}), SQLite::Exception);
    EXPECT_EQ(layout_version(database), 2);
    EXPECT_FALSE(database.tableExists("c"));
}

}  // namespace
}  // namespace truehang::testing
