// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/words.h"
#include "survey/survey.h"
#include "units/result.h"

#include <cstddef>
#include <string>

namespace truehang {

/// The top of an arch or a gable at 1 : 1, from its feet to its crown or apex, as an SVG whose width, height and view
/// box are in mm: the adjusted shape's outline, its base line, its middle (of a gable the line of its apex), the
/// ordinates that were taken, and a line of 100 mm to check the print by. Under it stand the top edges of the curtains
/// that follow the shape (`curtain_templates`). `window_index` as for `measure_sheet`.
/// Errors: `missing` where there is no such window, where its top is straight, or where its width or rise wasn't
/// measured.
[[nodiscard]] Result<std::string> template_svg(const Survey& survey, const Figures& figures, std::size_t window_index,
                                               const SheetStyle& style = {});

}  // namespace truehang
