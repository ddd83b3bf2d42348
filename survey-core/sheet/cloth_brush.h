// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/drawing_board.h"

#include <string>
#include <vector>

namespace truehang {

/// Draws cloth in its own colour, or in paper where none was said, and lines on it that stay legible.
class ClothBrush {
public:
    /// `colour` as the fabric has it; what isn't `#rrggbb` is no colour.
    ClothBrush(DrawingBoard& board, const std::string& colour);

    [[nodiscard]] DrawingBoard& board() const { return board_; }

    void fill(const std::vector<Spot>& spots, const std::string& part) const;
    /// What of it lies in the shade: the flank of a fold, the back of a curtain.
    void shade(const std::vector<Spot>& spots, const std::string& part) const;
    /// An open line over the cloth.
    void line(Role role, double width_px, const std::vector<Spot>& spots, const std::string& part) const;
    /// A closed one, over the cloth.
    void outline(Role role, double width_px, const std::vector<Spot>& spots, const std::string& part) const;
    /// The cloth’s own edge all round: in ink.
    void edge(double width_px, const std::vector<Spot>& spots, const std::string& part) const;

private:
    void stroke(Form form, Role role, double width_px, const std::vector<Spot>& spots, const std::string& part,
                const std::string& fill, const std::string& over) const;

    DrawingBoard& board_;
    std::string colour_, shade_;
};

/// A circle or an upright oval as spots.
[[nodiscard]] std::vector<Spot> oval(Spot centre, double across, double up);

}  // namespace truehang
