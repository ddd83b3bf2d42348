// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "light/panes.h"
#include "light/window_light.h"

#include <string>
#include <vector>

namespace truehang {

struct RoomDaylight {
    std::optional<Daylight> factors;   ///< none where the room’s size or the window’s glass isn’t known
    std::vector<std::string> assumed;  ///< sentences
};

/// Of one window, and of the room with all its windows.
[[nodiscard]] RoomDaylight room_daylight(const Survey& survey, const Room& room, const Window& window,
                                         const FiguresOf& figures);

/// The share of a window’s glass that stays free with what hangs there drawn back, 0 to 1; none where nothing that is
/// known to cover it hangs there.
[[nodiscard]] std::optional<double> free_share(const Panes& panes, const std::vector<LayerFigures>& layers);

}  // namespace truehang
