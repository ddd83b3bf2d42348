// SPDX-License-Identifier: Apache-2.0
#include "workroom/people/people_desk.h"

#include "units/folded.h"
#include "workroom/people/people_pages.h"
#include "workroom/people/sign_in_desk.h"
#include "workroom/site/replies.h"
#include "workroom/site/rules_page.h"
#include "workroom/site/site_pages.h"

#include <algorithm>
#include <utility>

namespace truehang::workroom {

using http::Request;
using http::Response;

namespace {

constexpr const char* not_the_same = "The two passwords aren’t the same. Type it twice.";

Response led_to(const std::string& path) {
    auto response = page_reply(303, "");
    response.headers.emplace_back("Location", path);
    return response;
}

/// Whether an error is about what a person typed, and is told them on the page.
bool is_about_typed(const Error& error) {
    return error.code == ErrorCode::out_of_range || error.code == ErrorCode::conflict;
}

Response people_reply(Archive& archive, int status, PeopleShown shown) {
    auto people = PeopleShelf(archive).all();
    if (!people) {
        return error_reply(people.error());
    }
    shown.people = std::move(people).value();
    return page_reply(status, people_page(shown));
}

Response person_reply(Archive& archive, const Caller& caller, const Person& person, int status, const Said& said) {
    const auto sessions = PersonSessions(archive).all(person.id);
    return sessions ? page_reply(status, person_page(person, *sessions, caller, said)) : error_reply(sessions.error());
}

Response own_reply(Archive& archive, const Caller& caller, int status, const Said& said) {
    const auto sessions = PersonSessions(archive).all(caller.id);
    return sessions ? page_reply(status, own_page(caller, *sessions, said)) : error_reply(sessions.error());
}

/// Writes somebody down; the first one is signed in with it.
Response add(Archive& archive, const Caller& caller, const Request& request) {
    auto fields = read_form(request.body);
    const auto role = caller.alone ? Role::owner : role_of(fields["role"]).value_or(Role::surveyor);
    const auto refused = [&](std::string why) {
        return people_reply(archive, 422, {{}, {std::move(why), ""}, fields["name"], role});
    };
    if (caller.alone && !caller.here) {
        return page_reply(403, missing_page());
    }
    if (fields["password"] != fields["again"]) {
        return refused(not_the_same);
    }
    const auto added = PeopleShelf(archive).add(fields["name"], role, fields["password"], caller.alone);
    if (!added) {
        return is_about_typed(added.error()) ? refused(added.error().text) : error_reply(added.error());
    }
    return caller.alone ? signed_in_reply(archive, request.head, *added, "", "/people") : led_to("/people");
}

/// What an owner asks of one person: `role`, `password`, `sessions` or `out`.
Response see_to(Archive& archive, const Caller& caller, const Person& person, std::string_view what,
                const Request& request) {
    auto fields = read_form(request.body);
    PeopleShelf shelf(archive);
    const auto refused = [&](int status, std::string why) {
        return person_reply(archive, caller, person, status, {std::move(why), ""});
    };
    const auto outcome = [&](const Result<Done>& done, const std::string& to) {
        if (done) {
            return led_to(to);
        }
        return is_about_typed(done.error()) ? refused(422, done.error().text) : error_reply(done.error());
    };
    const auto back = person_path(person.id);
    if (what == "role") {
        const auto role = role_of(fields["role"]);
        return role ? outcome(shelf.set_role(person.id, *role), back) : refused(422, "Choose what they may do.");
    }
    if (what == "password") {
        const bool same = fields["password"] == fields["again"];
        return same ? outcome(shelf.set_password(person.id, fields["password"], caller.session), back)
                    : refused(422, not_the_same);
    }
    if (what == "sessions") {
        return outcome(PersonSessions(archive).end(person.id, fields["session"]), back);
    }
    return person.id == caller.id ? refused(422, "Nobody takes themselves out. Another owner does that.")
                                  : outcome(shelf.take_out(person.id), "/people");
}

Response set_own_password(Archive& archive, SignInTries& tries, const Caller& caller, const Request& request) {
    auto fields = read_form(request.body);
    const auto refused = [&](int status, std::string why) {
        return own_reply(archive, caller, status, {std::move(why), ""});
    };
    if (fields["password"] != fields["again"]) {
        return refused(422, not_the_same);
    }
    const SignInTries::Try one{"browser " + caller.session, folded(caller.name), true};
    if (const auto wait = tries.begin(one); wait > std::chrono::seconds(0)) {
        auto response = refused(429, wait_text(wait));
        response.headers.emplace_back("Retry-After", std::to_string(wait.count()));
        return response;
    }
    PeopleShelf shelf(archive);
    const auto person = shelf.with_password(caller.name, fields["now"]);
    if (!person) {
        return error_reply(person.error());
    }
    if (!*person || (*person)->id != caller.id) {
        return refused(403, "That isn’t the password you have now. Nothing was changed.");
    }
    tries.succeeded(one);
    const auto set = shelf.change_password(**person, fields["password"], caller.session);
    if (!set) {
        if (set.error().code == ErrorCode::conflict) {
            return refused(409, set.error().text);
        }
        return is_about_typed(set.error()) ? refused(422, set.error().text) : error_reply(set.error());
    }
    return own_reply(archive, caller, 200, {"", "The new password holds. All other browsers are signed out."});
}

}  // namespace

Response answer_people(Archive& archive, const Caller& caller, const Request& request) {
    constexpr std::string_view start = "/people";
    auto rest = std::string_view(request.head.path).substr(start.size());
    const bool sent = request.head.method == "POST";
    if (rest.empty()) {
        return sent ? add(archive, caller, request) : people_reply(archive, 200, {});
    }
    rest.remove_prefix(1);
    const auto slash = std::min(rest.find('/'), rest.size());
    const auto person = PeopleShelf(archive).by_id(std::string(rest.substr(0, slash)));
    if (!person) {
        return error_reply(person.error());
    }
    if (!*person) {
        return page_reply(404, missing_page());
    }
    return sent ? see_to(archive, caller, **person, rest.substr(slash + 1), request)
                : person_reply(archive, caller, **person, 200, {});
}

Response answer_own(Archive& archive, SignInTries& tries, const Caller& caller, const Request& request) {
    const auto& path = request.head.path;
    if (request.head.method != "POST") {
        return own_reply(archive, caller, 200, {});
    }
    if (caller.alone) {
        return page_reply(404, missing_page());
    }
    if (path == "/me/password") {
        return set_own_password(archive, tries, caller, request);
    }
    PersonSessions sessions(archive);
    const bool out = path == "/sign-out";
    auto fields = read_form(request.body);
    const auto done =
        out ? sessions.sign_out(caller.session) : sessions.end(caller.id, fields["session"], caller.session);
    return done ? led_to(out ? "/sign-in" : "/me") : error_reply(done.error());
}

}  // namespace truehang::workroom
