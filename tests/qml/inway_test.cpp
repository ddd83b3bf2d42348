// SPDX-License-Identifier: Apache-2.0
#include "placing_item.h"
#include "scene.h"

#include <QGuiApplication>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

/// What is in the way, moved on the drawing by finger and by keys.
class InwayTest : public QObject {
    Q_OBJECT

private:
    static QString openOne(Scene& scene) {
        scene.openWindow("Pilot house", {});
        scene.openWindow("Pilot house", scene.notebook().visit()->windows()->value(0, "title").toString());
        scene.notebook().setScreen("obstructions");
        ObstructionsModel& model = *scene.notebook().obstructions();
        model.edit(model.obstructions()->value(0, "obstructionId").toString());
        scene.settle();
        return model.current();
    }
    static PlacingItem* drawing(Scene& scene) {
        return qobject_cast<PlacingItem*>(scene.find("Drawing of the window"));
    }
    static const Obstruction& current(Scene& scene) {
        const auto id = scene.notebook().obstructions()->current().toStdString();
        return *std::ranges::find(scene.notebook().open()->window()->obstructions, id, &Obstruction::id);
    }
    static QPoint middleOf(const PlacingItem& item, const Obstruction& one) {
        const double scale = item.elevation().scale;
        const QPointF origin(item.elevation().origin.x, item.elevation().origin.y);
        const QPointF at(one.left->mm() + one.width->mm() / 2, -(one.bottom->mm() + one.height->mm() / 2));
        return item.mapToScene(origin + at * scale).toPoint();
    }

private slots:
    void lookedAt_data() { Scene::sizesAndLooks(); }
    void lookedAt() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openOne(scene);
        PlacingItem* item = drawing(scene);
        QVERIFY(item);
        const QPoint from = middleOf(*item, current(scene));
        QTest::mousePress(&scene.window(), Qt::LeftButton, {}, from);
        QTest::mouseMove(&scene.window(), from + QPoint(-12, -20));
        QTest::mouseMove(&scene.window(), from + QPoint(-18, -62));
        scene.settle();
        scene.grabDressed("inway-dragging");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QTest::mouseRelease(&scene.window(), Qt::LeftButton, {}, from + QPoint(-18, -62));
        scene.settle();
        QVERIFY(scene.touch("Look from the side"));
        scene.settle();
        scene.grabDressed("inway-side");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aFingerMovesItAndUndoBringsItBack() {
        Scene scene;
        openOne(scene);
        const double left = current(scene).left->mm();
        const double bottom = current(scene).bottom->mm();
        const QPoint from = middleOf(*drawing(scene), current(scene));
        QTest::mousePress(&scene.window(), Qt::LeftButton, {}, from);
        for (int i = 1; i <= 5; ++i) {
            QTest::mouseMove(&scene.window(), from + QPoint(5 * i, -4 * i));
        }
        QVERIFY(scene.notebook().obstructions()->placing()->moving());
        QCOMPARE(current(scene).left->mm(), left);  // nothing is kept while the finger is down
        QTest::mouseRelease(&scene.window(), Qt::LeftButton, {}, from + QPoint(25, -20));
        scene.settle();
        QVERIFY(current(scene).left->mm() > left);
        QVERIFY(current(scene).bottom->mm() > bottom);
        QVERIFY(scene.reach("undo"));
        scene.settle();
        QCOMPARE(current(scene).left->mm(), left);
        QCOMPARE(current(scene).bottom->mm(), bottom);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void arrowKeysMoveItOnceForEachTimeHeld() {
        Scene scene;
        openOne(scene);
        const double left = current(scene).left->mm();
        PlacingItem* item = drawing(scene);
        item->forceActiveFocus(Qt::TabFocusReason);
        scene.key(Qt::Key_Right);
        scene.key(Qt::Key_Right, {}, Qt::ShiftModifier);
        scene.settle();
        // Derived: one step of 5 mm, then ten.
        QCOMPARE(current(scene).left->mm(), left + 55.0);
        QVERIFY(scene.notebook().obstructions()->standsAt().contains(QString::number(left + 55.0)));
        scene.notebook().visit()->undo();
        scene.settle();
        QCOMPARE(current(scene).left->mm(), left + 5.0);
        QCOMPARE(Scene::warnings(), QStringList());
    }
};

QTEST_MAIN(InwayTest)
#include "inway_test.moc"
