// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/people/door.h"
#include "workroom/people/people_shelf.h"
#include "workroom/people/sign_in_tries.h"

#include <string>

// Where people sign in: with name and password, or while nobody is written down with a code.

namespace truehang::workroom {

struct SignInShown {
    bool by_code = false;  ///< nobody is written down yet
    std::string why;       ///< what was wrong with the last try, else empty
    std::string name;      ///< that was typed
    std::string to;        ///< the page that was asked for
};
[[nodiscard]] http::Response sign_in_reply(int status, const SignInShown& shown);

/// That a person's role doesn't reach so far, and whose does.
[[nodiscard]] http::Response not_yours_reply(const Caller& caller, Right right);

/// Where a request comes from, for counting tries: the address that a proxy on this machine tells, else the peer's; of
/// IPv6 the first 64 bits, which one household or rented machine has for itself (RFC 4291, 2.5.4).
[[nodiscard]] std::string place_of(const http::RequestHead& head);

class SignInDesk {
public:
    SignInDesk(Archive& archive, Access& access, const Door& door)
        : archive_(archive), access_(access), door_(door), tries_(archive.clock()) {}

    /// The page, and its form.
    [[nodiscard]] http::Response answer(const http::Request& request);
    /// The person's own tries with a password, counted with the others'.
    [[nodiscard]] SignInTries& tries() { return tries_; }

private:
    [[nodiscard]] http::Response take_code(const http::Request& request, const std::string& code);
    [[nodiscard]] http::Response take_password(const http::Request& request, const SignInShown& typed,
                                               const std::string& password);

    Archive& archive_;
    Access& access_;
    const Door& door_;
    SignInTries tries_;
};

/// Signs a browser in and leads it on. `before`: the session it had, which ends.
[[nodiscard]] http::Response signed_in_reply(Archive& archive, const http::RequestHead& head, const Proven& person,
                                             const std::string& before, const std::string& to);

/// "Wait 12 seconds, then try again."
[[nodiscard]] std::string wait_text(std::chrono::seconds wait);

}  // namespace truehang::workroom
