// SPDX-License-Identifier: Apache-2.0
#include "adjust/spans.h"

#include "adjust/gable.h"
#include "adjust/line_network.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace truehang {

namespace {

constexpr std::array<std::string_view, 6> figure_stations{"opening.width.bottom",    "opening.height.right",
                                                          "opening.width.top",       "opening.height.left",
                                                          "opening.diagonal.rising", "opening.diagonal.falling"};

Estimate as_read(const CountedReading& reading, const TapeRule& tape) {
    Estimate estimate{reading.value, reading_u(reading, tape), {}};
    if (!reading.measured) {
        estimate.rests_on.emplace_back(reading.station.word);
    }
    return estimate;
}

/// What lies between the edges along the wall, from left to right; nothing where it wasn't read. The walls of a corner
/// are followed round it.
std::vector<const CountedReading*> between_edges(const std::vector<CountedReading>& readings, Shape shape) {
    if (shape == Shape::corner) {
        const auto* first = find_counted(readings, "facet.1.width");
        const auto* second = find_counted(readings, "facet.2.width");
        return first != nullptr && second != nullptr ? std::vector{first, second}
                                                     : std::vector<const CountedReading*>{};
    }
    for (const auto* station : {"opening.width.top", "opening.width.middle", "opening.width.bottom", "bay.chord"}) {
        if (const auto* reading = find_counted(readings, station)) {
            return {reading};
        }
    }
    return {};
}

/// The readings of `stations`, or nothing where one is missing or is no evidence of its own.
std::optional<std::vector<const CountedReading*>> evidence(const std::vector<CountedReading>& readings,
                                                           std::span<const std::string_view> stations) {
    std::vector<const CountedReading*> found;
    for (const auto station : stations) {
        const auto* reading = find_counted(readings, station);
        if (reading == nullptr || !reading->independent) {
            return std::nullopt;
        }
        found.push_back(reading);
    }
    return found;
}

std::vector<std::string> words_of(const std::vector<const CountedReading*>& readings) {
    std::vector<std::string> words;
    for (const auto* reading : readings) {
        words.emplace_back(reading->station.word);
    }
    return words;
}

/// Every estimated reading of the network that a size leans on.
std::vector<std::string> estimates_in(const std::vector<const CountedReading*>& readings,
                                      const std::vector<double>& leverage) {
    std::vector<std::string> words;
    for (std::size_t i = 0; i < readings.size(); ++i) {
        if (!readings[i]->measured && std::abs(leverage[i]) > 1e-9) {
            words.emplace_back(readings[i]->station.word);
        }
    }
    return words;
}

/// A reading between two marks along the wall; null where there is none.
struct Stretch {
    const CountedReading* reading;
    int from, to;
};

/// The wall as marks along a line: what stops a curtain on the left, the opening's edges, what stops it on the right.
std::vector<Stretch> stretches_of(const std::vector<CountedReading>& readings,
                                  const std::vector<const CountedReading*>& between) {
    std::vector<Stretch> stretches{{find_counted(readings, "wall.left"), 0, 1}};
    int mark = 1;
    for (const auto* reading : between) {
        stretches.push_back({reading, mark, mark + 1});
        ++mark;
    }
    stretches.push_back({find_counted(readings, "wall.right"), mark, mark + 1});
    stretches.push_back({find_counted(readings, "wall.total"), 0, mark + 1});
    return stretches;
}

void adjust_wall(const std::vector<CountedReading>& readings, Shape shape, const TapeRule& tape, Spans& spans) {
    const auto between = between_edges(readings, shape);
    if (between.empty()) {
        return;
    }
    const auto stretches = stretches_of(readings, between);
    LineNetwork network;
    for (int mark = 0; mark <= stretches.back().to; ++mark) {
        network.add_mark();
    }
    for (const bool independent : {true, false}) {
        for (const Stretch& span : stretches) {
            if (span.reading != nullptr && span.reading->independent == independent) {
                network.observe(span.from, span.to, *span.reading, tape);
            }
        }
    }
    if (!network.adjust_all()) {
        return;
    }
    for (const Stretch& span : stretches) {
        if (span.reading == nullptr) {
            continue;
        }
        if (auto estimate = network.between(span.from, span.to)) {
            spans.by_station[std::string(span.reading->station.word)] = std::move(*estimate);
        }
    }
    if (auto redundant = network.network("wall")) {
        spans.networks.push_back(std::move(*redundant));
    }
}

/// The plane figure: bottom left at the origin, bottom right on the x axis; x[0] its x, then top right, then top left.
using Corners = std::vector<double>;

struct Side {
    double dx, dy;
    std::array<double, 5> d_dx, d_dy;
};

Side side(std::size_t station, const Corners& c) {
    switch (station) {
        case 0:
            return {c[0], 0.0, {1, 0, 0, 0, 0}, {}};
        case 1:
            return {c[1] - c[0], c[2], {-1, 1, 0, 0, 0}, {0, 0, 1, 0, 0}};
        case 2:
            return {c[1] - c[3], c[2] - c[4], {0, 1, 0, -1, 0}, {0, 0, 1, 0, -1}};
        case 3:
            return {c[3], c[4], {0, 0, 0, 1, 0}, {0, 0, 0, 0, 1}};
        case 4:
            return {c[1], c[2], {0, 1, 0, 0, 0}, {0, 0, 1, 0, 0}};
        default:
            return {c[0] - c[3], -c[4], {1, 0, 0, -1, 0}, {0, 0, 0, 0, -1}};
    }
}

std::array<double, 5> direction_of(std::size_t station, const Corners& corners) {
    const Side s = side(station, corners);
    const double length = std::hypot(s.dx, s.dy);
    std::array<double, 5> coefficients{};
    for (std::size_t k = 0; k < 5; ++k) {
        coefficients[k] = (s.dx * s.d_dx[k] + s.dy * s.d_dy[k]) / length;
    }
    return coefficients;
}

/// The six sides and diagonals as read, in the order of `figure_stations`.
using FigureReadings = std::array<const CountedReading*, 6>;

/// All six readings, where at least five are evidence of their own: a sixth that isn't is given by the others.
std::optional<FigureReadings> figure_readings(const std::vector<CountedReading>& readings) {
    FigureReadings found{};
    int independent = 0;
    for (std::size_t i = 0; i < found.size(); ++i) {
        found[i] = find_counted(readings, figure_stations[i]);
        if (found[i] == nullptr || found[i]->value.mm() < 1.0) {
            return std::nullopt;
        }
        independent += found[i]->independent ? 1 : 0;
    }
    return independent >= 5 ? std::optional(found) : std::nullopt;
}

/// Adjusts the figure to the observations of these of its stations.
struct FigureSolve {
    std::vector<std::size_t> stations;

