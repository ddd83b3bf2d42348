// SPDX-License-Identifier: Apache-2.0
#include "store/failures.h"
#include "store/parents.h"
#include "store/sha256.h"
#include "store/store.h"
#include "store/store_inside.h"
#include "store/visit_rows.h"

#include "document/document.h"

#include <algorithm>

namespace truehang {
namespace {

std::string_view word_of(ItemKind kind) {
    return kind == ItemKind::survey ? "survey" : kind == ItemKind::photo ? "photo" : "answer";
}

ItemKind kind_of(const std::string& word) {
    return word == "survey" ? ItemKind::survey : word == "photo" ? ItemKind::photo : ItemKind::answer;
}

ItemState state_of(const std::string& word) {
    return word == "confirmed" ? ItemState::confirmed : word == "refused" ? ItemState::refused : ItemState::waiting;
}

constexpr std::string_view waiting_items =
    "SELECT kind, id, revision, state, since, hold, why, tries, media_type, bytes"
    " FROM outbox LEFT JOIN photo ON kind = 'photo' AND sha256 = id"
    " WHERE state = 'waiting' ORDER BY instr('survey answer photo', kind), edit_number, id";

constexpr std::string_view one_item =
    "SELECT kind, id, revision, state, since, hold, why, tries, media_type, bytes"
    " FROM outbox LEFT JOIN photo ON kind = 'photo' AND sha256 = id"
    " WHERE kind = ? AND id = ?";

OutboxItem item_from(const Query& query) {
    OutboxItem item;
    item.kind = kind_of(query.text(0));
    item.id = query.text(1);
    item.revision = query.number(2);
    item.state = state_of(query.text(3));
    item.since = query.text(4);
    item.until = query.text(5);
    item.why = query.text(6);
    item.tries = static_cast<int>(query.number(7));
    item.media_type = query.text(8);
    item.bytes = query.number(9);
    return item;
}

std::optional<OutboxItem> find_item(Connection& connection, ItemKind kind, std::string_view id) {
    Query query = connection.query(one_item, word_of(kind), id);
    return query.next() ? std::optional(item_from(query)) : std::nullopt;
}

/// The item as it stands, or a Failure `missing`; `conflict` for a revision that isn't there yet.
OutboxItem standing(Connection& connection, const OutboxItem& item) {
    const auto found = find_item(connection, item.kind, item.id);
    if (!found) {
        throw Failure{{ErrorCode::missing, item.id, "There is no such item to send."}};
    }
    if (item.revision > found->revision) {
        throw Failure{{ErrorCode::conflict, item.id, "This revision was never written."}};
    }
    return *found;
}

void set_state(Connection& connection, const OutboxItem& item, std::string_view state, std::string_view why,
               std::string_view now) {
    connection.run("UPDATE outbox SET state = ?, since = ?, hold = '', why = ?, tries = 0 WHERE kind = ? AND id = ?",
                   state, now, why, word_of(item.kind), item.id);
}

/// The photos a visit mentions, each once, in the survey's order.
std::vector<std::string> photos_to_send(Connection& connection, std::string_view visit_id) {
    std::vector<std::string> photos;
    for (Query query = connection.query("SELECT sha256 FROM photo_use JOIN room USING (visit_id, room_id)"
                                        " LEFT JOIN room_window USING (visit_id, room_id, window_id) WHERE visit_id = ?"
                                        " ORDER BY room.place, room_window.place, photo_use.place",
                                        visit_id);
         query.next();) {
        if (std::find(photos.begin(), photos.end(), query.text(0)) == photos.end()) {
            photos.push_back(query.text(0));
        }
    }
    return photos;
}

std::optional<DocumentToSend> handed_out(Connection& connection, std::string_view visit_id, Revision revision) {
    Query query =
        connection.query("SELECT sha256, bytes FROM sending WHERE visit_id = ? AND revision = ?", visit_id, revision);
    if (!query.next()) {
        return std::nullopt;
    }
    DocumentToSend document{revision, query.text(1), query.text(0)};
    if (sha256_hex(document.bytes) != document.sha256) {
        throw Failure{damaged("sending", "the bytes that were sent have changed")};
    }
    return document;
}

}  // namespace

Result<std::vector<OutboxItem>> Store::pending() {
    return guarded([&]() -> Result<std::vector<OutboxItem>> {
        std::vector<OutboxItem> items;
        for (Query query = inside_->connection.query(waiting_items); query.next();) {
            items.push_back(item_from(query));
        }
        return items;
    });
}

Result<std::vector<OutboxItem>> Store::items_of(std::string_view visit_id) {
    return guarded([&]() -> Result<std::vector<OutboxItem>> {
        Connection& connection = inside_->connection;
        visit_line_or_missing(connection, visit_id);
        std::vector<OutboxItem> items;
        if (auto survey = find_item(connection, ItemKind::survey, visit_id)) {
            items.push_back(std::move(*survey));
        }
        for (Query answer = connection.query("SELECT answer_id FROM answer WHERE visit_id = ? AND record <> ''"
                                             " ORDER BY number, place",
                                             visit_id);
             answer.next();) {
            if (auto item = find_item(connection, ItemKind::answer, answer.text(0))) {
                items.push_back(std::move(*item));
            }
        }
        for (const std::string& sha256 : photos_to_send(connection, visit_id)) {
            if (auto photo = find_item(connection, ItemKind::photo, sha256)) {
                items.push_back(std::move(*photo));
            }
        }
        return items;
    });
}

Result<DocumentToSend> Store::document_to_send(std::string_view visit_id) {
    return guarded([&]() -> Result<DocumentToSend> {
        Connection& connection = inside_->connection;
        const VisitLine line = visit_line_or_missing(connection, visit_id);
        if (auto document = handed_out(connection, visit_id, line.revision)) {
            return std::move(*document);
        }
        DocumentToSend document{line.revision, "", ""};
        Survey survey = survey_of(stored_rows(connection, visit_id), line.revision);
        survey.parents = parents_of(connection, visit_id);
        document.bytes = write_survey(survey, false);
        document.sha256 = sha256_hex(document.bytes);
        connection.transact([&] {
            connection.run("INSERT INTO sending (visit_id, revision, sha256, bytes, gone_out) VALUES (?, ?, ?, ?, 0)",
                           visit_id, line.revision, document.sha256, document.bytes);
            return Done{};
        });
        return document;
    });
}

Result<Done> Store::confirm(const OutboxItem& item, std::string_view receipt) {
    return guarded([&]() -> Result<Done> {
        Connection& connection = inside_->connection;
        return connection.transact([&] {
            const OutboxItem now_standing = standing(connection, item);
            const std::string now = inside_->surroundings.now();
            connection.run("REPLACE INTO receipt VALUES (?, ?, ?, ?, ?)", word_of(item.kind), item.id, item.revision,
                           receipt, now);
            if (item.kind == ItemKind::survey) {
                if (const auto sent = handed_out(connection, item.id, item.revision)) {
                    put_parent(connection, item.id, sent->bytes);
                }
                connection.run("DELETE FROM sending WHERE visit_id = ? AND revision <= ?", item.id, item.revision);
                connection.run("UPDATE visit SET confirmed_revision = max(confirmed_revision, ?) WHERE visit_id = ?",
                               item.revision, item.id);
            }
            if (now_standing.revision == item.revision) {
                set_state(connection, item, "confirmed", "", now);
            }
            return Done{};
        });
    });
}

Result<Done> Store::refuse(const OutboxItem& item, std::string_view why) {
    return guarded([&]() -> Result<Done> {
        Connection& connection = inside_->connection;
        return connection.transact([&] {
            if (standing(connection, item).revision == item.revision) {
                set_state(connection, item, "refused", why, inside_->surroundings.now());
            }
            return Done{};
        });
    });
}

Result<Done> Store::postpone(const OutboxItem& item, std::string_view until, std::string_view why) {
    return guarded([&]() -> Result<Done> {
        Connection& connection = inside_->connection;
        return connection.transact([&] {
            if (standing(connection, item).state == ItemState::waiting) {
                connection.run("UPDATE outbox SET hold = ?, why = ?, tries = tries + 1 WHERE kind = ? AND id = ?",
                               until, why, word_of(item.kind), item.id);
            }
            return Done{};
        });
    });
}

Result<Done> Store::send_again(const OutboxItem& item) {
    return guarded([&]() -> Result<Done> {
        Connection& connection = inside_->connection;
        return connection.transact([&] {
            static_cast<void>(standing(connection, item));
            set_state(connection, item, "waiting", "", inside_->surroundings.now());
            return Done{};
        });
    });
}

Result<std::optional<std::string>> Store::receipt(ItemKind kind, std::string_view id, Revision revision) {
    return guarded([&]() -> Result<std::optional<std::string>> {
        Query query = inside_->connection.query("SELECT text FROM receipt WHERE kind = ? AND id = ? AND revision = ?",
                                                word_of(kind), id, revision);
        return query.next() ? std::optional(query.text(0)) : std::nullopt;
    });
}

Result<std::optional<Pairing>> Store::pairing() {
    return guarded([&]() -> Result<std::optional<Pairing>> {
        Query query =
            inside_->connection.query("SELECT address, token, certificate_fingerprint FROM pairing WHERE one = 1");
        return query.next() ? std::optional(Pairing{query.text(0), query.text(1), query.text(2)}) : std::nullopt;
    });
}

Result<Done> Store::set_pairing(const Pairing& pairing) {
    return guarded([&]() -> Result<Done> {
        return inside_->connection.transact([&] {
            inside_->connection.run("REPLACE INTO pairing VALUES (1, ?, ?, ?)", pairing.address, pairing.token,
                                    pairing.certificate_fingerprint);
            inside_->connection.run("DELETE FROM asked");
            inside_->connection.run("DELETE FROM questions_asked");
            return Done{};
        });
    });
}

Result<Done> Store::clear_pairing() {
    return guarded([&]() -> Result<Done> {
        return inside_->connection.transact([&] {
            inside_->connection.run("DELETE FROM pairing");
            inside_->connection.run("DELETE FROM asked");
            inside_->connection.run("DELETE FROM questions_asked");
            return Done{};
        });
    });
}

}  // namespace truehang
