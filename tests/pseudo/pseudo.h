// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <utility>

// A language for tests: English with accents, in brackets, two fifths longer. What it doesn't bracket was never said
// through a table; what it pushes out of its place is cut off in other languages too.

namespace truehang::test {

/// The length of a placeholder ({:.1f}, %1, %n, %L2) that begins at `at`; 0 where none does.
inline std::size_t placeholder_at(std::string_view text, std::size_t at) {
    if (text[at] == '{') {
        const std::size_t end = text.find('}', at);
        return end == std::string_view::npos ? 0 : end - at + 1;
    }
    if (text[at] != '%') {
        return 0;
    }
    std::size_t end = at + 1 + (at + 1 < text.size() && text[at + 1] == 'L' ? 1 : 0);
    const auto is_part = [&] {
        return end < text.size() && (text[end] == 'n' || (text[end] >= '0' && text[end] <= '9'));
    };
    const std::size_t begin = end;
    while (is_part()) {
        ++end;
    }
    return end == begin ? 0 : end - at;
}

inline std::string pseudo(std::string_view english) {
    constexpr std::array<std::pair<char, std::string_view>, 8> accents{
        {{'a', "à"}, {'e', "é"}, {'i', "î"}, {'o', "ö"}, {'u', "ü"}, {'A', "Å"}, {'E', "É"}, {'O', "Ö"}}};
    constexpr std::string_view filling = " wöüld bé löngér àbröàd ünd sö îs thîs sénténcé hérè";
    std::string text = "[";
    for (std::size_t i = 0; i < english.size();) {
        if (const std::size_t held = placeholder_at(english, i); held > 0) {
            text += english.substr(i, held);
            i += held;
            continue;
        }
        const auto* accent = std::ranges::find(accents, english[i], &std::pair<char, std::string_view>::first);
        text += accent == accents.end() ? std::string(1, english[i]) : std::string(accent->second);
        ++i;
    }
    std::size_t longer = english.size() * 2 / 5;
    for (std::size_t i = 0; longer > 0; i = (i + 1) % filling.size()) {
        const bool whole = (static_cast<unsigned char>(filling[i]) & 0xC0U) != 0x80U;  // the first byte of a letter
        if (whole) {
            --longer;
        }
        text += filling[i];
        while (i + 1 < filling.size() && (static_cast<unsigned char>(filling[i + 1]) & 0xC0U) == 0x80U) {
            text += filling[++i];
        }
    }
    return text + "]";
}

/// The table of another language with this one's words in place of its own.
inline std::string pseudo_table(std::string_view table) {
    std::string made;
    std::string english;
    while (!table.empty()) {
        const std::size_t end = std::min(table.find('\n'), table.size());
        const std::string_view line = table.substr(0, end);
        table.remove_prefix(std::min(end + 1, table.size()));
        if (line.empty() || line.front() == '#' || line.front() == '@') {
            continue;
        }
        if (english.empty()) {
            english = line;
        } else {
            made += english + "\n" + pseudo(english) + "\n\n";
            english.clear();
        }
    }
    return made;
}

}  // namespace truehang::test
