// SPDX-License-Identifier: Apache-2.0
#include "elevation_item.h"
#include "scene.h"
#include "sheet/drawing.h"

#include <QGuiApplication>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

// Bays, corners, arches and gables, made and measured as a person does: touches on the keypad and on the drawing.

namespace {

using Typed = QMap<QString, QString>;

/// A bay of 700, 1200, 700 at 135°: 1200 + 2·700·cos 45° = 2189.9 across.
const Typed keepers_bay{{"facet.1.width", "700"},        {"facet.2.width", "1200"},
                        {"facet.3.width", "700"},        {"corner.1.angle_deg", "135"},
                        {"corner.2.angle_deg", "134.9"}, {"bay.chord", "2190"},
                        {"below.left", "640"},           {"facet.1.height", "1300"},
                        {"above.left", "260"},           {"ceiling.left", "2200"},
                        {"facet.2.height", "1302"},      {"below.right", "642"},
                        {"facet.3.height", "1299"},      {"pole.above", "120"}};

Typed with(Typed typed, const Typed& others) {
    for (auto other = others.begin(); other != others.end(); ++other) {
        typed[other.key()] = other.value();
    }
    return typed;
}

/// 560, 610, 640, 612, 558 with corners of 150, 157.5, 157.5 and 150°: each facet's direction turns on from the last.
const Typed five_facets = with(keepers_bay, {{"facet.1.width", "560"},
                                             {"facet.2.width", "610"},
                                             {"facet.3.width", "640"},
                                             {"facet.4.width", "612"},
                                             {"facet.5.width", "558"},
                                             {"corner.1.angle_deg", "150"},
                                             {"corner.2.angle_deg", "157.5"},
                                             {"corner.3.angle_deg", "157.5"},
                                             {"corner.4.angle_deg", "150"},
                                             {"bay.chord", "2466"},
                                             {"facet.4.height", "1300"},
                                             {"facet.5.height", "1301"}});

/// A right angle between 1200 and 900: 1500 across.
const Typed corner{{"facet.1.width", "1200"}, {"facet.2.width", "900"}, {"corner.1.angle_deg", "90"},
                   {"corner.chord", "1500"},  {"below.left", "820"},    {"facet.1.height", "1130"},
                   {"above.left", "240"},     {"ceiling.left", "2190"}, {"below.right", "824"},
                   {"facet.2.height", "1131"}};

/// A semicircle over 1200.
const Typed round_arch{{"opening.width.top", "1200"},
                       {"opening.width.bottom", "1201"},
                       {"below.left", "800"},
                       {"opening.height.left", "1100"},
                       {"below.centre", "800"},
                       {"opening.height.centre", "1700"},
                       {"arch.rise", "600"},
                       {"above.centre", "300"},
                       {"ceiling.centre", "2800"},
                       {"below.right", "801"},
                       {"opening.height.right", "1100"},
                       {"pole.above.centre", "90"}};

/// Feet 700 over the sill, the apex 1900 over it and 850 from the left: slopes √(850² + 1200²) = 1470.5 and
/// √(1150² + 1200²) = 1662.1.
const Typed sail_loft{{"opening.width.bottom", "2000"}, {"below.left", "900"},        {"opening.height.left", "700"},
                      {"gable.apex.along", "850"},      {"below.centre", "900"},      {"opening.height.centre", "1900"},
                      {"above.centre", "250"},          {"ceiling.centre", "3050"},   {"below.right", "900"},
                      {"opening.height.right", "700"},  {"gable.slope.left", "1470"}, {"gable.slope.right", "1662"},
                      {"pole.above.centre", "90"}};

/// A floor that falls by 24 from left to right under a level line.
const Typed sloping{{"opening.width.top", "1200"}, {"opening.width.middle", "1201"}, {"opening.width.bottom", "1200"},
                    {"below.left", "900"},         {"opening.height.left", "1200"},  {"above.left", "250"},
                    {"ceiling.left", "2350"},      {"below.right", "924"},           {"opening.height.right", "1200"},
                    {"pole.above", "150"},         {"level.left", "1000"},           {"level.right", "1024"}};

}  // namespace

class ShapesTest : public QObject {
    Q_OBJECT

private:
    static void makeWindow(Scene& scene, const char* shape, const char* name) {
        QVERIFY(scene.touch("New visit"));
        QVERIFY2(scene.touch("Add the first window"), qPrintable(scene.names().join(" | ")));
        QVERIFY(scene.click("Name"));
        scene.typeOnKeyboard(QString::fromUtf8(name));
        QVERIFY2(scene.touch(shape), qPrintable(scene.names().join(" | ")));
        QCOMPARE(scene.notebook().screen(), QStringLiteral("walk"));
    }

