// SPDX-License-Identifier: Apache-2.0
#include "adjust/photo_plane.h"

#include "adjust/chi_square.h"
#include "adjust/least_squares.h"
#include "adjust/photo_check.h"
#include "shape_window.h"

#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <numbers>

namespace truehang {

namespace {

using Corners = std::array<std::pair<double, double>, 4>;
/// Wall (mm, x to the right, y up) to pixels from the picture's top left corner.
using View = std::function<std::pair<double, double>(double x, double y)>;

constexpr long long picture_width = 4000;
constexpr long long picture_height = 3000;

/// Clockwise from the top left.
Corners rectangle(double left, double bottom, double width, double height) {
    return {{{left, bottom + height}, {left + width, bottom + height}, {left + width, bottom}, {left, bottom}}};
}

TappedCorners tapped(const Corners& corners, const View& view) {
    TappedCorners result;
    for (const auto& [x, y] : corners) {
        const auto [px, py] = view(x, y);
        result.push_back({{px / picture_width, py / picture_height}});
    }
    return result;
}

FlatSheet sheet_at(const Corners& corners, const View& view, double width, double height) {
    return {Length::mm(width), Length::mm(height), tapped(corners, view), {}};
}

/// Square before the wall, two pixels a millimetre: the opening's bottom left corner at (400, 2700).
std::pair<double, double> straight(double x, double y) { return {400.0 + 2.0 * x, 2700.0 - 2.0 * y}; }

/// The same wall, further away to the right.
std::pair<double, double> oblique(double x, double y) {
    const double w = 1.0 + 2e-4 * x - 1e-4 * y;
    return {(400.0 + 2.2 * x + 0.05 * y) / w, (2700.0 - 0.1 * x - 2.3 * y) / w};
}

/// An opening of 1200 by 1000 with an A4 sheet to the right of it.
PhotoPlane plane_seen(const View& view, double width = 1200.0, double height = 1000.0) {
    PhotoPlane plane{picture_width, picture_height, {}, tapped(rectangle(0, 0, width, height), view), {}};
    plane.sheets.push_back(sheet_at(rectangle(width + 50, 300, 210, 297), view, 210, 297));
    return plane;
}

PhotosTogether together(const std::vector<PhotoPlane>& planes) {
    std::vector<PhotoShape> shapes;
    for (const PhotoPlane& plane : planes) {
        shapes.push_back(photo_shape(plane).value());
    }
    return photos_together(shapes).value();
}

PhotoSize size_by(const PhotosTogether& photos, std::string_view station) {
    const auto sizes = photos.sizes();
    return *std::ranges::find(sizes, station, &PhotoSize::station);
}

std::string trouble_with(const PhotoPlane& plane) {
    const auto shape = photo_shape(plane);
    return shape ? "" : shape.error().text;
}

ShapeWindow window_with(const std::vector<PhotoPlane>& planes) {
    ShapeWindow window(Shape::recess);
    for (const PhotoPlane& plane : planes) {
        window.window().photos.emplace_back().plane = plane;
    }
    return window;
}

TEST(PhotoPlane, GivesEverySizeOfAViewSquareOnAndOfAProjectiveOne) {
    // Worked by hand: the views are given above, the rectangle's diagonal is the root of 1200² + 1000².
    for (const View& view : {View(straight), View(oblique)}) {
        const auto photos = together({plane_seen(view)});
        for (const auto* width : {"opening.width.top", "opening.width.middle", "opening.width.bottom"}) {
            EXPECT_NEAR(size_by(photos, width).value.mm(), 1200.0, 1e-6);
        }
        for (const auto* height : {"opening.height.left", "opening.height.centre", "opening.height.right"}) {
            EXPECT_NEAR(size_by(photos, height).value.mm(), 1000.0, 1e-6);
        }
        for (const auto* diagonal : {"opening.diagonal.rising", "opening.diagonal.falling"}) {
            EXPECT_NEAR(size_by(photos, diagonal).value.mm(), std::hypot(1200.0, 1000.0), 1e-6);
        }
    }
}

TEST(PhotoPlane, TellsWhereTheWallStandsInThePicture) {
    const auto shape = photo_shape(plane_seen(oblique)).value();
    const auto [x, y] = oblique(600.0, 250.0);
    const PicturePoint at = shape.picture_of(600.0, 250.0);
    EXPECT_NEAR(at.x, x - picture_width / 2.0, 1e-6);
    EXPECT_NEAR(at.y, y - picture_height / 2.0, 1e-6);
}

TEST(PhotoPlane, TakesASheetFromAnyOfItsCorners) {
    // Lying on its side and tapped from its top left corner, or upright and tapped from there: the same corners.
    auto plane = plane_seen(oblique);
    plane.sheets.front() = sheet_at(rectangle(1250, 300, 297, 210), oblique, 297, 210);
    EXPECT_NEAR(size_by(together({plane}), "opening.width.top").value.mm(), 1200.0, 1e-6);
    auto& sheet = plane.sheets.front();
    std::ranges::rotate(sheet.corners, sheet.corners.begin() + 1);
    std::swap(sheet.width, sheet.height);
    EXPECT_NEAR(size_by(together({plane}), "opening.width.top").value.mm(), 1200.0, 1e-6);
}

TEST(PhotoPlane, KeepsHowASheetMayBeCut) {
    // ISO 216 lets 210 mm be off by 2 mm: 2/√3 of 210 is 0.55 %, of 1200 mm 6.598. No number of photos of one sheet
    // gets below it.
    const std::vector<PhotoPlane> planes(8, plane_seen(straight));
    const auto one = size_by(together({planes.front()}), "opening.width.middle").u.mm();
    const auto eight = size_by(together(planes), "opening.width.middle").u.mm();
    EXPECT_GT(eight, 6.598);
    EXPECT_LT(eight, one);
    EXPECT_DOUBLE_EQ(sheet_side_u(150.0), 1.5 / std::numbers::sqrt3);
    EXPECT_DOUBLE_EQ(sheet_side_u(840.0), 3.0 / std::numbers::sqrt3);
}

TEST(PhotoPlane, IsSurerWithAnotherSheetAndWithALargerOne) {
    auto plane = plane_seen(straight);
    const double one = size_by(together({plane}), "opening.width.top").u.mm();
    plane.sheets.push_back(sheet_at(rectangle(-180, 300, 148, 210), straight, 148, 210));
    const double two = size_by(together({plane}), "opening.width.top").u.mm();
    EXPECT_LT(two, 0.7 * one);
    auto board = plane_seen(straight);
    board.sheets.front() = sheet_at(rectangle(1250, 100, 500, 800), straight, 500, 800);
    EXPECT_LT(size_by(together({board}), "opening.width.top").u.mm(), 0.7 * one);
}

TEST(PhotoPlane, PoolsTheSpreadOfRepeatedTaps) {
    auto plane = plane_seen(straight);
    EXPECT_DOUBLE_EQ(photo_shape(plane)->tap_u, 1.5);  // 4000 pixels long, nothing tapped twice
    // Three taps at -3, 0 and 3 pixels across: a sum of squares of 18 with four degrees of freedom, beside eight of
    // 1.5²: the root of (18 + 18) / 12.
    const double third = 3.0 / picture_width;
    Taps& taps = plane.opening.front();
    const auto [x, y] = taps.front();
    taps = {{x - third, y}, {x, y}, {x + third, y}};
    EXPECT_NEAR(photo_shape(plane)->tap_u, std::sqrt(3.0), 1e-9);
    EXPECT_NEAR(size_by(together({plane}), "opening.width.top").value.mm(), 1200.0, 1e-6);
}

TEST(PhotoPlane, IsSurerWhereCornersAreTappedAgain) {
    const auto once = plane_seen(straight);
    auto again = once;
    const auto repeat = [](TappedCorners& corners) {
        for (Taps& taps : corners) {
            const auto [x, y] = taps.front();
            const double apart = 1.5 / picture_width;
            taps = {{x - apart, y}, {x + apart, y}, {x, y - apart}, {x, y + apart}};
        }
    };
    repeat(again.opening);
    repeat(again.sheets.front().corners);
    EXPECT_LT(size_by(together({again}), "opening.width.top").u.mm(),
              size_by(together({once}), "opening.width.top").u.mm());
}

TEST(PhotoPlane, DoesntHangOnThePixelsOfThePicture) {
    auto larger = plane_seen(oblique);
    larger.width_px *= 2;
    larger.height_px *= 2;
    const auto one = size_by(together({plane_seen(oblique)}), "opening.diagonal.rising");
    const auto other = size_by(together({larger}), "opening.diagonal.rising");
    EXPECT_NEAR(one.value.mm(), other.value.mm(), 1e-6);
    EXPECT_NEAR(one.u.mm(), other.u.mm(), 1e-6);
}

struct Trouble {
    std::string says;  ///< how the sentence begins
    std::function<void(PhotoPlane&)> make;
};

const double nan = std::numeric_limits<double>::quiet_NaN();
const std::vector<Trouble> troubles{
    {"How large the picture", [](PhotoPlane& p) { p.width_px = 0; }},
    {"Tap all four corners of the sheet", [](PhotoPlane& p) { p.sheets.clear(); }},
    {"Tap all four corners of the sheet", [](PhotoPlane& p) { p.sheets.front().corners[2].clear(); }},
    {"Tap all four corners of the sheet", [](PhotoPlane& p) { p.sheets.front().corners.pop_back(); }},
    {"Tap all four corners of the opening", [](PhotoPlane& p) { p.opening.pop_back(); }},
    {"Tap all four corners of the opening", [](PhotoPlane& p) { p.opening[1].clear(); }},
    {"Say how wide", [](PhotoPlane& p) { p.sheets.front().width = Length(); }},
    {"Say how wide", [](PhotoPlane& p) { p.sheets.front().height = Length::mm(-297.0); }},
    {"Say how wide", [](PhotoPlane& p) { p.sheets.front().height = Length::mm(1e9); }},
    {"A corner was tapped far outside",
     [](PhotoPlane& p) {
         p.opening[0] = {{-3.0, 0.2}};
     }},
    {"A corner was tapped far outside",
     [](PhotoPlane& p) {
         p.opening[0] = {{nan, 0.2}};
     }},
    {"The opening’s corners cross", [](PhotoPlane& p) { std::swap(p.opening[0], p.opening[1]); }},
    {"The opening’s corners cross", [](PhotoPlane& p) { std::ranges::reverse(p.opening); }},
    {"The opening’s corners cross", [](PhotoPlane& p) { std::ranges::rotate(p.opening, p.opening.begin() + 1); }},
    {"The sheet’s corners cross",
     [](PhotoPlane& p) { std::swap(p.sheets.front().corners[2], p.sheets.front().corners[3]); }},
    {"The sheet’s corners cross", [](PhotoPlane& p) { std::ranges::reverse(p.sheets.front().corners); }},
    {"The sheet is too small",
     [](PhotoPlane& p) { p.sheets.front() = sheet_at(rectangle(1250, 300, 1.5, 2.1), straight, 210, 297); }},
    {"The opening is too small", [](PhotoPlane& p) { p.opening = tapped(rectangle(0, 0, 5, 1000), straight); }},
    {"The wall is seen too much from the side",
     [](PhotoPlane& p) { std::swap(p.sheets.front().width, p.sheets.front().height); }},
    {"The wall is seen too much from the side",
     [](PhotoPlane& p) {
         p = plane_seen([](double x, double y) { return std::pair(400.0 + 0.8 * x, 2700.0 - 2.0 * y); });
     }},
};

TEST(PhotoPlane, SaysWhatToDoWhereItCantMeasure) {
    for (const Trouble& trouble : troubles) {
        auto plane = plane_seen(straight);
        trouble.make(plane);
        EXPECT_TRUE(trouble_with(plane).starts_with(trouble.says)) << trouble.says << " / " << trouble_with(plane);
    }
}

TEST(PhotoPlane, SaysWhereSheetAndOpeningLieInNoOnePlane) {
    // Beyond the horizon: the opening's bottom narrows to a point that the sheet lies below.
    auto plane = plane_seen(straight);
    plane.opening = {{{0.1, 0.1}}, {{0.9, 0.1}}, {{0.55, 0.5}}, {{0.45, 0.5}}};
    plane.sheets.front().corners = {{{0.4, 0.8}}, {{0.6, 0.8}}, {{0.6, 0.95}}, {{0.4, 0.95}}};
    EXPECT_TRUE(trouble_with(plane).starts_with("These corners don’t fit")) << trouble_with(plane);
    // One corner of the sheet 80 pixels off: two sheets of one size can't look so.
    plane = plane_seen(straight);
    plane.sheets.push_back(sheet_at(rectangle(-260, 300, 210, 297), straight, 210, 297));
    plane.sheets.front().corners[0].front().first += 80.0 / picture_width;
    EXPECT_TRUE(trouble_with(plane).starts_with("These corners don’t fit")) << trouble_with(plane);
}

TEST(PhotoPlane, LeavesOutASheetThatIsntTappedYet) {
    auto plane = plane_seen(straight);
    plane.sheets.push_back({Length(), Length(), {{}, {{0.1, 0.1}}}, {}});
    EXPECT_EQ(trouble_with(plane), "");
}

/// Where a finger may have come to.
rc::Gen<double> any_fraction() {
    return rc::gen::map(rc::gen::inRange(-400, 1400), [](int thousandths) { return thousandths / 1000.0; });
}

RC_GTEST_PROP(PhotoPlaneLaw, SaysNoNonsenseWhateverIsTapped, ()) {
    PhotoPlane plane = plane_seen(straight);
    for (TappedCorners* corners : {&plane.opening, &plane.sheets.front().corners}) {
        for (Taps& taps : *corners) {
            if (*rc::gen::inRange(0, 3) == 0) {
                taps = {{*any_fraction(), *any_fraction()}};
            }
        }
    }
    plane.sheets.front().width = Length::mm(*rc::gen::inRange(-10, 3000));
    const auto shape = photo_shape(plane);
    if (!shape) {
        RC_ASSERT(!shape.error().text.empty());
        return;
    }
    for (const PhotoSize& size : together({plane}).sizes()) {
        RC_ASSERT(size.value.mm() > 0.0 && size.value.mm() < 1e6);
        RC_ASSERT(size.u.mm() > 0.0 && size.u.mm() <= 0.1 * size.value.mm() * (1.0 + 1e-9));
    }
}

TEST(PhotoCheck, ComparesOneReadingByItsOwnUncertaintyAndThePhotos) {
    // Twenty-five millimetres off: chi-square is 25² over the sum of both variances.
    auto window = window_with({plane_seen(straight)});
    window.take("opening.width.top", 1225.0);
    const auto measured = window.measured();
    ASSERT_TRUE(measured.photo_check);
    const double photo_u = size_by(*measured.photos, "opening.width.top").u.mm();
    const double tape_u = reading_u(Length::mm(1225.0), TapeRule{}).mm();
    const Network& check = *measured.photo_check;
    EXPECT_EQ(check.name, "photo");
    EXPECT_EQ(check.adjustment.redundancy, 1);
    EXPECT_NEAR(check.adjustment.chi2, 625.0 / (photo_u * photo_u + tape_u * tape_u), 1e-6);
    EXPECT_NEAR(check.misclosure().off_by, 25.0, 1e-6);
    EXPECT_NEAR(check.misclosure().explained, critical_w * std::hypot(photo_u, tape_u), 1e-6);
    EXPECT_TRUE(check.adds_up());
}

/// Observation equations that say of the corners what the photos do: the rows of the inverse of C's Cholesky factor.
std::vector<ObservationEquation> photo_equations(const PhotosTogether& photos) {
    std::array<std::array<double, 5>, 5> l{};
    for (std::size_t i = 0; i < 5; ++i) {
        for (std::size_t j = 0; j <= i; ++j) {
            double sum = photos.covariance[i * 5 + j];
            for (std::size_t k = 0; k < j; ++k) {
                sum -= l[i][k] * l[j][k];
            }
            l[i][j] = i == j ? std::sqrt(sum) : sum / l[j][j];
        }
    }
    std::vector<ObservationEquation> equations;
    for (std::size_t i = 0; i < 5; ++i) {
        std::vector<double> row(5, 0.0);
        row[i] = 1.0 / l[i][i];
        for (std::size_t k = 0; k < i; ++k) {
            for (std::size_t j = 0; j < 5; ++j) {
                row[j] -= l[i][k] / l[i][i] * equations[k].coefficients[j];
            }
        }
        equations.push_back({row, 0.0, 1.0});
    }
    return equations;
}

TEST(PhotoCheck, IsTheJointAdjustmentLessTheTapesOwn) {
    // Six sides and diagonals of which the tape's own loop is 40 mm off: what the readings say of each other is no
    // matter of the photo's. Both adjustments are made by least_squares.h, which has tests of its own against published
    // cases.
    const std::vector<std::pair<std::string, double>> read{
        {"opening.width.top", 1210.0},   {"opening.width.bottom", 1195.0},    {"opening.height.left", 1003.0},
        {"opening.height.right", 990.0}, {"opening.diagonal.rising", 1600.0}, {"opening.diagonal.falling", 1560.0}};
    auto window = window_with({plane_seen(oblique)});
    for (const auto& [station, mm] : read) {
        window.take(station, mm);
    }
    const auto measured = window.measured();
    const auto sizes = opening_sizes(measured.photos->opening);
    std::vector<ObservationEquation> tape;
    for (std::size_t i = 0; i < read.size(); ++i) {
        ASSERT_EQ(sizes[i].station, read[i].first);
        tape.push_back({{sizes[i].by.begin(), sizes[i].by.end()},
                        read[i].second - sizes[i].mm,
                        reading_u(Length::mm(read[i].second), TapeRule{}).mm()});
    }
    auto both = photo_equations(*measured.photos);
    both.insert(both.end(), tape.begin(), tape.end());
    const double expected = adjust(both, 5)->chi2 - adjust(tape, 5)->chi2;
    EXPECT_GT(adjust(tape, 5)->chi2, chi_square_limit(1));
    EXPECT_EQ(measured.photo_check->adjustment.redundancy, 5);
    EXPECT_NEAR(measured.photo_check->adjustment.chi2, expected, 1e-6);
}

TEST(PhotoCheck, FindsASlipThatNoTapeChecks) {
    auto window = window_with({plane_seen(straight)});
    window.take("opening.width.top", 1201.0).take("opening.width.bottom", 1299.0).take("opening.height.left", 1001.0);
    const auto measured = window.measured();
    EXPECT_TRUE(measured.networks.empty());
    ASSERT_TRUE(measured.photo_check);
    EXPECT_FALSE(measured.photo_check->adds_up());
    const Flag* flag = flag_of(measured, "does-not-add-up");
    ASSERT_NE(flag, nullptr);
    EXPECT_EQ(flag->severity, Severity::remeasure);
    ASSERT_FALSE(flag->suspects.empty());
    EXPECT_EQ(flag->suspects.front().station, "opening.width.bottom");
    EXPECT_EQ(flag->suspects.front().was.mm(), 1299.0);
    EXPECT_EQ(flag->suspects.front().slip, "wrong-digit");
    EXPECT_NEAR(flag->suspects.front().proposed->mm(), 1199.0, 1e-9);
    EXPECT_NE(flag->text.find("A photo is only rough"), std::string::npos) << flag->text;
    // No size moves.
    EXPECT_DOUBLE_EQ(mm_of(measured, "opening.width.bottom"), 1299.0);
}

TEST(PhotoCheck, ChangesNothingElse) {
    const auto take = [](ShapeWindow window) {
        window.take("opening.width.top", 1201.0).take("opening.width.bottom", 1199.0);
        window.take("opening.height.left", 1001.0).take("opening.height.right", 999.0);
        window.take("opening.diagonal.rising", 1562.0).take("opening.diagonal.falling", 1740.0);
        return window.measured();
    };
    const auto without = take(ShapeWindow(Shape::recess));
    const auto with = take(window_with({plane_seen(straight)}));
    EXPECT_FALSE(without.photos);
    EXPECT_FALSE(without.photo_check);
    ASSERT_TRUE(with.photo_check);
    ASSERT_EQ(with.networks.size(), without.networks.size());
    EXPECT_EQ(with.networks.front().adjustment.chi2, without.networks.front().adjustment.chi2);
    ASSERT_EQ(with.explanations.size(), without.explanations.size());
    EXPECT_EQ(with.explanations.front().weight, without.explanations.front().weight);
    EXPECT_EQ(with.flags.front().text, without.flags.front().text);
    const auto sizes = sizes_of(without);
    ASSERT_EQ(sizes_of(with).size(), sizes.size());
    for (const MeasuredSize& size : sizes) {
        EXPECT_EQ(mm_of(with, size.name), size.estimate.value.mm());
    }
}

TEST(PhotoCheck, TakesOnlyWhatTheTapeMeasured) {
    auto window = window_with({plane_seen(straight)});
    window.take("opening.width.top", 1301.0, How::proposed).take("opening.width.bottom", 1301.0, How::copied);
    window.take("opening.width.middle", 1301.0, How::estimated);
    EXPECT_FALSE(window.measured().photo_check);
    window.take("opening.height.left", 1001.0);
    EXPECT_EQ(window.measured().photo_check->stations(), std::vector<std::string>{"opening.height.left"});
}

TEST(PhotoCheck, AllowsForSidesThatBow) {
    // 20 mm between the corners and 30 in the middle: sides may bow by 10, one standard uncertainty.
    auto window = window_with({plane_seen(straight)});
    window.take("opening.width.top", 1200.0).take("opening.width.middle", 1225.0).take("opening.width.bottom", 1200.0);
    const auto measured = window.measured();
    EXPECT_EQ(measured.photo_check->adjustment.redundancy, 3);
    EXPECT_TRUE(measured.photo_check->adds_up());
    window.take("opening.width.middle", 1300.0);
    EXPECT_FALSE(window.measured().photo_check->adds_up());
}

TEST(PhotoCheck, LeavesPhotosThatContradictEachOtherOut) {
    auto other = plane_seen(straight, 1500.0);
    auto window = window_with({plane_seen(straight), other});
    window.take("opening.width.top", 1200.0);
    EXPECT_FALSE(window.measured().photos);
    EXPECT_FALSE(window.measured().photo_check);
    const auto both = photos_together({photo_shape(plane_seen(straight)).value(), photo_shape(other).value()});
    ASSERT_FALSE(both);
    EXPECT_TRUE(both.error().text.starts_with("The photos contradict each other"));
}

TEST(PhotoCheck, WorksOnlySoManyPhotos) {
    // Each is an adjustment of its own, and a document may name a thousand.
    const auto window = window_with(std::vector<PhotoPlane>(40, plane_seen(straight)));
    EXPECT_EQ(window.measured().photos->photos, most_photos_worked);
}

TEST(PhotoCheck, IsNoneOfAWindowWithOtherCornersOrOfAPhotoInTrouble) {
    auto plane = plane_seen(straight);
    for (const Shape shape : {Shape::bay, Shape::corner, Shape::arch, Shape::gable}) {
        Window window;
        window.photos.emplace_back().plane = plane;
        EXPECT_FALSE(opening_by_photos(window, shape));
    }
    std::ranges::reverse(plane.opening);
    auto window = window_with({plane, plane_seen(straight)});
    window.take("opening.width.top", 1200.0);
    ASSERT_TRUE(window.measured().photos);
    EXPECT_EQ(window.measured().photos->photos, 1U);
}

}  // namespace

}  // namespace truehang
