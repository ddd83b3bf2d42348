// SPDX-License-Identifier: Apache-2.0
#include "protocol/pairing_code.h"

namespace truehang::sync {

namespace {

constexpr std::string_view alphabet = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

char plain(char c) {
    const char upper = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    if (upper == 'O') {
        return '0';
    }
    return upper == 'I' || upper == 'L' ? '1' : upper;
}

}  // namespace

std::string pairing_code(std::uint64_t random_bits) {
    std::string code;
    for (std::size_t i = 0; i < pairing_code_length; ++i) {
        if (i == pairing_code_length / 2) {
            code += '-';
        }
        code += alphabet[(random_bits >> (5U * i)) & 31U];
    }
    return code;
}

std::optional<std::string> read_pairing_code(std::string_view typed) {
    std::string code;
    for (const char c : typed) {
        if (c == ' ' || c == '-' || c == '\t') {
            continue;
        }
        const char character = plain(c);
        if (alphabet.find(character) == std::string_view::npos || code.size() == pairing_code_length) {
            return std::nullopt;
        }
        code += character;
    }
    return code.size() == pairing_code_length ? std::optional(code) : std::nullopt;
}

}  // namespace truehang::sync
