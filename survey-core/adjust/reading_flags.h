// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/findings.h"

#include <vector>

namespace truehang {

struct MeasuredWindow;

/// What the readings of a window alone give cause to say: two-readings, typed-differs, rests-on-proposal,
/// does-not-add-up, reading-spread, out-of-square.
[[nodiscard]] std::vector<Flag> reading_flags(const MeasuredWindow& measured);

}  // namespace truehang
