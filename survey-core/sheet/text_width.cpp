// SPDX-License-Identifier: Apache-2.0
#include "sheet/elevation.h"

namespace truehang {

double plain_text_width(std::string_view text, double size, bool bold) {
    // Lato 2.0: tabular figures are 0.58 of the size; its widest letters that drawings set (m, M, W) are below 1.0.
    double width = 0.0;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if ((byte & 0xC0U) == 0x80U) {
            continue;  // a later byte of a letter already counted
        }
        const bool figure = (c >= '0' && c <= '9') || byte >= 0x80U;
        const bool narrow = c == ' ' || c == '.' || c == ',' || c == '\'' || c == '"' || c == '/';
        width += figure ? 0.58 : narrow ? 0.45 : 1.0;
    }
    return width * size * (bold ? 1.04 : 1.0);
}

}  // namespace truehang
