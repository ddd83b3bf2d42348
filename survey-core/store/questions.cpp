// SPDX-License-Identifier: Apache-2.0
#include "store/questions.h"

#include "store/failures.h"
#include "store/store.h"
#include "store/store_inside.h"

namespace truehang {
namespace {

VisitAnswer answer_from(const Query& row) {
    return {row.text(0), row.number(1), row.text(2), row.text(3), row.text(4),
            row.text(5), row.text(6),   row.text(7), row.text(8), row.text(9)};
}

/// False where there is no such question.
bool put_answer(Connection& connection, const VisitAnswer& answer) {
    connection.run(
        "INSERT INTO answer SELECT visit_id, number, ?3, (SELECT coalesce(max(place), 0) + 1 FROM answer WHERE"
        " visit_id = ?1 AND number = ?2), ?4, ?5, ?6, ?7, ?8,"
        " ?9, ?10 FROM question WHERE visit_id = ?1 AND number = ?2 ON CONFLICT DO NOTHING",
        answer.visit, answer.number, answer.id, answer.words, answer.station, answer.typed, answer.by, answer.at,
        answer.device, answer.record);
    return connection
        .query("SELECT 1 FROM answer WHERE visit_id = ? AND number = ? AND answer_id = ?", answer.visit, answer.number,
               answer.id)
        .next();
}

void count_open(Connection& connection) {
    connection.run(
        "UPDATE visit SET questions = asked.open FROM"
        " (SELECT visit_id, sum(NOT EXISTS (SELECT 1 FROM answer WHERE answer.visit_id = question.visit_id"
        "    AND answer.number = question.number)) AS open FROM question GROUP BY visit_id) AS asked"
        " WHERE asked.visit_id = visit.visit_id AND asked.open <> visit.questions");
}

}  // namespace

Result<std::string> Store::questions_asked_until() {
    return guarded([&]() -> Result<std::string> {
        Query query = inside_->connection.query("SELECT cursor FROM questions_asked");
        return query.next() ? query.text(0) : std::string();
    });
}

Result<Done> Store::ask_questions_anew() {
    return guarded([&]() -> Result<Done> {
        inside_->connection.run("DELETE FROM questions_asked");
        return Done{};
    });
}

Result<Done> Store::note_questions(const std::vector<VisitQuestion>& asked, const std::vector<VisitAnswer>& answered,
                                   std::string_view asked_from, std::string_view asked_until) {
    return guarded([&]() -> Result<Done> {
        Connection& connection = inside_->connection;
        return connection.transact([&] {
            Query stands = connection.query("SELECT cursor FROM questions_asked");
            if (!asked_from.empty() && !(stands.next() && stands.text(0) == asked_from)) {
                throw Failure{{ErrorCode::conflict, "", "What was asked before this isn’t noted yet."}};
            }
            for (const VisitQuestion& one : asked) {
                connection.run(
                    "INSERT INTO question SELECT visit_id, ?2, ?3, ?4, ?5, ?6, ?7, ?8 FROM visit"
                    " WHERE visit_id = ?1 ON CONFLICT DO NOTHING",
                    one.visit, one.number, one.room, one.window, one.station, one.words, one.by, one.at);
            }
            for (const VisitAnswer& one : answered) {
                static_cast<void>(put_answer(connection, one));
            }
            count_open(connection);
            connection.run("REPLACE INTO questions_asked VALUES (1, ?)", asked_until);
            return Done{};
        });
    });
}

Result<std::vector<VisitQuestion>> Store::questions(std::string_view visit_id) {
    return guarded([&]() -> Result<std::vector<VisitQuestion>> {
        std::vector<VisitQuestion> questions;
        for (Query row =
                 inside_->connection.query("SELECT visit_id, number, room_id, window_id, station, words, who, at"
                                           " FROM question WHERE visit_id = ? ORDER BY number",
                                           visit_id);
             row.next();) {
            questions.push_back({row.text(0), row.number(1), row.text(2), row.text(3), row.text(4), row.text(5),
                                 row.text(6), row.text(7)});
        }
        for (VisitQuestion& one : questions) {
            for (Query row = inside_->connection.query(
                     "SELECT visit_id, number, answer_id, words, station, typed, who, at, device, record FROM answer"
                     " WHERE visit_id = ? AND number = ? ORDER BY place",
                     visit_id, one.number);
                 row.next();) {
                one.answers.push_back(answer_from(row));
            }
        }
        return questions;
    });
}

Result<Done> Store::keep_answer(const VisitAnswer& answer) {
    return guarded([&]() -> Result<Done> {
        Connection& connection = inside_->connection;
        return connection.transact([&] {
            if (!put_answer(connection, answer)) {
                throw Failure{{ErrorCode::missing, answer.visit, "There is no such question."}};
            }
            connection.run(
                "INSERT INTO outbox (kind, id, revision, state, since, edit_number)"
                " SELECT 'answer', ?2, 0, 'waiting', ?3, last_edit FROM visit WHERE visit_id = ?1"
                " ON CONFLICT DO NOTHING",
                answer.visit, answer.id, inside_->surroundings.now());
            count_open(connection);
            return Done{};
        });
    });
}

Result<VisitAnswer> Store::answer_to_send(std::string_view id) {
    return guarded([&]() -> Result<VisitAnswer> {
        Query row = inside_->connection.query(
            "SELECT visit_id, number, answer_id, words, station, typed, who, at, device, record FROM answer"
            " WHERE answer_id = ? AND record <> ''",
            id);
        if (!row.next()) {
            throw Failure{{ErrorCode::missing, std::string(id), "There is no such answer to send."}};
        }
        return answer_from(row);
    });
}

}  // namespace truehang
