// SPDX-License-Identifier: Apache-2.0
#include "adjust/least_squares.h"

#include "adjust/chi_square.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {
namespace {

struct Line {
    double intercept, slope, residual_sd;
    Adjustment adjustment;
};

Line fit_line(const std::vector<double>& x, const std::vector<double>& y) {
    std::vector<ObservationEquation> equations;
    for (std::size_t i = 0; i < x.size(); ++i) {
        equations.push_back({{1.0, x[i]}, y[i], 1.0});
    }
    const auto result = adjust(equations, 2);
    EXPECT_TRUE(result.ok());
    return {result->unknowns[0], result->unknowns[1], std::sqrt(result->chi2 / result->redundancy), *result};
}

// NIST Statistical Reference Datasets, linear regression, Norris: certified values to 15 digits.
TEST(LeastSquares, FitsNorrisAsCertified) {
    const std::vector<double> y{0.1, 338.8, 118.1, 888.0, 9.2,   228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3,
                                0.1, 778.1, 668.8, 339.3, 448.9, 10.8,  557.7, 228.3, 998.0, 888.8, 119.6, 0.3,
                                0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2,  117.6, 228.9, 668.4, 449.2, 0.2};
    const std::vector<double> x{0.2, 337.4, 118.2, 884.6, 10.1,  226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4,
                                0.6, 775.5, 666.9, 338.0, 447.5, 11.6,  556.0, 228.1, 995.8, 887.6, 120.2, 0.3,
                                0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1,  118.3, 229.2, 669.1, 448.9, 0.5};
    const Line line = fit_line(x, y);
    EXPECT_NEAR(line.intercept, -0.262323073774029, 0.262323073774029 * 1e-9);
    EXPECT_NEAR(line.slope, 1.00211681802045, 1.00211681802045 * 1e-9);
    EXPECT_NEAR(line.residual_sd, 0.884796396144373, 0.884796396144373 * 1e-9);
}

// JCGM 100:2008 (GUM), H.3: calibration of a thermometer by a fitted line.
TEST(LeastSquares, FitsTheThermometerOfTheGuide) {
    const std::vector<double> t{21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511};
    const std::vector<double> b{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160};
    std::vector<double> from_20;
    std::ranges::transform(t, std::back_inserter(from_20), [](double value) { return value - 20.0; });
    const Line line = fit_line(from_20, b);
    const double s = line.residual_sd;
    EXPECT_NEAR(line.intercept, -0.1712, 0.00005);
    EXPECT_NEAR(s * line.adjustment.sigma_of({1.0, 0.0}), 0.0029, 0.00005);
    EXPECT_NEAR(line.slope, 0.00218, 0.000005);
    EXPECT_NEAR(s * line.adjustment.sigma_of({0.0, 1.0}), 0.00067, 0.000005);
    const double r =
        line.adjustment.cofactors[0][1] / std::sqrt(line.adjustment.cofactors[0][0] * line.adjustment.cofactors[1][1]);
    EXPECT_NEAR(r, -0.930, 0.0005);
    EXPECT_NEAR(line.intercept + 10.0 * line.slope, -0.1494, 0.00005);
    EXPECT_NEAR(s * line.adjustment.sigma_of({1.0, 10.0}), 0.0041, 0.00005);
}

struct LevelRun {
    std::vector<double> coefficients;
    double difference, sigma;
};

// C. D. Ghilani, Adjustment Computations, 5th ed. 2010, example 12.6: A = 437.596 m, unknowns B, C, D.
std::vector<ObservationEquation> ghilani(double cd) {
    constexpr double a = 437.596;
    return {{{1, 0, 0}, 10.509 + a, 0.006},  {{-1, 1, 0}, 5.360, 0.004},  {{0, -1, 1}, cd, 0.005},
            {{0, 0, -1}, -7.348 - a, 0.003}, {{-1, 0, 1}, -3.167, 0.004}, {{0, 1, 0}, 15.881 + a, 0.012}};
}

TEST(LeastSquares, LevelsGhilaniTwelveSix) {
    const auto result = adjust(ghilani(-8.523), 3);
    ASSERT_TRUE(result.ok());
    EXPECT_NEAR(result->unknowns[0], 448.1087117, 1e-7);
    EXPECT_NEAR(result->unknowns[1], 453.4684678, 1e-7);
    EXPECT_NEAR(result->unknowns[2], 444.9436053, 1e-7);
    EXPECT_EQ(result->redundancy, 3);
    EXPECT_NEAR(result->chi2, 1.2721, 5e-5);
    const std::array redundancy{0.65487, 0.32945, 0.50917, 0.18770, 0.43262, 0.88618};
    const std::array normalised{0.7644, -0.1063, -0.5220, 0.3037, 0.7197, -0.7553};
    for (std::size_t i = 0; i < redundancy.size(); ++i) {
        EXPECT_NEAR(result->redundancy_numbers[i], redundancy[i], 1e-5) << i;
        EXPECT_NEAR(result->normalised[i], normalised[i], 1e-4) << i;
    }
    EXPECT_LT(result->chi2, chi_square_limit(3));
}

// The same with CD misread as 8.253 (derived from the example above): the residual points at CD.
TEST(LeastSquares, FindsTheMisreadRun) {
    const auto result = adjust(ghilani(-8.253), 3);
    ASSERT_TRUE(result.ok());
    EXPECT_NEAR(result->chi2, 1526.25, 0.005);
    EXPECT_GT(result->chi2, chi_square_limit(3));
    const auto largest = std::ranges::max_element(result->normalised, {}, [](double w) { return std::abs(w); });
    EXPECT_EQ(std::distance(result->normalised.begin(), largest), 2);
    EXPECT_NEAR(std::abs(*largest), 39.05, 0.005);
    // v is adjusted minus observed here: the reading is 0.27366 too high, so v/r is its negative.
    EXPECT_NEAR(-result->residuals[2] / result->redundancy_numbers[2], 0.27366, 5e-6);
}

// Chi-square quantiles at 0.999: 10.828, 13.816, 16.266, 18.467 for 1 to 4 degrees of freedom (NIST/SEMATECH e-Handbook
// of Statistical Methods, table of upper critical values).
TEST(ChiSquare, HasTheHandbooksQuantiles) {
    EXPECT_NEAR(chi_square_limit(1), 10.828, 0.0005);
    EXPECT_NEAR(chi_square_limit(2), 13.816, 0.0005);
    EXPECT_NEAR(chi_square_limit(3), 16.266, 0.0005);
    EXPECT_NEAR(chi_square_limit(4), 18.467, 0.0005);
    EXPECT_NEAR(critical_w * critical_w, chi_square_limit(1), 0.001);
}

TEST(LeastSquares, RefusesMarksThatNothingReaches) {
    EXPECT_FALSE(adjust({{{1.0, 0.0}, 5.0, 1.0}}, 2).ok());
    EXPECT_FALSE(adjust({}, 0).ok());
}

}  // namespace
}  // namespace truehang
