// SPDX-License-Identifier: Apache-2.0
#include "sheet/shape_outline.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace truehang {

namespace {

using Spot = std::pair<double, double>;

// What nobody has measured yet, as shares of the width; common practice, no source.
constexpr double usual_arch_rise = 0.3;
constexpr double usual_gable_rise = 0.5;
constexpr double usual_width = 1200.0;
/// An arc that rises higher over half its span than this is no part of a circle that a mason would set out.
constexpr double steepest_arc = 1.05;
/// Ordinates that lie nearer to the circle than this are its own: edges of plaster are no truer.
constexpr double on_the_circle_mm = 8.0;
/// From this rise over half the span an arch that is no circle leaves its feet upright; common practice, no source.
constexpr double upright_from = 0.5;
constexpr int arc_steps = 48;

std::optional<double> any_width(const WindowFigures& figures, const std::vector<CountedReading>& readings) {
    for (const auto* word : {"opening.width.top", "opening.width.middle", "opening.width.bottom"}) {
        if (const auto width = measured_mm(figures, readings, word)) {
            return width;
        }
    }
    return std::nullopt;
}

/// The circle through three spots; nothing where they lie in a line.
struct Circle {
    Spot centre;
    double radius;
};
std::optional<Circle> circle_through(Spot a, Spot b, Spot c) {
    const double d =
        2.0 * (a.first * (b.second - c.second) + b.first * (c.second - a.second) + c.first * (a.second - b.second));
    if (std::abs(d) < 1e-6) {
        return std::nullopt;
    }
    const auto square = [](Spot p) { return p.first * p.first + p.second * p.second; };
    const double x =
        (square(a) * (b.second - c.second) + square(b) * (c.second - a.second) + square(c) * (a.second - b.second)) / d;
    const double y =
        (square(a) * (c.first - b.first) + square(b) * (a.first - c.first) + square(c) * (b.first - a.first)) / d;
    return Circle{{x, y}, std::hypot(a.first - x, a.second - y)};
}

std::vector<Spot> arc_of(const Circle& circle, Spot left, Spot right) {
    const auto angle = [&](Spot p) {
        double a = std::atan2(p.second - circle.centre.second, p.first - circle.centre.first);
        return a < -std::numbers::pi / 2.0 ? a + 2.0 * std::numbers::pi : a;
    };
    const double from = angle(left);
    const double to = angle(right);
    std::vector<Spot> spots{left};
    for (int i = 1; i < arc_steps; ++i) {
        const double a = from + (to - from) * i / arc_steps;
        spots.emplace_back(circle.centre.first + circle.radius * std::cos(a),
                           circle.centre.second + circle.radius * std::sin(a));
    }
    spots.push_back(right);
    return spots;
}

/// A half ellipse over the feet: how an arch is drawn that no circle fits.
std::vector<Spot> ellipse_of(Spot left, Spot crown, Spot right) {
    std::vector<Spot> spots;
    for (int i = 0; i <= arc_steps; ++i) {
        const double a = std::numbers::pi * (1.0 - static_cast<double>(i) / arc_steps);
        const double t = (1.0 + std::cos(a)) / 2.0;
        const double foot = left.second + (right.second - left.second) * t;
        const double middle = (left.second + right.second) / 2.0;
        spots.emplace_back(left.first + (right.first - left.first) * t, foot + (crown.second - middle) * std::sin(a));
    }
    return spots;
}

/// Two equal side arcs, upright at the feet, that run into a flatter one at the crown. With half the span a, the rise h
/// and the side arcs' radius r, the crown's is (a² - 2ar + h²)/(2(h - r)): the centres stand as far apart as the radii
/// differ. The arcs meet on the line of the centres.
std::vector<Spot> three_centred(Spot left, Spot crown, Spot right, double side) {
    const double half = (right.first - left.first) / 2.0;
    const double rise = crown.second - (left.second + right.second) / 2.0;
    const double r = std::clamp(side, 1.0, std::max(1.0, std::min(half, rise) - 1.0));
    const double flat = (half * half - 2.0 * half * r + rise * rise) / (2.0 * std::max(1.0, rise - r));
    const double meet = flat > r ? half - (half - r) * flat / (flat - r) : half;
    std::vector<Spot> spots;
    for (int i = 0; i <= 2 * arc_steps; ++i) {
        // Closer together at the feet, where the curve is steep.
        const double t = (1.0 - std::cos(std::numbers::pi * i / (2.0 * arc_steps))) / 2.0;
        const double along = 2.0 * half * t;
        const double from_foot = std::min(along, 2.0 * half - along);
        const double high = from_foot <= meet
                                ? std::sqrt(std::max(0.0, r * r - (from_foot - r) * (from_foot - r)))
                                : rise - flat + std::sqrt(flat * flat - (from_foot - half) * (from_foot - half));
        spots.emplace_back(left.first + along, left.second + (right.second - left.second) * t + high);
    }
    return spots;
}

/// A smooth curve through spots (Catmull and Rom's spline, centripetal, by Barry and Goldman's pyramid).
std::vector<Spot> curve_through(const std::vector<Spot>& spots, bool upright_feet) {
    const auto between = [](Spot a, Spot b, double t) {
        return Spot{a.first + (b.first - a.first) * t, a.second + (b.second - a.second) * t};
    };
    const auto apart = [](Spot a, Spot b) {
        return std::max(1e-6, std::sqrt(std::hypot(b.first - a.first, b.second - a.second)));
    };
    // As if the curve went on below its feet: an arch of a good rise leaves them upright.
    const auto beyond = [&](Spot inner, Spot foot) {
        return upright_feet ? Spot{inner.first, 2.0 * foot.second - inner.second} : between(inner, foot, 2.0);
    };
    std::vector<Spot> padded{beyond(spots[1], spots[0])};
    padded.insert(padded.end(), spots.begin(), spots.end());
    padded.push_back(beyond(spots[spots.size() - 2], spots.back()));
    std::vector<Spot> curve{spots.front()};
    constexpr int steps = 8;
    for (std::size_t i = 0; i + 3 < padded.size(); ++i) {
        const Spot* p = &padded[i];
        const double t1 = apart(p[0], p[1]);
        const double t2 = t1 + apart(p[1], p[2]);
        const double t3 = t2 + apart(p[2], p[3]);
        for (int step = 1; step <= steps; ++step) {
            const double t = t1 + (t2 - t1) * step / steps;
            const Spot a1 = between(p[0], p[1], t / t1);
            const Spot a2 = between(p[1], p[2], (t - t1) / (t2 - t1));
            const Spot a3 = between(p[2], p[3], (t - t2) / (t3 - t2));
            const Spot b1 = between(a1, a2, t / t2);
            const Spot b2 = between(a2, a3, (t - t1) / (t3 - t1));
            curve.push_back(step == steps ? p[2] : between(b1, b2, (t - t1) / (t2 - t1)));
        }
    }
    return curve;
}

double height_on(const std::vector<Spot>& line, double x) {
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        if (x <= line[i + 1].first || i + 2 == line.size()) {
            const double run = line[i + 1].first - line[i].first;
            const double t = std::abs(run) < 1e-9 ? 0.0 : std::clamp((x - line[i].first) / run, 0.0, 1.0);
            return line[i].second + (line[i + 1].second - line[i].second) * t;
        }
    }
    return 0.0;
}

