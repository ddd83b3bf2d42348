// SPDX-License-Identifier: Apache-2.0
#include "sheet/obstruction_drawing.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

namespace truehang {

namespace {

struct UsualSize {
    double bottom, width, height;
};

constexpr std::pair<ObstructionKind, UsualSize> usual_sizes[] = {
    {ObstructionKind::radiator, {150, 1000, 600}},
    {ObstructionKind::heater, {200, 600, 400}},
    {ObstructionKind::fire, {0, 900, 1000}},
    {ObstructionKind::sill_board, {850, 1300, 30}},
    {ObstructionKind::switch_, {1050, 85, 85}},
    {ObstructionKind::socket, {300, 145, 85}},
    {ObstructionKind::pipe, {0, 22, 2000}},
    {ObstructionKind::beam, {2050, 2000, 180}},
    {ObstructionKind::cornice, {2250, 2400, 120}},
    {ObstructionKind::picture_rail, {2000, 2400, 45}},
    {ObstructionKind::furniture, {0, 800, 750}},
    {ObstructionKind::door_swing, {0, 800, 1980}},
    {ObstructionKind::casement_swing, {950, 500, 1000}},
    {ObstructionKind::shutter, {900, 300, 1100}},
    {ObstructionKind::vent, {1900, 220, 150}},
    {ObstructionKind::alarm, {2000, 100, 100}},
    {ObstructionKind::handle, {1400, 40, 120}},
    {ObstructionKind::bracket, {2000, 40, 80}},
};

UsualSize usual_size(ObstructionKind kind) {
    const auto* found = std::ranges::find(usual_sizes, kind, &std::pair<ObstructionKind, UsualSize>::first);
    return found != std::end(usual_sizes) ? found->second : UsualSize{1000, 200, 200};
}

/// One obstruction on the board: its box and the fine lines that say what it is.
class Drawer {
public:
    Drawer(DrawingBoard& board, const Obstruction& obstruction)
        : board_(board), part_(obstruction.id.empty() ? "obstruction" : obstruction.id), box_(box_of(obstruction)) {
        fine_ = box_.known ? Role::hairline : Role::guess;
    }

    void outline() {
        board_.rectangle(Role::paper, 0.0, {box_.left, box_.bottom}, {box_.right(), box_.top()}, part_);
        board_.rectangle(fine_, stroke_px::fine + 0.2, {box_.left, box_.bottom}, {box_.right(), box_.top()}, part_);
    }
    /// A line between two places of the box, each a share of its width and height.
    void line(double u1, double v1, double u2, double v2) {
        board_.line(fine_, stroke_px::hair, spot(u1, v1), spot(u2, v2), part_);
    }
    void rectangle(double u1, double v1, double u2, double v2) {
        board_.rectangle(fine_, stroke_px::hair, spot(u1, v1), spot(u2, v2), part_);
    }
    void circle(double u, double v, double radius_mm) {
        board_.circle(fine_, stroke_px::hair, spot(u, v), radius_mm, part_);
    }
    void uprights(double spacing_mm, double low, double high) {
        const int count = lines_in(box_.width, spacing_mm);
        for (int i = 1; i < count; ++i) {
            line(static_cast<double>(i) / count, low, static_cast<double>(i) / count, high);
        }
    }
    void levels(double spacing_mm, double from, double to) {
        const int count = lines_in(box_.height, spacing_mm);
        for (int i = 1; i < count; ++i) {
            line(from, static_cast<double>(i) / count, to, static_cast<double>(i) / count);
        }
    }
    void solid() {
        board_.rectangle(box_.known ? Role::ink : Role::guess, stroke_px::fine, {box_.left, box_.bottom},
                         {box_.right(), box_.top()}, part_, box_.known);
    }
    /// Swings: from the corners of one side to the middle of the other, where the hinge is.
    void swing(double hinge, double handle) {
        line(handle, 0.0, hinge, 0.5);
        line(handle, 1.0, hinge, 0.5);
    }
    [[nodiscard]] const ObstructionBox& box() const { return box_; }

private:
    /// Never so many that the lines run together: four px apart at least.
    [[nodiscard]] int lines_in(double length_mm, double spacing_mm) const {
        const double spacing = std::max(spacing_mm, board_.mm_of_px(4.0));
        return std::clamp(static_cast<int>(std::round(length_mm / spacing)), 1, 60);
    }
    [[nodiscard]] Spot spot(double u, double v) const {
        return {box_.left + u * box_.width, box_.bottom + v * box_.height};
    }

