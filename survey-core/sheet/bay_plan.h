// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "figures/figures.h"
#include "survey/counted.h"
#include "survey/survey.h"

#include <optional>
#include <utility>
#include <vector>

namespace truehang {

/// A bay, or two openings that meet, seen from above: the chord lies along x from the left mouth edge, outside is up,
/// the room below. mm.
struct BayPlan {
    std::vector<double> widths;     ///< of the facets, left to right
    std::vector<bool> width_known;  ///< measured, not a guess
    std::vector<double> angles;     ///< inside angle between facet N and N+1, degrees
    std::vector<bool> angle_known;
    /// The mouth's left edge, the corners, and where the last facet ends.
    std::vector<std::pair<double, double>> points;
    double chord = 0.0;  ///< as the facets give it; as read where it doesn't close
    bool chord_known = false;
    bool closes = true;  ///< false: facets, angles and chord are drawn as read, and don't meet

    [[nodiscard]] std::size_t facets() const { return widths.size(); }
};

/// The plan from the adjusted sizes, or from the readings where their network doesn't add up, so that what is wrong
/// shows; usual widths and angles (common practice, no source) where nothing was measured. The number of facets is that
/// of the window's walk, more where `active`, the station being measured, asks for more.
[[nodiscard]] BayPlan bay_plan_of(const Window& window, const WindowFigures& figures,
                                  const std::vector<CountedReading>& readings, std::string_view active = {});

/// `facet.3.width` is the 3 of `facet`; 0 where the word isn't of that family.
[[nodiscard]] std::size_t number_of(std::string_view word, std::string_view family);

}  // namespace truehang
