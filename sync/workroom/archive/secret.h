// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>

// What a device or a browser shows to be known again: `ID.SECRET`. Only the SHA-256 of SECRET is kept.

namespace truehang::workroom {

/// Random bytes for secrets, from the system's generator.
[[nodiscard]] std::string random_bytes(std::size_t count);

struct Secret {
    std::string id;
    std::string kept;   ///< the form in which it is kept
    std::string shown;  ///< `ID.SECRET`
};

/// Of 256 random bits.
[[nodiscard]] Secret new_secret();
/// What somebody shows; nothing where it has another form.
[[nodiscard]] std::optional<Secret> read_secret(std::string_view shown);
/// The form in which a secret without an id, such as a code, is kept.
[[nodiscard]] std::string kept_secret(std::string_view secret);
/// Compares kept forms in constant time.
[[nodiscard]] bool same_secret(const std::string& kept, const std::string& shown);

}  // namespace truehang::workroom
