// SPDX-License-Identifier: Apache-2.0
#include "sheet/label_placing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <optional>

namespace truehang {

namespace {

// The room a line of figures takes above and below its baseline, as shares of its size, and its halo in px.
constexpr double rise = 0.76;
constexpr double fall = 0.20;
constexpr double halo_px = 2.5;
constexpr double gap_px = 7.0;  // clear of a tape's tick
// What lying over a line costs, in places further along the tape.
constexpr double over_tape = 14.0;
constexpr double over_hairline = 4.0;

struct Box {
    double left, top, right, bottom;
    [[nodiscard]] bool holds(Point p) const { return p.x > left && p.x < right && p.y > top && p.y < bottom; }
    [[nodiscard]] bool meets(const Box& other) const {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }
    [[nodiscard]] Box grown(double by) const { return {left - by, top - by, right + by, bottom + by}; }
};

/// Whether the segment a-b passes through the box (Liang and Barsky's clipping).
bool crosses(const Box& box, Point a, Point b) {
    const double dx = b.x - a.x;
    const double dy = b.y - a.y;
    double enter = 0.0;
    double leave = 1.0;
    const std::array<std::pair<double, double>, 4> sides{
        {{-dx, a.x - box.left}, {dx, box.right - a.x}, {-dy, a.y - box.top}, {dy, box.bottom - a.y}}};
    for (const auto& [p, q] : sides) {
        if (p == 0.0) {
            if (q <= 0.0) {
                return false;
            }
            continue;
        }
        if (p < 0.0) {
            enter = std::max(enter, q / p);
        } else {
            leave = std::min(leave, q / p);
        }
    }
    return enter < leave;
}

struct Obstacle {
    Point a, b;
    double half_width;
    bool hard;     ///< ink or thread
    double price;  ///< of a label over it
    const std::string* station;
};

/// What the strokes of a drawing forbid.
class Obstacles {
public:
    explicit Obstacles(const std::vector<Stroke>& strokes) {
        for (const Stroke& stroke : strokes) {
            add(stroke);
        }
    }
    /// What the hairlines cost that a label here would lie over; nothing where it can't lie.
    [[nodiscard]] std::optional<double> cost(const Box& box, const std::string& station) const {
        for (const Box& taken : taken_) {
            if (box.meets(taken)) {
                return std::nullopt;
            }
        }
        for (const Point& end : ends_) {
            if (box.holds(end)) {
                return std::nullopt;
            }
        }
        double crossed = 0.0;
        for (const Obstacle& line : lines_) {
            if (crosses(box.grown(line.half_width), line.a, line.b)) {
                if (line.hard) {
                    return std::nullopt;
                }
                crossed += *line.station == station && !station.empty() ? 0.0 : line.price;
            }
        }
        return crossed;
    }
    void take(const Box& box) { taken_.push_back(box); }

private:
    void add(const Stroke& stroke) {
        if (stroke.form == Form::circle) {
            const Point c = stroke.points.front();
            taken_.push_back(Box{c.x, c.y, c.x, c.y}.grown(stroke.radius + stroke.width / 2.0));
            return;
        }
        if (stroke.width <= 0.0 && !(stroke.filled && stroke.role == Role::ink)) {
            return;
        }
        const bool hard = stroke.role == Role::ink || stroke.role == Role::thread;
        const double price = stroke.role == Role::dimension ? over_tape : over_hairline;
        if (stroke.filled && hard) {
            take_bounds(stroke);
        }
        ends_.insert(ends_.end(), stroke.points.begin(), stroke.points.end());
        const std::size_t count = stroke.points.size();
        const std::size_t segments = stroke.form == Form::polygon ? count : count - 1;
        for (std::size_t i = 0; i < segments; ++i) {
            lines_.push_back(
                {stroke.points[i], stroke.points[(i + 1) % count], stroke.width / 2.0, hard, price, &stroke.station});
        }
    }
    void take_bounds(const Stroke& stroke) {
        Box box{std::numeric_limits<double>::max(), std::numeric_limits<double>::max(),
                std::numeric_limits<double>::lowest(), std::numeric_limits<double>::lowest()};
        for (const Point& p : stroke.points) {
            box = {std::min(box.left, p.x), std::min(box.top, p.y), std::max(box.right, p.x),
                   std::max(box.bottom, p.y)};
        }
        taken_.push_back(box);
    }

    std::vector<Box> taken_;
    std::vector<Point> ends_;
    std::vector<Obstacle> lines_;
};

/// One label looking for its place.
class Placing {
public:
    Placing(const WantedLabel& wanted, const TextWidth& text_width, double pixel, double width, double height)
        : wanted_(wanted), halo_(halo_px * pixel), gap_(gap_px * pixel), target_{0.0, 0.0, width, height} {
        half_width_ = text_width(wanted.text, wanted.size, wanted.bold) / 2.0 + halo_;
        half_height_ = (rise + fall) * wanted.size / 2.0 + halo_;
    }

    [[nodiscard]] Box box_at(Point centre) const {
        return {centre.x - half_width_, centre.y - half_height_, centre.x + half_width_, centre.y + half_height_};
    }

