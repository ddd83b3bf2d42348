// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "survey/survey.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace truehang {

/// The three plumb lines of an upright opening.
enum class Line { left, centre, right };
inline constexpr std::array<Line, 3> all_lines{Line::left, Line::centre, Line::right};
[[nodiscard]] std::string_view word_of(Line line);

/// What a station's tape runs along.
enum class StationKind {
    width,  ///< across the opening, edge to edge
    diagonal,
    depth,       ///< of the recess
    wall,        ///< along the wall at pole height
    height,      ///< between two marks of one plumb line
    projection,  ///< out from the wall face
    angle,
};

/// The marks of a plumb line.
enum class PlumbMark { floor, sill, head, ceiling, pole, level };
[[nodiscard]] std::string_view word_of(PlumbMark mark);

/// One station of the contract. A station is added here, and nowhere else is its word spelt.
struct Station {
    std::string_view word;  ///< as `opening.height.left`
    std::string_view says;  ///< what it runs between, in the trade's words: "Sill to head, left"
    StationKind kind = StationKind::width;
    std::optional<Line> line;           ///< of a height; none where the word has no line (`pole.above`)
    PlumbMark from = PlumbMark::floor;  ///< of a height: lower mark
    PlumbMark to = PlumbMark::floor;    ///< of a height: upper mark
};

/// The station that `word` names on this shape, or nothing. On a door `opening.height.*` runs from the floor and
/// `below.*` isn't there.
[[nodiscard]] std::optional<Station> find_station(Shape shape, std::string_view word);

/// Every station of a shape, in the contract's order. Empty for shapes that this version can't work.
[[nodiscard]] const std::vector<Station>& stations_of(Shape shape);

/// The stations a surveyor is walked through for this window, in the order in which a person on the spot takes them:
/// across, up, round, then the hardware; only what the window's treatment asks for, plus what was taken already.
[[nodiscard]] std::vector<Station> walk_of(const Window& window);

/// The first station of the walk that has neither a reading nor a reason why it can't be taken.
[[nodiscard]] std::optional<Station> next_in_walk(const Window& window);

}  // namespace truehang