/// The arch from its feet, its crown and what ordinates were taken.
class ArchMaker {
public:
    ArchMaker(WindowOutline& outline, const WindowFigures& figures, const std::vector<CountedReading>& readings)
        : outline_(outline), figures_(figures), readings_(readings) {}

    void make() {
        const Spot left{outline_.left_x[2], outline_.eaves[0]};
        const Spot right{outline_.right_x[2], outline_.eaves[2]};
        const Spot crown{(left.first + right.first) / 2.0, outline_.head.y[1]};
        const double rise = crown.second - (left.second + right.second) / 2.0;
        const auto circle = circle_through(left, crown, right);
        const bool arc = circle && rise > 0.0 && rise <= steepest_arc * (right.first - left.first) / 2.0;
        std::vector<Spot> taken = ordinates_taken(left, right);
        const auto side_radius = size_mm(figures_, "arch.radius.side");
        if (figures_.form == "three-centred" && side_radius) {
            outline_.peak = three_centred(left, crown, right, *side_radius);
        } else if (arc && (figures_.form == "semicircle" || figures_.form == "segmental" || fits(*circle, taken))) {
            outline_.peak = arc_of(*circle, left, right);
        } else if (!taken.empty()) {
            taken.push_back(crown);
            std::ranges::sort(taken);
            const auto near = [](Spot a, Spot b) { return std::abs(a.first - b.first) < 1.0; };
            taken.erase(std::unique(taken.begin(), taken.end(), near), taken.end());
            taken.insert(taken.begin(), left);
            taken.push_back(right);
            outline_.peak = curve_through(taken, rise >= upright_from * (right.first - left.first) / 2.0);
        } else {
            outline_.peak = ellipse_of(left, crown, right);
        }
        place_ordinates(left, right);
    }

private:
    [[nodiscard]] std::optional<double> ordinate(std::size_t n, const char* what) const {
        return measured_mm(figures_, readings_, "ordinate." + std::to_string(n) + what);
    }
    [[nodiscard]] std::vector<Spot> ordinates_taken(Spot left, Spot right) const {
        std::vector<Spot> taken;
        for (std::size_t n = 1; n <= static_cast<std::size_t>(most_ordinates); ++n) {
            const auto along = ordinate(n, ".along");
            const auto height = ordinate(n, ".height");
            if (along && height && *along > 0.0 && *along < right.first - left.first) {
                const double x = left.first + *along;
                taken.emplace_back(x, springing(left, right, x) + *height);
            }
        }
        return taken;
    }
    static double springing(Spot left, Spot right, double x) {
        const double run = right.first - left.first;
        return left.second + (right.second - left.second) * (run <= 0.0 ? 0.0 : (x - left.first) / run);
    }
    static bool fits(const Circle& circle, const std::vector<Spot>& taken) {
        return std::ranges::all_of(taken, [&](Spot spot) {
            const double from_centre = std::hypot(spot.first - circle.centre.first, spot.second - circle.centre.second);
            return std::abs(from_centre - circle.radius) <= on_the_circle_mm;
        });
    }
    void place_ordinates(Spot left, Spot right) {
        const double width = right.first - left.first;
        std::size_t count = 3;
        for (std::size_t n = 1; n <= static_cast<std::size_t>(most_ordinates); ++n) {
            count = ordinate(n, ".along") || ordinate(n, ".height") ? std::max(count, n) : count;
        }
        for (std::size_t n = 1; n <= static_cast<std::size_t>(most_ordinates); ++n) {
            const double guess = width * static_cast<double>(n) / static_cast<double>(std::max(count, n) + 1);
            const double x = left.first + std::clamp(ordinate(n, ".along").value_or(guess), 0.0, width);
            const double low = springing(left, right, x);
            const auto height = ordinate(n, ".height");
            outline_.ordinates.push_back({x, low, height ? low + *height : height_on(outline_.peak, x)});
        }
    }

