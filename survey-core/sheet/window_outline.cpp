// SPDX-License-Identifier: Apache-2.0
#include "sheet/window_outline.h"

#include "adjust/measured.h"
#include "sheet/shape_outline.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace truehang {

namespace {

// Typical proportions of a window nobody has measured yet; common practice, no source.
constexpr double usual_width = 1200.0;
constexpr double usual_height = 1150.0;
constexpr double usual_door_height = 2050.0;
constexpr double usual_sill = 850.0;
constexpr double usual_above = 320.0;
constexpr double usual_pole_above = 100.0;
constexpr double usual_level = 1000.0;
constexpr double least_side = 10.0;  ///< so that a slip of the tape still leaves something to draw

constexpr std::size_t mark_count = 6;
using LineMarks = std::array<std::optional<double>, mark_count>;
using AllMarks = std::array<LineMarks, 3>;

std::size_t index_of(Line line) { return static_cast<std::size_t>(line); }
std::size_t index_of(PlumbMark mark) { return static_cast<std::size_t>(mark); }

Line first_line_with_heights(const std::vector<CountedReading>& readings) {
    for (const Line line : all_lines) {
        for (const auto& counted : readings) {
            const auto word = counted.station.word;
            if (counted.station.line == line && !word.starts_with("pole.") && !word.starts_with("level.")) {
                return line;
            }
        }
    }
    return Line::left;
}

/// One height reading as a difference of two marks of a line.
struct Difference {
    Line line;
    PlumbMark from, to;
    double value;
};

std::vector<Difference> differences(const std::vector<CountedReading>& readings, Line pole_line) {
    std::vector<Difference> found;
    for (const auto& counted : readings) {
        if (counted.station.kind == StationKind::height) {
            found.push_back({counted.station.line.value_or(pole_line), counted.station.from, counted.station.to,
                             counted.value.mm()});
        }
    }
    return found;
}

void follow(const std::vector<Difference>& list, AllMarks& marks) {
    for (std::size_t pass = 0; pass < mark_count; ++pass) {
        for (const auto& difference : list) {
            auto& line = marks[index_of(difference.line)];
            auto& from = line[index_of(difference.from)];
            auto& to = line[index_of(difference.to)];
            if (from && !to) {
                to = *from + difference.value;
            } else if (to && !from) {
                from = *to - difference.value;
            }
        }
    }
}

/// Fills the lines that lack a mark from those that have it: between two of them straight, else as the nearest.
bool spread(AllMarks& marks, PlumbMark mark) {
    const std::size_t m = index_of(mark);
    const auto original = marks;
    bool any = false;
    for (const auto& line : original) {
        any = any || line[m].has_value();
    }
    if (!any) {
        return false;
    }
    const auto& [left, centre, right] = original;
    if (!left[m]) {
        marks[0][m] = centre[m] ? centre[m] : right[m];
    }
    if (!right[m]) {
        marks[2][m] = centre[m] ? centre[m] : left[m];
    }
    if (!centre[m]) {
        marks[1][m] = (*marks[0][m] + *marks[2][m]) / 2.0;
    }
    return true;
}

MarkHeights heights_of(const AllMarks& marks, PlumbMark mark, const MarkHeights& floor, bool known) {
    MarkHeights heights;
    heights.known = known;
    for (std::size_t i = 0; i < 3; ++i) {
        heights.y[i] = floor.y[i] + marks[i][index_of(mark)].value_or(0.0);
    }
    return heights;
}

/// The floor under the level line, or level where there is none on two lines.
MarkHeights floor_under(const AllMarks& marks) {
    MarkHeights floor;
    floor.known = true;
    AllMarks levels = marks;
    const std::size_t level = index_of(PlumbMark::level);
    const auto taken = std::ranges::count_if(marks, [&](const LineMarks& line) { return line[level].has_value(); });
    if (taken < 2) {
        return floor;
    }
    const auto datum = *std::ranges::find_if(marks, [&](const LineMarks& line) { return line[level].has_value(); });
    spread(levels, PlumbMark::level);
    for (std::size_t i = 0; i < 3; ++i) {
        floor.y[i] = *datum[level] - *levels[i][level];
    }
    return floor;
}

/// What nobody measured, kept between what was.
void guess_missing(AllMarks& marks, const std::vector<Difference>& list, WindowOutline& outline) {
    const auto fill = [&](PlumbMark mark, double value) {
        for (auto& line : marks) {
            line[index_of(mark)] = value;
        }
        follow(list, marks);
    };
    const auto ceiling = marks[0][index_of(PlumbMark::ceiling)];
    const auto head = marks[0][index_of(PlumbMark::head)];
    if (!outline.sill.known) {
        const double under = head ? *head * 0.45 : usual_sill;
        fill(PlumbMark::sill, outline.door ? 0.0 : (ceiling ? std::min(under, *ceiling * 0.4) : under));
    }
    if (!spread(marks, PlumbMark::head)) {
        double height = outline.door ? usual_door_height : usual_height;
        if (ceiling) {
            height = std::min(height, std::max(least_side, (*ceiling - *marks[0][index_of(PlumbMark::sill)]) * 0.85));
        }
        fill(PlumbMark::head, *marks[0][index_of(PlumbMark::sill)] + height);
    }
    if (!spread(marks, PlumbMark::ceiling)) {
        fill(PlumbMark::ceiling, *marks[0][index_of(PlumbMark::head)] + usual_above);
    }
}

/// Where a pole hangs over an arch or a gable: level, as high as its highest reading has it.
MarkHeights pole_over_peak(const AllMarks& before, const WindowOutline& outline) {
    MarkHeights pole;
    double height = outline.head.y[1] + usual_pole_above;
    for (std::size_t i = 0; i < 3; ++i) {
        if (const auto known = before[i][index_of(PlumbMark::pole)]) {
            const double here = outline.floor.y[i] + *known;
            height = pole.known ? std::max(height, here) : here;
            pole.known = true;
        }
    }
    pole.y.fill(height);
    return pole;
}

/// Where a pole hangs on every line, once it is known on one: level, or parallel to head or ceiling.
MarkHeights pole_heights(const AllMarks& before, const WindowOutline& outline, Hang hang) {
    if (outline.is_peaked()) {
        return pole_over_peak(before, outline);
    }
    MarkHeights pole;
    double sum = 0.0;
    int count = 0;
    const MarkHeights& along = hang == Hang::head ? outline.head : outline.ceiling;
    for (std::size_t i = 0; i < 3; ++i) {
        if (const auto known = before[i][index_of(PlumbMark::pole)]) {
            sum += outline.floor.y[i] + *known - (hang == Hang::level ? 0.0 : along.y[i]);
            ++count;
        }
    }
    pole.known = count > 0;
    for (std::size_t i = 0; i < 3; ++i) {
        const double room = outline.ceiling.y[i] - outline.head.y[i];
        const double guess = outline.head.y[i] + std::clamp(room / 2.0, 20.0, usual_pole_above);
        pole.y[i] = count == 0 ? guess : sum / count + (hang == Hang::level ? 0.0 : along.y[i]);
    }
    return pole;
}

AllMarks marks_of(const WindowFigures& figures, bool door) {
    AllMarks marks;
    for (const Line line : all_lines) {
        for (const auto mark :
             {PlumbMark::sill, PlumbMark::head, PlumbMark::ceiling, PlumbMark::pole, PlumbMark::level}) {
            marks[index_of(line)][index_of(mark)] =
                size_mm(figures, std::string(word_of(mark)) + "." + std::string(word_of(line)));
        }
        marks[index_of(line)][index_of(PlumbMark::floor)] = 0.0;
        if (door) {
            marks[index_of(line)][index_of(PlumbMark::sill)] = 0.0;
        }
    }
    return marks;
}

/// The one height of the level line over the datum.
MarkHeights level_heights(const AllMarks& marks, const MarkHeights& floor) {
    MarkHeights level;
    level.y.fill(usual_level);
    for (std::size_t i = 0; i < 3 && !level.known; ++i) {
        if (const auto height = marks[i][index_of(PlumbMark::level)]) {
            level.y.fill(floor.y[i] + *height);
            level.known = true;
        }
    }
    return level;
}

/// The head of an arch or a gable on its centre line is the crown or apex; on the others the feet. The two are told
/// apart by the rise where only one was taken.
class PeakHeights {
public:
    /// Takes the centre line's head out of `marks`, so that head means the feet there, and out of `list`.
    PeakHeights(AllMarks& marks, std::vector<Difference>& list, const PeakRise& rise) : rise_(rise) {
        constexpr auto head = static_cast<std::size_t>(PlumbMark::head);
        auto& centre = marks[1][head];
        crown_ = centre;
        feet_known_ = marks[0][head] || marks[2][head];
        centre.reset();
        if (crown_ && !feet_known_) {
            marks[0][head] = marks[2][head] = *crown_ - rise.value;
        }
        std::erase_if(list, [](const Difference& difference) {
            return difference.line == Line::centre &&
                   (difference.from == PlumbMark::head || difference.to == PlumbMark::head);
        });
    }
    void finish(WindowOutline& outline, bool ceiling_known) const {
        outline.eaves = outline.head.y;
        const double feet = (outline.eaves[0] + outline.eaves[2]) / 2.0;
        outline.head.y[1] = std::max(feet + 1.0, crown_ ? outline.floor.y[1] + *crown_ : feet + rise_.value);
        outline.peak_known = crown_.has_value() || (rise_.known && feet_known_);
        if (!ceiling_known) {
            for (double& y : outline.ceiling.y) {
                y = std::max(y, outline.head.y[1] + usual_above);
            }
        }
    }

private:
    PeakRise rise_;
    std::optional<double> crown_;
    bool feet_known_ = false;
};

void set_heights(WindowOutline& outline, const Window& window, const WindowFigures& figures,
                 const std::vector<CountedReading>& readings) {
    auto marks = marks_of(figures, outline.door);
    auto list = differences(readings, outline.pole_line);
    follow(list, marks);
    outline.floor = floor_under(marks);
    outline.level = level_heights(marks, outline.floor);
    outline.sill.known = spread(marks, PlumbMark::sill);
    follow(list, marks);
    std::optional<PeakHeights> peak;
    if (outline.is_peaked()) {
        peak.emplace(marks, list, peak_rise(outline, figures, readings));
    }
    const bool head_known = spread(marks, PlumbMark::head);
    follow(list, marks);
    const bool ceiling_known = spread(marks, PlumbMark::ceiling);
    follow(list, marks);
    guess_missing(marks, list, outline);
    outline.sill = heights_of(marks, PlumbMark::sill, outline.floor, outline.sill.known);
    outline.head = heights_of(marks, PlumbMark::head, outline.floor, head_known);
    outline.ceiling = heights_of(marks, PlumbMark::ceiling, outline.floor, ceiling_known);
    for (std::size_t i = 0; i < 3; ++i) {
        outline.head.y[i] = std::max(outline.head.y[i], outline.sill.y[i] + least_side);
    }
    outline.eaves = outline.head.y;
    if (peak) {
        peak->finish(outline, ceiling_known);
    }
    outline.pole = pole_heights(marks, outline, leading_hang(window));
}

/// How far the top left corner stands to the right of the bottom left one, where a diagonal tells.
std::optional<double> lean(const std::vector<CountedReading>& readings, double bottom, double top, double height_left,
                           double height_right) {
    double sum = 0.0;
    int count = 0;
    const auto along = [](const CountedReading* diagonal, double height) -> std::optional<double> {
        if (diagonal == nullptr || diagonal->value.mm() <= height) {
            return std::nullopt;
        }
        return std::sqrt(diagonal->value.mm() * diagonal->value.mm() - height * height);
    };
    if (const auto run = along(find_counted(readings, "opening.diagonal.rising"), height_right)) {
        sum += *run - top;
        ++count;
    }
    if (const auto run = along(find_counted(readings, "opening.diagonal.falling"), height_left)) {
        sum += bottom - *run;
        ++count;
    }
    if (count == 0 || std::abs(sum / count) > bottom / 2.0) {
        return std::nullopt;
    }
    return sum / count;
}

void set_widths(WindowOutline& outline, const WindowFigures& figures, const std::vector<CountedReading>& readings) {
    constexpr std::array<std::string_view, 3> words{"opening.width.bottom", "opening.width.middle",
                                                    "opening.width.top"};
    std::array<std::optional<double>, 3> taken;
    std::optional<double> any;
    for (std::size_t i = 0; i < 3; ++i) {
        const auto* reading = find_counted(readings, words[i]);
        taken[i] = size_mm(figures, words[i]);
        if (!taken[i] && reading != nullptr) {
            taken[i] = reading->value.mm();
        }
        any = taken[i] ? taken[i] : any;
    }
    outline.width_known = any.has_value();
    const double bottom = std::max(least_side, taken[0].value_or(taken[1].value_or(any.value_or(usual_width))));
    const double top = std::max(least_side, taken[2].value_or(taken[1].value_or(any.value_or(usual_width))));
    const double middle = std::max(least_side, taken[1].value_or((bottom + top) / 2.0));
    const auto& sill = outline.sill.y;
    const auto& head = outline.head.y;
    const double shift =
        lean(readings, bottom, top, head[0] - sill[0], head[2] - sill[2]).value_or((bottom - top) / 2.0);
    const double middle_of_middle = (bottom / 2.0 + shift + top / 2.0) / 2.0;
    outline.left_x = {0.0, middle_of_middle - middle / 2.0, shift};
    outline.right_x = {bottom, middle_of_middle + middle / 2.0, shift + top};
}

void set_stops(WindowOutline& outline, const WindowFigures& figures, const std::vector<CountedReading>& readings) {
    const auto wall = [&](std::string_view word) -> std::optional<double> {
        if (const auto size = size_mm(figures, word)) {
            return size;
        }
        const auto* reading = find_counted(readings, word);
        return reading == nullptr ? std::nullopt : std::optional(reading->value.mm());
    };
    const auto left = wall("wall.left");
    const auto right = wall("wall.right");
    const auto total = wall("wall.total");
    if (left) {
        outline.stop_left = outline.left_x[2] - *left;
    }
    if (right) {
        outline.stop_right = outline.right_x[2] + *right;
    }
    // The wall runs across the mouth of a bay, whose facets stand unfolded here; round a corner.
    const double unfolded =
        outline.plan && outline.shape == Shape::bay ? outline.right_x[2] - outline.plan->chord : 0.0;
    if (total && left && !right) {
        outline.stop_right = std::max(*outline.stop_left + *total + unfolded, outline.right_x[2]);
    }
    if (total && right && !left) {
        outline.stop_left = std::min(*outline.stop_right - *total - unfolded, outline.left_x[2]);
    }
}

}  // namespace

