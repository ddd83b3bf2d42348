// SPDX-License-Identifier: Apache-2.0
#include "survey/stations.h"

#include <algorithm>

namespace truehang {

namespace {

bool hangs_inside(const Layer& layer) {
    return layer.treatment && layer.treatment->heading && layer.treatment->heading->is(Heading::roman) &&
           !(layer.treatment->fit && layer.treatment->fit->is(Fit::outside));
}

bool hangs_outside(const Layer& layer) { return !hangs_inside(layer); }

/// Where its hem ends at or near the floor, or is given from it; the floor's height matters at each line then.
bool reaches_floor(const Layer& layer) {
    const auto& length = layer.treatment ? layer.treatment->length : std::nullopt;
    return hangs_outside(layer) && !(length && (length->is(HemAt::sill) || length->is(HemAt::below_sill)));
}

bool hangs_from_ceiling(const Layer& layer) {
    return layer.hardware && layer.hardware->hang && layer.hardware->hang->is(Hang::ceiling);
}

/// A pole outside the opening passes its edges: once its length is chosen, the wall beside them matters.
bool passes_edges(const Layer& layer) {
    return hangs_outside(layer) && layer.hardware && layer.hardware->length.has_value();
}

using Words = std::vector<std::string>;

void append(Words& words, const Words& more) { words.insert(words.end(), more.begin(), more.end()); }

void append_walls(Words& words, const Window& window) {
    if (std::ranges::any_of(window.layers, passes_edges)) {
        append(words, {"wall.left", "wall.right"});
    }
}

/// Across, up the three plumb lines from the left (the first with the ceiling, so that a loop closes), then the pole.
Words asked_outside(const Window& window, bool is_door) {
    const auto& layers = window.layers;
    const bool floor = !is_door && (layers.empty() || std::ranges::any_of(layers, reaches_floor));
    Words words{"opening.width.top", "opening.width.middle", "opening.width.bottom"};
    if (!is_door) {
        words.emplace_back("below.left");
    }
    append(words, {"opening.height.left", "above.left", "ceiling.left"});
    for (const char* line : {"centre", "right"}) {
        if (floor) {
            words.push_back(std::string("below.") + line);
        }
        words.push_back(std::string("opening.height.") + line);
    }
    const bool ceiling =
        std::ranges::any_of(layers, hangs_outside) && std::ranges::all_of(layers, [](const Layer& layer) {
            return hangs_inside(layer) || hangs_from_ceiling(layer);
        });
    words.emplace_back(ceiling ? "pole.ceiling" : "pole.above");
    append_walls(words, window);
    return words;
}

/// The walk of an upright rectangular opening. Diagonals and depth matter to a blind that has to fit inside.
Words asked_of_opening(const Window& window, bool is_door) {
    Words words;
    if (std::ranges::any_of(window.layers, hangs_inside)) {
        append(words, {"opening.width.top", "opening.width.middle", "opening.width.bottom", "opening.height.left",
                       "opening.height.centre", "opening.height.right", "opening.diagonal.rising",
                       "opening.diagonal.falling", "opening.depth"});
    }
    if (window.layers.empty() || std::ranges::any_of(window.layers, hangs_outside)) {
        append(words, asked_outside(window, is_door));
    }
    return words;
}

std::string numbered(std::string_view before, int number, std::string_view after) {
    return std::string(before) + std::to_string(number) + std::string(after);
}

/// Round the bay from left to right, across its mouth, then up.
Words asked_of_facets(const Window& window, const char* chord) {
    const int facets = facets_asked(window);
    Words words;
    for (int n = 1; n <= facets; ++n) {
        words.push_back(numbered("facet.", n, ".width"));
    }
    for (int n = 1; n < facets; ++n) {
        words.push_back(numbered("corner.", n, ".angle_deg"));
    }
    append(words, {chord, "below.left", "facet.1.height", "above.left", "ceiling.left"});
    for (int n = 2; n < facets; ++n) {
        words.push_back(numbered("facet.", n, ".height"));
    }
    if (facets > 1) {
        append(words, {"below.right", numbered("facet.", facets, ".height")});
    }
    words.emplace_back("pole.above");
    append_walls(words, window);
    return words;
}

Words asked_of_arch(const Window& window) {
    Words words{"opening.width.top",   "opening.width.bottom", "below.left",
                "opening.height.left", "below.centre",         "opening.height.centre",
                "arch.rise",           "above.centre",         "ceiling.centre",
                "below.right",         "opening.height.right", "pole.above.centre"};
    append_walls(words, window);
    return words;
}

Words asked_of_gable(const Window& window) {
    Words words{
        "opening.width.bottom",  "below.left",        "opening.height.left", "gable.apex.along", "below.centre",
        "opening.height.centre", "above.centre",      "ceiling.centre",      "below.right",      "opening.height.right",
        "gable.slope.left",      "gable.slope.right", "pole.above.centre"};
    append_walls(words, window);
    return words;
}

/// The walk of a window before anything was taken.
Words asked_of(const Window& window, Shape shape) {
    switch (shape) {
        case Shape::recess:
        case Shape::frame:
        case Shape::door:
            break;
        case Shape::bay:
            return asked_of_facets(window, "bay.chord");
        case Shape::corner:
            return asked_of_facets(window, "corner.chord");
        case Shape::arch:
            return asked_of_arch(window);
        case Shape::gable:
            return asked_of_gable(window);
    }
    return asked_of_opening(window, shape == Shape::door);
}

}  // namespace

int facets_asked(const Window& window) {
    const auto shape = window.shape.known();
    if (shape != Shape::bay) {
        return shape == Shape::corner ? 2 : 0;
    }
    const int taken = facets_taken(window);
    int facets = std::max(3, taken);
    while (facets > std::max(1, taken) && std::ranges::find(window.not_taken, numbered("facet.", facets, ".width"),
                                                            &NotTaken::station) != window.not_taken.end()) {
        --facets;
    }
    return facets;
}

std::vector<Station> walk_of(const Window& window) {
    const auto shape = window.shape.known();
    std::vector<Station> walk;
    if (!shape) {
        return walk;
    }
    const int facets = std::max(facets_taken(window), facets_asked(window));
    const auto add = [&](std::string_view word) {
        auto station = find_station(*shape, word);
        if (station && std::ranges::find(walk, station->word, &Station::word) == walk.end()) {
            place_on_lines(*station, facets);
            walk.push_back(*station);
        }
    };
    for (const std::string& word : asked_of(window, *shape)) {
        add(word);
    }
    for (const Reading& reading : window.readings) {
        add(reading.station);
    }
    return walk;
}

bool is_settled(const Window& window, std::string_view station) {
    return std::ranges::find(window.readings, station, &Reading::station) != window.readings.end() ||
           std::ranges::find(window.not_taken, station, &NotTaken::station) != window.not_taken.end();
}

std::optional<Station> next_in_walk(const Window& window) {
    for (const Station& station : walk_of(window)) {
        if (!is_settled(window, station.word)) {
            return station;
        }
    }
    return std::nullopt;
}

}  // namespace truehang
