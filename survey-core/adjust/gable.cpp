// SPDX-License-Identifier: Apache-2.0
#include "adjust/gable.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {

namespace {

using Point = std::vector<double>;

// Where an unknown stands in the point.
constexpr std::size_t width = 0, foot_left = 1, foot_right = 2, apex_along = 3, apex = 4, unknowns = 5;

Told of(std::size_t unknown, const Point& point) {
    Told told{point[unknown], {}};
    told.by[unknown] = 1.0;
    return told;
}

Told slope_left(const Point& point) {
    const double run = point[apex_along];
    const double rise = point[apex] - point[foot_left];
    Told told{std::hypot(run, rise), {}};
    const double length = std::max(told.value, 1e-6);
    told.by[apex_along] = run / length;
    told.by[apex] = rise / length;
    told.by[foot_left] = -rise / length;
    return told;
}

Told slope_right(const Point& point) {
    const double run = point[width] - point[apex_along];
    const double rise = point[apex] - point[foot_right];
    Told told{std::hypot(run, rise), {}};
    const double length = std::max(told.value, 1e-6);
    told.by[width] = run / length;
    told.by[apex_along] = -run / length;
    told.by[apex] = rise / length;
    told.by[foot_right] = -rise / length;
    return told;
}

Tells telling(std::size_t unknown) {
    return [unknown](const Point& point) { return of(unknown, point); };
}

/// The stations of the figure; the left half's first four, the right half's from the fourth on.
struct Entry {
    std::string_view station;
    Tells tells;
};
const std::array<Entry, 7>& entries() {
    static const std::array<Entry, 7> list{{{"opening.height.left", telling(foot_left)},
                                            {"gable.slope.left", slope_left},
                                            {"gable.apex.along", telling(apex_along)},
                                            {"opening.height.centre", telling(apex)},
                                            {"opening.width.bottom", telling(width)},
                                            {"opening.height.right", telling(foot_right)},
                                            {"gable.slope.right", slope_right}}};
    return list;
}

std::optional<double> leg(const double* slope, const double* high, const double* low) {
    if (slope == nullptr || high == nullptr || low == nullptr) {
        return std::nullopt;
    }
    const double rise = *high - *low;
    return std::sqrt(std::max(*slope * *slope - rise * rise, 1.0));
}

/// First guesses by number: the apex along the bottom edge as read, by either slope, in the middle.
std::optional<Point> start(const FigureValues& values, std::size_t number) {
    const auto read = [&](std::string_view station, double otherwise) {
        const double* value = value_of(values, station);
        return value != nullptr ? *value : otherwise;
    };
    const double* centre = value_of(values, "opening.height.centre");
    const auto by_left = leg(value_of(values, "gable.slope.left"), centre, value_of(values, "opening.height.left"));
    const auto by_right = leg(value_of(values, "gable.slope.right"), centre, value_of(values, "opening.height.right"));
    Point point(unknowns);
    const double both = by_left && by_right ? *by_left + *by_right : 2.0 * read("gable.apex.along", 500.0);
    point[width] = read("opening.width.bottom", both);
    point[foot_left] = read("opening.height.left", 0.0);
    point[foot_right] = read("opening.height.right", 0.0);
    point[apex] = read("opening.height.centre", std::max(point[foot_left], point[foot_right]) + 100.0);
    std::vector<double> guesses;
    if (const double* along = value_of(values, "gable.apex.along")) {
        guesses.push_back(*along);
    }
    if (by_left) {
        guesses.push_back(*by_left);
    }
    if (by_right) {
        guesses.push_back(point[width] - *by_right);
    }
    guesses.push_back(point[width] / 2.0);
    if (number >= guesses.size()) {
        return std::nullopt;
    }
    point[apex_along] = guesses[number];
    return point;
}

std::optional<PlaneFigure> figure_of(const std::vector<CountedReading>& readings, const TapeRule& tape,
                                     std::size_t first, std::size_t count) {
    std::vector<FigureReading> entering;
    for (std::size_t i = first; i < first + count; ++i) {
        const Entry& entry = entries()[i];
        const auto* reading = find_counted(readings, entry.station);
        const bool may_be_none = entry.station == "gable.apex.along" || entry.station.starts_with("opening.height");
        if (reading != nullptr && !may_be_none && reading->value.mm() < 1.0) {
            return std::nullopt;
        }
        if (reading != nullptr) {
            entering.push_back({reading, entry.tells});
        }
    }
    if (entering.empty()) {
        return std::nullopt;
    }
    PlaneFigure figure("gable", entering, start, tape);
    return figure.is_determined() || figure.unformed() ? std::optional(std::move(figure)) : std::nullopt;
}

}  // namespace

std::optional<Gable> Gable::adjusted(const std::vector<CountedReading>& readings, const TapeRule& tape) {
    struct Part {
        std::size_t first, count;
    };
    for (const Part part : {Part{0, 7}, Part{0, 4}, Part{2, 5}}) {
        if (auto figure = figure_of(readings, tape, part.first, part.count)) {
            return Gable(std::move(*figure));
        }
    }
    return std::nullopt;
}

std::map<std::string, Estimate> Gable::lengths() const {
    std::map<std::string, Estimate> lengths;
    for (const Entry& entry : entries()) {
        if (!figure_.is_determined() || entry.station.starts_with("opening.height")) {
            continue;
        }
        const Told told = entry.tells(figure_.point());
        if (figure_.reaches(told)) {
            lengths[std::string(entry.station)] = figure_.length(told);
        }
    }
    return lengths;
}

}  // namespace truehang
