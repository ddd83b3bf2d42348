// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// A drawing as plain strokes and labels in a target rectangle, for whoever draws it: the phone's item, a page's SVG, a
// printer. Coordinates are target units (px or mm), x to the right, y down, (0, 0) the target's top left corner.

namespace truehang {

struct Point {
    double x = 0.0;
    double y = 0.0;
    friend bool operator==(Point, Point) = default;
};

/// What a stroke or label is for; the drawer knows the colour of each.
enum class Role {
    ink,        ///< what is there, measured or chosen; solid
    hairline,   ///< the finer lines of it: glazing bars, fins, folds, hatch
    guess,      ///< not measured yet: dashed, in the hairline's colour
    dimension,  ///< a tape's run that was measured; the hairline's colour
    guide,      ///< dotted, from a tape's run back to the edges that it is taken from
    thread,     ///< the tape being measured, and what doesn't close
    wash,       ///< filled with the wash (glass), without a line
    paper,      ///< filled with paper, so that what hangs in front hides what is behind; without a line
};
[[nodiscard]] std::string_view word_of(Role role);

enum class Form { line, polyline, polygon, circle };

/// One stroke. Strokes are drawn in their order.
struct Stroke {
    Form form = Form::line;
    Role role = Role::ink;
    std::vector<Point> points{};  ///< line: two; polyline: open; polygon: closed by itself; circle: its centre
    double radius = 0.0;          ///< of a circle
    double width = 1.0;           ///< of the line, in target units; 0: no line
    bool filled = false;          ///< filled with its role's colour (`wash` and `paper` always are)
    std::string part{};           ///< what it is part of: opening, glazing, sill, floor, ceiling, hardware, curtain, an
                                  ///< obstruction's id, …
    std::string station{};        ///< the station whose tape it is, else empty
    std::string fill{};           ///< `#rrggbb` in place of its role's colour, of what is filled
    std::string over{};           ///< the cloth, `#rrggbb`, that a line lies on: `line_over` says what it is drawn with
};

/// One label. `box` is the room it takes, halo included; text is drawn from `at`, the left end of its baseline, over a
/// halo of paper. Labels come after all strokes.
struct Label {
    std::string text{};
    Point at{};
    double size = 16.0;
    bool bold = false;
    Role role = Role::ink;  ///< ink or thread
    std::string station{};  ///< else empty
    double left = 0.0, top = 0.0, right = 0.0, bottom = 0.0;
};

/// Where the tape of one station runs on the drawing, measured or not: what a tap is matched with.
struct TapeRun {
    std::string station;
    std::string says;           ///< accessible: "Sill to head, left: 1130", "…: not measured yet"
    std::array<Point, 2> run;   ///< where its tape is drawn
    std::array<Point, 2> edge;  ///< the marks that it is taken between
    bool measured = false;
};

/// A window drawn to scale.
struct Elevation {
    double width = 0.0, height = 0.0;  ///< the target
    double scale = 1.0;                ///< target units to a millimetre, the same along and up
    Point origin;                      ///< where the opening's left edge stands over the floor
    std::vector<Stroke> strokes;
    std::vector<Label> labels;
    std::vector<TapeRun> runs;
    std::string title;        ///< "Parlour, south window"
    std::string description;  ///< one or two sentences of what is drawn, and what of it is a guess
    bool guessed = false;     ///< something that is drawn wasn't measured
};

/// The station whose tape or marks lie within `radius` of (x, y): the nearest for `nth` 0, the next one near for 1, and
/// so on round again, so that a second tap on the same spot picks the next. None where nothing is near.
[[nodiscard]] std::optional<std::string> station_near(const Elevation& elevation, double x, double y,
                                                      double radius = 24.0, int nth = 0);

/// Two drawings in the same units, the second under the first.
[[nodiscard]] Elevation stacked(Elevation above, const Elevation& below);

/// How far `point` lies from the segment a-b.
[[nodiscard]] double distance_to(Point point, Point a, Point b);

}  // namespace truehang
