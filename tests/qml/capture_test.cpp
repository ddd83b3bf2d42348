// SPDX-License-Identifier: Apache-2.0
#include "plain_recess.h"
#include "scene.h"

#include "survey/counted.h"
#include "survey/stations.h"
#include "writing.h"

#include <QGuiApplication>
#include <QLineF>
#include <QTest>
#include <algorithm>
#include <cstdio>

using namespace truehang;
using namespace truehang::test;

namespace {

/// A thumb that counts what it does. Paces: a tap 0.28 s, a decision before each tap that types no digit 1.35 s (Card,
/// Moran, Newell, The Keystroke-Level Model, CACM 23 (7), 1980: K of a non-secretary typist, M; from memory). Travel in
/// mm of a screen of 160 px to the inch, the size that device-independent px are defined by.
class Thumb {
public:
    explicit Thumb(Scene& scene) : scene_(scene) {}

    bool tap(const QString& name) {
        const QQuickItem* item = scene_.find(name);
        if (item == nullptr) {
            std::fprintf(stderr, "%s isn't there: %s\n", qPrintable(name), qPrintable(scene_.names().join(" | ")));
            return false;
        }
        if (scene_.seen(item).height() < 24) {
            ++swipes_;
            if (!scene_.reach(name)) {
                return false;
            }
        } else if (!scene_.touch(name)) {
            return false;
        }
        ++taps_;
        return true;
    }

    bool tapKey(const QString& name) {
        const QQuickItem* item = scene_.find(name);
        if (item == nullptr) {
            return false;
        }
        const QPointF there = scene_.seen(item).center();
        if (!last_.isNull()) {
            travel_px_ += QLineF(last_, there).length();
        }
        last_ = there;
        ++keys_;
        return tap(name);
    }

    [[nodiscard]] int taps() const { return taps_; }
    [[nodiscard]] int swipes() const { return swipes_; }
    [[nodiscard]] double travelMm() const { return travel_px_ / 160.0 * 25.4; }
    [[nodiscard]] double seconds() const { return 0.28 * (taps_ + swipes_) + 1.35 * (taps_ + swipes_ - keys_); }

private:
    Scene& scene_;
    int taps_ = 0;
    int swipes_ = 0;
    int keys_ = 0;
    double travel_px_ = 0.0;
    QPointF last_;
};

bool type(Thumb& thumb, const QString& text, int& digits) {
    for (const QChar character : text) {
        if (character.isDigit() || character == QLatin1Char('.')) {
            ++digits;
            if (!thumb.tapKey(character.isDigit() ? QString(character) : QStringLiteral("Decimal mark"))) {
                return false;
            }
        }
    }
    return true;
}

}  // namespace

// How much a window costs the thumb.
class CaptureTest : public QObject {
    Q_OBJECT

    /// The surveyor's lists as they stand after some visits: this house's cloths, and the pole of its south window.
    static void fillLists(Scene& scene) {
        scene.openWindow("Pilot house", {});
        Notebook& notebook = scene.notebook();
        notebook.openWindow(notebook.visit()->windows()->value(0, "windowId").toString());
        scene.settle();
        const Survey survey = notebook.open()->survey();
        for (const Fabric& fabric : survey.fabrics) {
            notebook.lists()->keepCloth(shown(fabric.id));
        }
        notebook.hanging()->editLayer(0);
        notebook.lists()->keepHardware();
        scene.settle();
    }

