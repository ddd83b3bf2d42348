// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <chrono>
#include <cstddef>
#include <string_view>

// The sizes and names both ends keep to.

namespace truehang::sync {

/// The largest survey document that is sent or taken, in bytes (the survey format's own limit).
inline constexpr std::size_t document_limit = std::size_t{4} * 1024 * 1024;
/// The largest photo, in bytes.
inline constexpr std::size_t photo_limit = std::size_t{32} * 1024 * 1024;
/// What a device may have unfinished at once: uploads in pieces, and the bytes that these were begun for.
inline constexpr std::size_t uploads_at_once = 8;
inline constexpr long long unfinished_limit = 128LL * 1024 * 1024;
/// How long an unfinished upload is kept after its last byte.
inline constexpr std::chrono::hours upload_life{7 * 24};
/// The largest answer a client reads, in bytes: a survey document; receipts and problems are small.
inline constexpr std::size_t answer_limit = document_limit;
/// The largest body of `POST /pair`, in bytes.
inline constexpr std::size_t pair_limit = 4096U;
/// The longest id of a survey that can travel, in bytes of UTF-8.
inline constexpr std::size_t id_limit = 200U;
/// The greatest revision: what every JSON reader holds exactly (RFC 8259, section 6).
inline constexpr long long revision_limit = 9007199254740991LL;

inline constexpr std::string_view json_type = "application/json";
inline constexpr std::string_view problem_type = "application/problem+json";
inline constexpr std::string_view content_digest_header = "Content-Digest";
inline constexpr std::string_view repr_digest_header = "Repr-Digest";
/// When a photo came in, in the answer to `HEAD /photos/{sha256}`; RFC 3339.
inline constexpr std::string_view received_at_header = "Truehang-Received-At";

}  // namespace truehang::sync
