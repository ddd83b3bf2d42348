// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/document.h"
#include "light/sun.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <fstream>
#include <numbers>

namespace truehang::test {

inline std::ifstream light_reference(const std::string& name) {
    std::ifstream file(TRUEHANG_SOURCE_DIR "/tests/reference/light/" + name);
    if (!file) {
        throw std::runtime_error(name);
    }
    return file;
}

inline nlohmann::json light_json(const std::string& name) {
    auto file = light_reference(name);
    return nlohmann::json::parse(file);
}

inline Place place(double latitude, double longitude) { return {Angle::degrees(latitude), Angle::degrees(longitude)}; }

inline Moment utc(const std::string& text) { return read_rfc3339(text).value(); }

/// Degrees between two directions.
inline double separation(const SunPosition& one, const SunPosition& other) {
    const auto a = direction_of(one);
    const auto b = direction_of(other);
    const double cross =
        std::hypot(a.north * b.up - a.up * b.north, a.up * b.east - a.east * b.up, a.east * b.north - a.north * b.east);
    return std::atan2(cross, a.east * b.east + a.north * b.north + a.up * b.up) * 180.0 / std::numbers::pi;
}

}  // namespace truehang::test
