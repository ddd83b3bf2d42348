// SPDX-License-Identifier: Apache-2.0
#include "store/failures.h"
#include "store/parents.h"
#include "store/sha256.h"
#include "store/store.h"
#include "store/store_inside.h"

#include "document/document.h"

#include <algorithm>

// What others sent of the visits that are here, until it is in them.

namespace truehang {
namespace {

bool is_made_from(Connection& connection, std::string_view visit_id, std::string_view sha256) {
    return connection
        .query(
            "SELECT 1 FROM parent WHERE visit_id = ?1 AND sha256 = ?2"
            " UNION ALL SELECT 1 FROM sending WHERE visit_id = ?1 AND sha256 = ?2 LIMIT 1",
            visit_id, sha256)
        .next();
}

}  // namespace

Result<std::optional<std::string>> Store::common_with(std::string_view visit_id, std::string_view bytes) {
    const auto ours = parents(visit_id);
    const auto document = read_survey(bytes);
    if (!ours) {
        return ours.error();
    }
    // As the visit stands it went out, and nothing was heard of it: others may have made theirs from that.
    const auto now = guarded([&]() -> Result<std::optional<std::string>> {
        Query out = inside_->connection.query(
            "SELECT sha256 FROM sending JOIN visit USING (visit_id) WHERE visit_id = ? AND gone_out"
            " AND sending.revision = visit.revision",
            visit_id);
        return out.next() ? std::optional(out.text(0)) : std::optional<std::string>();
    });
    if (!now) {
        return now.error();
    }
    std::vector<std::string> told = *ours;
    if (*now) {
        told.insert(told.begin(), **now);
    }
    auto theirs = document ? document->parents.value_or(std::vector<std::string>{}) : std::vector<std::string>{};
    theirs.push_back(sha256_hex(bytes));
    for (const std::string& parent : told) {
        if (std::ranges::find(theirs, parent) != theirs.end()) {
            return parent_bytes(visit_id, parent);
        }
    }
    return std::optional<std::string>();
}

Result<std::string> Store::asked_until() {
    return guarded([&]() -> Result<std::string> {
        Query query = inside_->connection.query("SELECT cursor FROM asked");
        return query.next() ? query.text(0) : std::string();
    });
}

Result<Done> Store::note_coming(const std::vector<ComingRevision>& came, std::string_view asked_from,
                                std::string_view asked_until) {
    return guarded([&]() -> Result<Done> {
        Connection& connection = inside_->connection;
        return connection.transact([&] {
            Query asked = connection.query("SELECT cursor FROM asked");
            if (!asked_from.empty() && !(asked.next() && asked.text(0) == asked_from)) {
                throw Failure{{ErrorCode::conflict, "", "What came before this isn’t noted yet."}};
            }
            for (const ComingRevision& one : came) {
                if (!is_made_from(connection, one.visit, one.sha256)) {
                    connection.run(
                        "INSERT INTO coming SELECT visit_id, ?2, ?3, ?4, ?5 FROM visit WHERE visit_id = ?1"
                        " ON CONFLICT DO UPDATE SET revision = excluded.revision, sha256 = excluded.sha256,"
                        " received_at = excluded.received_at, sent_by = excluded.sent_by"
                        " WHERE excluded.revision >= coming.revision",
                        one.visit, one.revision, one.sha256, one.received_at, one.sent_by);
                }
            }
            connection.run("REPLACE INTO asked VALUES (1, ?)", asked_until);
            return Done{};
        });
    });
}

Result<std::vector<ComingRevision>> Store::coming() {
    return guarded([&]() -> Result<std::vector<ComingRevision>> {
        std::vector<ComingRevision> coming;
        Connection& connection = inside_->connection;
        for (Query query = connection.query("SELECT visit_id, coming.revision, sha256, received_at, sent_by FROM "
                                            "coming JOIN visit USING (visit_id)"
                                            " WHERE NOT removed ORDER BY received_at");
             query.next();) {
            coming.push_back({query.text(0), query.number(1), query.text(2), query.text(3), query.text(4)});
        }
        std::erase_if(coming,
                      [&](const ComingRevision& one) { return is_made_from(connection, one.visit, one.sha256); });
        return coming;
    });
}

Result<Done> Store::pass_over(const ComingRevision& one) {
    return guarded([&]() -> Result<Done> {
        Connection& connection = inside_->connection;
        return connection.transact([&] {
            connection.run("DELETE FROM coming WHERE visit_id = ? AND sha256 = ?", one.visit, one.sha256);
            return Done{};
        });
    });
}

Result<std::vector<std::string>> Store::photos_elsewhere() {
    return guarded([&]() -> Result<std::vector<std::string>> {
        std::vector<std::string> photos;
        for (Query query = inside_->connection.query(
                 "SELECT DISTINCT photo_use.sha256 FROM photo_use JOIN visit USING (visit_id) JOIN met USING (visit_id)"
                 " LEFT JOIN photo ON photo.sha256 = photo_use.sha256"
                 " WHERE NOT removed AND photo.sha256 IS NULL ORDER BY photo_use.sha256");
             query.next();) {
            photos.push_back(query.text(0));
        }
        return photos;
    });
}

}  // namespace truehang
