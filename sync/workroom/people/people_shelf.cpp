// SPDX-License-Identifier: Apache-2.0
#include "workroom/people/people_shelf.h"

#include "protocol/digest.h"
#include "protocol/marks.h"
#include "protocol/time_text.h"
#include "units/folded.h"
#include "units/utf8.h"
#include "workroom/archive/access.h"
#include "workroom/people/password.h"

#include <algorithm>

namespace truehang::workroom {

namespace {

const Error nobody{ErrorCode::missing, "person", "There is nobody of that name here."};
const Error last_owner{ErrorCode::conflict, "owner", "Nobody else is an owner. Make somebody else one first."};
const Error set_anew{ErrorCode::conflict, "password",
                     "Somebody has set your password anew meanwhile. It stands as they set it: sign in with that."};

Person person_of(Query& row) {
    return {row.text(0), row.text(1), role_of(row.text(2)).value_or(Role::surveyor), row.text(3)};
}

std::optional<Person> find(Records& records, const std::string& column, std::string_view value) {
    Query query(records, "SELECT id, name, role, added_at FROM person WHERE " + column + " = ?");
    query.bind(1, value);
    return query.step() ? std::optional(person_of(query)) : std::nullopt;
}

bool is_any(Records& records) { return number_of(records, "SELECT count(*) FROM person") > 0; }

/// Whether somebody but this one is an owner.
bool others_own(Records& records, const std::string& id) {
    Query query(records, "SELECT 1 FROM person WHERE role = 'owner' AND id <> ?");
    query.bind(1, id);
    return query.step();
}

void end_sessions(Records& records, const std::string& person, const std::string& but) {
    Query remove(records, "DELETE FROM person_session WHERE person = ? AND id <> ?");
    remove.bind(1, person);
    remove.bind(2, but);
    remove.exec();
}

/// The kept form of a password that may be chosen, or why it mayn't.
Result<std::string> chosen(std::string_view password, std::string_view name) {
    auto why_not = why_not_password(password, name);
    return why_not.empty() ? password_to_keep(password)
                           : Result<std::string>(Error{ErrorCode::out_of_range, "password", std::move(why_not)});
}

}  // namespace

std::optional<std::string> person_name(std::string typed) {
    std::erase_if(typed, [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; });
    for (std::size_t at = 0; at + 1 < typed.size();) {  // C1 controls, U+0080 to U+009F
        const bool control = typed[at] == '\xc2' && static_cast<unsigned char>(typed[at + 1]) < 0xa0;
        control ? static_cast<void>(typed.erase(at, 2)) : static_cast<void>(++at);
    }
    typed.erase(0, std::min(typed.find_first_not_of(' '), typed.size()));
    typed.erase(typed.find_last_not_of(' ') + 1);
    return typed.empty() || typed.size() > sync::name_limit || !is_utf8(typed) ? std::nullopt : std::optional(typed);
}

Result<bool> PeopleShelf::any() const {
    return archive_.database().read<bool>([](Records& records) -> Result<bool> {
        Query query(records, "SELECT 1 FROM person LIMIT 1");
        return query.step();
    });
}

Result<std::vector<Person>> PeopleShelf::all() const {
    return archive_.database().read<std::vector<Person>>([](Records& records) -> Result<std::vector<Person>> {
        Query query(records, "SELECT id, name, role, added_at FROM person ORDER BY name_key");
        std::vector<Person> people;
        while (query.step()) {
            people.push_back(person_of(query));
        }
        return people;
    });
}

Result<std::optional<Person>> PeopleShelf::by_id(const std::string& id) const {
    return archive_.database().read<std::optional<Person>>(
        [&](Records& records) -> Result<std::optional<Person>> { return find(records, "id", id); });
}

Result<std::optional<Person>> PeopleShelf::by_name(std::string_view name) const {
    return archive_.database().read<std::optional<Person>>(
        [&](Records& records) -> Result<std::optional<Person>> { return find(records, "name_key", folded(name)); });
}

Result<Proven> PeopleShelf::add(std::string_view typed, Role role, std::string_view password, bool first) {
    const auto name = person_name(std::string(typed));
    if (!name) {
        return Error{ErrorCode::out_of_range, "name", "A person has a name, of at most 100 bytes of UTF-8."};
    }
    const auto kept = chosen(password, *name);
    if (!kept) {
        return kept.error();
    }
    const Proven person{
        {sync::hex(sync::sha256(random_bytes(16))).substr(0, 16), *name, role, sync::write_time(archive_.clock()())},
        *kept};
    return archive_.database().write_and_wait<Proven>([&](Records& records) -> Result<Proven> {
        const bool some = is_any(records);
        if (some && first) {
            return Error{ErrorCode::conflict, "person", "There are people here already: sign in."};
        }
        if (!some && role != Role::owner) {
            return Error{ErrorCode::conflict, "owner", "The first one is an owner, who then adds the others."};
        }
        if (find(records, "name_key", folded(*name))) {
            return Error{ErrorCode::conflict, "name", "There is somebody of that name already."};
        }
        Query insert(records,
                     "INSERT INTO person(id, name, name_key, role, password, added_at) VALUES(?, ?, ?, ?, ?, ?)");
        insert.bind(1, person.id);
        insert.bind(2, person.name);
        insert.bind(3, folded(person.name));
        insert.bind(4, word_of(role));
        insert.bind(5, person.kept);
        insert.bind(6, person.added_at);
        insert.exec();
        return person;
    });
}

Result<Done> PeopleShelf::set_role(const std::string& id, Role role) {
    return archive_.database().write_and_wait<Done>([&](Records& records) -> Result<Done> {
        if (!find(records, "id", id)) {
            return nobody;
        }
        if (role != Role::owner && !others_own(records, id)) {
            return last_owner;
        }
        Query update(records, "UPDATE person SET role = ? WHERE id = ?");
        update.bind(1, word_of(role));
        update.bind(2, id);
        update.exec();
        return Done{};
    });
}

Result<Done> PeopleShelf::set_password(const std::string& id, std::string_view password,
                                       const std::string& but_session) {
    const auto person = by_id(id);
    if (!person || !*person) {
        return person ? nobody : person.error();
    }
    const auto kept = chosen(password, (*person)->name);
    if (!kept) {
        return kept.error();
    }
    return archive_.database().write_and_wait<Done>([&](Records& records) -> Result<Done> {
        Query update(records, "UPDATE person SET password = ? WHERE id = ?");
        update.bind(1, *kept);
        update.bind(2, id);
        if (update.exec() == 0) {
            return nobody;
        }
        end_sessions(records, id, but_session);
        return Done{};
    });
}

Result<Done> PeopleShelf::change_password(const Proven& now, std::string_view password,
                                          const std::string& but_session) {
    const auto kept = chosen(password, now.name);
    if (!kept) {
        return kept.error();
    }
    return archive_.database().write_and_wait<Done>([&](Records& records) -> Result<Done> {
        Query update(records, "UPDATE person SET password = ? WHERE id = ? AND password = ?");
        update.bind(1, *kept);
        update.bind(2, now.id);
        update.bind(3, now.kept);
        if (update.exec() == 0) {
            return find(records, "id", now.id) ? set_anew : nobody;
        }
        end_sessions(records, now.id, but_session);
        return Done{};
    });
}

Result<Done> PeopleShelf::take_out(const std::string& id) {
    return archive_.database().write_and_wait<Done>([&](Records& records) -> Result<Done> {
        if (!find(records, "id", id)) {
            return nobody;
        }
        if (number_of(records, "SELECT count(*) FROM person") > 1 && !others_own(records, id)) {
            return last_owner;
        }
        end_sessions(records, id, "");
        Query remove(records, "DELETE FROM person WHERE id = ?");
        remove.bind(1, id);
        remove.exec();
        return Done{};
    });
}

Result<std::optional<Proven>> PeopleShelf::with_password(std::string_view name, std::string_view password) const {
    const auto wanted = folded(person_name(std::string(name)).value_or(""));
    using Found = std::optional<Proven>;
    auto found = archive_.database().read<Found>([&](Records& records) -> Result<Found> {
        Query query(records, "SELECT id, name, role, added_at, password FROM person WHERE name_key = ?");
        query.bind(1, wanted);
        return query.step() ? Found({person_of(query), query.text(4)}) : Found();
    });
    if (!found) {
        return found.error();
    }
    const auto& person = found.value();
    return password_holds(person ? person->kept : "", password) ? found : Found();
}

}  // namespace truehang::workroom
