// SPDX-License-Identifier: Apache-2.0
#include "workroom/people/people_pages.h"

#include "sheet/words.h"
#include "workroom/people/password.h"
#include "workroom/site/frame.h"

#include <array>
#include <utility>

namespace truehang::workroom {

namespace {

View roles_view(Role chosen) {
    auto roles = view_list();
    for (const Role role : all_roles) {
        auto entry = view();
        entry.set("word", std::string(word_of(role)));
        entry.set("says", std::string(word_of(role)));
        entry.set("chosen", truth(role == chosen));
        roles << entry;
    }
    return roles;
}

void set_said(View& values, const Said& said) {
    values.set("said", said.refused.empty() ? truth(false) : View{said.refused});
    values.set("done", said.done.empty() ? truth(false) : View{said.done});
    values.set("least", std::to_string(password_least));
}

/// For the table of sessions: `path` is where its forms go, `own` the session that looks.
void set_sessions(View& values, const std::vector<PersonSession>& sessions, const std::string& path,
                  const std::string& own, const std::string& more) {
    auto list = view_list();
    for (const auto& session : sessions) {
        auto entry = view();
        entry.set("id", session.id);
        entry.set("agent", browser_text(session.agent));
        entry.set("begun", moment_text(sync::write_time(session.begun)));
        entry.set("ends", moment_text(sync::write_time(session.expires)));
        entry.set("this", truth(session.id == own));
        list << entry;
    }
    values.set("some", truth(!sessions.empty()));
    values.set("sessions", list);
    values.set("path", path);
    values.set("more", sessions.size() > 1 ? View{more} : truth(false));
}

}  // namespace

std::string person_path(const std::string& id) { return "/people/" + id; }

std::string browser_text(const std::string& agent) {
    using Names = std::array<std::pair<std::string_view, std::string_view>, 5>;
    // What each calls itself beside its own name: the first that is there counts.
    static constexpr Names browsers{{{"Firefox/", "Firefox"},
                                     {"Edg/", "Edge"},
                                     {"Chrome/", "Chrome"},
                                     {"CriOS/", "Chrome"},
                                     {"Safari/", "Safari"}}};
    static constexpr Names systems{{{"Android", "Android"},
                                    {"iPhone", "iPhone"},
                                    {"iPad", "iPad"},
                                    {"Windows", "Windows"},
                                    {"Mac OS X", "a Mac"}}};
    const auto named = [&](const Names& names, std::string_view otherwise) {
        for (const auto& [mark, name] : names) {
            if (agent.find(mark) != std::string::npos) {
                return std::string(name);
            }
        }
        return std::string(otherwise);
    };
    const auto browser = named(browsers, "");
    if (browser.empty()) {
        return agent.empty() ? "a browser" : agent.substr(0, 40);
    }
    return browser + " on " + named(systems, agent.find("Linux") == std::string::npos ? "another system" : "Linux");
}

std::string people_page(const PeopleShown& shown) {
    auto values = view();
    auto people = view_list();
    for (const auto& person : shown.people) {
        auto entry = view();
        entry.set("href", person_path(person.id));
        entry.set("name", person.name);
        entry.set("role", std::string(role_says(person.role)));
        entry.set("since", moment_text(person.added_at));
        people << entry;
    }
    values.set("some", truth(!shown.people.empty()));
    values.set("people", people);
    values.set("typed", shown.typed_name);
    values.set("roles", roles_view(shown.typed_role));
    set_said(values, shown.said);
    return framed({"People", "page-people", {{"/", "Surveys"}}, false}, fill("people", values));
}

std::string person_page(const Person& person, const std::vector<PersonSession>& sessions, const Caller& caller,
                        const Said& said) {
    auto values = view();
    values.set("name", person.name);
    values.set("role", std::string(role_says(person.role)));
    values.set("since", moment_text(person.added_at));
    values.set("roles", roles_view(person.role));
    values.set("self", truth(person.id == caller.id));
    set_sessions(values, sessions, person_path(person.id), caller.session, "Sign out everywhere");
    set_said(values, said);
    return framed({person.name, "page-people", {{"/", "Surveys"}, {"/people", "People"}}, false},
                  fill("person", values));
}

std::string own_page(const Caller& caller, const std::vector<PersonSession>& sessions, const Said& said) {
    auto values = view();
    values.set("alone", truth(caller.alone));
    values.set("here", truth(caller.here));
    values.set("name", caller.name);
    values.set("role", std::string(role_says(caller.role)));
    set_sessions(values, sessions, "/me", caller.session, "Sign out everywhere else");
    set_said(values, said);
    return framed({"Who is signed in", "page-people", {{"/", "Surveys"}}, false}, fill("me", values));
}

}  // namespace truehang::workroom
