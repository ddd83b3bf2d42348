// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/time_text.h"
#include "units/result.h"
#include "workroom/archive/archive.h"
#include "workroom/people/people_shelf.h"

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang::workroom {

/// How long a browser that somebody signed in from is known as theirs: other people's wrong tries don't slow it down.
inline constexpr std::chrono::hours browser_known{90 * 24};

/// A browser that is signed in, or was ended.
struct PersonSession {
    std::string id;
    sync::Time begun, expires;
    std::string agent;  ///< what the browser calls itself: any text, at most 200 bytes
};

/// Who is signed in, and by which session.
struct SignedIn {
    Person person;
    std::string session;
};

/// People's browsers. The cookie is `ID.SECRET`; of SECRET only the SHA-256 is kept, compared in constant time. A
/// session ends `session_life` after it began, or when it is ended.
class PersonSessions {
public:
    explicit PersonSessions(Archive& archive) : archive_(archive) {}

    /// The value of the cookie. `missing` where the password is another by now, or its person is taken out: what ended
    /// the other sessions is no later one's beginning.
    [[nodiscard]] Result<std::string> begin(const Proven& person, std::string_view agent);
    /// Whose cookie that is; nothing where it holds no more or never did.
    [[nodiscard]] Result<std::optional<SignedIn>> of(std::string_view cookie);
    /// The session of a browser that the person of that name signed in from before, still signed in or not; else empty.
    [[nodiscard]] Result<std::string> known(std::string_view cookie, std::string_view name);
    /// Those that hold, the newest first.
    [[nodiscard]] Result<std::vector<PersonSession>> all(const std::string& person);
    /// Signs a browser out, which stays known.
    [[nodiscard]] Result<Done> sign_out(const std::string& session);
    /// Ends one of a person's sessions, or all where `session` is empty, but `but`; none of them stays known.
    [[nodiscard]] Result<Done> end(const std::string& person, const std::string& session, const std::string& but = {});

private:
    Archive& archive_;
};

}  // namespace truehang::workroom
