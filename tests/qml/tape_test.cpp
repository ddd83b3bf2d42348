// SPDX-License-Identifier: Apache-2.0
#include "scene.h"
#include "survey/counted.h"
#include "taps_item.h"

#include <QGuiApplication>
#include <QImage>
#include <QPainter>
#include <QTest>
#include <array>
#include <cmath>

using namespace truehang;
using namespace truehang::test;

/// A photo as a rough tape: corners tapped by finger, by buttons and by keys, and what comes of it.
class TapeTest : public QObject {
    Q_OBJECT

private:
    static constexpr int picture_width = 1600;
    static constexpr int picture_height = 1200;

    /// Corners on the wall, mm, clockwise from the top left, y up.
    using Corners = std::array<QPointF, 4>;
    static Corners rectangle(double left, double bottom, double width, double height) {
        return {QPointF(left, bottom + height), QPointF(left + width, bottom + height), QPointF(left + width, bottom),
                QPointF(left, bottom)};
    }
    /// The wall as the picture has it, fractions: it narrows to the right. Half a pixel a millimetre.
    static QPointF seen(QPointF wall) {
        const double w = 1.0 + 5e-5 * wall.x();
        return {(200.0 + 0.5 * wall.x()) / w / picture_width, (1000.0 - 0.5 * wall.y()) / w / picture_height};
    }
    static QImage drawn(const Corners& opening, const Corners& sheet) {
        QImage image(picture_width, picture_height, QImage::Format_RGB32);
        image.fill(QColor(170, 165, 155));
        QPainter painter(&image);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(Qt::NoPen);
        const auto fill = [&](const Corners& corners, const QColor& colour) {
            QPolygonF polygon;
            for (const QPointF& corner : corners) {
                const QPointF at = seen(corner);
                polygon << QPointF(at.x() * picture_width, at.y() * picture_height);
            }
            painter.setBrush(colour);
            painter.drawPolygon(polygon);
        };
        fill(opening, QColor(60, 70, 80));
        fill(sheet, Qt::white);
        return image;
    }

    static Reading reading(const char* station, double mm) {
        Reading reading;
        reading.id = std::string("tape-") + station;
        reading.station = station;
        reading.value = Length::mm(mm);
        return reading;
    }
    /// A new window with two widths and a height, and a photo of it.
    static void openTape(Scene& scene, double bottom_reading = 1200.0) {
        scene.bench().openNewWindow();
        OpenVisit* open = scene.notebook().open();
        QVERIFY(open->editWindow("readings", open->windowId(), [&](Window& window) {
            window.readings = {reading("opening.width.top", 1201.0), reading("opening.width.bottom", bottom_reading),
                               reading("opening.height.left", 1399.0)};
            return true;
        }));
        scene.notebook().setScreen("photos");
        scene.settle();
        scene.bench().clipboard->held = drawn(rectangle(0, 0, 1200, 1400), rectangle(1300, 400, 210, 297));
        scene.notebook().photos()->paste();
        QTRY_VERIFY_WITH_TIMEOUT(!scene.notebook().photos()->photos()->value(0, "thumbnail").toUrl().isEmpty(),
                                 patience);
        scene.settle();
        scene.grabDressed("photos-tape");
        QVERIFY2(scene.reach("Use this photo as a rough tape: a sheet of known size and the opening are tapped"),
                 qPrintable(scene.names().join(" | ")));
        scene.settle();
        QTRY_VERIFY_WITH_TIMEOUT(taps(scene) != nullptr, patience);
        scene.settle();
    }
    static TapsItem* taps(Scene& scene) {
        for (QQuickItem* item : scene.items()) {
            auto* found = qobject_cast<TapsItem*>(item);
            if (found && found->isVisible() && found->width() > 20 && found->height() > 20) {
                return found;
            }
        }
        return nullptr;
    }
    static PhotoTapeModel* tape(Scene& scene) { return scene.notebook().photos()->tape(); }
    static const PhotoPlane& plane(Scene& scene) { return *scene.notebook().open()->window()->photos.at(0).plane; }

