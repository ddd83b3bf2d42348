// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/reception.h"

#include "document/document.h"
#include "protocol/digest.h"
#include "protocol/limits.h"
#include "workroom/archive/photo_intake.h"
#include "workroom/site/devices_desk.h"
#include "workroom/site/look_up.h"
#include "workroom/site/replies.h"
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

constexpr std::string_view session_cookie = "truehang-session";
constexpr std::uint64_t form_limit = 4096;
constexpr std::uint64_t rules_form_limit = 65536;

Admission take_at_most(std::uint64_t bytes) {
    Admission admission;
    admission.body_limit = bytes;
    return admission;
}

bool is_read(const RequestHead& head) { return head.method == "GET" || head.method == "HEAD"; }

Response wrong_method() { return problem_reply(ProblemKind::wrong_method, "That can’t be done with this path."); }

bool of_type(const RequestHead& head, std::string_view type) {
    const auto field = head.header("content-type");
    return field.substr(0, type.size()) == type &&
           (field.size() == type.size() || field[type.size()] == ';' || field[type.size()] == ' ');
}

/// Whether a Host names this machine. A page of elsewhere whose name was made to lead here still has its own name in
/// Host, and mustn't see what only this machine may.
bool names_this_machine(std::string_view host) {
    const auto port = host.rfind(':');
    if (port != std::string_view::npos && host.find(']', port) == std::string_view::npos) {
        host = host.substr(0, port);
    }
    return host == "localhost" || host == "127.0.0.1" || host == "[::1]";
}

/// Whether a form was sent by a page of this site, as its browser says. A page of elsewhere can send a form here, but
/// not under this site's name.
bool sent_from_here(const RequestHead& head) {
    const auto origin = head.header("origin");
    const auto scheme = origin.find("://");
    return scheme != std::string_view::npos && origin.substr(scheme + 3) == head.host;
}

std::string_view cookie(const RequestHead& head, std::string_view name) {
    auto rest = head.header("cookie");
    while (!rest.empty()) {
        const auto end = rest.find(';');
        auto pair = rest.substr(0, end);
        rest = end == std::string_view::npos ? std::string_view{} : rest.substr(end + 1);
        pair.remove_prefix(std::min(pair.find_first_not_of(' '), pair.size()));
        if (pair.substr(0, name.size()) == name && pair.size() > name.size() && pair[name.size()] == '=') {
            return pair.substr(name.size() + 1);
        }
    }
    return {};
}

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
    : archive_(archive), access_(access), options_(std::move(options)), bench_(archive), uploads_(archive) {}

bool Reception::end_planning(std::chrono::milliseconds time) { return bench_.end(time); }

Response Reception::refusal(int status, std::string_view text) {
    for (const auto kind : {ProblemKind::length_required, ProblemKind::too_large, ProblemKind::headers_too_large,
                            ProblemKind::not_understood}) {
        if (sync::status_of(kind) == status) {
            return problem_reply(kind, std::string(text));
        }
    }
    auto response = problem_reply(ProblemKind::malformed_request, std::string(text));
    response.status = status;
    return response;
}

Result<TokenHolder> Reception::device_of(const RequestHead& head) {
    static constexpr std::string_view scheme = "Bearer ";
    const auto field = head.header("authorization");
    if (field.substr(0, scheme.size()) != scheme) {
        return TokenHolder{};
    }
    const auto device = access_.device_of(field.substr(scheme.size()));
    if (!device) {
        return device.error();
    }
    return device->value_or(TokenHolder{});
}

Result<bool> Reception::signed_in(const RequestHead& head) {
    const auto value = cookie(head, session_cookie);
    return value.empty() ? Result<bool>(false) : access_.signed_in(value);
}

Result<bool> Reception::is_person(const RequestHead& head) {
    const bool here = !options_.sign_in_everywhere && head.from_this_machine && names_this_machine(head.host) &&
                      !came_through_proxy(head);
    return here ? Result<bool>(true) : signed_in(head);
}

std::optional<Response> Reception::why_not_look(const RequestHead& head) {
    const auto person = is_person(head);
    if (!person) {
        return error_reply(person.error());
    }
    return *person ? std::nullopt : why_not_a_device(device_of(head), "Show the token that pairing gave, or sign in.");
}

