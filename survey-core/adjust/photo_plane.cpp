// SPDX-License-Identifier: Apache-2.0
#include "adjust/photo_plane.h"

#include "adjust/chi_square.h"
#include "adjust/least_squares.h"
#include "adjust/network.h"
#include "adjust/photo_guess.h"
#include "units/saying.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace truehang {

namespace {

// Where the unknowns stand. All are millimetres on the wall or pixels in the picture, so that one step of the
// adjustment is measured alike in each.
constexpr std::size_t at_homography = 5;  // [6] and [7] as pixels at the picture's corner
constexpr std::size_t at_lens = at_homography + 8;
constexpr std::size_t at_cut = at_lens + 2;

/// A point on the wall, and its derivatives by the unknowns that it hangs on.
struct WallPoint {
    double x = 0.0, y = 0.0;
    std::array<std::size_t, 5> unknown{};
    std::array<double, 5> x_by{}, y_by{};
    std::size_t count = 0;

    void hang_on(std::size_t which, double by_x, double by_y) {
        unknown[count] = which;
        x_by[count] = by_x;
        y_by[count] = by_y;
        ++count;
    }
};

/// A sheet as the adjustment knows it.
struct SheetModel {
    std::size_t size;      ///< its number among the sizes
    bool is_turned;        ///< its width is the longer side
    double half_diagonal;  ///< what its angle is measured at
    std::size_t at;        ///< its unknowns: middle x, y, angle
    const TappedSheet* tapped;
};

using Point = std::vector<double>;

/// One photo’s observation equations.
class PhotoModel {
public:
    PhotoModel(const TappedPlane& tapped, const PhotoGuess& guess) : tapped_(tapped), guess_(guess) {
        for (const TappedSheet& sheet : tapped.sheets) {
            add_sheet(sheet);
        }
        std::size_t at = at_cut + 2 * sizes_.size();
        for (SheetModel& sheet : sheets_) {
            sheet.at = at;
            at += 3;
        }
        unknowns_ = at;
    }

    [[nodiscard]] const std::vector<SheetSize>& sizes() const { return sizes_; }
    /// Two coordinates a corner, two sides a size, five allowances more; less the unknowns.
    [[nodiscard]] int redundancy() const {
        const std::size_t corners = 4 * (1 + sheets_.size());
        return static_cast<int>(2 * corners + 2 * sizes_.size() + 5) - static_cast<int>(unknowns_);
    }
    [[nodiscard]] Point start() const;
    void linearise(const Point& point, WeightedEquations& equations) const;
    [[nodiscard]] PhotoShape shape(const Point& point, const Adjustment& adjustment) const;
    /// How much of the picture’s scale is left where the plane turns away most.
    [[nodiscard]] double least_scale(const Point& point) const;
    /// Every corner lies before the camera.
    [[nodiscard]] bool is_before_camera(const Point& point) const;

private:
    void add_sheet(const TappedSheet& sheet);
    [[nodiscard]] WallPoint opening_corner(const Point& point, std::size_t i) const;
    [[nodiscard]] WallPoint sheet_corner(const Point& point, const SheetModel& sheet, std::size_t i) const;
    [[nodiscard]] double depth(const Point& point, const WallPoint& at) const;
    void observe(const Point& point, const WallPoint& at, const PicturePoint& seen, double u,
                 WeightedEquations& equations) const;
    void observe_allowances(const Point& point, WeightedEquations& equations) const;
    void expect(WeightedEquations& equations, std::initializer_list<std::pair<std::size_t, double>> terms,
                const Point& point, double u) const;

