// SPDX-License-Identifier: Apache-2.0
#include "survey/stations.h"

#include "units/saying.h"

#include <algorithm>
#include <deque>
#include <iterator>
#include <span>
#include <string>
#include <utility>

namespace truehang {

std::string_view word_of(Line line) {
    switch (line) {
        case Line::left:
            return to_say("left");
        case Line::centre:
            return to_say("centre");
        case Line::right:
            break;
    }
    return to_say("right");
}

std::string_view word_of(PlumbMark mark) {
    switch (mark) {
        case PlumbMark::floor:
            return "floor";
        case PlumbMark::sill:
            return "sill";
        case PlumbMark::head:
            return "head";
        case PlumbMark::ceiling:
            return "ceiling";
        case PlumbMark::pole:
            return "pole";
        case PlumbMark::level:
            break;
    }
    return "level";
}

namespace {

using enum StationKind;
constexpr auto L = Line::left;
constexpr auto C = Line::centre;
constexpr auto R = Line::right;
constexpr auto F = PlumbMark::floor;
constexpr auto S = PlumbMark::sill;
constexpr auto H = PlumbMark::head;
constexpr auto K = PlumbMark::ceiling;
constexpr auto P = PlumbMark::pole;
constexpr auto V = PlumbMark::level;

constexpr Station recess_table[] = {
    {"opening.width.top", "Width at the top", width, {}, F, F},
    {"opening.width.middle", "Width in the middle", width, {}, F, F},
    {"opening.width.bottom", "Width at the bottom", width, {}, F, F},
    {"opening.height.left", "Sill to head, left", height, L, S, H},
    {"opening.height.centre", "Sill to head, centre", height, C, S, H},
    {"opening.height.right", "Sill to head, right", height, R, S, H},
    {"opening.diagonal.rising", "Diagonal, bottom left to top right", diagonal, {}, F, F},
    {"opening.diagonal.falling", "Diagonal, top left to bottom right", diagonal, {}, F, F},
    {"opening.depth", "Depth of the recess", depth, {}, F, F},
    {"wall.left", "Wall to the left, at pole height", wall, {}, F, F},
    {"wall.right", "Wall to the right, at pole height", wall, {}, F, F},
    {"wall.total", "Wall in one go, at pole height", wall, {}, F, F},
    {"above.left", "Head to ceiling, left", height, L, H, K},
    {"above.centre", "Head to ceiling, centre", height, C, H, K},
    {"above.right", "Head to ceiling, right", height, R, H, K},
    {"below.left", "Floor to sill, left", height, L, F, S},
    {"below.centre", "Floor to sill, centre", height, C, F, S},
    {"below.right", "Floor to sill, right", height, R, F, S},
    {"ceiling.left", "Floor to ceiling, left", height, L, F, K},
    {"ceiling.centre", "Floor to ceiling, centre", height, C, F, K},
    {"ceiling.right", "Floor to ceiling, right", height, R, F, K},
    {"level.left", "Floor to level line, left", height, L, F, V},
    {"level.centre", "Floor to level line, centre", height, C, F, V},
    {"level.right", "Floor to level line, right", height, R, F, V},
    {"pole.above", "Head up to pole centre", height, {}, H, P},
    {"pole.above.left", "Head up to pole centre, left", height, L, H, P},
    {"pole.above.centre", "Head up to pole centre, centre", height, C, H, P},
    {"pole.above.right", "Head up to pole centre, right", height, R, H, P},
    {"pole.below", "Head down to pole centre", height, {}, P, H},
    {"pole.below.left", "Head down to pole centre, left", height, L, P, H},
    {"pole.below.centre", "Head down to pole centre, centre", height, C, P, H},
    {"pole.below.right", "Head down to pole centre, right", height, R, P, H},
    {"pole.floor", "Floor to pole centre", height, {}, F, P},
    {"pole.floor.left", "Floor to pole centre, left", height, L, F, P},
    {"pole.floor.centre", "Floor to pole centre, centre", height, C, F, P},
    {"pole.floor.right", "Floor to pole centre, right", height, R, F, P},
    {"pole.ceiling", "Pole centre to ceiling", height, {}, P, K},
    {"pole.ceiling.left", "Pole centre to ceiling, left", height, L, P, K},
    {"pole.ceiling.centre", "Pole centre to ceiling, centre", height, C, P, K},
    {"pole.ceiling.right", "Pole centre to ceiling, right", height, R, P, K},
    {"sill.projection", "Sill board, out from the wall", projection, {}, F, F},
};

const std::vector<Station>& recess_stations() {
    static const std::vector<Station> list(std::begin(recess_table), std::end(recess_table));
    return list;
}

/// A door has no sill: its height starts at the floor.
std::vector<Station> door_stations() {
    std::vector<Station> list;
    for (Station station : recess_stations()) {
        if (station.word.starts_with("below.") || station.word == "sill.projection") {
            continue;
        }
        if (station.word.starts_with("opening.height.")) {
            station.from = F;
            station.says = *station.line == L   ? "Floor to head, left"
                           : *station.line == C ? "Floor to head, centre"
                                                : "Floor to head, right";
        }
        list.push_back(station);
    }
    return list;
}

using Says = std::pair<std::string_view, std::string_view>;

/// What every shape has beside its own: wall, heights beside the opening, pole, sill board; `otherwise` says some of
/// them in the shape's own words.
void add_surroundings(std::vector<Station>& list, std::span<const Says> otherwise) {
    for (Station station : recess_stations()) {
        if (station.word.starts_with("opening.")) {
            continue;
        }
        const auto own = std::ranges::find(otherwise, station.word, &Says::first);
        if (own != otherwise.end()) {
            station.says = own->second;
        }
        list.push_back(station);
    }
}

/// The stations of a shape with the numbered ones, and the texts of those.
struct NumberedStations {
    std::deque<std::string> texts;
    std::vector<Station> list;

