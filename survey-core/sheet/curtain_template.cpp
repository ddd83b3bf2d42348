// SPDX-License-Identifier: Apache-2.0
#include "sheet/curtain_template.h"

#include "sheet/dimension_lines.h"
#include "sheet/elevation.h"
#include "sheet/flat_piece.h"
#include "sizing/shaped_top.h"
#include "units/saying.h"

#include <algorithm>
#include <string>

namespace truehang {

namespace {

constexpr double margin = 30.0;
constexpr double line_width = 0.5;
constexpr double label_size = 9.0;
constexpr double line_step = 13.0;  ///< from one line of words to the next
constexpr double check = 100.0;

/// Cloth outside the finished edge.
struct Turnings {
    double side = 0.0, head = 0.0;
};

/// Draws one edge; x from the curtain’s finished left side, y over its finished hem.
class EdgeDrawer {
public:
    EdgeDrawer(Elevation& drawing, const std::vector<PlanPoint>& edge, Turnings turnings,
               const std::vector<std::string>& words)
        : drawing_(drawing), edge_(edge), turnings_(turnings), lines_(drawing, label_size) {
        for (const PlanPoint& point : edge) {
            right_ = std::max(right_, point.x.mm());
            low_ = std::min(low_, point.y.mm());
            high_ = std::max(high_, point.y.mm());
        }
        drawing.width = right_ + 2.0 * (margin + turnings.side);
        for (const std::string& line : words) {
            drawing.width = std::max(drawing.width, plain_text_width(line, label_size, false) + 2.0 * margin);
        }
        drawing.height =
            high_ - low_ + turnings.head + 2.0 * margin + line_step * (static_cast<double>(words.size()) + 3.0);
    }

    [[nodiscard]] double low() const { return low_; }

    void draw(const SheetStyle& style) {
        Stroke finished{.form = Form::polyline, .width = line_width * 2.0, .part = "finished"};
        for (const PlanPoint& point : edge_) {
            finished.points.push_back(at(point.x.mm(), point.y.mm()));
        }
        drawing_.strokes.push_back(std::move(finished));
        line({at(0.0, low_), at(0.0, edge_.front().y.mm())}, Role::ink, "side");
        line({at(right_, low_), at(right_, edge_.back().y.mm())}, Role::ink, "side");
        line({at(-turnings_.side, low_), at(right_ + turnings_.side, low_)}, Role::hairline, "base");
        if (turnings_.side > 0.0 || turnings_.head > 0.0) {
            cut();
        }
        const Point corner = at(0.0, low_);
        lines_.across(corner.x, at(right_, low_).x, corner.y + 12.0, corner.y, written(Length::mm(right_), style));
        lines_.up(at(0.0, high_).y, corner.y, margin / 2.0, corner.x, written(Length::mm(high_ - low_), style));
    }

    void words(const std::vector<std::string>& all, const SheetStyle& style) {
        double y = at(0.0, low_).y + 12.0 + line_step;
        for (const std::string& one : all) {
            lines_.words_from(margin, y, one);
            y += line_step;
        }
        y += 4.0;
        line({{margin, y}, {margin + check, y}}, Role::ink, "check");
        for (const double x : {margin, margin + check}) {
            line({{x, y - 3.0}, {x, y + 3.0}}, Role::ink, "check");
        }
        lines_.words_from(margin, y + 9.0,
                          say("This line is {} {} long", written(Length::mm(check), style), word_of(style.unit)));
    }

private:
    [[nodiscard]] Point at(double x, double y) const {
        return {x + margin + turnings_.side, high_ - y + margin + turnings_.head};
    }
    void line(std::vector<Point> points, Role role, const std::string& part) {
        drawing_.strokes.push_back({.role = role, .points = std::move(points), .width = line_width, .part = part});
    }
    /// Straight up the cloth by the head, out by the turning at each side.
    void cut() {
        const double left = -turnings_.side;
        const double right = right_ + turnings_.side;
        Stroke cut{.form = Form::polyline, .role = Role::guess, .width = line_width, .part = "cut"};
        cut.points.push_back(at(left, low_));
        cut.points.push_back(at(left, edge_.front().y.mm() + turnings_.head));
        for (const PlanPoint& point : edge_) {
            cut.points.push_back(at(point.x.mm(), point.y.mm() + turnings_.head));
        }
        cut.points.push_back(at(right, edge_.back().y.mm() + turnings_.head));
        cut.points.push_back(at(right, low_));
        drawing_.strokes.push_back(std::move(cut));
    }

    Elevation& drawing_;
    const std::vector<PlanPoint>& edge_;
    Turnings turnings_;
    DimensionLines lines_;
    double right_ = 0.0, low_ = 1e9, high_ = -1e9;
};

Elevation edge_drawing(const std::vector<PlanPoint>& edge, Turnings turnings, const std::string& title,
                       const std::vector<std::string>& which, const SheetStyle& style) {
    Elevation drawing;
    drawing.title = title;
    drawing.description = which.front();
    Length shortest = edge.front().y;
    for (const PlanPoint& point : edge) {
        shortest = std::min(shortest, point.y);
    }
    std::vector<std::string> words{title};
    words.insert(words.end(), which.begin(), which.end());
    words.push_back(say("The level line stands {} above the finished hem.", written(shortest, style)));
    EdgeDrawer drawer(drawing, edge, turnings, words);
    drawer.draw(style);
    drawer.words(words, style);
    return drawing;
}

std::string curtain_name(const LayerFigures& figures, const CurtainTop& top) {
    const std::string layer = figures.id.empty() ? std::string() : figures.id + ", ";
    return layer + (top.side == "single" ? say("the curtain")
                    : top.side == "left" ? say("the left curtain")
                                         : say("the right curtain"));
}

}  // namespace

std::vector<Elevation> curtain_templates(const Survey& survey, const Layer& layer, const LayerFigures& figures,
                                         const SheetStyle& style) {
    std::vector<Elevation> drawings;
    const auto setting = make_setting(survey, layer, figures);
    for (const CurtainTop& top : figures.tops) {
        if (!setting || top.outline.size() < 2) {
            continue;
        }
        const std::string name = curtain_name(figures, top);
        drawings.push_back(edge_drawing(hung_outline(top.outline), {}, say("Hanging: {}", name),
                                        {say("This is its finished top edge as it hangs. Nothing is cut by it.")},
                                        style));
        const Turnings turnings{setting->turned.side.mm(), setting->turned.head.mm()};
        drawings.push_back(
            edge_drawing(flat_outline(top.outline), turnings, say("Flat on the table: {}", name),
                         {say("The solid line is the finished edge, the dashed line is where it is cut:"),
                          say("{} more at the head, straight up the cloth, and {} more at each side.",
                              written(setting->turned.head, style), written(setting->turned.side, style))},
                         style));
    }
    return drawings;
}

}  // namespace truehang
