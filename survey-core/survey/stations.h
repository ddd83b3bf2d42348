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
    depth,         ///< of the recess
    wall,          ///< along the wall at pole height
    height,        ///< between two marks of one plumb line
    projection,    ///< out from the wall face
    angle,         ///< inside, between two facets or between a facet and the mouth
    facet,         ///< width of one facet of a bay or corner, along the glass
    facet_height,  ///< sill to head in the middle of a facet where no plumb line stands
    chord,         ///< straight across the mouth, outer edge to outer edge
    corner_depth,  ///< from the chord, square to it, to a corner
    rise,          ///< of an arch: springing line to crown
    along,         ///< along the springing line or the bottom edge, from the left
    ordinate,      ///< from the springing line up to the arch
    slope,         ///< of a gable: foot of the slope to the apex
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
    int number = 0;                     ///< of a facet, corner or ordinate, from 1; 0 where the word has none

    [[nodiscard]] bool is_angle() const { return kind == StationKind::angle; }
};

/// What a station runs between, in the language in force.
[[nodiscard]] std::string station_words(const Station& station);

/// How many facets, corners and ordinates have stations; a bay with more is refused.
inline constexpr int most_facets = 9;
inline constexpr int most_corners = most_facets - 1;
inline constexpr int most_ordinates = 9;

/// The station that `word` names on this shape, or nothing. On a door `opening.height.*` runs from the floor and
/// `below.*` isn't there. A `facet.N.height` that it gives has the kind `facet_height` and no plumb line: which facets
/// have one depends on the window (`place_on_lines`).
[[nodiscard]] std::optional<Station> find_station(Shape shape, std::string_view word);

/// The stations of these words, each by what it runs between, with semicolons; a word without a station as it is.
[[nodiscard]] std::string stations_words(const std::vector<std::string>& words, Shape shape);

/// Every station of a shape, in the contract's order.
[[nodiscard]] const std::vector<Station>& stations_of(Shape shape);

/// The last facet of a bay or corner that has a reading (width, height); 0 where none has.
[[nodiscard]] int facets_taken(const Window& window);

/// The facets that a walk asks for: of a bay 3, or as many as have readings where those are more, less the last ones
/// whose width stands among what can't be taken; of a corner 2; of other shapes none.
[[nodiscard]] int facets_asked(const Window& window);

/// The plumb line that stands in the middle of a facet, of so many: left at facet 1, right at the last, centre at the
/// middle one where their number is odd and 3 or more; none at the others.
[[nodiscard]] std::optional<Line> line_of_facet(int facet, int facets);

/// Gives a `facet.N.height` its plumb line and the kind `height` where one stands there; leaves other stations alone.
void place_on_lines(Station& station, int facets);

/// The stations a surveyor is walked through for this window, in the order in which a person on the spot takes them:
/// across, up, round, then the hardware; only what the window's treatment asks for, plus what was taken already.
[[nodiscard]] std::vector<Station> walk_of(const Window& window);

/// Whether a station has a reading, or a reason why it can't be taken.
[[nodiscard]] bool is_settled(const Window& window, std::string_view station);

/// The first station of the walk that has neither a reading nor a reason why it can't be taken.
[[nodiscard]] std::optional<Station> next_in_walk(const Window& window);

}  // namespace truehang
