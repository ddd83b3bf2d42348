// SPDX-License-Identifier: Apache-2.0
#include "sheet/drawing.h"

#include <algorithm>
#include <cmath>

namespace truehang {

std::string_view word_of(Role role) {
    switch (role) {
        case Role::ink:
            return "ink";
        case Role::hairline:
            return "hairline";
        case Role::guess:
            return "guess";
        case Role::dimension:
            return "dimension";
        case Role::guide:
            return "guide";
        case Role::thread:
            return "thread";
        case Role::wash:
            return "wash";
        case Role::paper:
            break;
    }
    return "paper";
}

double distance_to(Point point, Point a, Point b) {
    const double dx = b.x - a.x;
    const double dy = b.y - a.y;
    const double length2 = dx * dx + dy * dy;
    const double t =
        length2 == 0.0 ? 0.0 : std::clamp(((point.x - a.x) * dx + (point.y - a.y) * dy) / length2, 0.0, 1.0);
    return std::hypot(point.x - a.x - t * dx, point.y - a.y - t * dy);
}

std::optional<std::string> station_near(const Elevation& elevation, double x, double y, double radius, int nth) {
    struct Near {
        double distance;
        std::size_t index;
    };
    std::vector<Near> near;
    for (std::size_t i = 0; i < elevation.runs.size(); ++i) {
        const TapeRun& run = elevation.runs[i];
        const double distance =
            std::min(distance_to({x, y}, run.run[0], run.run[1]), distance_to({x, y}, run.edge[0], run.edge[1]));
        if (distance <= radius) {
            near.push_back({distance, i});
        }
    }
    if (near.empty() || nth < 0) {
        return std::nullopt;
    }
    std::ranges::stable_sort(near, {}, &Near::distance);
    return elevation.runs[near[static_cast<std::size_t>(nth) % near.size()].index].station;
}

Elevation stacked(Elevation above, const Elevation& below) {
    const double down = above.height;
    for (Stroke stroke : below.strokes) {
        for (Point& point : stroke.points) {
            point.y += down;
        }
        above.strokes.push_back(std::move(stroke));
    }
    for (Label label : below.labels) {
        label.at.y += down;
        label.top += down;
        label.bottom += down;
        above.labels.push_back(std::move(label));
    }
    above.width = std::max(above.width, below.width);
    above.height += below.height;
    above.description += " " + below.title + ". " + below.description;
    return above;
}

}  // namespace truehang
