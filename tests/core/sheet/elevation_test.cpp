// SPDX-License-Identifier: Apache-2.0
#include "windows.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <vector>

namespace truehang::test {
namespace {

std::vector<const Stroke*> strokes_of(const Elevation& elevation, const std::string& part) {
    std::vector<const Stroke*> found;
    for (const Stroke& stroke : elevation.strokes) {
        if (stroke.part == part) {
            found.push_back(&stroke);
        }
    }
    return found;
}

bool has_corner(const Elevation& elevation, const std::string& part, Point wanted) {
    for (const Stroke* stroke : strokes_of(elevation, part)) {
        for (const Point& point : stroke->points) {
            if (std::hypot(point.x - wanted.x, point.y - wanted.y) < 0.5) {
                return true;
            }
        }
    }
    return false;
}

const TapeRun& run_of(const Elevation& elevation, const std::string& station) {
    const auto found = std::ranges::find(elevation.runs, station, &TapeRun::station);
    EXPECT_NE(found, elevation.runs.end()) << station;
    return *found;
}

const Label* label_of(const Elevation& elevation, const std::string& station) {
    const auto found = std::ranges::find(elevation.labels, station, &Label::station);
    return found == elevation.labels.end() ? nullptr : &*found;
}

TEST(Elevation, KeepsTheOpeningsProportion) {
    // Derived: similar figures, a 1240 × 1130 opening's sides stand as 1240 to 1130 at any scale.
    const Survey survey = one_window(Shape::recess, {{"opening.width.top", 1240},
                                                     {"opening.width.bottom", 1240},
                                                     {"opening.height.left", 1130},
                                                     {"opening.height.right", 1130},
                                                     {"below.left", 860}});
    for (const auto& [width, height] : {std::pair{320.0, 280.0}, {600.0, 240.0}, {180.0, 500.0}, {1400.0, 900.0}}) {
        ElevationOptions options;
        options.width = width;
        options.height = height;
        const Elevation elevation = drawn(survey, options);
        double left = 1e9, right = -1e9, top = 1e9, bottom = -1e9;
        for (const Stroke* stroke : strokes_of(elevation, "opening")) {
            for (const Point& point : stroke->points) {
                left = std::min(left, point.x);
                right = std::max(right, point.x);
                top = std::min(top, point.y);
                bottom = std::max(bottom, point.y);
            }
        }
        EXPECT_GT(right - left, 20.0);
        EXPECT_NEAR((right - left) * 1130.0 / 1240.0, bottom - top, 0.5);
        EXPECT_NEAR((right - left) / elevation.scale, 1240.0, 0.5 / elevation.scale);
    }
}

TEST(Elevation, IsCrookedWhereTheWindowIs) {
    // Derived from the stations' definitions: the level line stands 1000 over the floor at the left and 1012 at the
    // right, so the floor falls 12; sill and head stand over the floor of their own line; the top is 60 wider than the
    // bottom and nothing says to which side, so 30 to each.
    const Survey survey = one_window(Shape::recess, {{"opening.width.top", 1260},
                                                     {"opening.width.bottom", 1200},
                                                     {"opening.height.left", 1130},
                                                     {"opening.height.right", 1150},
                                                     {"below.left", 860},
                                                     {"below.right", 860},
                                                     {"level.left", 1000},
                                                     {"level.right", 1012}});
    const Elevation elevation = drawn(survey);
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 0, 860)));
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 1200, 848)));
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, -30, 1990)));
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 1230, 1998)));
    const Stroke& floor = *strokes_of(elevation, "floor").front();
    const double fall =
        (floor.points.back().y - floor.points.front().y) / (floor.points.back().x - floor.points.front().x);
    EXPECT_NEAR(fall, 12.0 / 1230.0, 12.0 / 1230.0 * 0.05);
}

TEST(Elevation, DrawsTheFloorLevelWithoutALevelLine) {
    const Survey survey = one_window(Shape::recess, {{"opening.width.top", 1200},
                                                     {"below.left", 860},
                                                     {"below.right", 900},
                                                     {"opening.height.left", 1100},
                                                     {"opening.height.right", 1100}});
    const Elevation elevation = drawn(survey);
    const Stroke& floor = *strokes_of(elevation, "floor").front();
    EXPECT_DOUBLE_EQ(floor.points.front().y, floor.points.back().y);
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 1200, 900)));
}

