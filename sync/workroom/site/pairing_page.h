// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "protocol/time_text.h"
#include "workroom/site/reach.h"

#include <string>
#include <string_view>

namespace truehang::workroom {

/// A text as a QR code (ISO/IEC 18004, error correction M) in an SVG with its quiet zone; `said` is what it is for
/// those who don't see it. At most 1000 bytes.
[[nodiscard]] std::string picture_code(std::string_view text, std::string_view said);

/// The page that shows a new code once: large, with the addresses, and as a picture code.
[[nodiscard]] std::string pairing_page(const Reach& reach, const std::string& code, sync::Time until);

}  // namespace truehang::workroom
