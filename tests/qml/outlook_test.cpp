// SPDX-License-Identifier: Apache-2.0
#include "light/facing.h"
#include "scene.h"
#include "sun_item.h"

#include <QTest>
#include <cmath>
#include <numbers>

using namespace truehang;
using namespace truehang::test;

/// The light of a window: looked at, and taken by compass, shadow, plan and sketch.
class OutlookTest : public QObject {
    Q_OBJECT

private:
    static void open(Scene& scene, int window) {
        scene.openWindow("Pilot house", {});
        const QString title = scene.notebook().visit()->windows()->value(window, "title").toString();
        scene.openWindow("Pilot house", title);
        scene.notebook().setScreen("outlook");
        scene.settle();
        scene.settle();
    }
    static const Window& windowOf(Scene& scene) { return *scene.notebook().open()->window(); }
    static void look(Scene& scene, const QString& name) {
        scene.settle();
        scene.grabDressed(name);
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }
    static void write(Scene& scene, const QString& field, const QString& text) {
        QVERIFY2(scene.reach(field), qPrintable(field + ": " + scene.names().join(" | ")));
        scene.key(Qt::Key_A, "a", Qt::ControlModifier);
        scene.typeOnKeyboard(text);
        scene.key(Qt::Key_Tab);
        scene.settle();
    }
    static void press(Scene& scene, const QString& name) {
        QVERIFY2(scene.reach(name), qPrintable(name + ": " + scene.names().join(" | ")));
        scene.settle();
    }

    /// A bay of three facets to the south-west, as the keeper’s house has it.
    static Window bay() {
        const auto survey =
            read_survey(R"({"format": "truehang.survey/1", "id": "s", "fabrics": [], "rooms": [{"id": "r",
            "windows": [{"id": "bay", "name": "Bay to the harbour", "shape": "bay", "bearing_deg": 215,
            "bearing_from": "plan", "readings": [
                {"id": "1", "station": "facet.1.width", "value_mm": 640},
                {"id": "2", "station": "facet.2.width", "value_mm": 1280},
                {"id": "3", "station": "facet.3.width", "value_mm": 640},
                {"id": "4", "station": "corner.1.angle_deg", "value_deg": 135},
                {"id": "5", "station": "corner.2.angle_deg", "value_deg": 135},
                {"id": "6", "station": "facet.1.height", "value_mm": 1240},
                {"id": "7", "station": "facet.2.height", "value_mm": 1240},
                {"id": "8", "station": "facet.3.height", "value_mm": 1240}]}]}]})");
        return survey->rooms[0].windows[0];
    }