    static void touchKeys(Scene& scene, const QString& typed) {
        for (const QChar key : typed) {
            QVERIFY2(scene.touch(key == '.' ? QStringLiteral("Decimal mark") : QString(key)), qPrintable(typed));
        }
    }

    /// Walks to the end, typing what each station reads there and going on where nothing is to be read.
    static void walk(Scene& scene, const Typed& typed, const QString& picture) {
        WalkModel& walk = *scene.notebook().walk();
        for (int step = 0; step < 80 && !walk.atEnd(); ++step) {
            if (walk.differs()) {
                scene.grab(picture + "-differs-" + walk.station());
                scene.key(Qt::Key_Escape);  // later
                QVERIFY(!walk.differs());
                continue;
            }
            const QString station = walk.station();
            const bool first = walk.typed().isEmpty();
            if (first && typed.contains(station)) {
                touchKeys(scene, typed.value(station));
                QCOMPARE(walk.typed(), typed.value(station));
                scene.grab(picture + "-" + station);
            }
            QVERIFY(scene.touch("Next"));
        }
        scene.settle();
    }

    static const Reading* reading(Scene& scene, const char* station) {
        const Window* window = scene.notebook().open()->window(scene.notebook().open()->windowId());
        const auto found = std::ranges::find(window->readings, std::string(station), &Reading::station);
        return found == window->readings.end() ? nullptr : &*found;
    }

    /// Scrolls until what is called this is seen.
    static void scrollTo(Scene& scene, const QString& name) {
        QQuickItem* item = scene.find(name);
        QVERIFY2(item, qPrintable(scene.names().join(" | ")));
        for (QQuickItem* above = item->parentItem(); above != nullptr; above = above->parentItem()) {
            if (above->inherits("QQuickFlickable")) {
                auto* content = above->property("contentItem").value<QQuickItem*>();
                const double most = std::max(0.0, above->property("contentHeight").toDouble() - above->height());
                above->setProperty("contentY", std::clamp(item->mapToItem(content, {0, 0}).y() - 60.0, 0.0, most));
            }
        }
        scene.settle();
    }

    /// Takes each reading at its station, the walk's or another.
    static void measure(Scene& scene, const Typed& typed) {
        WalkModel& walk = *scene.notebook().walk();
        for (auto one = typed.begin(); one != typed.end(); ++one) {
            walk.jumpTo(one.key());
            scene.bench().type(one.value());
            QVERIFY2(walk.next(), qPrintable(one.key()));
        }
        scene.settle();
    }

    /// Opens this screen, scrolls to what is called this and says how it lies.
    static QStringList look(Scene& scene, const QString& picture, const char* screen, const QString& name) {
        scene.notebook().setScreen(QLatin1String(screen));
        scene.settle();
        if (!name.isEmpty()) {
            scrollTo(scene, name);
        }
        scene.grab(picture + QLatin1Char('-') + QLatin1String(screen));
        return scene.faultsOfLayout();
    }

    /// Says that it is up, is asked for its height and takes it as it hangs.
    static QStringList measureItOnceUp(Scene& scene, const QString& picture) {
        scene.notebook().hanging()->hardware()->choose("stage", "fixed");
        QStringList faults = look(scene, picture + "-up", "hanging", "Is it up?");
        WalkModel& walk = *scene.notebook().walk();
        faults << look(scene, picture + "-up", "figures", {});
        walk.openWindow(walk.windowId(), "pole.above");
        faults << look(scene, picture + "-up", "walk", {});
        if (walk.typed().isEmpty() && scene.touch("1") && scene.touch("7") && scene.touch("2") && scene.touch("Next")) {
            return faults << look(scene, picture + "-mended", "figures", {})
                          << look(scene, picture + "-mended", "hanging", "Is it up?");
        }
        return faults << QStringLiteral("the pole’s height isn’t asked for: %1").arg(walk.typed());
    }

