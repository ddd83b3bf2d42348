// SPDX-License-Identifier: Apache-2.0
#include "windows.h"

#include "survey/stations.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

// Bays, corners, arches and gables on the elevation. Every expected place is derived from the stations' definitions by
// plane trigonometry; nothing is compared with what the drawing gave before.

namespace truehang::test {
namespace {

double apart(Point a, Point b) { return std::hypot(a.x - b.x, a.y - b.y); }

std::vector<Point> points_of(const Elevation& elevation, const std::string& part) {
    std::vector<Point> points;
    for (const Stroke& stroke : elevation.strokes) {
        if (stroke.part == part) {
            points.insert(points.end(), stroke.points.begin(), stroke.points.end());
        }
    }
    return points;
}

bool has_corner(const Elevation& elevation, const std::string& part, Point wanted) {
    return std::ranges::any_of(points_of(elevation, part), [&](Point point) { return apart(point, wanted) < 0.5; });
}

const TapeRun& run_of(const Elevation& elevation, const std::string& station) {
    static const TapeRun none;
    const auto found = std::ranges::find(elevation.runs, station, &TapeRun::station);
    EXPECT_NE(found, elevation.runs.end()) << station;
    return found == elevation.runs.end() ? none : *found;
}

double length_of(const Elevation& elevation, const std::string& station) {
    const TapeRun& run = run_of(elevation, station);
    return apart(run.run[0], run.run[1]);
}

const Label* label_of(const Elevation& elevation, const std::string& station) {
    const auto found = std::ranges::find(elevation.labels, station, &Label::station);
    return found == elevation.labels.end() ? nullptr : &*found;
}

/// The lighthouse keeper's bay: 700, 1200, 700 at 135°, so 1200 + 2·700·cos 45° across the mouth and 700·sin 45° deep.
Survey keepers_bay(double third_facet = 700.0) {
    Survey survey = one_window(Shape::bay, {{"facet.1.width", 700},
                                            {"facet.2.width", 1200},
                                            {"facet.3.width", third_facet},
                                            {"bay.chord", 1200.0 + 2.0 * 700.0 * std::numbers::sqrt2 / 2.0},
                                            {"below.left", 640},
                                            {"facet.1.height", 1300},
                                            {"facet.2.height", 1330},
                                            {"facet.3.height", 1300},
                                            {"above.left", 260},
                                            {"below.right", 640}});
    Window& window = survey.rooms[0].windows[0];
    take_angle(window, "corner.1.angle_deg", 135.0);
    take_angle(window, "corner.2.angle_deg", 135.0);
    return survey;
}

Survey five_facets() {
    Survey survey = one_window(Shape::bay, {{"facet.1.width", 560},
                                            {"facet.2.width", 610},
                                            {"facet.3.width", 640},
                                            {"facet.4.width", 612},
                                            {"facet.5.width", 558},
                                            {"bay.chord", 2420},
                                            {"below.left", 640},
                                            {"facet.1.height", 1300},
                                            {"facet.2.height", 1340},
                                            {"facet.3.height", 1302},
                                            {"facet.4.height", 1260},
                                            {"facet.5.height", 1298},
                                            {"above.left", 260},
                                            {"below.right", 645}});
    Window& window = survey.rooms[0].windows[0];
    take_angle(window, "corner.1.angle_deg", 150.0);
    take_angle(window, "corner.2.angle_deg", 157.5);
    take_angle(window, "corner.3.angle_deg", 157.0);
    take_angle(window, "corner.4.angle_deg", 151.0);
    return survey;
}

Survey net_store_corner() {
    Survey survey = one_window(Shape::corner, {{"facet.1.width", 1200},
                                               {"facet.2.width", 900},
                                               {"corner.chord", 1500},
                                               {"below.left", 820},
                                               {"facet.1.height", 1130},
                                               {"facet.2.height", 1130},
                                               {"above.left", 240},
                                               {"below.right", 820}});
    take_angle(survey.rooms[0].windows[0], "corner.1.angle_deg", 90.0);
    return survey;
}

Survey round_arch() {
    return one_window(Shape::arch, {{"opening.width.top", 1200},
                                    {"opening.width.bottom", 1200},
                                    {"below.left", 800},
                                    {"opening.height.left", 1100},
                                    {"opening.height.centre", 1700},
                                    {"arch.rise", 600},
                                    {"below.centre", 800},
                                    {"above.centre", 300},
                                    {"below.right", 800},
                                    {"opening.height.right", 1100}});
}

/// 2000 wide, feet 700 over the sill, the apex 1900 over it and 850 from the left edge: slopes by Pythagoras.
Survey sail_loft() {
    return one_window(Shape::gable, {{"opening.width.bottom", 2000},
                                     {"below.left", 900},
                                     {"opening.height.left", 700},
                                     {"gable.apex.along", 850},
                                     {"below.centre", 900},
                                     {"opening.height.centre", 1900},
                                     {"above.centre", 250},
                                     {"below.right", 900},
                                     {"opening.height.right", 700},
                                     {"gable.slope.left", std::hypot(850.0, 1200.0)},
                                     {"gable.slope.right", std::hypot(1150.0, 1200.0)}});
}

std::vector<Survey> all_shapes() {
    return {keepers_bay(), five_facets(), net_store_corner(), round_arch(), sail_loft()};
}

TEST(Shapes, StandTheFacetsOfABayUnfoldedSideBySide) {
    const Elevation elevation = drawn(keepers_bay());
    // Each facet from where the one before ends; heights over the sill at 640, each facet its own.
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 0, 640)));
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 700, 640 + 1300)));
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 700, 640 + 1330)));
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 1900, 640 + 1330)));
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 2600, 640 + 1300)));
    EXPECT_NEAR(length_of(elevation, "facet.2.width") / elevation.scale, 1200.0, 1.0);
    EXPECT_NEAR(length_of(elevation, "facet.2.height") / elevation.scale, 1330.0, 1.0);
}

