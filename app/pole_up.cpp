// SPDX-License-Identifier: Apache-2.0
#include "pole_up.h"

#include "sizing/layer.h"

#include <algorithm>

namespace truehang {

namespace {

bool is_fixed(const std::optional<Word<Stage>>& stage) { return stage && stage->is(Stage::fixed); }

bool is_of_pole(std::string_view station) { return station.starts_with("pole."); }

}  // namespace

bool hangs_by_pole_readings(const Layer& layer) {
    const auto asked = asked_of(layer);
    return !asked || !(asked->is_inside_blind() || asked->is_shaped());
}

bool is_up(const Window& window) {
    return std::ranges::any_of(window.layers, [](const Layer& layer) {
        return layer.hardware && is_fixed(layer.hardware->stage) && hangs_by_pole_readings(layer);
    });
}

bool waits_to_be_taken_up(const Window& window, std::string_view station, const Reading* kept) {
    return is_of_pole(station) && is_up(window) && kept != nullptr && !is_fixed(kept->stage);
}

void place_reading(const Window& window, const Reading* kept, Reading& reading) {
    if (waits_to_be_taken_up(window, reading.station, kept)) {
        reading.stage = Stage::fixed;  // beside the planned one, which stays to be compared with
    } else if (kept != nullptr) {
        reading.replaces = kept->id;
        reading.stage = kept->stage;
    } else if (is_of_pole(reading.station) && is_up(window)) {
        reading.stage = Stage::fixed;
    }
}

}  // namespace truehang
