// SPDX-License-Identifier: Apache-2.0
#include "store/parents.h"

#include "store/failures.h"
#include "store/sha256.h"
#include "store/store.h"
#include "store/store_inside.h"
#include "store/visit_rows.h"

#include "document/document.h"
#include "document/json_reader.h"
#include "document/limits.h"
#include "merge/merge.h"

#include <algorithm>

namespace truehang {
namespace {

/// With their bytes: what both were made from is nearly always the newest or the one before it.
constexpr int kept_with_bytes = 2;

std::optional<std::string> bytes_of_parent(Connection& connection, std::string_view visit_id, std::string_view sha256) {
    Query query = connection.query(
        "SELECT bytes FROM parent WHERE visit_id = ?1 AND sha256 = ?2 AND bytes IS NOT NULL"
        " UNION ALL SELECT bytes FROM sending WHERE visit_id = ?1 AND sha256 = ?2 LIMIT 1",
        visit_id, sha256);
    if (!query.next()) {
        return std::nullopt;
    }
    std::string bytes = query.text(0);
    if (sha256_hex(bytes) != sha256) {
        throw Failure{damaged("parent", "a document that others have too has changed")};
    }
    return bytes;
}

/// What went out before is older than what is put above it now.
void settle_gone_out(Connection& connection, std::string_view visit_id) {
    std::vector<std::string> gone_out;
    for (Query query =
             connection.query("SELECT sha256 FROM sending WHERE visit_id = ? AND gone_out ORDER BY revision", visit_id);
         query.next();) {
        gone_out.push_back(query.text(0));
    }
    for (const std::string& sha256 : gone_out) {
        put_parent_digest(connection, visit_id, sha256);
    }
    connection.run("UPDATE sending SET gone_out = 0 WHERE visit_id = ?", visit_id);
}

/// Whether the visit says what the other sent, and no more.
bool says_the_same(Survey ours, const MetRevision& met) {
    const auto theirs = read_survey(met.bytes);
    if (!theirs) {
        return false;
    }
    const auto bytes_of = [](Survey survey) {
        survey.revision.reset();
        survey.parents.reset();
        const auto alone = merge(survey, survey, survey);
        return alone ? write_survey(*alone, false) : std::string();
    };
    const std::string bytes = bytes_of(std::move(ours));
    return !bytes.empty() && bytes == bytes_of(*theirs);
}

/// What the workroom has is what stands here: as if it had been sent from here.
void take_as_confirmed(Connection& connection, std::string_view visit_id, const MetRevision& met,
                       const std::string& now) {
    connection.run("UPDATE outbox SET state = 'confirmed' WHERE kind = 'survey' AND id = ?", visit_id);
    connection.run("DELETE FROM sending WHERE visit_id = ?", visit_id);
    connection.run("UPDATE visit SET confirmed_revision = revision WHERE visit_id = ?", visit_id);
    const std::string receipt = "{\"id\":" + json_string(visit_id) + ",\"revision\":" + std::to_string(met.revision) +
                                ",\"sha256\":" + json_string(met.sha256) +
                                ",\"received_at\":" + json_string(met.received_at) + "}";
    connection.run("REPLACE INTO receipt VALUES ('survey', ?, ?, ?, ?)", visit_id, met.revision, receipt, now);
}

Error not_together(const Faults& faults) {
    return {ErrorCode::conflict, faults.empty() ? "" : faults.front().pointer,
            "The two can’t be put together: " + (faults.empty() ? std::string() : faults.front().text)};
}

}  // namespace

std::vector<std::string> parents_of(Connection& connection, std::string_view visit_id) {
    std::vector<std::string> parents;
    for (Query query = connection.query("SELECT sha256 FROM sending JOIN visit USING (visit_id) WHERE visit_id = ? AND"
                                        " gone_out AND sending.revision < visit.revision"
                                        " ORDER BY sending.revision DESC LIMIT ?",
                                        visit_id, static_cast<long long>(document_limits::parents / 2));
         query.next();) {
        parents.push_back(query.text(0));
    }
    const auto left = static_cast<long long>(document_limits::parents - parents.size());
    for (Query query = connection.query("SELECT sha256 FROM parent WHERE visit_id = ? ORDER BY place DESC LIMIT ?",
                                        visit_id, left);
         query.next();) {
        parents.push_back(query.text(0));
    }
    return parents;
}

void put_parent(Connection& connection, std::string_view visit_id, std::string_view bytes) {
    connection.run(
        "INSERT INTO parent SELECT ?1, coalesce(max(place), 0) + 1, ?2, ?3 FROM parent WHERE visit_id = ?1"
        " ON CONFLICT DO UPDATE SET place = excluded.place, bytes = excluded.bytes",
        visit_id, sha256_hex(bytes), bytes);
    connection.run(
        "UPDATE parent SET bytes = NULL WHERE visit_id = ?1 AND bytes IS NOT NULL AND place NOT IN"
        " (SELECT place FROM parent WHERE visit_id = ?1 ORDER BY place DESC LIMIT ?2)",
        visit_id, static_cast<long long>(kept_with_bytes));
}

void put_parent_digest(Connection& connection, std::string_view visit_id, std::string_view sha256) {
    connection.run(
        "INSERT INTO parent SELECT ?1, coalesce(max(place), 0) + 1, ?2, NULL FROM parent WHERE visit_id = ?1"
        " ON CONFLICT DO NOTHING",
        visit_id, sha256);
}

void forget_parents_bytes(Connection& connection, std::string_view visit_id) {
    connection.run("UPDATE parent SET bytes = NULL WHERE visit_id = ?", visit_id);
    connection.run("DELETE FROM met WHERE visit_id = ?", visit_id);
}

Result<std::vector<std::string>> Store::parents(std::string_view visit_id) {
    return guarded([&]() -> Result<std::vector<std::string>> {
        visit_line_or_missing(inside_->connection, visit_id);
        return parents_of(inside_->connection, visit_id);
    });
}

Result<std::optional<std::string>> Store::parent_bytes(std::string_view visit_id, std::string_view sha256) {
    return guarded(
        [&]() -> Result<std::optional<std::string>> { return bytes_of_parent(inside_->connection, visit_id, sha256); });
}

Result<Done> Store::note_going_out(std::string_view visit_id, Revision revision) {
    return guarded([&]() -> Result<Done> {
        Connection& connection = inside_->connection;
        return connection.transact([&] {
            connection.run("UPDATE sending SET gone_out = 1 WHERE visit_id = ? AND revision = ? AND NOT gone_out",
                           visit_id, revision);
            return Done{};
        });
    });
}

Result<Done> Store::add_parent(std::string_view visit_id, std::string_view bytes) {
    return guarded([&]() -> Result<Done> {
        Connection& connection = inside_->connection;
        return connection.transact([&] {
            const VisitLine line = visit_line_or_missing(connection, visit_id);
            settle_gone_out(connection, visit_id);
            put_parent(connection, visit_id, bytes);
            // Bytes that were handed out already don’t tell it: the next revision does.
            connection.run(
                "UPDATE outbox SET revision = revision + 1 WHERE kind = 'survey' AND id = ?1 AND state <> 'confirmed'"
                " AND EXISTS (SELECT 1 FROM sending WHERE visit_id = ?1 AND revision = ?2)",
                visit_id, line.revision);
            connection.run(
                "UPDATE visit SET revision = max(revision, (SELECT revision FROM outbox WHERE kind = 'survey'"
                " AND id = ?1)) WHERE visit_id = ?1",
                visit_id);
            return Done{};
        });
    });
}

/// Within a transaction.
Revision Store::note_met(std::string_view visit_id, const MetRevision& met) {
    Connection& connection = inside_->connection;
    const VisitLine line = visit_line_or_missing(connection, visit_id);
    settle_gone_out(connection, visit_id);
    put_parent(connection, visit_id, met.bytes);
    connection.run("REPLACE INTO met VALUES (?, ?, ?, ?)", visit_id, met.sent_by, met.received_at, met.bytes);
    const bool is_theirs =
        line.revision <= met.revision && says_the_same(survey_of(stored_rows(connection, visit_id), 0), met);
    // Above both, and never one whose bytes were handed out with other parents.
    const Revision revision = is_theirs ? met.revision : std::max(line.revision, met.revision) + 1;
    connection.run("UPDATE visit SET revision = ? WHERE visit_id = ?", revision, visit_id);
    connection.run(
        "REPLACE INTO outbox (kind, id, revision, state, since, edit_number)"
        " SELECT 'survey', visit_id, revision, 'waiting', ?, last_edit FROM visit WHERE visit_id = ?",
        inside_->surroundings.now(), visit_id);
    if (is_theirs) {  // there is nothing to send
        take_as_confirmed(connection, visit_id, met, inside_->surroundings.now());
    }
    return revision;
}

Result<Revision> Store::keep_met(const Survey& after, std::string_view what, const MetRevision& met) {
    return guarded([&]() -> Result<Revision> {
        return inside_->connection.transact([&] {
            keep_whole(after, what);
            return note_met(after.id, met);
        });
    });
}

Result<Revision> Store::bring_together(std::string_view visit_id, std::string_view base_sha256, std::string_view base,
                                       const MetRevision& met, std::string_view what) {
    auto common = base.empty() ? parent_bytes(visit_id, base_sha256)
                               : Result<std::optional<std::string>>(std::optional(std::string(base)));
    const auto ours = visit(visit_id);
    if (!common || !ours) {
        return common ? ours.error() : common.error();
    }
    if (!*common) {
        return Error{ErrorCode::missing, std::string(visit_id), "What both were made from isn’t on this device."};
    }
    const auto from = read_survey(**common);
    const auto theirs = read_survey(met.bytes);
    if (!from || !theirs) {
        return not_together(from ? theirs.error() : from.error());
    }
    auto merged = merge(*from, *ours, *theirs);
    if (!merged) {
        return not_together(merged.error());
    }
    return keep_met(*merged, what, met);
}

Result<std::optional<MetRevision>> Store::last_met(std::string_view visit_id) {
    return guarded([&]() -> Result<std::optional<MetRevision>> {
        Query query =
            inside_->connection.query("SELECT sent_by, received_at, bytes FROM met WHERE visit_id = ?", visit_id);
        if (!query.next()) {
            return std::optional<MetRevision>();
        }
        MetRevision met;
        met.sent_by = query.text(0);
        met.received_at = query.text(1);
        met.bytes = query.text(2);
        met.sha256 = sha256_hex(met.bytes);
        return std::optional(met);
    });
}

}  // namespace truehang
