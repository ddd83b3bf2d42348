// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/plane_figure.h"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace truehang {

/// The unknowns of a traverse of n facets are the chord, then x and y of the corners 1 to n - 1; the outer edges stand
/// at the origin and at (chord, 0).
struct TraversePlan {
    int facets = 2;

    [[nodiscard]] std::size_t unknowns() const { return 2 * static_cast<std::size_t>(facets) - 1; }
    [[nodiscard]] std::array<double, 2> corner(const std::vector<double>& point, int corner) const;

    /// Of facet 1 to n.
    [[nodiscard]] Told width(const std::vector<double>& point, int facet) const;
    /// Inside angle at corner 1 to n - 1, 0 to 360 degrees.
    [[nodiscard]] Told corner_angle(const std::vector<double>& point, int corner) const;
    [[nodiscard]] Told mouth_left(const std::vector<double>& point) const;
    [[nodiscard]] Told mouth_right(const std::vector<double>& point) const;
    [[nodiscard]] Told chord(const std::vector<double>& point) const;
    /// From the chord's line, to either side of it.
    [[nodiscard]] Told depth(const std::vector<double>& point, int corner) const;

    /// First guesses from what was read, by number: round the facets by widths and angles, by widths and depths (where
    /// all are there), and as a bay whose corners all turn alike.
    [[nodiscard]] std::optional<std::vector<double>> start(const FigureValues& values, std::size_t number) const;

private:
    /// Adds `share` of the derivatives of a difference of two corners.
    void add(Told& told, int from, int to, double by_dx, double by_dy) const;
    void add_heading(Told& told, const std::vector<double>& point, int from, int to, double share) const;
    [[nodiscard]] std::vector<double> unknowns_of(const std::vector<std::array<double, 2>>& corners) const;
};

}  // namespace truehang
