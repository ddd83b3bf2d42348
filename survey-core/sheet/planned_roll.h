// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "rolls/house_plan.h"
#include "sheet/drawing.h"
#include "sheet/words.h"

#include <string>
#include <vector>

namespace truehang {

/// What stands in a piece, line by line after its number.
struct DrawnPiece {
    std::vector<std::string> lines;
    std::string mark;   ///< the running mark that it is cut at, as it is written
    bool half = false;  ///< takes half of the width
};

struct PlannedRollOptions {
    double width = 178.0;                   ///< of the target, mm
    Length row = Length::mm(10000);         ///< of the roll in one row; what follows stands in the next
    Length cloth_width = Length::mm(1400);  ///< of the cloth; drawn to the same scale as its length
};

/// One roll to scale, row under row as it is unrolled: its pieces numbered in the order of cutting, flaws hatched,
/// joins as double lines, what is left over dashed, the marks that are cut at above and the metres below. `pieces` are
/// in the order of the plan's cuts.
[[nodiscard]] Elevation planned_roll_drawing(const Roll& roll, const PlannedRoll& plan,
                                             const std::vector<DrawnPiece>& pieces,
                                             const PlannedRollOptions& options = {});

}  // namespace truehang
