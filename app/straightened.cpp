// SPDX-License-Identifier: Apache-2.0
#include "straightened.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

constexpr double beside_mm = 700.0;
constexpr double above_mm = 500.0;
constexpr double below_mm = 900.0;
constexpr double before_horizon = 0.05;  ///< of the scale at the opening’s corner: beyond it the wall is a smear

/// The colour between four pixels; transparent outside the photo.
QRgb sampled(const QImage& photo, double x, double y) {
    const int left = static_cast<int>(std::floor(x));
    const int top = static_cast<int>(std::floor(y));
    if (left < 0 || top < 0 || left + 1 >= photo.width() || top + 1 >= photo.height()) {
        return qRgba(0, 0, 0, 0);
    }
    const double right = x - left;
    const double down = y - top;
    const auto* upper = reinterpret_cast<const QRgb*>(photo.constScanLine(top)) + left;
    const auto* lower = reinterpret_cast<const QRgb*>(photo.constScanLine(top + 1)) + left;
    const auto mixed = [&](int (*part)(QRgb)) {
        const double above = part(upper[0]) * (1.0 - right) + part(upper[1]) * right;
        const double beneath = part(lower[0]) * (1.0 - right) + part(lower[1]) * right;
        return static_cast<int>(std::lround(above * (1.0 - down) + beneath * down));
    };
    return qRgb(mixed(qRed), mixed(qGreen), mixed(qBlue));
}

}  // namespace

StraightPhoto straightened(const QImage& upright, const PhotoShape& shape, int most_px) {
    const auto& [right_x, top_right_x, top_right_y, top_left_x, top_left_y] = shape.opening;
    const double left = std::min(0.0, top_left_x) - beside_mm;
    const double right = std::max(right_x, top_right_x) + beside_mm;
    const double top = std::max(top_right_y, top_left_y) + above_mm;
    const double bottom = -below_mm;
    const double px_per_mm = most_px / std::max(right - left, top - bottom);
    const QSize size(std::max(1, static_cast<int>(std::lround((right - left) * px_per_mm))),
                     std::max(1, static_cast<int>(std::lround((top - bottom) * px_per_mm))));
    StraightPhoto straight{QImage(size, QImage::Format_ARGB32), {}};
    const QImage photo = upright.convertToFormat(QImage::Format_RGB32);
    // The shape goes by pixels of the picture as it was tapped; this one may be smaller.
    const double scale = std::hypot(photo.width(), photo.height()) / (2.0 * shape.radius);
    for (int row = 0; row < size.height(); ++row) {
        auto* line = reinterpret_cast<QRgb*>(straight.picture.scanLine(row));
        const double y = top - (row + 0.5) / px_per_mm;
        for (int column = 0; column < size.width(); ++column) {
            const double x = left + (column + 0.5) / px_per_mm;
            const double depth = shape.homography[6] * x + shape.homography[7] * y + shape.homography[8];
            if (depth < before_horizon) {
                line[column] = qRgba(0, 0, 0, 0);
                continue;
            }
            const PicturePoint at = shape.picture_of(x, y);
            line[column] =
                sampled(photo, photo.width() / 2.0 + scale * at.x - 0.5, photo.height() / 2.0 + scale * at.y - 0.5);
        }
    }
    const auto pixel = [&](double x, double y) { return QPointF((x - left) * px_per_mm, (top - y) * px_per_mm); };
    straight.opening = {pixel(0.0, 0.0), pixel(right_x, 0.0), pixel(top_right_x, top_right_y),
                        pixel(top_left_x, top_left_y)};
    return straight;
}

}  // namespace truehang