std::optional<Response> Reception::why_not_a_person(const RequestHead& head) {
    const auto person = is_person(head);
    if (!person) {
        return error_reply(person.error());
    }
    return *person ? std::nullopt : std::optional(page_reply(401, sign_in_page("")));
}

std::optional<Response> Reception::why_not_set(const RequestHead& head, std::string_view where_instead) {
    if (auto why_not = why_not_a_person(head)) {
        return why_not;
    }
    return sent_from_here(head)
               ? std::nullopt
               : std::optional(problem_reply(ProblemKind::malformed_request, std::string(where_instead)));
}

Admission Reception::admit(const RequestHead& head) {
    uploads_.sweep_due();
    if (const auto place = sync::read_path(head.path)) {
        return admit_place(*place, head);
    }
    if (head.method == "POST" && head.path == "/sign-in") {
        return take_at_most(form_limit);
    }
    if (head.method == "POST" && head.path == house_rules_path) {
        return take_at_most(rules_form_limit);
    }
    if (head.method == "POST" && is_devices_path(head.path)) {
        return take_at_most(form_limit);
    }
    if (const auto rolls = read_rolls_path(head.path); rolls && head.method == "POST") {
        return rolls->kind == RollsPlace::Kind::page ? take_at_most(rolls_form_limit) : refuse(wrong_method());
    }
    if (head.method == "POST" && read_steps_path(head.path)) {
        return take_at_most(steps_form_limit);
    }
    return is_read(head) ? take_at_most(0) : refuse(wrong_method());
}

Admission Reception::admit_place(const Place& place, const RequestHead& head) {
    using Kind = Place::Kind;
    if (place.kind == Kind::pair) {
        if (head.method != "POST") {
            return refuse(wrong_method());
        }
        return of_type(head, sync::json_type)
                   ? take_at_most(sync::pair_limit)
                   : refuse(problem_reply(ProblemKind::wrong_type, "Pairing is asked for in application/json."));
    }
    if (UploadDesk::takes(place, head)) {
        return uploads_.admit(place, head, device_of(head));
    }
    if (head.method == "PUT" && (place.kind == Kind::revision || place.kind == Kind::photo)) {
        return admit_put(place, head);
    }
    return is_read(head) ? take_at_most(0) : refuse(wrong_method());
}

