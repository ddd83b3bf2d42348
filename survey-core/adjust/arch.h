// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/plane_figure.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang {

/// The curve of an arch over its springing line.
enum class ArchForm {
    semicircle,     ///< radius half the width
    segmental,      ///< one circle, less than half of it
    three_centred,  ///< two equal side arcs, upright at the springing, that run into a flatter one at the crown
    ordinates,      ///< none of these: only the heights that were read
};
[[nodiscard]] std::string_view word_of(ArchForm form);

/// The curve of an arch that stands symmetrically over its width. Circle through both springings and the crown: radius
/// (w^2/4 + h^2)/(2 h), the sagitta formula (circular segments in any engineer's handbook, as (c^2 + 4 h^2)/(8 h)).
/// Three centres, derived: side arcs of radius r about (r, 0) and (w - r, 0), crown arc of radius
/// (a^2 - 2 a r + h^2)/(2 (h - r)) with a = w/2, from the distance of the centres being the radii's difference.
struct ArchCurve {
    ArchForm form = ArchForm::ordinates;
    double width = 0.0, rise = 0.0;  ///< mm, above 0
    double side_radius = 0.0;        ///< of three centres

    /// Of the circle, of three centres that of the crown.
    [[nodiscard]] double radius() const;
    /// The height over the springing line, so far along it from the left.
    [[nodiscard]] double height_at(double along) const;
};

/// An arch as a plane figure: the crown stands over the middle of the springing line, its height over the sill is the
/// mean of the springings' and the rise; the ordinates, where there are some, lie on the simplest curve with which all
/// adds up at 0.999.
class Arch {
public:
    [[nodiscard]] static std::optional<Arch> adjusted(const std::vector<CountedReading>& readings,
                                                      const TapeRule& tape);

    [[nodiscard]] const PlaneFigure& figure() const { return figure_; }
    /// Only where ordinates were read.
    [[nodiscard]] std::optional<ArchForm> form() const { return form_; }
    /// Of the stations that the figure holds (heights are the plumb lines'), and `arch.radius`; of three centres
    /// `arch.radius.crown` and `arch.radius.side`.
    [[nodiscard]] std::map<std::string, Estimate> lengths() const;

private:
    Arch(PlaneFigure figure, std::optional<ArchForm> form, std::vector<FigureReading> readings)
        : figure_(std::move(figure)), form_(form), readings_(std::move(readings)) {}

    PlaneFigure figure_;
    std::optional<ArchForm> form_;
    std::vector<FigureReading> readings_;
};

}  // namespace truehang
