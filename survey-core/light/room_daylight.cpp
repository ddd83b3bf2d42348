// SPDX-License-Identifier: Apache-2.0
#include "light/room_daylight.h"

#include "figures/choices.h"
#include "light/daylight.h"
#include "units/saying.h"

#include <algorithm>

namespace truehang {
namespace {

/// The mean reflectance of a room’s surfaces: common practice, no source.
double reflectance_of(const Interior& interior) {
    const auto surfaces = interior.surfaces ? interior.surfaces->known() : std::nullopt;
    switch (surfaces.value_or(Surfaces::middling)) {
        case Surfaces::light:
            return 0.6;
        case Surfaces::middling:
            return 0.5;
        case Surfaces::dark:
            return 0.3;
    }
    return 0.5;
}

/// The factor of one window with nothing before it; none where its glass isn’t known.
std::optional<double> open_factor(const Window& window, const Panes& panes, const Interior& interior) {
    if (panes.glass_m2 <= 0.0) {
        return std::nullopt;
    }
    const Angle opposite = mean_height(skyline_of(window, {}));
    const Angle sky = visible_sky(opposite, panes.height, panes.openings.front().outer_depth);
    return average_daylight_factor(panes.glass_m2, room_surface(*interior.width, *interior.depth, *interior.height),
                                   sky, {.reflectance = reflectance_of(interior)});
}

/// The hardware that would clear the glass, and what is free of it then.
struct LongerPole {
    Length length;
    double free = 1.0;
};
std::optional<LongerPole> longer_pole(const Survey& survey, const Room& room, const Window& window, const Panes& panes,
                                      const WindowFigures& figures) {
    for (std::size_t index = 0; index < std::min(window.layers.size(), figures.layers.size()); ++index) {
        const auto usual = usual_variations(survey, window.layers[index], figures.layers[index]);
        const auto longer = std::ranges::find_if(
            usual, [](const Variation& variation) { return variation.hardware_length.has_value(); });
        if (longer == usual.end()) {
            continue;
        }
        const auto compared = compare(survey, room.id, window.id, window.layers[index].id, {*longer});
        if (!compared || compared->choices.size() < 2) {
            return std::nullopt;
        }
        auto layers = figures.layers;
        layers[index] = compared->choices.back().figures;
        return LongerPole{*longer->hardware_length, free_share(panes, layers).value_or(1.0)};
    }
    return std::nullopt;
}

}  // namespace

std::optional<double> free_share(const Panes& panes, const std::vector<LayerFigures>& layers) {
    if (panes.width.mm() <= 0.0) {
        return std::nullopt;
    }
    std::optional<double> free;
    for (const LayerFigures& layer : layers) {
        if (layer.covers_glass) {
            const int sides = layer.finished ? std::clamp(layer.finished->curtains, 1, 2) : 2;
            const Length each = std::max(Length(), *layer.covers_glass - panes.margin);
            free = std::min(free.value_or(1.0), std::max(0.0, 1.0 - sides * each.mm() / panes.width.mm()));
        }
    }
    return free;
}

RoomDaylight room_daylight(const Survey& survey, const Room& room, const Window& window, const FiguresOf& figures) {
    RoomDaylight found;
    if (!room.interior || !room.interior->width || !room.interior->depth || !room.interior->height) {
        return found;
    }
    Daylight factors;
    factors.least = least_daylight_factor(room.use);
    bool known = false;
    for (const Window& other : room.windows) {
        const WindowFigures* worked = figures(other);
        const Panes panes = worked != nullptr ? panes_of(survey, other, *worked, {}) : Panes();
        const auto open = open_factor(other, panes, *room.interior);
        if (!open) {
            factors.room_whole = false;
            continue;
        }
        const auto free = free_share(panes, worked->layers);
        factors.room += *open * free.value_or(1.0);
        if (other.id == window.id) {
            known = true;
            factors.open = *open;
            factors.drawn_back = free ? std::optional(*open * *free) : std::nullopt;
            if (const auto pole = longer_pole(survey, room, other, panes, *worked)) {
                factors.longer = *open * pole->free;
                factors.longer_length = pole->length;
            }
        }
    }
    if (known) {
        found.factors = factors;
        found.assumed.push_back(say("Daylight: glass lets 70 % through, dirt takes a tenth of it."));
    }
    return found;
}

}  // namespace truehang
