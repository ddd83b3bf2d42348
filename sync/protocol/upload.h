// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>

// The fields of an upload in pieces (draft-ietf-httpbis-resumable-upload-12): items of RFC 9651, a whole number or a
// truth. A field of any other form counts as not sent, as the draft has it.

namespace truehang::sync {

inline constexpr std::string_view upload_offset_header = "Upload-Offset";
inline constexpr std::string_view upload_complete_header = "Upload-Complete";
inline constexpr std::string_view upload_length_header = "Upload-Length";
inline constexpr std::string_view upload_limit_header = "Upload-Limit";
/// What a piece is sent as.
inline constexpr std::string_view partial_upload_type = "application/partial-upload";

/// A number of bytes from 0 up, of at most fifteen digits (RFC 9651, 3.3.1); parameters are passed over.
[[nodiscard]] std::optional<long long> read_byte_count(std::string_view field);
/// `?1` or `?0` (RFC 9651, 3.3.6); parameters are passed over.
[[nodiscard]] std::optional<bool> read_truth(std::string_view field);
[[nodiscard]] std::string write_truth(bool truth);

}  // namespace truehang::sync
