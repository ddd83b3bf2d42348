// SPDX-License-Identifier: Apache-2.0
#include "shape_window.h"

#include <rapidcheck.h>

#include <array>

namespace truehang {
namespace {

std::string facet(int n) { return "facet." + std::to_string(n) + ".width"; }
std::string corner(int n) { return "corner." + std::to_string(n) + ".angle_deg"; }
std::string depth(int n) { return "corner." + std::to_string(n) + ".depth"; }

/// A bay as built: its facets and how far each corner turns, in degrees (positive where it bends round the room).
struct Bay {
    std::vector<double> widths;
    std::vector<double> turns;

    /// The corners, walked with complex-free trigonometry from the first facet's direction, then turned onto the mouth.
    [[nodiscard]] std::vector<std::array<double, 2>> corners() const {
        std::vector<std::array<double, 2>> at{{0.0, 0.0}};
        double heading = 0.0;
        for (std::size_t k = 0; k < widths.size(); ++k) {
            at.push_back({at.back()[0] + widths[k] * std::cos(heading), at.back()[1] + widths[k] * std::sin(heading)});
            heading -= k < turns.size() ? turns[k] * radians : 0.0;
        }
        const double tilt = std::atan2(at.back()[1], at.back()[0]);
        for (auto& p : at) {
            p = {p[0] * std::cos(tilt) + p[1] * std::sin(tilt), p[1] * std::cos(tilt) - p[0] * std::sin(tilt)};
        }
        return at;
    }
    [[nodiscard]] double chord() const { return corners().back()[0]; }
};

ShapeWindow window_of(const Bay& bay, bool with_chord = true) {
    ShapeWindow window(Shape::bay);
    for (std::size_t k = 0; k < bay.widths.size(); ++k) {
        window.take(facet(static_cast<int>(k) + 1), bay.widths[k]);
    }
    for (std::size_t k = 0; k < bay.turns.size(); ++k) {
        window.take(corner(static_cast<int>(k) + 1), 180.0 - bay.turns[k]);
    }
    if (with_chord) {
        window.take("bay.chord", bay.chord());
    }
    return window;
}

/// The length of the facets' lines moved by p to the room's side, by cutting each with the next: independent of
/// tangents.
double moved_length(const Bay& bay, double p) {
    const auto at = bay.corners();
    struct Line {
        double x, y, dx, dy;
    };
    std::vector<Line> lines;
    for (std::size_t k = 0; k + 1 < at.size(); ++k) {
        const double dx = (at[k + 1][0] - at[k][0]) / bay.widths[k];
        const double dy = (at[k + 1][1] - at[k][1]) / bay.widths[k];
        lines.push_back({at[k][0] + p * dy, at[k][1] - p * dx, dx, dy});  // to the right of the way round: the room
    }
    std::vector<std::array<double, 2>> moved{{lines.front().x, lines.front().y}};
    for (std::size_t k = 0; k + 1 < lines.size(); ++k) {
        const Line& a = lines[k];
        const Line& b = lines[k + 1];
        const double cross = a.dx * b.dy - a.dy * b.dx;
        const double t = ((b.x - a.x) * b.dy - (b.y - a.y) * b.dx) / cross;
        moved.push_back({a.x + t * a.dx, a.y + t * a.dy});
    }
    const Line& last = lines.back();
    moved.push_back({last.x + bay.widths.back() * last.dx, last.y + bay.widths.back() * last.dy});
    double length = 0.0;
    for (std::size_t k = 0; k + 1 < moved.size(); ++k) {
        length += std::hypot(moved[k + 1][0] - moved[k][0], moved[k + 1][1] - moved[k][1]);
    }
    return length;
}

// Half a regular octagon's outline of side 600: across the flats s (1 + sqrt 2), depth s / sqrt 2 (any table of regular
// polygons).
TEST(BayTraverse, ClosesOnHalfAnOctagon) {
    const Bay bay{{600, 600, 600}, {45, 45}};
    auto window = window_of(bay, false);
    window.take("bay.chord", 600.0 * (1.0 + std::numbers::sqrt2)).take(depth(1), 600.0 / std::numbers::sqrt2);
    window.take(depth(2), 600.0 / std::numbers::sqrt2)
        .take("mouth.left.angle_deg", 45)
        .take("mouth.right.angle_deg", 45);
    const auto measured = window.measured();
    const Network* network = network_of(measured, "bay");
    ASSERT_NE(network, nullptr);
    EXPECT_EQ(network->adjustment.redundancy, 5);  // ten readings of five unknowns
    EXPECT_LT(network->adjustment.chi2, 1e-9);
    ASSERT_EQ(measured.plan.size(), 4U);
    EXPECT_NEAR(measured.plan[1].x.mm(), 424.264, 1e-3);
    EXPECT_NEAR(measured.plan[1].y.mm(), 424.264, 1e-3);
    EXPECT_NEAR(measured.plan[2].x.mm(), 1024.264, 1e-3);
    EXPECT_NEAR(measured.plan[3].x.mm(), 1448.528, 1e-3);
    EXPECT_NEAR(degrees_of(measured, corner(1)), 135.0, 1e-6);
    EXPECT_EQ(flag_of(measured, "does-not-add-up"), nullptr);
}

// Three facets of 600 that turn by 45 degrees, a track 80 off the glass: 1800 - 2 * 2 * 80 tan 22.5 (derived). Its u,
// of readings that check nothing: the widths' in full, of each angle 80 sec^2(22.5) times its u in radians.
TEST(BayTraverse, GivesTheTrackThatIsBentRoundIt) {
    auto window = window_of({{600, 600, 600}, {45, 45}}, false);
    Layer layer;
    layer.hardware = Hardware{};
    layer.hardware->projection = Length::mm(80);
    window.window().layers.push_back(layer);
    const auto measured = window.measured();
    ASSERT_TRUE(measured.track);
    const double tangent = std::numbers::sqrt2 - 1.0;  // of 22.5 degrees
    EXPECT_NEAR(measured.track->value.mm(), 1800.0 - 320.0 * tangent, 1e-6);
    EXPECT_NEAR(mm_of(measured, "bay.track"), 1800.0 - 320.0 * tangent, 1e-6);
    const double width_u = reading_u(Length::mm(600), TapeRule{}).mm();
    const double angle_part = 80.0 * (1.0 + tangent * tangent) * 0.5 * radians;
    EXPECT_NEAR(measured.track->u.mm(), std::sqrt(3.0 * width_u * width_u + 2.0 * angle_part * angle_part), 1e-6);
    EXPECT_NEAR(measured.spans.traverse->track(Length())->value.mm(), 1800.0, 1e-6);
    EXPECT_EQ(measured.spans.traverse->track(Length::mm(2000)), std::nullopt);  // the middle facet is too short for it
}

// A bay of n equal facets lies on a circle: chord = w sin(n d/2) / sin(d/2) (chords of a circle).
TEST(BayTraverse, ClosesOnRegularPolygonsOfAnySize) {
    for (int n = 2; n <= most_facets; ++n) {
        for (const double turn : {5.0, 12.0, 20.0}) {
            const double half = turn / 2.0 * radians;
            ShapeWindow window(Shape::bay);
            for (int k = 1; k <= n; ++k) {
                window.take(facet(k), 500.0);
            }
            for (int k = 1; k < n; ++k) {
                window.take(corner(k), 180.0 - turn);
            }
            window.take("bay.chord", 500.0 * std::sin(n * half) / std::sin(half));
            const auto measured = window.measured();
            const Network* network = network_of(measured, "bay");
            ASSERT_NE(network, nullptr) << n;
            EXPECT_EQ(network->adjustment.redundancy, 1);
            EXPECT_LT(network->adjustment.chi2, 1e-9) << n << " " << turn;
        }
    }
}

Bay any_bay() {
    Bay bay;
    const int facets = *rc::gen::inRange(2, most_facets + 1);
    for (int k = 0; k < facets; ++k) {
        bay.widths.push_back(*rc::gen::inRange(300, 1500));
    }
    for (int k = 1; k < facets; ++k) {
        // To either side, together less than half a turn, so that the mouth stays open.
        bay.turns.push_back(*rc::gen::inRange(-20, 21) + 0.5);
    }
    return bay;
}

TEST(BayTraverse, ClosesOnWhatWasBuiltWhateverItsCorners) {
    EXPECT_TRUE(rc::check([] {
        const Bay bay = any_bay();
        auto window = window_of(bay);
        const auto at = bay.corners();
        for (std::size_t k = 1; k + 1 < at.size(); ++k) {
            window.take(depth(static_cast<int>(k)), std::abs(at[k][1]));
        }
        const auto measured = window.measured();
        const Network* network = network_of(measured, "bay");
        RC_ASSERT(network != nullptr);
        RC_ASSERT(network->adjustment.redundancy == static_cast<int>(bay.widths.size()));
        RC_ASSERT(network->adjustment.chi2 < 1e-6);
    }));
}

TEST(BayTraverse, TracksAreAsLongAsTheMovedFacets) {
    EXPECT_TRUE(rc::check([] {
        const Bay bay = any_bay();
        const double p = *rc::gen::inRange(0, 120);
        const auto measured = window_of(bay, false).measured();
        RC_ASSERT(measured.spans.traverse.has_value());
        const auto track = measured.spans.traverse->track(Length::mm(p));
        RC_ASSERT(track.has_value());
        RC_ASSERT(std::abs(track->value.mm() - moved_length(bay, p)) < 1e-5);
    }));
}

Traverse traverse_of(ShapeWindow& window) {
    return *Traverse::adjusted(counted_readings(window.window(), Shape::bay), Shape::bay, TapeRule{});
}

TEST(BayTraverse, IsTheSameInTheMirrorAndInAnyOrder) {
    EXPECT_TRUE(rc::check([] {
        Bay bay = any_bay();
        auto window = window_of(bay, false);
        const double chord = bay.chord() + *rc::gen::inRange(-40, 41);
        window.take("bay.chord", chord);
        const auto straight = traverse_of(window);
        std::ranges::reverse(window.window().readings);
        const auto shuffled = traverse_of(window);
        std::ranges::reverse(bay.widths);
        std::ranges::reverse(bay.turns);
        auto turned = window_of(bay, false);
        turned.take("bay.chord", chord);
        const auto mirrored = traverse_of(turned);
        const double chi2 = straight.figure().network()->adjustment.chi2;
        RC_ASSERT(std::abs(shuffled.figure().network()->adjustment.chi2 - chi2) < 1e-6 * (1.0 + chi2));
        RC_ASSERT(std::abs(mirrored.figure().network()->adjustment.chi2 - chi2) < 1e-4 * (1.0 + chi2));
        const Length last = straight.lengths().at(facet(straight.facets())).value;
        RC_ASSERT(std::abs((mirrored.lengths().at(facet(1)).value - last).mm()) < 1e-3);
    }));
}

// A digit wrong in the chord, 1448 for 1548: far beyond what a class II tape and edges of 2 mm explain.
TEST(BayTraverse, TellsAPlantedSlip) {
    auto window = window_of({{600, 600, 600}, {45, 45}}, false);
    window.take("bay.chord", 1548).take(depth(1), 424).take("mouth.left.angle_deg", 45);
    const auto measured = window.measured();
    ASSERT_NE(network_of(measured, "bay"), nullptr);
    EXPECT_FALSE(network_of(measured, "bay")->adds_up());
    const Flag* flag = flag_of(measured, "does-not-add-up");
    ASSERT_NE(flag, nullptr);
    EXPECT_NE(std::ranges::find(flag->stations, "bay.chord"), flag->stations.end());
    EXPECT_NE(flag->text.find(" mm"), std::string::npos);
}

// Two digits of an angle exchanged, 153 for 135.
TEST(BayTraverse, TellsAnAnglesMisclosureInDegrees) {
    auto window = window_of({{600, 600, 600}, {45, 45}});
    window.window().readings[3].angle = Angle::degrees(153);
    window.take(depth(1), 424.264).take("mouth.left.angle_deg", 45).take("mouth.right.angle_deg", 45);
    const auto measured = window.measured();
    const Network* network = network_of(measured, "bay");
    ASSERT_NE(network, nullptr);
    EXPECT_FALSE(network->adds_up());
    const auto misclosure = network->misclosure();
    EXPECT_TRUE(misclosure.is_angle);
    EXPECT_NEAR(misclosure.off_by, 18.0, 1.0);
    EXPECT_NE(flag_of(measured, "does-not-add-up")->text.find("°"), std::string::npos);
}

TEST(BayTraverse, LeavesReadingsAsTheyAreWhereTheyDontReachEveryCorner) {
    ShapeWindow window(Shape::bay);
    window.take(facet(1), 600).take(facet(2), 610).take(facet(3), 620).take(corner(1), 135).take("bay.chord", 0.5);
    const auto measured = window.measured();
    EXPECT_EQ(network_of(measured, "bay"), nullptr);
    EXPECT_TRUE(measured.plan.empty());
    EXPECT_DOUBLE_EQ(mm_of(measured, facet(3)), 620.0);
    EXPECT_DOUBLE_EQ(degrees_of(measured, corner(1)), 135.0);
}

TEST(BayTraverse, TakesAProposedReadingOnlyWhereNothingElseGivesIt) {
    auto window = window_of({{600, 600, 600}, {45, 45}}, false);
    window.take("bay.chord", 1300, How::proposed);
    auto measured = window.measured();
    EXPECT_EQ(network_of(measured, "bay"), nullptr);
    EXPECT_NEAR(mm_of(measured, "bay.chord"), 1448.528, 1e-3);
    EXPECT_EQ(flag_of(measured, "rests-on-proposal"), nullptr);
    window.window().readings[4].how = Word<How>(How::proposed);  // and one of the angles: one of the two is needed
    measured = window.measured();
    EXPECT_EQ(network_of(measured, "bay"), nullptr);
    EXPECT_NE(flag_of(measured, "rests-on-proposal"), nullptr);
}

TEST(BayTraverse, KnowsAnEstimatedAngleAsWellAsItSays) {
    auto window = window_of({{600, 600, 600}, {45, 45}}, false);
    window.window().readings[3].how = Word<How>(How::estimated);
    window.window().readings[3].angle_u = Angle::degrees(4.0);
    const auto sizes = sizes_of(window.measured());
    EXPECT_NEAR(size_of(sizes, corner(1))->angle->u.degrees(), 4.0, 1e-9);
    EXPECT_EQ(size_of(sizes, corner(1))->estimate.rests_on, std::vector<std::string>{corner(1)});
    EXPECT_NEAR(size_of(sizes, corner(2))->angle->u.degrees(), 0.5, 1e-9);
}

TEST(BayTraverse, SaysWhereAnAngleWasTypedOtherwise) {
    auto window = window_of({{600, 600, 600}, {45, 45}}, false);
    window.window().readings[3].typed = "135°";
    EXPECT_EQ(flag_of(window.measured(), "typed-differs"), nullptr);
    window.window().readings[3].typed = "153";
    EXPECT_NE(flag_of(window.measured(), "typed-differs"), nullptr);
}

// Absurd readings are told of, or left as read; nothing comes out that isn't a number.
TEST(BayTraverse, StandsAbsurdReadings) {
    EXPECT_TRUE(rc::check([] {
        ShapeWindow window(*rc::gen::element(Shape::bay, Shape::corner));
        const auto& stations = stations_of(*window.window().shape.known());
        const int count = *rc::gen::inRange(0, 14);
        for (int i = 0; i < count; ++i) {
            const Station& station =
                stations[*rc::gen::inRange<std::size_t>(0, std::min<std::size_t>(38, stations.size()))];
            window.take(std::string(station.word),
                        station.is_angle() ? *rc::gen::inRange(0, 361) : *rc::gen::inRange(0, 100001));
        }
        const auto measured = window.measured();
        for (const MeasuredSize& size : sizes_of(measured)) {
            RC_ASSERT(std::isfinite(size.estimate.value.mm()) && std::isfinite(size.estimate.u.mm()));
            RC_ASSERT(!size.angle ||
                      (std::isfinite(size.angle->value.degrees()) && std::isfinite(size.angle->u.degrees())));
        }
        for (const Network& network : measured.networks) {
            RC_ASSERT(std::isfinite(network.adjustment.chi2));
        }
    }));
}

// Pythagoras: 600, 800, 1000.
TEST(CornerTraverse, ClosesOnARightAngle) {
    ShapeWindow window(Shape::corner);
    window.take(facet(1), 600).take(facet(2), 800).take("corner.chord", 1000);
    auto measured = window.measured();
    EXPECT_EQ(network_of(measured, "corner"), nullptr);  // three sides check nothing
    EXPECT_NEAR(degrees_of(measured, corner(1)), 90.0, 1e-6);
    window.take(corner(1), 90);
    measured = window.measured();
    ASSERT_NE(network_of(measured, "corner"), nullptr);
    EXPECT_LT(network_of(measured, "corner")->adjustment.chi2, 1e-9);
    EXPECT_EQ(measured.largest_width(), std::nullopt);
}

// Two facets and a mouth wider than both together: no triangle.
TEST(CornerTraverse, TellsSidesThatFormNone) {
    ShapeWindow window(Shape::corner);
    window.take(facet(1), 600).take(facet(2), 800).take("corner.chord", 1900).take(corner(1), 90);
    const auto measured = window.measured();
    EXPECT_NE(flag_of(measured, "does-not-add-up"), nullptr);
}

// The widths along the wall: 300 + 1448 + 252 = 2000.
TEST(BayTraverse, StandsInItsWall) {
    ShapeWindow window(Shape::bay);
    window.take("bay.chord", 1448).take("wall.left", 300).take("wall.right", 252).take("wall.total", 2000);
    const auto measured = window.measured();
    ASSERT_NE(network_of(measured, "wall"), nullptr);
    EXPECT_LT(network_of(measured, "wall")->adjustment.chi2, 1e-12);
}

// Along both walls: 300 + 600 + 800 + 252 = 1952, whatever lies straight across (Pythagoras: 1000).
TEST(CornerTraverse, StandsInTwoWalls) {
    ShapeWindow window(Shape::corner);
    window.take(facet(1), 600).take(facet(2), 800).take("corner.chord", 1000).take(corner(1), 90);
    window.take("wall.left", 300).take("wall.right", 252).take("wall.total", 1952);
    auto measured = window.measured();
    ASSERT_NE(network_of(measured, "wall"), nullptr);
    EXPECT_LT(network_of(measured, "wall")->adjustment.chi2, 1e-12);
    EXPECT_EQ(flag_of(measured, "does-not-add-up"), nullptr);
    // Without one of the facets nothing is said of the walls.
    ShapeWindow half(Shape::corner);
    half.take(facet(1), 600).take("corner.chord", 1000).take(corner(1), 90);
    half.take("wall.left", 300).take("wall.right", 252).take("wall.total", 1952);
    measured = half.measured();
    EXPECT_EQ(network_of(measured, "wall"), nullptr);
}

TEST(BayTraverse, HangsItsPlumbLinesOnTheFirstMiddleAndLastFacet) {
    ShapeWindow window(Shape::bay);
    for (int n = 1; n <= 5; ++n) {
        window.take("facet." + std::to_string(n) + ".height", 1200.0 + n);
    }
    window.take("below.left", 900).take("below.centre", 900).take("below.right", 900);
    const auto measured = window.measured();
    EXPECT_NEAR(measured.plumb.height(Line::left, PlumbMark::head)->value.mm(), 2101.0, 1e-9);
    EXPECT_NEAR(measured.plumb.height(Line::centre, PlumbMark::head)->value.mm(), 2103.0, 1e-9);
    EXPECT_NEAR(measured.plumb.height(Line::right, PlumbMark::head)->value.mm(), 2105.0, 1e-9);
    EXPECT_NEAR(mm_of(measured, "facet.2.height"), 1202.0, 1e-9);
    EXPECT_EQ(height_station(measured, Line::centre), "facet.3.height");
}

}  // namespace
}  // namespace truehang