    /// A rectangle of the surer width and, at each side, the surer height.
    [[nodiscard]] Corners start(const std::vector<Observation>& observations) const {
        std::array<const Observation*, 6> by_station{};
        for (std::size_t i = 0; i < stations.size(); ++i) {
            by_station[stations[i]] = &observations[i];
        }
        const auto surer = [&](std::size_t first, std::size_t second) {
            const Observation* a = by_station[first];
            const Observation* b = by_station[second];
            return b == nullptr || (a != nullptr && a->sigma <= 2.0 * b->sigma) ? a->value : b->value;
        };
        const double width = surer(0, 2);
        return {width, width, surer(1, 3), 0.0, surer(3, 1)};
    }

    void linearise(const std::vector<Observation>& observations, const Corners& at,
                   WeightedEquations& equations) const {
        equations.restart(at.size());
        for (std::size_t i = 0; i < observations.size(); ++i) {
            const Side s = side(stations[i], at);
            equations.add(direction_of(stations[i], at), observations[i].value - std::hypot(s.dx, s.dy),
                          observations[i].sigma);
        }
    }

    std::optional<Adjustment> from(Corners& corners, const std::vector<Observation>& observations) const {
        return adjust_iterated(
            [&](const Corners& at, WeightedEquations& equations) { linearise(observations, at, equations); }, corners);
    }

