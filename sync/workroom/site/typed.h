// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "workroom/site/rules_page.h"

#include <optional>
#include <string>
#include <string_view>

// What people type into the workroom’s forms, and where those stand.

namespace truehang::workroom {

/// A person’s name as it is kept: without spaces round it and without control characters; nothing where it is empty or
/// longer than `sync::name_limit`.
[[nodiscard]] std::optional<std::string> typed_name(std::string typed);

/// Words as they are kept: lines end in a line feed, no other control characters, no white space round them; nothing
/// where they are empty or longer than `most` bytes.
[[nodiscard]] std::optional<std::string> typed_words(std::string typed, std::size_t most);

/// A whole number; 0 where it isn’t one.
[[nodiscard]] long long typed_number(const std::string& text);

/// The survey of `/surveys/ID` and then `leaf` (as `/steps`); nothing for any other path.
[[nodiscard]] std::optional<std::string> survey_of_leaf(std::string_view path, std::string_view leaf);

}  // namespace truehang::workroom
