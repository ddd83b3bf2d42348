// SPDX-License-Identifier: Apache-2.0
#include "sheet/obstruction_drawing.h"

#include "sheet/box_pencil.h"

#include <algorithm>
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

ObstructionKind kind_of(const Obstruction& obstruction) {
    return obstruction.kind ? obstruction.kind->known().value_or(ObstructionKind::other) : ObstructionKind::other;
}

void draw_radiator(BoxPencil& pencil) {
    const double rail = pencil.share_up(45.0, 0.12);
    pencil.outline();
    pencil.line(0.0, 1.0 - rail, 1.0, 1.0 - rail);
    pencil.line(0.0, rail, 1.0, rail);
    pencil.uprights(70.0, rail, 1.0 - rail);
    // Its valve stands beside the lower rail, on the right as most are fitted (common practice, no source).
    const double in = pencil.share_across(45.0, 0.12);
    pencil.panel(1.0 - in, rail * 0.5, 1.0, rail * 0.5 + pencil.share_up(75.0, 0.2));
}

void draw_fire(BoxPencil& pencil) {
    const double shelf = pencil.share_up(60.0, 0.12);
    pencil.panel(0.05, 0.0, 0.95, 1.0 - shelf);
    pencil.panel(0.0, 1.0 - shelf, 1.0, 1.0);
    pencil.rectangle(0.22, 0.0, 0.78, 0.66);
    pencil.line(0.3, 0.08, 0.7, 0.08);
    for (const double u : {0.36, 0.43, 0.5, 0.57, 0.64}) {
        pencil.line(u, 0.0, u, 0.14);
    }
    pencil.polyline({{0.4, 0.16}, {0.44, 0.3}, {0.48, 0.22}, {0.52, 0.4}, {0.56, 0.24}, {0.6, 0.16}});
}

void draw_heater(BoxPencil& pencil) {
    pencil.outline();
    pencil.levels(55.0, 0.06, 0.8);
    pencil.line(0.84, 0.05, 0.84, 0.95);
    pencil.circle(0.92, 0.75, std::min(pencil.width() * 0.05, pencil.height() * 0.08));
}

void draw_beam(BoxPencil& pencil) {
    pencil.outline();
    // Grain, and a knot.
    pencil.polyline({{0.02, 0.34}, {0.2, 0.3}, {0.42, 0.38}, {0.6, 0.3}});
    pencil.polyline({{0.3, 0.7}, {0.55, 0.64}, {0.78, 0.72}, {0.98, 0.66}});
    pencil.circle(0.72, 0.46, pencil.height() * 0.09);
}

void draw_furniture(BoxPencil& pencil) {
    const double foot = pencil.share_up(60.0, 0.12);
    const double top = pencil.share_up(30.0, 0.08);
    pencil.panel(0.03, foot, 0.97, 1.0 - top);
    pencil.panel(0.0, 1.0 - top, 1.0, 1.0);
    pencil.line(0.5, foot, 0.5, 1.0 - top);
    for (const double u : {0.07, 0.93}) {
        pencil.line(u, 0.0, u, foot);
    }
    const double knob = std::min(14.0, pencil.width() * 0.04);
    pencil.circle(0.44, 0.5, knob);
    pencil.circle(0.56, 0.5, knob);
}

void draw_shutter(BoxPencil& pencil) {
    pencil.outline();
    const double stile = pencil.share_across(45.0, 0.16);
    const double rail = pencil.share_up(60.0, 0.1);
    pencil.rectangle(stile, rail, 1.0 - stile, 1.0 - rail);
    pencil.line(stile, 0.5, 1.0 - stile, 0.5);
    pencil.levels(50.0, stile + 0.02, 1.0 - stile - 0.02);
}

/// A leaf hung on its left edge: its frame or panels, the triangle to its hinges that says that it opens, and the arc
/// that its lower corner comes round on, as seen a little from above.
void draw_leaf(BoxPencil& pencil, bool glazed) {
    pencil.outline();
    const double stile = pencil.share_across(50.0, 0.14);
    const double rail = pencil.share_up(50.0, 0.1);
    if (glazed) {
        pencil.rectangle(stile, rail, 1.0 - stile, 1.0 - rail);
        pencil.line(1.0 - stile / 2.0, 0.44, 1.0 - stile / 2.0, 0.56);
    } else {
        pencil.rectangle(stile, rail, 1.0 - stile, 0.44);
        pencil.rectangle(stile, 0.52, 1.0 - stile, 1.0 - rail);
        pencil.circle(1.0 - stile / 2.0, 0.48, std::min(22.0, pencil.width() * 0.05));
    }
    pencil.line(1.0, 1.0, 0.0, 0.5);
    pencil.line(1.0, 0.0, 0.0, 0.5);
    for (const double v : {0.12, 0.88}) {
        pencil.line(-pencil.share_across(12.0, 0.05), v, pencil.share_across(12.0, 0.05), v);
    }
    pencil.quarter({0.0, 0.0}, 1.0, std::min(pencil.share_up(pencil.width() * 0.28), 0.3));
}

