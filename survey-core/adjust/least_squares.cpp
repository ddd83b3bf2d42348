// SPDX-License-Identifier: Apache-2.0
#include "adjust/least_squares.h"

#include <Eigen/Dense>
#include <cmath>

namespace truehang {

namespace {

using Rows = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

/// Of `matrix`, row by row.
template <class Matrix>
std::vector<double> rows_of(const Matrix& matrix) {
    std::vector<double> rows(static_cast<std::size_t>(matrix.size()));
    Eigen::Map<Rows>(rows.data(), matrix.rows(), matrix.cols()).noalias() = matrix;
    return rows;
}

std::vector<double> list_of(const Eigen::VectorXd& vector) { return {vector.begin(), vector.end()}; }

using Factors = Eigen::ColPivHouseholderQR<Eigen::MatrixXd>;

Eigen::Map<const Rows> design_of(const WeightedEquations& equations) {
    return {equations.design().data(), static_cast<Eigen::Index>(equations.observed().size()),
            static_cast<Eigen::Index>(equations.unknowns())};
}

Eigen::Map<const Eigen::VectorXd> mapped(const std::vector<double>& list) {
    return {list.data(), static_cast<Eigen::Index>(list.size())};
}

WeightedEquations weighted(const std::vector<ObservationEquation>& equations, std::size_t unknowns) {
    WeightedEquations list;
    list.restart(unknowns);
    for (const ObservationEquation& equation : equations) {
        list.add(equation.coefficients, equation.observed, equation.sigma);
    }
    return list;
}

/// Factors the design; whether it determines every unknown.
bool factored(const WeightedEquations& equations, Factors& factors) {
    if (equations.unknowns() == 0) {
        return false;
    }
    factors.compute(design_of(equations));
    return factors.rank() == static_cast<Eigen::Index>(equations.unknowns());
}

double squares_of(const WeightedEquations& equations) { return mapped(equations.observed()).squaredNorm(); }

/// Goes from `point` along `step` as far as the sum of squares doesn't grow, halving it; the equations become those
/// there.
void step_down(const Linearise& linearise, const Eigen::VectorXd& step, std::vector<double>& point,
               WeightedEquations& equations) {
    const double before = squares_of(equations);
    const std::vector<double> from = point;
    constexpr double shortest = 1e-3;
    for (double share = 1.0;; share /= 2.0) {
        for (std::size_t k = 0; k < point.size(); ++k) {
            point[k] = from[k] + share * step(static_cast<Eigen::Index>(k));
        }
        linearise(point, equations);
        if (squares_of(equations) <= before * (1.0 + 1e-9) + 1e-12 || share < shortest) {
            return;
        }
    }
}

/// Gauss-Newton until no unknown moves by a tenth of a micrometre, or it creeps above a sum of squares of `hopeless`;
/// false where it does neither. Leaves the equations and their factors there.
bool settle(const Linearise& linearise, std::vector<double>& point, double hopeless, WeightedEquations& equations,
            Factors& factors) {
    constexpr double settled = 1e-4;
    constexpr int most_steps = 200;
    // So many steps, each of which leaves more than this share: no solution lies near.
    constexpr int creeping_steps = 3;
    constexpr double creeping = 0.7;
    int creeps = 0;
    Eigen::VectorXd next;
    linearise(point, equations);
    for (int step = 0; step < most_steps; ++step) {
        if (!factored(equations, factors)) {
            return false;
        }
        next = factors.solve(mapped(equations.observed()));
        const double moved = next.cwiseAbs().maxCoeff();
        if (!std::isfinite(moved) || !next.allFinite()) {
            return false;
        }
        if (moved < settled || creeps >= creeping_steps) {
            return true;
        }
        const double before = squares_of(equations);
        step_down(linearise, next, point, equations);
        const double after = squares_of(equations);
        creeps = after > hopeless && after > creeping * before ? creeps + 1 : 0;
    }
    return false;
}

/// How small a redundancy number is none at all: below it a residual is rounding.
constexpr double no_redundancy = 1e-9;

}  // namespace

double Adjustment::sigma_of(const std::vector<double>& f) const {
    double variance = 0.0;
    for (std::size_t i = 0; i < f.size(); ++i) {
        for (std::size_t j = 0; j < f.size(); ++j) {
            variance += f[i] * cofactors[i * f.size() + j] * f[j];
        }
    }
    return std::sqrt(std::max(0.0, variance));
}

std::vector<double> Adjustment::leverage_of(const std::vector<double>& f) const {
    std::vector<double> leverage(residuals.size(), 0.0);
    for (std::size_t i = 0; i < f.size(); ++i) {
        for (std::size_t k = 0; k < leverage.size(); ++k) {
            leverage[k] += f[i] * gain[i * leverage.size() + k];
        }
    }
    return leverage;
}

double Adjustment::chi2_with(const std::vector<Change>& changes, const std::vector<double>& sigmas) const {
    const std::size_t n = residuals.size();
    double sum = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
        double residual = residuals[i] / sigmas[i];
        for (const Change& change : changes) {
            const double own = change.observation == i ? 1.0 : 0.0;
            residual -= (own - hat[i * n + change.observation]) * change.amount / sigmas[change.observation];
        }
        sum += residual * residual;
    }
    return sum;
}