    WindowOutline& outline_;
    const WindowFigures& figures_;
    const std::vector<CountedReading>& readings_;
};

/// The rise of a gable whose slopes were taken.
std::optional<double> rise_of_slopes(const WindowFigures& figures, const std::vector<CountedReading>& readings) {
    const auto along = apex_along(figures, readings);
    const auto slope = measured_mm(figures, readings, "gable.slope.left");
    if (along && slope && *slope > *along) {
        return std::sqrt(*slope * *slope - *along * *along);
    }
    const auto width = any_width(figures, readings);
    const auto other = measured_mm(figures, readings, "gable.slope.right");
    if (along && width && other && *other > *width - *along) {
        return std::sqrt(*other * *other - (*width - *along) * (*width - *along));
    }
    return std::nullopt;
}

}  // namespace

std::optional<double> measured_mm(const WindowFigures& figures, const std::vector<CountedReading>& readings,
                                  std::string_view word) {
    if (const auto size = size_mm(figures, word)) {
        return size;
    }
    const auto* counted = find_counted(readings, word);
    return counted == nullptr ? std::nullopt : std::optional(counted->value.mm());
}

std::optional<double> apex_along(const WindowFigures& figures, const std::vector<CountedReading>& readings) {
    if (const auto along = measured_mm(figures, readings, "gable.apex.along")) {
        return along;
    }
    const auto width = any_width(figures, readings);
    const auto left = measured_mm(figures, readings, "gable.slope.left");
    const auto right = measured_mm(figures, readings, "gable.slope.right");
    if (!width || !left || !right || *left + *right <= *width || *width <= 0.0) {
        return std::nullopt;
    }
    // The foot of the height of a triangle of three sides.
    return (*width * *width + *left * *left - *right * *right) / (2.0 * *width);
}