    static QString nameOfCloth(Scene& scene, FabricRole role) {
        for (const Fabric& fabric : scene.notebook().open()->survey().fabrics) {
            if (fabric.role && fabric.role->is(role)) {
                return shown(fabric.name);
            }
        }
        return {};
    }

private slots:
    // At most 1.3 times the digits and twelve taps more, from "new window" to figures.
    void aPlainRecessIsQuickerThanPaper() {
        Scene scene;
        fillLists(scene);
        const QString face = nameOfCloth(scene, FabricRole::face);
        const QString lining = nameOfCloth(scene, FabricRole::lining);
        const ShownRows* kept = scene.notebook().lists()->items();
        const QString pole = kept->value(kept->count() - 1, "name").toString();
        QVERIFY2(pole.startsWith("Pole"), qPrintable(pole));
        scene.notebook().setScreen("visits");
        scene.settle();
        QVERIFY(scene.touch("New visit"));
        Thumb thumb(scene);
        int digits = 0;
        QVERIFY(thumb.tap("Add the first window"));
        QVERIFY(thumb.tap("Recess"));
        for (const Typed& reading : plain_recess) {
            QCOMPARE(scene.notebook().walk()->station(), QString(reading.station));
            QVERIFY(type(thumb, reading.digits, digits));
            QVERIFY(thumb.tapKey("Next"));
        }
        QVERIFY(scene.notebook().walk()->atEnd());
        scene.grab("capture-end");
        for (const QString& name :
             {QString("What is in the way"), QString("What hangs here"), QString("Hang something here"),
              QString("Pencil pleat"), face, lining, pole, QString("See the figures")}) {
            QVERIFY2(thumb.tap(name), qPrintable(name));
            scene.grab("capture-" + name.simplified().replace(' ', '-'));
        }
        const WindowFigures& worked = scene.notebook().open()->figuresOf(scene.notebook().open()->windowId());
        for (const Flag& flag : worked.flags) {
            QVERIFY2(flag.severity != Severity::stop && flag.severity != Severity::remeasure, flag.text.c_str());
        }
        QVERIFY(!worked.layers.empty());
        scene.grab("capture-figures");
        const double limit = 1.3 * digits + 12;
        std::printf(
            "plain recess, floor-length pair: %d digits, %d taps and %d swipes to its figures (%.1f taps allowed)\n",
            digits, thumb.taps(), thumb.swipes(), limit);
        QVERIFY(thumb.taps() <= limit);
        QVERIFY2(Scene::warnings().isEmpty(), qPrintable(Scene::warnings().join('\n')));
    }

    // Each window of the house measured anew, station by station, as its readings say: what it costs the thumb.
    void theHouseByThumb() {
        Scene scene;
        scene.openWindow("Pilot house", {});
        const Survey house = scene.notebook().open()->survey();
        QVERIFY(scene.notebook().visit()->addRoom("Again") != QString());
        const auto rooms = scene.notebook().open()->survey().rooms;
        for (const Room& room : house.rooms) {
            for (const Window& window : room.windows) {
                const QString made = scene.notebook().visit()->addWindow(shown(rooms.back().id), shown(window.name),
                                                                         shown(window.shape.text()));
                scene.notebook().openWindow(made);
                scene.settle();
                measure(scene, window);
            }
        }
        QVERIFY2(Scene::warnings().isEmpty(), qPrintable(Scene::warnings().join('\n')));
    }

private:
    /// Types what the window has for each station that the walk comes to, and goes past those it hasn't.
    static void measure(Scene& scene, const Window& window) {
        const auto counted = counted_readings(window, *window.shape.known());
        const std::string unit = entry_unit(scene.notebook().open()->survey()) == LengthUnit::in ? " in" : " mm";
        Thumb thumb(scene);
        int digits = 0;
        int readings = 0;
        int not_taken = 0;
        WalkModel* walk = scene.notebook().walk();
        for (int guard = 0; !walk->atEnd() && guard < 60; ++guard) {
            if (walk->differs()) {
                walk->later();
                scene.settle();
            }
            const auto* found = find_counted(counted, bytes(walk->station()));
            if (found == nullptr) {
                QVERIFY(thumb.tap("Can’t reach this station"));
                QVERIFY(thumb.tap("Something stands in the way"));
                ++not_taken;
                continue;
            }
            QVERIFY(type(thumb, shown(std::to_string(std::lround(found->reading->value->mm()))), digits));
            QVERIFY(thumb.tapKey("Next"));
            ++readings;
        }
        std::printf("%-28s %2d readings, %3d digits, %3d taps, thumb %4.0f mm, %4.0f s\n", window.name.c_str(),
                    readings, digits, thumb.taps(), thumb.travelMm(), thumb.seconds());
        QVERIFY(walk->atEnd());
        QVERIFY(thumb.taps() <= 1.3 * digits + 2 * not_taken + 12);
    }
};

int main(int argc, char** argv) {
    const QGuiApplication app(argc, argv);
    CaptureTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "capture_test.moc"
