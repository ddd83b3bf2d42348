// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/questions.h"
#include "units/result.h"
#include "workroom/archive/archive.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace truehang::workroom {

/// What was asked about each survey, and what was answered. Neither is ever changed or taken out.
class QuestionShelf {
public:
    explicit QuestionShelf(Archive& archive) : archive_(archive) {}

    /// All questions of a survey with their answers, rising.
    [[nodiscard]] Result<std::vector<sync::AskedQuestion>> questions(std::string_view survey) const;

    /// Adds a question, numbered and dated here: as it is kept, on the disk when this returns. Where the same person
    /// has asked the same of the same place and nobody has answered, that question stands and none is added. `missing`
    /// where the survey, or the revision that was looked at, isn’t here; `out_of_range` for more than
    /// `sync::questions_limit`.
    [[nodiscard]] Result<sync::Question> ask(sync::Question question) const;

    /// Keeps an answer as it came, from the device of that id, whose name goes with it; `then` is called when it is on
    /// the disk. The same answer twice is kept once. `missing` where there is no such question; `conflict` where
    /// another answer has its id, or there are `sync::answers_limit` already.
    void answer(sync::QuestionAnswer answer, std::string device, Archive::Then<Kept<sync::AnswerReceipt>> then) const;

    /// Takes in what was exported; what is here already is left. `conflict` where something else is here by the same
    /// number or id; nothing is added then.
    [[nodiscard]] Result<Done> take_in(const sync::SurveyQuestions& questions) const;
    /// Whether `take_in` would; nothing is changed.
    [[nodiscard]] Result<Done> could_take_in(const sync::SurveyQuestions& questions) const;

private:
    Archive& archive_;
};

/// All questions of a survey on a connection, rising.
[[nodiscard]] std::vector<sync::AskedQuestion> questions_of(Records& records, const std::string& survey);
/// How many of them have no answer.
[[nodiscard]] std::size_t open_questions(Records& records, const std::string& survey);

/// What was asked and answered after `cursor` (empty: from the beginning), at most `most` of it and, beyond the first,
/// `sync::entries_bytes`, in the order of the commits, as `changes_after` gives it. Error `missing` for a cursor that
/// these records didn't give.
[[nodiscard]] Result<sync::QuestionEntries> question_entries_after(Archive& archive, std::string_view cursor,
                                                                   std::size_t most);

}  // namespace truehang::workroom