Admission Reception::admit_put(const Place& place, const RequestHead& head) {
    if (auto why_not = why_not_a_device(device_of(head), unknown_device)) {
        return refuse(std::move(*why_not));
    }
    if (place.kind == Place::Kind::revision) {
        return of_type(head, sync::json_type)
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
    try {
        if (const auto place = sync::read_path(request.head.path)) {
            return answer_place(*place, std::move(request), respond);
        }
        if (const auto rolls = read_rolls_path(request.head.path)) {
            return answer_rolls(request, *rolls, respond);
        }
        if (const auto survey = read_steps_path(request.head.path)) {
            return respond(answer_steps(request, *survey));
        }
        if (is_devices_path(request.head.path)) {
            return respond(answer_devices(request));
        }
        if (request.head.method == "POST") {
            return respond(request.head.path == house_rules_path ? answer_rules_form(request)
                                                                 : answer_sign_in(request));
        }
        respond(answer_page(request));
    } catch (const std::exception& thrown) {
        respond(error_reply({ErrorCode::io, "request", thrown.what()}));
    }
}

void Reception::answer_place(const Place& place, Request request, const Respond& respond) {
    using Kind = Place::Kind;
    const auto& head = request.head;
    if (UploadDesk::takes(place, head)) {
        return uploads_.answer(place, request, device_of(head), respond);
    }
    switch (place.kind) {
        case Kind::pair:
            return respond(answer_pair(request));
        case Kind::health:
            return respond(json_reply(200, R"({"status": "ok"})"));
        case Kind::revision:
        case Kind::photo:
        case Kind::upload:
            if (head.method == "PUT") {
                return answer_put(place, std::move(request), respond);
            }
            break;
        case Kind::receipt:
        case Kind::figures:
        case Kind::rules:
        case Kind::changes:
        case Kind::marks:
            break;
    }
    if (auto why_not = why_not_look(head)) {
        return respond(std::move(*why_not));
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
    auto device = device_of(request.head);
    if (auto why_not = why_not_a_device(device, unknown_device)) {  // it may have been revoked since it was admitted
        return respond(std::move(*why_not));
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
                            HeadText(*survey)},
                           [this, respond, survey = place.survey](const Result<Kept<sync::SurveyReceipt>>& kept) {
                               if (kept && !kept->was_there) {
                                   bench_.changed(survey);
                               }
                               respond(kept ? json_reply(kept->was_there ? 200 : 201, sync::write_record(kept->receipt))
                                            : error_reply(kept.error()));
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

Response Reception::answer_rules_form(const Request& request) {
    auto why_not = why_not_set(request.head, "House rules are set on the workroom’s own page.");
    return why_not ? std::move(*why_not) : take_house_rules(archive_, request.body);
}

void Reception::answer_rolls(const Request& request, const RollsPlace& place, const Respond& respond) {
    using Kind = RollsPlace::Kind;
    const bool sent = request.head.method == "POST";
    if (sent) {
        if (auto why_not = why_not_set(request.head, "Rolls are written down on the workroom’s own page.")) {
            return respond(std::move(*why_not));
        }
    } else if (const auto why_not = why_not_look(request.head)) {
        const bool page = place.kind == Kind::page || place.kind == Kind::count;
        return respond(page && why_not->status == 401 ? page_reply(401, sign_in_page("")) : *why_not);
    }
    if (place.kind == Kind::plan) {
        return look_at_plan(bench_, place, respond);
    }
    auto answer = sent ? take_rolls(archive_, bench_, place, request.body)
                       : look_at_rolls(archive_, bench_, place, request.head.query);
    respond(answer ? std::move(*answer) : page_reply(404, missing_page()));
}

Response Reception::answer_devices(const Request& request) {
    const DevicesDesk desk{archive_, access_, reach_};
    if (!is_read(request.head)) {
        auto why_not = why_not_set(request.head, "Devices are seen to on the workroom’s own page.");
        return why_not ? std::move(*why_not) : take_devices_form(desk, request);
    }
    auto why_not = why_not_a_person(request.head);
    return why_not ? std::move(*why_not) : look_at_devices(desk, request.head.path);
}

Response Reception::answer_page(const Request& request) {
    const auto& path = request.head.path;
    if (auto open = open_file(path, options_.font_folder)) {
        return std::move(*open);
    }
    if (const auto why_not = why_not_look(request.head)) {
        return why_not->status == 401 ? page_reply(path == "/sign-in" ? 200 : 401, sign_in_page("")) : *why_not;
    }
    if (auto page = site_page(archive_, bench_, reach_, path, request.head.query)) {
        if (!page->type.empty()) {
            return file_reply(page->type, page->file_name, std::move(page->body));
        }
        auto response = page_reply(page->status, std::move(page->body));
        if (page->looks_again) {
            looks_again(response);
        }
        return response;
    }
    return page_reply(404, missing_page());
}

Response Reception::answer_sign_in(const Request& request) {
    static constexpr std::string_view field = "code=";
    const auto& body = request.body;
    const auto value =
        body.substr(0, field.size()) == field ? body.substr(field.size(), body.find('&') - field.size()) : "";
    std::string spaced(value);
    std::replace(spaced.begin(), spaced.end(), '+', ' ');
    const auto session = access_.sign_in(sync::percent_decode(spaced).value_or(""));
    if (!session) {
        const bool code = session.error().where == "/code";
        return page_reply(code ? 403 : 503,
                          sign_in_page(code ? session.error().text : "The workroom is busy. Try again."));
    }
    auto response = page_reply(303, sign_in_page(""));
    response.headers.emplace_back("Location", "/");
    response.headers.emplace_back(
        "Set-Cookie", fmt::format("{}={}; Path=/; HttpOnly; SameSite=Strict; Max-Age={}{}", session_cookie, *session,
                                  std::chrono::seconds(session_life).count(), request.head.secure ? "; Secure" : ""));
    return response;
}

}  // namespace truehang::workroom
