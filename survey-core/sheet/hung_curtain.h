// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "sheet/drawing_board.h"
#include "sizing/layer.h"

#include <optional>
#include <vector>

namespace truehang {

/// Where a tie-back gathers a curtain.
struct Waist {
    double y = 0.0;
    double left = 0.0, right = 0.0;
    bool holdback = false;
};

/// One curtain as it hangs, in mm of the drawing.
struct HungCurtain {
    double left = 0.0, right = 0.0, top = 0.0;
    std::vector<Spot> hem;       ///< from left to right
    bool leads_right = true;     ///< its leading edge, from which its figures count, is the right one
    bool drawn_back = false;     ///< its folds are pushed together
    std::optional<Waist> waist;  ///< where it is tied back

    [[nodiscard]] double width() const { return right - left; }
    [[nodiscard]] double bottom() const;
    [[nodiscard]] double hem_at(double x) const;
    /// Where what hangs at the share `u` of its width (0 left, 1 right) lies at the height `y`.
    [[nodiscard]] double x_at(double u, double y) const;
    /// A fold from the height `from` down to `to`, along the cloth.
    [[nodiscard]] std::vector<Spot> fold(double u, double from, double to) const;
    /// The cloth between two folds.
    [[nodiscard]] std::vector<Spot> flank(double u, double other, double from, double to) const;
};

/// The height of a line of spots at x, straight on beyond its ends.
[[nodiscard]] double height_on(const std::vector<Spot>& line, double x);

/// Where the tabs, eyelets, pleats or hooks of one curtain hang, as shares of its hung width from its left edge, in
/// ascending order. Tabs and eyelets keep their places on the flat as shares of it; before a pleat lies the cloth that
/// the pleats before it haven't taken up, so that each stands where it does when they are closed. Without figures,
/// so many as suit a usual curtain.
[[nodiscard]] std::vector<double> fixings(const LayerAsked& asked, const LayerFigures* figures, bool leads_right);

}  // namespace truehang
