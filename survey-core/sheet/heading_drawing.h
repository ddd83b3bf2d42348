// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "sheet/cloth_brush.h"
#include "sheet/hung_curtain.h"
#include "survey/house_rules.h"

#include <functional>

namespace truehang {

/// What a heading is drawn from.
struct DrawnHeading {
    const HungCurtain& curtain;
    const LayerAsked& asked;
    const LayerFigures* figures = nullptr;  ///< null while there are none
    const HouseRules& rules;
    std::function<double(double x)> pole;  ///< the height of the hardware’s centre line
    double thick = 28.0;                   ///< of the pole
    double flat = 0.0;                     ///< of the cloth; 0: not known
};

/// How far the top edge sags below its fixings, at the share `u` of the curtain’s width.
[[nodiscard]] double sag_at(const DrawnHeading& heading, const std::vector<double>& fixings, double u);

/// Draws the folds that fall from the heading to the hem, and then the heading itself: tabs over the pole, eyelets that
/// it runs through, a pocket gathered on it, pleats as they are made. Parts: `fold`; `tab`, `eyelet`, `pleat`, `ring`,
/// `pocket`, `tape`, `wave`. Each fixing is one line in ink, and stands where the figures say.
void draw_folds(const ClothBrush& brush, const DrawnHeading& heading, const std::vector<double>& fixings);
void draw_heading(const ClothBrush& brush, const DrawnHeading& heading, const std::vector<double>& fixings);

}  // namespace truehang
