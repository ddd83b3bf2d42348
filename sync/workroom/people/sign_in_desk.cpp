// SPDX-License-Identifier: Apache-2.0
#include "workroom/people/sign_in_desk.h"

#include "units/folded.h"
#include "workroom/site/frame.h"
#include "workroom/site/replies.h"
#include "workroom/site/rules_page.h"

#include <arpa/inet.h>
#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace truehang::workroom {

using http::Request;
using http::RequestHead;
using http::Response;
using std::chrono::seconds;

namespace {

constexpr const char* busy = "The workroom is busy. Try again.";

/// Where a form leads on to: a page of this site, else the list.
std::string page_to(const std::string& to) {
    // Only what a percent-encoded path may hold (RFC 3986: printable US-ASCII): with a line's end it would go on as a
    // header of its own.
    const bool one_line = std::ranges::all_of(to, [](char c) { return c > ' ' && c < '\x7f'; });
    const auto* route = one_line ? route_of("GET", to) : nullptr;
    return route != nullptr && route->page && route->right != Right::open ? to : "/";
}

Response waits_reply(SignInShown shown, seconds wait) {
    shown.why = "There were too many wrong tries. " + wait_text(wait);
    auto response = sign_in_reply(429, shown);
    response.headers.emplace_back("Retry-After", std::to_string(wait.count()));
    return response;
}

/// The least role that may do it.
Role least_role(Right right) {
    for (const Role role : all_roles) {
        if (may(role, right)) {
            return role;
        }
    }
    return Role::owner;
}

}  // namespace

std::string wait_text(seconds wait) {
    return fmt::format("Wait {} second{}, then try again.", wait.count(), wait.count() == 1 ? "" : "s");
}

Response sign_in_reply(int status, const SignInShown& shown) {
    auto values = view();
    values.set("by_code", truth(shown.by_code));
    values.set("why", shown.why.empty() ? truth(false) : View{shown.why});
    values.set("name", shown.name);
    values.set("to", page_to(shown.to));
    return page_reply(status, framed({"Sign in", "page-sign-in", {}, false}, fill("sign_in", values)));
}

Response not_yours_reply(const Caller& caller, Right right) {
    auto values = view();
    const auto least = least_role(right);
    values.set("name", caller.name);
    values.set("role", std::string(role_says(caller.role)));
    values.set("least", least == Role::owner ? "an owner" : "somebody of the workroom or an owner");
    return page_reply(
        403, framed({"Not yours to do", "page-missing", {{"/", "Surveys"}}, false}, fill("not_yours", values)));
}

std::string place_of(const RequestHead& head) {
    auto address = std::string_view(head.peer);
    if (head.from_this_machine && came_through_proxy(head)) {
        const auto told = head.header("x-forwarded-for");
        const auto last = told.substr(told.rfind(',') + 1);  // the proxy's own word; what stands before is hearsay
        const auto start = std::min(last.find_first_not_of(' '), last.size());
        address = last.substr(start, last.find_last_not_of(' ') + 1 - start);
    }
    const std::string text(address.substr(0, INET6_ADDRSTRLEN));
    std::array<unsigned char, 16> bytes{};
    if (::inet_pton(AF_INET6, text.c_str(), bytes.data()) != 1) {
        return ::inet_pton(AF_INET, text.c_str(), bytes.data()) == 1 ? text : "elsewhere";
    }
    if (text.starts_with("::ffff:")) {
        return text.substr(7);  // IPv4 on a socket of IPv6 (RFC 4291, 2.5.5.2)
    }
    std::string network;
    for (std::size_t i = 0; i < 8; ++i) {
        network += fmt::format("{:02x}", bytes.at(i));
    }
    return network;
}

Response signed_in_reply(Archive& archive, const RequestHead& head, const Proven& person, const std::string& before,
                         const std::string& to) {
    PersonSessions sessions(archive);
    const auto session = sessions.begin(person, head.header("user-agent"));
    if (!session) {
        return session.error().code == ErrorCode::missing
                   ? sign_in_reply(403, {false, session.error().text, person.name, to})
                   : error_reply(session.error());
    }
    if (!before.empty()) {
        if (const auto ended = sessions.end(person.id, before); !ended) {
            return error_reply(ended.error());
        }
    }
    auto response = page_reply(303, "");
    response.headers.emplace_back("Location", page_to(to));
    response.headers.emplace_back("Set-Cookie", session_cookie_field(head, *session, browser_known));
    return response;
}

Response SignInDesk::answer(const Request& request) {
    const auto any = PeopleShelf(archive_).any();
    if (!any) {
        return error_reply(any.error());
    }
    if (request.head.method != "POST") {
        return sign_in_reply(200, {!*any, "", "", ""});
    }
    auto fields = read_form(request.body);
    if (!*any) {
        return take_code(request, fields["code"]);
    }
    return take_password(request, {false, "", fields["name"], fields["to"]}, fields["password"]);
}

Response SignInDesk::take_code(const Request& request, const std::string& code) {
    const auto session = access_.sign_in(code);
    if (!session) {
        const bool wrong = session.error().where == "/code";
        return sign_in_reply(wrong ? 403 : 503, {true, wrong ? session.error().text : busy, "", ""});
    }
    auto response = page_reply(303, "");
    response.headers.emplace_back("Location", "/");
    response.headers.emplace_back("Set-Cookie", session_cookie_field(request.head, *session, session_life));
    return response;
}

Response SignInDesk::take_password(const Request& request, const SignInShown& typed, const std::string& password) {
    const auto refused = [&](int status, std::string why) {
        auto shown = typed;
        shown.why = std::move(why);
        return sign_in_reply(status, shown);
    };
    if (!sent_from_here(request.head)) {
        return refused(403, "This form came from elsewhere. Sign in here.");
    }
    if (typed.name.empty() || password.empty()) {
        return refused(403, "Type your name and your password.");
    }
    const auto name = person_name(typed.name).value_or("");
    const auto known = PersonSessions(archive_).known(cookie_of(request.head, session_cookie), name);
    if (!known) {
        return error_reply(known.error());
    }
    const bool here = door_.is_here(request.head);
    const SignInTries::Try one{known->empty() ? (here ? "here" : place_of(request.head)) : "browser " + *known,
                               folded(name), here || !known->empty()};
    if (const auto wait = tries_.begin(one); wait > seconds(0)) {
        return waits_reply(typed, wait);
    }
    const auto person = PeopleShelf(archive_).with_password(name, password);
    if (!person) {
        return error_reply(person.error());
    }
    if (!*person) {
        return refused(403, "This name and this password don’t belong together.");
    }
    tries_.succeeded(one);
    return signed_in_reply(archive_, request.head, **person, *known, typed.to);
}

}  // namespace truehang::workroom
