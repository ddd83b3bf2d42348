// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "adjust/network.h"
#include "adjust/tape.h"
#include "survey/counted.h"

#include <array>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang {

/// One for each unknown of a figure, zeros behind them; a bay of as many facets as may be has the most.
inline constexpr std::size_t most_unknowns = 2 * static_cast<std::size_t>(most_facets) - 1;
using Derivatives = std::array<double, most_unknowns>;

/// What a reading of a figure would say (mm, or degrees of an angle) where the figure's unknowns are at a point, and
/// its derivatives by them.
struct Told {
    double value = 0.0;
    Derivatives by{};
};
using Tells = std::function<Told(const std::vector<double>& point)>;

/// The readings of a figure by station, mm or degrees: what a first guess is made from.
using FigureValues = std::map<std::string_view, double>;
/// The value of a station, or null.
[[nodiscard]] const double* value_of(const FigureValues& values, std::string_view station);

/// Points to start from, best first, all of one size: the one of this number, from 0; nothing where there are no more.
using Starts = std::function<std::optional<std::vector<double>>(const FigureValues& values, std::size_t number)>;

struct FigureReading {
    const CountedReading* reading = nullptr;
    Tells tells;
};

/// How long a figure is solved for: to the end, or until it is plain that its readings won't add up.
enum class Solved { to_the_end, while_hopeful };

/// A figure of readings that aren't linear in its unknowns, adjusted from the nearest first guess: a bay's traverse, an
/// arch, a gable.
class PlaneFigure {
public:
    /// Adjusts the figure. Readings that are no evidence of their own (proposed, copied) take part only where nothing
    /// else gives what they give, so that they never make a loop. Without a solution where the readings don't
    /// determine every unknown that one of them touches.
    PlaneFigure(std::string name, const std::vector<FigureReading>& readings, Starts starts, const TapeRule& tape,
                Solved solved = Solved::to_the_end);

    [[nodiscard]] bool is_determined() const { return adjustment_.has_value(); }
    /// Where redundancy is left.
    [[nodiscard]] const std::optional<Network>& network() const { return network_; }
    /// There is redundancy, and no figure fits these readings at all.
    [[nodiscard]] const std::optional<Network>& unformed() const { return unformed_; }

    /// The unknowns; only of a figure that is determined.
    [[nodiscard]] const std::vector<double>& point() const { return point_; }
    /// Whether what depends on the unknowns so is determined.
    [[nodiscard]] bool reaches(const Told& told) const;
    [[nodiscard]] Estimate length(const Told& told) const;
    [[nodiscard]] AngleEstimate angle(const Told& told) const;

private:
    /// What it takes to adjust the figure again with other values of its readings.
    struct Model {
        std::vector<Tells> tells;       ///< by observation
        std::vector<std::size_t> free;  ///< the unknowns that an observation touches
        Starts starts;

        /// How equations are settled from a point: adjust_iterated or residuals_iterated.
        template <class Result>
        using Settle = std::function<std::optional<Result>(const Linearise&, std::vector<double>&)>;
        template <class Result>
        [[nodiscard]] std::optional<Result> from(const Settle<Result>& settle, std::vector<double>& point,
                                                 const std::vector<Observation>& observations) const;
        /// The same from the best start; from every one where chi-square stays above `hopeless`.
        template <class Result>
        [[nodiscard]] std::optional<Result> solve(const Settle<Result>& settle,
                                                  const std::vector<Observation>& observations,
                                                  std::vector<double>& point, double hopeless) const;
    };

    bool choose(const std::vector<FigureReading>& readings, const std::vector<double>& start, const TapeRule& tape);
    [[nodiscard]] std::vector<double> at_free(const Derivatives& by) const;
    [[nodiscard]] std::vector<std::string> rests_on(const Told& told) const;

    Model model_;
    std::vector<Observation> observations_;
    std::vector<bool> measured_;  ///< by observation
    std::vector<double> point_;
    std::optional<Adjustment> adjustment_;
    std::optional<Network> network_, unformed_;
};

}  // namespace truehang
