// SPDX-License-Identifier: Apache-2.0
#include "sheet/box_pencil.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace truehang {

namespace {

constexpr double outline_px = stroke_px::fine + 0.2;

}  // namespace

double BoxPencil::share_across(double mm, double most) const { return std::min(most, mm / std::max(width_, 1.0)); }
double BoxPencil::share_up(double mm, double most) const { return std::min(most, mm / std::max(height_, 1.0)); }

void BoxPencil::panel(double u1, double v1, double u2, double v2) {
    board_.rectangle(Role::paper, 0.0, spot(u1, v1), spot(u2, v2), part_);
    board_.rectangle(fine(), outline_px, spot(u1, v1), spot(u2, v2), part_);
}

void BoxPencil::shape(const std::vector<Spot>& shares) {
    std::vector<Spot> spots;
    for (const auto& [u, v] : shares) {
        spots.push_back(spot(u, v));
    }
    board_.polygon(Role::paper, 0.0, spots, part_);
    board_.polygon(fine(), outline_px, spots, part_);
}

void BoxPencil::solid() {
    board_.rectangle(known_ ? Role::ink : Role::guess, stroke_px::fine, spot(0.0, 0.0), spot(1.0, 1.0), part_, known_);
}

void BoxPencil::line(double u1, double v1, double u2, double v2) {
    board_.line(fine(), stroke_px::hair, spot(u1, v1), spot(u2, v2), part_);
}

void BoxPencil::polyline(const std::vector<Spot>& shares) {
    std::vector<Spot> spots;
    for (const auto& [u, v] : shares) {
        spots.push_back(spot(u, v));
    }
    board_.polyline(fine(), stroke_px::hair, spots, part_);
}

void BoxPencil::rectangle(double u1, double v1, double u2, double v2) {
    board_.rectangle(fine(), stroke_px::hair, spot(u1, v1), spot(u2, v2), part_);
}

void BoxPencil::circle(double u, double v, double radius_mm) {
    board_.circle(fine(), stroke_px::hair, spot(u, v), radius_mm, part_);
}

void BoxPencil::quarter(Spot centre, double across, double rise) {
    constexpr int steps = 10;
    std::vector<Spot> shares;
    for (int i = 0; i <= steps; ++i) {
        const double angle = std::numbers::pi / 2.0 * i / steps;
        shares.emplace_back(centre.first + across * std::sin(angle), centre.second + rise * std::cos(angle));
    }
    polyline(shares);
}

void BoxPencil::uprights(double spacing_mm, double low, double high) {
    const int count = lines_in(width_, spacing_mm);
    for (int i = 1; i < count; ++i) {
        line(static_cast<double>(i) / count, low, static_cast<double>(i) / count, high);
    }
}

void BoxPencil::levels(double spacing_mm, double from, double to) {
    const int count = lines_in(height_, spacing_mm);
    for (int i = 1; i < count; ++i) {
        line(from, static_cast<double>(i) / count, to, static_cast<double>(i) / count);
    }
}

void BoxPencil::crossed() {
    line(0.0, 0.0, 1.0, 1.0);
    line(0.0, 1.0, 1.0, 0.0);
}

int BoxPencil::lines_in(double length_mm, double spacing_mm) const {
    const double spacing = std::max(spacing_mm, board_.mm_of_px(4.0));
    return std::clamp(static_cast<int>(std::round(length_mm / spacing)), 1, 60);
}

}  // namespace truehang