    DrawingBoard& board_;
    std::string part_;
    ObstructionBox box_;
    Role fine_;
};

void draw_warm(Drawer& drawer, ObstructionKind kind) {
    drawer.outline();
    if (kind == ObstructionKind::radiator) {
        drawer.uprights(80.0, 0.03, 0.97);
    } else if (kind == ObstructionKind::heater) {
        drawer.levels(70.0, 0.06, 0.94);
    } else {
        drawer.rectangle(0.2, 0.0, 0.8, 0.7);
        drawer.line(-0.06, 1.0, 1.06, 1.0);
        drawer.line(0.35, 0.04, 0.65, 0.16);
        drawer.line(0.65, 0.04, 0.35, 0.16);
    }
}

void draw_of_house(Drawer& drawer, ObstructionKind kind) {
    drawer.outline();
    switch (kind) {
        case ObstructionKind::beam:
            drawer.line(0.02, 0.35, 0.55, 0.3);
            drawer.line(0.3, 0.68, 0.97, 0.62);
            break;
        case ObstructionKind::cornice:
            drawer.line(0.0, 0.4, 1.0, 0.4);
            drawer.line(0.0, 0.7, 1.0, 0.7);
            break;
        case ObstructionKind::picture_rail:
            drawer.line(0.0, 0.6, 1.0, 0.6);
            break;
        case ObstructionKind::furniture:
            drawer.line(0.5, 0.06, 0.5, 0.94);
            drawer.circle(0.44, 0.5, 14.0);
            drawer.circle(0.56, 0.5, 14.0);
            break;
        case ObstructionKind::shutter:
            drawer.rectangle(0.12, 0.04, 0.88, 0.96);
            drawer.levels(60.0, 0.12, 0.88);
            break;
        case ObstructionKind::door_swing:
            drawer.swing(0.0, 1.0);
            break;
        case ObstructionKind::casement_swing:
            drawer.swing(0.0, 1.0);
            break;
        default:
            break;
    }
}

void draw_small(Drawer& drawer, ObstructionKind kind) {
    const ObstructionBox& box = drawer.box();
    drawer.outline();
    switch (kind) {
        case ObstructionKind::switch_:
            drawer.rectangle(0.36, 0.25, 0.64, 0.75);
            break;
        case ObstructionKind::socket:
            drawer.circle(0.3, 0.5, box.width * 0.12);
            drawer.circle(0.7, 0.5, box.width * 0.12);
            break;
        case ObstructionKind::vent:
            drawer.levels(30.0, 0.1, 0.9);
            break;
        case ObstructionKind::alarm:
            drawer.circle(0.5, 0.5, std::min(box.width, box.height) * 0.36);
            break;
        case ObstructionKind::handle:
            drawer.circle(0.5, 0.7, box.width * 0.3);
            break;
        case ObstructionKind::bracket:
            drawer.line(0.0, 0.0, 1.0, 1.0);
            break;
        case ObstructionKind::pipe:
            drawer.line(-0.6, 0.2, 1.6, 0.2);
            drawer.line(-0.6, 0.8, 1.6, 0.8);
            break;
        default:
            drawer.line(0.0, 0.0, 1.0, 1.0);
            drawer.line(0.0, 1.0, 1.0, 0.0);
            break;
    }
}

}  // namespace

ObstructionBox box_of(const Obstruction& obstruction) {
    const auto kind =
        obstruction.kind ? obstruction.kind->known().value_or(ObstructionKind::other) : ObstructionKind::other;
    const UsualSize usual = usual_size(kind);
    const auto mm = [](const std::optional<Length>& length, double otherwise) {
        return length ? length->mm() : otherwise;
    };
    return {.left = mm(obstruction.left, 0.0),
            .bottom = mm(obstruction.bottom, usual.bottom),
            .width = std::max(1.0, mm(obstruction.width, usual.width)),
            .height = std::max(1.0, mm(obstruction.height, usual.height)),
            .known = obstruction.left && obstruction.bottom && obstruction.width && obstruction.height};
}

void draw_obstruction(DrawingBoard& board, const Obstruction& obstruction) {
    const auto kind =
        obstruction.kind ? obstruction.kind->known().value_or(ObstructionKind::other) : ObstructionKind::other;
    Drawer drawer(board, obstruction);
    switch (kind) {
        case ObstructionKind::radiator:
        case ObstructionKind::heater:
        case ObstructionKind::fire:
            draw_warm(drawer, kind);
            break;
        case ObstructionKind::sill_board:
            drawer.solid();
            break;
        case ObstructionKind::beam:
        case ObstructionKind::cornice:
        case ObstructionKind::picture_rail:
        case ObstructionKind::furniture:
        case ObstructionKind::shutter:
        case ObstructionKind::door_swing:
        case ObstructionKind::casement_swing:
            draw_of_house(drawer, kind);
            break;
        default:
            draw_small(drawer, kind);
            break;
    }
}

}  // namespace truehang