    /// A finger comes down beside a point and is drawn to it; the rest is done by keys, a pixel at a time.
    static void aim(Scene& scene, QPointF share) {
        const TapsItem* item = taps(scene);
        const QPoint at = item->mapToScene({share.x() * item->width(), share.y() * item->height()}).toPoint();
        QTest::mousePress(&scene.window(), Qt::LeftButton, {}, at + QPoint(6, 4));
        QTest::mouseMove(&scene.window(), at);
        QTest::mouseRelease(&scene.window(), Qt::LeftButton, {}, at);
        scene.settle();
    }
    /// The rest of the way, by the buttons that are called so.
    static void nudgeTo(Scene& scene, QPointF share) {
        const QPointF left = share - tape(scene)->aim();
        const int right = static_cast<int>(std::lround(left.x() * picture_width));
        const int down = static_cast<int>(std::lround(left.y() * picture_height));
        for (int i = 0; i < std::abs(right); ++i) {
            QVERIFY(scene.reach(right > 0 ? "The cross one pixel to the right" : "The cross one pixel to the left"));
        }
        for (int i = 0; i < std::abs(down); ++i) {
            QVERIFY(scene.reach(down > 0 ? "The cross one pixel down" : "The cross one pixel up"));
        }
    }
    static void tapAll(Scene& scene) {
        for (const Corners& corners : {rectangle(1300, 400, 210, 297), rectangle(0, 0, 1200, 1400)}) {
            for (const QPointF& corner : corners) {
                aim(scene, seen(corner));
                nudgeTo(scene, seen(corner));
                QVERIFY2(scene.reach("Set this corner"), qPrintable(scene.names().join(" | ")));
                scene.settle();
            }
        }
    }