    const TappedPlane& tapped_;
    const PhotoGuess& guess_;
    std::vector<SheetSize> sizes_;
    std::vector<SheetModel> sheets_;
    std::size_t unknowns_ = 0;
};

void PhotoModel::add_sheet(const TappedSheet& sheet) {
    const SheetSize size{std::min(sheet.width, sheet.height), std::max(sheet.width, sheet.height)};
    const auto found = std::ranges::find_if(
        sizes_, [&](const SheetSize& each) { return each.width == size.width && each.height == size.height; });
    const auto number = static_cast<std::size_t>(found - sizes_.begin());
    if (found == sizes_.end()) {
        sizes_.push_back(size);
    }
    sheets_.push_back({number, sheet.width > sheet.height, std::hypot(size.width, size.height) / 2.0, 0, &sheet});
}

Point PhotoModel::start() const {
    Point point(unknowns_, 0.0);
    point[0] = point[1] = guess_.width;
    point[2] = point[4] = guess_.height;
    std::ranges::copy(guess_.homography, point.begin() + at_homography);
    point[at_homography + 6] *= tapped_.radius;
    point[at_homography + 7] *= tapped_.radius;
    for (std::size_t i = 0; i < sheets_.size(); ++i) {
        point[sheets_[i].at] = guess_.sheets[i].x;
        point[sheets_[i].at + 1] = guess_.sheets[i].y;
        point[sheets_[i].at + 2] = guess_.sheets[i].angle * sheets_[i].half_diagonal;
    }
    return point;
}

/// Clockwise from the top left.
WallPoint PhotoModel::opening_corner(const Point& point, std::size_t i) const {
    WallPoint at;
    switch (i) {
        case 0:
            at.x = point[3];
            at.y = point[4];
            at.hang_on(3, 1.0, 0.0);
            at.hang_on(4, 0.0, 1.0);
            break;
        case 1:
            at.x = point[1];
            at.y = point[2];
            at.hang_on(1, 1.0, 0.0);
            at.hang_on(2, 0.0, 1.0);
            break;
        case 2:
            at.x = point[0];
            at.hang_on(0, 1.0, 0.0);
            break;
        default:
            break;
    }
    return at;
}

WallPoint PhotoModel::sheet_corner(const Point& point, const SheetModel& sheet, std::size_t i) const {
    const double along = i == 1 || i == 2 ? 0.5 : -0.5;
    const double up = i < 2 ? 0.5 : -0.5;
    const std::size_t cut = at_cut + 2 * sheet.size;
    const std::size_t width_cut = cut + (sheet.is_turned ? 1 : 0);
    const std::size_t height_cut = cut + (sheet.is_turned ? 0 : 1);
    const double width = along * (sheet.tapped->width + point[width_cut]);
    const double height = up * (sheet.tapped->height + point[height_cut]);
    const double angle = point[sheet.at + 2] / sheet.half_diagonal;
    const double c = std::cos(angle);
    const double s = std::sin(angle);
    WallPoint at;
    at.x = point[sheet.at] + c * width - s * height;
    at.y = point[sheet.at + 1] + s * width + c * height;
    at.hang_on(sheet.at, 1.0, 0.0);
    at.hang_on(sheet.at + 1, 0.0, 1.0);
    at.hang_on(sheet.at + 2, (-s * width - c * height) / sheet.half_diagonal,
               (c * width - s * height) / sheet.half_diagonal);
    at.hang_on(width_cut, c * along, s * along);
    at.hang_on(height_cut, -s * up, c * up);
    return at;
}

double PhotoModel::depth(const Point& point, const WallPoint& at) const {
    const double* h = point.data() + at_homography;
    return 1.0 + (h[6] * (at.x / guess_.width - 0.5) + h[7] * (at.y / guess_.height - 0.5)) / tapped_.radius;
}

void PhotoModel::observe(const Point& point, const WallPoint& at, const PicturePoint& seen, double u,
                         WeightedEquations& equations) const {
    const double* h = point.data() + at_homography;
    const double radius = tapped_.radius;
    const double x = at.x / guess_.width - 0.5;
    const double y = at.y / guess_.height - 0.5;
    const double w = depth(point, at);
    const double px = (h[0] * x + h[1] * y + h[2]) / w;
    const double py = (h[3] * x + h[4] * y + h[5]) / w;
    const double square = (px * px + py * py) / (radius * radius);
    const double lens = 1.0 + (point[at_lens] * square + point[at_lens + 1] * square * square) / radius;
    const double bend = 2.0 * (point[at_lens] + 2.0 * point[at_lens + 1] * square) / (radius * radius * radius);
    for (const bool is_x : {true, false}) {
        const double own = is_x ? px : py;
        // Derivatives of the distorted coordinate by the undistorted ones.
        const double by_px = own * bend * px + (is_x ? lens : 0.0);
        const double by_py = own * bend * py + (is_x ? 0.0 : lens);
        const double by_x =
            (by_px * (h[0] - px * h[6] / radius) + by_py * (h[3] - py * h[6] / radius)) / w / guess_.width;
        const double by_y =
            (by_px * (h[1] - px * h[7] / radius) + by_py * (h[4] - py * h[7] / radius)) / w / guess_.height;
        std::vector<double> row(unknowns_, 0.0);
        for (std::size_t k = 0; k < at.count; ++k) {
            row[at.unknown[k]] += by_x * at.x_by[k] + by_y * at.y_by[k];
        }
        const double along = -(by_px * px + by_py * py) / (w * radius);
        const std::array<double, 8> by{by_px * x / w, by_px * y / w, by_px / w, by_py * x / w,
                                       by_py * y / w, by_py / w,     along * x, along * y};
        std::ranges::copy(by, row.begin() + at_homography);
        row[at_lens] = own * square / radius;
        row[at_lens + 1] = own * square * square / radius;
        equations.add(row, (is_x ? seen.x : seen.y) - own * lens, u);
    }
}

/// A sum of unknowns is zero, within `u`.
void PhotoModel::expect(WeightedEquations& equations, std::initializer_list<std::pair<std::size_t, double>> terms,
                        const Point& point, double u) const {
    std::vector<double> row(unknowns_, 0.0);
    double value = 0.0;
    for (const auto& [which, factor] : terms) {
        row[which] = factor;
        value += factor * point[which];
    }
    equations.add(row, -value, u);
}

void PhotoModel::observe_allowances(const Point& point, WeightedEquations& equations) const {
    expect(equations, {{3, 1.0}}, point, out_of_square_u);
    expect(equations, {{1, 1.0}, {0, -1.0}}, point, out_of_square_u);
    expect(equations, {{2, 1.0}, {4, -1.0}}, point, out_of_square_u);
    expect(equations, {{at_lens, 1.0}}, point, lens_u_2 * tapped_.radius);
    expect(equations, {{at_lens + 1, 1.0}}, point, lens_u_4 * tapped_.radius);
    for (std::size_t i = 0; i < sizes_.size(); ++i) {
        expect(equations, {{at_cut + 2 * i, 1.0}}, point, sheet_side_u(sizes_[i].width));
        expect(equations, {{at_cut + 2 * i + 1, 1.0}}, point, sheet_side_u(sizes_[i].height));
    }
}

void PhotoModel::linearise(const Point& point, WeightedEquations& equations) const {
    equations.restart(unknowns_);
    for (std::size_t i = 0; i < 4; ++i) {
        observe(point, opening_corner(point, i), tapped_.opening.at[i], tapped_.opening.u[i], equations);
    }
    for (const SheetModel& sheet : sheets_) {
        for (std::size_t i = 0; i < 4; ++i) {
            const TappedQuad& corners = sheet.tapped->corners;
            observe(point, sheet_corner(point, sheet, i), corners.at[i], corners.u[i], equations);
        }
    }
    observe_allowances(point, equations);
}

bool PhotoModel::is_before_camera(const Point& point) const {
    constexpr double near_horizon = 0.05;
    bool all = true;
    for (std::size_t i = 0; i < 4; ++i) {
        all = all && depth(point, opening_corner(point, i)) > near_horizon;
        for (const SheetModel& sheet : sheets_) {
            all = all && depth(point, sheet_corner(point, sheet, i)) > near_horizon;
        }
    }
    return all;
}

double PhotoModel::least_scale(const Point& point) const {
    const double* h = point.data() + at_homography;
    // In the middle of the opening, pixels per mm; the singular values of that matrix.
    const double a = (h[0] - h[2] * h[6] / tapped_.radius) / guess_.width;
    const double b = (h[1] - h[2] * h[7] / tapped_.radius) / guess_.height;
    const double c = (h[3] - h[5] * h[6] / tapped_.radius) / guess_.width;
    const double d = (h[4] - h[5] * h[7] / tapped_.radius) / guess_.height;
    const double sum = std::hypot(a + d, b - c);
    const double difference = std::hypot(a - d, b + c);
    return std::abs(sum - difference) / (sum + difference);
}

PhotoShape PhotoModel::shape(const Point& point, const Adjustment& adjustment) const {
    PhotoShape shape;
    std::copy_n(point.begin(), shape.opening.size(), shape.opening.begin());
    shape.sizes = sizes_;
    shape.cut.assign(point.begin() + at_cut, point.begin() + static_cast<std::ptrdiff_t>(at_cut + 2 * sizes_.size()));
    std::vector<std::size_t> kept{0, 1, 2, 3, 4};
    for (std::size_t i = 0; i < shape.cut.size(); ++i) {
        kept.push_back(at_cut + i);
    }
    for (const std::size_t row : kept) {
        for (const std::size_t column : kept) {
            shape.covariance.push_back(adjustment.cofactors[row * unknowns_ + column]);
        }
    }
    const double* h = point.data() + at_homography;
    std::array<double, 9> wall{h[0], h[1], h[2], h[3], h[4], h[5], h[6] / tapped_.radius, h[7] / tapped_.radius, 1.0};
    for (std::size_t row = 0; row < wall.size(); row += 3) {
        wall[row + 2] -= (wall[row] + wall[row + 1]) / 2.0;
        wall[row] /= guess_.width;
        wall[row + 1] /= guess_.height;
    }
    for (std::size_t i = 0; i < wall.size(); ++i) {
        shape.homography[i] = wall[i] / wall[8];
    }
    shape.radius = tapped_.radius;
    shape.lens_2 = point[at_lens] / tapped_.radius;
    shape.lens_4 = point[at_lens + 1] / tapped_.radius;
    shape.tap_u = tapped_.tap_u;
    shape.chi2 = adjustment.chi2;
    shape.redundancy = adjustment.redundancy;
    return shape;
}

Error unfit() {
    return {
        ErrorCode::conflict, "opening",
        say("These corners don’t fit a sheet and an opening in one plane. Tap them again; the sheet must lie flat on "
            "the wall.")};
}

/// Whether a size is too unsure to say anything: above a tenth of it.
bool is_too_rough(const PhotoShape& shape) {
    constexpr double roughest = 0.1;
    const std::size_t n = shape.opening.size() + shape.cut.size();
    return std::ranges::any_of(opening_sizes(shape.opening), [&](const OpeningSize& size) {
        double variance = 0.0;
        for (std::size_t i = 0; i < size.by.size(); ++i) {
            for (std::size_t j = 0; j < size.by.size(); ++j) {
                variance += size.by[i] * shape.covariance[i * n + j] * size.by[j];
            }
        }
        return !(std::sqrt(variance) <= roughest * size.mm);
    });
}

}  // namespace

