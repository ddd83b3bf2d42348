// SPDX-License-Identifier: Apache-2.0
#include "sheet/box_pencil.h"
#include "sheet/obstruction_drawing.h"

#include <algorithm>

namespace truehang {

namespace {

ObstructionKind standing_kind(const Obstruction& obstruction) {
    return obstruction.kind ? obstruction.kind->known().value_or(ObstructionKind::other) : ObstructionKind::other;
}

/// Two panels held off the wall.
void radiator(BoxPencil& pencil) {
    const double panel = pencil.share_across(22.0, 0.25);
    const double off = pencil.share_across(35.0, 0.4);
    for (const double v : {0.2, 0.8}) {
        pencil.line(0.0, v, off, v);
    }
    pencil.panel(off, 0.0, off + panel, 1.0);
    pencil.panel(1.0 - panel, 0.0, 1.0, 1.0);
    pencil.line(off + panel, 0.97, 1.0 - panel, 0.97);
}

/// A moulding from its lower edge at the wall to its upper edge in the room.
void cornice(BoxPencil& pencil) {
    pencil.shape({{0.0, 0.0},
                  {0.12, 0.0},
                  {0.12, 0.14},
                  {0.2, 0.14},
                  {0.26, 0.4},
                  {0.44, 0.64},
                  {0.74, 0.8},
                  {0.9, 0.84},
                  {0.9, 0.9},
                  {1.0, 0.9},
                  {1.0, 1.0},
                  {0.0, 1.0}});
}
void picture_rail(BoxPencil& pencil) {
    pencil.shape({{0.0, 0.0},
                  {0.4, 0.0},
                  {0.62, 0.3},
                  {0.62, 0.55},
                  {1.0, 0.72},
                  {1.0, 1.0},
                  {0.72, 1.0},
                  {0.5, 0.84},
                  {0.0, 0.84}});
}

void furniture(BoxPencil& pencil) {
    const double foot = pencil.share_up(60.0, 0.12);
    const double top = pencil.share_up(30.0, 0.08);
    pencil.panel(0.0, foot, 0.96, 1.0 - top);
    pencil.panel(0.0, 1.0 - top, 1.0, 1.0);
    for (const double u : {0.06, 0.9}) {
        pencil.line(u, 0.0, u, foot);
    }
}

void fire(BoxPencil& pencil) {
    const double shelf = pencil.share_up(60.0, 0.12);
    pencil.panel(0.0, 0.0, 0.7, 1.0 - shelf);
    pencil.panel(0.0, 1.0 - shelf, 1.0, 1.0);
}

/// A leaf that stands open at a right angle to the wall, seen flat, and the arc its corner came round on.
void leaf(BoxPencil& pencil, bool glazed) {
    pencil.outline();
    const double stile = pencil.share_across(50.0, 0.14);
    const double rail = pencil.share_up(50.0, 0.1);
    if (glazed) {
        pencil.rectangle(stile, rail, 1.0 - stile, 1.0 - rail);
    } else {
        pencil.rectangle(stile, rail, 1.0 - stile, 0.44);
        pencil.rectangle(stile, 0.52, 1.0 - stile, 1.0 - rail);
    }
    for (const double v : {0.12, 0.88}) {
        pencil.line(0.0, v, pencil.share_across(24.0, 0.1), v);
    }
    pencil.quarter({0.0, 0.0}, 1.0, std::min(pencil.share_up(pencil.width() * 0.28), 0.3));
}

void plate(BoxPencil& pencil, ObstructionKind kind) {
    pencil.panel(0.0, 0.0, 0.5, 1.0);
    switch (kind) {
        case ObstructionKind::switch_:
            pencil.shape({{0.5, 0.25}, {1.0, 0.3}, {0.6, 0.75}, {0.5, 0.75}});
            break;
        case ObstructionKind::vent:
            for (const double v : {0.2, 0.4, 0.6, 0.8}) {
                pencil.line(0.5, v, 1.0, v - 0.14);
            }
            pencil.line(1.0, 0.0, 1.0, 0.7);
            break;
        case ObstructionKind::socket:
            pencil.panel(0.5, 0.12, 1.0, 0.88);
            pencil.line(0.75, 0.12, 0.75, 0.88);
            break;
        default:
            pencil.shape({{0.5, 0.1}, {0.9, 0.2}, {1.0, 0.5}, {0.9, 0.8}, {0.5, 0.9}});
            break;
    }
}

void handle(BoxPencil& pencil) {
    pencil.line(0.0, 0.7, 0.7, 0.7);
    pencil.line(0.0, 0.85, 0.7, 0.85);
    pencil.panel(0.7, 0.0, 1.0, 1.0);
}

void bracket(BoxPencil& pencil) {
    const double plate = pencil.share_across(6.0, 0.15);
    pencil.panel(0.0, 0.0, plate, 1.0);
    pencil.line(plate, 0.55, 0.8, 0.55);
    pencil.line(plate, 0.1, 0.75, 0.5);
    pencil.quarter({0.8, 0.8}, 0.2, -0.25);
    pencil.quarter({0.8, 0.8}, -0.2, -0.25);
}

/// A pipe on its clips: upright it is a strip off the wall, level it is cut through.
void pipe(BoxPencil& pencil, double front_width) {
    if (pencil.height() < front_width) {
        pencil.circle(0.5, 0.5, std::min(pencil.width(), pencil.height()) * 0.5);
        pencil.line(0.0, 0.5, 0.2, 0.5);
        return;
    }
    const double across = pencil.share_across(front_width, 0.9);
    pencil.panel(1.0 - across, 0.0, 1.0, 1.0);
    for (const double v : {0.15, 0.5, 0.85}) {
        pencil.line(0.0, v, 1.0 - across, v);
    }
}

/// What is a box from the side, with what lies in it.
void boxed(BoxPencil& pencil, ObstructionKind kind) {
    switch (kind) {
        case ObstructionKind::sill_board:
            return pencil.solid();
        case ObstructionKind::heater:
            pencil.outline();
            return pencil.levels(55.0, 0.15, 0.85);
        case ObstructionKind::shutter:
            pencil.outline();
            return pencil.uprights(25.0, 0.0, 1.0);
        case ObstructionKind::beam:  // cut through: its end grain
            pencil.outline();
            return pencil.crossed();
        default:
            pencil.outline();
            return pencil.line(0.0, 0.0, 1.0, 1.0);
    }
}

}  // namespace

double usual_stand_out(const Obstruction& obstruction) {
    switch (standing_kind(obstruction)) {
        case ObstructionKind::switch_:
        case ObstructionKind::socket:
        case ObstructionKind::vent:
        case ObstructionKind::picture_rail:
            return 20.0;
        case ObstructionKind::furniture:
            return 450.0;
        case ObstructionKind::door_swing:
        case ObstructionKind::casement_swing:
            return box_of(obstruction).width;
        case ObstructionKind::radiator:
        case ObstructionKind::heater:
        case ObstructionKind::fire:
        case ObstructionKind::beam:
        case ObstructionKind::cornice:
            return 100.0;
        default:
            return 60.0;
    }
}

void draw_obstruction_side(DrawingBoard& board, const Obstruction& obstruction, double floor_mm) {
    const ObstructionBox box = box_of(obstruction);
    const double out = std::max(1.0, obstruction.depth ? obstruction.depth->mm() : usual_stand_out(obstruction));
    BoxPencil pencil(board, {0.0, floor_mm + box.bottom}, out, box.height, box.known && obstruction.depth.has_value(),
                     obstruction.id.empty() ? "obstruction" : obstruction.id);
    const ObstructionKind kind = standing_kind(obstruction);
    switch (kind) {
        case ObstructionKind::radiator:
            return radiator(pencil);
        case ObstructionKind::cornice:
            return cornice(pencil);
        case ObstructionKind::picture_rail:
            return picture_rail(pencil);
        case ObstructionKind::furniture:
            return furniture(pencil);
        case ObstructionKind::fire:
            return fire(pencil);
        case ObstructionKind::door_swing:
        case ObstructionKind::casement_swing:
            return leaf(pencil, kind == ObstructionKind::casement_swing);
        case ObstructionKind::switch_:
        case ObstructionKind::socket:
        case ObstructionKind::vent:
        case ObstructionKind::alarm:
            return plate(pencil, kind);
        case ObstructionKind::handle:
            return handle(pencil);
        case ObstructionKind::bracket:
            return bracket(pencil);
        case ObstructionKind::pipe:
            return pipe(pencil, box.width);
        default:
            return boxed(pencil, kind);
    }
}

}  // namespace truehang
