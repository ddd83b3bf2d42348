// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

// What each role may do, and what each address asks for. A request that no route names is answered by nobody: what is
// served stands here, and nowhere else.

namespace truehang::workroom {

enum class Role { surveyor, workroom, owner };
inline constexpr std::array<Role, 3> all_roles{Role::surveyor, Role::workroom, Role::owner};
[[nodiscard]] std::string_view word_of(Role role);
[[nodiscard]] std::optional<Role> role_of(std::string_view word);
/// What a role is called beside a name.
[[nodiscard]] std::string_view role_says(Role role);

/// What somebody does here.
enum class Right {
    open,    ///< anybody
    device,  ///< a paired device alone: it sends
    look,    ///< surveys, sheets, photos, rolls, rules; devices do too
    own,     ///< one's own password and sessions
    ask,     ///< questions on a reading or a window
    mark,    ///< what was ordered, cut, made, hung
    roll,    ///< the rolls that came
    rule,    ///< house rules
    pair,    ///< sees the devices, pairs another
    revoke,  ///< refuses a device from now on
    people,  ///< who may sign in, as what
};

/// The one table of what each role may do.
struct RoleMay {
    Right right;
    bool surveyor, workroom, owner;
};
inline constexpr std::array<RoleMay, 9> roles_may{{
    {Right::look, true, true, true},
    {Right::own, true, true, true},
    {Right::ask, true, true, true},
    {Right::mark, false, true, true},
    {Right::roll, false, true, true},
    {Right::rule, false, true, true},
    {Right::pair, false, true, true},
    {Right::revoke, false, false, true},
    {Right::people, false, false, true},
}};
/// `open` is everybody's; `device` no person's.
[[nodiscard]] bool may(Role role, Right right);

/// Who answers a request once it may come in.
enum class Desk { protocol, arrivals, rolls, steps, questions, devices, rules, sign_in, people, own, page };

struct Route {
    std::string_view method;
    std::string_view path;  ///< `*` stands for one segment that isn't empty, `**` at the end for one or more
    Right right;
    Desk desk;
    bool page = false;        ///< who isn't signed in gets the sign-in page; else a problem document
    std::uint64_t limit = 0;  ///< the longest body of a form, in bytes
};

[[nodiscard]] std::span<const Route> routes();
/// The first route of that request; of HEAD the one of GET where it has none of its own. Null where there is none.
[[nodiscard]] const Route* route_of(std::string_view method, std::string_view path);

}  // namespace truehang::workroom
