// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/archive/access.h"
#include "workroom/archive/archive.h"
#include "workroom/http/http_server.h"
#include "workroom/people/rights.h"
#include "workroom/people/sessions.h"

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace truehang::workroom {

/// The cookie that keeps a browser signed in.
inline constexpr std::string_view session_cookie = "truehang-session";

/// Who asks.
struct Caller {
    enum class Kind { nobody, device, person };
    Kind kind = Kind::nobody;
    TokenHolder device;
    Role role = Role::surveyor;  ///< of a person
    std::string id, name;        ///< of a person; empty where one works alone and nobody is written down
    std::string session;         ///< of a person that signed in by name
    bool alone = false;          ///< there are no people here yet
    bool here = false;           ///< a browser on this machine itself

    [[nodiscard]] bool may_do(Right right) const { return kind == Kind::person && may(role, right); }
};

/// Whether a form was sent by a page of this site, as its browser says. A page of elsewhere can send a form here, but
/// not under this site's name.
[[nodiscard]] bool sent_from_here(const http::RequestHead& head);
[[nodiscard]] std::string_view cookie_of(const http::RequestHead& head, std::string_view name);
/// Set-Cookie that keeps a browser signed in.
[[nodiscard]] std::string session_cookie_field(const http::RequestHead& head, std::string_view value,
                                               std::chrono::seconds life);

/// Says who asks, and why they may not. While nobody is written down as one of the workroom's people, browsers on this
/// machine may do everything, and elsewhere those that signed in with a code; from the first person on everybody signs
/// in with name and password. Devices show their token.
class Door {
public:
    /// `sign_in_everywhere`: this machine's browsers aren't known as such (behind a proxy).
    Door(Archive& archive, Access& access, bool sign_in_everywhere)
        : archive_(archive), access_(access), sign_in_everywhere_(sign_in_everywhere) {}

    [[nodiscard]] Result<Caller> caller_of(const http::RequestHead& head);
    /// Nothing where the request may go on to its desk, else the answer. Of routes that are open or for devices
    /// everything goes on: their desks ask for codes and tokens themselves.
    [[nodiscard]] std::optional<http::Response> why_not(const http::RequestHead& head, const Route& route,
                                                        Caller& caller);
    /// The device that the request's token names; an empty id where none does.
    [[nodiscard]] Result<TokenHolder> device_of(const http::RequestHead& head);
    [[nodiscard]] bool is_here(const http::RequestHead& head) const;

private:
    [[nodiscard]] Result<Caller> person_of(const http::RequestHead& head);

    Archive& archive_;
    Access& access_;
    bool sign_in_everywhere_;
};

}  // namespace truehang::workroom