TEST(Shapes, DrawABaysPlanToItsOwnScale) {
    const Elevation elevation = drawn(keepers_bay());
    // On the plan: the mouth 2189.95 across, corners 700·sin 45° = 494.97 from it, the first 494.97 along.
    const double scale = length_of(elevation, "bay.chord") / (1200.0 + 700.0 * std::numbers::sqrt2);
    ASSERT_GT(scale, 0.0);
    EXPECT_NEAR(length_of(elevation, "corner.1.depth") / scale, 700.0 * std::numbers::sqrt2 / 2.0, 1.0);
    EXPECT_NEAR(length_of(elevation, "corner.2.depth") / scale, 700.0 * std::numbers::sqrt2 / 2.0, 1.0);
    const Point mouth = run_of(elevation, "bay.chord").edge[0];
    const Point corner = run_of(elevation, "corner.1.depth").edge[1];
    EXPECT_NEAR(apart(mouth, corner) / scale, 700.0, 1.0);
    EXPECT_LT(corner.y, mouth.y);  // outside is up, the room below
}

TEST(Shapes, DrawTheAngleThatIsMeasuredAsAnArcBetweenItsFacets) {
    ElevationOptions options;
    options.active_station = "corner.1.angle_deg";
    options.typed = "13";
    const Elevation elevation = drawn(keepers_bay(), options);
    const Point corner = run_of(elevation, "corner.1.depth").edge[1];
    const auto arc = std::ranges::find_if(elevation.strokes, [](const Stroke& stroke) {
        return stroke.station == "corner.1.angle_deg" && stroke.form == Form::polyline;
    });
    ASSERT_NE(arc, elevation.strokes.end());
    EXPECT_EQ(arc->role, Role::thread);
    for (const Point& point : arc->points) {
        EXPECT_NEAR(apart(point, corner), apart(arc->points.front(), corner), 1e-6);
    }
    const auto bearing = [&](Point p) { return std::atan2(p.y - corner.y, p.x - corner.x); };
    const double swept =
        std::abs(bearing(arc->points.front()) - bearing(arc->points.back())) * 180.0 / std::numbers::pi;
    EXPECT_NEAR(std::min(swept, 360.0 - swept), 135.0, 0.5);
    const Label* label = label_of(elevation, "corner.1.angle_deg");
    ASSERT_NE(label, nullptr);
    EXPECT_EQ(label->text, "13°");
}

TEST(Shapes, WriteAnAngleWithItsSign) {
    Survey survey = keepers_bay();
    survey.rooms[0].windows[0].readings.back().angle = Angle::degrees(134.5);
    ElevationOptions options;
    options.width = 640;
    options.height = 520;
    options.length_style.decimal = ',';
    const Elevation elevation = drawn(survey, options);
    ASSERT_NE(label_of(elevation, "corner.2.angle_deg"), nullptr);
    EXPECT_EQ(label_of(elevation, "corner.2.angle_deg")->text, "134,5°");
    EXPECT_EQ(run_of(elevation, "corner.2.angle_deg").says.find("mm"), std::string::npos);
}

