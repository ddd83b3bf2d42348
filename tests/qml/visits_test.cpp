// SPDX-License-Identifier: Apache-2.0
#include "scene.h"

#include <QTest>

using namespace truehang;
using namespace truehang::test;

namespace {

/// Visits straight in the store, each on a day of its own, the last the newest.
void makeVisits(Scene& scene, int count) {
    make_visits(scene.bench(), count);
    scene.notebook().tryAgain();  // reads the list anew
    scene.settle();
}

}  // namespace

/// The page of the visits, by touches and keys.
class VisitsTest : public QObject {
    Q_OBJECT

private slots:
    static void drawingTheListDownBringsFurtherPages() {
        Scene scene;
        makeVisits(scene, 200);
        const ShownRows& visits = *scene.notebook().visits();
        const int before = visits.count();
        QVERIFY2(before < 200, qPrintable(QString::number(before)));
        QVERIFY(scene.find("House 199, 0 windows, to measure") != nullptr);
        for (int pull = 0; pull < 60 && visits.count() == before; ++pull) {
            QTest::mousePress(&scene.window(), Qt::LeftButton, {}, QPoint(200, 150));
            for (int y = 170; y <= 590; y += 60) {
                QTest::mouseMove(&scene.window(), QPoint(200, y), 4);
            }
            QTest::mouseRelease(&scene.window(), Qt::LeftButton, {}, QPoint(200, 590));
            scene.settle();
        }
        QVERIFY(visits.count() > before);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void wordsTypedNarrowTheListAndShowAllWidensIt() {
        Scene scene;
        makeVisits(scene, 100);
        QVERIFY(scene.touch("find"));
        scene.typeOnKeyboard("house 42");
        QCOMPARE(scene.notebook().visits()->count(), 1);
        QVERIFY(scene.touch("House 42, 0 windows, to measure"));
        QCOMPARE(scene.notebook().visit()->title(), QString("House 42"));
        scene.key(Qt::Key_Escape);
        QVERIFY(scene.touch("show all"));
        QVERIFY(scene.notebook().visits()->count() > 1);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void theListIsNarrowedByState_data() { Scene::sizesAndLooks(); }
    static void theListIsNarrowedByState() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        QVERIFY(scene.touch("Show the visits of one state"));
        scene.grabDressed("visits-states");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY(scene.reach("measuring"));
        QCOMPARE(scene.notebook().narrowed(), QString("measuring"));
        QVERIFY(scene.find("Only those: measuring") != nullptr);
        for (int row = 0; row < scene.notebook().visits()->count(); ++row) {
            QVERIFY(scene.notebook().visits()->value(row, "state").toString().startsWith("measuring"));
        }
        scene.grabDressed("visits-narrowed");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY(scene.touch("show all"));
        QCOMPARE(scene.notebook().narrowed(), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void theBinAsksOnceAndIsEmptied_data() { Scene::sizesAndLooks(); }
    static void theBinAsksOnceAndIsEmptied() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        const int before = scene.notebook().visits()->count();
        for (const char* const title : {"Sail loft", "Net store, to measure"}) {
            scene.openWindow(title, {});
            QVERIFY(scene.reach("Remove this visit; it can be brought back"));
        }
        QCOMPARE(scene.notebook().visits()->count(), before - 2);
        QVERIFY(scene.touch("Removed visits"));
        scene.grabDressed("bin");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.touch("Erase the removed visits for good"));
        scene.grabDressed("bin-question");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.find(scene.notebook().binQuestion()) != nullptr);
        QVERIFY(scene.touch("Keep them"));
        QCOMPARE(scene.notebook().removedVisits()->count(), 2);
        QVERIFY(scene.reach(scene.notebook().removedVisits()->value(0, "spoken").toString()));
        QCOMPARE(scene.notebook().visits()->count(), before - 1);
        QVERIFY(scene.touch("Removed visits"));
        QVERIFY(scene.touch("Erase the removed visits for good"));
        scene.key(Qt::Key_Escape);  // back to the bin, nothing erased
        QCOMPARE(scene.notebook().removedVisits()->count(), 1);
        QVERIFY(scene.touch("Erase the removed visits for good"));
        QVERIFY(scene.reach("Erase the removed visits for good"));
        QCOMPARE(scene.notebook().removedVisits()->count(), 0);
        QCOMPARE(scene.notebook().visits()->count(), before - 1);
        QVERIFY(scene.find("Removed visits") == nullptr);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void arrowsGoFromVisitToVisit() {
        Scene scene;
        makeVisits(scene, 20);
        QQuickItem* newest = scene.find("House 19, 0 windows, to measure");
        if (newest == nullptr) {  // demo visits of a later day stand below it
            newest = scene.find(scene.notebook().visits()->value(0, "spoken").toString());
        }
        QVERIFY(newest != nullptr);
        scene.find(scene.notebook().visits()->value(0, "spoken").toString())->forceActiveFocus(Qt::TabFocusReason);
        for (int row = 1; row < 12; ++row) {
            scene.key(Qt::Key_Up);
            QQuickItem* focus = scene.window().activeFocusItem();
            QVERIFY(focus != nullptr);
            QCOMPARE(nameOf(focus), scene.notebook().visits()->value(row, "spoken").toString());
            QVERIFY(!scene.seen(focus).isEmpty());
        }
        QCOMPARE(Scene::warnings(), QStringList());
    }
};

QTEST_MAIN(VisitsTest)
#include "visits_test.moc"
