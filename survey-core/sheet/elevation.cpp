// SPDX-License-Identifier: Apache-2.0
#include "sheet/elevation.h"

#include "sheet/hanging_drawing.h"
#include "sheet/hardware_drawing.h"
#include "sheet/label_placing.h"
#include "sheet/obstruction_drawing.h"
#include "sheet/opening_drawing.h"
#include "sheet/plan_drawing.h"
#include "sheet/tape_runs.h"
#include "sheet/window_outline.h"
#include "sheet/words.h"
#include "survey/house_rules.h"
#include "units/saying.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {

namespace {

constexpr double side_pad_px = 8.0;
constexpr double top_pad_px = 8.0;
constexpr double floor_pad_px = 14.0;  ///< the hatch under the floor
constexpr double bare_wall_mm = 150.0;
constexpr double farthest_mm = 4000.0;  ///< what lies further from the opening isn't drawn to scale with it

/// What must fit on the drawing, in mm.
struct Extent {
    double left, right, low, high;
    void hold(double x, double y, double opening_left, double opening_right) {
        left = std::min(left, std::max(x, opening_left - farthest_mm));
        right = std::max(right, std::min(x, opening_right + farthest_mm));
        low = std::min(low, y);
        high = std::max(high, y);
    }
};

/// What a shape has over its upright part: facets of their own heights, an arch, a gable.
void hold_shape(Extent& extent, const WindowOutline& outline, double left, double right) {
    const auto hold = [&](double x, double y) { extent.hold(x, y, left, right); };
    for (const FacetOutline& facet : outline.facets) {
        hold(facet.left, outline.at(outline.sill, facet.left) + facet.height);
        hold(facet.right, outline.at(outline.sill, facet.right) + facet.height);
    }
    for (const auto& [x, y] : outline.peak) {
        hold(x, y);
    }
    for (const OrdinateOutline& ordinate : outline.ordinates) {
        hold(ordinate.x, ordinate.high);
    }
}

/// The floor's height under the middle of an obstruction.
double floor_under(const WindowOutline& outline, const Obstruction& obstruction) {
    const ObstructionBox box = box_of(obstruction);
    return outline.at(outline.floor, box.left + box.width / 2.0);
}

Extent extent_of(const Window& window, const WindowOutline& outline) {
    const double left = std::min({outline.left_x[0], outline.left_x[1], outline.left_x[2]});
    const double right = std::max({outline.right_x[0], outline.right_x[1], outline.right_x[2]});
    Extent extent{left - bare_wall_mm, right + bare_wall_mm, outline.floor.y[1], outline.head.y[1]};
    const auto hold = [&](double x, double y) { extent.hold(x, y, left, right); };
    if (outline.stop_left) {
        hold(*outline.stop_left, outline.floor.y[0]);
    }
    if (outline.stop_right) {
        hold(*outline.stop_right, outline.floor.y[2]);
    }
    for (const Layer& layer : window.layers) {
        if (layer.hardware) {
            const HardwareRun run = hardware_run(outline, layer);
            const double finials = std::max(run.finial, 20.0);
            hold(run.left - finials, hardware_height(outline, layer, run.left) + finials);
            hold(run.right + finials, hardware_height(outline, layer, run.right) + finials);
        }
    }
    for (const Obstruction& obstruction : window.obstructions) {
        const ObstructionBox box = box_of(obstruction);
        const double floor = floor_under(outline, obstruction);
        hold(box.left, floor + box.bottom);
        hold(box.right(), floor + box.top());
    }
    hold_shape(extent, outline, left, right);
    for (const double x : {extent.left, outline.x_of(Line::centre), extent.right}) {
        hold(x, outline.at(outline.floor, x));
        hold(x, outline.at(outline.ceiling, x));
        hold(x, outline.at(outline.head, std::clamp(x, left, right)));
        hold(x, outline.at(outline.pole, std::clamp(x, left, right)));
    }
    return extent;
}

/// Scale and place: the largest scale at which the extent and the columns of tapes beside the opening fit.
struct Fitted {
    double scale;
    Point zero;
};

Fitted fit(const Extent& extent, double opening_right, const Tapes& tapes, const ElevationOptions& options,
           double height) {
    const double px = options.pixel;
    const double side = side_pad_px * px;
    const auto left_room = [&](double s) { return std::max(-extent.left * s + side, tapes.left_margin()); };
    const auto right_room = [&](double s) {
        return std::max((extent.right - opening_right) * s + side, tapes.right_margin());
    };
    const auto needed = [&](double s) { return left_room(s) + opening_right * s + right_room(s); };
    const double tall = std::max(1.0, extent.high - extent.low);
    double scale = std::max(1e-6, (height - (top_pad_px + floor_pad_px) * px) / tall);
    if (needed(scale) > options.width) {
        double low = 0.0;
        double high = scale;
        for (int i = 0; i < 60; ++i) {
            const double middle = (low + high) / 2.0;
            (needed(middle) > options.width ? high : low) = middle;
        }
        scale = std::max(low, 1e-6);
    }
    const double spare_x = options.width - needed(scale);
    const double spare_y = height - (top_pad_px + floor_pad_px) * px - tall * scale;
    return {scale, {spare_x / 2.0 + left_room(scale), height - floor_pad_px * px - spare_y / 2.0 + extent.low * scale}};
}

class ElevationDrawer {
public:
    ElevationDrawer(DrawingBoard& board, const Survey& survey, const Window& window, const WindowFigures& figures,
                    const WindowOutline& outline, const ElevationOptions& options)
        : board_(board),
          survey_(survey),
          window_(window),
          figures_(figures),
          outline_(outline),
          options_(options),
          first_x_(-(board.at({0.0, 0.0}).x - board.px(4.0)) / board.scale()),
          last_x_((options.width - board.px(4.0) - board.at({0.0, 0.0}).x) / board.scale()) {}

