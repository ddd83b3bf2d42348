// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing.h"
#include "sheet/roll_cuts.h"

namespace truehang {

/// A roll from its outer end, unrolled and folded into at most five strips, with its pieces numbered as the cutting
/// list has them. What is passed over is hatched; in a piece of a one-way cloth an arrow points to its top. In mm of
/// paper, 180 wide.
[[nodiscard]] Elevation roll_drawing(const RollCuts& roll, Length length, bool one_way = false);

}  // namespace truehang