TEST(Shapes, DrawAnUntakenAngleSoThatTheMouthFits) {
    // Two equal corners, facets 700, 1200, 700 and a mouth of 2189.95 leave only 135° (law of cosines).
    Survey survey = one_window(Shape::bay, {{"facet.1.width", 700},
                                            {"facet.2.width", 1200},
                                            {"facet.3.width", 700},
                                            {"bay.chord", 1200.0 + 700.0 * std::numbers::sqrt2}});
    const Elevation elevation = drawn(survey);
    const double scale = length_of(elevation, "bay.chord") / (1200.0 + 700.0 * std::numbers::sqrt2);
    EXPECT_NEAR(length_of(elevation, "corner.1.depth") / scale, 700.0 * std::numbers::sqrt2 / 2.0, 1.0);
}

TEST(Shapes, FoldACornerByItsAngle) {
    // 1200, 900 and a right angle between them: 1500 across (Pythagoras), 1200·900/1500 = 720 deep.
    const Elevation elevation = drawn(net_store_corner());
    const Point from = run_of(elevation, "corner.chord").edge[0];
    const Point to = run_of(elevation, "corner.chord").edge[1];
    const double scale = apart(from, to) / 1500.0;
    const std::vector<Point> plan = points_of(elevation, "plan");
    const Point top = *std::ranges::min_element(plan, {}, &Point::y);
    EXPECT_NEAR((from.y - top.y) / scale, 720.0, 1.0);
    EXPECT_NEAR(apart(from, top) / scale, 1200.0, 1.0);
    EXPECT_NEAR(apart(to, top) / scale, 900.0, 1.0);
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 1200, 820 + 1130)));
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 2100, 820 + 1130)));
}

/// How far a drawn curve strays from the circle of this centre and radius, in mm.
double strays(const Elevation& elevation, double x, double y, double radius) {
    double most = 0.0;
    const Point centre = on_drawing(elevation, x, y);
    for (const Stroke& stroke : elevation.strokes) {
        if (stroke.part == "opening" && stroke.role == Role::ink && stroke.points.size() > 5) {
            for (const Point& point : stroke.points) {
                most = std::max(most, std::abs(apart(point, centre) / elevation.scale - radius));
            }
        }
    }
    return most;
}

TEST(Shapes, DrawASemicircle) {
    // Rise 600 over a span of 1200: centre on the springing line at 800 + 1100, radius 600.
    const Elevation elevation = drawn(round_arch());
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 0, 1900)));
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 1200, 1900)));
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 600, 2500)));
    EXPECT_LT(strays(elevation, 600, 1900, 600), 1.5);
    EXPECT_NEAR(length_of(elevation, "arch.rise") / elevation.scale, 600.0, 1.0);
}

TEST(Shapes, DrawASegmentalArch) {
    // Rise 200 over a span of 1200: radius (600² + 200²)/(2·200) = 1000 (intersecting chords), centre 800 below the
    // springing line at 1900.
    Survey survey = one_window(Shape::arch, {{"opening.width.top", 1200},
                                             {"opening.width.bottom", 1200},
                                             {"below.left", 800},
                                             {"opening.height.left", 1100},
                                             {"opening.height.right", 1100},
                                             {"arch.rise", 200}});
    const Elevation elevation = drawn(survey);
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 600, 2100)));
    EXPECT_LT(strays(elevation, 600, 1100, 1000), 1.5);
}

TEST(Shapes, LeadAnArchThroughItsOrdinates) {
    // A half ellipse 1200 wide and 450 high stands 450·√(1 − (400/600)²) = 335.41 high at 200 from either springing.
    Survey survey = one_window(Shape::arch, {{"opening.width.top", 1200},
                                             {"opening.width.bottom", 1200},
                                             {"below.left", 800},
                                             {"opening.height.left", 1100},
                                             {"opening.height.right", 1100},
                                             {"arch.rise", 450},
                                             {"ordinate.1.along", 200},
                                             {"ordinate.1.height", 335.41},
                                             {"ordinate.2.along", 1000},
                                             {"ordinate.2.height", 335.41}});
    const Elevation elevation = drawn(survey);
    for (const auto& [x, y] : {std::pair{0.0, 1900.0}, {200.0, 2235.41}, {600.0, 2350.0}, {1000.0, 2235.41}}) {
        EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, x, y))) << x;
    }
    EXPECT_NEAR(length_of(elevation, "ordinate.1.height") / elevation.scale, 335.41, 1.0);
    EXPECT_NEAR(length_of(elevation, "ordinate.2.along") / elevation.scale, 1000.0, 1.0);
}

