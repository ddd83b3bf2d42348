// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "units/length.h"

#include <optional>
#include <string_view>

// How much daylight a room has: the average daylight factor of BS 8206-2, per cent of what stands under an open sky.

namespace truehang {

struct RoomLightFactors {
    double transmittance = 0.7;  ///< T, of the glass for diffuse light
    double maintenance = 0.9;    ///< M, of dirt
    double reflectance = 0.5;    ///< R, mean of the room’s surfaces; below 1
};

/// ADF % = M W θ T / (A (1 - R²)), W and A in m², θ in degrees: the angle of sky that the window’s middle sees in its
/// upright section. None where the room has no surface.
[[nodiscard]] std::optional<double> average_daylight_factor(double glass_m2, double room_surface_m2, Angle sky,
                                                            const RoomLightFactors& factors = {});

/// Of a room that is a box: floor, ceiling and walls, window included. m².
[[nodiscard]] double room_surface(Length width, Length depth, Length height);

/// θ of a window’s middle: 90° less what stands opposite, and less what its own head takes from outside.
[[nodiscard]] Angle visible_sky(Angle opposite, Length glass_height, Length outer_depth);

/// BS 8206-2: what a room of a dwelling should have at least, per cent, by the word for its use in `use` (kitchen,
/// living, bedroom); none for rooms that it says nothing of.
[[nodiscard]] std::optional<double> least_daylight_factor(std::string_view use);

}  // namespace truehang
