// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/time_text.h"
#include "units/result.h"

#include <optional>
#include <string>
#include <string_view>

// Everything a phone needs to be taken on, as one text that a picture code holds and that can be pasted:
// truehang:pair?at=https://192.0.2.7:8737&code=7K2M-QX4D&until=2026-03-14T10:30:00.000Z&pin=HEX

namespace truehang::sync {

inline constexpr std::string_view pairing_scheme = "truehang:";
/// The longest such text that is read, in bytes.
inline constexpr std::size_t pairing_text_limit = 1000;

struct PairingText {
    std::string address;        ///< http or https with host and port, no path: "https://192.0.2.7:8737"
    std::string code;           ///< as it is shown: "7K2M-QX4D"
    std::optional<Time> until;  ///< when the code ends, by the workroom's clock
    std::string pin;            ///< SHA-256 of the certificate (DER), 64 lower-case digits; empty: the usual trust
    friend bool operator==(const PairingText&, const PairingText&) = default;
};

/// The text, percent-encoded (RFC 3986).
[[nodiscard]] std::string write_pairing_text(const PairingText& text);

/// Reads such a text; white space around it doesn't matter, keys that aren't known are passed over. Error `unreadable`
/// with the key in `where`: a scheme or word of another kind, a key twice, an address that isn't http or https with
/// printable characters alone, something that can't be a code, a time or a digest, a pin without https.
[[nodiscard]] Result<PairingText> read_pairing_text(std::string_view text);

/// Whether a text means to be one: it begins as they do.
[[nodiscard]] bool is_pairing_text(std::string_view text);

}  // namespace truehang::sync
