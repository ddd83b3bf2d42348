// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

namespace truehang {

/// How many bytes at a file's beginning tell what picture it is.
inline constexpr std::size_t picture_signature = 12;

/// The ending of a picture file that begins so: `.jpg` (ITU-T T.81, B.1.1.3), `.png` (ISO/IEC 15948, 5.2), `.webp`
/// (RFC 9649, 2.4), `.heic` or `.avif` (ISO/IEC 14496-12, 4.3); empty for anything else.
[[nodiscard]] inline std::string_view picture_ending(std::string_view beginning) {
    using namespace std::string_view_literals;
    if (beginning.starts_with("\xff\xd8\xff"sv)) {
        return ".jpg";
    }
    if (beginning.starts_with("\x89PNG\r\n\x1a\n"sv)) {
        return ".png";
    }
    if (beginning.size() < picture_signature) {
        return {};
    }
    if (beginning.starts_with("RIFF"sv) && beginning.substr(8, 4) == "WEBP"sv) {
        return ".webp";
    }
    if (beginning.substr(4, 4) == "ftyp"sv) {
        const std::string_view brand = beginning.substr(8, 4);
        return brand == "avif"sv || brand == "avis"sv                        ? ".avif"sv
               : brand == "heic"sv || brand == "heix"sv || brand == "mif1"sv ? ".heic"sv
                                                                             : ""sv;
    }
    return {};
}

}  // namespace truehang
