// SPDX-License-Identifier: Apache-2.0
#include "sheet/elevation.h"
#include "sheet/hanging_drawing.h"
#include "sheet/hardware_drawing.h"
#include "sheet/label_placing.h"
#include "sheet/obstruction_drawing.h"
#include "sheet/window_outline.h"
#include "sheet/words.h"
#include "survey/house_rules.h"
#include "units/saying.h"

#include <algorithm>

namespace truehang {

namespace {

constexpr double usual_depth = 120.0;  ///< of a recess nobody has measured; common practice, no source
constexpr double usual_projection = 90.0;
constexpr double wall_mm = 60.0;  ///< how much of the wall's thickness is hinted

/// One thing that stands out from the wall face, or back from it.
struct Standing {
    std::string text;
    std::string station;
    double out = 0.0;  ///< mm from the wall face, into the room
    double y = 0.0;    ///< where its tape lies
    int importance = 0;
};

/// How deep the hem at the lower edge is made.
double hem_of(const Layer& layer, const HouseRules& rules) {
    const auto& heading = layer.treatment ? layer.treatment->heading : std::nullopt;
    return heading && heading->is(Heading::roman) ? rules.blind_hem : rules.hem;
}

class SideDrawer {
public:
    SideDrawer(const Survey& survey, const Window& window, const WindowFigures& figures,
               const ElevationOptions& options)
        : survey_(survey),
          window_(window),
          figures_(figures),
          options_(options),
          outline_(outline_of(window, figures)) {
        // Of an arch or a gable the cut runs through its crown, where it is highest.
        const Line line = outline_.is_peaked() ? Line::centre : outline_.pole_line;
        const auto i = static_cast<std::size_t>(line);
        floor_ = outline_.floor.y[i];
        sill_ = outline_.sill.y[i];
        head_ = outline_.head.y[i];
        ceiling_ = std::max(outline_.ceiling.y[i], head_ + 1.0);
        pole_ = outline_.pole.y[i];
        recess_ = station_mm("opening.depth");
        sill_out_ = station_mm("sill.projection");
    }

    void draw(Elevation& elevation) {
        collect();
        double out = sill_out_.value_or(0.0);
        for (const Standing& thing : standing_) {
            out = std::max(out, thing.out);
        }
        for (const Obstruction& obstruction : window_.obstructions) {
            out = std::max(out, obstruction.depth ? obstruction.depth->mm() : usual_stand_out(obstruction));
        }
        const double px = options_.pixel;
        const double tall = std::max(1.0, ceiling_ - floor_);
        const double deep = recess() + wall_mm + out + 150.0;
        const double scale =
            std::max(1e-6, std::min((options_.height - 26.0 * px) / tall, (options_.width - 16.0 * px) / deep));
        const double x = std::max(options_.width * 0.36, (recess() + wall_mm) * scale + 8.0 * px);
        elevation.scale = scale;
        elevation.origin = {std::min(x, options_.width - (out + 20.0) * scale - 8.0 * px),
                            (options_.height + tall * scale - 6.0 * px) / 2.0 + floor_ * scale};
        DrawingBoard board(elevation, elevation.origin, scale, px);
        draw_wall(board);
        for (const Obstruction& obstruction : window_.obstructions) {
            draw_obstruction_side(board, obstruction, floor_);
        }
        draw_hangings(board);
        draw_tapes(board, elevation, out);
    }

private:
    [[nodiscard]] std::optional<double> station_mm(std::string_view word) const {
        if (const auto size = size_mm(figures_, word)) {
            return size;
        }
        const auto shape = window_.shape.known();
        if (!shape || !outline_.worked) {
            return std::nullopt;
        }
        const auto readings = counted_readings(window_, *shape);
        const auto* reading = find_counted(readings, word);
        return reading == nullptr ? std::nullopt : std::optional(reading->value.mm());
    }
    [[nodiscard]] double recess() const {
        return outline_.frame ? recess_.value_or(0.0) : recess_.value_or(usual_depth);
    }
    [[nodiscard]] double projection_of(const Layer& layer) const {
        return layer.hardware->projection ? layer.hardware->projection->mm() : usual_projection;
    }
    [[nodiscard]] std::string said(double mm) const { return write_length(Length::mm(mm), options_.length_style); }

    void collect() {
        if (recess_) {
            standing_.push_back(
                {say("recess {}", said(*recess_)), "opening.depth", -*recess_, (sill_ + head_) / 2.0, 3});
        }
        if (sill_out_) {
            standing_.push_back({say("sill board {}", said(*sill_out_)), "sill.projection", *sill_out_, sill_, 4});
        }
        for (const Layer& layer : window_.layers) {
            if (layer.hardware && layer.hardware->projection && !hangs_inside_opening(layer)) {
                const auto& kind = layer.hardware->kind;
                standing_.push_back(
                    {worded(kind ? kind->text() : std::string("pole")) + " " + said(projection_of(layer)), "",
                     projection_of(layer), pole_, 5});
            }
        }
        for (const Obstruction& obstruction : window_.obstructions) {
            if (obstruction.depth) {
                const ObstructionBox box = box_of(obstruction);
                standing_.push_back({obstruction_text(obstruction) + " " + said(obstruction.depth->mm()), "",
                                     obstruction.depth->mm(), floor_ + box.bottom + box.height / 2.0, 2});
            }
        }
    }

