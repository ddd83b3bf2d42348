// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing_board.h"

#include <string>
#include <vector>

namespace truehang {

/// A box on the board in mm, and what is drawn in it, as shares of its width (from its left) and height (from below).
class BoxPencil {
public:
    /// `known`: the box was measured; else its lines are dashed.
    BoxPencil(DrawingBoard& board, Spot low_left, double width_mm, double height_mm, bool known, std::string part)
        : board_(board),
          low_left_(low_left),
          width_(width_mm),
          height_(height_mm),
          known_(known),
          part_(std::move(part)) {}

    [[nodiscard]] double width() const { return width_; }
    [[nodiscard]] double height() const { return height_; }
    /// So many mm as a share of the width or height, at most `most`.
    [[nodiscard]] double share_across(double mm, double most = 1.0) const;
    [[nodiscard]] double share_up(double mm, double most = 1.0) const;

    /// The box on paper, so that what lies behind is hidden.
    void outline() { panel(0.0, 0.0, 1.0, 1.0); }
    /// A part of it on paper, with the outline's line.
    void panel(double u1, double v1, double u2, double v2);
    /// A closed shape on paper, with the outline's line.
    void shape(const std::vector<Spot>& shares);
    void solid();
    void line(double u1, double v1, double u2, double v2);
    void polyline(const std::vector<Spot>& shares);
    void rectangle(double u1, double v1, double u2, double v2);
    void circle(double u, double v, double radius_mm);
    /// A quarter of an ellipse from (u, v ± rise) round to (u ± across, v): a swing or a moulding's hollow.
    void quarter(Spot centre, double across, double rise);
    /// Lines at an even spacing, never so near that they run together.
    void uprights(double spacing_mm, double low, double high);
    void levels(double spacing_mm, double from, double to);
    void crossed();

private:
    [[nodiscard]] int lines_in(double length_mm, double spacing_mm) const;
    [[nodiscard]] Spot spot(double u, double v) const {
        return {low_left_.first + u * width_, low_left_.second + v * height_};
    }
    [[nodiscard]] Role fine() const { return known_ ? Role::hairline : Role::guess; }

    DrawingBoard& board_;
    Spot low_left_;
    double width_, height_;
    bool known_;
    std::string part_;
};

}  // namespace truehang
