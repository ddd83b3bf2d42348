// SPDX-License-Identifier: Apache-2.0
#include "scene.h"

#include <QTest>

using namespace truehang;
using namespace truehang::test;

namespace {

int rowOf(const ShownRows* items, const QString& keyEnds) {
    for (int row = 0; row < items->count(); ++row) {
        if (items->value(row, "item").toString().endsWith(keyEnds)) {
            return row;
        }
    }
    return -1;
}

QString spoken(const ShownRows* items, const QString& keyEnds) {
    return items->value(rowOf(items, keyEnds), "spoken").toString();
}

}  // namespace

/// Before leaving the house, by touches and keys.
class LeavingTest : public QObject {
    Q_OBJECT

private slots:
    static void eachLineLeadsToItsPlaceAndBack_data() { Scene::sizesAndLooks(); }
    static void eachLineLeadsToItsPlaceAndBack() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        scene.openWindow("Net store, to measure", {});
        scene.grabDressed("visit-before-leaving");
        QVERIFY(scene.touch("What is missing before leaving"));
        QCOMPARE(scene.notebook().screen(), QString("leaving"));
        scene.grabDressed("leaving");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        const ShownRows* items = scene.notebook().leaving()->items();
        QVERIFY(scene.reach(spoken(items, "/stations")));
        QCOMPARE(scene.notebook().screen(), QString("walk"));
        scene.key(Qt::Key_Escape);
        QCOMPARE(scene.notebook().screen(), QString("leaving"));
        QVERIFY(scene.reach(spoken(items, "/photos")));
        QCOMPARE(scene.notebook().screen(), QString("photos"));
        scene.key(Qt::Key_Escape);
        QCOMPARE(scene.notebook().screen(), QString("leaving"));
        QVERIFY(scene.reach(spoken(items, "send")));
        scene.grabDressed("leaving-end");
        QCOMPARE(scene.notebook().screen(), QString("send"));
        scene.key(Qt::Key_Escape);
        QCOMPARE(scene.notebook().screen(), QString("leaving"));
        QVERIFY(scene.reach(spoken(items, "sign")));
        QCOMPARE(scene.notebook().screen(), QString("visit"));
        QVERIFY2(scene.find("I agree") != nullptr, qPrintable(scene.names().join(" | ")));
        scene.key(Qt::Key_Escape);
        QVERIFY(scene.find("I agree") == nullptr);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void aMeasuredHouseIsGoneThroughWithTheKeyboard() {
        Scene scene;
        scene.openWindow("Pilot house", {});
        scene.notebook().setScreen("leaving");
        scene.settle();
        scene.grabDressed("leaving-pilot-house");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        const ShownRows* items = scene.notebook().leaving()->items();
        QVERIFY(items->count() > 0);
        QCOMPARE(rowOf(items, "/stations"), -1);
        QStringList reached;
        for (int press = 0; press < items->count() + 8; ++press) {
            scene.key(Qt::Key_Tab);
            if (QQuickItem* focus = scene.window().activeFocusItem()) {
                reached << nameOf(focus);
                QVERIFY2(!scene.seen(focus).isEmpty(), qPrintable(nameOf(focus)));
            }
        }
        for (int row = 0; row < items->count(); ++row) {
            QVERIFY2(reached.contains(items->value(row, "spoken").toString()), qPrintable(reached.join(" | ")));
        }
        QCOMPARE(Scene::warnings(), QStringList());
    }
};

QTEST_MAIN(LeavingTest)
#include "leaving_test.moc"
