// SPDX-License-Identifier: Apache-2.0
#include "adjust/photo_taps.h"

#include "units/saying.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

constexpr std::size_t corner_count = 4;

bool is_tapped(const TappedCorners& corners) {
    return corners.size() >= corner_count &&
           std::all_of(corners.begin(), corners.begin() + corner_count, [](const Taps& taps) { return !taps.empty(); });
}

/// Taps lie in the picture, or a little beside it.
bool lie_in_picture(const TappedCorners& corners) {
    constexpr double beside = 0.5;
    return std::ranges::all_of(corners, [](const Taps& taps) {
        return std::ranges::all_of(taps, [](const auto& tap) {
            return std::abs(tap.first - 0.5) <= 0.5 + beside && std::abs(tap.second - 0.5) <= 0.5 + beside;
        });
    });
}

/// The spread of taps about their corners.
struct TapSpread {
    double squares = 0.0, degrees = 0.0;
};

/// Fractions of the picture as pixels from its centre.
struct PictureFrame {
    double width, height;

    [[nodiscard]] PicturePoint at(const std::pair<double, double>& tap) const {
        return {(tap.first - 0.5) * width, (tap.second - 0.5) * height};
    }
    [[nodiscard]] PicturePoint mean(const Taps& taps) const {
        PicturePoint sum;
        for (const auto& tap : taps) {
            const PicturePoint point = at(tap);
            sum.x += point.x;
            sum.y += point.y;
        }
        const auto count = static_cast<double>(taps.size());
        return {sum.x / count, sum.y / count};
    }
    void add_spread(const TappedCorners& corners, TapSpread& spread) const {
        for (const Taps& taps : corners) {
            if (taps.size() < 2) {
                continue;
            }
            const PicturePoint middle = mean(taps);
            for (const auto& tap : taps) {
                const PicturePoint point = at(tap);
                spread.squares +=
                    (point.x - middle.x) * (point.x - middle.x) + (point.y - middle.y) * (point.y - middle.y);
            }
            spread.degrees += 2.0 * static_cast<double>(taps.size() - 1);
        }
    }
    [[nodiscard]] double longer() const { return std::max(width, height); }
};

double usual_tap_u(const PictureFrame& frame) {
    return std::max(1.0, tap_u_px * frame.longer() / tap_u_of_longer_side);
}

double pooled_tap_u(const PhotoPlane& plane, const PictureFrame& frame) {
    TapSpread spread;
    frame.add_spread(plane.opening, spread);
    for (const FlatSheet& sheet : plane.sheets) {
        frame.add_spread(sheet.corners, spread);
    }
    const double usual = usual_tap_u(frame);
    return std::sqrt((tap_degrees * usual * usual + spread.squares) / (tap_degrees + spread.degrees));
}

TappedQuad quad_of(const TappedCorners& corners, const PictureFrame& frame, double tap_u) {
    const double common = common_share * usual_tap_u(frame);
    TappedQuad quad{};
    for (std::size_t i = 0; i < corner_count; ++i) {
        quad.at[i] = frame.mean(corners[i]);
        quad.u[i] = std::hypot(common, tap_u / std::sqrt(static_cast<double>(corners[i].size())));
    }
    return quad;
}

/// Twice the area of the triangle at a corner; above zero where the way round it is clockwise in the picture.
double turn_at(const TappedQuad& quad, std::size_t i) {
    const PicturePoint& a = quad.at[i];
    const PicturePoint& b = quad.at[(i + 1) % corner_count];
    const PicturePoint& c = quad.at[(i + 2) % corner_count];
    return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
}

bool is_clockwise(const TappedQuad& quad) {
    return turn_at(quad, 0) > 0.0 && turn_at(quad, 1) > 0.0 && turn_at(quad, 2) > 0.0 && turn_at(quad, 3) > 0.0;
}

double shortest_side(const TappedQuad& quad) {
    double shortest = std::hypot(quad.at[0].x - quad.at[3].x, quad.at[0].y - quad.at[3].y);
    for (std::size_t i = 0; i + 1 < corner_count; ++i) {
        shortest = std::min(shortest, std::hypot(quad.at[i + 1].x - quad.at[i].x, quad.at[i + 1].y - quad.at[i].y));
    }
    return shortest;
}

