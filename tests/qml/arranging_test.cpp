// SPDX-License-Identifier: Apache-2.0
#include "scene.h"

#include <QTest>

using namespace truehang;
using namespace truehang::test;

namespace {

/// The last window of the visit's first room, by its panel of all stations.
void openOverview(Scene& scene) {
    scene.openWindow("Pilot house", {});
    scene.openWindow("Pilot house", scene.notebook().visit()->windows()->value(1, "title").toString());
    WalkModel& walk = *scene.notebook().walk();
    walk.jumpTo(walk.stations()->value(0, "station").toString());
    scene.settle();
    QVERIFY2(scene.touch("All stations of this window"), qPrintable(scene.names().join(" | ")));
}

}  // namespace

/// Rooms and windows put in order, moved, copied, taken out and erased, by touches.
class ArrangingTest : public QObject {
    Q_OBJECT

private slots:
    static void aWindowChangesItsPlace_data() { Scene::sizesAndLooks(); }
    static void aWindowChangesItsPlace() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openOverview(scene);
        VisitModel& visit = *scene.notebook().visit();
        QStringList expected = column(visit.windows(), "name");
        QVERIFY(scene.find("Window 2 of 2 in Kitchen") != nullptr);
        QVERIFY(scene.reach("Put this window before the one above it"));
        QVERIFY(scene.find("Window 1 of 2 in Kitchen") != nullptr);
        scene.grabDressed("window-place");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        expected.swapItemsAt(0, 1);
        QCOMPARE(column(visit.windows(), "name"), expected);
        QVERIFY(scene.reach("Put this window after the one below it"));
        expected.swapItemsAt(0, 1);
        QCOMPARE(column(visit.windows(), "name"), expected);
        QVERIFY(scene.find("Move it to Kitchen") == nullptr);  // it stands there
        QVERIFY2(scene.reach("Move it to Landing"), qPrintable(scene.names().join(" | ")));
        expected.append(expected.takeAt(1));
        QCOMPARE(column(visit.windows(), "name"), expected);
        QVERIFY(scene.find("Move it to Kitchen") != nullptr);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void anotherLikeItIsMeasuredNext() {
        Scene scene;
        openOverview(scene);
        const int before = scene.notebook().visit()->windows()->count();
        QVERIFY(scene.reach("Add a window like this one, with nothing measured yet"));
        QCOMPARE(scene.notebook().visit()->windows()->count(), before + 1);
        QCOMPARE(scene.notebook().screen(), QString("walk"));
        QVERIFY(scene.notebook().open()->window()->readings.empty());
        QVERIFY(scene.find("All stations of this window") != nullptr);
        scene.grabDressed("another-like-it");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void aRoomChangesItsPlace_data() { Scene::sizesAndLooks(); }
    static void aRoomChangesItsPlace() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        scene.openWindow("Pilot house", {});
        VisitModel& visit = *scene.notebook().visit();
        QStringList expected = column(visit.rooms(), "name");
        QVERIFY(scene.reach("Name of Kitchen, and who lives there"));
        QVERIFY2(scene.reach("Put this room after the one below it"), qPrintable(scene.names().join(" | ")));
        expected.swapItemsAt(0, 1);
        QCOMPARE(column(visit.rooms(), "name"), expected);
        QVERIFY(scene.find("Room 2 of 4") != nullptr);
        scene.grabDressed("room-place");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.reach("Put this room before the one above it"));
        expected.swapItemsAt(0, 1);
        QCOMPARE(column(visit.rooms(), "name"), expected);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void whatWasTakenOutIsBroughtBackOrErased_data() { Scene::sizesAndLooks(); }
    static void whatWasTakenOutIsBroughtBackOrErased() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openOverview(scene);
        VisitModel& visit = *scene.notebook().visit();
        const int before = visit.windows()->count();
        const QString title = visit.windows()->value(1, "title").toString();
        QVERIFY(scene.reach("Take this window out of the visit; it can be brought back"));
        QCOMPARE(visit.windows()->count(), before - 1);
        QVERIFY2(scene.reach("Taken out: " + title), qPrintable(scene.names().join(" | ")));
        scene.grabDressed("taken-out");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.touch(title + ", taken out"));
        QCOMPARE(visit.windows()->count(), before);
        openOverview(scene);
        QVERIFY(scene.reach("Take this window out of the visit; it can be brought back"));
        QVERIFY(scene.reach("Taken out: " + title));
        QVERIFY(scene.touch("Erase what was taken out for good"));
        scene.grabDressed("taken-out-question");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.touch("Keep them"));
        QCOMPARE(visit.removedWindows()->count(), 1);
        QVERIFY(scene.touch("Erase what was taken out for good"));
        QVERIFY(scene.reach("Erase what was taken out for good"));
        QCOMPARE(visit.removedWindows()->count(), 0);
        QVERIFY(scene.find("Taken out: " + title) == nullptr);
        QVERIFY(!visit.canUndo());
        QCOMPARE(Scene::warnings(), QStringList());
    }
};

QTEST_MAIN(ArrangingTest)
#include "arranging_test.moc"