    [[nodiscard]] Label label_in(const Box& box) const {
        return {.text = wanted_.text,
                .at = {box.left + halo_, box.top + halo_ + rise * wanted_.size},
                .size = wanted_.size,
                .bold = wanted_.bold,
                .role = wanted_.role,
                .station = wanted_.station,
                .left = box.left,
                .top = box.top,
                .right = box.right,
                .bottom = box.bottom};
    }

    /// The best place near the tape: its middle before its ends, its own side before the other, no hairline before one.
    [[nodiscard]] std::optional<Box> near(const Obstacles& obstacles) const {
        std::optional<Box> best;
        double least = std::numeric_limits<double>::max();
        const auto centres = candidates();
        for (std::size_t rank = 0; rank < centres.size(); ++rank) {
            const Box box = box_at(centres[rank]);
            if (!fits(box)) {
                continue;
            }
            const auto crossed = obstacles.cost(box, wanted_.station);
            if (!crossed) {
                continue;
            }
            const double cost = static_cast<double>(rank) + *crossed;
            if (cost < least) {
                least = cost;
                best = box;
            }
        }
        return best;
    }

    /// The nearest free place anywhere on the target.
    [[nodiscard]] std::optional<Box> anywhere(const Obstacles& obstacles) const {
        const Point middle{(wanted_.from.x + wanted_.to.x) / 2.0, (wanted_.from.y + wanted_.to.y) / 2.0};
        const double step = wanted_.size / 4.0;
        std::optional<Box> best;
        double least = std::numeric_limits<double>::max();
        for (double y = half_height_; y <= target_.bottom - half_height_; y += step) {
            for (double x = half_width_; x <= target_.right - half_width_; x += step) {
                const double distance = std::hypot(x - middle.x, y - middle.y);
                if (distance < least && obstacles.cost(box_at({x, y}), wanted_.station)) {
                    least = distance;
                    best = box_at({x, y});
                }
            }
        }
        return best;
    }

private:
    [[nodiscard]] bool fits(const Box& box) const {
        return box.left >= target_.left && box.right <= target_.right && box.top >= target_.top &&
               box.bottom <= target_.bottom;
    }

    [[nodiscard]] std::vector<Point> candidates() const {
        const double dx = wanted_.to.x - wanted_.from.x;
        const double dy = wanted_.to.y - wanted_.from.y;
        const bool upright = std::abs(dy) >= std::abs(dx);
        const double away = gap_ + (upright ? half_width_ : half_height_) - halo_;
        std::vector<Point> found;
        // Close to the tape; failing that a line of text further off.
        for (const double further : {0.0, 2.0 * half_height_}) {
            for (const double t : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9, 0.0, 1.0}) {
                const Point on{wanted_.from.x + dx * t, wanted_.from.y + dy * t};
                if (wanted_.over_own && further == 0.0) {
                    found.push_back(on);
                }
                for (const double side : {wanted_.outward, -wanted_.outward}) {
                    const double reach = side * (away + further);
                    found.push_back(upright ? Point{on.x + reach, on.y} : Point{on.x, on.y + reach});
                }
            }
            if (upright) {
                break;
            }
        }
        // Past the ends of a short tape.
        if (wanted_.over_own && upright) {
            for (const double beyond : {1.0, -1.0}) {
                const Point end = (beyond < 0.0) == (dy > 0.0) ? wanted_.from : wanted_.to;
                found.push_back({end.x, end.y + beyond * (half_height_ + gap_)});
            }
        }
        for (const double side : {wanted_.outward, -wanted_.outward}) {
            for (const double beyond : {-1.0, 1.0}) {
                const Point end = (beyond < 0.0) == (upright ? dy > 0.0 : dx > 0.0) ? wanted_.from : wanted_.to;
                found.push_back(upright ? Point{end.x + side * half_width_, end.y + beyond * (half_height_ + gap_)}
                                        : Point{end.x + beyond * (half_width_ + gap_), end.y});
            }
        }
        return found;
    }

    const WantedLabel& wanted_;
    double halo_;
    double gap_;
    Box target_;
    double half_width_ = 0.0;
    double half_height_ = 0.0;
};

}  // namespace

void place_labels(Elevation& elevation, std::vector<WantedLabel> wanted, const TextWidth& text_width, double pixel) {
    Obstacles obstacles(elevation.strokes);
    std::ranges::stable_sort(wanted, [](const WantedLabel& a, const WantedLabel& b) {
        return a.must != b.must ? a.must : a.importance > b.importance;
    });
    for (WantedLabel& label : wanted) {
        std::optional<Box> place;
        do {
            const Placing placing(label, text_width, pixel, elevation.width, elevation.height);
            place = placing.near(obstacles);
            if (!place && label.must) {
                place = placing.anywhere(obstacles);
            }
            if (place) {
                obstacles.take(*place);
                elevation.labels.push_back(placing.label_in(*place));
            }
        } while (!place && label.must && (label.size *= 0.85) > 6.0 * pixel);
    }
}

}  // namespace truehang
