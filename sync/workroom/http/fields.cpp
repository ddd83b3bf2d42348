// SPDX-License-Identifier: Apache-2.0
#include "workroom/http/fields.h"

#include "workroom/http/http_server.h"

#include <algorithm>

namespace truehang::http {

std::string lower(std::string_view text) {
    std::string lowered(text);
    std::transform(lowered.begin(), lowered.end(), lowered.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; });
    return lowered;
}

bool is_field_value(std::string_view value) {
    return std::ranges::all_of(
        value, [](char c) { return c == '\t' || (static_cast<unsigned char>(c) >= 0x20 && c != 0x7f); });
}

std::string_view RequestHead::header(std::string_view lower_case_name) const {
    for (const auto& [name, value] : headers) {
        if (lower(name) == lower_case_name) {
            return value;
        }
    }
    return {};
}

}  // namespace truehang::http
