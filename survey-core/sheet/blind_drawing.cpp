// SPDX-License-Identifier: Apache-2.0
#include "sheet/blind_drawing.h"

#include "sheet/cloth_brush.h"
#include "sheet/hardware_drawing.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

constexpr double lip = 11.0;  ///< how far each fold that is drawn up shows below the one before it
const std::string part = "curtain";

/// The blind’s own sizes, or by house rule while there are no figures.
struct BlindSizes {
    double width, fold, up;
    int rods;
};

BlindSizes sizes_of(const Hanging& hanging, const HardwareRun& run, double drop) {
    const HouseRules& rules = hanging.rules;
    if (hanging.figures != nullptr && hanging.figures->blind && hanging.figures->finished) {
        const Blind& blind = *hanging.figures->blind;
        return {hanging.figures->finished->width.mm(), blind.fold.mm(), blind.up.mm(), blind.rods};
    }
    const double folding = std::max(1.0, drop - rules.blind_headrail);
    const int rods = std::clamp(static_cast<int>(std::ceil((folding / rules.blind_fold - 1.0) / 2.0)), 1, 100);
    const double fold = folding / (2 * rods + 1);
    return {run.right - run.left, fold, fold + rules.blind_headrail, rods};
}

class BlindDrawer {
public:
    BlindDrawer(DrawingBoard& board, const Hanging& hanging, const HangingEdges& edges)
        : board_(board),
          brush_(board, hanging.cloth),
          edges_(edges),
          headrail_(hanging.rules.blind_headrail),
          sizes_(sizes_of(hanging, hardware_run(hanging.outline, hanging.layer), edges.top - edges.bottom)) {
        const HardwareRun run = hardware_run(hanging.outline, hanging.layer);
        const double centre = (run.left + run.right) / 2.0;
        left_ = centre - sizes_.width / 2.0;
        right_ = centre + sizes_.width / 2.0;
    }

    void let_down() {
        const double bottom = std::min(edges_.bottom, edges_.top - 1.0);
        panel(bottom);
        for (int i = 0; i < sizes_.rods; ++i) {
            const double y = bottom + sizes_.fold * (2 * i + 1);
            const double below = std::max(bottom, y - std::max(0.22 * sizes_.fold, board_.mm_of_px(2.0)));
            brush_.shade({{left_, below}, {right_, below}, {right_, y}, {left_, y}}, "fold");
            brush_.line(Role::ink, 0.7, across(y), "rod");
        }
        border(bottom);
    }

    /// Every fold hangs a little lower than the one in front of it.
    void drawn_up() {
        const double bottom = edges_.top - sizes_.up;
        panel(bottom);
        const double step = std::min(std::max(lip, board_.mm_of_px(2.4)), 0.75 * sizes_.fold / sizes_.rods);
        for (int i = sizes_.rods; i >= 1; --i) {
            const double y = bottom + step * i;
            brush_.shade({{left_, y - 0.45 * step}, {right_, y - 0.45 * step}, {right_, y}, {left_, y}}, "fold");
            brush_.line(Role::ink, 0.7, across(y), "rod");
        }
        brush_.line(Role::hairline, stroke_px::hair, across(edges_.top - headrail_ * 0.5), "fold");
        border(bottom);
    }

private:
    [[nodiscard]] std::vector<Spot> across(double y) const { return {{left_, y}, {right_, y}}; }
    [[nodiscard]] std::vector<Spot> around(double bottom) const {
        return {{left_, bottom}, {right_, bottom}, {right_, edges_.top}, {left_, edges_.top}};
    }
    void panel(double bottom) { brush_.fill(around(bottom), part); }
    void border(double bottom) {
        brush_.edge(stroke_px::fine, around(bottom), part);
        board_.polyline(Role::ink, stroke_px::strong, across(bottom), part);
    }

    DrawingBoard& board_;
    ClothBrush brush_;
    HangingEdges edges_;
    double headrail_;
    BlindSizes sizes_;
    double left_ = 0.0, right_ = 0.0;
};

}  // namespace

void draw_blind(DrawingBoard& board, const Hanging& hanging, const HangingEdges& edges, Drawn drawn) {
    BlindDrawer drawer(board, hanging, edges);
    if (drawn == Drawn::shut) {
        drawer.let_down();
    } else {
        drawer.drawn_up();
    }
}

}  // namespace truehang
