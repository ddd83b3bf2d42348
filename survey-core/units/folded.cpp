// SPDX-License-Identifier: Apache-2.0
#include "units/folded.h"

#include <algorithm>

namespace truehang {
namespace {

/// The small letter of a two-byte code point, after Unicode's simple case folding; itself where it has none.
char32_t small_letter(char32_t letter) {
    const auto within = [letter](char32_t first, char32_t last) { return letter >= first && letter <= last; };
    if ((within(0xC0, 0xDE) && letter != 0xD7) || (within(0x391, 0x3AB) && letter != 0x3A2) || within(0x410, 0x42F)) {
        return letter + 0x20;
    }
    if (within(0x400, 0x40F)) {
        return letter + 0x50;
    }
    if (within(0x100, 0x12F) || within(0x132, 0x137) || within(0x14A, 0x177)) {
        return letter | 1U;  // pairs whose capital is even
    }
    if (within(0x139, 0x148) || within(0x179, 0x17E)) {
        return letter + letter % 2;  // pairs whose capital is odd
    }
    return letter == 0x178 ? char32_t{0xFF} : letter;
}

bool is_second_byte(std::string_view text, std::size_t at) {
    return at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U;
}

}  // namespace

std::string folded(std::string_view text) {
    std::string made;
    made.reserve(text.size());
    for (std::size_t at = 0; at < text.size(); ++at) {
        const auto byte = static_cast<unsigned char>(text[at]);
        if (byte <= ' ') {
            if (!made.empty() && made.back() != ' ') {
                made.push_back(' ');
            }
        } else if (byte >= 'A' && byte <= 'Z') {
            made.push_back(static_cast<char>(byte + ('a' - 'A')));
        } else if (byte >= 0xC2 && byte <= 0xDF && is_second_byte(text, at + 1)) {
            const char32_t letter = (byte & 0x1FU) << 6U | (static_cast<unsigned char>(text[++at]) & 0x3FU);
            const char32_t small = small_letter(letter);
            made.push_back(static_cast<char>(0xC0U | small >> 6U));
            made.push_back(static_cast<char>(0x80U | (small & 0x3FU)));
        } else {
            made.push_back(text[at]);
        }
    }
    return made;
}

std::vector<std::string> search_words(std::string_view typed) {
    const std::string text = folded(typed.substr(0, longest_search));
    std::vector<std::string> words;
    for (std::size_t at = 0; at < text.size() && words.size() < most_search_words;) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        if (end > at) {
            words.push_back(text.substr(at, end - at));
        }
        at = end + 1;
    }
    return words;
}

}  // namespace truehang
