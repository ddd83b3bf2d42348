// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/plane_figure.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace truehang {

/// A gable as a plane figure: the bottom edge level, both sides and the line under the apex plumb. Its unknowns are the
/// width at the bottom, the heights of the feet of the two slopes, where the apex stands along the bottom edge, and its
/// height; the slopes check them: slope^2 = run^2 + rise^2 (Pythagoras). Where one half lacks a reading the other
/// stands alone.
class Gable {
public:
    [[nodiscard]] static std::optional<Gable> adjusted(const std::vector<CountedReading>& readings,
                                                       const TapeRule& tape);

    [[nodiscard]] const PlaneFigure& figure() const { return figure_; }
    /// Width at the bottom, apex along, slopes: those that the readings reach, read or not. Heights are the plumb
    /// lines'.
    [[nodiscard]] std::map<std::string, Estimate> lengths() const;

private:
    explicit Gable(PlaneFigure figure) : figure_(std::move(figure)) {}
    PlaneFigure figure_;
};

}  // namespace truehang
