// SPDX-License-Identifier: Apache-2.0
#include "adjust/plane_figure.h"

#include "adjust/chi_square.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace truehang {

namespace {

/// Rows of a design, kept orthonormal, to see whether one more says anything new.
class RowSpace {
public:
    /// Takes the row if it isn't a combination of those that are there.
    bool take(Derivatives row) {
        constexpr double nothing_new = 1e-7;
        const double before = length_of(row);
        if (before <= 0.0 || !std::isfinite(before)) {
            return false;
        }
        for (const auto& base : rows_) {
            const double along = product(base, row);
            for (std::size_t k = 0; k < row.size(); ++k) {
                row[k] -= along * base[k];
            }
        }
        const double left = length_of(row);
        if (left < nothing_new * before) {
            return false;
        }
        for (double& each : row) {
            each /= left;
        }
        rows_.push_back(row);
        return true;
    }
    [[nodiscard]] std::size_t rank() const { return rows_.size(); }

private:
    static double product(const Derivatives& a, const Derivatives& b) {
        double sum = 0.0;
        for (std::size_t k = 0; k < a.size(); ++k) {
            sum += a[k] * b[k];
        }
        return sum;
    }
    static double length_of(const Derivatives& row) { return std::sqrt(product(row, row)); }

    std::vector<Derivatives> rows_;
};

FigureValues values_of(const std::vector<Observation>& observations) {
    // A reading without weight says nothing of where to start.
    constexpr double weightless = 1e5;
    FigureValues values;
    for (const Observation& observation : observations) {
        if (observation.sigma < weightless) {
            values.emplace(observation.station, observation.value);
        }
    }
    return values;
}

}  // namespace

const double* value_of(const FigureValues& values, std::string_view station) {
    const auto found = values.find(station);
    return found == values.end() ? nullptr : &found->second;
}

template <class Result>
std::optional<Result> PlaneFigure::Model::from(const Settle<Result>& settle, std::vector<double>& point,
                                               const std::vector<Observation>& observations) const {
    std::vector<double> full = point;
    const auto placed = [&](const std::vector<double>& at) -> const std::vector<double>& {
        for (std::size_t k = 0; k < free.size(); ++k) {
            full[free[k]] = at[k];
        }
        return full;
    };
    Derivatives coefficients{};
    const auto linearised = [&](const std::vector<double>& at, WeightedEquations& equations) {
        const auto& here = placed(at);
        equations.restart(free.size());
        for (std::size_t i = 0; i < observations.size(); ++i) {
            const Told told = tells[i](here);
            const double off = observations[i].value - told.value;
            for (std::size_t k = 0; k < free.size(); ++k) {
                coefficients[k] = told.by[free[k]];
            }
            equations.add(std::span(coefficients).first(free.size()),
                          observations[i].is_angle ? std::remainder(off, 360.0) : off, observations[i].sigma);
        }
    };
    std::vector<double> at;
    at.reserve(free.size());
    for (const std::size_t k : free) {
        at.push_back(point[k]);
    }
    auto settled = settle(linearised, at);
    if (settled && std::isfinite(settled->chi2)) {
        point = placed(at);
        return settled;
    }
    return std::nullopt;
}

template <class Result>
std::optional<Result> PlaneFigure::Model::solve(const Settle<Result>& settle,
                                                const std::vector<Observation>& observations,
                                                std::vector<double>& point, double hopeless) const {
    // Readings further apart than this belong to another solution of the same figure, if there is one.
    constexpr double another = 1e4;
    const FigureValues values = values_of(observations);
    std::optional<Result> best;
    for (std::size_t number = 0; auto start = starts(values, number); ++number) {
        auto settled = from<Result>(settle, *start, observations);
        if (settled && (!best || settled->chi2 < best->chi2)) {
            best = std::move(settled);
            point = std::move(*start);
            if (best->redundancy < 1 || best->chi2 < std::min(another * best->redundancy, hopeless)) {
                break;
            }
        }
    }
    return best;
}

