// SPDX-License-Identifier: Apache-2.0
#include "windows.h"

#include "survey/stations.h"

#include <rapidcheck.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

namespace truehang::test {
namespace {

/// The room that a label's figures take themselves: Lato's figures are 0.72 of the size high and have no descenders.
struct TextRoom {
    double left, top, right, bottom;
};

TextRoom text_room(const Label& label) {
    return {label.at.x, label.at.y - 0.72 * label.size,
            label.at.x + plain_text_width(label.text, label.size, label.bold), label.at.y};
}

bool holds(const TextRoom& room, Point p) {
    return p.x > room.left && p.x < room.right && p.y > room.top && p.y < room.bottom;
}

int side_of(Point a, Point b, Point p) {
    const double turn = (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
    return turn > 0.0 ? 1 : turn < 0.0 ? -1 : 0;
}

/// Whether two segments cross, by the sides on which the ends of each lie of the other.
bool segments_cross(Point a, Point b, Point c, Point d) {
    return side_of(a, b, c) * side_of(a, b, d) < 0 && side_of(c, d, a) * side_of(c, d, b) < 0;
}

bool lies_over(const TextRoom& room, Point a, Point b) {
    const std::array<Point, 4> corner{Point{room.left, room.top}, Point{room.right, room.top},
                                      Point{room.right, room.bottom}, Point{room.left, room.bottom}};
    if (holds(room, a) || holds(room, b)) {
        return true;
    }
    for (std::size_t i = 0; i < 4; ++i) {
        if (segments_cross(a, b, corner[i], corner[(i + 1) % 4])) {
            return true;
        }
    }
    return false;
}

/// What is wrong with a label, or nothing.
std::string fault_of(const Label& label, const Elevation& elevation) {
    const TextRoom room = text_room(label);
    if (room.left < 0.0 || room.top < 0.0 || room.right > elevation.width || room.bottom > elevation.height) {
        return "outside the target";
    }
    for (const Label& other : elevation.labels) {
        const TextRoom taken = text_room(other);
        if (&other != &label && room.left < taken.right && taken.left < room.right && room.top < taken.bottom &&
            taken.top < room.bottom) {
            return "on the label " + other.text;
        }
    }
    for (const Stroke& stroke : elevation.strokes) {
        if (stroke.width <= 0.0 && !(stroke.filled && stroke.role == Role::ink)) {
            continue;
        }
        const bool hard = stroke.role == Role::ink || stroke.role == Role::thread;
        if (stroke.form == Form::circle) {
            const double x = std::clamp(stroke.points[0].x, room.left, room.right);
            const double y = std::clamp(stroke.points[0].y, room.top, room.bottom);
            if (std::hypot(x - stroke.points[0].x, y - stroke.points[0].y) < stroke.radius) {
                return "on a circle of " + stroke.part;
            }
            continue;
        }
        const std::size_t count = stroke.points.size();
        for (std::size_t i = 0; i < count; ++i) {
            if (holds(room, stroke.points[i])) {
                return "on the end of a line of " + stroke.part;
            }
            const bool joined = i + 1 < count || stroke.form == Form::polygon;
            if (hard && joined && lies_over(room, stroke.points[i], stroke.points[(i + 1) % count])) {
                return "across the ink of " + stroke.part;
            }
        }
    }
    return {};
}

double any_mm(int low, int high) { return *rc::gen::inRange(low, high + 1); }

template <class E>
Word<E> any_word() {
    const auto& list = Words<E>::list;
    return Word<E>(list[*rc::gen::inRange<std::size_t>(0, list.size())].second);
}

double any_value(const Station& station) {
    // One reading in twelve is a slip of a digit.
    const double slip = *rc::gen::inRange(0, 12) == 0 ? 10.0 : 1.0;
    switch (station.kind) {
        case StationKind::width:
            return any_mm(300, 3200) * slip;
        case StationKind::diagonal:
            return any_mm(600, 4000);
        case StationKind::depth:
        case StationKind::projection:
            return any_mm(0, 400);
        case StationKind::wall:
            return any_mm(0, 2500);
        default:
            break;
    }
    if (station.word.starts_with("above.") || station.word.starts_with("pole.above")) {
        return any_mm(0, 500) * slip;
    }
    return (station.to == PlumbMark::ceiling || station.to == PlumbMark::pole ? any_mm(1800, 3500) : any_mm(0, 1500)) *
           slip;
}

Layer any_layer() {
    Layer layer;
    Hardware hardware;
    hardware.kind = any_word<HardwareKind>();
    hardware.hang = any_word<Hang>();
    hardware.diameter = Length::mm(any_mm(12, 60));
    hardware.length = Length::mm(any_mm(300, 4000));
    hardware.finial = Length::mm(any_mm(0, 120));
    hardware.brackets = *rc::gen::inRange(0, 6);
    Treatment treatment;
    treatment.heading = any_word<Heading>();
    treatment.layout = any_word<Layout>();
    treatment.length = any_word<HemAt>();
    layer.hardware = hardware;
    layer.treatment = treatment;
    return layer;
}

Survey any_survey() {
    const std::array<Shape, 7> shapes{Shape::recess, Shape::frame, Shape::door, Shape::bay,
                                      Shape::corner, Shape::arch,  Shape::gable};
    const Shape shape = shapes[*rc::gen::inRange<std::size_t>(0, shapes.size())];
    Survey survey = one_window(shape, {});
    survey.entry_unit = *rc::gen::element<std::string>("mm", "cm", "m", "in");
    Window& window = survey.rooms[0].windows[0];
    const int one_in = *rc::gen::inRange(1, 5);
    for (const Station& station : stations_of(shape)) {
        if (*rc::gen::inRange(0, one_in) == 0) {
            if (station.is_angle()) {
                take_angle(window, std::string(station.word), any_mm(40, 320));
            } else {
                take(window, std::string(station.word), any_value(station));
            }
        }
    }
    const int obstructions = *rc::gen::inRange(0, 5);
    for (int i = 0; i < obstructions; ++i) {
        Obstruction obstruction;
        obstruction.id = "o" + std::to_string(i);
        obstruction.kind = any_word<ObstructionKind>();
        obstruction.left = Length::mm(any_mm(-800, 1800));
        obstruction.width = Length::mm(any_mm(10, 1500));
        obstruction.bottom = Length::mm(any_mm(0, 2200));
        obstruction.height = Length::mm(any_mm(10, 900));
        window.obstructions.push_back(obstruction);
    }
    if (*rc::gen::inRange(0, 4) > 0) {
        window.layers.push_back(any_layer());
    }
    return survey;
}

/// The window's figures from those of its readings that nothing checks, as if the others didn't add up: read at random
/// hardly anything does, and to find no slip in it takes long.
WindowFigures any_figures(const Survey& survey, const Room& room, const Window& window) {
    Window unchecked = window;
    std::erase_if(unchecked.readings, [](const Reading& reading) {
        const std::array<std::string_view, 4> kept{"opening.width.top", "below.left", "opening.height.left",
                                                   "pole.above.left"};
        return std::ranges::find(kept, reading.station) == kept.end();
    });
    WindowFigures figures = work_out_window(survey, room, unchecked);
    Flag flag;
    flag.code = "does-not-add-up";
    for (const Reading& reading : window.readings) {
        if (*rc::gen::inRange(0, 4) == 0) {
            flag.stations.push_back(reading.station);
        }
    }
    Check check;
    check.network = window.shape.text();
    check.adds_up = *rc::gen::inRange(0, 2) == 0;
    figures.checks.push_back(check);
    figures.flags.push_back(flag);
    return figures;
}

TEST(Labels, KeepOffEachOtherOffEndsAndOffInk) {
    // Three windows in each of a hundred cases, at the least.
    const auto keep_off = [] {
        const Survey survey = any_survey();
        const Room& room = survey.rooms[0];
        const Window& window = room.windows[0];
        ElevationOptions options = elevation_options_for(survey);
        options.width = *rc::gen::inRange(240, 900);
        options.height = *rc::gen::inRange(200, 700);
        options.drawn = *rc::gen::element(Drawn::absent, Drawn::back, Drawn::shut);
        const auto& stations = stations_of(*window.shape.known());
        options.active_station = std::string(stations[*rc::gen::inRange<std::size_t>(0, stations.size())].word);
        options.typed = *rc::gen::element<std::string>("", "1", "1130", "48 3/8", "4' 3 1/2\"");
        const Elevation elevation = elevation_of(survey, room, window, any_figures(survey, room, window), options);
        const auto being_measured = find_station(*window.shape.known(), options.active_station);
        const std::string shown = options.typed + (being_measured->is_angle() ? "°" : "");
        bool active = options.typed.empty();
        for (const Label& label : elevation.labels) {
            const std::string fault = fault_of(label, elevation);
            if (!fault.empty()) {
                RC_FAIL(label.station + " " + label.text + ": " + fault);
            }
            active = active ||
                     (label.station == options.active_station && label.text == shown && label.role == Role::thread);
        }
        if (!active) {
            RC_FAIL(options.active_station + " has no label of " + options.typed);
        }
    };
    EXPECT_TRUE(rc::check([&] {
        for (int window = 0; window < 3; ++window) {
            keep_off();
        }
    }));
}

TEST(Labels, OfTheSideViewKeepOffEachOther) {
    EXPECT_TRUE(rc::check([] {
        Survey survey = any_survey();
        Window& window = survey.rooms[0].windows[0];
        for (Obstruction& obstruction : window.obstructions) {
            obstruction.depth = Length::mm(any_mm(1, 500));
        }
        ElevationOptions options = elevation_options_for(survey);
        options.width = *rc::gen::inRange(240, 900);
        options.height = *rc::gen::inRange(200, 700);
        const Elevation elevation =
            side_view_of(survey, survey.rooms[0], window, any_figures(survey, survey.rooms[0], window), options);
        for (const Label& label : elevation.labels) {
            const std::string fault = fault_of(label, elevation);
            if (!fault.empty()) {
                RC_FAIL(label.text + ": " + fault);
            }
        }
    }));
}

TEST(Labels, FaultsAreFound) {
    // The checks themselves: a label on ink, on an end, on another label and outside is a fault each time.
    Elevation elevation;
    elevation.width = 100;
    elevation.height = 100;
    elevation.labels.push_back({.text = "1130", .at = {20, 50}, .size = 16});
    EXPECT_EQ(fault_of(elevation.labels[0], elevation), "");
    elevation.strokes.push_back({.form = Form::line, .role = Role::hairline, .points = {{0, 45}, {100, 45}}});
    EXPECT_EQ(fault_of(elevation.labels[0], elevation), "");
    elevation.strokes[0].role = Role::ink;
    EXPECT_NE(fault_of(elevation.labels[0], elevation), "");
    elevation.strokes[0] = {.form = Form::line, .role = Role::hairline, .points = {{30, 45}, {100, 45}}};
    EXPECT_NE(fault_of(elevation.labels[0], elevation), "");
    elevation.strokes.clear();
    elevation.labels.push_back({.text = "860", .at = {40, 45}, .size = 16});
    EXPECT_NE(fault_of(elevation.labels[0], elevation), "");
    elevation.labels.pop_back();
    elevation.labels[0].at.x = 80;
    EXPECT_NE(fault_of(elevation.labels[0], elevation), "");
}

}  // namespace
}  // namespace truehang::test