TEST(Elevation, LeansAsTheDiagonalsSay) {
    // Derived (Pythagoras): a parallelogram 1200 wide, 1000 high, its top 60 to the right, has diagonals
    // √(1260² + 1000²) and √(1140² + 1000²).
    const Survey survey = one_window(Shape::recess, {{"opening.width.top", 1200},
                                                     {"opening.width.bottom", 1200},
                                                     {"opening.height.left", 1000},
                                                     {"opening.height.right", 1000},
                                                     {"below.left", 800},
                                                     {"opening.diagonal.rising", std::hypot(1260.0, 1000.0)},
                                                     {"opening.diagonal.falling", std::hypot(1140.0, 1000.0)}});
    const Elevation elevation = drawn(survey);
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 60, 1800)));
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 1260, 1800)));
}

TEST(Elevation, StandsThingsWhereTheyWereMeasured) {
    // The contract's example: pole centre 2070 over the floor, 1720 long about an opening whose top is 1242 wide and
    // whose bottom is 1238; radiator 120 from the left edge, 1000 wide, 150 to 750 over the floor.
    const Elevation elevation = drawn(contract_example());
    EXPECT_TRUE(has_corner(elevation, "hardware", on_drawing(elevation, 619.0 - 860.0, 2070)));
    EXPECT_TRUE(has_corner(elevation, "hardware", on_drawing(elevation, 619.0 + 860.0, 2070)));
    EXPECT_TRUE(has_corner(elevation, "r1", on_drawing(elevation, 120, 150)));
    EXPECT_TRUE(has_corner(elevation, "r1", on_drawing(elevation, 1120, 750)));
    EXPECT_FALSE(elevation.guessed);
    for (const Stroke& stroke : elevation.strokes) {
        EXPECT_NE(stroke.role, Role::guess) << stroke.part;
    }
}

TEST(Elevation, HangsTheCurtainsWhereTheyWillHang) {
    // The contract's example: finished drop 1992 on tabs that hang 68.01 under the pole's centre at 2070, two of 860.
    ElevationOptions options;
    options.drawn = Drawn::shut;
    const Elevation elevation = drawn(contract_example(), options);
    const double left = 619.0 - 860.0;
    EXPECT_TRUE(has_corner(elevation, "curtain", on_drawing(elevation, left, 2070 - 68.01)));
    EXPECT_TRUE(has_corner(elevation, "curtain", on_drawing(elevation, left, 2070 - 68.01 - 1992)));
    EXPECT_TRUE(has_corner(elevation, "curtain", on_drawing(elevation, left + 860, 2070 - 68.01)));
    EXPECT_TRUE(has_corner(elevation, "curtain", on_drawing(elevation, left + 1720, 2070 - 68.01 - 1992)));
}

TEST(Elevation, ShowsAPlainGuessBeforeAnythingIsMeasured) {
    for (const Shape shape : {Shape::recess, Shape::frame, Shape::door}) {
        const Elevation elevation = drawn(one_window(shape, {}));
        EXPECT_TRUE(elevation.guessed);
        EXPECT_NE(elevation.description.find("dashed"), std::string::npos);
        EXPECT_TRUE(elevation.labels.empty());
        for (const Stroke* stroke : strokes_of(elevation, "opening")) {
            EXPECT_NE(stroke->role, Role::ink);
        }
        for (const TapeRun& run : elevation.runs) {
            EXPECT_FALSE(run.measured);
            EXPECT_NE(run.says.find("not measured yet"), std::string::npos);
        }
    }
}

TEST(Elevation, GrowsEdgeByEdge) {
    const auto has_ink = [](const Elevation& elevation) {
        return std::ranges::count_if(strokes_of(elevation, "opening"),
                                     [](const Stroke* stroke) { return stroke->role == Role::ink; });
    };
    EXPECT_EQ(has_ink(drawn(one_window(Shape::recess, {}))), 0);
    EXPECT_EQ(has_ink(drawn(one_window(Shape::recess, {{"opening.width.top", 1200}}))), 1);
    EXPECT_EQ(has_ink(drawn(one_window(Shape::recess, {{"opening.width.top", 1200}, {"opening.height.left", 1100}}))),
              3);
}

TEST(Elevation, DrawsTheStationBeingMeasuredInThread) {
    ElevationOptions options;
    options.active_station = "opening.height.left";
    options.typed = "11";
    const Elevation elevation = drawn(contract_example(), options);
    const Label* label = label_of(elevation, "opening.height.left");
    ASSERT_NE(label, nullptr);
    EXPECT_EQ(label->text, "11");
    EXPECT_EQ(label->role, Role::thread);
    const TapeRun& run = run_of(elevation, "opening.height.left");
    const bool drawn_in_thread = std::ranges::any_of(elevation.strokes, [&](const Stroke& stroke) {
        return stroke.role == Role::thread && stroke.points == std::vector<Point>{run.run[0], run.run[1]};
    });
    EXPECT_TRUE(drawn_in_thread);
    EXPECT_NEAR(std::abs(run.run[1].y - run.run[0].y) / elevation.scale, 1130.0, 0.5 / elevation.scale);
}

