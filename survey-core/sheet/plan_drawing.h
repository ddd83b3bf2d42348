// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing_board.h"
#include "sheet/elevation.h"
#include "sheet/window_outline.h"

namespace truehang {

/// The small plan of a bay beneath its elevation: the facets from above, their corners, the mouth, the room below.
class PlanSketch {
public:
    PlanSketch(const WindowOutline& outline, const ElevationOptions& options);

    /// The height that it takes at the foot of the target, in target units; 0 where there is none.
    [[nodiscard]] double room() const { return room_; }
    /// What draws on it, in mm of the plan.
    [[nodiscard]] DrawingBoard board(Elevation& elevation) const;
    void draw(DrawingBoard& board) const;

private:
    void draw_walls(DrawingBoard& board) const;
    void draw_gap(DrawingBoard& board) const;

    const WindowOutline& outline_;
    double room_ = 0.0;
    double scale_ = 1.0;
    double pixel_ = 1.0;
    Point zero_;
};

}  // namespace truehang
