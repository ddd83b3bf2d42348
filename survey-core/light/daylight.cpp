// SPDX-License-Identifier: Apache-2.0
#include "light/daylight.h"

#include "light/degrees.h"
#include "units/folded.h"

#include <algorithm>
#include <cmath>

namespace truehang {

std::optional<double> average_daylight_factor(double glass_m2, double room_surface_m2, Angle sky,
                                              const RoomLightFactors& factors) {
    if (room_surface_m2 <= 0.0 || factors.reflectance >= 1.0) {
        return std::nullopt;
    }
    return factors.maintenance * glass_m2 * std::max(0.0, sky.degrees()) * factors.transmittance /
           (room_surface_m2 * (1.0 - factors.reflectance * factors.reflectance));
}

double room_surface(Length width, Length depth, Length height) {
    const double w = width.metres();
    const double d = depth.metres();
    const double h = height.metres();
    return 2.0 * (w * d + w * h + d * h);
}

Angle visible_sky(Angle opposite, Length glass_height, Length outer_depth) {
    const double head = std::atan2(outer_depth.mm(), glass_height.mm() / 2.0) / per_degree;
    return Angle::degrees(std::clamp(90.0 - head - opposite.degrees(), 0.0, 90.0));
}

std::optional<double> least_daylight_factor(std::string_view use) {
    const std::string words = folded(use);
    const auto has = [&](std::string_view word) { return words.find(word) != std::string::npos; };
    if (has("kitchen")) {
        return 2.0;
    }
    if (has("living")) {
        return 1.5;
    }
    return has("bedroom") ? std::optional(1.0) : std::nullopt;
}

}  // namespace truehang
