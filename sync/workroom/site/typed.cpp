// SPDX-License-Identifier: Apache-2.0
#include "workroom/site/typed.h"

#include "protocol/marks.h"
#include "protocol/paths.h"

#include <algorithm>
#include <charconv>

namespace truehang::workroom {

namespace {

bool is_control(char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; }

std::optional<std::string> within(std::string text, std::string_view round, std::size_t most) {
    text.erase(0, std::min(text.find_first_not_of(round), text.size()));
    text.erase(text.find_last_not_of(round) + 1);
    return text.empty() || text.size() > most ? std::nullopt : std::optional(text);
}

}  // namespace

std::optional<std::string> typed_name(std::string typed) {
    std::erase_if(typed, is_control);
    return within(std::move(typed), " ", sync::name_limit);
}

std::optional<std::string> typed_words(std::string typed, std::size_t most) {
    std::erase_if(typed, [](char c) { return c != '\n' && is_control(c); });
    return within(std::move(typed), " \n", most);
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
