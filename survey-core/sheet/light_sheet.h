// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "light/window_light.h"
#include "sheet/sheet.h"
#include "survey/survey.h"

#include <cstddef>
#include <string>
#include <vector>

namespace truehang {

/// What is said of a window’s light, whoever shows it: phone, page and paper.
struct LightPanel {
    std::string facing;            ///< "Faces south, 184° ± 2°"
    std::vector<SheetMind> minds;  ///< what doesn’t agree or isn’t counted
    SheetBlock sun;                ///< hours of possible sun by quarter; no rows where it can’t be followed
    SheetBlock daylight;           ///< no rows where the room’s size isn’t known
    std::vector<LightAdvice> advice;
    std::vector<std::string> assumed, wanted;
};
[[nodiscard]] LightPanel light_panel(const Room& room, const WindowLight& light, const SheetStyle& style = {});

/// The light sheet of one window: its panel with the sun’s ways and the calendar. Index as for `measure_sheet`.
[[nodiscard]] Sheet light_sheet(const Survey& survey, const Figures& figures, std::size_t window_index,
                                const SheetStyle& style = {});

}  // namespace truehang
