// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/photo_taps.h"

#include <array>
#include <optional>
#include <vector>

namespace truehang {

/// Where a sheet lies on the wall: its middle (mm) and the angle of its first side against the opening's bottom.
struct SheetPlace {
    double x = 0.0, y = 0.0, angle = 0.0;
};

/// A first guess: the opening a rectangle, the lens without distortion.
struct PhotoGuess {
    double width = 0.0, height = 0.0;  ///< of the opening, mm
    /// From the rectangle's middle, in shares of its width and height, to pixels from the picture's centre; w is
    /// 1 + [6] x + [7] y.
    std::array<double, 8> homography{};
    std::vector<SheetPlace> sheets;
};

/// The homography that takes a rectangle to the opening (P. Heckbert 1989), and by it the width and height that give
/// the sheets their sizes best. Nothing where none do, or a sheet lies beyond the opening's horizon.
[[nodiscard]] std::optional<PhotoGuess> photo_guess(const TappedPlane& tapped);

}  // namespace truehang