private slots:
    void lookedAt_data() { Scene::sizesAndLooks(); }
    void lookedAt() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        open(scene, 0);
        OutlookTest::look(scene, "outlook-south");
        QVERIFY(scene.reach("which way it faces"));
        OutlookTest::look(scene, "outlook-facing");
        scene.key(Qt::Key_Escape);
        scene.settle();
        QVERIFY(scene.reach("what stands outside"));
        OutlookTest::look(scene, "outlook-outside");
        QVERIFY(scene.reach("House, from 48° left to 14° left, 17° high"));
        OutlookTest::look(scene, "outlook-house");
        open(scene, 3);
        OutlookTest::look(scene, "outlook-north");
        scene.notebook().open()->edit("A bay", [](Survey& survey) {
            survey.rooms[0].windows.insert(survey.rooms[0].windows.begin(), bay());
            return true;
        });
        open(scene, 0);
        QCOMPARE(scene.notebook().outlook()->light()->panes.size(), std::size_t(3));
        OutlookTest::look(scene, "outlook-bay");
    }

    // From the list of stations to the light page, as a person goes.
    void isReachedFromTheWalk() {
        Scene scene;
        open(scene, 0);
        scene.notebook().setScreen("walk");
        scene.settle();
        press(scene, "All stations of this window");
        press(scene, "Light of this window");
        QCOMPARE(scene.notebook().screen(), QString("outlook"));
        auto* drawing = qobject_cast<SunItem*>(scene.find("Where the sun stands in this window"));
        QVERIFY(drawing != nullptr);
        QVERIFY(!drawing->elevation().strokes.empty());
        QVERIFY(drawing->description().contains("21 December"));
    }

    // Timed first, read after: the bearing is the sun’s azimuth then, less atan2(left, depth).
    void aShadowTellsWhichWayItFaces() {
        Scene scene;
        open(scene, 1);
        press(scene, "which way it faces");
        press(scene, "By a shadow on the sill");
        QVERIFY2(scene.find("The shadow needs how deep and how far to the left it was read."),
                 qPrintable(scene.names().join(" | ")));
        write(scene, "Into the room, from the edge’s foot to the mark", "150");
        write(scene, "There, how far the shadow lies to the left", "-60");
        const BearingTaken& taken = windowOf(scene).outlook->bearings.at(0);
        QCOMPARE(taken.depth->mm(), 150.0);
        const auto sun = sun_at({Angle::degrees(54.6), Angle::degrees(-1.1)}, read_rfc3339(taken.taken_at).value());
        const double slant = std::atan2(-60.0, 150.0) * 180.0 / std::numbers::pi;
        const Facing facing = facing_of(scene.notebook().open()->survey(), windowOf(scene));
        QVERIFY(std::abs(facing.bearing->bearing.degrees() - (sun.azimuth.degrees() - slant)) < 0.01);
        QCOMPARE(scene.notebook().outlook()->facing(), QString::fromStdString(facing.says));
        press(scene, "Done with this one");
        press(scene, "undo");
        QVERIFY(windowOf(scene).outlook->bearings.at(0).to_left.empty());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void whatCantBeReadStandsWithItsReason() {
        Scene scene;
        open(scene, 1);
        press(scene, "which way it faces");
        press(scene, "Off a plan");
        write(scene, "The street’s line", "north");
        QVERIFY(!windowOf(scene).outlook->bearings.at(0).street);
        QVERIFY2(scene.names().join(" | ").contains("A number is understood here"),
                 qPrintable(scene.names().join(" | ")));
        write(scene, "The street’s line", "90");
        press(scene, "To the left of the line");
        QCOMPARE(scene.notebook().outlook()->facing(), QString("Faces north, 0° ± 4°"));
    }

    void aCompassIsWatchedAndKept() {
        Scene scene;
        open(scene, 1);
        press(scene, "which way it faces");
        press(scene, "By compass");
        QVERIFY(scene.bench().compass->tell);
        QVERIFY(!scene.find("Keep this bearing"));
        scene.bench().compass->tell({268.0, 8.0, 49'500.0});
        scene.settle();
        QVERIFY2(scene.find("268° ± 16°"), qPrintable(scene.names().join(" | ")));
        press(scene, "Keep this bearing");
        QVERIFY(!scene.bench().compass->tell);
        QCOMPARE(windowOf(scene).outlook->bearings.at(0).magnetic->degrees(), 268.0);
        // Iron beside it: said, and not counted.
        press(scene, "By compass");
        scene.bench().compass->tell({200.0, 8.0, 90'000.0});
        scene.settle();
        press(scene, "Keep this bearing");
        QVERIFY(scene.names().join(" | ").contains("iron"));
        QVERIFY(scene.notebook().outlook()->facing().startsWith("Faces west"));
        // Leaving the page stops the compass.
        press(scene, "By compass");
        QVERIFY(scene.bench().compass->tell);
        scene.notebook().setScreen("walk");
        QVERIFY(!scene.bench().compass->tell);
    }

    void aHouseOppositeIsSketchedInAFewTaps() {
        Scene scene;
        open(scene, 3);
        const double before = sum(scene.notebook().outlook()->light()->hours->up);
        QVERIFY(before > 4000.0);
        press(scene, "what stands outside");
        press(scene, "a house");
        press(scene, "higher");
        press(scene, "wider");
        const SkylinePart& house = windowOf(scene).outlook->skyline.at(0);
        QCOMPARE(house.height->degrees(), 15.0);
        QCOMPARE(house.from->degrees(), -25.0);
        QCOMPARE(house.to->degrees(), 25.0);
        write(scene, "Its right edge, from straight ahead", "-30");
        QVERIFY(scene.names().join(" | ").contains("must stand to the left"));
        QCOMPARE(windowOf(scene).outlook->skyline.at(0).to->degrees(), 25.0);
        press(scene, "Take it out; undo brings it back");
        QVERIFY(!windowOf(scene).outlook);
        press(scene, "undo");
        QCOMPARE(windowOf(scene).outlook->skyline.size(), std::size_t(1));
    }

    void theRoomGivesItsDaylight() {
        Scene scene;
        open(scene, 4);
        QCOMPARE(scene.notebook().outlook()->daylight()->rowCount({}), 0);
        press(scene, "glass and room");
        write(scene, "Width, along this wall", "3600");
        write(scene, "Depth, away from it", "4000");
        write(scene, "Height", "2100");
        press(scene, "Light walls and floor");
        press(scene, "Done");
        QVERIFY(scene.notebook().outlook()->daylight()->rowCount({}) >= 3);
        QVERIFY(scene.names().join(" | ").contains("Average daylight factor"));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void whereTheHouseStandsCanBeTyped() {
        Scene scene;
        open(scene, 0);
        scene.notebook().position()->forget();
        scene.settle();
        write(scene, "Or its latitude and longitude, off a map", "somewhere");
        QVERIFY(scene.names().join(" | ").contains("Latitude and longitude in degrees are understood"));
        QVERIFY(!scene.notebook().open()->survey().site->latitude);
        write(scene, "Or its latitude and longitude, off a map", "54,6 N; 1,1 W");
        QCOMPARE(scene.notebook().open()->survey().site->latitude.value(), 54.6);
        QCOMPARE(scene.notebook().open()->survey().site->longitude.value(), -1.1);
        QVERIFY(scene.find("Where the sun stands in this window"));
    }

    void whereTheHouseStandsIsAskedFor() {
        Scene scene;
        open(scene, 0);
        scene.notebook().position()->forget();
        scene.settle();
        QVERIFY(!scene.find("Where the sun stands in this window"));
        press(scene, "ask where we are");
        scene.bench().position->answer(PositionFix{54.6, -1.1, 12.0, 8.0});
        scene.settle();
        QVERIFY(scene.find("Where the sun stands in this window"));
    }
};

QTEST_MAIN(OutlookTest)
#include "outlook_test.moc"