/// Its first corner is its top left one.
bool starts_at_top_left(const TappedQuad& quad) {
    const auto& at = quad.at;
    return at[0].y + at[1].y < at[2].y + at[3].y && at[0].x + at[3].x < at[1].x + at[2].x;
}

/// From a stamp to a shop’s front.
bool is_size_of_sheet(Length length) {
    constexpr double least = 20.0;
    constexpr double most = 10'000.0;
    return length.mm() >= least && length.mm() <= most;
}

/// A sheet’s side is to be so many times as long as a tap is unsure.
constexpr double least_side_in_taps = 20.0;

std::optional<Error> trouble_with(const TappedPlane& tapped) {
    if (!is_clockwise(tapped.opening) || !starts_at_top_left(tapped.opening)) {
        return Error{
            ErrorCode::conflict, "opening",
            say("The opening’s corners cross, or were tapped in another order. Tap them clockwise, from its top "
                "left in the picture.")};
    }
    if (shortest_side(tapped.opening) < least_side_in_taps * tapped.tap_u) {
        return Error{ErrorCode::out_of_range, "opening",
                     say("The opening is too small in the picture to measure. Go nearer.")};
    }
    for (const TappedSheet& sheet : tapped.sheets) {
        if (!is_clockwise(sheet.corners)) {
            return Error{ErrorCode::conflict, "sheets",
                         say("The sheet’s corners cross, or were tapped in another order. Tap them clockwise, from its "
                             "top left in the picture.")};
        }
        if (shortest_side(sheet.corners) < least_side_in_taps * tapped.tap_u) {
            return Error{ErrorCode::out_of_range, "sheets",
                         say("The sheet is too small in the picture to measure by. Go nearer, or use a larger one.")};
        }
    }
    return std::nullopt;
}

/// What is missing before anything can be worked.
std::optional<Error> missing_in(const PhotoPlane& plane) {
    if (plane.width_px < 1 || plane.height_px < 1) {
        return Error{ErrorCode::missing, "width_px",
                     say("How large the picture is isn’t known. Take or choose the photo again.")};
    }
    const auto is_whole = [](const FlatSheet& sheet) { return is_tapped(sheet.corners); };
    if (std::ranges::none_of(plane.sheets, is_whole)) {
        return Error{ErrorCode::missing, "sheets", say("Tap all four corners of the sheet.")};
    }
    for (const FlatSheet& sheet : plane.sheets) {
        if (is_whole(sheet) && (!is_size_of_sheet(sheet.width) || !is_size_of_sheet(sheet.height))) {
            return Error{ErrorCode::out_of_range, "sheets",
                         say("Say how wide and how high the sheet is: from 20 mm to 10 m.")};
        }
    }
    if (!is_tapped(plane.opening)) {
        return Error{ErrorCode::missing, "opening", say("Tap all four corners of the opening.")};
    }
    const bool inside = lie_in_picture(plane.opening) && std::ranges::all_of(plane.sheets, [](const FlatSheet& sheet) {
                            return lie_in_picture(sheet.corners);
                        });
    if (!inside) {
        return Error{ErrorCode::out_of_range, "opening",
                     say("A corner was tapped far outside the picture. Tap it again.")};
    }
    return std::nullopt;
}

}  // namespace

Result<TappedPlane> tapped_plane(const PhotoPlane& plane) {
    if (auto missing = missing_in(plane)) {
        return std::move(*missing);
    }
    const PictureFrame frame{static_cast<double>(plane.width_px), static_cast<double>(plane.height_px)};
    TappedPlane tapped;
    tapped.radius = std::hypot(frame.width, frame.height) / 2.0;
    tapped.tap_u = pooled_tap_u(plane, frame);
    tapped.opening = quad_of(plane.opening, frame, tapped.tap_u);
    for (const FlatSheet& sheet : plane.sheets) {
        if (is_tapped(sheet.corners)) {
            tapped.sheets.push_back({sheet.width.mm(), sheet.height.mm(), quad_of(sheet.corners, frame, tapped.tap_u)});
        }
    }
    if (auto trouble = trouble_with(tapped)) {
        return std::move(*trouble);
    }
    return tapped;
}

}  // namespace truehang
