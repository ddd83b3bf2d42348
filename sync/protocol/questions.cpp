// SPDX-License-Identifier: Apache-2.0
#include "protocol/questions.h"

#include "protocol/limits.h"
#include "protocol/marks.h"
#include "protocol/paths.h"
#include "protocol/time_text.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <utility>

namespace truehang::sync {

namespace {

using Json = nlohmann::ordered_json;
using Faults = std::vector<ProblemFault>;

constexpr std::string_view questions_format = "truehang.questions/1";
constexpr std::size_t longest_text = 65536;  ///< bytes; ids within a survey have no limit but its document's
constexpr std::size_t answer_id_limit = 64;
constexpr double longest_mm = 1e6;  ///< a kilometre
constexpr double full_turn = 360;

/// Reads the members of one object and notes what isn't as it should be.
class Members {
public:
    Members(const Json& json, std::string pointer, Faults& faults)
        : json_(json), pointer_(std::move(pointer)), faults_(faults) {}

    [[nodiscard]] bool has(const char* key) const { return json_.contains(key); }
    [[nodiscard]] const Json& at(const char* key) const { return json_.at(key); }
    [[nodiscard]] std::string pointer(const char* key) const { return pointer_ + "/" + key; }

    void check(const char* key, bool holds, const char* says) {
        if (!holds) {
            faults_.push_back({pointer(key), says});
        }
    }
    std::string text(const char* key, std::size_t most) {
        const auto found = json_.find(key);
        const bool fits =
            found != json_.end() && found->is_string() && found->get_ref<const std::string&>().size() <= most;
        check(key, fits, "A text of a length that is allowed is expected here.");
        return fits ? found->get<std::string>() : std::string();
    }
    std::string some_text(const char* key, std::size_t most) {
        auto read = text(key, most);
        check(key, !read.empty() || !has(key) || !at(key).is_string(), "This can’t be empty.");
        return read;
    }
    std::string text_if(const char* key, std::size_t most) { return has(key) ? text(key, most) : std::string(); }
    long long whole(const char* key, long long most) {
        const auto found = json_.find(key);
        const bool is_whole = found != json_.end() && found->is_number_integer();
        const long long value = is_whole ? found->get<long long>() : 0;
        check(key, value >= 1 && value <= most, "A whole number from 1 up is expected here.");
        return value;
    }
    std::optional<double> number_if(const char* key, double most) {
        if (!has(key)) {
            return std::nullopt;
        }
        const bool is_number = at(key).is_number();
        const double value = is_number ? at(key).get<double>() : 0;
        check(key, is_number && std::abs(value) <= most, "A number within what can be measured is expected here.");
        return value;
    }
    std::string moment(const char* key) {
        auto read = text(key, longest_text);
        check(key, read_time(read).has_value(), "A time as RFC 3339 writes it is expected here.");
        return read;
    }

private:
    const Json& json_;
    std::string pointer_;
    Faults& faults_;
};

Question question_in(Members members) {
    Question question;
    question.survey = members.some_text("survey", id_limit);
    question.number = members.whole("number", questions_limit);
    question.room = members.text("room", longest_text);
    question.window = members.text("window", longest_text);
    question.station = members.text_if("station", station_limit);
    question.words = members.some_text("words", words_limit);
    question.revision = members.whole("revision", revision_limit);
    question.by = members.some_text("by", name_limit);
    question.at = members.moment("at");
    return question;
}

AnswerReading reading_in(Members members) {
    AnswerReading reading;
    reading.station = members.some_text("station", station_limit);
    reading.typed = members.text_if("typed", name_limit);
    reading.value_mm = members.number_if("value_mm", longest_mm);
    reading.value_deg = members.number_if("value_deg", full_turn);
    members.check("value_mm", reading.value_mm.has_value() != reading.value_deg.has_value(),
                  "A reading has either a length or an angle.");
    return reading;
}

QuestionAnswer answer_in(Members members, Faults& faults) {
    QuestionAnswer answer;
    answer.survey = members.some_text("survey", id_limit);
    answer.number = members.whole("number", questions_limit);
    answer.id = members.text("id", answer_id_limit);
    members.check("id", is_answer_id(answer.id), "1 to 64 letters, digits and hyphens are expected here.");
    answer.words = members.text_if("words", words_limit);
    if (members.has("reading") && members.at("reading").is_object()) {
        answer.reading = reading_in({members.at("reading"), members.pointer("reading"), faults});
    }
    members.check("reading", !members.has("reading") || answer.reading, "A reading is an object.");
    members.check("words", !answer.words.empty() || answer.reading, "An answer has words, a reading, or both.");
    answer.revision = members.has("revision") ? members.whole("revision", revision_limit) : 0;
    answer.by = members.text_if("by", name_limit);
    answer.at = members.moment("at");
    return answer;
}

ReceivedAnswer received_in(const Json& json, const std::string& pointer, Faults& faults) {
    Members members(json, pointer, faults);
    return {answer_in(members, faults), members.moment("received_at"), members.text_if("device", longest_text)};
}

Json json_of(const Question& question) {
    Json json{
        {"survey", question.survey}, {"number", question.number}, {"room", question.room}, {"window", question.window}};
    if (!question.station.empty()) {
        json["station"] = question.station;
    }
    json["words"] = question.words;
    json["revision"] = question.revision;
    json["by"] = question.by;
    json["at"] = question.at;
    return json;
}

Json json_of(const AnswerReading& reading) {
    Json json{{"station", reading.station}};
    if (reading.value_mm) {
        json["value_mm"] = *reading.value_mm;
    }
    if (reading.value_deg) {
        json["value_deg"] = *reading.value_deg;
    }
    if (!reading.typed.empty()) {
        json["typed"] = reading.typed;
    }
    return json;
}

Json json_of(const QuestionAnswer& answer) {
    Json json{{"survey", answer.survey}, {"number", answer.number}, {"id", answer.id}};
    if (!answer.words.empty()) {
        json["words"] = answer.words;
    }
    if (answer.reading) {
        json["reading"] = json_of(*answer.reading);
    }
    if (answer.revision > 0) {
        json["revision"] = answer.revision;
    }
    if (!answer.by.empty()) {
        json["by"] = answer.by;
    }
    json["at"] = answer.at;
    return json;
}

Json json_of(const ReceivedAnswer& received) {
    Json json = json_of(received.answer);
    json["received_at"] = received.received_at;
    if (!received.device.empty()) {
        json["device"] = received.device;
    }
    return json;
}

std::string written(const Json& json) { return json.dump(1, ' ', false, Json::error_handler_t::replace); }

Error not_questions(const ProblemFault& fault) { return {ErrorCode::unreadable, fault.pointer, fault.text}; }

/// A list’s entries, each an object.
bool is_list(const Json& json, const char* key) {
    return json.is_object() && json.contains(key) && json[key].is_array() &&
           std::ranges::all_of(json[key], [](const Json& entry) { return entry.is_object(); });
}

AskedQuestion asked_in(const Json& json, const std::string& pointer, Faults& faults) {
    AskedQuestion asked{question_in({json, pointer, faults}), {}};
    if (json.contains("answers") && !is_list(json, "answers")) {
        faults.push_back({pointer + "/answers", "A list of answers is expected here."});
        return asked;
    }
    for (const Json& answer : json.value("answers", Json::array())) {
        asked.answers.push_back(
            received_in(answer, fmt::format("{}/answers/{}", pointer, asked.answers.size()), faults));
    }
    return asked;
}

}  // namespace

bool is_answer_id(std::string_view id) {
    return !id.empty() && id.size() <= answer_id_limit && std::ranges::all_of(id, [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
    });
}

std::string write_question(const Question& question) { return written(json_of(question)); }

std::string write_answer(const QuestionAnswer& answer) { return written(json_of(answer)); }

std::string write_record(const AnswerReceipt& receipt) {
    return written({{"survey", receipt.survey},
                    {"number", receipt.number},
                    {"id", receipt.id},
                    {"received_at", receipt.received_at}});
}

std::string write_questions(const SurveyQuestions& questions) {
    Json list = Json::array();
    for (const AskedQuestion& asked : questions.questions) {
        Json entry = json_of(asked.question);
        entry["answers"] = Json::array();
        for (const ReceivedAnswer& answer : asked.answers) {
            entry["answers"].push_back(json_of(answer));
        }
        list.push_back(std::move(entry));
    }
    return written({{"format", questions_format}, {"survey", questions.survey}, {"questions", std::move(list)}});
}

std::string write_entries(const QuestionEntries& entries) {
    Json list = Json::array();
    for (const QuestionEntry& entry : entries.entries) {
        list.push_back(entry.question ? Json{{"question", json_of(*entry.question)}}
                                      : Json{{"answer", json_of(entry.answer.value())}});
    }
    return written({{"entries", std::move(list)}, {"next", entries.next}, {"more", entries.more}});
}

Result<Question> read_question(std::string_view text) {
    const Json json = Json::parse(text, nullptr, false);
    if (!json.is_object()) {
        return not_questions({"", "This isn’t a question."});
    }
    Faults faults;
    auto question = question_in({json, "", faults});
    return faults.empty() ? Result<Question>(std::move(question)) : not_questions(faults.front());
}

Result<QuestionAnswer, std::vector<ProblemFault>> read_answer(std::string_view text) {
    const Json json = Json::parse(text, nullptr, false);
    if (!json.is_object()) {
        return Faults{{"", "This isn’t an answer: an object of JSON is expected."}};
    }
    Faults faults;
    auto answer = answer_in({json, "", faults}, faults);
    if (!faults.empty()) {
        return faults;
    }
    return answer;
}

Result<AnswerReceipt> read_answer_receipt(std::string_view text) {
    const Json json = Json::parse(text, nullptr, false);
    if (!json.is_object()) {
        return not_questions({"", "This isn’t a receipt."});
    }
    Faults faults;
    Members members(json, "", faults);
    AnswerReceipt receipt{members.some_text("survey", id_limit), members.whole("number", questions_limit),
                          members.some_text("id", answer_id_limit), members.moment("received_at")};
    return faults.empty() ? Result<AnswerReceipt>(std::move(receipt)) : not_questions(faults.front());
}

Result<SurveyQuestions> read_questions(std::string_view text) {
    const Json json = Json::parse(text, nullptr, false);
    if (!json.is_object() || json.value("format", Json()) != questions_format) {
        return not_questions({"/format", "These aren’t the questions that are expected here."});
    }
    if (!json.contains("survey") || !json["survey"].is_string() || !is_list(json, "questions")) {
        return not_questions({"/questions", "A survey and a list of questions are expected here."});
    }
    Faults faults;
    SurveyQuestions read{json["survey"].get<std::string>(), {}};
    for (const Json& entry : json["questions"]) {
        const auto pointer = fmt::format("/questions/{}", read.questions.size());
        read.questions.push_back(asked_in(entry, pointer, faults));
        const long long before = read.questions.size() < 2 ? 0 : read.questions.end()[-2].question.number;
        const auto& asked = read.questions.back();
        if (asked.question.number <= before || asked.question.survey != read.survey) {
            faults.push_back({pointer, "It is out of its order, or of another survey."});
        }
        if (!std::ranges::all_of(asked.answers, [&](const ReceivedAnswer& received) {
                return received.answer.survey == read.survey && received.answer.number == asked.question.number;
            })) {
            faults.push_back({pointer + "/answers", "An answer is to another question."});
        }
    }
    return faults.empty() ? Result<SurveyQuestions>(std::move(read)) : not_questions(faults.front());
}

Result<QuestionEntries> read_entries(std::string_view text) {
    const Json json = Json::parse(text, nullptr, false);
    if (!is_list(json, "entries")) {
        return not_questions({"/entries", "A list of what was asked and answered is expected here."});
    }
    Faults faults;
    Members members(json, "", faults);
    QuestionEntries read{{}, members.some_text("next", longest_text), false};
    members.check("more", members.has("more") && json["more"].is_boolean(), "True or false is expected here.");
    read.more = members.has("more") && json["more"].is_boolean() && json["more"].get<bool>();
    for (const Json& entry : json["entries"]) {
        const auto pointer = fmt::format("/entries/{}", read.entries.size());
        const auto is_there = [&entry](const char* key) { return entry.contains(key) && entry[key].is_object(); };
        if (is_there("question")) {
            read.entries.push_back({question_in({entry["question"], pointer + "/question", faults}), {}});
        } else if (is_there("answer")) {
            read.entries.push_back({{}, received_in(entry["answer"], pointer + "/answer", faults)});
        } else {
            read.entries.emplace_back();  // of a kind that a later version adds
        }
    }
    return faults.empty() ? Result<QuestionEntries>(std::move(read)) : not_questions(faults.front());
}

}  // namespace truehang::sync