    static void hangPencilPleats(Scene& scene) {
        const QString cloth = scene.notebook().fabrics()->add("face");
        scene.notebook().fabrics()->form()->leave("name", "Harbour linen");
        scene.notebook().fabrics()->form()->leave("width", "1400");
        HangingModel& hanging = *scene.notebook().hanging();
        hanging.addLayer();
        hanging.treatment()->choose("heading", "pencil-pleat");
        hanging.treatment()->choose("fabric", cloth);
        hanging.hardware()->choose("kind", "track");
        hanging.hardware()->leave("projection", "80");
        hanging.hardware()->leave("length", "1600");
        scene.settle();
    }

    static ElevationItem* drawing(Scene& scene) {
        return qobject_cast<ElevationItem*>(scene.find("Drawing of the window"));
    }

private slots:
    void aBayIsWalkedByKeys() {
        Scene scene;
        makeWindow(scene, "Bay", "lantern room");
        WalkModel& walk = *scene.notebook().walk();
        QCOMPARE(walk.station(), QStringLiteral("facet.1.width"));
        ShapesTest::walk(scene, keepers_bay, "bay");
        for (auto one = keepers_bay.begin(); one != keepers_bay.end(); ++one) {
            const Reading* kept = reading(scene, qPrintable(one.key()));
            QVERIFY2(kept, qPrintable(one.key()));
            if (one.key().endsWith("angle_deg")) {
                QVERIFY(!kept->value);
                QCOMPARE(kept->angle->degrees(), one.value().toDouble());
                QCOMPARE(QString::fromStdString(kept->typed), one.value() + QStringLiteral("°"));
            } else {
                QVERIFY(!kept->angle);
                QCOMPARE(kept->value->mm(), one.value().toDouble());
            }
        }
        QCOMPARE(value(walk.stations(), "corner.1.angle_deg", "figure").toString(), QStringLiteral("135°"));
        scene.grab("bay-end");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void anAngleIsTypedInDegrees() {
        Scene scene;
        makeWindow(scene, "Bay", "lantern room");
        WalkModel& walk = *scene.notebook().walk();
        const QString before = walk.unit();
        walk.jumpTo("corner.1.angle_deg");
        scene.settle();
        QCOMPARE(walk.unit(), QStringLiteral("°"));
        QVERIFY(scene.find("Degrees"));
        touchKeys(scene, "1345");
        QVERIFY(scene.touch("Next"));
        QCOMPARE(walk.station(), QStringLiteral("corner.1.angle_deg"));
        QCOMPARE(walk.lineKind(), QStringLiteral("fault"));
        scene.grab("angle-refused");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.touch("Rub out"));
        touchKeys(scene, ".5");
        QVERIFY(scene.touch("Next"));
        scene.settle();
        QCOMPARE(reading(scene, "corner.1.angle_deg")->angle->degrees(), 134.5);
        walk.jumpTo("corner.1.angle_deg");
        scene.settle();
        QCOMPARE(walk.typed(), QStringLiteral("134.5"));
        walk.jumpTo("facet.2.width");
        QCOMPARE(walk.unit(), before);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aTouchOnThePlanPicksItsStation() {
        Scene scene;
        makeWindow(scene, "Bay", "lantern room");
        const ElevationItem* item = drawing(scene);
        QVERIFY(item);
        for (const char* station : {"bay.chord", "corner.2.angle_deg", "facet.3.width"}) {
            const auto& runs = item->elevation().runs;
            const auto run = std::ranges::find(runs, std::string(station), &TapeRun::station);
            QVERIFY2(run != runs.end(), station);
            const QPointF middle((run->run[0].x + run->run[1].x) / 2, (run->run[0].y + run->run[1].y) / 2);
            for (int tap = 0; tap < 6 && scene.notebook().walk()->station() != station; ++tap) {
                QTest::mouseClick(&scene.window(), Qt::LeftButton, {}, item->mapToScene(middle).toPoint());
                scene.settle();
            }
            QCOMPARE(scene.notebook().walk()->station(), QString(station));
        }
    }

    void aBayHasAsManyFacetsAsAreMeasured() {
        Scene scene;
        makeWindow(scene, "Bay", "lantern room");
        QVERIFY(scene.touch("All stations of this window"));
        scrollTo(scene, "Width of facet 4");
        QVERIFY2(scene.touch("Width of facet 4"), qPrintable(scene.names().join(" | ")));
        QCOMPARE(scene.notebook().walk()->station(), QStringLiteral("facet.4.width"));
        touchKeys(scene, "612");
        scene.grab("bay-fourth-facet");
        QVERIFY(scene.touch("Next"));
        scene.settle();
        QCOMPARE(reading(scene, "facet.4.width")->value->mm(), 612.0);
        QVERIFY(scene.notebook().walk()->stations()->indexOf("corner.3.angle_deg") >= 0);
        QVERIFY(scene.touch("All stations of this window"));
        scrollTo(scene, "Width of facet 5");
        scene.grab("bay-overview");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY2(scene.find("Width of facet 5"), qPrintable(scene.names().join(" | ")));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void everyShapeLiesWell_data() {
        QTest::addColumn<QByteArray>("shape");
        QTest::addColumn<QSize>("size");
        for (const QSize size : {QSize(360, 760), QSize(1024, 768)}) {
            for (const char* shape : {"bay", "bay5", "bayopen", "corner", "arch", "gable"}) {
                QTest::addRow("%s %d", shape, size.width()) << QByteArray(shape) << size;
            }
        }
    }
    void everyShapeLiesWell() {
        QFETCH(QByteArray, shape);
        QFETCH(QSize, size);
        const QMap<QByteArray, Typed> readings{
            {"bay", keepers_bay}, {"bay5", five_facets}, {"bayopen", with(keepers_bay, {{"bay.chord", "2290"}})},
            {"corner", corner},   {"arch", round_arch},  {"gable", sail_loft}};
        const QByteArray word = shape.startsWith("bay") ? QByteArray("bay") : shape;
        Scene scene(size);
        scene.bench().openNewWindow(QString::fromLatin1(word));
        scene.settle();
        const QString picture = QStringLiteral("%1-%2").arg(QString::fromLatin1(shape)).arg(size.width());
        WalkModel& walk = *scene.notebook().walk();
        const Typed& typed = readings[shape];
        if (shape == "bay5") {  // the walk asks for three facets until a fifth is measured
            for (const char* station : {"facet.4.width", "facet.5.width"}) {
                walk.jumpTo(station);
                scene.bench().type(typed.value(station));
                QVERIFY(walk.next());
                scene.settle();
            }
            walk.openWindow(walk.windowId());
        }
        ShapesTest::walk(scene, typed, picture);
        QStringList faults = scene.faultsOfLayout();
        scene.grab(picture + "-end");
        for (const char* screen : {"figures", "obstructions", "hanging"}) {
            scene.notebook().setScreen(QLatin1String(screen));
            scene.settle();
            scene.grab(picture + "-" + screen);
            faults << scene.faultsOfLayout();
        }
        QVERIFY2(faults.isEmpty(), qPrintable("\n" + faults.join("\n")));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void whatHangsThereLiesWell_data() {
        QTest::addColumn<QByteArray>("shape");
        QTest::addColumn<QSize>("size");
        for (const QSize size : {QSize(360, 760), QSize(1024, 768)}) {
            for (const char* shape : {"bay", "arch", "recess"}) {
                QTest::addRow("%s %d", shape, size.width()) << QByteArray(shape) << size;
            }
        }
    }
    void whatHangsThereLiesWell() {
        QFETCH(QByteArray, shape);
        QFETCH(QSize, size);
        const QMap<QByteArray, Typed> readings{{"bay", keepers_bay}, {"arch", round_arch}, {"recess", sloping}};
        Scene scene(size);
        scene.bench().openNewWindow(QString::fromLatin1(shape));
        measure(scene, readings[shape]);
        hangPencilPleats(scene);
        const QString picture = QStringLiteral("hung-%1-%2").arg(QString::fromLatin1(shape)).arg(size.width());
        HangingModel& hanging = *scene.notebook().hanging();
        QStringList faults = look(scene, picture + "-first", "hanging", "Wall to its centre line");
        if (shape == "arch") {
            hanging.treatment()->choose("top", "shaped");
            faults << look(scene, picture, "hanging", "Top");
        } else if (shape == "bay") {
            hanging.hardware()->choose("run", "bent");
            faults << look(scene, picture, "hanging", "Round the corners");
        } else {
            hanging.treatment()->choose("drops", "per-line");
            faults << look(scene, picture, "hanging", "Hem");
        }
        faults << look(scene, picture, "figures", {});
        if (shape != "arch") {
            faults << measureItOnceUp(scene, picture);
        }
        QVERIFY2(faults.isEmpty(), qPrintable("\n" + faults.join("\n")));
        QCOMPARE(Scene::warnings(), QStringList());
    }
};

int main(int argc, char** argv) {
    QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    ShapesTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "shapes_test.moc"
