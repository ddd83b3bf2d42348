// SPDX-License-Identifier: Apache-2.0
#include "sheet/dimension_lines.h"

#include <algorithm>
#include <string_view>

namespace truehang {

namespace {

constexpr double hair_width = 0.2;
constexpr double tick = 1.1;
constexpr double beyond = 1.2;   ///< how far a guide passes the dimension line
constexpr double widest = 11.0;  ///< a text wider than this stands beside an upright line

/// How wide Lato sets a text, near enough to set it in the middle.
double width_of(std::string_view text, double size) {
    double width = 0.0;
    for (const char c : text) {
        const bool narrow = std::string_view("ijlftr ,.'/:").find(c) != std::string_view::npos;
        const bool wide = std::string_view("mwMW").find(c) != std::string_view::npos;
        const bool later_byte = (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
        width += later_byte ? 0.0 : narrow ? 0.3 : wide ? 0.85 : 0.57;
    }
    return width * size;
}

}  // namespace

void DimensionLines::hair(Role role, Point from, Point to) {
    drawing_.strokes.push_back({.role = role, .points = {from, to}, .width = hair_width, .part = "dimension"});
}

void DimensionLines::put(double left, double y, const std::string& text, bool bold) {
    const double wide = width_of(text, size_);
    const double at = std::clamp(left, 0.0, std::max(0.0, drawing_.width - wide));
    const double base = y + size_ * 0.36;
    drawing_.labels.push_back({.text = text,
                               .at = {at, base},
                               .size = size_,
                               .bold = bold,
                               .left = at,
                               .top = base - size_,
                               .right = at + wide,
                               .bottom = base + size_ * 0.25});
}

void DimensionLines::words(double x, double y, const std::string& text, bool bold) {
    put(x - width_of(text, size_) / 2.0, y, text, bold);
}

void DimensionLines::words_from(double x, double y, const std::string& text) { put(x, y, text, false); }

void DimensionLines::across(double left, double right, double y, double edge_y, const std::string& text) {
    const double past = y > edge_y ? beyond : -beyond;
    for (const double x : {left, right}) {
        hair(Role::guide, {x, edge_y}, {x, y + past});
        hair(Role::ink, {x - tick / 2.0, y + tick / 2.0}, {x + tick / 2.0, y - tick / 2.0});
    }
    hair(Role::dimension, {left, y}, {right, y});
    const bool fits = width_of(text, size_) + 1.0 < right - left;
    if (fits) {
        words((left + right) / 2.0, y, text);
    } else {
        words((left + right) / 2.0, y + (past > 0 ? size_ : -size_), text);
    }
}

void DimensionLines::up(double top, double bottom, double x, double edge_x, const std::string& text) {
    const double past = x > edge_x ? beyond : -beyond;
    for (const double y : {top, bottom}) {
        hair(Role::guide, {edge_x, y}, {x + past, y});
        hair(Role::ink, {x - tick / 2.0, y + tick / 2.0}, {x + tick / 2.0, y - tick / 2.0});
    }
    hair(Role::dimension, {x, top}, {x, bottom});
    if (bottom - top > size_ * 1.5 && width_of(text, size_) < widest) {
        words(x, (top + bottom) / 2.0, text);
    } else if (past > 0) {
        words_from(x + 1.4, (top + bottom) / 2.0, text);
    } else {
        put(x - 1.4 - width_of(text, size_), (top + bottom) / 2.0, text, false);
    }
}

}  // namespace truehang
