// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"

#include <string_view>

// A pole that is up is measured again: its planned readings then no longer say where it hangs.

namespace truehang {

/// What hangs here is placed by the readings of the pole: not a blind inside the recess, nor a top along an arch.
[[nodiscard]] bool hangs_by_pole_readings(const Layer& layer);

/// The surveyor has said that the pole, or the track, of a layer is up.
[[nodiscard]] bool is_up(const Window& window);

/// A station of the pole whose reading that counts, `kept` (null: none), is still the planned one while the pole is up.
[[nodiscard]] bool waits_to_be_taken_up(const Window& window, std::string_view station, const Reading* kept);

/// Makes a new reading of a station stand for the pole as it is up, or take the place of the one that counts.
void place_reading(const Window& window, const Reading* kept, Reading& reading);

}  // namespace truehang