TEST(Shapes, NameEveryOrdinateWhereItStands) {
    const Elevation elevation = drawn(one_window(Shape::arch, {{"opening.width.top", 2400},
                                                               {"opening.width.bottom", 2400},
                                                               {"below.left", 800},
                                                               {"opening.height.left", 1100},
                                                               {"opening.height.right", 1100},
                                                               {"arch.rise", 600},
                                                               {"ordinate.1.along", 600},
                                                               {"ordinate.1.height", 530},
                                                               {"ordinate.2.along", 1200},
                                                               {"ordinate.2.height", 600},
                                                               {"ordinate.3.along", 1800},
                                                               {"ordinate.3.height", 530}}));
    for (int n = 1; n <= 3; ++n) {
        const std::string station = "ordinate." + std::to_string(n) + ".along";
        const auto label = std::ranges::find(elevation.labels, station, &Label::station);
        ASSERT_NE(label, elevation.labels.end()) << station;
        const double middle = (label->left + label->right) / 2.0;
        EXPECT_GT(middle, on_drawing(elevation, 600.0 * (n - 1), 0).x) << station;
        EXPECT_LT(middle, on_drawing(elevation, 600.0 * n, 0).x) << station;
    }
}

TEST(Shapes, StandTheApexWhereItIs) {
    const Elevation elevation = drawn(sail_loft());
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 0, 1600)));
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 850, 2800)));
    EXPECT_TRUE(has_corner(elevation, "opening", on_drawing(elevation, 2000, 1600)));
    EXPECT_NEAR(length_of(elevation, "gable.slope.left") / elevation.scale, std::hypot(850.0, 1200.0), 1.0);
    EXPECT_NEAR(length_of(elevation, "gable.apex.along") / elevation.scale, 850.0, 1.0);
}

TEST(Shapes, SlopeTheCeilingWhereALevelLineTiesTheLines) {
    // The level line 1000 over the floor at the left and 1015 at the right: the floor falls 15. The ceiling 2200 over
    // the floor at both ends falls with it; 2215 at the right would be level.
    for (const auto& [right, falls] : {std::pair{2200.0, 15.0}, {2215.0, 0.0}}) {
        const Elevation elevation = drawn(one_window(Shape::recess, {{"opening.width.top", 1200},
                                                                     {"opening.width.bottom", 1200},
                                                                     {"below.left", 860},
                                                                     {"opening.height.left", 1000},
                                                                     {"opening.height.right", 1000},
                                                                     {"below.right", 860},
                                                                     {"ceiling.left", 2200},
                                                                     {"ceiling.right", right},
                                                                     {"level.left", 1000},
                                                                     {"level.right", 1015}}));
        const auto ceiling = std::ranges::find(elevation.strokes, "ceiling", &Stroke::part);
        const Point a = ceiling->points.front();
        const Point b = ceiling->points.back();
        EXPECT_NEAR((b.y - a.y) / (b.x - a.x), falls / 1200.0, 1e-4);
    }
}

TEST(Shapes, ShowAGuessBeforeAnythingIsMeasured) {
    for (const Shape shape : {Shape::bay, Shape::corner, Shape::arch, Shape::gable}) {
        const Elevation elevation = drawn(one_window(shape, {}));
        EXPECT_TRUE(elevation.guessed);
        EXPECT_NE(elevation.description.find("dashed"), std::string::npos);
        for (const Stroke& stroke : elevation.strokes) {
            EXPECT_FALSE((stroke.part == "opening" || stroke.part == "plan") && stroke.role == Role::ink);
        }
    }
}

