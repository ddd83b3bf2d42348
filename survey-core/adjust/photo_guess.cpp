// SPDX-License-Identifier: Apache-2.0
#include "adjust/photo_guess.h"

#include <cmath>

namespace truehang {

namespace {

/// From the unit square (bottom left at the origin, y up) to the picture: x = (a u + b v + c) / w, y = (d u + e v + f)
/// / w, w = g u + h v + 1.
struct SquareToPicture {
    double a, b, c, d, e, f, g, h;

    explicit SquareToPicture(const TappedQuad& opening) {
        const auto& [p3, p2, p1, p0] = opening.at;  // clockwise from the top left
        const PicturePoint s{p0.x - p1.x + p2.x - p3.x, p0.y - p1.y + p2.y - p3.y};
        const PicturePoint one{p1.x - p2.x, p1.y - p2.y};
        const PicturePoint two{p3.x - p2.x, p3.y - p2.y};
        const double det = one.x * two.y - two.x * one.y;
        g = (s.x * two.y - two.x * s.y) / det;
        h = (one.x * s.y - s.x * one.y) / det;
        a = p1.x - p0.x + g * p1.x;
        b = p3.x - p0.x + h * p3.x;
        c = p0.x;
        d = p1.y - p0.y + g * p1.y;
        e = p3.y - p0.y + h * p3.y;
        f = p0.y;
    }

    /// Where a point of the picture lies on the square's plane; nothing beyond its horizon.
    [[nodiscard]] std::optional<PicturePoint> back(const PicturePoint& at) const {
        const double m00 = a - g * at.x;
        const double m01 = b - h * at.x;
        const double m10 = d - g * at.y;
        const double m11 = e - h * at.y;
        const double det = m00 * m11 - m01 * m10;
        const double u = ((at.x - c) * m11 - (at.y - f) * m01) / det;
        const double v = ((at.y - f) * m00 - (at.x - c) * m10) / det;
        constexpr double near_horizon = 0.02;
        const bool is_seen = std::isfinite(u) && std::isfinite(v) && g * u + h * v + 1.0 > near_horizon;
        return is_seen ? std::optional(PicturePoint{u, v}) : std::nullopt;
    }

    /// About the square's middle.
    [[nodiscard]] std::array<double, 8> centred() const {
        const double w = 1.0 + (g + h) / 2.0;
        return {a / w, b / w, (c + (a + b) / 2.0) / w, d / w, e / w, (f + (d + e) / 2.0) / w, g / w, h / w};
    }
};

using OnSquare = std::array<PicturePoint, 4>;

PicturePoint way(const PicturePoint& from, const PicturePoint& to) { return {to.x - from.x, to.y - from.y}; }

/// Squared width and height of the rectangle, by equations that are linear in them.
class SquaredSides {
public:
    /// One way of it times another is `product`, each measured in `unit` squared.
    void add(const PicturePoint& one, const PicturePoint& other, double product, double unit) {
        const double x = one.x * other.x / unit;
        const double y = one.y * other.y / unit;
        xx_ += x * x;
        xy_ += x * y;
        yy_ += y * y;
        xb_ += x * product / unit;
        yb_ += y * product / unit;
    }
    void add_sheet(const TappedSheet& sheet, const OnSquare& at) {
        const std::array along{way(at[0], at[1]), way(at[3], at[2])};
        const std::array down{way(at[0], at[3]), way(at[1], at[2])};
        for (std::size_t i = 0; i < along.size(); ++i) {
            add(along[i], along[i], sheet.width * sheet.width, sheet.width * sheet.width);
            add(down[i], down[i], sheet.height * sheet.height, sheet.height * sheet.height);
            add(along[i], down[i], 0.0, sheet.width * sheet.height);
        }
    }
    /// Width and height; no numbers where a square comes out below zero.
    [[nodiscard]] PicturePoint sides() const {
        const double det = xx_ * yy_ - xy_ * xy_;
        return {std::sqrt((xb_ * yy_ - yb_ * xy_) / det), std::sqrt((yb_ * xx_ - xb_ * xy_) / det)};
    }

private:
    double xx_ = 0.0, xy_ = 0.0, yy_ = 0.0, xb_ = 0.0, yb_ = 0.0;
};

SheetPlace place_of(const OnSquare& at, const PicturePoint& sides) {
    const PicturePoint top = way(at[0], at[1]);
    const PicturePoint bottom = way(at[3], at[2]);
    return {(at[0].x + at[1].x + at[2].x + at[3].x) / 4.0 * sides.x,
            (at[0].y + at[1].y + at[2].y + at[3].y) / 4.0 * sides.y,
            std::atan2((top.y + bottom.y) * sides.y, (top.x + bottom.x) * sides.x)};
}

}  // namespace

std::optional<PhotoGuess> photo_guess(const TappedPlane& tapped) {
    const SquareToPicture square(tapped.opening);
    std::vector<OnSquare> on_square;
    SquaredSides squared;
    for (const TappedSheet& sheet : tapped.sheets) {
        OnSquare& at = on_square.emplace_back();
        for (std::size_t i = 0; i < at.size(); ++i) {
            const auto back = square.back(sheet.corners.at[i]);
            if (!back) {
                return std::nullopt;
            }
            at[i] = *back;
        }
        squared.add_sheet(sheet, at);
    }
    const PicturePoint sides = squared.sides();
    if (!std::isfinite(sides.x) || !std::isfinite(sides.y) || !(sides.x >= 1.0) || !(sides.y >= 1.0)) {
        return std::nullopt;
    }
    PhotoGuess guess{sides.x, sides.y, square.centred(), {}};
    for (const OnSquare& at : on_square) {
        guess.sheets.push_back(place_of(at, sides));
    }
    return guess;
}

}  // namespace truehang
