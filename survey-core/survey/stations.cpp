// SPDX-License-Identifier: Apache-2.0
#include "survey/stations.h"

#include <algorithm>
#include <iterator>

namespace truehang {

std::string_view word_of(Line line) {
    switch (line) {
        case Line::left:
            return "left";
        case Line::centre:
            return "centre";
        case Line::right:
            break;
    }
    return "right";
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

bool hangs_inside(const Layer& layer) {
    return layer.treatment && layer.treatment->heading && layer.treatment->heading->is(Heading::roman) &&
           !(layer.treatment->fit && layer.treatment->fit->is(Fit::outside));
}

/// The walk of a window before anything was taken: one plumb line whole, the other's parts, and what the pole needs.
std::vector<std::string_view> asked_of(const Window& window, bool is_door) {
    const bool outside = window.layers.empty() || !std::ranges::all_of(window.layers, hangs_inside);
    const bool inside = std::ranges::any_of(window.layers, hangs_inside);
    std::vector<std::string_view> words{"opening.width.top", "opening.width.middle", "opening.width.bottom"};
    if (inside) {
        words.insert(words.end(),
                     {"opening.height.left", "opening.height.centre", "opening.height.right", "opening.depth"});
    }
    if (outside) {
        if (!is_door) {
            words.push_back("below.left");
        }
        words.insert(words.end(), {"opening.height.left", "above.left", "ceiling.left"});
        if (!is_door) {
            words.push_back("below.right");
        }
        words.insert(words.end(), {"opening.height.right", "pole.above", "wall.left", "wall.right"});
    }
    return words;
}

}  // namespace

const std::vector<Station>& stations_of(Shape shape) {
    static const std::vector<Station> door = door_stations();
    static const std::vector<Station> none;
    switch (shape) {
        case Shape::recess:
        case Shape::frame:
            return recess_stations();
        case Shape::door:
            return door;
        default:
            return none;
    }
}

std::optional<Station> find_station(Shape shape, std::string_view word) {
    const auto& list = stations_of(shape);
    const auto found = std::ranges::find(list, word, &Station::word);
    return found == list.end() ? std::nullopt : std::optional(*found);
}

std::vector<Station> walk_of(const Window& window) {
    const auto shape = window.shape.known();
    std::vector<Station> walk;
    if (!shape) {
        return walk;
    }
    const auto add = [&](std::string_view word) {
        const auto station = find_station(*shape, word);
        if (station && std::ranges::find(walk, station->word, &Station::word) == walk.end()) {
            walk.push_back(*station);
        }
    };
    for (const auto word : asked_of(window, *shape == Shape::door)) {
        add(word);
    }
    for (const Reading& reading : window.readings) {
        add(reading.station);
    }
    return walk;
}

std::optional<Station> next_in_walk(const Window& window) {
    for (const Station& station : walk_of(window)) {
        const bool settled =
            std::ranges::find(window.readings, station.word, &Reading::station) != window.readings.end() ||
            std::ranges::find(window.not_taken, station.word, &NotTaken::station) != window.not_taken.end();
        if (!settled) {
            return station;
        }
    }
    return std::nullopt;
}

}  // namespace truehang
