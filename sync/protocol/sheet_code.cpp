// SPDX-License-Identifier: Apache-2.0
#include "protocol/sheet_code.h"

#include "protocol/digest.h"

#include <cstdint>

namespace truehang::sync {

namespace {

constexpr std::string_view alphabet = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
constexpr std::string_view hexadecimal = "0123456789abcdef";
constexpr std::size_t code_length = 12;
constexpr std::size_t group = 4;

char plain(char c) {
    const char upper = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
    if (upper == 'O') {
        return '0';
    }
    return upper == 'I' || upper == 'L' ? '1' : upper;
}

}  // namespace

std::string sheet_code(std::string_view sha256_hex) {
    if (!sha256_from_hex(sha256_hex)) {
        return {};
    }
    std::uint64_t bits = 0;
    for (const char digit : sha256_hex.substr(0, sheet_code_digits)) {
        bits = bits << 4U | hexadecimal.find(digit);
    }
    std::string code;
    for (std::size_t i = 0; i < code_length; ++i) {
        code += i > 0 && i % group == 0 ? "-" : "";
        code += alphabet[bits >> (5U * (code_length - 1 - i)) & 31U];
    }
    return code;
}

std::optional<std::string> read_sheet_code(std::string_view typed) {
    std::uint64_t bits = 0;
    std::size_t length = 0;
    for (const char c : typed) {
        if (c == ' ' || c == '-' || c == '\t') {
            continue;
        }
        const auto value = alphabet.find(plain(c));
        if (value == std::string_view::npos || length == code_length) {
            return std::nullopt;
        }
        bits = bits << 5U | value;
        ++length;
    }
    if (length != code_length) {
        return std::nullopt;
    }
    std::string digits(sheet_code_digits, '0');
    for (std::size_t i = 0; i < sheet_code_digits; ++i) {
        digits[i] = hexadecimal[bits >> (4U * (sheet_code_digits - 1 - i)) & 15U];
    }
    return digits;
}

std::string sheet_code_path(std::string_view code) { return "/sheet/" + std::string(code); }

}  // namespace truehang::sync
