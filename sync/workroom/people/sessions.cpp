// SPDX-License-Identifier: Apache-2.0
#include "workroom/people/sessions.h"

#include "units/folded.h"
#include "workroom/archive/access.h"

#include <algorithm>

namespace truehang::workroom {

namespace {

constexpr std::size_t agent_limit = 200;

std::int64_t in_ms(sync::Time time) { return time.time_since_epoch().count(); }
sync::Time time_of(std::int64_t ms) { return sync::Time(std::chrono::milliseconds(ms)); }

/// What a browser calls itself: what of it is printable ASCII, cut.
std::string agent_text(std::string_view agent) {
    std::string text(agent.substr(0, agent_limit));
    std::erase_if(text, [](char c) { return c < 0x20 || c > 0x7e; });
    return text;
}

}  // namespace

Result<std::string> PersonSessions::begin(const Proven& person, std::string_view agent) {
    const auto secret = new_secret();
    const auto now = archive_.clock()();
    return archive_.database().write_and_wait<std::string>([&](Records& records) -> Result<std::string> {
        Query sweep(records, "DELETE FROM person_session WHERE known_until_ms <= ?");
        sweep.bind(1, in_ms(now));
        sweep.exec();
        Query insert(
            records,
            "INSERT INTO person_session(id, person, secret_sha256, begun_ms, expires_ms, known_until_ms, agent)"
            " SELECT ?, id, ?, ?, ?, ?, ? FROM person WHERE id = ? AND password = ?");
        insert.bind(1, secret.id);
        insert.bind(2, secret.kept);
        insert.bind(3, in_ms(now));
        insert.bind(4, in_ms(now + session_life));
        insert.bind(5, in_ms(now + browser_known));
        insert.bind(6, agent_text(agent));
        insert.bind(7, person.id);
        insert.bind(8, person.kept);
        return insert.exec() == 1 ? Result<std::string>(secret.shown)
                                  : Error{ErrorCode::missing, "person",
                                          "This password was changed meanwhile. Sign in with the new one."};
    });
}

Result<std::optional<SignedIn>> PersonSessions::of(std::string_view cookie) {
    const auto secret = read_secret(cookie);
    if (!secret) {
        return std::optional<SignedIn>();
    }
    const auto now = in_ms(archive_.clock()());
    return archive_.database().read<std::optional<SignedIn>>([&](Records& records) -> Result<std::optional<SignedIn>> {
        Query query(records,
                    "SELECT s.secret_sha256, p.id, p.name, p.role, p.added_at FROM person_session AS s JOIN person AS p"
                    " ON p.id = s.person WHERE s.id = ? AND s.expires_ms > ?");
        query.bind(1, secret->id);
        query.bind(2, now);
        if (!query.step() || !same_secret(query.text(0), secret->kept)) {
            return std::optional<SignedIn>();
        }
        const auto role = role_of(query.text(3)).value_or(Role::surveyor);
        return std::optional(SignedIn{{query.text(1), query.text(2), role, query.text(4)}, secret->id});
    });
}

Result<std::string> PersonSessions::known(std::string_view cookie, std::string_view name) {
    const auto secret = read_secret(cookie);
    if (!secret) {
        return std::string();
    }
    const auto now = in_ms(archive_.clock()());
    return archive_.database().read<std::string>([&](Records& records) -> Result<std::string> {
        Query query(records,
                    "SELECT s.secret_sha256 FROM person_session AS s JOIN person AS p ON p.id = s.person"
                    " WHERE s.id = ? AND s.known_until_ms > ? AND p.name_key = ?");
        query.bind(1, secret->id);
        query.bind(2, now);
        query.bind(3, folded(name));
        return query.step() && same_secret(query.text(0), secret->kept) ? secret->id : std::string();
    });
}

Result<std::vector<PersonSession>> PersonSessions::all(const std::string& person) {
    const auto now = in_ms(archive_.clock()());
    return archive_.database().read<std::vector<PersonSession>>(
        [&](Records& records) -> Result<std::vector<PersonSession>> {
            Query query(records,
                        "SELECT id, begun_ms, expires_ms, agent FROM person_session WHERE person = ? AND expires_ms > ?"
                        " ORDER BY begun_ms DESC, id");
            query.bind(1, person);
            query.bind(2, now);
            std::vector<PersonSession> sessions;
            while (query.step()) {
                sessions.push_back({query.text(0), time_of(query.number(1)), time_of(query.number(2)), query.text(3)});
            }
            return sessions;
        });
}

Result<Done> PersonSessions::sign_out(const std::string& session) {
    const auto now = in_ms(archive_.clock()());
    return archive_.database().write_and_wait<Done>([&](Records& records) -> Result<Done> {
        Query update(records, "UPDATE person_session SET expires_ms = ? WHERE id = ? AND expires_ms > ?");
        update.bind(1, now);
        update.bind(2, session);
        update.bind(3, now);
        update.exec();
        return Done{};
    });
}

Result<Done> PersonSessions::end(const std::string& person, const std::string& session, const std::string& but) {
    return archive_.database().write_and_wait<Done>([&](Records& records) -> Result<Done> {
        Query remove(records, std::string("DELETE FROM person_session WHERE person = ? AND id <> ?") +
                                  (session.empty() ? "" : " AND id = ?"));
        remove.bind(1, person);
        remove.bind(2, but);
        if (!session.empty()) {
            remove.bind(3, session);
        }
        remove.exec();
        return Done{};
    });
}

}  // namespace truehang::workroom
