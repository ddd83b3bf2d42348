// SPDX-License-Identifier: Apache-2.0
#include "store/failures.h"
#include "store/parents.h"
#include "store/store.h"
#include "store/store_inside.h"
#include "store/visit_rows.h"

#include "document/document.h"
#include "document/json_reader.h"

#include <algorithm>
#include <set>

// Every edit is one transaction: the changed rows, the edit with them before and after, the visit's new revision and
// its outbox row.

namespace truehang {
namespace {

/// An edit about to be written.
struct Entry {
    std::string_view kind = "edit";
    std::string_view state = "done";
    long long about = 0;  ///< the edit undone or redone
    std::string what;
    RowChanges changes;
    Revision revision = 0;
};

bool changes_document(const RowChanges& changes) {
    return std::any_of(changes.begin(), changes.end(),
                       [](const RowChange& change) { return change.key.kind != RowKind::removed; });
}

long long insert_edit(Connection& connection, std::string_view visit_id, const Entry& entry, std::string_view now) {
    connection.run(
        "INSERT INTO edit (visit_id, kind, state, about, revision, made_at, what, changes)"
        " VALUES (?, ?, ?, nullif(?, 0), ?, ?, ?, ?)",
        visit_id, entry.kind, entry.state, entry.about, entry.revision, now, entry.what, text_of(entry.changes));
    return connection.database().getLastInsertRowid();
}

void write_entry(Connection& connection, const PhotoFolder& photos, std::string_view visit_id, const Entry& entry,
                 const std::string& now) {
    const Stamp stamp{now, insert_edit(connection, visit_id, entry, now)};
    for (const RowChange& change : entry.changes) {
        write_change(connection, photos, visit_id, change, stamp);
    }
    connection.run(
        "UPDATE visit SET revision = ?, updated_at = ?, last_edit = ?, body_bytes = body_bytes + ?"
        " WHERE visit_id = ?",
        entry.revision, stamp.now, stamp.edit_number, growth_of(entry.changes), visit_id);
    if (changes_document(entry.changes)) {
        connection.run(
            "REPLACE INTO outbox (kind, id, revision, state, since, edit_number)"
            " VALUES ('survey', ?, ?, 'waiting', ?, ?)",
            visit_id, entry.revision, stamp.now, stamp.edit_number);
    }
}

/// A new edit of an existing visit: what was undone before can no longer be redone.
Revision write_new_edit(Connection& connection, const PhotoFolder& photos, std::string_view visit_id,
                        const Entry& entry, const std::string& now) {
    connection.run("UPDATE edit SET state = 'dropped' WHERE visit_id = ? AND state = 'undone'", visit_id);
    write_entry(connection, photos, visit_id, entry, now);
    return entry.revision;
}

Revision write_new_visit(Connection& connection, const PhotoFolder& photos, const Survey& survey, Entry entry,
                         const std::string& now) {
    entry.state = "first";
    entry.revision = std::max<Revision>(survey.revision.value_or(1), 1);
    connection.run(
        "INSERT INTO visit (visit_id, title, address, created_at, updated_at, revision)"
        " VALUES (?, '', '', ?, ?, ?)",
        survey.id, now, now, entry.revision);
    write_entry(connection, photos, survey.id, entry, now);
    auto parents = survey.parents.value_or(std::vector<std::string>{});
    std::ranges::reverse(parents);
    for (const std::string& parent : parents) {
        put_parent_digest(connection, survey.id, parent);
    }
    return entry.revision;
}

/// The edit that undo or redo is about, and its changes the way they are to be made.
struct Turn {
    long long number = 0;
    std::string what;
    RowChanges changes;
};

constexpr std::string_view to_undo =
    "SELECT number, what, changes FROM edit WHERE visit_id = ? AND state = 'done' ORDER BY number DESC LIMIT 1";
constexpr std::string_view to_redo =
    "SELECT number, what, changes FROM edit WHERE visit_id = ? AND state = 'undone' ORDER BY number LIMIT 1";

std::optional<Turn> find_turn(Connection& connection, std::string_view sql, std::string_view visit_id) {
    Query query = connection.query(sql, visit_id);
    if (!query.next()) {
        return std::nullopt;
    }
    return Turn{query.number(0), query.text(1), changes_of(query.text(2))};
}

/// What stands there must be what the edit left, or what it made would be lost.
void check_turn(Connection& connection, std::string_view visit_id, const Turn& turn) {
    for (const RowChange& change : turn.changes) {
        if (stored_row(connection, visit_id, change.key) != change.before) {
            throw Failure{{ErrorCode::conflict, std::string(visit_id),
                           "This can’t be undone: what it changed is no longer as it left it. Nothing was changed."}};
        }
    }
}

std::optional<std::string> make_turn(Connection& connection, const PhotoFolder& photos, std::string_view visit_id,
                                     bool undoing, const std::string& now) {
    const VisitLine line = visit_line_or_missing(connection, visit_id);
    auto turn = find_turn(connection, undoing ? to_undo : to_redo, visit_id);
    if (!turn) {
        return std::nullopt;
    }
    if (undoing) {
        turn->changes = reversed(std::move(turn->changes));
    }
    check_turn(connection, visit_id, *turn);
    connection.run("UPDATE edit SET state = ? WHERE number = ?", undoing ? "undone" : "done", turn->number);
    Entry entry{undoing ? "undo" : "redo", "record", turn->number, turn->what, std::move(turn->changes), line.revision};
    entry.revision += changes_document(entry.changes) ? 1 : 0;
    write_entry(connection, photos, visit_id, entry, now);
    if (changes_document(entry.changes)) {
        forget_counts(connection, visit_id);
    }
    return turn->what;
}

/// The fabrics that a window names.
std::set<std::string> fabrics_of(const Window& window) {
    std::set<std::string> named;
    for (const Layer& layer : window.layers) {
        if (layer.treatment) {
            for (const auto& fabric : {layer.treatment->fabric, layer.treatment->lining, layer.treatment->interlining,
                                       layer.treatment->second_lining}) {
                if (fabric) {
                    named.insert(*fabric);
                }
            }
        }
    }
    return named;
}

/// The rows of one window alone, where the document it makes with the fabrics it names is sound.
Rows window_rows(const std::string& room_id, const Window& window) {
    Survey alone;
    alone.id = "window";
    for (const std::string& id : fabrics_of(window)) {
        alone.fabrics.emplace_back();
        alone.fabrics.back().id = id;
        alone.fabrics.back().width = Length::mm(1000.0);
    }
    Room room;
    room.id = room_id;
    room.windows.push_back(window);
    alone.rooms.push_back(std::move(room));
    Rows rows = rows_of(checked_document(alone));
    rows.erase({RowKind::visit, "", "", 0});
    rows.erase({RowKind::room, room_id, "", 0});
    return rows;
}

void check_fabrics(Connection& connection, std::string_view visit_id, const Window& window) {
    std::set<std::string> named = fabrics_of(window);
    if (named.empty()) {
        return;
    }
    const auto body = stored_row(connection, visit_id, {RowKind::visit, "", "", 0});
    const auto survey = nlohmann::json::parse(body.value().body);
    for (const auto& fabric : survey.at("fabrics")) {
        named.erase(fabric.at("id").get<std::string>());
    }
    if (!named.empty()) {
        throw Failure{{ErrorCode::unreadable, "/fabrics",
                       "The window names the fabric \"" + *named.begin() + "\", which the survey doesn’t have."}};
    }
}

/// A window's id is its own in the whole survey.
void check_window_id(Connection& connection, std::string_view visit_id, std::string_view room_id,
                     const std::string& window_id) {
    Query other =
        connection.query("SELECT room_id FROM room_window WHERE visit_id = ? AND window_id = ? AND room_id <> ?",
                         visit_id, window_id, room_id);
    if (other.next()) {
        throw Failure{{ErrorCode::unreadable, "/rooms",
                       "The window id \"" + window_id + "\" stands in the room \"" + other.text(0) + "\" already."}};
    }
}

/// A document may have 4 MiB; what is around the rows' bodies takes a little of it.
void check_size(const VisitLine& line, const RowChanges& changes) {
    constexpr long long most = static_cast<long long>(largest_document) / 40 * 39;
    const long long growth = growth_of(changes);
    if (growth > 0 && line.body_bytes + growth > most) {
        throw Failure{
            {ErrorCode::unreadable, "",
             "This visit is as large as a survey may be (4 MiB): begin another for what is left to measure."}};
    }
}

int next_window_place(Connection& connection, std::string_view visit_id, std::string_view room_id) {
    Query query = connection.query(
        "SELECT coalesce(max(place) + 1, 0) FROM room_window"
        " WHERE visit_id = ? AND room_id = ?",
        visit_id, room_id);
    return query.next() ? static_cast<int>(query.number(0)) : 0;
}

/// What changes when this window becomes `after`.
RowChanges window_changes(Connection& connection, std::string_view visit_id, const std::string& room_id,
                          const Window& window, Rows after) {
    const RowKey key{RowKind::window, room_id, window.id, 0};
    const Rows before = stored_window(connection, visit_id, room_id, window.id);
    const auto stored = before.find(key);
    if (stored == before.end() && !stored_row(connection, visit_id, {RowKind::room, room_id, "", 0})) {
        throw Failure{{ErrorCode::missing, room_id, "There is no such room in this visit."}};
    }
    if (stored == before.end()) {
        check_window_id(connection, visit_id, room_id, window.id);
    }
    RowState& row = after.at(key);
    row.place = stored != before.end() ? stored->second.place : next_window_place(connection, visit_id, room_id);
    if (stored == before.end() || stored->second != row) {
        check_fabrics(connection, visit_id, window);
    }
    return changes_between(before, after);
}

EditSummary edit_from(const Query& query) {
    EditSummary edit;
    edit.number = query.number(0);
    const std::string kind = query.text(1);
    edit.kind = kind == "undo"   ? EditSummary::Kind::undo
                : kind == "redo" ? EditSummary::Kind::redo
                                 : EditSummary::Kind::edit;
    const std::string state = query.text(2);
    edit.undone = state == "undone" || state == "dropped";
    edit.revision = query.number(3);
    edit.at = query.text(4);
    edit.what = query.text(5);
    return edit;
}

}  // namespace

/// Within a transaction.
Revision Store::keep_whole(const Survey& after, std::string_view what) {
    if (after.id.empty()) {
        throw Failure{{ErrorCode::unreadable, "/id", "A survey needs an id."}};
    }
    const Rows rows = rows_of(checked_document(after));
    Inside& in = *inside_;
    const auto line = visit_line(in.connection, after.id);
    const Rows before = line ? stored_rows(in.connection, after.id) : Rows{};
    Entry entry;
    entry.what = what;
    entry.changes = changes_between(before, rows);
    if (line && entry.changes.empty()) {
        return line->revision;
    }
    entry.revision = line ? std::max(line->revision + 1, after.revision.value_or(0)) : 0;
    const Revision kept =
        line ? write_new_edit(in.connection, in.photos, after.id, entry, in.surroundings.now())
             : write_new_visit(in.connection, in.photos, after, std::move(entry), in.surroundings.now());
    keep_counts(in.connection, after);
    return kept;
}

Result<Revision> Store::keep(const Survey& after, std::string_view what) {
    return guarded(
        [&]() -> Result<Revision> { return inside_->connection.transact([&] { return keep_whole(after, what); }); });
}

Result<Revision> Store::keep_window(std::string_view visit_id, std::string_view room_id, const Window& after,
                                    std::string_view what) {
    return guarded([&]() -> Result<Revision> {
        const std::string room(room_id);
        const Rows rows = window_rows(room, after);
        Inside& in = *inside_;
        return in.connection.transact([&]() -> Revision {
            const VisitLine line = visit_line_or_missing(in.connection, visit_id);
            Entry entry;
            entry.what = what;
            entry.changes = window_changes(in.connection, visit_id, room, after, rows);
            if (entry.changes.empty()) {
                return line.revision;
            }
            check_size(line, entry.changes);
            entry.revision = line.revision + 1;
            write_new_edit(in.connection, in.photos, visit_id, entry, in.surroundings.now());
            keep_count(in.connection, visit_id, room, after);
            sum_counts(in.connection, visit_id);
            return entry.revision;
        });
    });
}

Result<Done> Store::set_removed(std::string_view visit_id, bool removed) {
    return guarded([&]() -> Result<Done> {
        Inside& in = *inside_;
        return in.connection.transact([&] {
            const VisitLine line = visit_line_or_missing(in.connection, visit_id);
            if (line.removed != removed) {
                Entry entry;
                entry.what = removed ? "Visit removed" : "Visit brought back";
                entry.changes = {{{RowKind::removed, "", "", 0},
                                  RowState{0, removed ? "false" : "true"},
                                  RowState{0, removed ? "true" : "false"}}};
                entry.revision = line.revision;
                write_new_edit(in.connection, in.photos, visit_id, entry, in.surroundings.now());
            }
            return Done{};
        });
    });
}

Result<Done> Store::remove_visit(std::string_view visit_id) { return set_removed(visit_id, true); }
Result<Done> Store::bring_back(std::string_view visit_id) { return set_removed(visit_id, false); }

Result<std::optional<std::string>> Store::undo(std::string_view visit_id) {
    return guarded([&]() -> Result<std::optional<std::string>> {
        Inside& in = *inside_;
        return in.connection.transact(
            [&] { return make_turn(in.connection, in.photos, visit_id, true, in.surroundings.now()); });
    });
}

Result<std::optional<std::string>> Store::redo(std::string_view visit_id) {
    return guarded([&]() -> Result<std::optional<std::string>> {
        Inside& in = *inside_;
        return in.connection.transact(
            [&] { return make_turn(in.connection, in.photos, visit_id, false, in.surroundings.now()); });
    });
}

Result<UndoOffer> Store::undo_offer(std::string_view visit_id) {
    return guarded([&]() -> Result<UndoOffer> {
        visit_line_or_missing(inside_->connection, visit_id);
        UndoOffer offer;
        if (auto turn = find_turn(inside_->connection, to_undo, visit_id)) {
            offer.undo = std::move(turn->what);
        }
        if (auto turn = find_turn(inside_->connection, to_redo, visit_id)) {
            offer.redo = std::move(turn->what);
        }
        return offer;
    });
}

Result<std::vector<EditSummary>> Store::history(std::string_view visit_id) {
    return guarded([&]() -> Result<std::vector<EditSummary>> {
        visit_line_or_missing(inside_->connection, visit_id);
        std::vector<EditSummary> edits;
        for (Query query = inside_->connection.query("SELECT number, kind, state, revision, made_at, what FROM edit"
                                                     " WHERE visit_id = ? ORDER BY number",
                                                     visit_id);
             query.next();) {
            edits.push_back(edit_from(query));
        }
        return edits;
    });
}

}  // namespace truehang