std::array<OpeningSize, 8> opening_sizes(const OpeningCorners& c) {
    // Each as the ends' distance: x and y, and what they are made of.
    struct Way {
        std::string_view station;
        std::array<double, 5> x, y;
    };
    static constexpr std::array<Way, 8> ways{{
        {"opening.width.top", {0, 1, 0, -1, 0}, {0, 0, 1, 0, -1}},
        {"opening.width.bottom", {1, 0, 0, 0, 0}, {}},
        {"opening.height.left", {0, 0, 0, 1, 0}, {0, 0, 0, 0, 1}},
        {"opening.height.right", {-1, 1, 0, 0, 0}, {0, 0, 1, 0, 0}},
        {"opening.diagonal.rising", {0, 1, 0, 0, 0}, {0, 0, 1, 0, 0}},
        {"opening.diagonal.falling", {1, 0, 0, -1, 0}, {0, 0, 0, 0, -1}},
        {"opening.width.middle", {0.5, 0.5, 0, -0.5, 0}, {0, 0, 0.5, 0, -0.5}},
        {"opening.height.centre", {-0.5, 0.5, 0, 0.5, 0}, {0, 0, 0.5, 0, 0.5}},
    }};
    std::array<OpeningSize, 8> sizes;
    for (std::size_t i = 0; i < ways.size(); ++i) {
        double x = 0.0;
        double y = 0.0;
        for (std::size_t k = 0; k < c.size(); ++k) {
            x += ways[i].x[k] * c[k];
            y += ways[i].y[k] * c[k];
        }
        sizes[i] = {ways[i].station, std::hypot(x, y), {}};
        for (std::size_t k = 0; k < c.size(); ++k) {
            sizes[i].by[k] = (x * ways[i].x[k] + y * ways[i].y[k]) / sizes[i].mm;
        }
    }
    return sizes;
}

