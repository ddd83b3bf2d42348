// SPDX-License-Identifier: Apache-2.0
#include "figures/next_step.h"

#include "figures/agreement.h"
#include "survey/standing.h"

#include <algorithm>

namespace truehang {

namespace {

bool can_make_something(const Figures& figures) {
    return std::ranges::any_of(figures.windows, [](const WindowFigures& window) {
        return std::ranges::any_of(window.layers, [](const LayerFigures& layer) { return layer.finished.has_value(); });
    });
}

bool is_outdated(const Survey& survey, const Figures& figures) {
    return !agreed_and_gone(survey).empty() || std::ranges::any_of(figures.windows, [](const WindowFigures& window) {
        return std::ranges::find(window.flags, agreement_outdated, &Flag::code) != window.flags.end();
    });
}

}  // namespace

Next next_of(const Survey& survey, const Figures& figures, bool sent) {
    bool any = false;
    for (const Room& room : survey.rooms) {
        any = any || !room.windows.empty();
    }
    if (!any) {
        return {NextStep::add_window};
    }
    if (sent) {
        return {NextStep::done};
    }
    for (const Room& room : survey.rooms) {
        for (const Window& window : room.windows) {
            const auto [taken, asked] = stations_taken(window);
            if (asked == 0 || taken < asked) {
                return {NextStep::measure, window.id};
            }
        }
    }
    if (!survey.signed_off) {
        return {can_make_something(figures) ? NextStep::agree : NextStep::send};
    }
    return {is_outdated(survey, figures) ? NextStep::agree_again : NextStep::send};
}

}  // namespace truehang
