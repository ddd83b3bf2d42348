// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/reception.h"

#include "document/document.h"
#include "protocol/digest.h"
#include "protocol/limits.h"
#include "workroom/archive/photo_intake.h"
#include "workroom/people/people_desk.h"
#include "workroom/site/devices_desk.h"
#include "workroom/site/look_up.h"
#include "workroom/site/questions_desk.h"
#include "workroom/site/replies.h"
#include "workroom/site/revision_refused.h"
#include "workroom/site/rolls_desk.h"
#include "workroom/site/rules_desk.h"
#include "workroom/site/site_pages.h"
#include "workroom/site/steps_desk.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace truehang::workroom {

using http::Admission;
using http::Request;
using http::RequestHead;
using http::Response;
using sync::Place;
using sync::ProblemKind;

namespace {

Admission take_at_most(std::uint64_t bytes) {
    Admission admission;
    admission.body_limit = bytes;
    return admission;
}

bool is_read(const RequestHead& head) { return head.method == "GET" || head.method == "HEAD"; }

Response wrong_method() { return problem_reply(ProblemKind::wrong_method, "That can’t be done with this path."); }

std::vector<sync::ProblemFault> faults_of(const Faults& faults) {
    std::vector<sync::ProblemFault> listed;
    for (std::size_t i = 0; i < faults.size() && i < 200; ++i) {
        listed.push_back({faults[i].pointer, faults[i].text});
    }
    return listed;
}

/// What of a document doesn't fit the path it was sent to.
Faults path_faults(const Survey& survey, const Place& place) {
    Faults faults;
    if (survey.id != place.survey) {
        faults.push_back({"/id", "The document’s id isn’t the one it was sent under."});
    }
    if (survey.revision && *survey.revision != place.revision) {
        faults.push_back({"/revision", "The document’s revision isn’t the one it was sent under."});
    }
    return faults;
}

/// Why the bytes aren't the ones the Content-Digest tells of, or nothing.
std::optional<Response> digest_trouble(const RequestHead& head, const sync::Sha256& digest) {
    const auto field = head.header("content-digest");
    if (field.empty()) {
        return std::nullopt;
    }
    const auto told = sync::read_digest_field(field);
    if (!told) {
        return problem_reply(ProblemKind::malformed_request, told.error().text);
    }
    if (*told && **told != digest) {
        return problem_reply(ProblemKind::digest_mismatch,
                             "The bytes changed on the way. Nothing was stored; send again.");
    }
    return std::nullopt;
}

}  // namespace

Reception::Reception(Archive& archive, Access& access, ReceptionOptions options)
    : archive_(archive),
      access_(access),
      options_(std::move(options)),
      door_(archive, access, options_.sign_in_everywhere),
      sign_in_(archive, access, door_),
      arrivals_(archive),
      bench_(archive),
      uploads_(archive) {}

void Reception::ending() { arrivals_.let_go(); }

bool Reception::end(std::chrono::milliseconds time) {
    arrivals_.end();
    return bench_.end(time);
}

Response Reception::refusal(int status, std::string_view text) {
    for (const auto kind : {ProblemKind::length_required, ProblemKind::too_large, ProblemKind::headers_too_large,
                            ProblemKind::not_understood, ProblemKind::internal}) {
        if (sync::status_of(kind) == status) {
            return problem_reply(kind, std::string(text));
        }
    }
    auto response = problem_reply(ProblemKind::malformed_request, std::string(text));
    response.status = status;
    return response;
}

Admission Reception::admit(const RequestHead& head) {
    uploads_.sweep_due();
    const auto* route = route_of(head.method, head.path);
    if (route == nullptr) {
        return is_read(head) && head.path != sync::pair_path ? take_at_most(0) : refuse(wrong_method());
    }
    if (route->desk == Desk::protocol) {
        const auto place = sync::read_path(head.path);
        return place ? admit_place(*place, head) : (is_read(head) ? take_at_most(0) : refuse(not_there()));
    }
    if (!is_read(head)) {
        Caller caller;
        if (auto why_not = door_.why_not(head, *route, caller)) {
            return refuse(std::move(*why_not));
        }
    }
    return take_at_most(route->limit);
}

Admission Reception::admit_place(const Place& place, const RequestHead& head) {
    using Kind = Place::Kind;
    if (place.kind == Kind::pair) {
        if (head.method != "POST") {
            return refuse(wrong_method());
        }
        return is_of_type(head, sync::json_type)
                   ? take_at_most(sync::pair_limit)
                   : refuse(problem_reply(ProblemKind::wrong_type, "Pairing is asked for in application/json."));
    }
    if (UploadDesk::takes(place, head)) {
        return uploads_.admit(place, head, door_.device_of(head));
    }
    if (head.method == "PUT" && (place.kind == Kind::revision || place.kind == Kind::photo)) {
        return admit_put(place, head);
    }
    if (head.method == "PUT" && place.kind == Kind::answer) {
        return admit_answer(door_.device_of(head), head);
    }
    return is_read(head) ? take_at_most(0) : refuse(wrong_method());
}

