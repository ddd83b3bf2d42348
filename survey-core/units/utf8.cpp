// SPDX-License-Identifier: Apache-2.0
#include "units/utf8.h"

#include <algorithm>
#include <array>

namespace truehang {

namespace {

/// What may stand first, and second after it, in a character of `length` bytes.
struct Form {
    unsigned char from, to, second_from, second_to;
    std::size_t length;
};

// RFC 3629, section 4.
constexpr std::array<Form, 9> forms{{{0x00, 0x7f, 0, 0, 1},
                                     {0xc2, 0xdf, 0x80, 0xbf, 2},
                                     {0xe0, 0xe0, 0xa0, 0xbf, 3},
                                     {0xe1, 0xec, 0x80, 0xbf, 3},
                                     {0xed, 0xed, 0x80, 0x9f, 3},
                                     {0xee, 0xef, 0x80, 0xbf, 3},
                                     {0xf0, 0xf0, 0x90, 0xbf, 4},
                                     {0xf1, 0xf3, 0x80, 0xbf, 4},
                                     {0xf4, 0xf4, 0x80, 0x8f, 4}}};

}  // namespace

std::size_t character_length(std::string_view text) {
    const auto at = [&text](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const auto* form = std::find_if(forms.begin(), forms.end(), [&](const Form& one) {
        return !text.empty() && at(0) >= one.from && at(0) <= one.to;
    });
    if (form == forms.end() || text.size() < form->length) {
        return 0;
    }
    bool fits = form->length == 1 || (at(1) >= form->second_from && at(1) <= form->second_to);
    for (std::size_t i = 2; i < form->length; ++i) {
        fits = fits && at(i) >= 0x80 && at(i) <= 0xbf;
    }
    return fits ? form->length : 0;
}

bool is_utf8(std::string_view text) {
    while (!text.empty()) {
        const auto length = character_length(text);
        if (length == 0) {
            return false;
        }
        text.remove_prefix(length);
    }
    return true;
}

}  // namespace truehang