TEST(Elevation, DrawsWhatDoesNotAddUpInThread) {
    // 860 + 1130 + 148 = 2138, read as 2183 in one go.
    const Survey survey = one_window(Shape::recess, {{"opening.width.top", 1240},
                                                     {"opening.height.left", 1130},
                                                     {"below.left", 860},
                                                     {"above.left", 148},
                                                     {"ceiling.left", 2183}});
    const Elevation elevation = drawn(survey);
    const auto in_thread = std::ranges::any_of(
        elevation.strokes, [](const Stroke& stroke) { return stroke.role == Role::thread && !stroke.station.empty(); });
    EXPECT_TRUE(in_thread);
}

TEST(Elevation, WritesDimensionsInTheSurveyorsUnit) {
    Survey survey = one_window(Shape::recess, {{"opening.width.middle", 48.375 * 25.4}, {"opening.height.left", 1100}});
    survey.entry_unit = "in";
    const Elevation inches = drawn(survey, elevation_options_for(survey));
    ASSERT_NE(label_of(inches, "opening.width.middle"), nullptr);
    EXPECT_EQ(label_of(inches, "opening.width.middle")->text, "48 3/8");
    survey.entry_unit = "cm";
    ElevationOptions options = elevation_options_for(survey);
    options.length_style.decimal = ',';
    const Elevation centimetres = drawn(survey, options);
    EXPECT_EQ(label_of(centimetres, "opening.height.left")->text, "110");
}

TEST(StationNear, PicksTheTapeThatIsTapped) {
    const Elevation elevation = drawn(contract_example());
    const TapeRun& run = run_of(elevation, "ceiling.left");
    const auto picked = station_near(elevation, run.run[0].x, (run.run[0].y + run.run[1].y) / 2.0);
    EXPECT_EQ(picked, "ceiling.left");
}

TEST(StationNear, PicksTheNextOneNearWhenTappedAgain) {
    const Elevation elevation = drawn(contract_example());
    const TapeRun& run = run_of(elevation, "above.left");
    const Point tap{run.run[0].x, (run.run[0].y + run.run[1].y) / 2.0};
    std::vector<std::string> picked;
    double last = 0.0;
    for (int nth = 0; nth < 100; ++nth) {
        const auto station = station_near(elevation, tap.x, tap.y, 24.0, nth);
        ASSERT_TRUE(station);
        if (nth > 0 && *station == picked.front()) {
            break;
        }
        const TapeRun& near = run_of(elevation, *station);
        const double distance =
            std::min(distance_to(tap, near.run[0], near.run[1]), distance_to(tap, near.edge[0], near.edge[1]));
        EXPECT_LE(distance, 24.0);
        EXPECT_GE(distance, last);
        last = distance;
        picked.push_back(*station);
    }
    EXPECT_EQ(picked.front(), "above.left");
    EXPECT_GE(picked.size(), 2U);
    EXPECT_LT(picked.size(), 100U);
    EXPECT_EQ(std::set<std::string>(picked.begin(), picked.end()).size(), picked.size());
}

TEST(StationNear, PicksNothingFarFromEveryTape) {
    Elevation elevation;
    elevation.runs.push_back(
        {"opening.height.left", "", {Point{50, 50}, Point{50, 150}}, {Point{60, 50}, Point{60, 150}}, true});
    EXPECT_FALSE(station_near(elevation, 120, 100));
    EXPECT_TRUE(station_near(elevation, 83, 100));
    EXPECT_FALSE(station_near(elevation, 85, 100));
}

TEST(SideView, ShowsHowFarThingsStandOut) {
    // The contract's example: the pole's centre 110 and the radiator 95 out from the wall face.
    const Survey survey = contract_example();
    const Room& room = survey.rooms.front();
    const Elevation side =
        side_view_of(survey, room, room.windows.front(), work_out_window(survey, room, room.windows.front()), {});
    std::set<std::string> texts;
    for (const Label& label : side.labels) {
        texts.insert(label.text);
    }
    EXPECT_TRUE(texts.contains("pole 110"));
    EXPECT_TRUE(texts.contains("radiator 95"));
    EXPECT_TRUE(has_corner(side, "r1", on_drawing(side, 95, 750)));
    EXPECT_TRUE(has_corner(side, "hardware", on_drawing(side, 110, 2070)));
}

}  // namespace
}  // namespace truehang::test