    std::optional<Residuals> operator()(const std::vector<Observation>& observations, double hopeless) const {
        Corners corners = start(observations);
        return residuals_iterated(
            [&](const Corners& at, WeightedEquations& equations) { linearise(observations, at, equations); }, corners,
            hopeless);
    }
};

void adjust_opening(const std::vector<CountedReading>& readings, const TapeRule& tape, Spans& spans) {
    const auto found = figure_readings(readings);
    if (!found) {
        return;
    }
    FigureSolve solve;
    std::vector<const CountedReading*> evident;
    std::vector<Observation> observations;
    for (std::size_t i = 0; i < found->size(); ++i) {
        const auto* reading = (*found)[i];
        if (reading->independent) {
            solve.stations.push_back(i);
            evident.push_back(reading);
            observations.push_back(
                {std::string(reading->station.word), reading->value.mm(), reading_u(*reading, tape).mm(), false});
        }
    }
    Corners corners = solve.start(observations);
    const auto adjusted = solve.from(corners, observations);
    if (!adjusted) {
        if (observations.size() == found->size()) {
            spans.unformed = unformed_network("opening", std::move(observations), std::move(solve));
        }
        return;
    }
    for (std::size_t i = 0; i < found->size(); ++i) {
        if ((*found)[i]->station.kind == StationKind::height) {
            continue;  // heights come from the plumb lines
        }
        const Side s = side(i, corners);
        const auto direction = direction_of(i, corners);
        const std::vector<double> f(direction.begin(), direction.end());
        spans.by_station[std::string(figure_stations[i])] = {Length::mm(std::hypot(s.dx, s.dy)),
                                                             Length::mm(adjusted->sigma_of(f)),
                                                             estimates_in(evident, adjusted->leverage_of(f))};
    }
    if (auto network = network_of("opening", std::move(observations), *adjusted, std::move(solve))) {
        spans.networks.push_back(std::move(*network));
    }
}

/// Takes what a figure came to.
void take(const PlaneFigure& figure, const std::map<std::string, Estimate>& lengths, Spans& spans) {
    for (const auto& [station, estimate] : lengths) {
        spans.by_station[station] = estimate;
    }
    if (figure.network()) {
        spans.networks.push_back(*figure.network());
    }
    spans.unformed = figure.unformed();
}

void adjust_bay(const std::vector<CountedReading>& readings, Shape shape, const TapeRule& tape, Spans& spans) {
    spans.traverse = Traverse::adjusted(readings, shape, tape);
    if (spans.traverse) {
        take(spans.traverse->figure(), spans.traverse->lengths(), spans);
        for (auto& [station, estimate] : spans.traverse->angles()) {
            spans.angles[station] = std::move(estimate);
        }
    }
}

/// Where one diagonal is there with the four sides, the two triangles it makes must close.
void check_triangles(const std::vector<CountedReading>& readings, const TapeRule& tape, Spans& spans) {
    const std::array<std::array<std::string_view, 3>, 4> triangles{{
        {"opening.width.bottom", "opening.height.right", "opening.diagonal.rising"},
        {"opening.width.top", "opening.height.left", "opening.diagonal.rising"},
        {"opening.width.bottom", "opening.height.left", "opening.diagonal.falling"},
        {"opening.width.top", "opening.height.right", "opening.diagonal.falling"},
    }};
    for (const auto& triangle : triangles) {
        const auto found = evidence(readings, triangle);
        if (found &&
            !squareness_of(as_read(*(*found)[0], tape), as_read(*(*found)[1], tape), as_read(*(*found)[2], tape))
                 .closes) {
            spans.impossible_triangle = true;
            spans.triangle_stations = words_of(*found);
            return;
        }
    }
}

}  // namespace

const Estimate* Spans::find(std::string_view station) const {
    const auto found = by_station.find(station);
    return found == by_station.end() ? nullptr : &found->second;
}

Squareness squareness_of(const Estimate& a, const Estimate& b, const Estimate& diagonal) {
    const double x = a.value.mm();
    const double y = b.value.mm();
    const double d = diagonal.value.mm();
    if (x + y <= d || x + d <= y || y + d <= x) {
        return {Length(), Length(), false};
    }
    // Offset over the height: y cos(corner) = (x^2 + y^2 - d^2) / (2 x), and its derivatives.
    const double offset = (x * x + y * y - d * d) / (2.0 * x);
    const double by_x = 1.0 - offset / x;
    const double by_y = y / x;
    const double by_d = d / x;
    return {Length::mm(offset), Length::mm(std::hypot(by_x * a.u.mm(), by_y * b.u.mm(), by_d * diagonal.u.mm())), true};
}

Spans adjust_spans(const std::vector<CountedReading>& readings, Shape shape, const TapeRule& tape) {
    Spans spans;
    for (const CountedReading& reading : readings) {
        if (reading.angle) {
            AngleEstimate estimate{*reading.angle, angle_u(reading, tape), {}};
            if (!reading.measured) {
                estimate.rests_on.emplace_back(reading.station.word);
            }
            spans.angles[std::string(reading.station.word)] = std::move(estimate);
        } else if (reading.station.kind != StationKind::height) {
            spans.by_station[std::string(reading.station.word)] = as_read(reading, tape);
        }
    }
    check_triangles(readings, tape, spans);
    adjust_wall(readings, shape, tape, spans);
    switch (shape) {
        case Shape::recess:
        case Shape::frame:
        case Shape::door:
            adjust_opening(readings, tape, spans);
            break;
        case Shape::bay:
        case Shape::corner:
            adjust_bay(readings, shape, tape, spans);
            break;
        case Shape::arch:
            if (const auto arch = Arch::adjusted(readings, tape)) {
                spans.arch_form = arch->form();
                take(arch->figure(), arch->lengths(), spans);
            }
            break;
        case Shape::gable:
            if (const auto gable = Gable::adjusted(readings, tape)) {
                take(gable->figure(), gable->lengths(), spans);
            }
            break;
    }
    return spans;
}

}  // namespace truehang
