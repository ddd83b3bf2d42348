// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <string>
#include <string_view>

// People's passwords: Argon2id (RFC 9106) by libsodium. 19 MiB, two passes, one lane, a salt of 16 random bytes: the
// first of the settings that OWASP's Password Storage Cheat Sheet gives for it. At most two are worked at once, so that
// many tries together hold at most 38 MiB; further ones wait.

namespace truehang::workroom {

/// The fewest letters of a password that stands alone, and the most bytes of one (NIST SP 800-63B-4, 3.1.1.2: at least
/// 15 characters, and no rule on their kinds).
inline constexpr std::size_t password_least = 15;
inline constexpr std::size_t password_most_bytes = 1024;

/// Why a password can't be chosen, as a sentence; empty where it can. `name`: whose it is to be.
[[nodiscard]] std::string why_not_password(std::string_view password, std::string_view name);

/// The form that is kept: settings, salt and tag in one text that a later version reads too. `busy` where there is no
/// memory for it now.
[[nodiscard]] Result<std::string> password_to_keep(std::string_view password);

/// Whether it is the password of that kept form; compared in constant time. An empty `kept` never holds, and takes as
/// long.
[[nodiscard]] bool password_holds(const std::string& kept, std::string_view password);

}  // namespace truehang::workroom