    void draw() {
        draw_wall();
        draw_opening(board_, outline_);
        for (const Obstruction& obstruction : window_.obstructions) {
            draw_obstruction(board_, obstruction, floor_under(outline_, obstruction));
        }
        const HouseRules rules = house_rules(survey_.rules);
        for (std::size_t i = 0; i < window_.layers.size(); ++i) {
            draw_hardware(board_, outline_, window_.layers[i]);
            const LayerFigures* layer = i < figures_.layers.size() ? &figures_.layers[i] : nullptr;
            draw_hanging(board_, {outline_, rules, window_.layers[i], layer, cloth_colour(window_.layers[i])},
                         options_.drawn);
        }
    }

private:
    /// The colour of a layer's face cloth; empty where none was said.
    [[nodiscard]] std::string cloth_colour(const Layer& layer) const {
        const auto& id = layer.treatment ? layer.treatment->fabric : std::nullopt;
        const auto fabric = id ? std::ranges::find(survey_.fabrics, *id, &Fabric::id) : survey_.fabrics.end();
        return fabric == survey_.fabrics.end() ? std::string() : fabric->colour;
    }
    /// A mark's line across the room, through the plumb lines where it bends.
    [[nodiscard]] std::vector<Spot> across(const MarkHeights& mark) const {
        const double from = std::max(first_x_, outline_.stop_left.value_or(first_x_));
        const double to = std::min(last_x_, outline_.stop_right.value_or(last_x_));
        std::vector<Spot> spots{{from, outline_.at(mark, from)}};
        const double left = outline_.x_of(Line::left);
        const double centre = outline_.x_of(Line::centre);
        const double right = outline_.x_of(Line::right);
        const double at_centre = mark.y[0] + (mark.y[2] - mark.y[0]) * (centre - left) / (right - left);
        if (std::abs(at_centre - mark.y[1]) > 1e-9 && centre > from && centre < to) {
            spots.push_back({centre, mark.y[1]});
        }
        spots.push_back({to, outline_.at(mark, to)});
        return spots;
    }

    void draw_wall() {
        const bool floor_known = outline_.sill.known || outline_.head.known || outline_.ceiling.known;
        board_.polyline(outline_.ceiling.known ? Role::ink : Role::guess, stroke_px::ink, across(outline_.ceiling),
                        "ceiling");
        const auto floor = across(outline_.floor);
        board_.polyline(floor_known ? Role::ink : Role::guess, stroke_px::strong, floor, "floor");
        const double step = board_.mm_of_px(13.0);
        const double reach = board_.mm_of_px(6.0);
        for (double x = floor.front().first + step * 0.5; x < floor.back().first; x += step) {
            const double y = outline_.at(outline_.floor, x);
            board_.line(Role::hairline, stroke_px::hair, {x, y - board_.mm_of_px(1.5)},
                        {x - reach, y - board_.mm_of_px(1.5) - reach}, "floor");
        }
        for (const auto& stop : {outline_.stop_left, outline_.stop_right}) {
            if (stop && *stop > first_x_ && *stop < last_x_) {
                board_.line(Role::ink, stroke_px::ink, {*stop, outline_.at(outline_.floor, *stop)},
                            {*stop, outline_.at(outline_.ceiling, *stop)}, "wall");
            }
        }
        if (outline_.level.known) {
            board_.polyline(Role::guide, stroke_px::fine, across(outline_.level), "level");
        }
    }

