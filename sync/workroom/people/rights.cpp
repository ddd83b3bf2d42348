// SPDX-License-Identifier: Apache-2.0
#include "workroom/people/rights.h"

#include <algorithm>

namespace truehang::workroom {

namespace {

constexpr std::array<std::string_view, 3> role_words{"surveyor", "workroom", "owner"};
constexpr std::uint64_t small = 4096;
constexpr std::uint64_t middling = 16384;  // three of the longest passwords, each byte percent-encoded
constexpr std::uint64_t large = 65536;
constexpr std::uint64_t rolls_large = 262144;

// clang-format off
constexpr std::array the_routes{
    Route{"GET",    "/style.css",                    Right::open,   Desk::page,     true},
    Route{"GET",    "/icon.svg",                     Right::open,   Desk::page,     true},
    Route{"GET",    "/arrivals.js",                  Right::open,   Desk::page,     true},
    Route{"GET",    "/font/*",                       Right::open,   Desk::page,     true},
    Route{"GET",    "/sign-in",                      Right::open,   Desk::sign_in,  true},
    Route{"POST",   "/sign-in",                      Right::open,   Desk::sign_in,  true, middling},
    Route{"POST",   "/pair",                         Right::open,   Desk::protocol},
    Route{"GET",    "/health",                       Right::open,   Desk::protocol},

    Route{"PUT",    "/surveys/*/revisions/*",        Right::device, Desk::protocol},
    Route{"PUT",    "/photos/*",                     Right::device, Desk::protocol},
    Route{"POST",   "/photos/*",                     Right::device, Desk::protocol},
    Route{"GET",    "/uploads/*",                    Right::device, Desk::protocol},
    Route{"PATCH",  "/uploads/*",                    Right::device, Desk::protocol},
    Route{"DELETE", "/uploads/*",                    Right::device, Desk::protocol},

    Route{"GET",    "/changes",                      Right::look,   Desk::protocol},
    Route{"GET",    "/rules",                        Right::look,   Desk::protocol},
    Route{"GET",    "/rules/*",                      Right::look,   Desk::protocol},
    Route{"GET",    "/photos/*",                     Right::look,   Desk::protocol},
    Route{"GET",    "/surveys/*/revisions/*",        Right::look,   Desk::protocol},
    Route{"GET",    "/surveys/*/receipt",            Right::look,   Desk::protocol},
    Route{"GET",    "/surveys/*/figures",            Right::look,   Desk::protocol},
    Route{"GET",    "/surveys/*/marks",              Right::look,   Desk::protocol},
    Route{"GET",    "/questions",                    Right::look,   Desk::protocol},
    Route{"GET",    "/surveys/*/questions",          Right::look,   Desk::protocol},
    Route{"PUT",    "/surveys/*/questions/*/answers/*", Right::device, Desk::protocol},

    Route{"GET",    "/arrivals",                     Right::look,   Desk::arrivals},
    Route{"GET",    "/surveys/*/rolls",              Right::look,   Desk::rolls,    true},
    Route{"GET",    "/surveys/*/rolls/count",        Right::look,   Desk::rolls,    true},
    Route{"GET",    "/surveys/*/rolls/plan",         Right::look,   Desk::rolls},
    Route{"GET",    "/surveys/*/rolls/document",     Right::look,   Desk::rolls},
    Route{"GET",    "/surveys/*/rolls/document/*",   Right::look,   Desk::rolls},
    Route{"POST",   "/surveys/*/rolls",              Right::roll,   Desk::rolls,    true, rolls_large},
    Route{"GET",    "/surveys/*/steps",              Right::look,   Desk::steps,    true},
    Route{"POST",   "/surveys/*/steps",              Right::mark,   Desk::steps,    true, large},
    Route{"GET",    "/surveys/*/ask",                Right::look,   Desk::questions, true},
    Route{"POST",   "/surveys/*/ask",                Right::ask,    Desk::questions, true, middling},
    Route{"POST",   "/house-rules",                  Right::rule,   Desk::rules,    true, large},
    Route{"GET",    "/devices",                      Right::pair,   Desk::devices,  true},
    Route{"POST",   "/devices/code",                 Right::pair,   Desk::devices,  true, small},
    Route{"POST",   "/devices/revoke",               Right::revoke, Desk::devices,  true, small},

    Route{"GET",    "/people",                       Right::people, Desk::people,   true},
    Route{"POST",   "/people",                       Right::people, Desk::people,   true, middling},
    Route{"GET",    "/people/*",                     Right::people, Desk::people,   true},
    Route{"POST",   "/people/*/role",                Right::people, Desk::people,   true, small},
    Route{"POST",   "/people/*/password",            Right::people, Desk::people,   true, middling},
    Route{"POST",   "/people/*/sessions",            Right::people, Desk::people,   true, small},
    Route{"POST",   "/people/*/out",                 Right::people, Desk::people,   true, small},
    Route{"GET",    "/me",                           Right::own,    Desk::own,      true},
    Route{"POST",   "/me/password",                  Right::own,    Desk::own,      true, middling},
    Route{"POST",   "/me/sessions",                  Right::own,    Desk::own,      true, small},
    Route{"POST",   "/sign-out",                     Right::own,    Desk::own,      true, small},

    Route{"GET",    "/",                             Right::look,   Desk::page,     true},
    Route{"GET",    "/house-rules",                  Right::look,   Desk::page,     true},
    Route{"GET",    "/erased",                       Right::look,   Desk::page,     true},
    Route{"GET",    "/sheet/*",                      Right::look,   Desk::page,     true},
    Route{"GET",    "/surveys/**",                   Right::look,   Desk::page,     true},
};
// clang-format on

/// Takes the first segment off a path, "/" before it too.
std::string_view next_segment(std::string_view& path) {
    path.remove_prefix(1);
    const auto end = std::min(path.find('/'), path.size());
    const auto segment = path.substr(0, end);
    path.remove_prefix(end);
    return segment;
}

bool fits(std::string_view pattern, std::string_view path) {
    while (!pattern.empty() && path.starts_with('/')) {
        const auto wanted = next_segment(pattern);
        if (wanted == "**") {
            return path.size() > 1;
        }
        const auto given = next_segment(path);
        if (wanted == "*" ? given.empty() : given != wanted) {
            return false;
        }
    }
    return pattern.empty() && path.empty();
}

}  // namespace

std::string_view word_of(Role role) { return role_words.at(static_cast<std::size_t>(role)); }

std::optional<Role> role_of(std::string_view word) {
    const auto* found = std::ranges::find(role_words, word);
    return found == role_words.end()
               ? std::nullopt
               : std::optional(all_roles.at(static_cast<std::size_t>(found - role_words.begin())));
}

std::string_view role_says(Role role) {
    switch (role) {
        case Role::surveyor:
            return "surveyor: looks and asks";
        case Role::workroom:
            return "workroom: also marks steps, writes down rolls and rules, pairs phones";
        case Role::owner:
            return "owner: also sees to people and revokes phones";
    }
    return "";
}

bool may(Role role, Right right) {
    const auto* line = std::ranges::find(roles_may, right, &RoleMay::right);
    if (line == roles_may.end()) {
        return right == Right::open;
    }
    switch (role) {
        case Role::surveyor:
            return line->surveyor;
        case Role::workroom:
            return line->workroom;
        case Role::owner:
            return line->owner;
    }
    return false;
}

std::span<const Route> routes() { return the_routes; }

const Route* route_of(std::string_view method, std::string_view path) {
    const auto of = [path](std::string_view asked) -> const Route* {
        const auto* found = std::ranges::find_if(
            the_routes, [&](const Route& route) { return route.method == asked && fits(route.path, path); });
        return found == the_routes.end() ? nullptr : found;
    };
    const auto* own = of(method);
    return own == nullptr && method == "HEAD" ? of("GET") : own;
}

}  // namespace truehang::workroom
