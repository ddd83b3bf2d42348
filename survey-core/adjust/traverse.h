// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/plane_figure.h"
#include "units/plan_point.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace truehang {

/// A bay (or two openings that meet in a corner) seen from above: the traverse of its facets, closed by its mouth. The
/// left outer edge stands at the origin, the right one on the x axis; y runs away from the room. An inside angle is
/// that on the room's side: 180 degrees where two facets run straight on, less where the bay bends round the room, more
/// where it bends away.
class Traverse {
public:
    /// Adjusts facet widths, angles between facets and at the mouth, the chord and the corners' depths. Nothing where
    /// there are no two facets; without a figure where the readings don't determine every corner.
    [[nodiscard]] static std::optional<Traverse> adjusted(const std::vector<CountedReading>& readings, Shape shape,
                                                          const TapeRule& tape);

    [[nodiscard]] const PlaneFigure& figure() const { return figure_; }
    [[nodiscard]] int facets() const { return facets_; }

    /// The corners from the left outer edge to the right one; empty without a figure.
    [[nodiscard]] std::vector<PlanPoint> plan() const;
    /// Widths, chord and depths; the angles. By station: every facet, corner and the chord of a figure that is
    /// determined, depths and mouth angles where they were read.
    [[nodiscard]] std::map<std::string, Estimate> lengths() const;
    [[nodiscard]] std::map<std::string, AngleEstimate> angles() const;

    /// The length of a track bent round the bay at `off_wall` >= 0 from the glass wall line, on the room's side: each
    /// facet's line moved into the room, met at the corners, its ends square to the outer edges of the first and last
    /// facet. The sum of the widths less 2 off_wall tan(d/2) for every corner that turns by d = 180 degrees less its
    /// inside angle (more where it turns the other way). Derived: two lines moved by p meet at the corner's bisector,
    /// p tan(d/2) short of the corner on each. Nothing without a figure, where a facet is shorter than what it loses,
    /// and where a corner turns by more than 170 degrees.
    [[nodiscard]] std::optional<Estimate> track(Length off_wall) const;

private:
    Traverse(PlaneFigure figure, int facets, Shape shape, std::vector<std::string> read)
        : figure_(std::move(figure)), facets_(facets), shape_(shape), read_(std::move(read)) {}
    [[nodiscard]] bool was_read(const std::string& station) const;

    PlaneFigure figure_;
    int facets_ = 0;
    Shape shape_ = Shape::bay;
    std::vector<std::string> read_;
};

}  // namespace truehang
