// SPDX-License-Identifier: Apache-2.0
#include "sheet/cloth_brush.h"

#include "sheet/cloth_colour.h"

#include <cmath>
#include <numbers>
#include <utility>

namespace truehang {

ClothBrush::ClothBrush(DrawingBoard& board, const std::string& colour) : board_(board) {
    if (const auto read = read_colour(colour)) {
        colour_ = write_colour(*read);
        shade_ = write_colour(shaded(*read));
    }
}

void ClothBrush::stroke(Form form, Role role, double width_px, const std::vector<Spot>& spots, const std::string& part,
                        const std::string& fill, const std::string& over) const {
    Stroke made{.form = form, .role = role, .width = board_.px(width_px), .part = part, .fill = fill, .over = over};
    made.points.reserve(spots.size());
    for (const Spot& spot : spots) {
        made.points.push_back(board_.at(spot));
    }
    board_.stroke(std::move(made));
}

void ClothBrush::fill(const std::vector<Spot>& spots, const std::string& part) const {
    stroke(Form::polygon, Role::paper, 0.0, spots, part, colour_, {});
}

void ClothBrush::shade(const std::vector<Spot>& spots, const std::string& part) const {
    stroke(Form::polygon, Role::wash, 0.0, spots, part, shade_, {});
}

void ClothBrush::line(Role role, double width_px, const std::vector<Spot>& spots, const std::string& part) const {
    stroke(Form::polyline, role, width_px, spots, part, {}, colour_);
}

void ClothBrush::outline(Role role, double width_px, const std::vector<Spot>& spots, const std::string& part) const {
    stroke(Form::polygon, role, width_px, spots, part, {}, colour_);
}

void ClothBrush::edge(double width_px, const std::vector<Spot>& spots, const std::string& part) const {
    stroke(Form::polygon, Role::ink, width_px, spots, part, {}, colour_);
}

std::vector<Spot> oval(Spot centre, double across, double up) {
    constexpr int points = 24;
    std::vector<Spot> spots;
    for (int i = 0; i < points; ++i) {
        const double turn = 2.0 * std::numbers::pi * i / points;
        spots.emplace_back(centre.first + across * std::cos(turn), centre.second + up * std::sin(turn));
    }
    return spots;
}

}  // namespace truehang
