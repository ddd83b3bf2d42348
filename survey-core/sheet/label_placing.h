// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing.h"
#include "sheet/elevation.h"

#include <string>
#include <vector>

namespace truehang {

/// A label that wants a place beside the segment `along`.
struct WantedLabel {
    std::string text;
    std::string station;
    Point from, to;      ///< the tape that it says
    double size = 16.0;  ///< in target units
    bool bold = false;
    Role role = Role::ink;
    int importance = 0;     ///< the higher, the earlier it finds its place
    bool must = false;      ///< never left out
    double outward = -1.0;  ///< the side it would rather stand on: -1 left of (above) its tape, 1 right of (below)
    bool over_own = false;  ///< may break its own hairline
};

/// Finds places for labels on a drawing: in the target, not on each other, not on the end of a line, not across ink or
/// thread; over a hairline only where no other place is near. What finds none is left out, but a `must`, which looks
/// further and further from its tape.
void place_labels(Elevation& elevation, std::vector<WantedLabel> wanted, const TextWidth& text_width, double pixel);

}  // namespace truehang
