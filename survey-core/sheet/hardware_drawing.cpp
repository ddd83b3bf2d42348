// SPDX-License-Identifier: Apache-2.0
#include "sheet/hardware_drawing.h"

#include <algorithm>

namespace truehang {

namespace {

constexpr double usual_stand = 200.0;  ///< how far a pole passes the opening at each side; common practice, no source
constexpr double usual_diameter = 28.0;
constexpr double bracket_inset = 60.0;  ///< of the outer brackets from the ends; common practice, no source
const std::string hardware_part = "hardware";

HardwareKind kind_of(const Hardware& hardware) {
    return hardware.kind ? hardware.kind->known().value_or(HardwareKind::pole) : HardwareKind::pole;
}

std::vector<double> bracket_places(const Hardware& hardware, const HardwareRun& run) {
    std::vector<double> places;
    for (const Length& at : hardware.bracket_at) {
        places.push_back(run.left + at.mm());
    }
    const int count = places.empty() ? std::clamp(hardware.brackets.value_or(2), 0, 20) : 0;
    const double inset = std::min(bracket_inset, (run.right - run.left) / 4.0);
    for (int i = 0; i < count; ++i) {
        const double share = count == 1 ? 0.5 : static_cast<double>(i) / (count - 1);
        places.push_back(run.left + inset + share * (run.right - run.left - 2.0 * inset));
    }
    return places;
}

class HardwareDrawer {
public:
    HardwareDrawer(DrawingBoard& board, const WindowOutline& outline, const Layer& layer)
        : board_(board),
          outline_(outline),
          layer_(layer),
          run_(hardware_run(outline, layer)),
          ink_(outline.pole.known || run_.inside ? Role::ink : Role::guess),
          fine_(ink_ == Role::ink ? Role::hairline : Role::guess) {}

    void draw() {
        const Hardware& hardware = *layer_.hardware;
        for (const double x : bracket_places(hardware, run_)) {
            const double reach = std::max(45.0, board_.mm_of_px(5.5));
            board_.line(fine_, stroke_px::ink, {x, y(x)}, {x, y(x) + reach}, hardware_part);
        }
        switch (kind_of(hardware)) {
            case HardwareKind::pole:
                pole();
                break;
            case HardwareKind::track:
                rail(14.0, true);
                break;
            case HardwareKind::headrail:
                rail(30.0, false);
                break;
            case HardwareKind::wire:
                wire();
                break;
        }
    }

private:
    [[nodiscard]] double y(double x) const { return hardware_height(outline_, layer_, x); }
    [[nodiscard]] std::vector<Spot> along(double over) const {
        std::vector<Spot> spots{{run_.left, y(run_.left) + over}};
        const double centre = outline_.x_of(Line::centre);
        if (centre > run_.left && centre < run_.right) {
            spots.push_back({centre, y(centre) + over});
        }
        spots.push_back({run_.right, y(run_.right) + over});
        return spots;
    }
    void pole() {
        const double thick = std::max(pole_diameter(layer_), board_.mm_of_px(stroke_px::heavy));
        const double width_px = ink_ == Role::guess ? stroke_px::fine : thick / board_.mm_of_px(1.0);
        board_.polyline(ink_, width_px, along(0.0), hardware_part);
        if (run_.finial <= 0.0) {
            return;
        }
        const double radius = std::max(run_.finial / 2.0, board_.mm_of_px(3.5));
        for (const double x : {run_.left - radius, run_.right + radius}) {
            board_.circle(Role::paper, 0.0, {x, y(x)}, radius, hardware_part, true);
            board_.circle(fine_ == Role::guess ? Role::hairline : ink_, stroke_px::fine, {x, y(x)}, radius,
                          hardware_part);
        }
    }
    void rail(double depth, bool gliders) {
        const double half = std::max(depth, board_.mm_of_px(4.0)) / 2.0;
        auto outline = along(half);
        const auto under = along(-half);
        outline.insert(outline.end(), under.rbegin(), under.rend());
        board_.polygon(Role::paper, 0.0, outline, hardware_part, true);
        board_.polygon(ink_, stroke_px::ink, outline, hardware_part);
        if (!gliders) {
            return;
        }
        const double step = std::max(120.0, board_.mm_of_px(7.0));
        for (double x = run_.left + step / 2.0; x < run_.right; x += step) {
            board_.line(fine_, stroke_px::hair, {x, y(x) - half}, {x, y(x) - half - board_.mm_of_px(2.5)},
                        hardware_part);
        }
    }
    void wire() {
        board_.polyline(ink_, stroke_px::fine, along(0.0), hardware_part);
        const double radius = board_.mm_of_px(2.0);
        for (const double x : {run_.left, run_.right}) {
            board_.circle(ink_, stroke_px::fine, {x, y(x)}, radius, hardware_part);
        }
    }

    DrawingBoard& board_;
    const WindowOutline& outline_;
    const Layer& layer_;
    HardwareRun run_;
    Role ink_, fine_;
};

}  // namespace

bool hangs_inside_opening(const Layer& layer) {
    return layer.treatment && layer.treatment->heading && layer.treatment->heading->is(Heading::roman) &&
           !(layer.treatment->fit && layer.treatment->fit->is(Fit::outside));
}

double pole_diameter(const Layer& layer) {
    const bool given = layer.hardware && layer.hardware->diameter && layer.hardware->diameter->mm() > 0.0;
    return given ? layer.hardware->diameter->mm() : usual_diameter;
}

HardwareRun hardware_run(const WindowOutline& outline, const Layer& layer) {
    HardwareRun run;
    run.inside = hangs_inside_opening(layer);
    const double width = outline.right_x[2] - outline.left_x[2];
    const double stand = run.inside ? 0.0 : usual_stand;
    double length = width + 2.0 * stand;
    std::optional<double> left;
    if (layer.hardware) {
        const Hardware& hardware = *layer.hardware;
        length = hardware.length && hardware.length->mm() > 0.0 ? hardware.length->mm() : length;
        left = hardware.left ? std::optional(hardware.left->mm()) : std::nullopt;
        run.finial = hardware.finial ? hardware.finial->mm() : 0.0;
        if (outline.is_folded() && hardware.run && hardware.run->is(Run::bent)) {
            length = width;  // from edge to edge of the facets, which stand unfolded
            left = outline.left_x[2];
        }
    }
    run.left = left.value_or((outline.left_x[2] + outline.right_x[2] - length) / 2.0);
    run.right = run.left + length;
    return run;
}

double hardware_height(const WindowOutline& outline, const Layer& layer, double x) {
    if (hangs_inside_opening(layer)) {
        return outline.at(outline.head, x) - 15.0;
    }
    return outline.at(outline.pole, x);
}

void draw_hardware(DrawingBoard& board, const WindowOutline& outline, const Layer& layer) {
    const bool along_the_edge = layer.treatment && layer.treatment->top && layer.treatment->top->is(TopEdge::shaped);
    if (layer.hardware && !along_the_edge) {
        HardwareDrawer(board, outline, layer).draw();
    }
}

}  // namespace truehang
