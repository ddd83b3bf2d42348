// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"
#include "workroom/archive/archive.h"
#include "workroom/people/rights.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang::workroom {

/// One that may sign in.
struct Person {
    std::string id;
    std::string name;
    Role role = Role::surveyor;
    std::string added_at;  ///< RFC 3339, UTC
};

/// Somebody whose password was shown, with its kept form then.
struct Proven : Person {
    std::string kept;
};

/// A person's name as it is kept, of one that signs in or of whoever is typed: without spaces round it and without
/// control characters; nothing where none is left, more than `sync::name_limit` bytes, or what isn’t UTF-8.
[[nodiscard]] std::optional<std::string> person_name(std::string typed);

/// The people of a workroom. Where there are none its pages are as for one who works alone. Of two people one name, in
/// whatever letters, is refused. There is always an owner while there is anybody: what would leave none is `conflict`.
class PeopleShelf {
public:
    explicit PeopleShelf(Archive& archive) : archive_(archive) {}

    [[nodiscard]] Result<bool> any() const;
    /// By name.
    [[nodiscard]] Result<std::vector<Person>> all() const;
    [[nodiscard]] Result<std::optional<Person>> by_id(const std::string& id) const;
    [[nodiscard]] Result<std::optional<Person>> by_name(std::string_view name) const;

    /// `first`: only where there is nobody yet, else `conflict`. Nobody but an owner can be the first. `out_of_range`:
    /// the name or the password can't be taken.
    [[nodiscard]] Result<Proven> add(std::string_view name, Role role, std::string_view password, bool first = false);
    [[nodiscard]] Result<Done> set_role(const std::string& id, Role role);
    /// Ends the person's sessions, but one.
    [[nodiscard]] Result<Done> set_password(const std::string& id, std::string_view password,
                                            const std::string& but_session = {});
    /// The same by the person themselves, by the password that `now` showed. `conflict`: it was set anew since, and
    /// stands as it was set; `missing`: they were taken out since.
    [[nodiscard]] Result<Done> change_password(const Proven& now, std::string_view password,
                                               const std::string& but_session);
    /// Ends the person's sessions; what they marked keeps their name.
    [[nodiscard]] Result<Done> take_out(const std::string& id);

    /// The person of that name where the password is theirs; nothing else. Takes as long for a name that isn't here.
    [[nodiscard]] Result<std::optional<Proven>> with_password(std::string_view name, std::string_view password) const;

private:
    Archive& archive_;
};

}  // namespace truehang::workroom
