// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

// Header fields, as text.

namespace truehang::http {

/// US-ASCII letters made small.
[[nodiscard]] std::string lower(std::string_view text);

/// Whether a header may have that value: no control characters but a tab (RFC 9110, section 5.5), so that nothing of it
/// is taken for another header or for the end of them.
[[nodiscard]] bool is_field_value(std::string_view value);

}  // namespace truehang::http
