// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/photo_plane.h"

#include <QImage>
#include <QPointF>
#include <array>

namespace truehang {

/// A photo as it would look straight on: each of its pixels is a spot of the wall.
struct StraightPhoto {
    QImage picture;                    ///< transparent where the photo doesn’t reach
    std::array<QPointF, 4> opening{};  ///< the opening’s corners in its pixels: bottom left, bottom right, top right,
                                       ///< top left
};

/// The wall around an opening by a photo that was tapped as a tape, lens and all: the opening with 700 mm at each side,
/// 500 above and 900 below, its longer side of `most_px` pixels. `upright` is the whole photo at any size.
[[nodiscard]] StraightPhoto straightened(const QImage& upright, const PhotoShape& shape, int most_px = 1400);

}  // namespace truehang
