// SPDX-License-Identifier: Apache-2.0
#include "workroom/archive/question_shelf.h"

#include "protocol/time_text.h"
#include "workroom/archive/changes.h"
#include "workroom/archive/erasure.h"
#include "workroom/archive/mark_shelf.h"
#include "workroom/archive/survey_states.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <optional>
#include <tuple>
#include <utility>

namespace truehang::workroom {

using sync::AskedQuestion;
using sync::Question;
using sync::QuestionAnswer;
using sync::ReceivedAnswer;

namespace {

/// One row; a question’s has no answer id.
struct Row {
    std::string survey;
    long long number = 0;
    std::string answer, record, received_at, device;
};

Row row_of(const Question& question) {
    return {question.survey, question.number, "", sync::write_question(question), question.at, ""};
}

Row row_of(const ReceivedAnswer& received) {
    const QuestionAnswer& answer = received.answer;
    return {answer.survey, answer.number, answer.id, sync::write_answer(answer), received.received_at, received.device};
}

void insert(Records& records, const Row& row) {
    Query add(records,
              "INSERT INTO question_entry(survey, question, answer, record, received_at, device) "
              "VALUES(?, ?, ?, ?, ?, ?)");
    add.bind(1, row.survey);
    add.bind(2, row.number);
    add.bind(3, row.answer);
    add.bind(4, row.record);
    add.bind(5, row.received_at);
    add.bind(6, row.device);
    add.exec();
}

std::optional<Row> row_at(Records& records, const std::string& survey, long long number, const std::string& answer) {
    Query query(
        records,
        "SELECT record, received_at, device FROM question_entry WHERE survey = ? AND question = ? AND answer = ?");
    query.bind(1, survey);
    query.bind(2, number);
    query.bind(3, answer);
    return query.step() ? std::optional(Row{survey, number, answer, query.text(0), query.text(1), query.text(2)})
                        : std::nullopt;
}

/// What a row says; nothing where it doesn’t read any more.
std::optional<sync::QuestionEntry> entry_of(const Row& row) {
    if (row.answer.empty()) {
        auto question = sync::read_question(row.record);
        return question ? std::optional(sync::QuestionEntry{std::move(question).value(), {}}) : std::nullopt;
    }
    auto answer = sync::read_answer(row.record);
    return answer ? std::optional(
                        sync::QuestionEntry{{}, ReceivedAnswer{std::move(answer).value(), row.received_at, row.device}})
                  : std::nullopt;
}

/// The number of the last question; one that can’t be read any more counts too, for its row keeps its number. 0 where
/// none was asked.
long long last_number(Records& records, const std::string& survey) {
    Query query(records, "SELECT coalesce(max(question), 0) FROM question_entry WHERE survey = ?");
    query.bind(1, survey);
    return query.step() ? query.number(0) : 0;
}

Result<Question> add_question(Records& records, Question question) {
    if (is_erased(records, question.survey)) {
        return erased_error("This survey");
    }
    if (!has_revision(records, question.survey, question.revision)) {
        return Error{ErrorCode::missing, "revision",
                     "That revision isn’t here. Load the page again and ask from there."};
    }
    for (const AskedQuestion& before : questions_of(records, question.survey)) {
        const Question& same = before.question;
        if (before.answers.empty() &&
            std::tie(same.room, same.window, same.station, same.words, same.by) ==
                std::tie(question.room, question.window, question.station, question.words, question.by)) {
            return same;
        }
    }
    question.number = last_number(records, question.survey) + 1;
    if (question.number > sync::questions_limit) {
        return Error{ErrorCode::out_of_range, "questions", "This survey has as many questions as one may have."};
    }
    insert(records, row_of(question));
    put_states_again(records, question.survey);
    return question;
}

std::string name_of_device(Records& records, const std::string& device) {
    Query query(records, "SELECT name FROM device WHERE id = ?");
    query.bind(1, device);
    return query.step() ? query.text(0) : "";
}

Result<Kept<sync::AnswerReceipt>> add_answer(Records& records, ReceivedAnswer received, const std::string& device) {
    const QuestionAnswer& answer = received.answer;
    if (is_erased(records, answer.survey)) {
        return erased_error("This survey");
    }
    if (!row_at(records, answer.survey, answer.number, "")) {
        return Error{ErrorCode::missing, "question", "There is no such question here."};
    }
    received.device = name_of_device(records, device);
    const Row row = row_of(received);
    if (const auto there = row_at(records, answer.survey, answer.number, answer.id)) {
        if (there->record != row.record) {
            return Error{ErrorCode::conflict, "answer",
                         "Another answer of this id is here already. It stays as it is; answer under a new id."};
        }
        return Kept<sync::AnswerReceipt>{{answer.survey, answer.number, answer.id, there->received_at}, true};
    }
    Query count(records, "SELECT count(*) FROM question_entry WHERE survey = ? AND question = ? AND answer > ''");
    count.bind(1, answer.survey);
    count.bind(2, answer.number);
    if (count.step() && count.number(0) >= sync::answers_limit) {
        return Error{ErrorCode::conflict, "answers", "This question has as many answers as one may have."};
    }
    insert(records, row);
    put_states_again(records, answer.survey);
    return Kept<sync::AnswerReceipt>{{answer.survey, answer.number, answer.id, received.received_at}, false};
}

std::vector<Row> rows_of(const sync::SurveyQuestions& questions) {
    std::vector<Row> rows;
    for (const AskedQuestion& asked : questions.questions) {
        rows.push_back(row_of(asked.question));
        for (const ReceivedAnswer& answer : asked.answers) {
            rows.push_back(row_of(answer));
        }
    }
    return rows;
}

/// Those of `rows` that aren’t here yet, or an error where something else is.
Result<std::vector<Row>> new_rows(Records& records, const std::vector<Row>& rows) {
    std::vector<Row> added;
    for (const Row& row : rows) {
        const auto there = row_at(records, row.survey, row.number, row.answer);
        if (!there) {
            added.push_back(row);
        } else if (there->record != row.record) {
            return Error{ErrorCode::conflict, fmt::format("question {} of {}", row.number, row.survey),
                         "Something else is asked or answered here; that stays as it is."};
        }
    }
    return added;
}

}  // namespace

std::vector<AskedQuestion> questions_of(Records& records, const std::string& survey) {
    Query query(records,
                "SELECT question, answer, record, received_at, device FROM question_entry WHERE survey = ? "
                "ORDER BY at");
    query.bind(1, survey);
    std::vector<AskedQuestion> questions;
    while (query.step()) {
        auto entry = entry_of({survey, query.number(0), query.text(1), query.text(2), query.text(3), query.text(4)});
        if (entry && entry->question) {
            questions.push_back({std::move(*entry->question), {}});
        } else if (entry) {
            const auto asked = std::ranges::find(questions, entry->answer->answer.number,
                                                 [](const AskedQuestion& one) { return one.question.number; });
            if (asked != questions.end()) {
                asked->answers.push_back(std::move(*entry->answer));
            }
        }
    }
    std::ranges::sort(questions, {}, [](const AskedQuestion& one) { return one.question.number; });
    return questions;
}

std::size_t open_questions(Records& records, const std::string& survey) {
    Query query(
        records,
        "SELECT count(*) FROM question_entry AS asked WHERE survey = ?1 AND answer = '' AND NOT EXISTS (SELECT 1 "
        "FROM question_entry AS given WHERE given.survey = ?1 AND given.question = asked.question AND "
        "given.answer > '')");
    query.bind(1, survey);
    return query.step() ? static_cast<std::size_t>(query.number(0)) : 0;
}

Result<std::vector<AskedQuestion>> QuestionShelf::questions(std::string_view survey) const {
    return archive_.database().read<std::vector<AskedQuestion>>(
        [survey = std::string(survey)](Records& records) -> Result<std::vector<AskedQuestion>> {
            return questions_of(records, survey);
        });
}

Result<Question> QuestionShelf::ask(Question question) const {
    question.at = sync::write_time(archive_.clock()());
    return archive_.database().write_and_wait<Question>(
        [question = std::move(question)](Records& records) { return add_question(records, question); });
}

void QuestionShelf::answer(QuestionAnswer answer, std::string device,
                           Archive::Then<Kept<sync::AnswerReceipt>> then) const {
    ReceivedAnswer received{std::move(answer), sync::write_time(archive_.clock()()), ""};
    archive_.database().write<Kept<sync::AnswerReceipt>>(
        [received = std::move(received), device = std::move(device)](Records& records) {
            return add_answer(records, received, device);
        },
        std::move(then));
}

Result<Done> QuestionShelf::could_take_in(const sync::SurveyQuestions& questions) const {
    return archive_.database().read<Done>([&](Records& records) -> Result<Done> {
        const auto added = new_rows(records, rows_of(questions));
        return added ? Result<Done>(Done{}) : added.error();
    });
}

Result<Done> QuestionShelf::take_in(const sync::SurveyQuestions& questions) const {
    return archive_.database().write_and_wait<Done>([questions](Records& records) -> Result<Done> {
        if (is_erased(records, questions.survey)) {
            return erased_error("This survey");
        }
        const auto added = new_rows(records, rows_of(questions));
        if (!added) {
            return added.error();
        }
        for (const Row& row : *added) {
            insert(records, row);
        }
        put_states_again(records, questions.survey);
        return Done{};
    });
}

Result<sync::QuestionEntries> question_entries_after(Archive& archive, std::string_view cursor, std::size_t most) {
    return archive.database().read<sync::QuestionEntries>([&](Records& records) -> Result<sync::QuestionEntries> {
        const Transaction one_state(records, Transaction::Use::reading);
        const auto instance = text_of(records, "SELECT 'q' || id FROM instance");
        const auto place = place_of_cursor(cursor, instance, std::numeric_limits<std::int64_t>::max());
        if (!place) {
            return Error{ErrorCode::missing, "after", "These records didn’t give this cursor. Begin without one."};
        }
        Query query(records,
                    "SELECT at, survey, question, answer, record, received_at, device FROM question_entry WHERE at > ? "
                    "ORDER BY at LIMIT ?");
        query.bind(1, *place);
        query.bind(2, most + 1);
        sync::QuestionEntries found;
        std::int64_t reached = *place;
        std::size_t bytes = 0;
        for (std::size_t read = 0; query.step(); ++read) {
            bytes += query.text(4).size();
            if (read == most || (read > 0 && bytes > sync::entries_bytes)) {
                found.more = true;
                break;
            }
            reached = query.number(0);
            if (auto entry = entry_of(
                    {query.text(1), query.number(2), query.text(3), query.text(4), query.text(5), query.text(6)})) {
                found.entries.push_back(std::move(*entry));
            }
        }
        found.next = cursor_of(instance, reached);
        return found;
    });
}

}  // namespace truehang::workroom
