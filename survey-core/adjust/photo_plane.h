// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/photo_taps.h"

#include <array>
#include <string_view>
#include <vector>

// A photo as a rough tape: a sheet of known size and the opening lie in one plane, so their tapped corners give every
// size of the opening. One adjustment by weighted least squares has everything as unknowns: the opening's corners on
// the wall, the homography from wall to picture, the lens, where each sheet lies and how it was really cut.

namespace truehang {

/// The opening on the wall, mm: its bottom left corner is the origin, its bottom right one lies on the x axis (to the
/// right), y goes up. In order: x of the bottom right, x and y of the top right, x and y of the top left.
using OpeningCorners = std::array<double, 5>;

/// A size of the opening by its station, its derivatives by the corners.
struct OpeningSize {
    std::string_view station;
    double mm = 0.0;
    std::array<double, 5> by{};
};
/// The widths at top and bottom, the heights on the left and on the right, both diagonals; then what lies between the
/// middles of opposite sides: `opening.width.middle`, `opening.height.centre`.
[[nodiscard]] std::array<OpeningSize, 8> opening_sizes(const OpeningCorners& corners);
inline constexpr std::size_t sizes_between_corners = 6;

/// How far the lens moves a point at the picture's corner, as a share of its way from the centre, one standard
/// uncertainty, by the term of the square and that of the fourth power of that way: what a phone leaves of its lens's
/// distortion after correcting it (common practice, no source). Both are unknowns of the adjustment.
inline constexpr double lens_u_2 = 0.005;
inline constexpr double lens_u_4 = 0.002;

/// One standard uncertainty of how far the sides lean against the bottom, and how far the head slopes against it, mm
/// (common practice, no source). Without it a small sheet would say little of how the view narrows across the opening.
inline constexpr double out_of_square_u = 15.0;

/// What a sheet's side may differ from its size, one standard uncertainty, mm: ISO 216 allows 1.5 mm to 150 mm, 2 mm
/// to 600 mm and 3 mm above (from memory), each taken as a rectangular distribution (GUM 4.3.7).
[[nodiscard]] double sheet_side_u(double mm);

/// A sheet's size as it was said, mm. Sheets of one size are taken to have been cut alike, on all photos.
struct SheetSize {
    double width = 0.0, height = 0.0;
};

/// The opening by one photo.
struct PhotoShape {
    OpeningCorners opening{};
    std::vector<SheetSize> sizes;        ///< of its sheets, each once, the longer side as the height
    std::vector<double> cut;             ///< by how much they came out wider and higher, two a size
    std::vector<double> covariance;      ///< of `opening`, then `cut`, row by row
    std::array<double, 9> homography{};  ///< from the wall to pixels from the picture's centre, row by row, last is 1
    double lens_2 = 0.0, lens_4 = 0.0;   ///< what the lens adds, as `lens_u_2`
    double radius = 0.0;                 ///< from the picture's centre to its corner, pixels
    double tap_u = 0.0;                  ///< of one tap, pixels
    double chi2 = 0.0;                   ///< of taps and allowances
    int redundancy = 0;

    /// Where a point of the wall (mm) stands in the picture, pixels from its centre.
    [[nodiscard]] PicturePoint picture_of(double x, double y) const;
};

/// Works a photo. Error, with what to do, where it can't be: `tapped_plane`'s; what was tapped doesn't fit together;
/// the wall is seen too obliquely; the sizes would be surer by eye (a standard uncertainty above a tenth of them).
[[nodiscard]] Result<PhotoShape> photo_shape(const PhotoPlane& plane);

}  // namespace truehang
