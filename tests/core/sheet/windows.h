// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "document/document.h"
#include "figures/figures.h"
#include "sheet/elevation.h"
#include "survey/survey.h"

#include <gtest/gtest.h>

#include <fstream>
#include <initializer_list>
#include <sstream>
#include <string>
#include <utility>

namespace truehang::test {

inline std::string file_text(const std::string& path) {
    std::ifstream file(std::string(TRUEHANG_SOURCE_DIR) + "/" + path, std::ios::binary);
    EXPECT_TRUE(file.good()) << path;
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

/// The document contract's own example.
inline Survey contract_example() {
    return read_survey(file_text("tests/reference/contract/survey.example.json")).value();
}

using Readings = std::initializer_list<std::pair<const char*, double>>;

inline void take(Window& window, const std::string& station, double mm) {
    Reading reading;
    reading.id = "m" + std::to_string(window.readings.size() + 1);
    reading.station = station;
    reading.value = Length::mm(mm);
    window.readings.push_back(std::move(reading));
}

inline void take_angle(Window& window, const std::string& station, double degrees) {
    Reading reading;
    reading.id = "m" + std::to_string(window.readings.size() + 1);
    reading.station = station;
    reading.angle = Angle::degrees(degrees);
    window.readings.push_back(std::move(reading));
}

/// A survey of one window with these readings, in mm.
inline Survey one_window(Shape shape, Readings readings) {
    Survey survey;
    survey.id = "s";
    Window window;
    window.id = "w";
    window.name = "East window";
    window.shape = Word<Shape>(shape);
    for (const auto& [station, mm] : readings) {
        take(window, station, mm);
    }
    Room room;
    room.id = "r";
    room.name = "Net store";
    room.windows.push_back(std::move(window));
    survey.rooms.push_back(std::move(room));
    return survey;
}

inline Elevation drawn(const Survey& survey, const ElevationOptions& options = {}) {
    const Room& room = survey.rooms.front();
    const Window& window = room.windows.front();
    return elevation_of(survey, room, window, work_out_window(survey, room, window), options);
}

/// Where a spot in mm (x from the opening's bottom left corner, y over the floor there) lies on the drawing.
inline Point on_drawing(const Elevation& elevation, double x_mm, double y_mm) {
    return {elevation.origin.x + elevation.scale * x_mm, elevation.origin.y - elevation.scale * y_mm};
}

}  // namespace truehang::test
