// SPDX-License-Identifier: Apache-2.0
#include "windows.h"

#include "sheet/snapping.h"
#include "survey/words.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <vector>

namespace truehang::test {
namespace {

Obstruction thing(const char* id, ObstructionKind kind, double left, double bottom, double width, double height) {
    Obstruction made;
    made.id = id;
    made.kind = Word<ObstructionKind>(kind);
    made.left = Length::mm(left);
    made.bottom = Length::mm(bottom);
    made.width = Length::mm(width);
    made.height = Length::mm(height);
    return made;
}

/// An opening 1200 wide, 1000 high, its sill 900 and its ceiling 2400 over the floor.
Survey plain_window() {
    return one_window(Shape::recess, {{"opening.width.top", 1200},
                                      {"opening.width.middle", 1200},
                                      {"opening.width.bottom", 1200},
                                      {"opening.height.left", 1000},
                                      {"opening.height.centre", 1000},
                                      {"opening.height.right", 1000},
                                      {"below.left", 900},
                                      {"below.centre", 900},
                                      {"below.right", 900},
                                      {"above.left", 500}});
}

Window& window_of(Survey& survey) { return survey.rooms.front().windows.front(); }

WindowOutline outline(const Survey& survey) {
    const Room& room = survey.rooms.front();
    return outline_of(room.windows.front(), work_out_window(survey, room, room.windows.front()));
}

struct Bounds {
    double left = std::numeric_limits<double>::max(), right = -left, top = left, bottom = -left;
    int strokes = 0;
};

Bounds bounds_of(const Elevation& elevation, const std::string& part) {
    Bounds bounds;
    for (const Stroke& stroke : elevation.strokes) {
        if (stroke.part != part) {
            continue;
        }
        ++bounds.strokes;
        for (const Point& point : stroke.points) {
            bounds.left = std::min(bounds.left, point.x);
            bounds.right = std::max(bounds.right, point.x);
            bounds.top = std::min(bounds.top, point.y);
            bounds.bottom = std::max(bounds.bottom, point.y);
        }
    }
    return bounds;
}

/// What a part looks like, in mm of its own box: two kinds that are drawn alike have the same.
std::string look_of(const Elevation& elevation, const std::string& part) {
    const Bounds bounds = bounds_of(elevation, part);
    std::string look;
    for (const Stroke& stroke : elevation.strokes) {
        if (stroke.part == part) {
            look += std::to_string(static_cast<int>(stroke.form)) + (stroke.filled ? "f" : "o");
            for (const Point& point : stroke.points) {
                look += " " + std::to_string(std::lround(point.x - bounds.left)) + "," +
                        std::to_string(std::lround(point.y - bounds.top));
            }
        }
    }
    return look;
}

Elevation from_the_side(const Survey& survey) {
    const Room& room = survey.rooms.front();
    const Window& window = room.windows.front();
    return side_view_of(survey, room, window, work_out_window(survey, room, window), {});
}

TEST(Obstructions, EachKindIsDrawnAsWhatItIsFromFrontAndSide) {
    std::set<std::string> front;
    std::set<std::string> side;
    for (const auto& [word, kind] : Words<ObstructionKind>::list) {
        Survey survey = plain_window();
        Obstruction one = thing("o", kind, 100, 200, 600, 600);
        one.depth = Length::mm(200);
        window_of(survey).obstructions = {one};
        front.insert(look_of(drawn(survey), "o"));
        side.insert(look_of(from_the_side(survey), "o"));
    }
    // As many looks as kinds: no two alike.
    EXPECT_EQ(front.size(), std::size(Words<ObstructionKind>::list));
    EXPECT_EQ(side.size(), std::size(Words<ObstructionKind>::list));
}

TEST(Obstructions, TheSideShowsHowFarTheyStandOut) {
    for (const auto& [word, kind] : Words<ObstructionKind>::list) {
        Survey survey = plain_window();
        Obstruction one = thing("o", kind, 100, 200, 150, 600);
        one.depth = Length::mm(200);
        window_of(survey).obstructions = {one};
        const Elevation elevation = from_the_side(survey);
        const Bounds bounds = bounds_of(elevation, "o");
        // Derived: the wall face is the drawing's zero, and nothing of it stands out further than its depth.
        EXPECT_NEAR(bounds.right, elevation.origin.x + 200 * elevation.scale, 0.5) << word;
        EXPECT_GE(bounds.left, elevation.origin.x - 0.5) << word;
    }
}

TEST(Obstructions, TheSideHasHardwareAndTheCurtainsHem) {
    Survey survey = read_survey(file_text("tests/reference/contract/survey.example.json")).value();
    const Elevation elevation = from_the_side(survey);
    EXPECT_GT(bounds_of(elevation, "hardware").strokes, 0);
    std::vector<double> levels;
    for (const Stroke& stroke : elevation.strokes) {
        if (stroke.part == "curtain" && stroke.points.front().y == stroke.points.back().y) {
            levels.push_back(stroke.points.front().y);
        }
    }
    // The house rules' hem: 150 mm over the lower edge.
    ASSERT_EQ(levels.size(), 2U);
    EXPECT_NEAR(std::abs(levels[0] - levels[1]), 150 * elevation.scale, 0.01);
}

TEST(Obstructions, StandOnAFloorThatSlopes) {
    // Derived: level lines 1000 over the floor at the left and 1024 at the right of an opening 1200 wide, so the floor
    // falls 20 per metre: under a thing whose middle is 900 from the left edge it lies 18 lower than at the left.
    Survey survey = plain_window();
    take(window_of(survey), "level.left", 1000);
    take(window_of(survey), "level.right", 1024);
    window_of(survey).obstructions = {thing("o", ObstructionKind::heater, 800, 100, 200, 300)};
    const Elevation elevation = drawn(survey);
    EXPECT_NEAR(bounds_of(elevation, "o").bottom, on_drawing(elevation, 0, 82).y, 0.5 * elevation.scale);
}

TEST(Elevation, ACeilingThatSlopesIsDrawnSloping) {
    // Derived: floor to ceiling 2400 at the left and 2430 at the right of an opening 1200 wide, floor taken as level.
    Survey survey = plain_window();
    window_of(survey).readings.pop_back();
    take(window_of(survey), "ceiling.left", 2400);
    take(window_of(survey), "ceiling.right", 2430);
    const Elevation elevation = drawn(survey);
    const auto ceiling = std::ranges::find(elevation.strokes, "ceiling", &Stroke::part);
    ASSERT_NE(ceiling, elevation.strokes.end());
    const Point from = ceiling->points.front();
    const Point to = ceiling->points.back();
    EXPECT_NEAR((from.y - to.y) / (to.x - from.x), 30.0 / 1200.0, 1e-6);
}

TEST(Snapping, BringsEdgesToTheOpening) {
    const Survey survey = plain_window();
    const ObstructionBox box{.left = 7, .bottom = 886, .width = 300, .height = 30};
    const SnapLines lines = snap_lines(survey.rooms[0].windows[0], outline(survey), box, "o");
    // Derived from the opening: its left edge at 0, its sill 900 over the floor; 7 and 14 mm are within the reach
    // of 20.
    const Placed placed = snapped(box, lines, 20.0, LengthUnit::mm);
    EXPECT_DOUBLE_EQ(placed.left, 0.0);
    EXPECT_DOUBLE_EQ(placed.bottom, 900.0);
    ASSERT_TRUE(placed.across && placed.up);
    EXPECT_EQ(placed.across->what, "the opening’s left edge");
    EXPECT_EQ(placed.up->what, "the sill");
}

TEST(Snapping, BringsTheOtherEdgeAndTheMiddleToo) {
    const Survey survey = plain_window();
    const auto placed = [&](const ObstructionBox& box) {
        return snapped(box, snap_lines(survey.rooms[0].windows[0], outline(survey), box, "o"), 20.0, LengthUnit::mm);
    };
    // Derived: the right edge of a thing 300 wide on the opening's, 1200; its middle on the opening's, 600; its upper
    // edge on the ceiling, 2400.
    EXPECT_DOUBLE_EQ(placed({.left = 911, .bottom = 0, .width = 300, .height = 30}).left, 900.0);
    EXPECT_DOUBLE_EQ(placed({.left = 441, .bottom = 0, .width = 300, .height = 30}).left, 450.0);
    EXPECT_DOUBLE_EQ(placed({.left = 441, .bottom = 2095, .width = 300, .height = 300}).bottom, 2100.0);
}

TEST(Snapping, RoundsToTheStepWhereNothingIsNear) {
    const Survey survey = plain_window();
    const ObstructionBox box{.left = 233.4, .bottom = 412.9, .width = 100, .height = 100};
    const SnapLines lines = snap_lines(survey.rooms[0].windows[0], outline(survey), box, "o");
    const Placed metric = snapped(box, lines, 10.0, LengthUnit::cm);
    EXPECT_DOUBLE_EQ(metric.left, 235.0);
    EXPECT_DOUBLE_EQ(metric.bottom, 415.0);
    EXPECT_FALSE(metric.across || metric.up);
    // Derived: a quarter of the inch of 25.4 mm is 6.35 mm; 37 and 65 of them.
    const Placed inches = snapped(box, lines, 10.0, LengthUnit::in);
    EXPECT_NEAR(inches.left, 37 * 6.35, 1e-9);
    EXPECT_NEAR(inches.bottom, 65 * 6.35, 1e-9);
}

TEST(Snapping, ToOthersInTheWayButNeverToItself) {
    Survey survey = plain_window();
    window_of(survey).obstructions = {thing("r", ObstructionKind::radiator, 100, 150, 1003, 600),
                                      thing("o", ObstructionKind::switch_, 300, 1000, 85, 85)};
    const ObstructionBox box{.left = 1106, .bottom = 760, .width = 85, .height = 85};
    const SnapLines lines = snap_lines(window_of(survey), outline(survey), box, "o");
    // Derived: the radiator ends at 1103 and its upper edge lies 750 over the floor.
    const Placed placed = snapped(box, lines, 12.0, LengthUnit::mm);
    EXPECT_DOUBLE_EQ(placed.left, 1103.0);
    EXPECT_DOUBLE_EQ(placed.bottom, 750.0);
    EXPECT_EQ(placed.up->what, "the radiator");
    const ObstructionBox where_it_was{.left = 303, .bottom = 1003, .width = 85, .height = 85};
    EXPECT_FALSE(
        snapped(where_it_was, snap_lines(window_of(survey), outline(survey), where_it_was, "o"), 12.0, LengthUnit::mm)
            .across);
}

TEST(Snapping, WhatWasNotMeasuredIsNoLine) {
    const Survey survey = one_window(Shape::recess, {{"opening.width.top", 1200}});
    const SnapLines lines = snap_lines(survey.rooms[0].windows[0], outline(survey), {.width = 10, .height = 10}, "o");
    for (const SnapLine& line : lines.up) {
        EXPECT_EQ(line.what, "the floor");
    }
}

TEST(Snapping, NeverBelowTheFloorNorBeyondWhatADocumentHolds) {
    const Placed placed = snapped({.left = -1e9, .bottom = -500, .width = 10, .height = 10}, {}, 10, LengthUnit::mm);
    EXPECT_DOUBLE_EQ(placed.bottom, 0.0);
    EXPECT_GE(placed.left, -100'000.0);
}

}  // namespace
}  // namespace truehang::test