std::optional<double> size_mm(const WindowFigures& figures, std::string_view name) {
    const auto found = std::ranges::find(figures.sizes, name, &Size::name);
    return found == figures.sizes.end() ? std::nullopt : std::optional(found->value.mm());
}

double WindowOutline::x_of(Line line) const {
    if (!facets.empty()) {
        const std::size_t middle = facets.size() / 2;
        return line == Line::left       ? facets.front().middle()
               : line == Line::right    ? facets.back().middle()
               : facets.size() % 2 == 1 ? facets[middle].middle()
                                        : facets[middle].left;
    }
    if (line == Line::centre && apex_x) {
        return *apex_x;
    }
    return line == Line::left ? left_x[1] : line == Line::right ? right_x[1] : (left_x[1] + right_x[1]) / 2.0;
}

double WindowOutline::at(const MarkHeights& mark, double x) const {
    const double left = x_of(Line::left);
    const double centre = x_of(Line::centre);
    const double right = x_of(Line::right);
    if (x < centre) {
        return mark.y[1] + (mark.y[0] - mark.y[1]) * (centre - x) / (centre - left);
    }
    return mark.y[1] + (mark.y[2] - mark.y[1]) * (x - centre) / (right - centre);
}

std::pair<double, double> WindowOutline::spot(double u, double v) const {
    const auto through = [](const std::array<double, 3>& three, double t) {
        return t < 0.5 ? three[0] + (three[1] - three[0]) * t * 2.0
                       : three[1] + (three[2] - three[1]) * (t - 0.5) * 2.0;
    };
    const double left = through(left_x, v);
    const double right = through(right_x, v);
    const double low = through(sill.y, u);
    const double high = through(eaves, u);
    return {left + (right - left) * u, low + (high - low) * v};
}

WindowOutline outline_of(const Window& window, const WindowFigures& figures, std::string_view active) {
    WindowOutline outline;
    const auto shape = window.shape.known();
    outline.shape = shape.value_or(Shape::recess);
    outline.worked = shape && !stations_of(*shape).empty();
    outline.door = shape == Shape::door;
    outline.frame = shape == Shape::frame;
    const auto readings = outline.worked ? counted_readings(window, *shape) : std::vector<CountedReading>{};
    outline.pole_line = first_line_with_heights(readings);
    outline.height_known = std::ranges::any_of(
        readings, [](const CountedReading& r) { return r.station.word.starts_with("opening.height."); });
    set_heights(outline, window, figures, readings);
    if (outline.is_folded()) {
        set_facets(outline, window, figures, readings, active);
        set_facet_heights(outline, figures, readings);
    } else {
        set_widths(outline, figures, readings);
    }
    if (outline.is_peaked()) {
        set_peak(outline, figures, readings);
    }
    set_stops(outline, figures, readings);
    return outline;
}

}  // namespace truehang
