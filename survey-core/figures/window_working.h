// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/plumb.h"
#include "cloth/plan.h"
#include "figures/figures.h"

#include <vector>

namespace truehang {

/// Pieces that one layer has cut.
struct LayerPieces {
    std::string layer;
    std::vector<Piece> pieces;
};

/// A window's figures with the pieces that go into the orders.
struct WorkedWindow {
    WindowFigures figures;
    std::vector<LayerPieces> pieces;
    std::optional<PlumbSpan> drop_along;  ///< of the first layer with a drop: the span of readings it was worked from
};

[[nodiscard]] WorkedWindow work_window(const Survey& survey, const Room& room, const Window& window);

}  // namespace truehang
