// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/drawing_board.h"
#include "sheet/elevation.h"
#include "sheet/window_outline.h"
#include "survey/house_rules.h"
#include "survey/survey.h"

#include <optional>
#include <string>

namespace truehang {

/// What a layer's curtain, blind or pelmet is drawn from.
struct Hanging {
    const WindowOutline& outline;
    const HouseRules& rules;
    const Layer& layer;
    const LayerFigures* figures = nullptr;  ///< null while there are none
    std::string cloth{};                    ///< the colour of its face cloth, `#rrggbb`; else drawn in paper
};

/// The heights of the top and bottom edge of what hangs there over the drawing's datum; nothing where no heading was
/// chosen.
struct HangingEdges {
    double top = 0.0, bottom = 0.0;
};
[[nodiscard]] std::optional<HangingEdges> hanging_edges(const Hanging& hanging);

/// Draws a layer's curtains or blind, drawn back or shut, with the heading as it is made, tie-backs and pelmet. Drawn
/// back they fill what the figures say that they fill.
void draw_hanging(DrawingBoard& board, const Hanging& hanging, Drawn drawn);

}  // namespace truehang
