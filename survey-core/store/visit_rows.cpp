// SPDX-License-Identifier: Apache-2.0
#include "store/visit_rows.h"

#include "store/failures.h"
#include "survey/standing.h"
#include "units/folded.h"

namespace truehang {
namespace {

using Json = nlohmann::json;

std::optional<RowState> state_from(Query& query) {
    if (!query.next()) {
        return std::nullopt;
    }
    return RowState{static_cast<int>(query.number(0)), query.text(1)};
}

void write_body(Connection& connection, std::string_view visit_id, const RowState& state) {
    connection.run("INSERT INTO visit_body VALUES (?, ?) ON CONFLICT DO UPDATE SET body = excluded.body", visit_id,
                   state.body);
    const Json survey = Json::parse(state.body);
    const std::string title = survey.value("title", "");
    const std::string address = survey.contains("site") ? survey["site"].value("address", "") : "";
    const std::string client = survey.contains("client") ? survey["client"].value("name", "") : "";
    connection.run(
        "UPDATE visit SET title = ?, address = ?, client = ?, found_by = ?,"
        " day = substr(coalesce(nullif(?, ''), created_at), 1, 10) WHERE visit_id = ?",
        title, address, client, folded(title + ' ' + client + ' ' + address), survey.value("measured_at", ""),
        visit_id);
}

void write_room(Connection& connection, std::string_view visit_id, const RowChange& change) {
    if (change.after) {
        connection.run(
            "INSERT INTO room VALUES (?, ?, ?, ?)"
            " ON CONFLICT DO UPDATE SET place = excluded.place, body = excluded.body",
            visit_id, change.key.room, change.after->place, change.after->body);
    } else {
        connection.run("DELETE FROM room WHERE visit_id = ? AND room_id = ?", visit_id, change.key.room);
    }
}

void write_photo_uses(Connection& connection, const PhotoFolder& photos, std::string_view visit_id,
                      const RowChange& change, const Stamp& stamp) {
    const auto& [kind, room, window, unused] = change.key;
    connection.run("DELETE FROM photo_use WHERE visit_id = ? AND room_id = ? AND window_id = ?", visit_id, room,
                   window);
    if (!change.after) {
        return;
    }
    int place = 0;
    for (const Json& photo : Json::parse(change.after->body).value("photos", Json::array())) {
        const std::string sha256 = photo.value("sha256", "");
        connection.run("INSERT INTO photo_use VALUES (?, ?, ?, ?, ?)", visit_id, room, window, place++, sha256);
        queue_photo(connection, photos, sha256, stamp);
    }
}

void write_window(Connection& connection, std::string_view visit_id, const RowChange& change) {
    if (change.after) {
        connection.run(
            "INSERT INTO room_window (visit_id, room_id, window_id, place, body) VALUES (?, ?, ?, ?, ?)"
            " ON CONFLICT DO UPDATE SET place = excluded.place, body = excluded.body",
            visit_id, change.key.room, change.key.window, change.after->place, change.after->body);
    } else {
        connection.run("DELETE FROM room_window WHERE visit_id = ? AND room_id = ? AND window_id = ?", visit_id,
                       change.key.room, change.key.window);
    }
}

void write_reading(Connection& connection, std::string_view visit_id, const RowChange& change) {
    if (change.after) {
        connection.run("INSERT INTO reading VALUES (?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET body = excluded.body",
                       visit_id, change.key.room, change.key.window, change.key.place, change.after->body);
    } else {
        connection.run("DELETE FROM reading WHERE visit_id = ? AND room_id = ? AND window_id = ? AND place = ?",
                       visit_id, change.key.room, change.key.window, change.key.place);
    }
}

}  // namespace

std::optional<VisitLine> visit_line(Connection& connection, std::string_view visit_id) {
    Query query = connection.query("SELECT revision, removed, body_bytes FROM visit WHERE visit_id = ?", visit_id);
    if (!query.next()) {
        return std::nullopt;
    }
    return VisitLine{query.number(0), query.number(1) != 0, query.number(2)};
}

VisitLine visit_line_or_missing(Connection& connection, std::string_view visit_id) {
    const auto line = visit_line(connection, visit_id);
    if (!line) {
        throw Failure{{ErrorCode::missing, std::string(visit_id), "There is no such visit on this device."}};
    }
    return *line;
}

Rows stored_rows(Connection& connection, std::string_view visit_id) {
    Rows rows;
    for (Query body = connection.query("SELECT body FROM visit_body WHERE visit_id = ?", visit_id); body.next();) {
        rows[{RowKind::visit, "", "", 0}] = {0, body.text(0)};
    }
    for (Query room = connection.query("SELECT place, body, room_id FROM room WHERE visit_id = ?", visit_id);
         room.next();) {
        rows[{RowKind::room, room.text(2), "", 0}] = {static_cast<int>(room.number(0)), room.text(1)};
    }
    for (Query window =
             connection.query("SELECT place, body, room_id, window_id FROM room_window WHERE visit_id = ?", visit_id);
         window.next();) {
        rows[{RowKind::window, window.text(2), window.text(3), 0}] = {static_cast<int>(window.number(0)),
                                                                      window.text(1)};
    }
    for (Query reading =
             connection.query("SELECT place, body, room_id, window_id FROM reading WHERE visit_id = ?", visit_id);
         reading.next();) {
        const int place = static_cast<int>(reading.number(0));
        rows[{RowKind::reading, reading.text(2), reading.text(3), place}] = {place, reading.text(1)};
    }
    return rows;
}

Rows stored_window(Connection& connection, std::string_view visit_id, const std::string& room_id,
                   const std::string& window_id) {
    Rows rows;
    for (Query window = connection.query(
             "SELECT place, body FROM room_window WHERE visit_id = ? AND room_id = ? AND window_id = ?", visit_id,
             room_id, window_id);
         window.next();) {
        rows[{RowKind::window, room_id, window_id, 0}] = {static_cast<int>(window.number(0)), window.text(1)};
    }
    for (Query reading =
             connection.query("SELECT place, body FROM reading WHERE visit_id = ? AND room_id = ? AND window_id = ?",
                              visit_id, room_id, window_id);
         reading.next();) {
        const int place = static_cast<int>(reading.number(0));
        rows[{RowKind::reading, room_id, window_id, place}] = {place, reading.text(1)};
    }
    return rows;
}

std::optional<RowState> stored_row(Connection& connection, std::string_view visit_id, const RowKey& key) {
    const auto& [kind, room, window, place] = key;
    switch (kind) {
        case RowKind::visit: {
            Query query = connection.query("SELECT 0, body FROM visit_body WHERE visit_id = ?", visit_id);
            return state_from(query);
        }
        case RowKind::room: {
            Query query =
                connection.query("SELECT place, body FROM room WHERE visit_id = ? AND room_id = ?", visit_id, room);
            return state_from(query);
        }
        case RowKind::window: {
            Query query = connection.query(
                "SELECT place, body FROM room_window WHERE visit_id = ? AND room_id = ? AND window_id = ?", visit_id,
                room, window);
            return state_from(query);
        }
        case RowKind::reading: {
            Query query = connection.query(
                "SELECT place, body FROM reading WHERE visit_id = ? AND room_id = ? AND window_id = ? AND place = ?",
                visit_id, room, window, place);
            return state_from(query);
        }
        case RowKind::removed:
            break;
    }
    return RowState{0, visit_line_or_missing(connection, visit_id).removed ? "true" : "false"};
}

void keep_count(Connection& connection, std::string_view visit_id, std::string_view room_id, const Window& window) {
    const StationCount count = stations_taken(window);
    connection.run(
        "UPDATE room_window SET taken = ?1, asked = ?2 WHERE visit_id = ?3 AND room_id = ?4 AND window_id = ?5"
        " AND (taken IS NOT ?1 OR asked IS NOT ?2)",
        count.taken, count.asked, visit_id, room_id, window.id);
}

void sum_counts(Connection& connection, std::string_view visit_id) {
    connection.run(
        "UPDATE visit SET (windows, windows_begun, windows_measured) ="
        " (SELECT count(*), CASE WHEN count(taken) = count(*) THEN coalesce(sum(taken > 0), 0) END,"
        " CASE WHEN count(taken) = count(*) THEN coalesce(sum(asked > 0 AND taken = asked), 0) END"
        " FROM room_window WHERE room_window.visit_id = ?1) WHERE visit_id = ?1",
        visit_id);
}

void keep_counts(Connection& connection, const Survey& survey) {
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            keep_count(connection, survey.id, room.id, window);
        }
    }
    sum_counts(connection, survey.id);
}

