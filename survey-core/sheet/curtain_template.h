// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/drawing.h"
#include "sheet/words.h"
#include "survey/survey.h"

#include <vector>

namespace truehang {

/// The top edges of a layer’s shaped curtains at 1 : 1, in mm: of each curtain first its finished edge as it hangs,
/// then flat on the table with the line it is cut by, its turnings outside the finished edge. The line under each is as
/// far above the finished hem as its words say. Each has a line of 100 mm to check the print by. None where no curtain
/// of the layer follows a shape.
[[nodiscard]] std::vector<Elevation> curtain_templates(const Survey& survey, const Layer& layer,
                                                       const LayerFigures& figures, const SheetStyle& style);

}  // namespace truehang
