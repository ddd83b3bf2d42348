// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/measured.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <numbers>
#include <string>
#include <string_view>
#include <vector>

namespace truehang {

inline constexpr double radians = std::numbers::pi / 180.0;

/// A window of one shape, measured as a test says.
class ShapeWindow {
public:
    explicit ShapeWindow(Shape shape) : shape_(shape) { window_->shape = Word<Shape>(shape); }

    ShapeWindow& take(const std::string& station, double value, How how = How::measured) {
        Reading reading;
        reading.id = station;
        reading.station = station;
        reading.how = Word<How>(how);
        if (station.ends_with("_deg")) {
            reading.angle = Angle::degrees(value);
        } else {
            reading.value = Length::mm(value);
        }
        window_->readings.push_back(std::move(reading));
        return *this;
    }

    Window& window() { return *window_; }
    [[nodiscard]] MeasuredWindow measured() const {
        return measure(*window_, shape_, leading_hang(*window_), TapeRule{}, LengthUnit::mm);
    }

private:
    Shape shape_;
    std::unique_ptr<Window> window_ = std::make_unique<Window>();  // counted readings point into it
};

inline const Network* network_of(const MeasuredWindow& window, std::string_view name) {
    const auto found = std::ranges::find(window.networks, name, &Network::name);
    return found == window.networks.end() ? nullptr : &*found;
}

inline const MeasuredSize* size_of(const std::vector<MeasuredSize>& sizes, std::string_view name) {
    const auto found = std::ranges::find(sizes, name, &MeasuredSize::name);
    return found == sizes.end() ? nullptr : &*found;
}

inline double mm_of(const MeasuredWindow& window, std::string_view name) {
    const auto sizes = sizes_of(window);
    const auto* size = size_of(sizes, name);
    return size != nullptr ? size->estimate.value.mm() : std::nan("");
}

inline double degrees_of(const MeasuredWindow& window, std::string_view name) {
    const auto sizes = sizes_of(window);
    const auto* size = size_of(sizes, name);
    return size != nullptr && size->angle ? size->angle->value.degrees() : std::nan("");
}

inline const Flag* flag_of(const MeasuredWindow& window, std::string_view code) {
    const auto found = std::ranges::find(window.flags, code, &Flag::code);
    return found == window.flags.end() ? nullptr : &*found;
}

}  // namespace truehang
