// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/problem.h"
#include "units/result.h"
#include "workroom/http/http_server.h"

#include <string>
#include <string_view>
#include <vector>

// The answers the receiver gives, with the headers that belong to each.

namespace truehang::workroom {

/// An admission that is refused with this answer.
[[nodiscard]] http::Admission refuse(http::Response response);

/// Whether a request’s body is of that media type, whatever its parameters.
[[nodiscard]] bool is_of_type(const http::RequestHead& head, std::string_view type);

/// Whether a proxy says that it speaks for another machine.
[[nodiscard]] bool came_through_proxy(const http::RequestHead& head);

[[nodiscard]] http::Response json_reply(int status, std::string json);
/// A page; its policy lets it load nothing but this site's style sheet, fonts and pictures, and run nothing.
[[nodiscard]] http::Response page_reply(int status, std::string html);
/// Lets a page run this site's script and hear of what comes in.
void listens(http::Response& page);
/// Server-sent events, written already.
[[nodiscard]] http::Response events_reply(std::string events);
/// Has a browser load the page again after two seconds: only for pages that nothing is typed on.
void looks_again(http::Response& page);
/// A file to keep under a name (letters, digits, dots); it may load nothing.
[[nodiscard]] http::Response file_reply(std::string_view type, std::string_view name, std::string body);
[[nodiscard]] http::Response problem_reply(const sync::Problem& problem);
[[nodiscard]] http::Response problem_reply(sync::ProblemKind kind, std::string detail,
                                           std::vector<sync::ProblemFault> faults = {});
/// 404, of an address that devices ask.
[[nodiscard]] http::Response not_there();
/// The problem an error of the archive is: 503, 507, 409, 410, else 500. What a person of the workroom needs to know,
/// and nothing about clients, goes to standard error.
[[nodiscard]] http::Response error_reply(const Error& error);

}  // namespace truehang::workroom