Admission Reception::admit_put(const Place& place, const RequestHead& head) {
    if (auto why_not = why_not_a_device(door_.device_of(head), unknown_device)) {
        return refuse(std::move(*why_not));
    }
    if (place.kind == Place::Kind::revision) {
        return is_of_type(head, sync::json_type)
                   ? take_at_most(sync::document_limit)
                   : refuse(problem_reply(ProblemKind::wrong_type, "A survey is sent as application/json."));
    }
    auto admission = take_at_most(sync::photo_limit);
    admission.length_required = true;
    // Over-long photos are refused before a file is made for them.
    if (head.content_length && *head.content_length <= sync::photo_limit) {
        const auto name = sync::hex(sync::sha256(random_bytes(16)));
        admission.sink = std::make_shared<PhotoIntake>(archive_.incoming_folder(), name);
    }
    return admission;
}

void Reception::answer(Request request, Respond answered) {
    const Respond respond = [this, answered = std::move(answered)](Response response) {
        answered(std::move(response));
        access_.write_last_seen();
    };
    static constexpr Route missing{"GET", "", Right::look, Desk::page, true};
    try {
        const auto* found = route_of(request.head.method, request.head.path);
        const auto& route = found != nullptr ? *found : missing;
        Caller caller;
        if (auto why_not = door_.why_not(request.head, route, caller)) {
            return respond(std::move(*why_not));
        }
        if (found == nullptr) {
            return respond(page_reply(404, missing_page()));
        }
        answer_route(route, caller, std::move(request), respond);
    } catch (const std::exception& thrown) {
        respond(error_reply({ErrorCode::io, "request", thrown.what()}));
    }
}

void Reception::answer_route(const Route& route, const Caller& caller, Request request, const Respond& respond) {
    switch (route.desk) {
        case Desk::protocol: {
            const auto place = sync::read_path(request.head.path);
            return place ? answer_place(*place, std::move(request), respond) : respond(page_reply(404, missing_page()));
        }
        case Desk::arrivals:
            return arrivals_.answer(request, respond);
        case Desk::rolls:
            return answer_rolls(request, caller, respond);
        case Desk::steps:
            return respond(answer_steps(request, caller));
        case Desk::questions:
            return respond(answer_questions(archive_, request, caller));
        case Desk::devices:
            return respond(answer_devices(request, caller));
        case Desk::rules:
            return respond(take_house_rules(archive_, request.body));
        case Desk::sign_in:
            return respond(sign_in_.answer(request));
        case Desk::people:
            return respond(answer_people(archive_, caller, request));
        case Desk::own:
            return respond(answer_own(archive_, sign_in_.tries(), caller, request));
        case Desk::page:
            return respond(answer_page(request, caller));
    }
}

void Reception::answer_place(const Place& place, Request request, const Respond& respond) {
    using Kind = Place::Kind;
    const auto& head = request.head;
    if (UploadDesk::takes(place, head)) {
        return uploads_.answer(place, request, door_.device_of(head), respond);
    }
    if (place.kind == Kind::pair) {
        return respond(answer_pair(request));
    }
    if (place.kind == Kind::health) {
        return respond(json_reply(200, R"({"status": "ok"})"));
    }
    if (head.method == "PUT") {
        return answer_put(place, std::move(request), respond);
    }
    respond(look_up(archive_, place, head));
}

Response Reception::answer_pair(const Request& request) {
    const auto asked = sync::read_pair_request(request.body);
    if (!asked || asked->device_name.empty()) {
        return problem_reply(ProblemKind::malformed_request,
                             "A code and a device_name of 1 to 100 bytes are asked for.");
    }
    const auto token = access_.pair(asked->code, asked->device_name);
    if (token) {
        return json_reply(200, sync::write_record(sync::PairAnswer{*token, options_.workroom_name}));
    }
    if (token.error().code == ErrorCode::unknown_word) {
        return problem_reply(ProblemKind::wrong_code, token.error().text);
    }
    return token.error().where == "/code" ? problem_reply(ProblemKind::too_many_tries, token.error().text)
                                          : error_reply(token.error());
}

void Reception::answer_put(const Place& place, Request request, const Respond& respond) {
    auto device = door_.device_of(request.head);
    if (auto why_not = why_not_a_device(device, unknown_device)) {  // it may have been revoked since it was admitted
        return respond(std::move(*why_not));
    }
    if (place.kind == Place::Kind::answer) {
        return take_answer(archive_, place, request.body, std::move(device).value().device, respond);
    }
    if (place.kind == Place::Kind::photo) {
        return answer_photo_put(place, std::move(request), std::move(device).value().device, respond);
    }
    answer_revision(place, std::move(request), std::move(device).value().device, respond);
}

