// SPDX-License-Identifier: Apache-2.0
#include "sheet/template_svg.h"

#include "sheet/curtain_template.h"
#include "sheet/dimension_lines.h"
#include "sheet/drawing_board.h"
#include "sheet/sheet_head.h"
#include "sheet/svg.h"
#include "sheet/window_outline.h"

#include <algorithm>
#include <iterator>
#include <utility>
#include <vector>

namespace truehang {

namespace {

constexpr double margin = 30.0;
constexpr double foot = 55.0;  ///< room under the base line for words
constexpr double check = 100.0;
constexpr double template_label = 9.0;
constexpr double line_width = 0.5;

/// Draws the top in mm; x from its left foot, y up from the base line, which is level at the lower foot.
class TemplateDrawer {
public:
    TemplateDrawer(Elevation& drawing, const WindowOutline& outline)
        : drawing_(drawing), outline_(outline), lines_(drawing, template_label) {
        for (const auto& [x, y] : outline.peak) {
            left_ = std::min(left_, x);
            right_ = std::max(right_, x);
            low_ = std::min(low_, y);
            high_ = std::max(high_, y);
        }
        drawing.width = right_ - left_ + 2.0 * margin;
        drawing.height = high_ - low_ + margin + foot;
    }

    [[nodiscard]] double width() const { return right_ - left_; }
    [[nodiscard]] double rise() const { return high_ - low_; }

    void draw(const SheetStyle& style) {
        Stroke top{.form = Form::polyline, .width = line_width * 2.0, .part = "top"};
        for (const auto& [x, y] : outline_.peak) {
            top.points.push_back(at(x, y));
        }
        drawing_.strokes.push_back(std::move(top));
        line(left_, low_, right_, low_, Role::ink, "base");
        const double middle = outline_.apex_x.value_or((left_ + right_) / 2.0);
        line(middle, low_, middle, high_, Role::hairline, "middle");
        for (const OrdinateOutline& ordinate : outline_.ordinates) {
            line(ordinate.x, low_, ordinate.x, ordinate.high, Role::guide, "ordinate");
        }
        const Point corner = at(left_, low_);
        lines_.across(corner.x, at(right_, low_).x, corner.y + 12.0, corner.y, written(Length::mm(width()), style));
        const double beside = at(middle, 0.0).x;
        lines_.up(at(0.0, high_).y, corner.y, beside + 14.0, beside, written(Length::mm(rise()), style));
    }

    /// A square to lay a tape on, and what the drawing is of.
    void words(const std::string& title, const std::string& corner, const SheetStyle& style) {
        const double y = drawing_.height - foot + 30.0;
        const double right = std::min(drawing_.width - 6.0, margin + check);
        drawing_.strokes.push_back({.points = {{right - check, y}, {right, y}}, .width = line_width, .part = "check"});
        for (const double x : {right - check, right}) {
            drawing_.strokes.push_back({.points = {{x, y - 3.0}, {x, y + 3.0}}, .width = line_width, .part = "check"});
        }
        lines_.words_from(right - check, y + 9.0,
                          "This line is " + written(Length::mm(check), style) +
                              (style.unit == LengthUnit::in ? " in" : " mm") + " long");
        lines_.words_from(right - check, y + 20.0, title + ". " + corner + ". The opening’s own edge, no turning.");
    }

private:
    [[nodiscard]] Point at(double x, double y) const { return {x - left_ + margin, high_ - y + margin}; }
    void line(double x0, double y0, double x1, double y1, Role role, const std::string& part) {
        drawing_.strokes.push_back(
            {.role = role, .points = {at(x0, y0), at(x1, y1)}, .width = line_width, .part = part});
    }

    Elevation& drawing_;
    const WindowOutline& outline_;
    DimensionLines lines_;
    double left_ = 1e9, right_ = -1e9, low_ = 1e9, high_ = -1e9;
};

/// The shaped curtains of all layers.
std::vector<Elevation> all_curtains(const Survey& survey, const Window& window, const WindowFigures& figures,
                                    const SheetStyle& style) {
    std::vector<Elevation> all;
    for (std::size_t i = 0; i < std::min(window.layers.size(), figures.layers.size()); ++i) {
        std::ranges::move(curtain_templates(survey, window.layers[i], figures.layers[i], style),
                          std::back_inserter(all));
    }
    return all;
}

Error not_there(const std::string& where, std::string text) { return {ErrorCode::missing, where, std::move(text)}; }

}  // namespace

Result<std::string> template_svg(const Survey& survey, const Figures& figures, std::size_t window_index,
                                 const SheetStyle& style) {
    const SheetPlace place = sheet_place(survey, window_index);
    if (place.window == nullptr || window_index >= figures.windows.size()) {
        return not_there("window", "The survey has no such window.");
    }
    const WindowOutline outline = outline_of(*place.window, figures.windows[window_index]);
    if (!outline.is_peaked()) {
        return not_there(place.window->id, "Its top is straight: only an arch or a gable has a template.");
    }
    if (!outline.width_known || !outline.peak_known || outline.peak.size() < 3) {
        return not_there(place.window->id, "Its width or its rise wasn’t measured: a template would be a guess.");
    }
    Elevation drawing;
    drawing.title = window_title(*place.room, *place.window) + ", its top at 1 : 1";
    drawing.description = "The opening’s own edge, without any turning.";
    TemplateDrawer drawer(drawing, outline);
    drawer.draw(style);
    drawer.words(window_title(*place.room, *place.window), corner_of(survey), style);
    for (const Elevation& curtain : all_curtains(survey, *place.window, figures.windows[window_index], style)) {
        drawing = stacked(std::move(drawing), curtain);
    }
    SvgOptions options;
    options.palette = {.paper = "#ffffff", .ink = "#000000", .soft = "#000000", .thread = "#000000", .wash = "#ffffff"};
    options.unit = "mm";
    options.id = "template";
    return svg_of(drawing, options);
}

}  // namespace truehang
