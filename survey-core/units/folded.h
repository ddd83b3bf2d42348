// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace truehang {

/// UTF-8 text as it is searched: capital letters of the Latin, Greek and Cyrillic alphabets made small, every run of
/// spaces one space. What isn't UTF-8 stays as it is.
[[nodiscard]] std::string folded(std::string_view text);

/// The most words that a search looks for; further ones are left out.
inline constexpr std::size_t most_search_words = 6;
/// The most bytes of a search that are looked at.
inline constexpr std::size_t longest_search = 200;

/// The words to look for, folded: at most `most_search_words`, of the first `longest_search` bytes.
[[nodiscard]] std::vector<std::string> search_words(std::string_view typed);

}  // namespace truehang
