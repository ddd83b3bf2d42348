// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/site/rules_page.h"

#include <optional>
#include <string>
#include <string_view>

// What people type into the workroom’s forms, and where those stand.

namespace truehang::workroom {

/// Words as they are kept: lines end in a line feed, no other control characters, no white space round them; nothing
/// where they are empty, longer than `most` bytes or not UTF-8.
[[nodiscard]] std::optional<std::string> typed_words(std::string typed, std::size_t most);

/// The end of a sentence that refuses what isn’t UTF-8.
inline constexpr std::string_view not_text =
    "what came isn’t text in UTF-8. Type it anew here and send it from this page.";

/// A whole number; 0 where it isn’t one.
[[nodiscard]] long long typed_number(const std::string& text);

/// The survey of `/surveys/ID` and then `leaf` (as `/steps`); nothing for any other path.
[[nodiscard]] std::optional<std::string> survey_of_leaf(std::string_view path, std::string_view leaf);

}  // namespace truehang::workroom
