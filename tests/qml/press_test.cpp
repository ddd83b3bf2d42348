// SPDX-License-Identifier: Apache-2.0
#include "press_item.h"
#include "scene.h"

#include <QAccessible>
#include <QGuiApplication>
#include <QSignalSpy>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

// What counts as a press, on the keypad of a station.
class PressTest : public QObject {
    Q_OBJECT

private:
    static void openStation(Scene& scene) {
        scene.openWindow("Net store, to measure", {});
        QVERIFY(scene.notebook().visit()->windows()->count() > 0);
        scene.notebook().openWindow(scene.notebook().visit()->windows()->value(0, "windowId").toString());
        scene.settle();
        QVERIFY2(scene.find("1"), qPrintable(scene.names().join(" | ")));
    }

    static QPoint middleOf(Scene& scene, const char* key) {
        return scene.seen(scene.find(QString::fromLatin1(key))).center().toPoint();
    }

private slots:
    static void twoFingersOneIntoTheOther() {
        Scene scene;
        openStation(scene);
        const std::unique_ptr<QPointingDevice> fingers(QTest::createTouchDevice());
        const QPoint one = middleOf(scene, "1");
        const QPoint two = middleOf(scene, "2");
        QTest::touchEvent(&scene.window(), fingers.get()).press(0, one);
        QTest::touchEvent(&scene.window(), fingers.get()).stationary(0).press(1, two);
        QTest::touchEvent(&scene.window(), fingers.get()).release(0, one).stationary(1);
        QTest::touchEvent(&scene.window(), fingers.get()).release(1, two);
        scene.settle();
        QCOMPARE(scene.notebook().walk()->typed(), QString("12"));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void whatIsLetGoElsewhereIsNoPress() {
        Scene scene;
        openStation(scene);
        QTest::mousePress(&scene.window(), Qt::LeftButton, {}, middleOf(scene, "1"));
        QVERIFY(scene.find("1")->property("pressed").toBool());
        QTest::mouseMove(&scene.window(), middleOf(scene, "8"));
        QVERIFY(!scene.find("1")->property("pressed").toBool());
        QTest::mouseRelease(&scene.window(), Qt::LeftButton, {}, middleOf(scene, "8"));
        scene.settle();
        QCOMPARE(scene.notebook().walk()->typed(), QString());
    }

    static void aListThatIsDraggedOpensNothing() {
        Scene scene;
        const QPoint row = scene.seen(scene.find("New visit")).center().toPoint() - QPoint(0, 200);
        const QString before = scene.notebook().screen();
        QTest::mousePress(&scene.window(), Qt::LeftButton, {}, row);
        for (int step = 1; step <= 8; ++step) {
            QTest::mouseMove(&scene.window(), row + QPoint(0, 8 * step));
        }
        QTest::mouseRelease(&scene.window(), Qt::LeftButton, {}, row + QPoint(0, 64));
        scene.settle();
        QCOMPARE(scene.notebook().screen(), before);
    }

    static void aHoldIsHeardInPlaceOfAPress() {
        PressItem item;
        item.setSize({50, 50});
        QQuickWindow window;
        window.resize(100, 100);
        item.setParentItem(window.contentItem());
        window.show();
        const QSignalSpy clicked(&item, &PressItem::clicked);
        const QPoint here(20, 20);
        QTest::mousePress(&window, Qt::LeftButton, {}, here);
        QTest::mouseRelease(&window, Qt::LeftButton, {}, here);
        QCOMPARE(clicked.count(), 1);
        QSignalSpy held(&item, &PressItem::pressAndHold);
        QTest::mousePress(&window, Qt::LeftButton, {}, here);
        QVERIFY(held.wait(patience));
        QTest::mouseRelease(&window, Qt::LeftButton, {}, here);
        QCOMPARE(held.count(), 1);
        QCOMPARE(clicked.count(), 1);
    }

    static void aScreenReaderPresses() {
        QAccessible::setActive(true);
        Scene scene;
        openStation(scene);
        QAccessibleInterface* heard = QAccessible::queryAccessibleInterface(scene.find("7"));
        QVERIFY(heard);
        QVERIFY(heard->actionInterface());
        heard->actionInterface()->doAction(QAccessibleActionInterface::pressAction());
        scene.settle();
        QCOMPARE(scene.notebook().walk()->typed(), QString("7"));
    }
};

QTEST_MAIN(PressTest)

#include "press_test.moc"
