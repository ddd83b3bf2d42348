// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "light/window_light.h"

namespace truehang {

/// How much sun the cloth of a window stands in.
enum class Exposure { little, some, strong };
/// By the hours of possible sun on the cloth in a year: up to 900, up to 1800, above. Common practice, no source.
[[nodiscard]] Exposure exposure_of(double hours_on_cloth);
/// The least class of the blue wool scale (ISO 105-B02) to ask of a cloth so exposed: 4, 5, 6. Common practice, no
/// source: doses differ by a factor of three either way.
[[nodiscard]] int blue_wool_for(Exposure exposure);

/// What is worth saying of cloth, lining and daylight, each with its reason; never when a cloth will fade. `light` is
/// all but its advice.
[[nodiscard]] std::vector<LightAdvice> light_advice(const Survey& survey, const Window& window,
                                                    const WindowLight& light);

}  // namespace truehang
