// SPDX-License-Identifier: Apache-2.0
#include "marks_item.h"
#include "scene.h"

#include <QGuiApplication>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

/// Marks over a photo, drawn with a finger and shown wherever the photo is.
class PhotosTest : public QObject {
    Q_OBJECT

private:
    static const Photo& photo(Scene& scene) { return scene.notebook().open()->window()->photos.at(0); }

    static void openPhotos(Scene& scene) {
        scene.openWindow("Pilot house", {});
        const ShownRows* windows = scene.notebook().visit()->windows();
        for (int row = 0; row < windows->count(); ++row) {
            scene.openWindow("Pilot house", windows->value(row, "title").toString());
            if (scene.notebook().photos()->photos()->count() > 0) {
                break;
            }
        }
        scene.notebook().setScreen("photos");
        scene.settle();
        QTRY_VERIFY_WITH_TIMEOUT(!scene.notebook().photos()->photos()->value(0, "thumbnail").toUrl().isEmpty(),
                                 patience);
        scene.settle();
        QTRY_VERIFY_WITH_TIMEOUT(drawnOn(scene) != nullptr, patience);
    }
    static void openMarks(Scene& scene) {
        openPhotos(scene);
        scene.grabDressed("photos");
        QVERIFY2(scene.reach("Draw arrows, lines and words on this photo"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QTRY_VERIFY_WITH_TIMEOUT(drawnOn(scene) != nullptr && drawnOn(scene)->marks() != nullptr, patience);
    }
    /// The marks' item that can be seen.
    static MarksItem* drawnOn(Scene& scene) {
        for (QQuickItem* item : scene.items()) {
            auto* marks = qobject_cast<MarksItem*>(item);
            if (marks && marks->isVisible() && marks->width() > 20 && marks->height() > 20) {
                return marks;
            }
        }
        return nullptr;
    }
    static QPoint at(Scene& scene, double across, double down) {
        const MarksItem* item = drawnOn(scene);
        return item->mapToScene({across * item->width(), down * item->height()}).toPoint();
    }
    static void drag(Scene& scene, QPoint from, QPoint to) {
        QTest::mousePress(&scene.window(), Qt::LeftButton, {}, from);
        QTest::mouseMove(&scene.window(), (from + to) / 2);
        QTest::mouseMove(&scene.window(), to);
        QTest::mouseRelease(&scene.window(), Qt::LeftButton, {}, to);
        scene.settle();
    }

private slots:
    void lookedAt_data() { Scene::sizesAndLooks(); }
    void lookedAt() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openMarks(scene);
        drag(scene, at(scene, 0.2, 0.3), at(scene, 0.6, 0.7));
        scene.grabDressed("marks");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.reach("a station"));
        scene.settle();
        scene.grabDressed("marks-station");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aPhotoIsGivenToTheRoom() {
        for (const QSize size : {QSize(360, 760), QSize(1024, 768)}) {
            Scene scene(size);
            openPhotos(scene);
            const ShownRows* photos = scene.notebook().photos()->photos();
            const QString sha256 = photos->value(0, "sha256").toString();
            QVERIFY2(scene.reach("This photo belongs to: the window. Choose what it belongs to"),
                     qPrintable(scene.names().join(" | ")));
            scene.settle();
            scene.grabDressed("photo-of");
            QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
            QVERIFY(scene.reach("the room"));
            scene.settle();
            QCOMPARE(photos->value(photos->indexOf(sha256), "ofSays").toString(), QString("the room"));
            QVERIFY(scene.find("This photo belongs to: the room. Choose what it belongs to") != nullptr);
            scene.grabDressed("photo-of-the-room");
            QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
            QCOMPARE(Scene::warnings(), QStringList());
        }
    }

    void aFingerDrawsAndUndoTakesOff() {
        Scene scene;
        openMarks(scene);
        const auto before = photo(scene).marks.size();
        drag(scene, at(scene, 0.25, 0.25), at(scene, 0.75, 0.5));
        QCOMPARE(photo(scene).marks.size(), before + 1);
        // The marks lie on the picture, which stands in the middle of its place: as far from its top as from its foot.
        const MarksItem* item = drawnOn(scene);
        QVERIFY(std::abs(item->parentItem()->height() - item->height() - 2 * item->y()) < 0.5);
        const Mark drawn = photo(scene).marks.back();
        QCOMPARE(drawn.kind, std::string("arrow"));
        // Where the finger went down and where it lifted, to a pixel of the picture as it is shown.
        QVERIFY(std::abs(drawn.points[0].second.first - 0.25) < 0.01);
        QVERIFY(std::abs(drawn.points[1].second.second - 0.5) < 0.02);
        QVERIFY(scene.reach("undo"));
        scene.settle();
        QCOMPARE(photo(scene).marks.size(), before);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aStationIsNamedChosenAndTakenOff() {
        Scene scene;
        openMarks(scene);
        const auto before = photo(scene).marks.size();
        QVERIFY(scene.reach("a station"));
        QTest::mouseClick(&scene.window(), Qt::LeftButton, {}, at(scene, 0.1, 0.9));
        scene.settle();
        QCOMPARE(photo(scene).marks.size(), before + 1);
        QCOMPARE(photo(scene).marks.back().kind, std::string("station"));
        QVERIFY(scene.reach("nothing: it chooses"));
        QTest::mouseClick(&scene.window(), Qt::LeftButton, {}, at(scene, 0.1, 0.9));
        scene.settle();
        QCOMPARE(scene.notebook().photos()->marks()->chosen(), static_cast<int>(before) + 1);
        QVERIFY(scene.reach("Take this mark off; undo brings it back"));
        scene.settle();
        QCOMPARE(photo(scene).marks.size(), before);
        QCOMPARE(Scene::warnings(), QStringList());
    }
};

QTEST_MAIN(PhotosTest)
#include "photos_test.moc"
