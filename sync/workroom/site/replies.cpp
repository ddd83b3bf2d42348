// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/replies.h"

#include "protocol/limits.h"
#include "workroom/archive/erasure.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdio>

namespace truehang::workroom {

using sync::ProblemKind;

namespace {

constexpr std::string_view page_policy =
    "default-src 'none'; style-src 'self'; img-src 'self'; font-src 'self'; form-action 'self'; base-uri 'none'; "
    "frame-ancestors 'none'";

http::Response reply(int status, std::string_view type, std::string body) {
    http::Response response;
    response.status = status;
    response.headers = {{"Content-Type", std::string(type)},
                        {"Cache-Control", "no-store"},
                        {"X-Content-Type-Options", "nosniff"},
                        {"Referrer-Policy", "same-origin"}};
    response.body = std::move(body);
    return response;
}

}  // namespace

http::Admission refuse(http::Response response) {
    http::Admission admission;
    admission.refusal = std::move(response);
    return admission;
}

bool is_of_type(const http::RequestHead& head, std::string_view type) {
    const auto field = head.header("content-type");
    return field.substr(0, type.size()) == type &&
           (field.size() == type.size() || field[type.size()] == ';' || field[type.size()] == ' ');
}

bool came_through_proxy(const http::RequestHead& head) {
    static constexpr std::array<std::string_view, 4> signs{"forwarded", "x-forwarded-for", "x-real-ip", "via"};
    return std::any_of(signs.begin(), signs.end(), [&](auto sign) { return !head.header(sign).empty(); });
}

http::Response json_reply(int status, std::string json) { return reply(status, sync::json_type, std::move(json)); }

http::Response page_reply(int status, std::string html) {
    auto response = reply(status, "text/html; charset=utf-8", std::move(html));
    response.headers.emplace_back("Content-Security-Policy", page_policy);
    return response;
}

void listens(http::Response& page) {
    for (auto& [name, value] : page.headers) {
        value += name == "Content-Security-Policy" ? "; script-src 'self'; connect-src 'self'" : "";
    }
}

http::Response events_reply(std::string events) { return reply(200, "text/event-stream", std::move(events)); }

void looks_again(http::Response& page) { page.headers.emplace_back("Refresh", "2"); }

http::Response file_reply(std::string_view type, std::string_view name, std::string body) {
    auto response = reply(200, type, std::move(body));
    response.headers.emplace_back("Content-Security-Policy", "default-src 'none'");
    response.headers.emplace_back("Content-Disposition", fmt::format("attachment; filename=\"{}\"", name));
    return response;
}

http::Response problem_reply(ProblemKind kind, std::string detail, std::vector<sync::ProblemFault> faults) {
    return problem_reply({kind, std::move(detail), std::move(faults)});
}

http::Response problem_reply(const sync::Problem& problem) {
    const auto kind = problem.kind;
    auto response = reply(sync::status_of(kind), sync::problem_type, sync::write_problem(problem));
    if (kind == ProblemKind::unauthorised) {
        response.headers.emplace_back("WWW-Authenticate", "Bearer realm=\"truehang\"");
    }
    if (kind == ProblemKind::busy) {
        response.headers.emplace_back("Retry-After", "5");
    }
    if (kind == ProblemKind::too_many_tries) {
        response.headers.emplace_back("Retry-After", "60");
    }
    return response;
}

http::Response not_there() { return problem_reply(ProblemKind::not_there, "There is nothing here by that name."); }

http::Response error_reply(const Error& error) {
    if (is_erased_error(error)) {
        return problem_reply(ProblemKind::erased, error.text);
    }
    switch (error.code) {
        case ErrorCode::conflict:
            return problem_reply(ProblemKind::conflict, error.text);
        case ErrorCode::busy:
            return problem_reply(ProblemKind::busy, "The workroom is busy. It will be taken later.");
        case ErrorCode::full:
            fmt::print(stderr, "truehang-workroom: {} {}\n", error.where, error.text);
            return problem_reply(ProblemKind::disk_full,
                                 "The workroom’s disk is full. It will be taken when there is room.");
        default:
            fmt::print(stderr, "truehang-workroom: {} {}\n", error.where, error.text);
            return problem_reply(ProblemKind::internal,
                                 "The workroom couldn’t keep or read this. Look at its own messages.");
    }
}

}  // namespace truehang::workroom