    void add(StationKind kind, int number, std::string word, std::string says) {
        texts.push_back(std::move(word));
        const std::string_view kept = texts.back();
        texts.push_back(std::move(says));
        const bool upright = kind == facet_height;
        list.push_back({kept, texts.back(), kind, {}, upright ? S : F, upright ? H : F, number});
    }
};

std::string numbered(std::string_view before, int number, std::string_view after) {
    return std::string(before) + std::to_string(number) + std::string(after);
}

NumberedStations facet_stations(int facets, std::string_view chord_word) {
    NumberedStations made;
    for (int n = 1; n <= facets; ++n) {
        made.add(facet, n, numbered("facet.", n, ".width"), numbered("Width of facet ", n, ""));
    }
    for (int n = 1; n < facets; ++n) {
        made.add(angle, n, numbered("corner.", n, ".angle_deg"),
                 numbered("Angle between facets ", n, " and ") + std::to_string(n + 1));
    }
    made.add(chord, 0, std::string(chord_word), "Across the mouth, outer edge to outer edge");
    return made;
}

/// Left, right and centre of a bay are its first, last and middle facet.
constexpr Says bay_says[] = {
    {"above.left", "Head to ceiling, first facet"},
    {"above.centre", "Head to ceiling, middle facet"},
    {"above.right", "Head to ceiling, last facet"},
    {"below.left", "Floor to sill, first facet"},
    {"below.centre", "Floor to sill, middle facet"},
    {"below.right", "Floor to sill, last facet"},
    {"ceiling.left", "Floor to ceiling, first facet"},
    {"ceiling.centre", "Floor to ceiling, middle facet"},
    {"ceiling.right", "Floor to ceiling, last facet"},
    {"level.left", "Floor to level line, first facet"},
    {"level.centre", "Floor to level line, middle facet"},
    {"level.right", "Floor to level line, last facet"},
    {"pole.above.left", "Head up to pole centre, first facet"},
    {"pole.above.centre", "Head up to pole centre, middle facet"},
    {"pole.above.right", "Head up to pole centre, last facet"},
    {"pole.below.left", "Head down to pole centre, first facet"},
    {"pole.below.centre", "Head down to pole centre, middle facet"},
    {"pole.below.right", "Head down to pole centre, last facet"},
    {"pole.floor.left", "Floor to pole centre, first facet"},
    {"pole.floor.centre", "Floor to pole centre, middle facet"},
    {"pole.floor.right", "Floor to pole centre, last facet"},
    {"pole.ceiling.left", "Pole centre to ceiling, first facet"},
    {"pole.ceiling.centre", "Pole centre to ceiling, middle facet"},
    {"pole.ceiling.right", "Pole centre to ceiling, last facet"},
    {"wall.left", "Wall to the left of the mouth, at pole height"},
    {"wall.right", "Wall to the right of the mouth, at pole height"},
};

NumberedStations bay_stations() {
    NumberedStations made = facet_stations(most_facets, "bay.chord");
    for (int n = 1; n <= most_corners; ++n) {
        made.add(corner_depth, n, numbered("corner.", n, ".depth"),
                 numbered("From the mouth’s line, square to it, to corner ", n, ""));
    }
    made.add(angle, 0, "mouth.left.angle_deg", "Angle between the mouth and the first facet");
    made.add(angle, 0, "mouth.right.angle_deg", "Angle between the mouth and the last facet");
    for (int n = 1; n <= most_facets; ++n) {
        made.add(facet_height, n, numbered("facet.", n, ".height"), numbered("Sill to head, facet ", n, ""));
    }
    add_surroundings(made.list, bay_says);
    return made;
}

constexpr Says corner_says[] = {
    {"wall.left", "Wall from the first facet outward, at pole height"},
    {"wall.right", "Wall from the second facet outward, at pole height"},
    {"wall.total", "Both walls in one go, round the corner, at pole height"},
};

NumberedStations corner_stations() {
    NumberedStations made = facet_stations(2, "corner.chord");
    for (int n = 1; n <= 2; ++n) {
        made.add(facet_height, n, numbered("facet.", n, ".height"), numbered("Sill to head, facet ", n, ""));
    }
    add_surroundings(made.list, corner_says);
    return made;
}

constexpr Says arch_says[] = {{"above.left", "Springing to ceiling, left"},
                              {"above.centre", "Crown to ceiling"},
                              {"above.right", "Springing to ceiling, right"},
                              {"pole.above", "Head of the first plumb line up to pole centre"},
                              {"pole.above.left", "Springing up to pole centre, left"},
                              {"pole.above.centre", "Crown up to pole centre"},
                              {"pole.above.right", "Springing up to pole centre, right"},
                              {"pole.below", "Head of the first plumb line down to pole centre"},
                              {"pole.below.left", "Springing down to pole centre, left"},
                              {"pole.below.centre", "Crown down to pole centre"},
                              {"pole.below.right", "Springing down to pole centre, right"}};

constexpr Station arch_table[] = {
    {"opening.width.top", "Width at the springing", width, {}, F, F},
    {"opening.width.middle", "Width in the middle", width, {}, F, F},
    {"opening.width.bottom", "Width at the bottom", width, {}, F, F},
    {"opening.height.left", "Sill to springing, left", height, L, S, H},
    {"opening.height.centre", "Sill to crown", height, C, S, H},
    {"opening.height.right", "Sill to springing, right", height, R, S, H},
    {"arch.rise", "Springing line to crown", rise, {}, F, F},
};

NumberedStations arch_stations() {
    NumberedStations made;
    made.list.assign(std::begin(arch_table), std::end(arch_table));
    for (int n = 1; n <= most_ordinates; ++n) {
        made.add(along, n, numbered("ordinate.", n, ".along"),
                 numbered("Along the springing line from the left, to height ", n, ""));
        made.add(ordinate, n, numbered("ordinate.", n, ".height"),
                 numbered("Springing line up to the arch, height ", n, ""));
    }
    made.list.push_back({"opening.depth", "Depth of the reveal", depth, {}, F, F});
    add_surroundings(made.list, arch_says);
    return made;
}

constexpr Says gable_says[] = {{"above.left", "Foot of the slope to ceiling, left"},
                               {"above.centre", "Apex to ceiling"},
                               {"above.right", "Foot of the slope to ceiling, right"},
                               {"pole.above", "Head of the first plumb line up to pole centre"},
                               {"pole.above.left", "Foot of the slope up to pole centre, left"},
                               {"pole.above.centre", "Apex up to pole centre"},
                               {"pole.above.right", "Foot of the slope up to pole centre, right"},
                               {"pole.below", "Head of the first plumb line down to pole centre"},
                               {"pole.below.left", "Foot of the slope down to pole centre, left"},
                               {"pole.below.centre", "Apex down to pole centre"},
                               {"pole.below.right", "Foot of the slope down to pole centre, right"}};

constexpr Station gable_table[] = {
    {"opening.width.bottom", "Width at the bottom", width, {}, F, F},
    {"opening.width.middle", "Width in the middle", width, {}, F, F},
    {"opening.height.left", "Sill to foot of the slope, left", height, L, S, H},
    {"opening.height.centre", "Sill to apex", height, C, S, H},
    {"opening.height.right", "Sill to foot of the slope, right", height, R, S, H},
    {"gable.apex.along", "Left edge to the plumb line under the apex", along, {}, F, F},
    {"gable.slope.left", "Left foot of the slope to the apex", slope, {}, F, F},
    {"gable.slope.right", "Right foot of the slope to the apex", slope, {}, F, F},
    {"opening.depth", "Depth of the reveal", depth, {}, F, F},
};

NumberedStations gable_stations() {
    NumberedStations made;
    made.list.assign(std::begin(gable_table), std::end(gable_table));
    add_surroundings(made.list, gable_says);
    return made;
}

}  // namespace

const std::vector<Station>& stations_of(Shape shape) {
    static const std::vector<Station> door = door_stations();
    static const NumberedStations bay = bay_stations();
    static const NumberedStations arch = arch_stations();
    static const NumberedStations gable = gable_stations();
    static const NumberedStations corner = corner_stations();
    switch (shape) {
        case Shape::recess:
        case Shape::frame:
            break;
        case Shape::door:
            return door;
        case Shape::bay:
            return bay.list;
        case Shape::arch:
            return arch.list;
        case Shape::gable:
            return gable.list;
        case Shape::corner:
            return corner.list;
    }
    return recess_stations();
}

std::string station_words(const Station& station) { return worded(station.says); }

std::optional<Station> find_station(Shape shape, std::string_view word) {
    const auto& list = stations_of(shape);
    const auto found = std::ranges::find(list, word, &Station::word);
    return found == list.end() ? std::nullopt : std::optional(*found);
}

std::string stations_words(const std::vector<std::string>& words, Shape shape) {
    std::string text;
    for (const std::string& word : words) {
        const auto station = find_station(shape, word);
        text += (text.empty() ? "" : "; ") + (station ? station_words(*station) : word);
    }
    return text;
}

int facets_taken(const Window& window) {
    const auto shape = window.shape.known();
    int last = 0;
    if (shape == Shape::bay || shape == Shape::corner) {
        for (const Reading& reading : window.readings) {
            const auto station = find_station(*shape, reading.station);
            if (reading.value && station && (station->kind == facet || station->kind == facet_height)) {
                last = std::max(last, station->number);
            }
        }
    }
    return last;
}

std::optional<Line> line_of_facet(int number, int facets) {
    if (number == 1) {
        return Line::left;
    }
    if (number == facets) {
        return Line::right;
    }
    const bool middle = facets % 2 == 1 && number == (facets + 1) / 2;
    return middle ? std::optional(Line::centre) : std::nullopt;
}

void place_on_lines(Station& station, int facets) {
    if (station.kind == facet_height) {
        station.line = line_of_facet(station.number, facets);
        station.kind = station.line ? height : facet_height;
    }
}

}  // namespace truehang