    /// Every corner tapped where it is.
    static void tapExactly(Scene& scene) {
        OpenVisit* open = scene.notebook().open();
        const auto tapped = [](const Corners& corners) {
            TappedCorners taps;
            for (const QPointF& corner : corners) {
                taps.push_back({{seen(corner).x(), seen(corner).y()}});
            }
            return taps;
        };
        QVERIFY(open->editWindow("taps", open->windowId(), [&](Window& window) {
            PhotoPlane plane;
            plane.width_px = picture_width;
            plane.height_px = picture_height;
            plane.sheets.push_back({Length::mm(210), Length::mm(297), tapped(rectangle(1300, 400, 210, 297)), {}});
            plane.opening = tapped(rectangle(0, 0, 1200, 1400));
            window.photos.at(0).plane = plane;
            return true;
        }));
        scene.settle();
    }

private slots:
    // The photo lies straight under the drawing where the obstructions are placed, and can be taken away again.
    void theStraightPhotoLiesUnderTheDrawing_data() { Scene::sizesAndLooks(); }
    void theStraightPhotoLiesUnderTheDrawing() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openTape(scene);
        tapExactly(scene);
        scene.notebook().setScreen("obstructions");
        scene.settle();
        WallPhoto& wall = *scene.notebook().obstructions()->wall();
        QVERIFY(wall.isThere());
        QVERIFY(wall.photo() == nullptr);
        QVERIFY2(scene.reach("Lay the straightened photo under the drawing"), qPrintable(scene.names().join(" | ")));
        QTRY_VERIFY_WITH_TIMEOUT(wall.photo() != nullptr, patience);
        scene.notebook().obstructions()->add("radiator");
        scene.settle();
        scene.grabDressed("inway-on-photo");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.reach("Take the photo away from under the drawing"));
        scene.settle();
        QVERIFY(wall.photo() == nullptr);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void lookedAt_data() { Scene::sizesAndLooks(); }
    void lookedAt() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openTape(scene);
        scene.grabDressed("tape-empty");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        aim(scene, seen({1300, 697}));
        scene.settle();
        scene.grabDressed("tape-aimed");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        tape(scene)->lower();
        tapAll(scene);
        scene.settle();
        scene.grabDressed("tape-sizes");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.reach("another size"));
        scene.settle();
        scene.grabDressed("tape-own-size");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void cornersAreTappedOneAfterAnother() {
        Scene scene;
        openTape(scene);
        QVERIFY(scene.find("The sheet, top left: touch it in the picture.") != nullptr);
        QVERIFY(scene.find("Done with the photo") != nullptr);
        aim(scene, seen({1300, 697}));
        QVERIFY(scene.find("The sheet, top left: move the cross onto it, then set it.") != nullptr);
        // The loupe and the finger are on different sides.
        QVERIFY(scene.reach("Set this corner"));
        scene.settle();
        QCOMPARE(plane(scene).width_px, picture_width);
        QCOMPARE(plane(scene).height_px, picture_height);
        const auto [x, y] = plane(scene).sheets.at(0).corners.at(0).at(0);
        const TapsItem* item = taps(scene);
        QVERIFY(std::abs(x - seen({1300, 697}).x()) * item->width() <= 0.75);
        QVERIFY(std::abs(y - seen({1300, 697}).y()) * item->height() <= 0.75);
        QVERIFY(scene.find("The sheet, top right: touch it in the picture.") != nullptr);
        // Undone, it is asked for again.
        QVERIFY(scene.reach("undo"));
        scene.settle();
        QVERIFY(scene.find("The sheet, top left: touch it in the picture.") != nullptr);
        QVERIFY(!scene.notebook().open()->window()->photos.at(0).plane);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void sizesStandBesideTheTape() {
        Scene scene;
        openTape(scene);
        tapAll(scene);
        const ShownRows* sizes = tape(scene)->sizes();
        QCOMPARE(tape(scene)->trouble(), QString());
        QCOMPARE(sizes->count(), 8);
        const int top = sizes->indexOf("opening.width.top");
        // Corners were set to the nearest pixel, which is two millimetres here; ± is a few per cent.
        QVERIFY(std::abs(sizes->value(top, "figure").toDouble() - 1200.0) < 40.0);
        QVERIFY(sizes->value(top, "unit").toString().startsWith("± "));
        QCOMPARE(sizes->value(top, "taped").toString(), QString("tape: 1201"));
        QCOMPARE(sizes->value(sizes->indexOf("opening.height.right"), "taped").toString(), QString());
        QCOMPARE(tape(scene)->disagrees(), QString());
        scene.notebook().setScreen("walk");
        scene.notebook().walk()->jumpTo("opening.width.bottom");
        scene.settle();
        QVERIFY2(scene.notebook().walk()->line().startsWith("The photo agrees"),
                 qPrintable(scene.notebook().walk()->line()));
        scene.notebook().setScreen("photos");
        scene.settle();
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aSlipShowsWithoutASecondTape() {
        Scene scene;
        openTape(scene, 1350.0);
        tapAll(scene);
        QVERIFY2(tape(scene)->disagrees().contains("1350"), qPrintable(tape(scene)->disagrees()));
        scene.grabDressed("tape-disagrees");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        // At the station itself too, and beside a reading that no loop of the tape checks.
        scene.notebook().setScreen("walk");
        scene.notebook().walk()->jumpTo("opening.width.bottom");
        scene.settle();
        QVERIFY2(scene.notebook().walk()->line().startsWith("The photo is "),
                 qPrintable(scene.notebook().walk()->line()));
        QCOMPARE(scene.notebook().walk()->lineKind(), QString("differs"));
        QCOMPARE(scene.notebook().walk()->differsTitle(), QString("The photo says otherwise"));
        scene.grabDressed("tape-walk");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void keysAimAndSet() {
        Scene scene;
        openTape(scene);
        taps(scene)->forceActiveFocus(Qt::TabFocusReason);
        scene.key(Qt::Key_Right);
        QCOMPARE(tape(scene)->aim(), QPointF(0.5, 0.5));
        scene.key(Qt::Key_Right);
        scene.key(Qt::Key_Up, {}, Qt::ShiftModifier);
        QVERIFY(std::abs(tape(scene)->aim().x() - 0.51) < 1e-9);
        QVERIFY(std::abs(tape(scene)->aim().y() - (0.5 - 1.0 / picture_height)) < 1e-9);
        scene.key(Qt::Key_Escape);
        QVERIFY(!tape(scene)->aimed());
        scene.key(Qt::Key_Right);
        scene.key(Qt::Key_Return);
        scene.settle();
        QCOMPARE(plane(scene).sheets.at(0).corners.at(0).size(), 1U);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void theSheetsSizeIsChosenOrTyped() {
        Scene scene;
        openTape(scene);
        QVERIFY(scene.reach("across"));
        scene.settle();
        QCOMPARE(plane(scene).sheets.at(0).width.mm(), 297.0);
        QVERIFY(scene.reach("Letter"));
        scene.settle();
        QCOMPARE(plane(scene).sheets.at(0).height.mm(), 215.9);
        QVERIFY(scene.reach("another size"));
        scene.settle();
        QVERIFY(scene.reach("Its height"));
        scene.key(Qt::Key_A, {}, Qt::ControlModifier);
        scene.typeOnKeyboard("600");
        scene.key(Qt::Key_Return);
        scene.settle();
        QCOMPARE(plane(scene).sheets.at(0).height.mm(), 600.0);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aCornerIsTappedAgainAndForgotten() {
        Scene scene;
        openTape(scene);
        tapAll(scene);
        QVERIFY(scene.reach("The opening, bottom left"));
        aim(scene, seen({0, 0}));
        QVERIFY(scene.reach("Set this corner"));
        scene.settle();
        QCOMPARE(plane(scene).opening.at(3).size(), 2U);
        QVERIFY(scene.reach("Forget the taps of this corner; undo brings them back"));
        scene.settle();
        QVERIFY(plane(scene).opening.at(3).empty());
        QCOMPARE(tape(scene)->sizes()->count(), 0);
        QVERIFY(scene.reach("undo"));
        scene.settle();
        QCOMPARE(tape(scene)->sizes()->count(), 8);
        QVERIFY(
            scene.reach("One more sheet on this photo: on the other side of the opening it makes the sizes much "
                        "surer"));
        scene.settle();
        QCOMPARE(plane(scene).sheets.size(), 2U);
        QVERIFY(scene.find("Sheet 2, top left: touch it in the picture.") != nullptr);
        QVERIFY(scene.reach("This photo is no tape any more; undo brings it back"));
        scene.settle();
        QVERIFY(!scene.notebook().open()->window()->photos.at(0).plane);
        QCOMPARE(Scene::warnings(), QStringList());
    }
};

QTEST_MAIN(TapeTest)
#include "tape_test.moc"
