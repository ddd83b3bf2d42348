// SPDX-License-Identifier: Apache-2.0
#include "workroom/people/door.h"

#include "workroom/people/people_shelf.h"
#include "workroom/people/sign_in_desk.h"
#include "workroom/site/devices_desk.h"
#include "workroom/site/replies.h"

#include <fmt/format.h>

#include <algorithm>

namespace truehang::workroom {

using http::RequestHead;
using http::Response;

namespace {

/// Whether a Host names this machine. A page of elsewhere whose name was made to lead here still has its own name in
/// Host, and mustn't see what only this machine may.
bool names_this_machine(std::string_view host) {
    const auto port = host.rfind(':');
    if (port != std::string_view::npos && host.find(']', port) == std::string_view::npos) {
        host = host.substr(0, port);
    }
    return host == "localhost" || host == "127.0.0.1" || host == "[::1]";
}

constexpr const char* show_something = "Show the token that pairing gave, or sign in.";

bool is_sent(const RequestHead& head) { return head.method != "GET" && head.method != "HEAD"; }

}  // namespace

bool sent_from_here(const RequestHead& head) {
    const auto origin = head.header("origin");
    const auto scheme = origin.find("://");
    return scheme != std::string_view::npos && origin.substr(scheme + 3) == head.host;
}

std::string_view cookie_of(const RequestHead& head, std::string_view name) {
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

std::string session_cookie_field(const RequestHead& head, std::string_view value, std::chrono::seconds life) {
    return fmt::format("{}={}; Path=/; HttpOnly; SameSite=Strict; Max-Age={}{}", session_cookie, value, life.count(),
                       head.secure ? "; Secure" : "");
}

bool Door::is_here(const RequestHead& head) const {
    return !sign_in_everywhere_ && head.from_this_machine && names_this_machine(head.host) && !came_through_proxy(head);
}

Result<TokenHolder> Door::device_of(const RequestHead& head) {
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

Result<Caller> Door::person_of(const RequestHead& head) {
    Caller caller;
    const auto any = PeopleShelf(archive_).any();
    if (!any) {
        return any.error();
    }
    caller.alone = !*any;
    caller.here = is_here(head);
    const auto cookie = cookie_of(head, session_cookie);
    if (caller.alone) {
        const auto in = caller.here || cookie.empty() ? Result<bool>(caller.here) : access_.signed_in(cookie);
        if (!in) {
            return in.error();
        }
        caller.kind = *in ? Caller::Kind::person : Caller::Kind::nobody;
        caller.role = Role::owner;
        return caller;
    }
    const auto in =
        cookie.empty() ? Result<std::optional<SignedIn>>(std::nullopt) : PersonSessions(archive_).of(cookie);
    if (!in) {
        return in.error();
    }
    if (*in) {
        caller.kind = Caller::Kind::person;
        caller.role = (*in)->person.role;
        caller.id = (*in)->person.id;
        caller.name = (*in)->person.name;
        caller.session = (*in)->session;
    }
    return caller;
}

Result<Caller> Door::caller_of(const RequestHead& head) {
    auto caller = person_of(head);
    if (!caller || caller->kind == Caller::Kind::person) {
        return caller;
    }
    const auto device = device_of(head);
    if (!device) {
        return device.error();
    }
    if (!device->device.empty()) {
        caller.value().kind = Caller::Kind::device;
        caller.value().device = *device;
    }
    return caller;
}

std::optional<Response> Door::why_not(const RequestHead& head, const Route& route, Caller& caller) {
    if (route.right == Right::open || route.right == Right::device) {
        return std::nullopt;
    }
    auto found = caller_of(head);
    if (!found) {
        return error_reply(found.error());
    }
    caller = std::move(found).value();
    const bool looks = route.right == Right::look && caller.kind == Caller::Kind::device;
    if (looks && !caller.device.revoked) {
        return std::nullopt;
    }
    if (caller.kind != Caller::Kind::person) {
        return route.page ? std::optional(sign_in_reply(401, {caller.alone, "", "", is_sent(head) ? "" : head.path}))
                          : why_not_a_device(caller.device, show_something);
    }
    if (!may(caller.role, route.right)) {
        return not_yours_reply(caller, route.right);
    }
    return !is_sent(head) || sent_from_here(head)
               ? std::nullopt
               : std::optional(problem_reply(sync::ProblemKind::malformed_request,
                                             "Forms are taken from the workroom’s own pages. Load the page again and "
                                             "send it from there."));
}

}  // namespace truehang::workroom
