// SPDX-License-Identifier: Apache-2.0
#include "survey/stations.h"

#include "survey/counted.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>

namespace truehang {
namespace {

constexpr std::array every_shape{Shape::recess, Shape::frame, Shape::door,  Shape::bay,
                                 Shape::arch,   Shape::gable, Shape::corner};

Reading at(std::string station, double value) {
    Reading reading;
    reading.value = Length::mm(value);
    if (station.ends_with("_deg")) {
        reading.value.reset();
        reading.angle = Angle::degrees(value);
    }
    reading.station = std::move(station);
    return reading;
}

std::vector<std::string> walked(const Window& window) {
    std::vector<std::string> words;
    for (const Station& station : walk_of(window)) {
        words.emplace_back(station.word);
    }
    return words;
}

TEST(Stations, AreThereOnceInEveryShapeWithWordsOfTheirOwn) {
    for (const Shape shape : every_shape) {
        std::set<std::string_view> words;
        std::set<std::string_view> says;
        for (const Station& station : stations_of(shape)) {
            EXPECT_TRUE(words.insert(station.word).second) << station.word;
            EXPECT_TRUE(says.insert(station.says).second) << station.says;
            EXPECT_EQ(find_station(shape, station.word)->says, station.says);
        }
    }
}

// docs/stations.md names every station, with N for a number.
TEST(Stations, AreDescribed) {
    std::ifstream file(std::string(TRUEHANG_SOURCE_DIR) + "/docs/stations.md");
    const std::string page(std::istreambuf_iterator<char>(file), {});
    for (const Shape shape : every_shape) {
        for (const Station& station : stations_of(shape)) {
            std::string word(station.word);
            if (station.number > 0) {
                word.replace(word.find('.') + 1, 1, "N");
            }
            EXPECT_NE(page.find("`" + word + "`"), std::string::npos) << word;
        }
    }
}

TEST(Stations, AreNumberedFromOneToTheirLimit) {
    for (const auto* word : {"facet.1.width", "facet.9.height", "corner.8.angle_deg", "corner.1.depth", "bay.chord",
                             "mouth.left.angle_deg", "sill.projection", "wall.total", "pole.above"}) {
        EXPECT_TRUE(find_station(Shape::bay, word)) << word;
    }
    for (const auto* word :
         {"facet.10.width", "facet.0.width", "facet.01.width", "facet..width", "facet.1.angle_deg",
          "corner.9.angle_deg", "corner.0.angle_deg", "corner.chord", "opening.width.top", "facet.1"}) {
        EXPECT_FALSE(find_station(Shape::bay, word)) << word;
    }
    EXPECT_TRUE(find_station(Shape::corner, "corner.1.angle_deg"));
    for (const auto* word : {"facet.3.width", "corner.2.angle_deg", "corner.1.depth", "bay.chord"}) {
        EXPECT_FALSE(find_station(Shape::corner, word)) << word;
    }
    EXPECT_TRUE(find_station(Shape::arch, "ordinate.9.height"));
    EXPECT_FALSE(find_station(Shape::arch, "ordinate.10.height"));
    EXPECT_FALSE(find_station(Shape::arch, "opening.diagonal.rising"));
    EXPECT_TRUE(find_station(Shape::gable, "gable.slope.right"));
    EXPECT_FALSE(find_station(Shape::gable, "opening.width.top"));
    EXPECT_FALSE(find_station(Shape::recess, "facet.1.width"));
}

TEST(Stations, OfABayHangOnItsFirstMiddleAndLastFacet) {
    EXPECT_EQ(line_of_facet(1, 3), Line::left);
    EXPECT_EQ(line_of_facet(2, 3), Line::centre);
    EXPECT_EQ(line_of_facet(3, 3), Line::right);
    EXPECT_EQ(line_of_facet(2, 4), std::nullopt);
    EXPECT_EQ(line_of_facet(3, 4), std::nullopt);
    EXPECT_EQ(line_of_facet(2, 2), Line::right);
    EXPECT_EQ(line_of_facet(1, 1), Line::left);
}

Layer pole(std::optional<double> length = {}, HemAt to = HemAt::floor) {
    Layer layer;
    layer.hardware.emplace().kind = Word<HardwareKind>(HardwareKind::pole);
    if (length) {
        layer.hardware->length = Length::mm(*length);
    }
    layer.treatment.emplace().heading = Word<Heading>(Heading::tab);
    layer.treatment->length = Word<HemAt>(to);
    return layer;
}

Layer blind_inside() {
    Layer layer;
    layer.treatment.emplace().heading = Word<Heading>(Heading::roman);
    return layer;
}

// Common practice, no source: widths, heights and the sill's height at three places each for a pair to the floor, one
// line up to the ceiling to check them by, and the pole.
TEST(Walk, GoesAcrossThenUpTheThreeLinesThenToThePole) {
    Window window;
    window.shape = Word<Shape>(Shape::recess);
    const std::vector<std::string> usual{"opening.width.top", "opening.width.middle", "opening.width.bottom",
                                         "below.left",        "opening.height.left",  "above.left",
                                         "ceiling.left",      "below.centre",         "opening.height.centre",
                                         "below.right",       "opening.height.right", "pole.above"};
    EXPECT_EQ(walked(window), usual);
    window.layers = {pole()};
    EXPECT_EQ(walked(window), usual);
}

TEST(Walk, AsksForTheWallOnceThePoleIsKnownToPassTheEdges) {
    for (const Shape shape : every_shape) {
        Window window;
        window.shape = Word<Shape>(shape);
        window.layers = {pole(1800)};
        const auto words = walked(window);
        ASSERT_GE(words.size(), 2U);
        EXPECT_EQ(words[words.size() - 2], "wall.left");
        EXPECT_EQ(words.back(), "wall.right");
        window.layers = {blind_inside()};
        window.layers.front().hardware.emplace().length = Length::mm(1200);
        EXPECT_EQ(std::ranges::count(walked(window), "wall.left"), 0);
    }
}

TEST(Walk, AsksForTheFloorAtEachLineOnlyWhereAHemReachesIt) {
    Window window;
    window.shape = Word<Shape>(Shape::frame);
    window.layers = {pole({}, HemAt::below_sill)};
    auto words = walked(window);
    EXPECT_EQ(std::ranges::count(words, "below.left"), 1);  // of the line that is checked
    EXPECT_EQ(std::ranges::count(words, "below.right"), 0);
    window.layers = {pole({}, HemAt::sill), pole({}, HemAt::break_)};
    words = walked(window);
    EXPECT_EQ(std::ranges::count(words, "below.right"), 1);
}

TEST(Walk, AsksABlindInsideForDiagonalsAndDepthAlone) {
    Window window;
    window.shape = Word<Shape>(Shape::recess);
    window.layers = {blind_inside()};
    const auto words = walked(window);
    EXPECT_EQ(words.back(), "opening.depth");
    EXPECT_EQ(std::ranges::count(words, "opening.diagonal.rising"), 1);
    EXPECT_EQ(std::ranges::count(words, "below.left"), 0);
    window.layers.push_back(pole());
    EXPECT_EQ(walked(window).back(), "pole.above");
    EXPECT_EQ(std::ranges::count(walked(window), "opening.width.top"), 1);
}

TEST(Walk, MeasuresAPoleUnderTheCeilingFromIt) {
    Window window;
    window.shape = Word<Shape>(Shape::recess);
    window.layers = {pole()};
    window.layers.front().hardware->hang = Word<Hang>(Hang::ceiling);
    EXPECT_EQ(walked(window).back(), "pole.ceiling");
    window.layers.push_back(pole());
    EXPECT_EQ(walked(window).back(), "pole.above");
}

TEST(Walk, GoesRoundABayThenUp) {
    Window window;
    window.shape = Word<Shape>(Shape::bay);
    const std::vector<std::string> usual{"facet.1.width",      "facet.2.width", "facet.3.width",  "corner.1.angle_deg",
                                         "corner.2.angle_deg", "bay.chord",     "below.left",     "facet.1.height",
                                         "above.left",         "ceiling.left",  "facet.2.height", "below.right",
                                         "facet.3.height",     "pole.above"};
    EXPECT_EQ(walked(window), usual);
    window.readings.push_back(at("facet.5.width", 600));
    const auto five = walked(window);
    EXPECT_NE(std::ranges::find(five, "corner.4.angle_deg"), five.end());
    window.readings.clear();
    window.not_taken.push_back({"facet.3.width", "there are two", {}});
    const auto two = walked(window);
    EXPECT_EQ(std::ranges::find(two, "corner.2.angle_deg"), two.end());
    EXPECT_EQ(two.front(), "facet.1.width");
}

TEST(Walk, AsksOfEveryShapeOnlyWhatItHas) {
    for (const Shape shape : every_shape) {
        Window window;
        window.shape = Word<Shape>(shape);
        const auto words = walked(window);
        EXPECT_GE(words.size(), 8U);
        EXPECT_EQ(std::set<std::string>(words.begin(), words.end()).size(), words.size());
        window.readings.push_back(at("no.such.station", 1));
        EXPECT_EQ(walked(window), words);
    }
    Window arch;
    arch.shape = Word<Shape>(Shape::arch);
    arch.readings.push_back(at("ordinate.1.along", 100));  // ordinates only when taken
    const auto words = walked(arch);
    EXPECT_EQ(words.back(), "ordinate.1.along");
    EXPECT_EQ(std::ranges::find(words, "ordinate.1.height"), words.end());
}

TEST(CountedReadings, HoldAnglesAsAngles) {
    Window window;
    window.shape = Word<Shape>(Shape::bay);
    window.readings = {at("corner.1.angle_deg", 135), at("facet.1.width", 600), at("facet.2.height", 1200)};
    Reading wrong = at("corner.2.angle_deg", 130);
    wrong.angle.reset();
    wrong.value = Length::mm(130);  // a length where an angle belongs
    window.readings.push_back(wrong);
    const auto counted = counted_readings(window, Shape::bay);
    ASSERT_EQ(counted.size(), 3U);
    EXPECT_EQ(find_counted(counted, "corner.1.angle_deg")->angle, Angle::degrees(135));
    EXPECT_EQ(find_counted(counted, "corner.1.angle_deg")->value, Length());
    EXPECT_EQ(find_counted(counted, "facet.1.width")->angle, std::nullopt);
    EXPECT_EQ(find_counted(counted, "facet.2.height")->station.line, Line::right);
    EXPECT_EQ(find_counted(counted, "facet.2.height")->station.kind, StationKind::height);
}

}  // namespace
}  // namespace truehang