void draw_of_house(BoxPencil& pencil, ObstructionKind kind) {
    switch (kind) {
        case ObstructionKind::beam:
            draw_beam(pencil);
            break;
        case ObstructionKind::cornice:
            pencil.outline();
            for (const double v : {0.18, 0.42, 0.78, 0.9}) {
                pencil.line(0.0, v, 1.0, v);
            }
            break;
        case ObstructionKind::picture_rail:
            pencil.outline();
            pencil.line(0.0, 0.35, 1.0, 0.35);
            pencil.line(0.0, 0.75, 1.0, 0.75);
            break;
        case ObstructionKind::furniture:
            draw_furniture(pencil);
            break;
        case ObstructionKind::shutter:
            draw_shutter(pencil);
            break;
        default:
            draw_leaf(pencil, kind == ObstructionKind::casement_swing);
            break;
    }
}

/// Plates on the wall: what is switched, plugged in, heard or breathed through.
void draw_plate(BoxPencil& pencil, ObstructionKind kind) {
    pencil.outline();
    const double least = std::min(pencil.width(), pencil.height());
    switch (kind) {
        case ObstructionKind::switch_:
            pencil.rectangle(0.34, 0.22, 0.66, 0.78);
            pencil.line(0.34, 0.5, 0.66, 0.5);
            break;
        case ObstructionKind::socket:
            for (const double u : {0.3, 0.7}) {
                pencil.circle(u, 0.5, std::min(pencil.width() * 0.16, pencil.height() * 0.3));
                pencil.line(u - 0.05, 0.5, u - 0.05, 0.56);
                pencil.line(u + 0.05, 0.5, u + 0.05, 0.56);
            }
            break;
        case ObstructionKind::vent:
            pencil.rectangle(0.06, 0.08, 0.94, 0.92);
            pencil.levels(22.0, 0.1, 0.9);
            break;
        default:  // an alarm: its body, its lens or sounder, its lamp
            pencil.circle(0.5, 0.5, least * 0.42);
            pencil.circle(0.5, 0.5, least * 0.2);
            pencil.circle(0.5, 0.82, least * 0.04);
            break;
    }
}

void draw_pipe(BoxPencil& pencil) {
    pencil.outline();
    const bool upright = pencil.height() >= pencil.width();
    for (const double along : {0.15, 0.5, 0.85}) {
        if (upright) {
            pencil.line(-0.7, along, 1.7, along);
        } else {
            pencil.line(along, -0.7, along, 1.7);
        }
    }
}

void draw_handle(BoxPencil& pencil) {
    const double rose = std::min(pencil.width() * 0.5, pencil.height() * 0.3);
    pencil.panel(0.3, 0.0, 0.7, 0.8);
    pencil.circle(0.5, 0.8, rose * 0.9);
}

void draw_bracket(BoxPencil& pencil) {
    pencil.panel(0.2, 0.0, 0.8, 1.0);
    pencil.quarter({0.5, 0.62}, 0.5, -0.34);
    pencil.quarter({0.5, 0.62}, -0.5, -0.34);
    for (const double v : {0.12, 0.88}) {
        pencil.circle(0.5, v, pencil.width() * 0.08);
    }
}

}  // namespace

ObstructionBox box_of(const Obstruction& obstruction) {
    const UsualSize usual = usual_size(kind_of(obstruction));
    const auto mm = [](const std::optional<Length>& length, double otherwise) {
        return length ? length->mm() : otherwise;
    };
    return {.left = mm(obstruction.left, 0.0),
            .bottom = mm(obstruction.bottom, usual.bottom),
            .width = std::max(1.0, mm(obstruction.width, usual.width)),
            .height = std::max(1.0, mm(obstruction.height, usual.height)),
            .known = obstruction.left && obstruction.bottom && obstruction.width && obstruction.height};
}

void draw_obstruction(DrawingBoard& board, const Obstruction& obstruction, double floor_mm) {
    const ObstructionBox box = box_of(obstruction);
    BoxPencil pencil(board, {box.left, floor_mm + box.bottom}, box.width, box.height, box.known,
                     obstruction.id.empty() ? "obstruction" : obstruction.id);
    const ObstructionKind kind = kind_of(obstruction);
    switch (kind) {
        case ObstructionKind::radiator:
            return draw_radiator(pencil);
        case ObstructionKind::heater:
            return draw_heater(pencil);
        case ObstructionKind::fire:
            return draw_fire(pencil);
        case ObstructionKind::sill_board:
            return pencil.solid();
        case ObstructionKind::beam:
        case ObstructionKind::cornice:
        case ObstructionKind::picture_rail:
        case ObstructionKind::furniture:
        case ObstructionKind::shutter:
        case ObstructionKind::door_swing:
        case ObstructionKind::casement_swing:
            return draw_of_house(pencil, kind);
        case ObstructionKind::switch_:
        case ObstructionKind::socket:
        case ObstructionKind::vent:
        case ObstructionKind::alarm:
            return draw_plate(pencil, kind);
        case ObstructionKind::pipe:
            return draw_pipe(pencil);
        case ObstructionKind::handle:
            return draw_handle(pencil);
        case ObstructionKind::bracket:
            return draw_bracket(pencil);
        default:
            pencil.outline();
            return pencil.crossed();
    }
}

}  // namespace truehang
