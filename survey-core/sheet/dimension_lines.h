// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing.h"

#include <string>

namespace truehang {

/// Dimension lines on a drawing in mm of paper: a hairline with a tick at each end and its figure over the middle.
class DimensionLines {
public:
    explicit DimensionLines(Elevation& drawing, double label_size = 3.6) : drawing_(drawing), size_(label_size) {}

    /// From x `left` to x `right` at height `y`, with guides from the edges at `edge_y`.
    void across(double left, double right, double y, double edge_y, const std::string& text);
    /// From y `top` to y `bottom` at `x`, with guides from the edges at `edge_x`.
    void up(double top, double bottom, double x, double edge_x, const std::string& text);
    /// A text whose middle stands at (x, y).
    void words(double x, double y, const std::string& text, bool bold = false);
    /// A text that begins at x, its middle at the height y.
    void words_from(double x, double y, const std::string& text);

private:
    void hair(Role role, Point from, Point to);
    void put(double left, double y, const std::string& text, bool bold);

    Elevation& drawing_;
    double size_;
};

}  // namespace truehang
