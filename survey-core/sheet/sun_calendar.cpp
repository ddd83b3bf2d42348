// SPDX-License-Identifier: Apache-2.0
#include "sheet/sun_drawing.h"
#include "sheet/words.h"
#include "units/saying.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {
namespace {

constexpr std::array<std::string_view, 12> month_names{to_say("Jan"), to_say("Feb"), to_say("Mar"), to_say("Apr"),
                                                       to_say("May"), to_say("Jun"), to_say("Jul"), to_say("Aug"),
                                                       to_say("Sep"), to_say("Oct"), to_say("Nov"), to_say("Dec")};
constexpr std::array<double, 12> days_in_month{31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
constexpr double least_spot_px = 1.0;  ///< the radius of a dot: the sun is up but elsewhere

/// From the first to the last hour of the clock in which the sun is ever up.
struct ClockSpan {
    int first = 0, last = 23;
};
ClockSpan up_within(const HourTable& up) {
    const auto ever = [&](int hour) {
        return std::ranges::any_of(up, [&](const auto& month) { return month[static_cast<std::size_t>(hour)] > 0.0; });
    };
    ClockSpan span;
    while (span.first < 23 && !ever(span.first)) {
        ++span.first;
    }
    while (span.last > span.first && !ever(span.last)) {
        --span.last;
    }
    return span;
}

class CalendarDrawer {
public:
    CalendarDrawer(const SunHours& hours, const SunDrawingOptions& options)
        : hours_(hours), options_(options), span_(up_within(hours.up)) {}

    Elevation drawn() {
        const double size = options_.label_size * options_.pixel;
        double names = 0.0;
        for (const std::string_view name : month_names) {
            names = std::max(names, options_.text_width(worded(name), size, false));
        }
        left_ = names + 6.0 * options_.pixel;
        const int columns = span_.last - span_.first + 1;
        cell_ = std::min((options_.width - left_) / columns, (options_.height - 1.5 * size) / 12.0);
        drawing_.width = options_.width;
        drawing_.height = 12.0 * cell_ + 1.5 * size;
        for (int month = 0; month < 12; ++month) {
            label(worded(month_names[static_cast<std::size_t>(month)]), 0.0, (month + 0.5) * cell_ + 0.35 * size);
            for (int hour = span_.first; hour <= span_.last; ++hour) {
                spot(month, hour);
            }
        }
        for (int hour = span_.first; hour <= span_.last; ++hour) {
            if (hour % 3 == 0) {
                const std::string text = fmt::format("{}", hour);
                const double width = options_.text_width(text, size, false);
                label(text, left_ + (hour - span_.first) * cell_ - width / 2.0, 12.0 * cell_ + 1.1 * size);
            }
        }
        drawing_.description =
            say("Full spots: sun on the cloth. Rings: on the glass alone. Dots: the sun is up elsewhere.");
        return std::move(drawing_);
    }

private:
    void label(std::string text, double x, double baseline) {
        const double size = options_.label_size * options_.pixel;
        Label one{.text = std::move(text), .at = {x, baseline}, .size = size};
        one.left = x;
        one.right = x + options_.text_width(one.text, size, false);
        one.top = baseline - size;
        one.bottom = baseline + 0.25 * size;
        drawing_.labels.push_back(std::move(one));
    }

    void spot(int month, int hour) {
        const auto row = static_cast<std::size_t>(month);
        const auto column = static_cast<std::size_t>(hour);
        const double days = days_in_month[row];
        const double glass = std::min(1.0, hours_.on_glass[row][column] / days);
        const double cloth = std::min(1.0, hours_.on_cloth[row][column] / days);
        const double full = 0.46 * cell_;
        const Point at{left_ + (hour - span_.first + 0.5) * cell_, (month + 0.5) * cell_};
        if (hours_.up[row][column] <= 0.0) {
            return;
        }
        if (glass <= 0.0) {
            circle(at, least_spot_px * options_.pixel, Role::hairline, true);
        } else if (glass > cloth) {
            circle(at, std::max(least_spot_px * options_.pixel, full * std::sqrt(glass)), Role::ink, false);
        }
        if (cloth > 0.0) {
            circle(at, std::max(least_spot_px * options_.pixel, full * std::sqrt(cloth)), Role::ink, true);
        }
    }

    void circle(Point at, double radius, Role role, bool filled) {
        Stroke stroke{.form = Form::circle, .role = role, .points = {at}, .radius = radius};
        stroke.width = filled ? 0.0 : options_.pixel;
        stroke.filled = filled;
        stroke.part = "hours";
        drawing_.strokes.push_back(std::move(stroke));
    }

    const SunHours& hours_;
    const SunDrawingOptions& options_;
    ClockSpan span_;
    double left_ = 0.0, cell_ = 0.0;
    Elevation drawing_{};
};

}  // namespace

Elevation sun_calendar_of(const WindowLight& light, const SunDrawingOptions& options) {
    return light.hours ? CalendarDrawer(*light.hours, options).drawn() : Elevation{};
}

}  // namespace truehang
