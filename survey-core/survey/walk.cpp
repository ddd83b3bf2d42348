// SPDX-License-Identifier: Apache-2.0
#include "survey/stations.h"

#include <algorithm>

namespace truehang {

namespace {

bool hangs_inside(const Layer& layer) {
    return layer.treatment && layer.treatment->heading && layer.treatment->heading->is(Heading::roman) &&
           !(layer.treatment->fit && layer.treatment->fit->is(Fit::outside));
}

using Words = std::vector<std::string>;

void append(Words& words, const Words& more) { words.insert(words.end(), more.begin(), more.end()); }

/// The walk of an upright rectangular opening: one plumb line whole, the other's parts, and what the pole needs.
Words asked_of_opening(const Window& window, bool is_door) {
    const bool outside = window.layers.empty() || !std::ranges::all_of(window.layers, hangs_inside);
    const bool inside = std::ranges::any_of(window.layers, hangs_inside);
    Words words{"opening.width.top", "opening.width.middle", "opening.width.bottom"};
    if (inside) {
        append(words, {"opening.height.left", "opening.height.centre", "opening.height.right", "opening.depth"});
    }
    if (outside) {
        if (!is_door) {
            words.emplace_back("below.left");
        }
        append(words, {"opening.height.left", "above.left", "ceiling.left"});
        if (!is_door) {
            words.emplace_back("below.right");
        }
        append(words, {"opening.height.right", "pole.above", "wall.left", "wall.right"});
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
    append(words, {"pole.above", "wall.left", "wall.right"});
    return words;
}

Words asked_of_arch() {
    return {"opening.width.top",
            "opening.width.bottom",
            "below.left",
            "opening.height.left",
            "below.centre",
            "opening.height.centre",
            "arch.rise",
            "above.centre",
            "ceiling.centre",
            "below.right",
            "opening.height.right",
            "pole.above.centre",
            "wall.left",
            "wall.right"};
}

Words asked_of_gable() {
    return {
        "opening.width.bottom",  "below.left",        "opening.height.left", "gable.apex.along", "below.centre",
        "opening.height.centre", "above.centre",      "ceiling.centre",      "below.right",      "opening.height.right",
        "gable.slope.left",      "gable.slope.right", "pole.above.centre",   "wall.left",        "wall.right"};
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
            return asked_of_arch();
        case Shape::gable:
            return asked_of_gable();
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