void WeightedEquations::restart(std::size_t unknowns) {
    unknowns_ = unknowns;
    design_.clear();
    observed_.clear();
    sigmas_.clear();
}

void WeightedEquations::add(std::span<const double> coefficients, double observed, double sigma) {
    const double weight = 1.0 / sigma;
    const std::size_t from = design_.size();
    design_.resize(from + coefficients.size());
    for (std::size_t k = 0; k < coefficients.size(); ++k) {
        design_[from + k] = coefficients[k] * weight;
    }
    observed_.push_back(observed / sigma);
    sigmas_.push_back(sigma);
}

namespace {

/// Fills what an adjustment says of its observations, from its weighted residuals and its hat matrix.
void judge(const Eigen::VectorXd& residuals, const Eigen::MatrixXd& hat, const WeightedEquations& equations,
           Residuals& result) {
    result.residuals = list_of(residuals.cwiseProduct(mapped(equations.sigmas())));
    result.chi2 = residuals.squaredNorm();
    result.hat.assign(hat.data(), hat.data() + hat.size());  // symmetric: by columns or rows is the same
    result.redundancy = static_cast<int>(equations.observed().size() - equations.unknowns());
    for (Eigen::Index i = 0; i < residuals.size(); ++i) {
        const double r = std::max(0.0, 1.0 - hat(i, i));
        result.redundancy_numbers.push_back(r < no_redundancy ? 0.0 : r);
        result.normalised.push_back(r < no_redundancy ? 0.0 : residuals(i) / std::sqrt(r));
    }
}

Residuals residuals_from(const Factors& factors, const WeightedEquations& equations) {
    const auto observed = mapped(equations.observed());
    Eigen::MatrixXd base = Eigen::MatrixXd::Identity(factors.rows(), factors.cols());
    base.applyOnTheLeft(factors.householderQ());
    Residuals result;
    judge(base * (base.transpose() * observed) - observed, base * base.transpose(), equations, result);
    return result;
}

Adjustment adjusted(const Factors& factors, const WeightedEquations& equations) {
    const auto design = design_of(equations);
    const auto observed = mapped(equations.observed());
    const Eigen::VectorXd x = factors.solve(observed);
    // The pseudo-inverse of the design.
    const Eigen::MatrixXd inverse = factors.solve(Eigen::MatrixXd::Identity(design.rows(), design.rows()));
    Adjustment result;
    result.unknowns = list_of(x);
    result.cofactors = rows_of(inverse * inverse.transpose());
    result.gain = rows_of(inverse * mapped(equations.sigmas()).cwiseInverse().asDiagonal());
    judge(design * x - observed, design * inverse, equations, result);
    return result;
}

}  // namespace

Result<Adjustment> adjust(const std::vector<ObservationEquation>& equations, std::size_t unknowns) {
    if (unknowns == 0) {
        return Error{ErrorCode::missing, "", "There is nothing to adjust."};
    }
    const WeightedEquations list = weighted(equations, unknowns);
    Factors factors;
    if (!factored(list, factors)) {
        return Error{ErrorCode::missing, "", "The readings don’t reach every mark."};
    }
    return adjusted(factors, list);
}

std::optional<Residuals> residuals_of(const std::vector<ObservationEquation>& equations, std::size_t unknowns) {
    const WeightedEquations list = weighted(equations, unknowns);
    Factors factors;
    return factored(list, factors) ? std::optional(residuals_from(factors, list)) : std::nullopt;
}

std::optional<Adjustment> adjust_iterated(const Linearise& linearise, std::vector<double>& point, double hopeless) {
    WeightedEquations equations;
    Factors factors;
    const bool is_settled = settle(linearise, point, hopeless, equations, factors);
    return is_settled ? std::optional(adjusted(factors, equations)) : std::nullopt;
}

std::optional<Residuals> residuals_iterated(const Linearise& linearise, std::vector<double>& point, double hopeless) {
    WeightedEquations equations;
    Factors factors;
    const bool is_settled = settle(linearise, point, hopeless, equations, factors);
    return is_settled ? std::optional(residuals_from(factors, equations)) : std::nullopt;
}

}  // namespace truehang