void forget_counts(Connection& connection, std::string_view visit_id) {
    connection.run("UPDATE room_window SET taken = NULL WHERE visit_id = ?", visit_id);
    sum_counts(connection, visit_id);
}

void queue_photo(Connection& connection, const PhotoFolder& photos, std::string_view sha256, const Stamp& stamp) {
    const auto file = photos.find(sha256);
    if (!file) {
        return;
    }
    connection.run("INSERT INTO photo VALUES (?, ?, ?) ON CONFLICT DO NOTHING", sha256, media_type_of(file.value()),
                   static_cast<long long>(std::filesystem::file_size(file.value())));
    connection.run(
        "INSERT INTO outbox (kind, id, revision, state, since, edit_number)"
        " VALUES ('photo', ?, 0, 'waiting', ?, ?) ON CONFLICT DO NOTHING",
        sha256, stamp.now, stamp.edit_number);
}

void write_change(Connection& connection, const PhotoFolder& photos, std::string_view visit_id, const RowChange& change,
                  const Stamp& stamp) {
    switch (change.key.kind) {
        case RowKind::visit:
            write_body(connection, visit_id, change.after.value());
            break;
        case RowKind::room:
            write_room(connection, visit_id, change);
            write_photo_uses(connection, photos, visit_id, change, stamp);
            break;
        case RowKind::window:
            write_window(connection, visit_id, change);
            write_photo_uses(connection, photos, visit_id, change, stamp);
            break;
        case RowKind::reading:
            write_reading(connection, visit_id, change);
            break;
        case RowKind::removed:
            connection.run("UPDATE visit SET removed = ? WHERE visit_id = ?",
                           change.after.value().body == "true" ? 1 : 0, visit_id);
            break;
    }
}

}  // namespace truehang
