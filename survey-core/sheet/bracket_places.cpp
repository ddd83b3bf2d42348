// SPDX-License-Identifier: Apache-2.0
#include "sheet/bracket_places.h"

#include "sheet/hardware_drawing.h"
#include "units/saying.h"

#include <algorithm>
#include <cmath>

namespace truehang {

namespace {

/// The plumb lines where a mark's height is known: where each stands and how high the mark is there.
std::vector<std::pair<double, double>> known_heights(const WindowFigures& figures, const WindowOutline& outline,
                                                     std::string_view mark) {
    std::vector<std::pair<double, double>> known;
    for (const Line line : all_lines) {
        if (const auto height = size_mm(figures, std::string(mark) + "." + std::string(word_of(line)))) {
            known.emplace_back(outline.x_of(line), *height);
        }
    }
    return known;
}

std::vector<Length> places_along(const Hardware& hardware, Length length) {
    if (!hardware.bracket_at.empty()) {
        return hardware.bracket_at;
    }
    std::vector<Length> places{Length(), length};
    if (hardware.brackets.value_or(2) >= 3) {
        places.insert(places.begin() + 1, length / 2.0);
    }
    return places;
}

std::string name_of(std::size_t index, std::size_t count, bool chosen) {
    if (chosen) {
        return say("Bracket {}", index + 1);
    }
    return index == 0 ? say("Left end") : index + 1 == count ? say("Right end") : say("Middle");
}

}  // namespace

std::optional<Length> height_at(const WindowFigures& figures, const WindowOutline& outline, std::string_view mark,
                                Length x) {
    const auto known = known_heights(figures, outline, mark);
    if (known.size() < 2) {
        const bool there = known.size() == 1 && std::abs(known[0].first - x.mm()) < 1.0;
        return there ? std::optional(Length::mm(known[0].second)) : std::nullopt;
    }
    std::size_t left = 0;
    while (left + 2 < known.size() && x.mm() > known[left + 1].first) {
        ++left;
    }
    const auto& [x0, y0] = known[left];
    const auto& [x1, y1] = known[left + 1];
    const double run = x1 - x0;
    return Length::mm(std::abs(run) < 1.0 ? y0 : y0 + (y1 - y0) * (x.mm() - x0) / run);
}

BracketRow bracket_row(const Layer& layer, const WindowFigures& figures, const WindowOutline& outline) {
    BracketRow row;
    if (!layer.hardware || !layer.hardware->length || !(outline.width_known || layer.hardware->left)) {
        return row;
    }
    const Hardware& hardware = *layer.hardware;
    row.chosen = !hardware.bracket_at.empty();
    const HardwareRun run = hardware_run(outline, layer);
    row.left = Length::mm(run.left);
    row.right = Length::mm(run.right);
    const auto places = places_along(hardware, *hardware.length);
    for (std::size_t i = 0; i < places.size(); ++i) {
        BracketPlace place{
            .name = name_of(i, places.size(), row.chosen), .along = places[i], .x = row.left + places[i]};
        place.floor = height_at(figures, outline, "pole", place.x);
        const auto ceiling = height_at(figures, outline, "ceiling", place.x);
        if (place.floor && ceiling) {
            place.ceiling = *ceiling - *place.floor;
        }
        row.places.push_back(std::move(place));
    }
    for (const Size& size : figures.sizes) {
        row.u = size.name.starts_with("pole.") ? std::max(row.u, size.u) : row.u;
    }
    return row;
}

}  // namespace truehang
