// SPDX-License-Identifier: Apache-2.0
#include "sheet/bay_plan.h"

#include "sheet/window_outline.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

namespace truehang {

namespace {

// What nobody has measured yet; common practice, no source.
constexpr double usual_facet = 800.0;
constexpr double usual_corner_angle = 90.0;
constexpr double least_facet = 10.0;

/// The inside angle of a bay whose first and last facets stand square to each other.
double usual_bay_angle(std::size_t facets) { return 180.0 - 90.0 / static_cast<double>(facets - 1); }

/// How many facets the window's walk goes through, or what is being measured asks for.
std::size_t facet_count(const Window& window, const std::vector<CountedReading>& readings, std::string_view active) {
    if (window.shape.is(Shape::corner)) {
        return 2;
    }
    auto count = static_cast<std::size_t>(std::max(2, facets_asked(window)));
    const auto look = [&](std::string_view word) {
        count = std::max({count, number_of(word, "facet"), number_of(word, "corner") + 1});
    };
    look(active);
    for (const CountedReading& reading : readings) {
        look(reading.station.word);
    }
    return std::min<std::size_t>(count, most_facets);
}

bool adds_up(const WindowFigures& figures) {
    return std::ranges::none_of(figures.checks, [](const Check& check) {
        const bool of_the_plan = check.network.starts_with("bay") || check.network.starts_with("corner");
        return of_the_plan && !check.adds_up;
    });
}

class PlanMaker {
public:
    PlanMaker(const Window& window, const WindowFigures& figures, const std::vector<CountedReading>& readings,
              std::string_view active)
        : window_(window), figures_(figures), readings_(readings), active_(active) {}

    BayPlan made() {
        plan_.closes = adds_up(figures_);
        take_widths();
        take_angles();
        turn();
        return plan_;
    }

private:
    [[nodiscard]] std::optional<double> length(const std::string& word) const {
        if (plan_.closes) {
            if (const auto size = size_mm(figures_, word)) {
                return size;
            }
        }
        const auto* counted = find_counted(readings_, word);
        return counted == nullptr ? std::nullopt : std::optional(counted->value.mm());
    }
    [[nodiscard]] std::optional<double> angle(const std::string& word) const {
        const auto size = std::ranges::find(figures_.sizes, word, &Size::name);
        if (plan_.closes && size != figures_.sizes.end() && size->angle) {
            return size->angle->degrees();
        }
        const auto* counted = find_counted(readings_, word);
        return counted == nullptr || !counted->angle ? std::nullopt : std::optional(counted->angle->degrees());
    }

    void take_widths() {
        const std::size_t count = facet_count(window_, readings_, active_);
        double sum = 0.0;
        int known = 0;
        std::vector<std::optional<double>> taken;
        for (std::size_t n = 1; n <= count; ++n) {
            taken.push_back(length("facet." + std::to_string(n) + ".width"));
            sum += taken.back().value_or(0.0);
            known += taken.back() ? 1 : 0;
        }
        const double guess = known == 0 ? usual_facet : sum / known;
        for (const auto& width : taken) {
            plan_.widths.push_back(std::max(least_facet, width.value_or(guess)));
            plan_.width_known.push_back(width.has_value());
        }
    }

    void take_angles() {
        for (std::size_t n = 1; n < plan_.facets(); ++n) {
            const auto taken = angle("corner." + std::to_string(n) + ".angle_deg");
            plan_.angles.push_back(taken.value_or(0.0));
            plan_.angle_known.push_back(taken.has_value());
        }
        const auto chord = length(window_.shape.is(Shape::corner) ? "corner.chord" : "bay.chord");
        plan_.chord_known = chord.has_value();
        plan_.chord = chord.value_or(0.0);
        if (std::ranges::count(plan_.angle_known, false) > 0) {
            guess_angles();
        }
    }

    /// Angles that nobody took: all alike, and such that the mouth is as wide as it was read where that can be.
    void guess_angles() {
        guess_angles(window_.shape.is(Shape::corner) ? usual_corner_angle : usual_bay_angle(plan_.facets()));
        const bool widths_known = std::ranges::count(plan_.width_known, false) == 0;
        if (!plan_.chord_known || !widths_known) {
            return;
        }
        double low = 45.0;
        double high = 180.0;
        if (mouth_at(low) > plan_.chord || mouth_at(high) < plan_.chord) {
            return;
        }
        for (int i = 0; i < 40; ++i) {
            const double middle = (low + high) / 2.0;
            (mouth_at(middle) > plan_.chord ? high : low) = middle;
        }
        guess_angles(low);
    }
    void guess_angles(double degrees) {
        for (std::size_t i = 0; i < plan_.angles.size(); ++i) {
            if (!plan_.angle_known[i]) {
                plan_.angles[i] = degrees;
            }
        }
    }
    [[nodiscard]] double mouth_at(double degrees) {
        const auto before = plan_.angles;
        guess_angles(degrees);
        const auto end = walked().back();
        plan_.angles = before;
        return std::hypot(end.first, end.second);
    }

    /// From the left mouth edge along the facets, the first of them along x.
    [[nodiscard]] std::vector<std::pair<double, double>> walked() const {
        std::vector<std::pair<double, double>> points{{0.0, 0.0}};
        double heading = 0.0;
        for (std::size_t i = 0; i < plan_.facets(); ++i) {
            const auto [x, y] = points.back();
            points.emplace_back(x + plan_.widths[i] * std::cos(heading), y + plan_.widths[i] * std::sin(heading));
            if (i < plan_.angles.size()) {
                heading -= (180.0 - plan_.angles[i]) * std::numbers::pi / 180.0;
            }
        }
        return points;
    }

    /// The facets turned so that the mouth lies along x; as the figures have them where they were adjusted.
    void turn() {
        if (plan_.closes && figures_.plan.size() == plan_.facets() + 1) {
            for (const PlanPoint& point : figures_.plan) {
                plan_.points.emplace_back(point.x.mm(), point.y.mm());
            }
            plan_.chord = plan_.points.back().first;
            return;
        }
        const auto points = walked();
        const double by = std::atan2(points.back().second, points.back().first);
        for (const auto& [x, y] : points) {
            plan_.points.emplace_back(x * std::cos(by) + y * std::sin(by), -x * std::sin(by) + y * std::cos(by));
        }
        if (plan_.closes) {
            plan_.chord = plan_.points.back().first;
        }
    }

    const Window& window_;
    const WindowFigures& figures_;
    const std::vector<CountedReading>& readings_;
    std::string_view active_;
    BayPlan plan_;
};

}  // namespace

std::size_t number_of(std::string_view word, std::string_view family) {
    if (!word.starts_with(family) || word.size() < family.size() + 2 || word[family.size()] != '.') {
        return 0;
    }
    const char digit = word[family.size() + 1];
    const bool alone = word.size() == family.size() + 2 || word[family.size() + 2] == '.';
    return alone && digit >= '1' && digit <= '9' ? static_cast<std::size_t>(digit - '0') : 0;
}

BayPlan bay_plan_of(const Window& window, const WindowFigures& figures, const std::vector<CountedReading>& readings,
                    std::string_view active) {
    return PlanMaker(window, figures, readings, active).made();
}

}  // namespace truehang
