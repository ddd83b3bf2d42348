// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"
#include "units/result.h"

#include <array>
#include <vector>

namespace truehang {

/// A point of the upright picture, pixels from its centre, x to the right, y down.
struct PicturePoint {
    double x = 0.0, y = 0.0;
};

/// Four corners as they were tapped: the mean of each one's taps and its standard uncertainty in x and in y (pixels).
struct TappedQuad {
    std::array<PicturePoint, 4> at;
    std::array<double, 4> u;
};

struct TappedSheet {
    double width = 0.0, height = 0.0;  ///< mm, as its maker says
    TappedQuad corners;
};

/// What was tapped on a photo, ready to be adjusted.
struct TappedPlane {
    double radius = 0.0;  ///< from the picture's centre to its corner, pixels
    double tap_u = 0.0;   ///< of one tap, in x and in y, pixels
    TappedQuad opening;
    std::vector<TappedSheet> sheets;  ///< those with all four corners; one or more
};

/// How surely a finger under a loupe meets a corner, one standard uncertainty in x and in y: 1.5 pixels of a picture
/// 4000 pixels long, never less than one pixel (common practice, no source). It stands where nothing was tapped twice,
/// and counts as eight degrees of freedom beside the spread of what was.
inline constexpr double tap_u_px = 1.5;
inline constexpr double tap_u_of_longer_side = 4000.0;
inline constexpr double tap_degrees = 8.0;
/// What all taps of one corner have in common (blur, where the edge is taken to be), as a share of that.
inline constexpr double common_share = 1.0 / 3.0;

/// Takes the means of the taps and their spread, pooled over all corners. Error where it can't be a sheet and an
/// opening: corners missing, crossed or anticlockwise, a sheet without a size or too small in the picture. The text
/// says what to do.
[[nodiscard]] Result<TappedPlane> tapped_plane(const PhotoPlane& plane);

}  // namespace truehang
