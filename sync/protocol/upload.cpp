// SPDX-License-Identifier: Apache-2.0
#include "protocol/upload.h"

#include <algorithm>
#include <charconv>

namespace truehang::sync {

namespace {

constexpr std::size_t most_digits = 15;

/// The item itself, without what stands about it and without parameters.
std::string_view bare_item(std::string_view field) {
    field = field.substr(0, field.find(';'));
    field.remove_prefix(std::min(field.find_first_not_of(' '), field.size()));
    return field.substr(0, field.find_last_not_of(' ') + 1);
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

}  // namespace

std::optional<long long> read_byte_count(std::string_view field) {
    const auto digits = bare_item(field);
    if (digits.empty() || digits.size() > most_digits || !std::all_of(digits.begin(), digits.end(), is_digit)) {
        return std::nullopt;
    }
    long long count = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), count);
    return count;
}

std::optional<bool> read_truth(std::string_view field) {
    const auto item = bare_item(field);
    return item == "?1" || item == "?0" ? std::optional(item == "?1") : std::nullopt;
}

std::string write_truth(bool truth) { return truth ? "?1" : "?0"; }

}  // namespace truehang::sync