bool PlaneFigure::choose(const std::vector<FigureReading>& readings, const std::vector<double>& start,
                         const TapeRule& tape) {
    RowSpace rows;
    std::vector<bool> touched(start.size(), false);
    for (const bool independent : {true, false}) {
        for (const FigureReading& each : readings) {
            if (each.reading->independent != independent) {
                continue;
            }
            Observation observation = observation_of(*each.reading, tape);
            Derivatives row = each.tells(start).by;
            const Derivatives by = row;
            for (double& coefficient : row) {
                coefficient /= observation.sigma;
            }
            if (!rows.take(row) && !independent) {
                continue;
            }
            for (std::size_t k = 0; k < touched.size(); ++k) {
                touched[k] = touched[k] || by[k] != 0.0;
            }
            model_.tells.push_back(each.tells);
            observations_.push_back(std::move(observation));
            measured_.push_back(each.reading->measured);
        }
    }
    for (std::size_t k = 0; k < touched.size(); ++k) {
        if (touched[k]) {
            model_.free.push_back(k);
        }
    }
    return !model_.free.empty() && rows.rank() >= model_.free.size();
}

PlaneFigure::PlaneFigure(std::string name, const std::vector<FigureReading>& readings, Starts starts,
                         const TapeRule& tape, Solved solved) {
    model_.starts = std::move(starts);
    FigureValues values;
    for (const FigureReading& each : readings) {
        values.emplace(each.reading->station.word,
                       each.reading->angle ? each.reading->angle->degrees() : each.reading->value.mm());
    }
    const auto first = model_.starts(values, 0);
    if (!first || !choose(readings, *first, tape)) {
        return;
    }
    point_ = *first;
    const int redundancy = static_cast<int>(observations_.size()) - static_cast<int>(model_.free.size());
    const double give_up = solved == Solved::while_hopeful && redundancy > 0
                               ? hopeless_chi2(chi_square_limit(redundancy))
                               : std::numeric_limits<double>::infinity();
    const auto settled = [give_up](const Linearise& linearise, std::vector<double>& at) {
        return adjust_iterated(linearise, at, give_up);
    };
    adjustment_ = model_.solve<Adjustment>(settled, observations_, point_, give_up);
    Solve again = [model = model_](const std::vector<Observation>& observations, double hopeless) {
        std::vector<double> point;
        const auto settle = [hopeless](const Linearise& linearise, std::vector<double>& at) {
            return residuals_iterated(linearise, at, hopeless);
        };
        return model.solve<Residuals>(settle, observations, point, hopeless);
    };
    if (adjustment_) {
        network_ = network_of(std::move(name), observations_, *adjustment_, std::move(again));
    } else if (observations_.size() > model_.free.size()) {
        unformed_ = unformed_network(std::move(name), observations_, std::move(again));
    }
}

std::vector<double> PlaneFigure::at_free(const Derivatives& by) const {
    std::vector<double> f;
    f.reserve(model_.free.size());
    for (const std::size_t k : model_.free) {
        f.push_back(by[k]);
    }
    return f;
}

bool PlaneFigure::reaches(const Told& told) const {
    for (std::size_t k = 0; k < told.by.size(); ++k) {
        if (told.by[k] != 0.0 && std::ranges::find(model_.free, k) == model_.free.end()) {
            return false;
        }
    }
    return is_determined() && std::isfinite(told.value);
}

std::vector<std::string> PlaneFigure::rests_on(const Told& told) const {
    constexpr double no_share = 1e-9;
    std::vector<std::string> words;
    const auto leverage = adjustment_->leverage_of(at_free(told.by));
    for (std::size_t i = 0; i < observations_.size(); ++i) {
        if (!measured_[i] && std::abs(leverage[i]) > no_share) {
            words.push_back(observations_[i].station);
        }
    }
    return words;
}

Estimate PlaneFigure::length(const Told& told) const {
    return {Length::mm(told.value), Length::mm(adjustment_->sigma_of(at_free(told.by))), rests_on(told)};
}

AngleEstimate PlaneFigure::angle(const Told& told) const {
    return {Angle::degrees(told.value), Angle::degrees(adjustment_->sigma_of(at_free(told.by))), rests_on(told)};
}

}  // namespace truehang