    void draw_wall(DrawingBoard& board) const {
        const double back = -recess() - wall_mm;
        const double left = back - 20.0;
        const double right = (options_.width - board.px(4.0) - board.at({0.0, 0.0}).x) / board.scale();
        const Role edge = outline_.height_known ? Role::ink : Role::guess;
        const Role deep = recess_ || outline_.frame ? Role::ink : Role::guess;
        board.line(outline_.ceiling.known ? Role::ink : Role::guess, stroke_px::ink, {left, ceiling_},
                   {right, ceiling_}, "ceiling");
        board.line(Role::ink, stroke_px::strong, {left, floor_}, {right, floor_}, "floor");
        const double step = board.mm_of_px(13.0);
        const double reach = board.mm_of_px(6.0);
        for (double x = left + step / 2.0; x < right; x += step) {
            const double y = floor_ - board.mm_of_px(1.5);
            board.line(Role::hairline, stroke_px::hair, {x, y}, {x - reach, y - reach}, "floor");
        }
        if (!outline_.door) {
            board.line(edge, stroke_px::ink, {0.0, floor_}, {0.0, sill_}, "wall");
        }
        board.line(edge, stroke_px::ink, {0.0, head_}, {0.0, ceiling_}, "wall");
        board.line(deep, stroke_px::ink, {-recess(), head_}, {0.0, head_}, "opening");
        const double glass = std::min(wall_mm, 40.0);
        board.rectangle(Role::wash, 0.0, {-recess() - glass, sill_}, {-recess(), head_}, "opening");
        board.rectangle(Role::hairline, stroke_px::hair, {-recess() - glass, sill_}, {-recess(), head_}, "glazing");
        if (!outline_.door) {
            board.line(sill_out_ ? Role::ink : Role::hairline, sill_out_ ? stroke_px::heavy : stroke_px::ink,
                       {-recess(), sill_}, {sill_out_.value_or(0.0), sill_}, "sill");
        }
    }

    void draw_hangings(DrawingBoard& board) const {
        const HouseRules rules = house_rules(survey_.rules);
        for (std::size_t i = 0; i < window_.layers.size(); ++i) {
            const Layer& layer = window_.layers[i];
            const LayerFigures* figures = i < figures_.layers.size() ? &figures_.layers[i] : nullptr;
            const bool inside = hangs_inside_opening(layer);
            const double x = inside || !layer.hardware ? -recess() / 2.0 : projection_of(layer);
            if (const auto edges = hanging_edges({outline_, rules, layer, figures})) {
                const double half = std::max(18.0, board.mm_of_px(2.0));
                for (const double side : {-half, half}) {
                    board.line(Role::hairline, stroke_px::hair, {x + side, edges->bottom}, {x + side, edges->top},
                               "curtain");
                }
                const double hem = std::min(hem_of(layer, rules), edges->top - edges->bottom);
                board.line(Role::hairline, stroke_px::hair, {x - half, edges->bottom + hem},
                           {x + half, edges->bottom + hem}, "curtain");
                board.line(Role::ink, stroke_px::strong, {x - half, edges->bottom}, {x + half, edges->bottom},
                           "curtain");
            }
            if (layer.hardware && !inside) {
                const Role role = outline_.pole.known && layer.hardware->projection ? Role::ink : Role::guess;
                board.line(role, stroke_px::fine, {0.0, pole_}, {x, pole_}, "hardware");
                const double radius = std::max(pole_diameter(layer) / 2.0, board.mm_of_px(2.5));
                board.circle(Role::paper, 0.0, {x, pole_}, radius, "hardware", true);
                board.circle(role, stroke_px::ink, {x, pole_}, radius, "hardware");
            }
        }
    }

    void draw_tapes(const DrawingBoard& board, Elevation& elevation, double out) const {
        std::vector<WantedLabel> wanted;
        for (const Standing& thing : standing_) {
            const Point wall = board.at({0.0, thing.y});
            const Point end = board.at({thing.out, thing.y});
            elevation.strokes.push_back({.form = Form::line,
                                         .role = Role::dimension,
                                         .points = {wall, end},
                                         .width = board.px(stroke_px::hair),
                                         .part = "tape",
                                         .station = thing.station});
            const bool back = thing.out < 0.0;
            const Point beside = back ? board.at({thing.out - wall_mm, thing.y})
                                      : Point{board.at({out, thing.y}).x + board.px(8.0), end.y};
            wanted.push_back({.text = thing.text,
                              .station = thing.station,
                              .from = beside,
                              .to = beside,
                              .size = board.px(options_.label_size),
                              .importance = thing.importance,
                              .outward = back ? -1.0 : 1.0});
            if (!thing.station.empty()) {
                elevation.runs.push_back({thing.station, thing.text, {wall, end}, {wall, end}, true});
            }
        }
        place_labels(elevation, std::move(wanted), options_.text_width, options_.pixel);
    }

    const Survey& survey_;
    const Window& window_;
    const WindowFigures& figures_;
    const ElevationOptions& options_;
    WindowOutline outline_;
    double floor_ = 0.0, sill_ = 0.0, head_ = 0.0, ceiling_ = 0.0, pole_ = 0.0;
    std::optional<double> recess_, sill_out_;
    std::vector<Standing> standing_;
};

}  // namespace

Elevation side_view_of(const Survey& survey, const Room& room, const Window& window, const WindowFigures& figures,
                       const ElevationOptions& options) {
    Elevation elevation;
    elevation.width = options.width;
    elevation.height = options.height;
    SideDrawer(survey, window, figures, options).draw(elevation);
    elevation.title = say("{}, from the side", window_title(room, window));
    elevation.description = say("A cut through the wall, the room to the right.");
    for (const TapeRun& run : elevation.runs) {
        elevation.description += " " + run.says + ".";
    }
    return elevation;
}

}  // namespace truehang
