// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/people/door.h"
#include "workroom/people/sessions.h"

#include <string>
#include <vector>

namespace truehang::workroom {

/// One sentence at the top: what couldn't be done, or what was.
struct Said {
    std::string refused;
    std::string done;
};

/// All people, and the form for another: with what was typed of it.
struct PeopleShown {
    std::vector<Person> people;
    Said said;
    std::string typed_name;
    Role typed_role = Role::workroom;
};
[[nodiscard]] std::string people_page(const PeopleShown& shown);

/// One of them, as an owner sees to them.
[[nodiscard]] std::string person_page(const Person& person, const std::vector<PersonSession>& sessions,
                                      const Caller& caller, const Said& said);

/// Who is signed in: their own sessions and password.
[[nodiscard]] std::string own_page(const Caller& caller, const std::vector<PersonSession>& sessions, const Said& said);

/// `/people/ID`
[[nodiscard]] std::string person_path(const std::string& id);

/// "Chrome on Android", or what it calls itself where that isn't known.
[[nodiscard]] std::string browser_text(const std::string& agent);

}  // namespace truehang::workroom
