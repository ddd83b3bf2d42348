// SPDX-License-Identifier: Apache-2.0
#include "adjust/least_squares.h"

#include <Eigen/Dense>
#include <cmath>

namespace truehang {

namespace {

std::vector<std::vector<double>> rows_of(const Eigen::MatrixXd& matrix) {
    std::vector<std::vector<double>> rows(static_cast<std::size_t>(matrix.rows()));
    for (Eigen::Index i = 0; i < matrix.rows(); ++i) {
        for (Eigen::Index j = 0; j < matrix.cols(); ++j) {
            rows[static_cast<std::size_t>(i)].push_back(matrix(i, j));
        }
    }
    return rows;
}

std::vector<double> list_of(const Eigen::VectorXd& vector) { return {vector.begin(), vector.end()}; }

struct Whitened {
    Eigen::MatrixXd design;
    Eigen::VectorXd observed;
    Eigen::VectorXd sigma;
};

Whitened whitened(const std::vector<ObservationEquation>& equations, std::size_t unknowns) {
    const auto n = static_cast<Eigen::Index>(equations.size());
    const auto u = static_cast<Eigen::Index>(unknowns);
    Whitened w{Eigen::MatrixXd(n, u), Eigen::VectorXd(n), Eigen::VectorXd(n)};
    for (Eigen::Index i = 0; i < n; ++i) {
        const auto& equation = equations[static_cast<std::size_t>(i)];
        for (Eigen::Index j = 0; j < u; ++j) {
            w.design(i, j) = equation.coefficients[static_cast<std::size_t>(j)] / equation.sigma;
        }
        w.observed(i) = equation.observed / equation.sigma;
        w.sigma(i) = equation.sigma;
    }
    return w;
}

double squares_of(const std::vector<ObservationEquation>& equations) {
    double sum = 0.0;
    for (const auto& equation : equations) {
        sum += (equation.observed / equation.sigma) * (equation.observed / equation.sigma);
    }
    return sum;
}

/// Goes from `point` along `step` as far as the sum of squares doesn't grow, halving it; the equations there.
std::vector<ObservationEquation> step_down(const Linearise& linearise,
                                           const std::vector<ObservationEquation>& equations,
                                           const std::vector<double>& step, std::vector<double>& point) {
    const double before = squares_of(equations);
    const std::vector<double> from = point;
    constexpr double shortest = 1e-3;
    for (double share = 1.0;; share /= 2.0) {
        for (std::size_t k = 0; k < point.size(); ++k) {
            point[k] = from[k] + share * step[k];
        }
        auto moved = linearise(point);
        const double after = squares_of(moved);
        if (after <= before * (1.0 + 1e-9) + 1e-12 || share < shortest) {
            return moved;
        }
    }
}

/// The unknowns alone, without what else an adjustment says of them; nothing where they aren't determined.
std::optional<std::vector<double>> step_from(const std::vector<ObservationEquation>& equations, std::size_t unknowns) {
    const Whitened w = whitened(equations, unknowns);
    const Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(w.design);
    if (unknowns == 0 || qr.rank() < static_cast<Eigen::Index>(unknowns)) {
        return std::nullopt;
    }
    return list_of(qr.solve(w.observed));
}

/// How small a redundancy number is none at all: below it a residual is rounding.
constexpr double no_redundancy = 1e-9;

}  // namespace

double Adjustment::sigma_of(const std::vector<double>& f) const {
    double variance = 0.0;
    for (std::size_t i = 0; i < f.size(); ++i) {
        for (std::size_t j = 0; j < f.size(); ++j) {
            variance += f[i] * cofactors[i][j] * f[j];
        }
    }
    return std::sqrt(std::max(0.0, variance));
}

std::vector<double> Adjustment::leverage_of(const std::vector<double>& f) const {
    std::vector<double> leverage(residuals.size(), 0.0);
    for (std::size_t i = 0; i < f.size(); ++i) {
        for (std::size_t k = 0; k < leverage.size(); ++k) {
            leverage[k] += f[i] * gain[i][k];
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

Result<Adjustment> adjust(const std::vector<ObservationEquation>& equations, std::size_t unknowns) {
    const Whitened w = whitened(equations, unknowns);
    Adjustment result;
    if (unknowns == 0) {
        return Error{ErrorCode::missing, "", "There is nothing to adjust."};
    }
    const Eigen::ColPivHouseholderQR<Eigen::MatrixXd> qr(w.design);
    if (qr.rank() < static_cast<Eigen::Index>(unknowns)) {
        return Error{ErrorCode::missing, "", "The readings don't reach every mark."};
    }
    const Eigen::VectorXd x = qr.solve(w.observed);
    const Eigen::MatrixXd inverse =
        qr.solve(Eigen::MatrixXd::Identity(w.design.rows(), w.design.rows()));  // pseudo-inverse of the design
    const Eigen::MatrixXd hat = w.design * inverse;
    const Eigen::VectorXd residuals = w.design * x - w.observed;
    result.unknowns = list_of(x);
    result.cofactors = rows_of(inverse * inverse.transpose());
    result.gain = rows_of(inverse * w.sigma.cwiseInverse().asDiagonal());
    result.residuals = list_of(residuals.cwiseProduct(w.sigma));
    result.chi2 = residuals.squaredNorm();
    result.hat.assign(hat.data(), hat.data() + hat.size());  // symmetric: by columns or rows is the same
    result.redundancy = static_cast<int>(equations.size() - unknowns);
    for (Eigen::Index i = 0; i < residuals.size(); ++i) {
        const double r = std::max(0.0, 1.0 - hat(i, i));
        result.redundancy_numbers.push_back(r < no_redundancy ? 0.0 : r);
        result.normalised.push_back(r < no_redundancy ? 0.0 : residuals(i) / std::sqrt(r));
    }
    return result;
}

std::optional<Adjustment> adjust_iterated(const Linearise& linearise, std::vector<double>& point) {
    constexpr int most_steps = 200;
    constexpr double settled = 1e-6;
    auto equations = linearise(point);
    for (int step = 0; step < most_steps; ++step) {
        const auto next = step_from(equations, point.size());
        if (!next) {
            return std::nullopt;
        }
        double moved = 0.0;
        for (const double each : *next) {
            moved = std::max(moved, std::abs(each));
        }
        if (!std::isfinite(moved)) {
            return std::nullopt;
        }
        if (moved < settled) {
            auto adjusted = adjust(equations, point.size());
            return adjusted ? std::optional(std::move(adjusted).value()) : std::nullopt;
        }
        equations = step_down(linearise, equations, *next, point);
    }
    return std::nullopt;
}

}  // namespace truehang
