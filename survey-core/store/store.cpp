// SPDX-License-Identifier: Apache-2.0
#include "store/store.h"

#include "store/failures.h"
#include "store/schema.h"
#include "store/store_inside.h"
#include "store/visit_rows.h"
#include "survey/standing.h"

#include <algorithm>

namespace truehang {
namespace {

/// Refuses, before anything is written, a file that a later version or another program made, or that isn't sound.
void check_file(Connection& connection) {
    const int version = layout_version(connection.database());
    if (version > migrations().back().to) {
        throw Failure{{ErrorCode::newer_version, std::string(store_file),
                       "These surveys were written by a later version of Truehang: update it. Nothing was changed."}};
    }
    if (const std::string faults = connection.faults(); !faults.empty()) {
        throw Failure{damaged(std::string(store_file), faults)};
    }
    if (version == 0 && connection.database().execAndGet("SELECT count(*) FROM sqlite_schema").getInt() != 0) {
        throw Failure{{ErrorCode::conflict, std::string(store_file),
                       "This file belongs to another program: choose another folder. Nothing was changed."}};
    }
}

std::string device_id_of(Connection& connection, const std::function<std::string()>& new_id) {
    {
        Query query = connection.query("SELECT value FROM store WHERE name = 'device_id'");
        if (query.next()) {
            return query.text(0);
        }
    }
    const std::string made = new_id();
    connection.transact([&] {
        connection.run("INSERT INTO store VALUES ('device_id', ?)", made);
        return Done{};
    });
    return made;
}

/// Counts that an earlier walk made are forgotten: each visit is counted again when it is next listed.
void count_anew_after_change_of_walk(Connection& connection) {
    const std::string edition = std::to_string(walk_edition);
    {
        Query query = connection.query("SELECT 1 FROM store WHERE name = 'walk_edition' AND value = ?", edition);
        if (query.next()) {
            return;
        }
    }
    connection.transact([&] {
        connection.run("UPDATE room_window SET taken = NULL");
        connection.run("UPDATE visit SET windows_begun = NULL, windows_measured = NULL");
        connection.run("REPLACE INTO store VALUES ('walk_edition', ?)", edition);
        return Done{};
    });
}

}  // namespace

Store::Store(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Store::~Store() = default;

Result<std::unique_ptr<Store>> Store::open(const std::filesystem::path& folder, StoreSurroundings surroundings) {
    return guarded([&]() -> Result<std::unique_ptr<Store>> {
        if (const auto made = make_folder(folder); !made) {
            return made.error();
        }
        auto inside = std::make_unique<Inside>(std::move(surroundings), folder);
        Connection& connection = inside->connection;
        check_file(connection);
        connection.start_writing(inside->surroundings.survives_power_cut);
        migrate(connection.database(), migrations());
        count_anew_after_change_of_walk(connection);
        inside->device_id = device_id_of(connection, inside->surroundings.new_id);
        inside->photos.tidy();
        std::unique_ptr<Store> store(new Store(std::move(inside)));
        static_cast<void>(store->finish_erasing());  // where it is refused it stays noted, and is tried again next time
        return store;
    });
}

const std::string& Store::device_id() const { return inside_->device_id; }

Result<Survey> Store::visit(std::string_view visit_id) {
    return guarded([&]() -> Result<Survey> {
        const VisitLine line = visit_line_or_missing(inside_->connection, visit_id);
        return survey_of(stored_rows(inside_->connection, visit_id), line.revision);
    });
}

Result<Done> Store::keep_draft(const Draft& draft) {
    return guarded([&]() -> Result<Done> {
        inside_->connection.run_unsynced("REPLACE INTO draft VALUES (1, ?, ?, ?, ?, ?, ?, ?)", draft.visit, draft.room,
                                         draft.window, draft.screen, draft.station, draft.typed, draft.more);
        return Done{};
    });
}

Result<Draft> Store::draft() {
    return guarded([&]() -> Result<Draft> {
        Query query = inside_->connection.query(
            "SELECT visit, room, window, screen, station, typed, more FROM draft WHERE one = 1");
        if (!query.next()) {
            return Draft{};
        }
        return Draft{query.text(0), query.text(1), query.text(2), query.text(3),
                     query.text(4), query.text(5), query.text(6)};
    });
}

Result<Done> Store::mark_seen(std::string_view visit_id, const SeenMark& seen) {
    return guarded([&]() -> Result<Done> {
        inside_->connection.run_unsynced("INSERT INTO seen VALUES (?, ?, ?) ON CONFLICT DO NOTHING", visit_id,
                                         seen.window, seen.mark);
        return Done{};
    });
}

Result<std::vector<SeenMark>> Store::seen(std::string_view visit_id) {
    return guarded([&]() -> Result<std::vector<SeenMark>> {
        std::vector<SeenMark> seen;
        for (Query mark = inside_->connection.query("SELECT window_id, mark FROM seen WHERE visit_id = ?", visit_id);
             mark.next();) {
            seen.push_back({mark.text(0), mark.text(1)});
        }
        return seen;
    });
}

Result<std::string> Store::keep_photo(std::string_view bytes, std::string_view media_type) {
    return guarded([&]() -> Result<std::string> {
        Connection& connection = inside_->connection;
        auto sha256 = inside_->photos.keep(bytes, media_type);
        if (sha256) {
            connection.transact([&] {
                Query used = connection.query(
                    "SELECT max(last_edit) FROM photo_use JOIN visit USING (visit_id)"
                    " WHERE sha256 = ?",
                    sha256.value());
                if (used.next() && !used.is_null(0)) {
                    queue_photo(connection, inside_->photos, sha256.value(),
                                {inside_->surroundings.now(), used.number(0)});
                }
                return Done{};
            });
        }
        return sha256;
    });
}

Result<std::filesystem::path> Store::photo_file(std::string_view sha256) const {
    return guarded([&]() -> Result<std::filesystem::path> { return inside_->photos.find(sha256); });
}

Result<std::string> Store::photo_bytes(std::string_view sha256) const {
    return guarded([&]() -> Result<std::string> { return inside_->photos.bytes(sha256); });
}

}  // namespace truehang
