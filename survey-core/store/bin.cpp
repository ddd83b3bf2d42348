// SPDX-License-Identifier: Apache-2.0
#include "store/failures.h"
#include "store/parents.h"
#include "store/store.h"
#include "store/store_inside.h"
#include "store/visit_rows.h"

#include <algorithm>
#include <cctype>
#include <map>
#include <set>

// What was removed, and erasing it for good: rows in one transaction that also notes which files are to go; then the
// files, and the database written anew without what was in it. What is cut short is finished when the store opens.

namespace truehang {
namespace {

namespace fs = std::filesystem;

/// Every run of 64 hexadecimal digits in `text` that is one of `wanted`, or any where `wanted` is null.
void add_hashes(std::string_view text, const std::set<std::string>* wanted, std::set<std::string>& into) {
    constexpr std::size_t digits = 64;
    const auto is_digit = [](char c) { return std::isxdigit(static_cast<unsigned char>(c)) != 0; };
    for (std::size_t at = 0; at < text.size();) {
        std::size_t end = at;
        while (end < text.size() && is_digit(text[end])) {
            ++end;
        }
        if (end - at == digits) {
            std::string hash(text.substr(at, digits));
            if (wanted == nullptr || wanted->contains(hash)) {
                into.insert(std::move(hash));
            }
        }
        at = end + 1;
    }
}

/// The photos that a visit mentions, or that its undo would bring back.
std::set<std::string> photos_of(Connection& connection, std::string_view visit_id) {
    std::set<std::string> photos;
    for (Query use = connection.query("SELECT sha256 FROM photo_use WHERE visit_id = ?", visit_id); use.next();) {
        photos.insert(use.text(0));
    }
    for (Query edit = connection.query("SELECT changes FROM edit WHERE visit_id = ?", visit_id); edit.next();) {
        add_hashes(edit.text(0), nullptr, photos);
    }
    return photos;
}

/// Takes what is mentioned anywhere now out of `photos`.
void leave_mentioned(Connection& connection, std::set<std::string>& photos) {
    if (photos.empty()) {
        return;
    }
    std::set<std::string> mentioned;
    for (Query use = connection.query("SELECT DISTINCT sha256 FROM photo_use"); use.next();) {
        mentioned.insert(use.text(0));
    }
    for (Query edit = connection.query("SELECT changes FROM edit"); edit.next();) {
        add_hashes(edit.text(0), &photos, mentioned);
    }
    std::erase_if(photos, [&](const std::string& photo) { return mentioned.contains(photo); });
}

void note_files_to_go(Connection& connection, const std::set<std::string>& photos) {
    for (const std::string& photo : photos) {
        connection.run("DELETE FROM photo WHERE sha256 = ?", photo);
        connection.run("DELETE FROM outbox WHERE kind = 'photo' AND id = ?", photo);
        connection.run("DELETE FROM receipt WHERE kind = 'photo' AND id = ?", photo);
        connection.run("INSERT INTO erasing VALUES (?) ON CONFLICT DO NOTHING", photo);
    }
    connection.run("REPLACE INTO store VALUES ('to_write_anew', '1')");
}

void delete_rows(Connection& connection, std::string_view visit_id) {
    connection.run("DELETE FROM edit WHERE visit_id = ?", visit_id);
    connection.run("DELETE FROM photo_use WHERE visit_id = ?", visit_id);
    connection.run("DELETE FROM reading WHERE visit_id = ?", visit_id);
    connection.run("DELETE FROM room_window WHERE visit_id = ?", visit_id);
    connection.run("DELETE FROM room WHERE visit_id = ?", visit_id);
    connection.run("DELETE FROM seen WHERE visit_id = ?", visit_id);
    connection.run("DELETE FROM visit_body WHERE visit_id = ?", visit_id);
    connection.run("DELETE FROM sending WHERE visit_id = ?", visit_id);
    connection.run("DELETE FROM parent WHERE visit_id = ?", visit_id);
    connection.run("DELETE FROM met WHERE visit_id = ?", visit_id);
    connection.run("DELETE FROM coming WHERE visit_id = ?", visit_id);
    for (Query answer = connection.query("SELECT answer_id FROM answer WHERE visit_id = ?", visit_id); answer.next();) {
        connection.run("DELETE FROM outbox WHERE kind = 'answer' AND id = ?", answer.text(0));
        connection.run("DELETE FROM receipt WHERE kind = 'answer' AND id = ?", answer.text(0));
    }
    connection.run("DELETE FROM answer WHERE visit_id = ?", visit_id);
    connection.run("DELETE FROM question WHERE visit_id = ?", visit_id);
    connection.run("DELETE FROM outbox WHERE kind = 'survey' AND id = ?", visit_id);
    connection.run("DELETE FROM receipt WHERE kind = 'survey' AND id = ?", visit_id);
    connection.run("DELETE FROM visit WHERE visit_id = ?", visit_id);
}

/// A window as an edit took it out: its rows, and its room's name then.
struct TakenOut {
    std::string room;
    Rows rows;
};

/// The windows that were taken out by edits and stand nowhere now; each as it was last.
std::map<std::string, TakenOut> taken_out(Connection& connection, std::string_view visit_id, const Rows& stored,
                                          std::vector<std::string>& newest_first) {
    std::set<std::string> here;
    for (const auto& [key, state] : stored) {
        here.insert(key.kind == RowKind::window ? key.window : std::string());
    }
    std::map<std::string, TakenOut> found;
    for (Query edit = connection.query("SELECT changes FROM edit WHERE visit_id = ? AND kind <> 'undo'"
                                       " AND instr(changes, '\"row\":\"window\"') > 0"
                                       " AND instr(changes, '\"after\":null') > 0 ORDER BY number DESC",
                                       visit_id);
         edit.next();) {
        std::set<std::string> of_this_edit;
        const RowChanges changes = changes_of(edit.text(0));
        for (const auto& [key, before, after] : changes) {
            const bool went = key.kind == RowKind::window && before && !after;
            if (went && !here.contains(key.window) && found.try_emplace(key.window).second) {
                found[key.window].room = key.room;
                of_this_edit.insert(key.window);
                newest_first.push_back(key.window);
            }
        }
        for (const auto& [key, before, after] : changes) {
            const auto window = found.find(key.window);
            if (before && !after && of_this_edit.contains(key.window) && window->second.room == key.room) {
                window->second.rows[key] = *before;
            } else if (key.kind == RowKind::room && before && !after) {
                for (const std::string& id : of_this_edit) {
                    if (found[id].room == key.room) {
                        found[id].rows[key] = *before;
                    }
                }
            }
        }
    }
    return found;
}

/// The window within the visit's survey as it is now, so that its cloths are found; none where they have gone.
std::optional<RemovedWindow> made_whole(const TakenOut& taken, const Rows& stored) {
    Rows rows = taken.rows;
    const RowKey room{RowKind::room, taken.room, "", 0};
    if (const auto now = stored.find(room); now != stored.end()) {
        rows[room] = now->second;
    } else {
        rows.try_emplace(room, RowState{0, nlohmann::json{{"id", taken.room}}.dump()});
    }
    rows.insert(*stored.find({RowKind::visit, "", "", 0}));
    const auto survey = guarded([&]() -> Result<Survey> { return survey_of(rows, 0); });
    if (!survey || survey->rooms.empty() || survey->rooms[0].windows.empty()) {
        return std::nullopt;
    }
    RemovedWindow removed;
    removed.window = survey->rooms[0].windows[0];
    removed.room = survey->rooms[0];
    removed.room.windows.clear();
    return removed;
}

}  // namespace

Result<Done> Store::erase_visits(const std::vector<std::string>& visit_ids) {
    const auto erased = guarded([&]() -> Result<Done> {
        Connection& connection = inside_->connection;
        return connection.transact([&] {
            std::set<std::string> photos;
            for (const std::string& visit : visit_ids) {
                if (!visit_line_or_missing(connection, visit).removed) {
                    throw Failure{{ErrorCode::conflict, visit, "This visit isn’t among the removed ones."}};
                }
                photos.merge(photos_of(connection, visit));
            }
            for (const std::string& visit : visit_ids) {
                connection.run("UPDATE draft SET more = '' WHERE instr(more, ?) > 0", visit);
                connection.run("DELETE FROM draft WHERE visit = ?", visit);
                for (Query window = connection.query("SELECT window_id FROM room_window WHERE visit_id = ?", visit);
                     window.next();) {
                    connection.run("UPDATE draft SET more = '' WHERE instr(more, ?) > 0", window.text(0));
                }
                delete_rows(connection, visit);
            }
            leave_mentioned(connection, photos);
            note_files_to_go(connection, photos);
            return Done{};
        });
    });
    return erased ? finish_erasing() : erased;
}

Result<Done> Store::erase_removed_windows(std::string_view visit_id) {
    const auto erased = guarded([&]() -> Result<Done> {
        Connection& connection = inside_->connection;
        return connection.transact([&] {
            visit_line_or_missing(connection, visit_id);
            std::set<std::string> photos = photos_of(connection, visit_id);
            connection.run(
                "INSERT INTO edit (visit_id, kind, state, revision, made_at, what, changes)"
                " SELECT visit_id, 'edit', 'first', revision, ?, 'What was taken out is erased', '[]'"
                " FROM visit WHERE visit_id = ?",
                inside_->surroundings.now(), visit_id);
            const long long number = connection.database().getLastInsertRowid();
            connection.run("DELETE FROM edit WHERE visit_id = ? AND number < ?", visit_id, number);
            connection.run("UPDATE visit SET last_edit = ? WHERE visit_id = ?", number, visit_id);
            connection.run(
                "DELETE FROM sending WHERE visit_id = ?1 AND revision <"
                " (SELECT revision FROM visit WHERE visit_id = ?1)",
                visit_id);
            connection.run(
                "DELETE FROM seen WHERE visit_id = ?1 AND window_id NOT IN"
                " (SELECT window_id FROM room_window WHERE visit_id = ?1)",
                visit_id);
            forget_parents_bytes(connection, visit_id);
            leave_mentioned(connection, photos);
            note_files_to_go(connection, photos);
            return Done{};
        });
    });
    return erased ? finish_erasing() : erased;
}

Result<std::vector<RemovedWindow>> Store::removed_windows(std::string_view visit_id) {
    return guarded([&]() -> Result<std::vector<RemovedWindow>> {
        Connection& connection = inside_->connection;
        visit_line_or_missing(connection, visit_id);
        const Rows stored = stored_rows(connection, visit_id);
        std::vector<std::string> newest_first;
        const auto taken = taken_out(connection, visit_id, stored, newest_first);
        std::vector<RemovedWindow> removed;
        for (const std::string& id : newest_first) {
            if (auto window = made_whole(taken.at(id), stored)) {
                removed.push_back(std::move(*window));
            }
        }
        return removed;
    });
}

Result<Done> Store::finish_erasing() {
    return guarded([&]() -> Result<Done> {
        Connection& connection = inside_->connection;
        std::vector<std::string> photos;
        for (Query photo = connection.query("SELECT sha256 FROM erasing"); photo.next();) {
            photos.push_back(photo.text(0));
        }
        {
            Query asked = connection.query("SELECT 1 FROM store WHERE name = 'to_write_anew'");
            if (photos.empty() && !asked.next()) {
                return Done{};
            }
        }
        for (const std::string& photo : photos) {
            value_or_throw(inside_->photos.erase(photo));
            std::error_code code;
            fs::remove(inside_->folder / thumbnail_folder / (photo + ".jpg"), code);
            if (code) {
                return error_of(code, inside_->folder / thumbnail_folder);
            }
        }
        connection.transact([&] {
            connection.run("DELETE FROM erasing");
            return Done{};
        });
        connection.write_anew();  // after the last of them is deleted: the photos' digests go too
        return connection.transact([&] {
            connection.run("DELETE FROM store WHERE name = 'to_write_anew'");
            return Done{};
        });
    });
}

}  // namespace truehang
