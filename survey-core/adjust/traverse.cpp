// SPDX-License-Identifier: Apache-2.0
#include "adjust/traverse.h"

#include "adjust/traverse_plan.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace truehang {

namespace {

constexpr double radians = std::numbers::pi / 180.0;

int facets_of(const std::vector<CountedReading>& readings) {
    int facets = 0;
    for (const CountedReading& reading : readings) {
        const Station& station = reading.station;
        if (station.number == 0) {
            continue;
        }
        const bool is_corner = station.is_angle() || station.kind == StationKind::corner_depth;
        facets = std::max(facets, station.number + (is_corner ? 1 : 0));
    }
    return facets;
}

/// What a reading says of the plan; nothing of what lies outside of it.
Tells tells_of(const Station& station, const TraversePlan& plan) {
    const int n = station.number;
    switch (station.kind) {
        case StationKind::facet:
            return [plan, n](const std::vector<double>& point) { return plan.width(point, n); };
        case StationKind::chord:
            return [plan](const std::vector<double>& point) { return plan.chord(point); };
        case StationKind::corner_depth:
            return [plan, n](const std::vector<double>& point) { return plan.depth(point, n); };
        case StationKind::angle:
            if (n > 0) {
                return [plan, n](const std::vector<double>& point) { return plan.corner_angle(point, n); };
            }
            if (station.word == "mouth.left.angle_deg") {
                return [plan](const std::vector<double>& point) { return plan.mouth_left(point); };
            }
            return [plan](const std::vector<double>& point) { return plan.mouth_right(point); };
        default:
            return {};
    }
}

std::string numbered(std::string_view before, int number, std::string_view after) {
    return std::string(before) + std::to_string(number) + std::string(after);
}

}  // namespace

std::optional<Traverse> Traverse::adjusted(const std::vector<CountedReading>& readings, Shape shape,
                                           const TapeRule& tape) {
    constexpr double least_length = 1.0;
    const TraversePlan plan{facets_of(readings)};
    if ((shape != Shape::bay && shape != Shape::corner) || plan.facets < 2) {
        return std::nullopt;
    }
    std::vector<FigureReading> entering;
    std::vector<std::string> read;
    for (const CountedReading& reading : readings) {
        Tells tells = tells_of(reading.station, plan);
        if (!tells) {
            continue;
        }
        const bool may_be_none = reading.angle || reading.station.kind == StationKind::corner_depth;
        if (!may_be_none && reading.value.mm() < least_length) {
            return std::nullopt;
        }
        entering.push_back({&reading, std::move(tells)});
        read.emplace_back(reading.station.word);
    }
    if (entering.size() < plan.unknowns()) {
        return std::nullopt;
    }
    const auto starts = [plan](const FigureValues& values, std::size_t number) { return plan.start(values, number); };
    return Traverse(PlaneFigure(shape == Shape::bay ? "bay" : "corner", entering, starts, tape), plan.facets, shape,
                    std::move(read));
}

bool Traverse::was_read(const std::string& station) const { return std::ranges::find(read_, station) != read_.end(); }

std::vector<PlanPoint> Traverse::plan() const {
    std::vector<PlanPoint> points;
    if (figure_.is_determined()) {
        const TraversePlan plan{facets_};
        for (int k = 0; k <= facets_; ++k) {
            const auto corner = plan.corner(figure_.point(), k);
            points.push_back({Length::mm(corner[0]), Length::mm(corner[1])});
        }
    }
    return points;
}

std::map<std::string, Estimate> Traverse::lengths() const {
    std::map<std::string, Estimate> lengths;
    if (!figure_.is_determined()) {
        return lengths;
    }
    const TraversePlan plan{facets_};
    const auto& point = figure_.point();
    for (int n = 1; n <= facets_; ++n) {
        lengths[numbered("facet.", n, ".width")] = figure_.length(plan.width(point, n));
        const std::string depth = numbered("corner.", n, ".depth");
        if (was_read(depth)) {
            lengths[depth] = figure_.length(plan.depth(point, n));
        }
    }
    lengths[shape_ == Shape::bay ? "bay.chord" : "corner.chord"] = figure_.length(plan.chord(point));
    return lengths;
}

std::map<std::string, AngleEstimate> Traverse::angles() const {
    std::map<std::string, AngleEstimate> angles;
    if (!figure_.is_determined()) {
        return angles;
    }
    const TraversePlan plan{facets_};
    const auto& point = figure_.point();
    for (int n = 1; n < facets_; ++n) {
        angles[numbered("corner.", n, ".angle_deg")] = figure_.angle(plan.corner_angle(point, n));
    }
    if (was_read("mouth.left.angle_deg")) {
        angles["mouth.left.angle_deg"] = figure_.angle(plan.mouth_left(point));
    }
    if (was_read("mouth.right.angle_deg")) {
        angles["mouth.right.angle_deg"] = figure_.angle(plan.mouth_right(point));
    }
    return angles;
}

std::optional<Estimate> Traverse::track(Length off_wall) const {
    if (!figure_.is_determined()) {
        return std::nullopt;
    }
    const TraversePlan plan{facets_};
    const auto& point = figure_.point();
    const double p = off_wall.mm();
    Told track{0.0, {}};
    const auto add = [&](const Told& told, double share) {
        for (std::size_t k = 0; k < track.by.size(); ++k) {
            track.by[k] += share * told.by[k];
        }
    };
    constexpr double sharpest = 85.0 * radians;  // half a corner's turn: no track is bent round more
    double lost_before = 0.0;                    // at the facet's left end
    for (int n = 1; n <= facets_; ++n) {
        const Told width = plan.width(point, n);
        double lost_after = 0.0;
        if (n < facets_) {
            const Told angle = plan.corner_angle(point, n);
            const double half = (180.0 - angle.value) / 2.0 * radians;
            if (std::abs(half) > sharpest) {
                return std::nullopt;
            }
            lost_after = p * std::tan(half);
            // Both facets lose p tan(d/2); d(tan(d/2)) = -1/2 sec2(d/2) of the angle's change.
            add(angle, p * radians / (std::cos(half) * std::cos(half)));
        }
        const double left = width.value - lost_before - lost_after;
        if (!(left >= 0.0)) {
            return std::nullopt;
        }
        track.value += left;
        add(width, 1.0);
        lost_before = lost_after;
    }
    return std::isfinite(track.value) ? std::optional(figure_.length(track)) : std::nullopt;
}

}  // namespace truehang
