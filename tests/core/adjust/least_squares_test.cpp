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

// NIST Statistical Reference Datasets, linear regression, Longley: certified values to 15 digits (data and values from
// memory of the published page; the certified values hold them together).
TEST(LeastSquares, FitsLongleyAsCertified) {
    const std::vector<std::array<double, 7>> rows{
        {60323, 83.0, 234289, 2356, 1590, 107608, 1947},  {61122, 88.5, 259426, 2325, 1456, 108632, 1948},
        {60171, 88.2, 258054, 3682, 1616, 109773, 1949},  {61187, 89.5, 284599, 3351, 1650, 110929, 1950},
        {63221, 96.2, 328975, 2099, 3099, 112075, 1951},  {63639, 98.1, 346999, 1932, 3594, 113270, 1952},
        {64989, 99.0, 365385, 1870, 3547, 115094, 1953},  {63761, 100.0, 363112, 3578, 3350, 116219, 1954},
        {66019, 101.2, 397469, 2904, 3048, 117388, 1955}, {67857, 104.6, 419180, 2822, 2857, 118734, 1956},
        {68169, 108.4, 442769, 2936, 2798, 120445, 1957}, {66513, 110.8, 444546, 4681, 2637, 121950, 1958},
        {68655, 112.6, 482704, 3813, 2552, 123366, 1959}, {69564, 114.2, 502601, 3931, 2514, 125368, 1960},
        {69331, 115.7, 518173, 4806, 2572, 127852, 1961}, {70551, 116.9, 554894, 4007, 2827, 130081, 1962}};
    std::vector<ObservationEquation> equations;
    for (const auto& row : rows) {
        equations.push_back({{1.0, row[1], row[2], row[3], row[4], row[5], row[6]}, row[0], 1.0});
    }
    const auto fitted = adjust(equations, 7);
    ASSERT_TRUE(fitted.ok());
    const std::vector<double> certified{-3482258.63459582, 15.0618722713733,  -0.358191792925910e-01,
                                        -2.02022980381683, -1.03322686717359, -0.511041056535807e-01,
                                        1829.15146461355};
    for (std::size_t i = 0; i < certified.size(); ++i) {
        EXPECT_NEAR(fitted->unknowns[i] / certified[i], 1.0, 1e-9) << i;
    }
    EXPECT_NEAR(std::sqrt(fitted->chi2 / fitted->redundancy) / 304.854073561965, 1.0, 1e-9);
}

// W. Benning, Statistik in Geodaesie, 8-2: four sides and two diagonals of a square, one side fixed; residuals detect,
// but never locate: all normalised residuals are alike.
TEST(LeastSquares, AdjustsBenningsQuadrilateral) {
    struct Distance {
        std::size_t from, to;
        double metres;
    };
    const std::vector<Distance> distances{
        {1, 3, 1000.02}, {1, 4, 1414.20}, {2, 3, 1414.24}, {2, 4, 999.98}, {3, 4, 1000.00}};
    const auto linearised = [&](const std::vector<double>& at, WeightedEquations& equations) {
        const std::array<std::array<double, 2>, 5> points{
            {{0, 0}, {0, 1000}, {1000, 1000}, {at[0], at[1]}, {at[2], at[3]}}};
        equations.restart(4);
        for (const Distance& distance : distances) {
            const double dx = points[distance.to][0] - points[distance.from][0];
            const double dy = points[distance.to][1] - points[distance.from][1];
            const double length = std::hypot(dx, dy);
            std::vector<double> row(4, 0.0);
            const auto add = [&](std::size_t point, double sign) {
                if (point >= 3) {
                    row[2 * (point - 3)] += sign * dx / length;
                    row[2 * (point - 3) + 1] += sign * dy / length;
                }
            };
            add(distance.to, 1.0);
            add(distance.from, -1.0);
            equations.add(row, distance.metres - length, 0.010);
        }
    };
    std::vector<double> at{0.0, 0.0, 1000.0, 0.0};
    const auto adjusted = adjust_iterated(linearised, at);
    ASSERT_TRUE(adjusted);
    EXPECT_NEAR(at[0], -0.0096, 0.00006);
    EXPECT_NEAR(at[1], -0.0226, 0.00006);
    EXPECT_NEAR(at[2], 999.9930, 0.00006);
    EXPECT_NEAR(at[3], 0.0174, 0.00006);
    const std::array expected{1.0 / 7, 2.0 / 7, 2.0 / 7, 1.0 / 7, 1.0 / 7};
    for (std::size_t i = 0; i < expected.size(); ++i) {
        EXPECT_NEAR(adjusted->redundancy_numbers[i], expected[i], 1e-4);
        EXPECT_NEAR(std::abs(adjusted->normalised[i]), 0.6882, 0.00006);
    }
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
        line.adjustment.cofactors[1] / std::sqrt(line.adjustment.cofactors[0] * line.adjustment.cofactors[3]);
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