TEST(Shapes, StayInsideTheirTarget) {
    for (const Survey& survey : all_shapes()) {
        for (const auto& [width, height] : {std::pair{288.0, 243.0}, {288.0, 300.0}, {640.0, 520.0}, {360.0, 200.0}}) {
            ElevationOptions options;
            options.width = width;
            options.height = height;
            const Elevation elevation = drawn(survey, options);
            for (const Stroke& stroke : elevation.strokes) {
                for (const Point& point : stroke.points) {
                    EXPECT_TRUE(point.x >= -0.5 && point.x <= width + 0.5 && point.y >= -0.5 && point.y <= height + 0.5)
                        << stroke.part << " " << stroke.station << " " << point.x << " " << point.y;
                }
            }
        }
    }
}

TEST(Shapes, GiveEveryReadingARunAndALabel) {
    for (const Survey& survey : all_shapes()) {
        const Window& window = survey.rooms[0].windows[0];
        ElevationOptions options;
        options.width = 640;
        options.height = 520;
        const Elevation elevation = drawn(survey, options);
        for (const Reading& reading : window.readings) {
            EXPECT_TRUE(run_of(elevation, reading.station).measured);
            EXPECT_NE(label_of(elevation, reading.station), nullptr) << reading.station;
        }
    }
}

TEST(Shapes, SayAnglesAndFacetsOnAPhone) {
    // The drawing beside readings that differ is 288 by 243 on a phone of 360 by 760.
    ElevationOptions options;
    options.width = 288;
    options.height = 243;
    const Elevation elevation = drawn(five_facets(), options);
    for (int n = 1; n <= 5; ++n) {
        EXPECT_NE(label_of(elevation, "facet." + std::to_string(n) + ".width"), nullptr) << n;
    }
    EXPECT_NE(label_of(elevation, "bay.chord"), nullptr);
    for (const Label& label : elevation.labels) {
        EXPECT_GE(label.size, 16.0);
    }
}

TEST(Shapes, ArePickedByATapOnElevationAndPlan) {
    const Elevation elevation = drawn(keepers_bay());
    const auto middle = [](const std::array<Point, 2>& ends) {
        return Point{(ends[0].x + ends[1].x) / 2.0, (ends[0].y + ends[1].y) / 2.0};
    };
    const Point on_plan = middle(run_of(elevation, "facet.1.width").edge);
    EXPECT_EQ(station_near(elevation, on_plan.x, on_plan.y), "facet.1.width");
    const Point on_elevation = middle(run_of(elevation, "facet.1.width").run);
    EXPECT_EQ(station_near(elevation, on_elevation.x - 12.0, on_elevation.y), "facet.1.width");
    const Point chord = middle(run_of(elevation, "bay.chord").run);
    EXPECT_EQ(station_near(elevation, chord.x, chord.y), "bay.chord");
    const Point arc = run_of(elevation, "corner.1.angle_deg").run[1];
    EXPECT_EQ(station_near(elevation, arc.x, arc.y), "corner.1.angle_deg");
    EXPECT_EQ(std::ranges::count(elevation.runs, "facet.4.width", &TapeRun::station), 0);
}

TEST(Shapes, AskForOneFacetMoreWhereItIsBeingMeasured) {
    ElevationOptions options;
    options.active_station = "facet.4.width";
    options.typed = "70";
    const Elevation elevation = drawn(keepers_bay(), options);
    ASSERT_NE(label_of(elevation, "facet.4.width"), nullptr);
    EXPECT_EQ(label_of(elevation, "facet.4.width")->text, "70");
}

TEST(Shapes, HangCurtainsAcrossTheUnfoldedLength) {
    // Unfolded 700 + 1200 + 700 = 2600 of glass; a track 2500 long, centred, from 50 to 2550.
    Survey survey = keepers_bay();
    Layer layer;
    layer.hardware = Hardware{};
    layer.hardware->kind = Word<HardwareKind>(HardwareKind::track);
    layer.hardware->length = Length::mm(2500);
    layer.treatment = Treatment{};
    layer.treatment->heading = Word<Heading>(Heading::pinch_pleat);
    survey.rooms[0].windows[0].layers.push_back(layer);
    ElevationOptions options;
    options.drawn = Drawn::shut;
    const Elevation elevation = drawn(survey, options);
    const std::vector<Point> curtain = points_of(elevation, "curtain");
    ASSERT_FALSE(curtain.empty());
    const auto [left, right] = std::ranges::minmax(curtain, {}, &Point::x);
    EXPECT_NEAR(left.x, on_drawing(elevation, 50, 0).x, 0.5);
    EXPECT_NEAR(right.x, on_drawing(elevation, 2550, 0).x, 0.5);
}

}  // namespace
}  // namespace truehang::test
