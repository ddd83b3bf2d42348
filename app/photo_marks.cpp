// SPDX-License-Identifier: Apache-2.0
#include "photo_marks.h"

#include "survey/stations.h"
#include "writing.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

std::pair<double, double> held(QPointF point) {
    return {std::clamp(point.x(), 0.0, 1.0), std::clamp(point.y(), 0.0, 1.0)};
}

QPointF scaled(QPointF point, QSizeF shown) { return {point.x() * shown.width(), point.y() * shown.height()}; }

double apart(QPointF a, QPointF b) { return std::hypot(a.x() - b.x(), a.y() - b.y()); }

double distance(QPointF point, QPointF a, QPointF b) {
    const QPointF along = b - a;
    const double length = QPointF::dotProduct(along, along);
    const double share = length > 0.0 ? std::clamp(QPointF::dotProduct(point - a, along) / length, 0.0, 1.0) : 0.0;
    return apart(point, a + along * share);
}

/// How far a mark lies from a point of the picture as it is shown; none where it isn't drawn.
std::optional<double> distance_of(const Mark& mark, QPointF point, QSizeF shown) {
    if (is_run(mark)) {
        return distance(point, scaled(*point_of(mark, "from"), shown), scaled(*point_of(mark, "to"), shown));
    }
    if (is_spot(mark)) {
        return apart(point, scaled(*point_of(mark, "at"), shown));
    }
    return std::nullopt;
}

}  // namespace

bool is_run(const Mark& mark) {
    return (mark.kind == "arrow" || mark.kind == "line") && point_of(mark, "from") && point_of(mark, "to");
}

bool is_spot(const Mark& mark) { return (mark.kind == "text" || mark.kind == "station") && point_of(mark, "at"); }

std::optional<QPointF> point_of(const Mark& mark, const char* name) {
    for (const auto& [point_name, point] : mark.points) {
        if (point_name == name) {
            return QPointF(point.first, point.second);
        }
    }
    return std::nullopt;
}

QString words_of(const Mark& mark, Shape shape) {
    if (mark.kind == "station") {
        if (const auto station = find_station(shape, mark.text)) {
            return shown(station->says);
        }
    }
    return shown(mark.text);
}

Mark run_mark(const std::string& kind, QPointF from, QPointF to, const QString& text) {
    Mark mark;
    mark.kind = kind;
    mark.points = {{"from", held(from)}, {"to", held(to)}};
    mark.text = bytes(text);
    return mark;
}

Mark spot_mark(const std::string& kind, QPointF at, const QString& text) {
    Mark mark;
    mark.kind = kind;
    mark.points = {{"at", held(at)}};
    mark.text = bytes(text);
    return mark;
}

Mark moved_by(Mark mark, QPointF by) {
    const auto within = [](double by_much, double least, double most) {
        return std::clamp(by_much, std::min(0.0, -least), std::max(0.0, 1.0 - most));
    };
    double left = 1.0, right = 0.0, top = 1.0, bottom = 0.0;
    for (const auto& [name, point] : mark.points) {
        left = std::min(left, point.first);
        right = std::max(right, point.first);
        top = std::min(top, point.second);
        bottom = std::max(bottom, point.second);
    }
    for (auto& [name, point] : mark.points) {
        point.first += within(by.x(), left, right);
        point.second += within(by.y(), top, bottom);
    }
    return mark;
}

int mark_near(const std::vector<Mark>& marks, QPointF point, QSizeF shown, double reach) {
    int found = -1;
    double nearest = reach;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const auto away = distance_of(marks[i], scaled(point, shown), shown);
        if (away && *away <= nearest) {
            found = static_cast<int>(i);
            nearest = *away;
        }
    }
    return found;
}

std::pair<QPointF, QPointF> barbs_of(QPointF from, QPointF tip, double length) {
    constexpr double spread = 0.45;  // radians to each side
    const double back = std::atan2(from.y() - tip.y(), from.x() - tip.x());
    const auto barb = [&](double angle) { return tip + length * QPointF(std::cos(angle), std::sin(angle)); };
    return {barb(back - spread), barb(back + spread)};
}

}  // namespace truehang
