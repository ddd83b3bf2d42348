// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string_view>

// UTF-8 as RFC 3629 has it: the shortest form, no surrogates, nothing beyond U+10FFFF.

namespace truehang {

/// The bytes of the character that `text` begins with; 0 where it begins with none.
[[nodiscard]] std::size_t character_length(std::string_view text);

/// Whether every byte belongs to a whole character.
[[nodiscard]] bool is_utf8(std::string_view text);

}  // namespace truehang
