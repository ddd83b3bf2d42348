// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "light/window_sun.h"

#include <optional>
#include <string_view>

namespace truehang {

/// The offsets from UTC of a zone of the IANA time zone database (`Europe/London`), by this machine’s copy of it; none
/// where there is no copy, or no such zone. What is returned remembers where it looked last: each thread takes its own.
[[nodiscard]] std::optional<OffsetAt> offset_in(std::string_view zone);

/// The sun’s own time at a longitude, without the equation of time: where no zone is known.
[[nodiscard]] OffsetAt offset_by_sun(Angle longitude);

}  // namespace truehang
