// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/questions_desk.h"

#include "document/document.h"
#include "protocol/digest.h"
#include "protocol/limits.h"
#include "protocol/marks.h"
#include "units/utf8.h"
#include "workroom/archive/changes.h"
#include "workroom/archive/question_shelf.h"
#include "workroom/people/people_shelf.h"
#include "workroom/site/devices_desk.h"
#include "workroom/site/look_up.h"
#include "workroom/site/questions_page.h"
#include "workroom/site/replies.h"
#include "workroom/site/site_pages.h"
#include "workroom/site/typed.h"

#include <fmt/format.h>

#include <utility>

namespace truehang::workroom {

using http::Response;
using sync::ProblemKind;

namespace {

/// A survey’s newest revision with what was asked about it.
struct Asked {
    Survey survey;
    long long newest = 0;
    std::vector<sync::AskedQuestion> questions;
};

Result<std::optional<Asked>> lay_out(Archive& archive, const std::string& id) {
    const auto newest = archive.newest(id);
    auto questions = QuestionShelf(archive).questions(id);
    if (!newest || !questions) {
        return newest ? questions.error() : newest.error();
    }
    if (!*newest) {
        return std::optional<Asked>();
    }
    auto survey = read_survey((*newest)->bytes);
    if (!survey) {
        return Error{ErrorCode::damaged, "revision", "A stored document can’t be read any more."};
    }
    return std::optional(Asked{std::move(survey).value(), (*newest)->receipt.revision, std::move(questions).value()});
}

/// Who asks: the one who is signed in, else whoever was typed.
QuestionsPage page_of(const Caller& caller, const Asked& asked, std::string said, const std::string& typed) {
    QuestionsPage page;
    page.said = std::move(said);
    page.by_signed_in = !caller.name.empty();
    page.by = page.by_signed_in ? caller.name : typed;
    page.may_ask = caller.may_do(Right::ask);
    page.newest = asked.newest;
    return page;
}

/// Without words and without a name.
sync::Question question_about(const Asked& asked, const AskedAbout& about, long long revision) {
    sync::Question question;
    question.survey = asked.survey.id;
    question.room = about.room;
    question.window = about.window;
    question.station = about.station;
    question.revision = revision;
    return question;
}

Response ask(Archive& archive, const Asked& asked, FormFields& fields, const Caller& caller) {
    const auto about = read_asked_about(fields["about"]);
    const auto typed = caller.name.empty() ? fields["by"] : "";
    const auto by = person_name(caller.name.empty() ? typed : caller.name);
    auto words = typed_words(fields["words"], sync::words_limit);
    const auto refuse = [&](std::string said) {
        auto page = page_of(caller, asked, std::move(said), is_utf8(typed) ? typed : "");
        page.words = is_utf8(fields["words"]) ? fields["words"] : "";
        page.about = about.value_or(AskedAbout{});
        return page_reply(422, questions_page(asked.survey, asked.questions, page));
    };
    if (!is_utf8(fields["words"]) || !is_utf8(typed)) {
        return refuse(fmt::format("Nothing was asked: {}", not_text));
    }
    if (!words) {
        return refuse(
            fmt::format("Nothing was asked: write what you ask, in at most {} letters.", sync::words_limit / 2));
    }
    if (!by) {
        return refuse(fmt::format("Nothing was asked: say who asks, in at most {} letters.", sync::name_limit));
    }
    if (!about || !can_be_asked(asked.survey, *about)) {
        return refuse("Nothing was asked: choose a window or a reading of the newest revision.");
    }
    auto question = question_about(asked, *about, typed_number(fields["revision"]));
    question.words = std::move(*words);
    question.by = *by;
    const auto kept = QuestionShelf(archive).ask(std::move(question));
    if (!kept) {
        const bool said = kept.error().code == ErrorCode::out_of_range || kept.error().where == "revision";
        return said ? refuse("Nothing was asked. " + kept.error().text) : error_reply(kept.error());
    }
    auto response = page_reply(303, "");
    response.headers.emplace_back("Location",
                                  fmt::format("{}{}#question-{}", ask_path(asked.survey.id),
                                              typed.empty() ? "" : "?by=" + sync::percent_encode(*by), kept->number));
    return response;
}

/// What of an answer doesn’t fit the path it was sent to.
std::vector<sync::ProblemFault> path_faults(const sync::QuestionAnswer& answer, const sync::Place& place) {
    std::vector<sync::ProblemFault> faults;
    if (answer.survey != place.survey) {
        faults.push_back({"/survey", "It is another survey than the one it was sent to."});
    }
    if (answer.number != place.revision) {
        faults.push_back({"/number", "It is another question than the one it was sent to."});
    }
    if (answer.id != place.answer) {
        faults.push_back({"/id", "It is another id than the one it was sent under."});
    }
    return faults;
}

Response with_tag(Response response, const http::RequestHead& head) {
    const auto tag = '"' + sync::hex(sync::sha256(response.body)) + '"';
    if (head.header("if-none-match").find(tag) != std::string_view::npos) {
        response.status = 304;
        response.body.clear();
    }
    response.headers.emplace_back("ETag", tag);
    return response;
}

Response all_questions(Archive& archive, const http::RequestHead& head) {
    auto asked = read_form(head.query);
    const auto limit = asked_limit(head.query);
    if (!limit) {
        return problem_reply(ProblemKind::malformed_request, "limit is a whole number from 1 up.");
    }
    const auto entries = question_entries_after(archive, asked["after"], *limit);
    if (!entries && entries.error().code == ErrorCode::missing) {
        return problem_reply(ProblemKind::unknown_cursor, entries.error().text);
    }
    return entries ? json_reply(200, sync::write_entries(*entries)) : error_reply(entries.error());
}

}  // namespace

Response answer_questions(Archive& archive, const http::Request& request, const Caller& caller) {
    const auto survey = survey_of_leaf(request.head.path, "/ask");
    const auto asked = survey ? lay_out(archive, *survey) : Result<std::optional<Asked>>(std::optional<Asked>());
    if (!asked) {
        return error_reply(asked.error());
    }
    if (!*asked) {
        return page_reply(404, missing_page());
    }
    if (request.head.method == "POST") {
        auto fields = read_form(request.body);
        return ask(archive, **asked, fields, caller);
    }
    auto fields = read_form(request.head.query);
    auto page = page_of(caller, **asked, "", person_name(fields["by"]).value_or(""));
    page.about = read_asked_about(fields["about"]).value_or(AskedAbout{});
    return page_reply(200, questions_page((*asked)->survey, (*asked)->questions, page));
}

http::Admission admit_answer(const Result<TokenHolder>& device, const http::RequestHead& head) {
    if (auto why_not = why_not_a_device(device, unknown_device)) {
        return refuse(std::move(*why_not));
    }
    if (!is_of_type(head, sync::json_type)) {
        return refuse(problem_reply(ProblemKind::wrong_type, "An answer is sent as application/json."));
    }
    http::Admission admission;
    admission.body_limit = sync::answer_body_limit;
    return admission;
}

void take_answer(Archive& archive, const sync::Place& place, std::string_view body, std::string device,
                 const http::Site::Respond& respond) {
    auto answer = sync::read_answer(body);
    auto faults = answer ? path_faults(*answer, place) : answer.error();
    if (!faults.empty()) {
        return respond(problem_reply(ProblemKind::malformed_document, "The answer has faults. Nothing was stored.",
                                     std::move(faults)));
    }
    QuestionShelf(archive).answer(
        std::move(answer).value(), std::move(device), [respond](const Result<Kept<sync::AnswerReceipt>>& kept) {
            if (!kept && kept.error().where == "question") {
                return respond(problem_reply(ProblemKind::not_there, kept.error().text));
            }
            respond(kept ? json_reply(kept->was_there ? 200 : 201, sync::write_record(kept->receipt))
                         : error_reply(kept.error()));
        });
}

Response questions_reply(Archive& archive, const sync::Place& place, const http::RequestHead& head) {
    if (place.kind == sync::Place::Kind::all_questions) {
        return all_questions(archive, head);
    }
    const auto receipts = archive.receipts(place.survey);
    auto questions = QuestionShelf(archive).questions(place.survey);
    if (!receipts || !questions) {
        return error_reply(receipts ? questions.error() : receipts.error());
    }
    if (receipts->empty()) {
        return not_there();
    }
    return with_tag(json_reply(200, sync::write_questions({place.survey, std::move(questions).value()})), head);
}

}  // namespace truehang::workroom
