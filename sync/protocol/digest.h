// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/result.h"

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace truehang::sync {

/// A SHA-256 digest (FIPS 180-4).
using Sha256 = std::array<std::uint8_t, 32>;

/// The digest of `bytes`.
[[nodiscard]] Sha256 sha256(std::string_view bytes);

/// The digest of bytes that come in pieces.
class Sha256Stream {
public:
    Sha256Stream();
    ~Sha256Stream();
    Sha256Stream(Sha256Stream&&) noexcept;
    Sha256Stream& operator=(Sha256Stream&&) noexcept;

    void add(std::string_view bytes);
    /// The digest of all that was added; the stream then starts again from nothing.
    [[nodiscard]] Sha256 finish();

private:
    struct State;
    std::unique_ptr<State> state_;
};

/// 64 lower-case hexadecimal digits.
[[nodiscard]] std::string hex(const Sha256& digest);
/// Reads exactly 64 lower-case hexadecimal digits; nothing for any other text.
[[nodiscard]] std::optional<Sha256> sha256_from_hex(std::string_view text);

/// The value of a Content-Digest or Repr-Digest field: `sha-256=:BASE64:` (RFC 9530, RFC 8941).
[[nodiscard]] std::string digest_field(const Sha256& digest);

/// Reads the sha-256 member of such a field. Members of other algorithms are passed over; none at all is an empty
/// optional. Errors: `unreadable` where the field isn't a structured dictionary or the value isn't 32 bytes.
[[nodiscard]] Result<std::optional<Sha256>> read_digest_field(std::string_view field);

}  // namespace truehang::sync
