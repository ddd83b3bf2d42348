// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/problem.h"
#include "units/result.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

// What a workroom asks about a survey, and what is answered: records that are added and never changed (format
// truehang.questions/1; schema/questions.schema.json).

namespace truehang::sync {

/// The most bytes of a question’s or an answer’s words.
inline constexpr std::size_t words_limit = 2000;
/// The most bytes of a station that is asked about or answered.
inline constexpr std::size_t station_limit = 200;
/// The most questions of one survey, and answers to one question.
inline constexpr long long questions_limit = 1000;
inline constexpr long long answers_limit = 100;
/// The most bytes of an answer that is sent.
inline constexpr std::uint64_t answer_body_limit = 65536;
/// How many bytes of records one answer to `GET /questions` holds, where it holds more than one.
inline constexpr std::size_t entries_bytes = std::size_t{1024} * 1024;

/// What a person of the workroom asks about a window, or about one reading of it.
struct Question {
    std::string survey;
    long long number = 0;      ///< from 1, rising in a survey
    std::string room, window;  ///< ids as the survey has them
    std::string
        station;  ///< as the survey’s readings name it; empty: about the whole window; at most `station_limit` bytes
    std::string words;       ///< 1 to `words_limit` bytes
    long long revision = 0;  ///< of the survey, that was looked at
    std::string by;          ///< who asks
    std::string at;          ///< RFC 3339, UTC
    friend bool operator==(const Question&, const Question&) = default;
};

/// A reading that answers: it travels in the survey itself too, from `QuestionAnswer::revision` on.
struct AnswerReading {
    std::string station;
    std::string typed;                  ///< as a person wrote it, with its unit
    std::optional<double> value_mm{};   ///< of a length
    std::optional<double> value_deg{};  ///< of an angle
    friend bool operator==(const AnswerReading&, const AnswerReading&) = default;
};

/// An answer: words, a reading, or both.
struct QuestionAnswer {
    std::string survey;
    long long number = 0;  ///< of the question
    std::string id;        ///< made by whoever answers, once; as `is_answer_id` says
    std::string words;     ///< at most `words_limit` bytes; may be empty where there is a reading
    std::optional<AnswerReading> reading;
    long long revision = 0;  ///< of the survey that carries the reading; 0 where none is said
    std::string by;          ///< who answers; may be empty
    std::string at;          ///< RFC 3339, by the clock of whoever answers
    friend bool operator==(const QuestionAnswer&, const QuestionAnswer&) = default;
};

/// Proof that an answer is stored.
struct AnswerReceipt {
    std::string survey;
    long long number = 0;
    std::string id;
    std::string received_at;  ///< RFC 3339, UTC
    friend bool operator==(const AnswerReceipt&, const AnswerReceipt&) = default;
};

/// An answer with when and from which device it came.
struct ReceivedAnswer {
    QuestionAnswer answer;
    std::string received_at;
    std::string device;  ///< its name, for people; empty where it isn’t known
    friend bool operator==(const ReceivedAnswer&, const ReceivedAnswer&) = default;
};

struct AskedQuestion {
    Question question;
    std::vector<ReceivedAnswer> answers;  ///< in the order in which they came
    friend bool operator==(const AskedQuestion&, const AskedQuestion&) = default;
};

/// All questions of one survey, rising: answer to `GET /surveys/{id}/questions`.
struct SurveyQuestions {
    std::string survey;
    std::vector<AskedQuestion> questions;
    friend bool operator==(const SurveyQuestions&, const SurveyQuestions&) = default;
};

/// One step of what was asked and answered, over all surveys: either a question or an answer.
struct QuestionEntry {
    std::optional<Question> question{};
    std::optional<ReceivedAnswer> answer{};
    friend bool operator==(const QuestionEntry&, const QuestionEntry&) = default;
};

/// Answer to `GET /questions`.
struct QuestionEntries {
    std::vector<QuestionEntry> entries;
    std::string next;
    bool more = false;
};

/// Whether an answer may be named so: 1 to 64 letters, digits and hyphens (US-ASCII).
[[nodiscard]] bool is_answer_id(std::string_view id);

[[nodiscard]] std::string write_question(const Question& question);
[[nodiscard]] std::string write_answer(const QuestionAnswer& answer);
[[nodiscard]] std::string write_record(const AnswerReceipt& receipt);
[[nodiscard]] std::string write_questions(const SurveyQuestions& questions);
[[nodiscard]] std::string write_entries(const QuestionEntries& entries);

/// Error `unreadable` with the JSON pointer in `where` for what is missing, of a wrong type or out of its range;
/// unknown keys are passed over.
[[nodiscard]] Result<Question> read_question(std::string_view json);
[[nodiscard]] Result<AnswerReceipt> read_answer_receipt(std::string_view json);
[[nodiscard]] Result<SurveyQuestions> read_questions(std::string_view json);
[[nodiscard]] Result<QuestionEntries> read_entries(std::string_view json);
/// All faults in one go.
[[nodiscard]] Result<QuestionAnswer, std::vector<ProblemFault>> read_answer(std::string_view json);

}  // namespace truehang::sync
