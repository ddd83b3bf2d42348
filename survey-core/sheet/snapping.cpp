// SPDX-License-Identifier: Apache-2.0
#include "sheet/snapping.h"

#include "sheet/words.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

constexpr double inch = 25.4;
constexpr double farthest_mm = 99'000.0;

bool in_inches(LengthUnit unit) { return unit == LengthUnit::in; }

double to_step(double mm, double step) { return std::round(mm / step) * step; }

void add(std::vector<SnapLine>& lines, bool known, double at, const char* what, bool middle = false) {
    if (known) {
        lines.push_back({at, what, middle});
    }
}

void add_opening(SnapLines& lines, const WindowOutline& outline, double x) {
    const double left = outline.left_x[1];
    const double right = outline.right_x[1];
    lines.across.push_back({0.0, "the opening’s left edge"});
    add(lines.across, outline.width_known, right, "the opening’s right edge");
    add(lines.across, outline.width_known, (left + right) / 2.0, "the middle of the opening", true);
    add(lines.across, outline.stop_left.has_value(), outline.stop_left.value_or(0.0), "what stops a curtain, left");
    add(lines.across, outline.stop_right.has_value(), outline.stop_right.value_or(0.0), "what stops a curtain, right");
    const double floor = outline.at(outline.floor, x);
    lines.up.push_back({0.0, "the floor"});
    add(lines.up, outline.sill.known && !outline.door, outline.at(outline.sill, x) - floor, "the sill");
    add(lines.up, outline.head.known && !outline.is_peaked(), outline.at(outline.head, x) - floor,
        "the head of the opening");
    add(lines.up, outline.ceiling.known, outline.at(outline.ceiling, x) - floor, "the ceiling");
}

void add_others(SnapLines& lines, const Window& window, std::string_view moved) {
    for (const Obstruction& other : window.obstructions) {
        if (other.id == moved) {
            continue;
        }
        const std::string what = "the " + obstruction_text(other);
        if (other.left && other.width) {
            const double left = other.left->mm();
            const double width = other.width->mm();
            lines.across.push_back({left, what});
            lines.across.push_back({left + width, what});
            lines.across.push_back({left + width / 2.0, "the middle of " + what, true});
        }
        if (other.bottom && other.height) {
            lines.up.push_back({other.bottom->mm(), what});
            lines.up.push_back({other.bottom->mm() + other.height->mm(), what});
        }
    }
}

/// The nearest line to one of the thing's edges or its middle, and how far the thing has to go.
struct Nearest {
    const SnapLine* line = nullptr;
    double by = 0.0;
};

Nearest nearest(double low, double size, const std::vector<SnapLine>& lines, double reach) {
    Nearest best;
    const auto consider = [&](const SnapLine& line, double at) {
        const double by = line.at - at;
        if (std::abs(by) <= reach && (best.line == nullptr || std::abs(by) < std::abs(best.by))) {
            best = {&line, by};
        }
    };
    for (const SnapLine& line : lines) {
        if (line.middle) {
            consider(line, low + size / 2.0);
        } else {
            consider(line, low);
            consider(line, low + size);
        }
    }
    return best;
}

/// Where a thing that starts at `low` and is `size` long comes to start.
double brought(double low, double size, const std::vector<SnapLine>& lines, double reach, LengthUnit unit,
               std::optional<SnapLine>& on) {
    const Nearest best = nearest(low, size, lines, reach);
    if (best.line == nullptr) {
        return to_step(low, drag_step(unit));
    }
    on = *best.line;
    return to_step(low + best.by, in_inches(unit) ? inch / 16.0 : 1.0);
}

}  // namespace

SnapLines snap_lines(const Window& window, const WindowOutline& outline, const ObstructionBox& box,
                     std::string_view moved) {
    SnapLines lines;
    add_opening(lines, outline, box.left + box.width / 2.0);
    add_others(lines, window, moved);
    return lines;
}

double drag_step(LengthUnit unit) { return in_inches(unit) ? inch / 4.0 : 5.0; }

Placed snapped(const ObstructionBox& box, const SnapLines& lines, double reach_mm, LengthUnit unit) {
    Placed placed;
    const double left = std::clamp(box.left, -farthest_mm, farthest_mm);
    const double bottom = std::clamp(box.bottom, 0.0, farthest_mm);
    placed.left = brought(left, box.width, lines.across, reach_mm, unit, placed.across);
    placed.bottom = std::max(0.0, brought(bottom, box.height, lines.up, reach_mm, unit, placed.up));
    return placed;
}

}  // namespace truehang
