// SPDX-License-Identifier: Apache-2.0
#include "light/wmm.h"

#include "references.h"

#include <gtest/gtest.h>

#include <sstream>

using namespace truehang;
using namespace truehang::test;

namespace {

/// The rows of numbers of a file; comments and the head of the coefficients left out.
std::vector<std::vector<double>> rows_of(const std::string& name) {
    auto file = light_reference(name);
    std::vector<std::vector<double>> rows;
    for (std::string line; std::getline(file, line);) {
        std::istringstream words(line);
        std::vector<double> row;
        for (std::string word; words >> word && word.find_first_of("#W") != 0;) {
            row.push_back(word == "NaN" ? std::nan("") : std::stod(word));
        }
        if (!row.empty()) {
            rows.push_back(std::move(row));
        }
    }
    return rows;
}

}  // namespace

TEST(WorldMagneticModel, HasTheCoefficientsThatWerePublished) {
    std::size_t seen = 0;
    for (const auto& row : rows_of("WMM.COF")) {
        if (row.size() == 6) {
            ASSERT_LT(seen, wmm::terms.size());
            const auto& term = wmm::terms.at(seen++);
            EXPECT_EQ(row, (std::vector<double>{static_cast<double>(term.degree), static_cast<double>(term.order),
                                                term.g, term.h, term.g_a_year, term.h_a_year}));
        }
    }
    EXPECT_EQ(seen, wmm::terms.size());
}

TEST(WorldMagneticModel, GivesThePublishedTestValuesToTheirLastDigit) {
    const auto rows = rows_of("WMM2025_TestValues.highprec.txt");
    ASSERT_GE(rows.size(), 100U);
    for (const auto& row : rows) {
        const auto field = magnetic_field(place(row[2], row[3]), row[1], row[0]);
        EXPECT_NEAR(field.declination.degrees(), row[4], 0.00501);
        EXPECT_NEAR(field.inclination.degrees(), row[5], 0.00501);
        EXPECT_NEAR(field.level, row[6], 0.001);
        EXPECT_NEAR(field.north, row[7], 0.001);
        EXPECT_NEAR(field.east, row[8], 0.001);
        EXPECT_NEAR(field.down, row[9], 0.001);
        EXPECT_NEAR(field.total, row[10], 0.001);
    }
}

TEST(WorldMagneticModel, GivesTheTableOfItsReport) {
    const auto rows = rows_of("WMM2025_TestValues.report-table.txt");
    ASSERT_EQ(rows.size(), 12U);
    for (const auto& row : rows) {
        const auto field = magnetic_field(place(row[2], row[3]), row[1], row[0]);
        EXPECT_NEAR(field.north, row[4], 0.0501);
        EXPECT_NEAR(field.east, row[5], 0.0501);
        EXPECT_NEAR(field.down, row[6], 0.0501);
        EXPECT_NEAR(field.level, row[7], 0.0501);
        EXPECT_NEAR(field.total, row[8], 0.0501);
        EXPECT_NEAR(field.inclination.degrees(), row[9], 0.00501);
        EXPECT_NEAR(field.declination.degrees(), row[10], 0.00501);
    }
}

TEST(WorldMagneticModel, SaysNorthAndSouthAtThePoles) {
    for (const double latitude : {90.0, -90.0}) {
        const auto field = magnetic_field(place(latitude, 30.0), 0.0, 2026.0);
        EXPECT_TRUE(std::isfinite(field.declination.degrees()));
        EXPECT_NEAR(field.total, std::hypot(field.level, field.down), 1e-6);
    }
}

TEST(Compass, IsTurnedByTheDeclination) {
    const auto at = utc("2025-01-01T00:00:00Z");  // the report’s third row: 68.78° east
    const auto found = bearing_from_compass(place(-80.0, -120.0), {Angle::degrees(300.0), Angle::degrees(3.0), {}}, at);
    EXPECT_NEAR(found.bearing.bearing.degrees(), 8.78, 0.02);
    EXPECT_GE(found.bearing.uncertainty.degrees(), 3.0);
    EXPECT_FALSE(found.iron || found.dated || found.no_north);
}

TEST(Compass, IsDoubtedNearIronLateAndNearAPole) {
    const auto london = place(51.5, -0.13);
    const auto at = utc("2026-05-01T12:00:00Z");
    const double total = magnetic_field(london, 0.0, decimal_year(at)).total;
    const Angle there = Angle::degrees(180.0);
    EXPECT_FALSE(bearing_from_compass(london, {there, Angle::degrees(3.0), total * 1.05}, at).iron);
    EXPECT_TRUE(bearing_from_compass(london, {there, Angle::degrees(3.0), total * 1.3}, at).iron);
    EXPECT_TRUE(bearing_from_compass(london, {there, Angle::degrees(3.0), total * 0.7}, at).iron);
    EXPECT_TRUE(bearing_from_compass(london, {there, Angle::degrees(3.0), {}}, utc("2030-01-01T00:00:00Z")).dated);
    EXPECT_TRUE(bearing_from_compass(place(86.0, 139.0), {there, Angle::degrees(3.0), {}}, at).no_north);
}
