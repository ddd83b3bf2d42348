// SPDX-License-Identifier: Apache-2.0
#include "adjust/arch.h"
#include "adjust/gable.h"
#include "shape_window.h"

#include <rapidcheck.h>

#include <utility>

namespace truehang {
namespace {

ShapeWindow arch_of(double width, double rise, const std::vector<std::pair<double, double>>& ordinates) {
    ShapeWindow window(Shape::arch);
    window.take("opening.width.top", width).take("arch.rise", rise);
    int n = 0;
    for (const auto& [along, height] : ordinates) {
        const std::string number = std::to_string(++n);
        window.take("ordinate." + number + ".along", along).take("ordinate." + number + ".height", height);
    }
    return window;
}

// Pythagoras on a circle of 500: 300 and 400 off its centre give 400 and 300 (3-4-5), 480 gives 140 (7-24-25).
TEST(Arch, IsASemicircleByItsOrdinates) {
    const auto measured = arch_of(1000, 500, {{200, 400}, {100, 300}, {980, 140}}).measured();
    EXPECT_EQ(measured.spans.arch_form, ArchForm::semicircle);
    const Network* network = network_of(measured, "arch");
    ASSERT_NE(network, nullptr);
    EXPECT_EQ(network->adjustment.redundancy, 4);  // eight readings; the width and three places unknown
    EXPECT_LT(network->adjustment.chi2, 1e-6);
    EXPECT_NEAR(mm_of(measured, "arch.radius"), 500.0, 1e-3);
}

// Sagitta: width 1200, rise 200: (600^2 + 200^2) / 400 = 1000. 280 off the middle 960 over the centre (7-24-25), 352
// off it 936 (44-117-125).
TEST(Arch, IsSegmentalByItsOrdinates) {
    const auto measured = arch_of(1200, 200, {{320, 160}, {952, 136}}).measured();
    EXPECT_EQ(measured.spans.arch_form, ArchForm::segmental);
    EXPECT_NEAR(mm_of(measured, "arch.radius"), 1000.0, 1e-3);
    ASSERT_NE(network_of(measured, "arch"), nullptr);
    EXPECT_LT(network_of(measured, "arch")->adjustment.chi2, 1e-6);
}

// Width 1200, rise 400, side radius 250: the crown's is 220000/300, since the centres lie 220000/300 - 250 apart:
// hypot(350, 1000/3) (derived). On the side arc hypot(200, 150) = 250; on the crown's hypot(440, 1760/3) = 2200/3
// (3-4-5).
TEST(Arch, IsOfThreeCentresByItsOrdinates) {
    EXPECT_NEAR(std::hypot(350.0, 1000.0 / 3.0), 2200.0 / 3.0 - 250.0, 1e-9);
    const double high = 400.0 - 2200.0 / 3.0 + 1760.0 / 3.0;
    const auto measured = arch_of(1200, 400, {{50, 150}, {160, high}, {1040, high}, {1150, 150}}).measured();
    EXPECT_EQ(measured.spans.arch_form, ArchForm::three_centred);
    EXPECT_NEAR(mm_of(measured, "arch.radius.side"), 250.0, 0.01);
    EXPECT_NEAR(mm_of(measured, "arch.radius.crown"), 2200.0 / 3.0, 0.01);
    EXPECT_TRUE(std::isnan(mm_of(measured, "arch.radius")));
    ASSERT_NE(network_of(measured, "arch"), nullptr);
    EXPECT_LT(network_of(measured, "arch")->adjustment.chi2, 1e-6);
}

// A pointed arch is none of these.
TEST(Arch, IsTakenByItsOrdinatesWhereNoCurveFits) {
    const auto measured = arch_of(1000, 500, {{250, 250}, {750, 250}}).measured();
    EXPECT_EQ(measured.spans.arch_form, ArchForm::ordinates);
    EXPECT_EQ(network_of(measured, "arch"), nullptr);
    EXPECT_DOUBLE_EQ(mm_of(measured, "ordinate.1.height"), 250.0);
    ASSERT_NE(flag_of(measured, "not-checked"), nullptr);
    EXPECT_EQ(flag_of(measured, "not-checked")->severity, Severity::note);
}

// Side arcs of 300 and a crown's arc of 800 over 1200 by 400 (centres 500 apart: 3-4-5): 235 off the middle the crown's
// arc stands sqrt(800^2 - 235^2) - 400 high, a segment of the same rise (radius 650) only 8.7 mm lower there.
TEST(Arch, IsOfThreeCentresWhereASegmentFitsClearlyWorse) {
    const double high = std::sqrt(800.0 * 800.0 - 235.0 * 235.0) - 400.0;
    EXPECT_NEAR(high - (std::sqrt(650.0 * 650.0 - 235.0 * 235.0) - 250.0), 8.7, 0.1);
    EXPECT_EQ(arch_of(1200, 400, {{365, high}, {835, high}}).measured().spans.arch_form, ArchForm::three_centred);
}

// The semicircle of 500 again (3-4-5, 7-24-25), with 200 written for a height of 300.
TEST(Arch, KeepsItsCurveWhereAnOrdinateIsOff) {
    const auto measured = arch_of(1000, 500, {{200, 400}, {100, 200}, {980, 140}, {800, 400}}).measured();
    EXPECT_EQ(measured.spans.arch_form, ArchForm::semicircle);
    const Flag* flag = flag_of(measured, "does-not-add-up");
    ASSERT_NE(flag, nullptr);
    EXPECT_EQ(flag->suspects.front().station, "ordinate.2.height");
    ASSERT_TRUE(flag->suspects.front().proposed.has_value());
    EXPECT_DOUBLE_EQ(flag->suspects.front().proposed->mm(), 300.0);
    EXPECT_EQ(flag_of(measured, "not-checked"), nullptr);
}

// Two arcs of 800 about the springing line that meet over the middle (derived): no single reading makes a curve of it.
TEST(Arch, IsNoCurveWithASlipWhereItIsPointed) {
    std::vector<std::pair<double, double>> ordinates;
    for (const double along : {150.0, 300.0, 450.0, 550.0, 700.0, 850.0}) {
        const double x = std::min(along, 1000.0 - along);
        ordinates.emplace_back(along, std::round(std::sqrt(800.0 * 800.0 - (800.0 - x) * (800.0 - x))));
    }
    const auto measured = arch_of(1000, std::round(std::sqrt(550000.0)), ordinates).measured();
    EXPECT_EQ(measured.spans.arch_form, ArchForm::ordinates);
    EXPECT_EQ(flag_of(measured, "does-not-add-up"), nullptr);
}

TEST(Arch, HasNoFormWithoutOrdinates) {
    const auto measured = arch_of(1000, 500, {}).measured();
    EXPECT_EQ(measured.spans.arch_form, std::nullopt);
    EXPECT_EQ(measured.largest_width()->value.mm(), 1000.0);
}

// Springings at 1200 and 1206, rise 500: the crown at 1703 (their mean and the rise).
TEST(Arch, ClosesFromSpringingsToCrown) {
    auto window = arch_of(1000, 500, {});
    window.take("opening.height.left", 1200).take("opening.height.right", 1206).take("opening.height.centre", 1703);
    auto measured = window.measured();
    const Network* network = network_of(measured, "arch");
    ASSERT_NE(network, nullptr);
    EXPECT_EQ(network->adjustment.redundancy, 1);
    EXPECT_LT(network->adjustment.chi2, 1e-12);
    EXPECT_EQ(flag_of(measured, "reading-spread"), nullptr);   // springing to crown is no spread
    window.window().readings.back().value = Length::mm(1730);  // two digits exchanged
    measured = window.measured();
    EXPECT_FALSE(network_of(measured, "arch")->adds_up());
    EXPECT_NE(flag_of(measured, "does-not-add-up"), nullptr);
}

// A slip in a height over the sill leaves the curve over the springing line what it is.
TEST(Arch, KeepsItsCurveWhereAHeightIsOff) {
    auto window = arch_of(1000, 500, {{200, 400}, {900, 300}});
    window.take("opening.height.left", 1200).take("opening.height.right", 1200).take("opening.height.centre", 1790);
    const auto measured = window.measured();
    EXPECT_EQ(measured.spans.arch_form, ArchForm::semicircle);
    EXPECT_FALSE(network_of(measured, "arch")->adds_up());
}

TEST(Arch, IsTheSameInTheMirror) {
    EXPECT_TRUE(rc::check([] {
        const double width = *rc::gen::inRange(600, 2000);
        const double rise = width * *rc::gen::inRange(10, 45) / 100.0;
        const ArchCurve curve{ArchForm::segmental, width, rise, 0.0};
        std::vector<std::pair<double, double>> straight;
        std::vector<std::pair<double, double>> mirrored;
        for (const double share : {0.2, 0.35, 0.7}) {
            const double height = curve.height_at(share * width) + *rc::gen::inRange(-2, 3);
            straight.emplace_back(share * width, height);
            mirrored.emplace_back(width - share * width, height);
        }
        const auto one = arch_of(width, rise, straight).measured();
        const auto other = arch_of(width, rise, mirrored).measured();
        RC_ASSERT(one.spans.arch_form == other.spans.arch_form);
        const double r = mm_of(one, "arch.radius");
        RC_ASSERT(std::isnan(r) || std::abs(r - mm_of(other, "arch.radius")) < 0.01 * r);
    }));
}

TEST(Arch, StandsAbsurdReadings) {
    EXPECT_TRUE(rc::check([] {
        const Shape shape = *rc::gen::element(Shape::arch, Shape::gable);
        ShapeWindow window(shape);
        for (const Station& station : stations_of(shape)) {
            if (station.word.starts_with("above.")) {
                break;
            }
            if (*rc::gen::inRange(0, 3) > 0) {
                window.take(std::string(station.word), *rc::gen::element(0, 1, 500, 1200, 100000, 730));
            }
        }
        const auto measured = window.measured();
        for (const MeasuredSize& size : sizes_of(measured)) {
            RC_ASSERT(std::isfinite(size.estimate.value.mm()) && std::isfinite(size.estimate.u.mm()));
        }
        for (const Network& network : measured.networks) {
            RC_ASSERT(std::isfinite(network.adjustment.chi2));
        }
    }));
}

/// Width 1400, feet at 1000, the apex at 2200 and 500 from the left: slopes 1300 (5-12-13) and 1500 (3-4-5).
ShapeWindow gable() {
    ShapeWindow window(Shape::gable);
    window.take("opening.width.bottom", 1400).take("opening.height.left", 1000).take("opening.height.right", 1000);
    window.take("opening.height.centre", 2200).take("gable.apex.along", 500).take("gable.slope.left", 1300);
    window.take("gable.slope.right", 1500);
    return window;
}

TEST(Gable, ClosesOnPythagoreanSlopes) {
    const auto measured = gable().measured();
    const Network* network = network_of(measured, "gable");
    ASSERT_NE(network, nullptr);
    EXPECT_EQ(network->adjustment.redundancy, 2);
    EXPECT_LT(network->adjustment.chi2, 1e-9);
    EXPECT_EQ(flag_of(measured, "reading-spread"), nullptr);  // heights of a gable differ
}

TEST(Gable, TellsAPlantedSlip) {
    auto window = gable();
    window.window().readings.back().value = Length::mm(1510);  // a digit wrong
    window.window().readings[5].value = Length::mm(1360);
    EXPECT_FALSE(network_of(window.measured(), "gable")->adds_up());
    EXPECT_NE(flag_of(window.measured(), "does-not-add-up"), nullptr);
}

// The apex where the left slope leads, without its own reading: sqrt(1300^2 - 1200^2) = 500.
TEST(Gable, FindsItsApexBySlopes) {
    auto window = gable();
    window.window().readings.erase(window.window().readings.begin() + 4);
    const auto measured = window.measured();
    EXPECT_NEAR(mm_of(measured, "gable.apex.along"), 500.0, 1e-6);
    ASSERT_NE(network_of(measured, "gable"), nullptr);
    EXPECT_EQ(network_of(measured, "gable")->adjustment.redundancy, 1);
}

TEST(Gable, StandsByOneHalfWhereTheOtherLacksReadings) {
    ShapeWindow window(Shape::gable);
    window.take("opening.height.left", 1000).take("opening.height.centre", 2200).take("gable.apex.along", 500);
    window.take("gable.slope.left", 1300);
    const auto measured = window.measured();
    ASSERT_NE(network_of(measured, "gable"), nullptr);
    EXPECT_LT(network_of(measured, "gable")->adjustment.chi2, 1e-9);
}

TEST(Gable, IsTheSameInTheMirror) {
    EXPECT_TRUE(rc::check([] {
        const double width = *rc::gen::inRange(600, 2500);
        const double along = width * *rc::gen::inRange(20, 81) / 100.0;
        const double left = *rc::gen::inRange(300, 1500);
        const double right = *rc::gen::inRange(300, 1500);
        const double apex = std::max(left, right) + *rc::gen::inRange(100, 1500);
        const double off = *rc::gen::inRange(-30, 31);
        const auto built = [&](bool turned) {
            ShapeWindow window(Shape::gable);
            window.take("opening.width.bottom", width).take("opening.height.left", turned ? right : left);
            window.take("opening.height.right", turned ? left : right).take("opening.height.centre", apex);
            const double slope_left = std::hypot(along, apex - left) + off;
            const double slope_right = std::hypot(width - along, apex - right);
            window.take("gable.slope.left", turned ? slope_right : slope_left);
            window.take("gable.slope.right", turned ? slope_left : slope_right);
            return Gable::adjusted(counted_readings(window.window(), Shape::gable), TapeRule{})->figure().network();
        };
        const double chi2 = built(false)->adjustment.chi2;
        RC_ASSERT(std::abs(chi2 - built(true)->adjustment.chi2) < 1e-3 * (1.0 + chi2));
        RC_ASSERT(off != 0.0 || chi2 < 1e-6);
    }));
}

}  // namespace
}  // namespace truehang
