// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing.h"

#include <string>
#include <utility>
#include <vector>

namespace truehang {

/// A spot in mm: x to the right, y up.
using Spot = std::pair<double, double>;

/// The widths of lines in device-independent px.
namespace stroke_px {
inline constexpr double hair = 0.8;
inline constexpr double fine = 1.0;
inline constexpr double ink = 1.5;
inline constexpr double strong = 2.0;
inline constexpr double heavy = 3.0;
}  // namespace stroke_px

/// Puts strokes given in millimetres on an elevation's target.
class DrawingBoard {
public:
    /// `zero` is where the spot (0, 0) lies on the target; `pixel` as in ElevationOptions.
    DrawingBoard(Elevation& elevation, Point zero, double scale, double pixel)
        : elevation_(elevation), zero_(zero), scale_(scale), pixel_(pixel) {}

    [[nodiscard]] Point at(Spot spot) const { return {zero_.x + scale_ * spot.first, zero_.y - scale_ * spot.second}; }
    [[nodiscard]] double scale() const { return scale_; }
    /// So many device-independent px in target units, and in mm of the window.
    [[nodiscard]] double px(double pixels) const { return pixels * pixel_; }
    [[nodiscard]] double mm_of_px(double pixels) const { return pixels * pixel_ / scale_; }
    [[nodiscard]] const Elevation& elevation() const { return elevation_; }

    void line(Role role, double width_px, Spot from, Spot to, const std::string& part);
    void polyline(Role role, double width_px, const std::vector<Spot>& spots, const std::string& part);
    /// A closed outline; `filled` with its role's colour.
    void polygon(Role role, double width_px, const std::vector<Spot>& spots, const std::string& part,
                 bool filled = false);
    void rectangle(Role role, double width_px, Spot low_left, Spot high_right, const std::string& part,
                   bool filled = false);
    void circle(Role role, double width_px, Spot centre, double radius_mm, const std::string& part,
                bool filled = false);
    void stroke(Stroke stroke) { elevation_.strokes.push_back(std::move(stroke)); }

private:
    Elevation& elevation_;
    Point zero_;
    double scale_;
    double pixel_;
};

}  // namespace truehang