double sheet_side_u(double mm) {
    const double allowed = mm <= 150.0 ? 1.5 : mm <= 600.0 ? 2.0 : 3.0;
    return allowed / std::numbers::sqrt3;
}

PicturePoint PhotoShape::picture_of(double x, double y) const {
    const auto& h = homography;
    const double w = h[6] * x + h[7] * y + h[8];
    const PicturePoint at{(h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w};
    const double square = (at.x * at.x + at.y * at.y) / (radius * radius);
    const double lens = 1.0 + lens_2 * square + lens_4 * square * square;
    return {at.x * lens, at.y * lens};
}

Result<PhotoShape> photo_shape(const PhotoPlane& plane) {
    auto tapped = tapped_plane(plane);
    if (!tapped) {
        return tapped.error();
    }
    const auto guess = photo_guess(*tapped);
    if (!guess) {
        return unfit();
    }
    const PhotoModel model(*tapped, *guess);
    Point point = model.start();
    // A plane turned by 50 degrees keeps this share of its scale.
    constexpr double least_scale = 0.643;
    const Linearise linearise = [&](const Point& at, WeightedEquations& equations) { model.linearise(at, equations); };
    const double hopeless = hopeless_chi2(chi_square_limit(model.redundancy()));
    const auto adjustment = adjust_iterated(linearise, point, hopeless);
    if (adjustment && model.least_scale(point) < least_scale) {
        return Error{
            ErrorCode::out_of_range, "sheets",
            say("The wall is seen too much from the side, or the sheet’s width and height are exchanged. Stand "
                "in front of the window, or turn the sheet’s size.")};
    }
    if (!adjustment || !model.is_before_camera(point) ||
        !(adjustment->chi2 < chi_square_limit(adjustment->redundancy))) {
        return unfit();
    }
    PhotoShape shape = model.shape(point, *adjustment);
    if (is_too_rough(shape)) {
        return Error{ErrorCode::out_of_range, "sheets",
                     say("By this photo the opening’s sizes are too unsure. Use a larger sheet, or go nearer.")};
    }
    return shape;
}

}  // namespace truehang
