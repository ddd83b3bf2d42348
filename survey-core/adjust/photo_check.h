// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/network.h"
#include "adjust/photo_plane.h"
#include "adjust/tape.h"
#include "survey/counted.h"

#include <optional>
#include <string>
#include <vector>

// What photos say of an opening, held against what the tape says. A photo never measures: it changes no size and stands
// in for no reading.

namespace truehang {

/// The name of its check among the others.
inline constexpr std::string_view photo_network_name = "photo";

/// One standard uncertainty of how far a side bows between its corners, mm (common practice, no source): a photo of the
/// corners doesn't see it.
inline constexpr double bow_u = 10.0;

/// A size of the opening by its photos, straight from corner to corner.
struct PhotoSize {
    std::string station;
    Length value;
    Length u;
};

/// The opening by all photos of a window together.
struct PhotosTogether {
    OpeningCorners opening{};
    std::vector<double> covariance;  ///< of `opening`, row by row
    std::size_t photos = 0;

    /// The eight sizes, in the order of `opening_sizes`.
    [[nodiscard]] std::vector<PhotoSize> sizes() const;
};

/// Puts photos of one opening together; sheets of one size have the same cut in all. Error where they contradict each
/// other (chi-square at 0.999), or none is given.
[[nodiscard]] Result<PhotosTogether> photos_together(const std::vector<PhotoShape>& shapes);

/// Whether an opening of this shape is told by four corners: a recess, a frame, a door.
[[nodiscard]] bool has_four_corners(Shape shape);

/// So many photos of a window are worked as a tape, its first.
inline constexpr std::size_t most_photos_worked = 16;

/// What the photos of a window say together, by those of its own that can be worked; nothing where none can, or they
/// contradict each other, or the shape hasn't four corners.
[[nodiscard]] std::optional<PhotosTogether> opening_by_photos(const Window& window, Shape shape);

/// The check of the tape by the photos, as a network of the measured readings of those stations alone: its chi-square
/// is what the photos add to the tape's own (that of both adjusted together, less that of the tape), so what readings
/// say of each other doesn't count in it. Redundancy: the independent sizes compared. Nothing without such readings.
[[nodiscard]] std::optional<Network> photo_network(const PhotosTogether& photos,
                                                   const std::vector<CountedReading>& readings, const TapeRule& tape);

}  // namespace truehang