void Reception::answer_revision(const Place& place, Request request, std::string device, const Respond& respond) {
    const auto digest = sync::sha256(request.body);
    if (request.head.header("content-digest").empty()) {
        return respond(problem_reply(ProblemKind::malformed_request, "A survey is sent with its Content-Digest."));
    }
    if (auto trouble = digest_trouble(request.head, digest)) {
        return respond(std::move(*trouble));
    }
    const auto survey = read_survey(request.body);
    const auto faults = survey ? path_faults(*survey, place) : survey.error();
    if (!faults.empty()) {
        return respond(problem_reply(ProblemKind::malformed_document, "The survey has faults. Nothing was stored.",
                                     faults_of(faults)));
    }
    archive_.keep_revision({place.survey, place.revision, std::move(request.body), sync::hex(digest), std::move(device),
                            HeadText(*survey), survey->parents},
                           [this, respond, survey = place.survey,
                            parents = survey->parents](const Result<Kept<sync::SurveyReceipt>>& kept) {
                               if (kept && !kept->was_there) {
                                   bench_.changed(survey);
                               }
                               respond(kept ? json_reply(kept->was_there ? 200 : 201, sync::write_record(kept->receipt))
                                            : revision_refused(archive_, survey, parents, kept.error()));
                           });
}

void Reception::answer_photo_put(const Place& place, Request request, std::string device, const Respond& respond) {
    auto intake = std::dynamic_pointer_cast<PhotoIntake>(std::move(request.sink));
    auto refusal = put_photo(place, request, intake.get());
    const auto bytes = intake ? intake->bytes() : 0;
    intake.reset();  // what wasn't put is gone from the disk before the answer says so
    if (refusal) {
        return respond(std::move(*refusal));
    }
    archive_.keep_photo(place.sha256, bytes, std::move(device),
                        [respond](const Result<Kept<sync::PhotoReceipt>>& kept) {
                            respond(kept ? json_reply(kept->was_there ? 200 : 201, sync::write_record(kept->receipt))
                                         : error_reply(kept.error()));
                        });
}

std::optional<Response> Reception::put_photo(const Place& place, const Request& request, PhotoIntake* intake) const {
    if (intake == nullptr || request.sink_failed || intake->fault()) {
        return error_reply(intake != nullptr && intake->fault()
                               ? *intake->fault()
                               : Error{ErrorCode::io, "photo", "It couldn’t be taken."});
    }
    const auto digest = intake->digest();
    if (auto trouble = digest_trouble(request.head, digest)) {
        return trouble;
    }
    if (sync::hex(digest) != place.sha256) {
        return problem_reply(ProblemKind::digest_mismatch,
                             "The photo’s bytes have another digest than its path. Nothing was stored.");
    }
    if (const auto put = intake->put(archive_.photo_file(place.sha256)); !put) {
        return error_reply(put.error());
    }
    return std::nullopt;
}

void Reception::answer_rolls(const Request& request, const Caller& caller, const Respond& respond) {
    const auto place = read_rolls_path(request.head.path);
    if (!place) {
        return respond(page_reply(404, missing_page()));
    }
    if (place->kind == RollsPlace::Kind::plan) {
        return look_at_plan(bench_, *place, respond);
    }
    auto answer = is_read(request.head)
                      ? look_at_rolls(archive_, bench_, *place, request.head.query, caller.may_do(Right::roll))
                      : take_rolls(archive_, bench_, *place, request.body);
    respond(answer ? std::move(*answer) : page_reply(404, missing_page()));
}

Response Reception::answer_steps(const Request& request, const Caller& caller) {
    const auto survey = read_steps_path(request.head.path);
    auto answer = !survey                 ? std::optional<Response>()
                  : is_read(request.head) ? look_at_steps(archive_, *survey, request.head.query, caller)
                                          : take_steps(archive_, *survey, request.body, caller);
    return answer ? std::move(*answer) : page_reply(404, missing_page());
}

Response Reception::answer_devices(const Request& request, const Caller& caller) {
    const DevicesDesk desk{archive_, access_, reach_};
    return is_read(request.head) ? look_at_devices(desk, caller) : take_devices_form(desk, request);
}

Response Reception::answer_page(const Request& request, const Caller& caller) {
    const auto& path = request.head.path;
    if (auto open = open_file(path, options_.font_folder)) {
        return std::move(*open);
    }
    if (auto page = site_page({archive_, bench_, reach_, caller}, path, request.head.query)) {
        if (!page->type.empty()) {
            return file_reply(page->type, page->file_name, std::move(page->body));
        }
        auto response = page_reply(page->status, std::move(page->body));
        if (page->looks_again) {
            looks_again(response);
        }
        if (page->listens) {
            listens(response);
        }
        return response;
    }
    return page_reply(404, missing_page());
}

}  // namespace truehang::workroom