    DrawingBoard& board_;
    const Survey& survey_;
    const Window& window_;
    const WindowFigures& figures_;
    const WindowOutline& outline_;
    const ElevationOptions& options_;
    double first_x_, last_x_;  ///< where floor and ceiling start and end, in mm
};

bool is_guessed(const WindowOutline& outline) {
    const bool folds_known = !outline.plan || (std::ranges::count(outline.plan->width_known, false) == 0 &&
                                               std::ranges::count(outline.plan->angle_known, false) == 0);
    return !(outline.width_known && outline.height_known && outline.sill.known && outline.ceiling.known &&
             folds_known && (outline.peak_known || !outline.is_peaked()));
}

/// What is drawn to scale, by its shape.
std::string drawn_what(const WindowOutline& outline) {
    switch (outline.shape) {
        case Shape::bay:
            return say("The {} facets of the bay, unfolded and drawn to scale, with its plan below",
                       outline.facets.size());
        case Shape::corner:
            return say("The two openings of the corner, unfolded and drawn to scale, with their plan below");
        case Shape::arch:
            return say("The arched opening, drawn to scale");
        case Shape::gable:
            return say("The opening under the gable, drawn to scale");
        default:
            return say("The opening, drawn to scale");
    }
}

/// "The opening, drawn to scale, 1238 to 1242 mm wide, 1130 mm high."; empty where neither is known.
std::string size_sentence(const WindowOutline& outline, const ElevationOptions& options) {
    if (!outline.width_known && !outline.height_known) {
        return {};
    }
    LengthStyle style = options.length_style;
    style.with_unit = true;
    const auto range = [&](const std::array<double, 3>& values) {
        const auto [least, most] = std::ranges::minmax(values);
        const std::string low = write_length(Length::mm(least), options.length_style);
        const std::string high = write_length(Length::mm(most), style);
        return high.starts_with(low + " ") ? high : say("{} to {}", low, high);
    };
    std::array<double, 3> widths{};
    std::array<double, 3> heights{};
    for (std::size_t i = 0; i < 3; ++i) {
        widths[i] = outline.right_x[i] - outline.left_x[i];
        heights[i] = outline.head.y[i] - outline.sill.y[i];
    }
    for (const FacetOutline& facet : outline.facets) {
        heights = {std::min(heights[0], facet.height), heights[1], std::max(heights[2], facet.height)};
    }
    return drawn_what(outline) + (outline.width_known ? ", " + say("{} wide", range(widths)) : "") +
           (outline.height_known ? ", " + say("{} high", range(heights)) : "") + ".";
}

std::string description_of(const Window& window, const WindowOutline& outline, const ElevationOptions& options) {
    std::string text = size_sentence(outline, options);
    if (!window.obstructions.empty()) {
        text += (text.empty() ? "" : " ") + say("In the way:") + " ";
        for (std::size_t i = 0; i < window.obstructions.size(); ++i) {
            text += (i == 0 ? "" : ", ") + obstruction_text(window.obstructions[i]);
        }
        text += ".";
    }
    const bool guessed = is_guessed(outline);
    if (outline.plan && !outline.plan->closes) {
        text += " " + say("Facets, angles and mouth don’t meet: the plan shows the gap.");
    }
    if (!outline.worked) {
        text += text.empty() ? "" : " ";
        text += say("This shape is drawn as an upright opening; its own drawing isn’t known yet.");
    } else if (guessed) {
        text += text.empty() ? "" : " ";
        text += say("What is dashed wasn’t measured: it is drawn in usual proportions.");
    }
    return text;
}

}  // namespace

ElevationOptions elevation_options_for(const Survey& survey) {
    ElevationOptions options;
    if (survey.entry_unit) {
        options.length_style.unit = length_unit(*survey.entry_unit).value_or(LengthUnit::mm);
    }
    return options;
}

Elevation elevation_of(const Survey& survey, const Room& room, const Window& window, const WindowFigures& figures,
                       const ElevationOptions& options) {
    Elevation elevation;
    elevation.width = options.width;
    elevation.height = options.height;
    const WindowOutline outline = outline_of(window, figures, options.active_station);
    const Tapes tapes(window, figures, outline, options);
    const double right = std::max({outline.right_x[0], outline.right_x[1], outline.right_x[2]});
    const PlanSketch sketch(outline, options);
    const Fitted fitted = fit(extent_of(window, outline), right, tapes, options, options.height - sketch.room());
    elevation.scale = fitted.scale;
    elevation.origin = fitted.zero;
    DrawingBoard board(elevation, fitted.zero, fitted.scale, options.pixel);
    ElevationDrawer(board, survey, window, figures, outline, options).draw();
    DrawingBoard plan = sketch.board(elevation);
    sketch.draw(plan);
    place_labels(elevation, tapes.draw(board, outline.plan ? &plan : nullptr, elevation), options.text_width,
                 options.pixel);
    elevation.guessed = is_guessed(outline);
    elevation.title = window_title(room, window);
    elevation.description = description_of(window, outline, options);
    return elevation;
}

}  // namespace truehang