PeakRise peak_rise(const WindowOutline& outline, const WindowFigures& figures,
                   const std::vector<CountedReading>& readings) {
    const double width = any_width(figures, readings).value_or(usual_width);
    if (outline.shape == Shape::arch) {
        const auto rise = measured_mm(figures, readings, "arch.rise");
        return {rise.value_or(width * usual_arch_rise), rise.has_value()};
    }
    const auto rise = rise_of_slopes(figures, readings);
    return {rise.value_or(width * usual_gable_rise), rise.has_value()};
}

void set_facets(WindowOutline& outline, const Window& window, const WindowFigures& figures,
                const std::vector<CountedReading>& readings, std::string_view active) {
    outline.plan = bay_plan_of(window, figures, readings, active);
    double x = 0.0;
    for (std::size_t i = 0; i < outline.plan->facets(); ++i) {
        FacetOutline facet{.left = x, .right = x + outline.plan->widths[i]};
        facet.width_known = outline.plan->width_known[i];
        x = facet.right;
        outline.facets.push_back(facet);
    }
    outline.left_x.fill(0.0);
    outline.right_x.fill(x);
    outline.width_known =
        std::ranges::any_of(outline.facets, [](const FacetOutline& facet) { return facet.width_known; });
}

void set_facet_heights(WindowOutline& outline, const WindowFigures& figures,
                       const std::vector<CountedReading>& readings) {
    for (std::size_t i = 0; i < outline.facets.size(); ++i) {
        FacetOutline& facet = outline.facets[i];
        const auto own = measured_mm(figures, readings, "facet." + std::to_string(i + 1) + ".height");
        const double x = facet.middle();
        facet.height_known = own.has_value();
        facet.height = std::max(1.0, own.value_or(outline.at(outline.head, x) - outline.at(outline.sill, x)));
        outline.height_known = outline.height_known || facet.height_known;
    }
}

void set_peak(WindowOutline& outline, const WindowFigures& figures, const std::vector<CountedReading>& readings) {
    if (outline.shape == Shape::arch) {
        ArchMaker(outline, figures, readings).make();
        return;
    }
    const double width = std::max(1.0, outline.right_x[0] - outline.left_x[0]);
    const double along = apex_along(figures, readings).value_or(width / 2.0);
    outline.apex_x = outline.left_x[0] + std::clamp(along, width * 0.02, width * 0.98);
    outline.peak = {{outline.left_x[2], outline.eaves[0]},
                    {*outline.apex_x, outline.head.y[1]},
                    {outline.right_x[2], outline.eaves[2]}};
}

}  // namespace truehang
