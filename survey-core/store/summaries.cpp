// SPDX-License-Identifier: Apache-2.0
#include "store/failures.h"
#include "store/store.h"
#include "store/store_inside.h"
#include "store/visit_rows.h"
#include "units/folded.h"

#include <algorithm>
#include <array>

// The list of visits: each line from the visit's own row, a page at a time.

namespace truehang {
namespace {

VisitSummary summary_from(const Query& query) {
    VisitSummary summary;
    summary.id = query.text(0);
    summary.title = query.text(1);
    summary.address = query.text(2);
    summary.client = query.text(3);
    summary.day = query.text(4);
    summary.updated_at = query.text(5);
    summary.removed = query.number(6) != 0;
    summary.revision = query.number(7);
    summary.confirmed_revision = query.number(8);
    summary.last_edit = query.number(9);
    summary.windows = static_cast<int>(query.number(10));
    summary.windows_begun = static_cast<int>(query.number(11));
    summary.windows_measured = static_cast<int>(query.number(12));
    summary.questions = static_cast<int>(query.number(13));
    summary.photos = static_cast<int>(query.number(14));
    summary.photos_confirmed = static_cast<int>(query.number(15));
    return summary;
}

constexpr std::string_view first_unsent =
    "SELECT made_at FROM edit WHERE number ="
    " (SELECT min(number) FROM"
    "   (SELECT number FROM edit INDEXED BY edit_by_state WHERE visit_id = ?1 AND revision > ?2"
    "    UNION ALL"
    "    SELECT edit_number FROM photo_use JOIN outbox ON kind = 'photo' AND id = sha256 AND state <> 'confirmed'"
    "     WHERE visit_id = ?1))";

/// Reads since when something of it waits; a visit that is there whole isn't looked through.
void find_unsent(Connection& connection, VisitSummary& summary) {
    if (summary.confirmed_revision < summary.revision || summary.photos_confirmed < summary.photos) {
        Query query = connection.query(first_unsent, summary.id, summary.confirmed_revision);
        summary.unsent_since = query.next() ? query.text(0) : std::string();
    }
}

constexpr std::string_view one_summary =
    "SELECT visit_id, title, address, client, day, updated_at, removed, revision, confirmed_revision, last_edit,"
    " windows, windows_begun, windows_measured, questions, photos, photos_confirmed"
    " FROM visit_summary WHERE visit_id = ?";

constexpr std::string_view all_summaries =
    "SELECT visit_id, title, address, client, day, updated_at, removed, revision, confirmed_revision, last_edit,"
    " windows, windows_begun, windows_measured, questions, photos, photos_confirmed"
    " FROM visit_summary ORDER BY last_edit DESC";

constexpr std::string_view summaries_asked =
    "SELECT visit_id, title, address, client, day, updated_at, removed, revision, confirmed_revision, last_edit,"
    " windows, windows_begun, windows_measured, questions, photos, photos_confirmed"
    " FROM visit_summary WHERE removed = ?1 AND (?2 = '' OR visit_id = ?2) AND (?3 = '' OR state = ?3)"
    " AND instr(found_by, ?4) > 0 AND instr(found_by, ?5) > 0 AND instr(found_by, ?6) > 0"
    " AND instr(found_by, ?7) > 0 AND instr(found_by, ?8) > 0 AND instr(found_by, ?9) > 0"
    " ORDER BY day DESC, last_edit DESC LIMIT ?10 OFFSET ?11";
static_assert(most_search_words == 6);

std::string_view word_of(const std::optional<VisitState>& state) {
    constexpr std::array<std::string_view, 5> words{"to_measure", "measuring", "to_send", "there", "asked"};
    return state ? words.at(static_cast<std::size_t>(*state)) : std::string_view{};
}

/// Where the visit can't be read, its windows count as not begun: opening it says what is wrong.
void count_visit(Connection& connection, const std::string& visit_id) {
    auto read = guarded([&]() -> Result<Survey> { return survey_of(stored_rows(connection, visit_id), 0); });
    if (read && read->id == visit_id) {
        keep_counts(connection, *read);
    } else {
        connection.run("UPDATE room_window SET taken = 0, asked = 0 WHERE visit_id = ?", visit_id);
        sum_counts(connection, visit_id);
    }
}

/// Counts what of these isn't counted yet; false where all were.
bool count_missing(Connection& connection, const std::vector<std::string>& visits) {
    if (visits.empty()) {
        return false;
    }
    connection.transact([&] {
        for (const std::string& visit : visits) {
            count_visit(connection, visit);
        }
        return Done{};
    });
    return true;
}

/// What one look finds: one line more than the page, and which of them aren't counted.
struct Look {
    VisitsPage page;
    std::vector<std::string> uncounted;
};

Look look_at(Connection& connection, const VisitsAsked& asked) {
    std::vector<std::string> words = search_words(asked.words);
    words.resize(most_search_words);
    const int most = std::max(asked.most, 0);
    Look look;
    for (Query query =
             connection.query(summaries_asked, asked.removed ? 1 : 0, asked.id, word_of(asked.state), words[0],
                              words[1], words[2], words[3], words[4], words[5], most + 1, std::max(asked.from, 0));
         query.next();) {
        if (static_cast<int>(look.page.visits.size()) == most) {
            look.page.more = true;
            break;
        }
        look.page.visits.push_back(summary_from(query));
        find_unsent(connection, look.page.visits.back());
        if (query.is_null(11)) {
            look.uncounted.push_back(query.text(0));
        }
    }
    return look;
}

}  // namespace

Result<std::vector<VisitSummary>> Store::visits() {
    return guarded([&]() -> Result<std::vector<VisitSummary>> {
        std::vector<VisitSummary> found;
        for (Query query = inside_->connection.query(all_summaries); query.next();) {
            found.push_back(summary_from(query));
            find_unsent(inside_->connection, found.back());
        }
        return found;
    });
}

Result<VisitsPage> Store::visits(const VisitsAsked& asked) {
    return guarded([&]() -> Result<VisitsPage> {
        Look look = look_at(inside_->connection, asked);
        if (count_missing(inside_->connection, look.uncounted)) {
            look = look_at(inside_->connection, asked);
        }
        return std::move(look.page);
    });
}

Result<VisitSummary> Store::summary(std::string_view visit_id) {
    return guarded([&]() -> Result<VisitSummary> {
        visit_line_or_missing(inside_->connection, visit_id);
        const auto read = [&](bool& counted) {
            Query query = inside_->connection.query(one_summary, visit_id);
            static_cast<void>(query.next());
            counted = !query.is_null(11);
            return summary_from(query);
        };
        bool counted = true;
        VisitSummary summary = read(counted);
        if (!counted) {
            count_missing(inside_->connection, {summary.id});
            summary = read(counted);
        }
        find_unsent(inside_->connection, summary);
        return summary;
    });
}

Result<std::vector<std::string>> Store::unreadable(const std::vector<std::string>& visit_ids) {
    std::vector<std::string> found;
    for (const std::string& id : visit_ids) {
        if (const auto survey = visit(id); !survey && survey.error().code != ErrorCode::missing) {
            found.push_back(id);
        }
    }
    return found;
}

Result<int> Store::count_windows(int most) {
    return guarded([&]() -> Result<int> {
        Connection& connection = inside_->connection;
        std::vector<std::string> visits;
        for (Query query =
                 connection.query("SELECT visit_id FROM visit WHERE windows_begun IS NULL LIMIT ?", std::max(most, 0));
             query.next();) {
            visits.push_back(query.text(0));
        }
        count_missing(connection, visits);
        Query left = connection.query("SELECT count(*) FROM visit WHERE windows_begun IS NULL");
        return left.next() ? static_cast<int>(left.number(0)) : 0;
    });
}

}  // namespace truehang
