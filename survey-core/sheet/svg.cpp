// SPDX-License-Identifier: Apache-2.0
#include "sheet/svg.h"

#include "sheet/cloth_colour.h"

#include <fmt/format.h>

namespace truehang {

namespace {

const std::string& colour_of(Role role, const Palette& palette) {
    switch (role) {
        case Role::ink:
            return palette.ink;
        case Role::thread:
            return palette.thread;
        case Role::wash:
            return palette.wash;
        case Role::paper:
            return palette.paper;
        default:
            return palette.soft;
    }
}

/// Coordinates to a hundredth, which is finer than paper or screen.
std::string number(double value) {
    std::string text = fmt::format("{:.2f}", value);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) {
        text.pop_back();
    }
    return text == "-0" ? "0" : text;
}

std::string dashes(const Stroke& stroke) {
    const double w = stroke.width;
    if (stroke.role == Role::guess) {
        return fmt::format(" stroke-dasharray=\"{} {}\"", number(w * 5.0), number(w * 4.0));
    }
    if (stroke.role == Role::guide) {
        return fmt::format(" stroke-dasharray=\"{} {}\"", number(w * 2.0), number(w * 3.0));
    }
    return {};
}

std::string paint_of(const Stroke& stroke, const Palette& palette) {
    const std::string colour = stroke.over.empty() ? colour_of(stroke.role, palette)
                                                   : line_over(stroke.over, stroke.role, palette.ink, palette.paper);
    const bool filled = stroke.filled || stroke.role == Role::wash || stroke.role == Role::paper;
    const std::string& ground = stroke.fill.empty() ? colour : stroke.fill;
    std::string paint = fmt::format(R"( fill="{}")", filled ? escaped(ground) : "none");
    if (stroke.width > 0.0) {
        paint += fmt::format(R"( stroke="{}" stroke-width="{}")", escaped(colour), number(stroke.width));
        paint += dashes(stroke);
    }
    return paint;
}

std::string points_of(const Stroke& stroke) {
    std::string text;
    for (const Point& point : stroke.points) {
        text += (text.empty() ? "" : " ") + number(point.x) + "," + number(point.y);
    }
    return text;
}

std::string stroke_svg(const Stroke& stroke, const Palette& palette) {
    const std::string paint = paint_of(stroke, palette);
    switch (stroke.form) {
        case Form::circle:
            return fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{}/>\n", number(stroke.points[0].x),
                               number(stroke.points[0].y), number(stroke.radius), paint);
        case Form::line:
            return fmt::format("<line x1=\"{}\" y1=\"{}\" x2=\"{}\" y2=\"{}\"{}/>\n", number(stroke.points[0].x),
                               number(stroke.points[0].y), number(stroke.points[1].x), number(stroke.points[1].y),
                               paint);
        case Form::polyline:
            return fmt::format("<polyline points=\"{}\"{}/>\n", points_of(stroke), paint);
        case Form::polygon:
            break;
    }
    return fmt::format("<polygon points=\"{}\"{}/>\n", points_of(stroke), paint);
}

std::string label_svg(const Label& label, const SvgOptions& options) {
    const std::string weight = label.bold ? R"( font-weight="bold")" : "";
    const std::string place = fmt::format(R"(x="{}" y="{}" font-size="{}"{})", number(label.at.x), number(label.at.y),
                                          number(label.size), weight);
    const std::string text = escaped(label.text);
    // The halo is the text itself in paper, drawn wide underneath.
    return fmt::format(
        "<text {0} aria-hidden=\"true\" fill=\"{1}\" stroke=\"{1}\" stroke-width=\"{2}\" stroke-linejoin=\"round\">"
        "{3}</text>\n<text {0} fill=\"{4}\">{3}</text>\n",
        place, escaped(options.palette.paper), number(label.size * 0.3), text,
        escaped(colour_of(label.role, options.palette)));
}

}  // namespace

Palette light_palette() { return {}; }

Palette dark_palette() {
    return {.paper = "#12181c", .ink = "#eef1ec", .soft = "#a9b5bb", .thread = "#ef8a99", .wash = "#1b2328"};
}

std::string escaped(std::string_view text) {
    std::string safe;
    safe.reserve(text.size());
    for (const char c : text) {
        switch (c) {
            case '&':
                safe += "&amp;";
                break;
            case '<':
                safe += "&lt;";
                break;
            case '>':
                safe += "&gt;";
                break;
            case '"':
                safe += "&quot;";
                break;
            case '\'':
                safe += "&#39;";
                break;
            default:
                if (static_cast<unsigned char>(c) >= 0x20 || c == '\t' || c == '\n' || c == '\r') {
                    safe += c;
                }
        }
    }
    return safe;
}

std::string svg_of(const Elevation& elevation, const SvgOptions& options) {
    const std::string id = escaped(options.id);
    std::string svg = fmt::format(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" role=\"img\" aria-labelledby=\"{0}-title {0}-desc\" "
        "width=\"{1}{3}\" height=\"{2}{3}\" viewBox=\"0 0 {1} {2}\" font-family=\"{4}\">\n"
        "<title id=\"{0}-title\">{5}</title>\n<desc id=\"{0}-desc\">{6}</desc>\n",
        id, number(elevation.width), number(elevation.height), escaped(options.unit), escaped(options.font_family),
        escaped(elevation.title), escaped(elevation.description));
    for (const Stroke& stroke : elevation.strokes) {
        svg += stroke_svg(stroke, options.palette);
    }
    for (const Label& label : elevation.labels) {
        svg += label_svg(label, options);
    }
    return svg + "</svg>\n";
}

}  // namespace truehang
