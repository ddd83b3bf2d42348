// SPDX-License-Identifier: Apache-2.0
#include "trials.h"

namespace truehang::trial {

WindowFigures figures_of(const Visit& visit, const Window& window) {
    static const Room room = [] {
        Room made;
        made.id = "room";
        return made;
    }();
    return work_out_window(visit.survey(), room, window);
}

}  // namespace truehang::trial
