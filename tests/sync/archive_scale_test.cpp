// SPDX-License-Identifier: Apache-2.0
#include "receiver_process.h"
#include "workroom/archive/archive.h"
#include "workroom/archive/arrivals.h"
#include "workroom/archive/changes.h"
#include "workroom/records/sqlite_records.h"

#include <fmt/format.h>
#include <gtest/gtest.h>
#include <sqlite3.h>

// What a page of the list and of the changes costs, counted in pages of the database, with a thousand and with a
// hundred thousand surveys.

using namespace truehang;
using namespace truehang::workroom;

namespace {

sync::Time now() { return sync::Time{std::chrono::milliseconds(1'773'000'000'000)}; }

/// Records with so many surveys, number 777 called “visit 000777”.
void fill(Archive& archive, int surveys) {
    const auto filled = archive.database().write_and_wait<Done>([&](Records& records) -> Result<Done> {
        records.run("INSERT INTO device(id, name, token_sha256, paired_at) VALUES('d', 'Phone', '', '')");
        const auto each =
            fmt::format("WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < {}) ", surveys);
        for (const auto* row :
             {"INSERT INTO revision SELECT 'survey-' || i, 1, 'aa', 'now', 'd', x'7b7d' FROM n",
              "INSERT INTO change SELECT i, 'survey-' || i, 1 FROM n",
              "INSERT INTO head SELECT 'survey-' || i, i, 1, 'now', printf('visit %06d', i), '', '', '', 6 FROM n",
              "INSERT INTO head_word SELECT 'visit', 'survey-' || i FROM n",
              "INSERT INTO head_word SELECT printf('%06d', i), 'survey-' || i FROM n",
              "INSERT INTO photo_named SELECT 'survey-' || i, 'photo-' || i FROM n",
              "INSERT INTO head_state SELECT 'survey-' || i, 'new', i, 6 FROM n",
              "INSERT INTO head_state SELECT 'survey-' || i, 'cut', i, 6 FROM n WHERE i % 10 = 7",
              "INSERT INTO head_state SELECT 'survey-' || i, 'changed', i, 6 FROM n WHERE i <= 60"}) {
            records.run(each + row);
        }
        return Done{};
    });
    ASSERT_TRUE(filled.ok()) << filled.error().text;
}

/// How many pages of the database `work` looks at, the ones in memory too, on the one reading connection.
template <class Work>
int pages_of(Archive& archive, const Work& work) {
    const auto count = [&](bool reset) {
        return archive.database().read<int>([reset](Records& records) -> Result<int> {
            int pages = 0;
            auto* handle = dynamic_cast<SqliteRecords&>(records).handle();
            for (const int kind : {SQLITE_DBSTATUS_CACHE_HIT, SQLITE_DBSTATUS_CACHE_MISS}) {
                int some = 0;
                int most = 0;
                sqlite3_db_status(handle, kind, &some, &most, reset ? 1 : 0);
                pages += some;
            }
            return pages;
        });
    };
    static_cast<void>(count(true).ok());
    work();
    return count(false).value();
}

struct Cost {
    int newest = 0, older = 0, found = 0, changes = 0, arrivals = 0, all_arrivals = 0;
    int state = 0, older_state = 0, rare_state = 0, found_state = 0;
};

Cost cost_with(int surveys) {
    const sync::test::TemporaryFolder folder;
    auto archive = Archive::open(folder.path(), now);
    if (!archive) {
        ADD_FAILURE() << archive.error().text;
        return {};
    }
    fill(**archive, surveys);
    const auto heads = [&](const HeadsAsked& asked, std::size_t expected) {
        return pages_of(**archive, [&] { EXPECT_EQ(find_heads(**archive, asked)->heads.size(), expected); });
    };
    const auto begun = changes_after(**archive, "", 1)->next;
    const auto cursor = begun.substr(0, begun.size() - 1) + std::to_string(surveys - 500);
    Cost cost;
    cost.newest = heads({}, 50);
    cost.older = heads({.before = surveys / 2}, 50);
    cost.found = heads({.words = "visi 000777"}, 1);
    cost.changes = pages_of(**archive, [&] { EXPECT_EQ(changes_after(**archive, cursor, 100)->changes.size(), 100U); });
    cost.arrivals = pages_of(**archive, [&] { EXPECT_FALSE(arrivals_since(**archive, cursor, "")->says.empty()); });
    cost.all_arrivals = pages_of(**archive, [&] { EXPECT_FALSE(arrivals_since(**archive, "", "")->says.empty()); });
    cost.state = heads({.state = "cut"}, 50);
    cost.older_state = heads({.state = "new", .before = surveys / 2}, 50);
    cost.rare_state = heads({.state = "changed"}, 50);
    cost.found_state = heads({.words = "visi 000777", .state = "cut"}, 1);
    return cost;
}

}  // namespace

// A tree of rows grows by a level or two from a thousand rows to a hundred thousand: each row that is looked up may
// cost so many pages more, and no more. (SQLite's file format, section 1.6: pages of 4096 bytes, hundreds of keys in
// each.)
TEST(Archive, aPageCostsTheSameHoweverMuchIsStored) {
    const auto few = cost_with(1'000);
    const auto many = cost_with(100'000);
    for (const auto& [name, one, other] :
         {std::tuple{"newest", few.newest, many.newest}, std::tuple{"older", few.older, many.older},
          std::tuple{"found", few.found, many.found}, std::tuple{"changes", few.changes, many.changes},
          std::tuple{"arrivals", few.arrivals, many.arrivals},
          std::tuple{"all arrivals", few.all_arrivals, many.all_arrivals},
          std::tuple{"by state", few.state, many.state},
          std::tuple{"older by state", few.older_state, many.older_state},
          std::tuple{"by a rare state", few.rare_state, many.rare_state},
          std::tuple{"found by state", few.found_state, many.found_state}}) {
        fmt::print("{}: {} pages looked at among 1,000 surveys, {} among 100,000\n", name, one, other);
        EXPECT_GT(one, 0) << name;
        EXPECT_LE(other, 2 * one) << name;
    }
}
