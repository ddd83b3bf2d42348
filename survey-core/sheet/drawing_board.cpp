// SPDX-License-Identifier: Apache-2.0
#include "sheet/drawing_board.h"

namespace truehang {

void DrawingBoard::line(Role role, double width_px, Spot from, Spot to, const std::string& part) {
    stroke({.form = Form::line, .role = role, .points = {at(from), at(to)}, .width = px(width_px), .part = part});
}

void DrawingBoard::polyline(Role role, double width_px, const std::vector<Spot>& spots, const std::string& part) {
    Stroke drawn{.form = Form::polyline, .role = role, .width = px(width_px), .part = part};
    for (const Spot& spot : spots) {
        drawn.points.push_back(at(spot));
    }
    stroke(std::move(drawn));
}

void DrawingBoard::polygon(Role role, double width_px, const std::vector<Spot>& spots, const std::string& part,
                           bool filled) {
    polyline(role, width_px, spots, part);
    elevation_.strokes.back().form = Form::polygon;
    elevation_.strokes.back().filled = filled || role == Role::wash || role == Role::paper;
}

void DrawingBoard::rectangle(Role role, double width_px, Spot low_left, Spot high_right, const std::string& part,
                             bool filled) {
    polygon(role, width_px,
            {low_left, {high_right.first, low_left.second}, high_right, {low_left.first, high_right.second}}, part,
            filled);
}

void DrawingBoard::circle(Role role, double width_px, Spot centre, double radius_mm, const std::string& part,
                          bool filled) {
    stroke({.form = Form::circle,
            .role = role,
            .points = {at(centre)},
            .radius = radius_mm * scale_,
            .width = px(width_px),
            .filled = filled,
            .part = part});
}

}  // namespace truehang
