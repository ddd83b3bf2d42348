// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/typed.h"

#include "protocol/paths.h"
#include "units/utf8.h"

#include <algorithm>
#include <charconv>

namespace truehang::workroom {

std::optional<std::string> typed_words(std::string typed, std::size_t most) {
    constexpr std::string_view blank = " \n";
    std::erase_if(typed, [](char c) { return c != '\n' && (static_cast<unsigned char>(c) < 0x20 || c == 0x7f); });
    typed.erase(0, std::min(typed.find_first_not_of(blank), typed.size()));
    typed.erase(typed.find_last_not_of(blank) + 1);
    return typed.empty() || typed.size() > most || !is_utf8(typed) ? std::nullopt : std::optional(typed);
}

long long typed_number(const std::string& text) {
    long long number = 0;
    const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
    return fault == std::errc{} && end == text.data() + text.size() ? number : 0;
}

std::optional<std::string> survey_of_leaf(std::string_view path, std::string_view leaf) {
    constexpr std::string_view start = "/surveys/";
    if (!path.starts_with(start) || !path.ends_with(leaf) || path.size() <= start.size() + leaf.size()) {
        return std::nullopt;
    }
    const auto part = path.substr(start.size(), path.size() - start.size() - leaf.size());
    const auto id = part.find('/') == std::string_view::npos ? sync::percent_decode(part) : std::nullopt;
    return id && sync::id_travels(*id) ? id : std::nullopt;
}

}  // namespace truehang::workroom
