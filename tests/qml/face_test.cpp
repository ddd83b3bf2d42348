// SPDX-License-Identifier: Apache-2.0
#include "scene.h"

#include <QFontDatabase>
#include <QGuiApplication>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

namespace {
const QString house = QStringLiteral("Pilot house");

struct Place {
    const char* screen;
    const char* open;  // what is touched there to open a panel; empty: nothing
};
constexpr Place places[] = {{"visits", ""},
                            {"visits", "find"},
                            {"visit", ""},
                            {"visit", "site"},
                            {"fabrics", ""},
                            {"walk", ""},
                            {"walk", "end"},
                            {"walk", "Can’t reach this station"},
                            {"walk", "All stations of this window"},
                            {"obstructions", ""},
                            {"obstructions", "Add something that is in the way"},
                            {"hanging", ""},
                            {"figures", ""},
                            {"figures", "why"},
                            {"photos", ""},
                            {"send", ""},
                            {"settings", ""}};
}  // namespace

class FaceTest : public QObject {
    Q_OBJECT

private:
    static void open(Scene& scene, const Place& place) {
        scene.notebook().setScreen(QLatin1String(place.screen));
        const QString panel = QString::fromUtf8(place.open);
        WalkModel& walk = *scene.notebook().walk();
        if (panel != "end" && walk.stations()->count() > 2) {
            walk.jumpTo(walk.stations()->value(2, "station").toString());
        }
        scene.settle();
        if (panel == "end") {
            return;
        }
        if (panel == "site") {
            QVERIFY(scene.touch("Client and site: " + scene.notebook().visit()->clientName()));
        } else if (panel == "why") {
            FiguresModel& figures = *scene.notebook().figures();
            int row = 0;
            while (row + 1 < figures.figures()->count() && !figures.figures()->value(row, "asks").toBool()) {
                ++row;
            }
            figures.ask(figures.figures()->value(row, "path").toString());
            scene.settle();
            QVERIFY(figures.why()->count() > 0);
        } else if (!panel.isEmpty()) {
            QVERIFY2(scene.touch(panel), qPrintable(scene.names().join(" | ")));
        }
    }

    static void walkEveryPlace(QSize size, qreal scale, const char* hand, const char* look) {
        Scene scene(size);
        scene.notebook().settings()->setTextScale(scale);
        scene.notebook().settings()->setHand(QLatin1String(hand));
        scene.notebook().settings()->setLook(QLatin1String(look));
        scene.settle();
        const ShownRows* visits = scene.notebook().visits();
        QVERIFY(visits->count() > 0);
        QStringList faults;
        for (const Place& place : places) {
            scene.openWindow(house, firstWindow(scene));
            open(scene, place);
            const QString name =
                QStringLiteral("%1%2-%3x%4-%5-%6")
                    .arg(QLatin1String(place.screen),
                         *place.open ? "-" + QString::fromUtf8(place.open).left(5).trimmed() : QString())
                    .arg(size.width())
                    .arg(size.height())
                    .arg(scale)
                    .arg(QLatin1String(look));
            scene.grab(name);
            for (const QString& fault : scene.faultsOfLayout()) {
                faults << name + ": " + fault;
            }
            scene.notebook().figures()->ask({});
            scene.key(Qt::Key_Escape);
        }
        QVERIFY2(faults.isEmpty(), qPrintable("\n" + faults.join("\n")));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static QString firstWindow(Scene& scene) {
        scene.openWindow(house, {});
        return scene.notebook().visit()->windows()->value(0, "title").toString();
    }

private slots:
    void everyScreenLiesWell_data() {
        QTest::addColumn<QSize>("size");
        QTest::addColumn<double>("scale");
        QTest::addColumn<QByteArray>("hand");
        QTest::addColumn<QByteArray>("look");
        QTest::newRow("phone") << QSize(360, 760) << 1.0 << QByteArray("right") << QByteArray("light");
        QTest::newRow("phone, left, dark") << QSize(360, 760) << 1.0 << QByteArray("left") << QByteArray("dark");
        QTest::newRow("phone, largest letters") << QSize(360, 760) << 2.0 << QByteArray("right") << QByteArray("light");
        QTest::newRow("tablet") << QSize(1024, 768) << 1.0 << QByteArray("right") << QByteArray("light");
        QTest::newRow("tablet, left, largest") << QSize(1024, 768) << 2.0 << QByteArray("left") << QByteArray("dark");
        QTest::newRow("phone on its side") << QSize(760, 360) << 1.0 << QByteArray("right") << QByteArray("dark");
    }
    void everyScreenLiesWell() {
        QFETCH(QSize, size);
        QFETCH(double, scale);
        QFETCH(QByteArray, hand);
        QFETCH(QByteArray, look);
        walkEveryPlace(size, scale, hand.constData(), look.constData());
    }

    void theKeypadTypesFractions() {
        Scene scene;
        scene.openWindow(house, firstWindow(scene));
        WalkModel& walk = *scene.notebook().walk();
        walk.takeAgain();
        scene.settle();
        for (const char* key : {"4", "8", "Fractions", "3/8"}) {
            QVERIFY2(scene.touch(QString::fromUtf8(key)), qPrintable(scene.names().join(" | ")));
        }
        QCOMPARE(walk.typed(), QStringLiteral("48 3/8"));
        QVERIFY(scene.touch("Fractions"));
        QVERIFY(scene.touch("Sixteenths"));
        QVERIFY(scene.find("15/16"));
        QVERIFY(scene.touch("Fractions"));
        QVERIFY(scene.find("9"));
        QVERIFY(scene.click("Rub out"));
        QVERIFY(walk.typed() != QStringLiteral("48 3/8"));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aKeyboardTypesToo() {
        Scene scene;
        scene.openWindow(house, firstWindow(scene));
        WalkModel& walk = *scene.notebook().walk();
        walk.takeAgain();
        scene.settle();
        scene.typeOnKeyboard("1240,5");
        QCOMPARE(walk.typed(), QStringLiteral("1240,5"));
        scene.key(Qt::Key_Backspace);
        scene.key(Qt::Key_Backspace);
        QCOMPARE(walk.typed(), QStringLiteral("1240"));
        const int before = walk.index();
        scene.key(Qt::Key_Return);
        QCOMPARE(walk.index(), before + 1);
    }

    void theKeypadMirrors() {
        Scene scene;
        scene.openWindow(house, firstWindow(scene));
        scene.notebook().walk()->takeAgain();
        scene.settle();
        QVERIFY(scene.seen(scene.find("Next")).left() > 180);
        QVERIFY(scene.seen(scene.find("Rub out")).left() > 180);
        scene.notebook().settings()->setHand("left");
        scene.settle();
        QCOMPARE(scene.seen(scene.find("Next")).left(), 0.0);
        QVERIFY(scene.seen(scene.find("Rub out")).right() < 180);
        // The figures keep their order: a person knows them by place.
        QVERIFY(scene.seen(scene.find("1")).left() < scene.seen(scene.find("2")).left());
    }

    void escapeAlwaysLeadsBackToTheVisits() {
        Scene scene;
        for (const Place& place : places) {
            scene.openWindow(house, firstWindow(scene));
            open(scene, place);
            for (int steps = 0; steps < 6 && scene.notebook().screen() != "visits"; ++steps) {
                scene.key(Qt::Key_Escape);
            }
            QVERIFY2(scene.notebook().screen() == "visits", place.screen);
        }
    }

    void theFocusedFieldStaysAboveTheKeyboard() {
        Scene scene;
        scene.openWindow(house, {});
        open(scene, {"visit", "site"});
        QQuickItem* last = nullptr;
        for (QQuickItem* target : scene.targets()) {
            if (target->inherits("QQuickTextField")) {
                last = target;
            }
        }
        QVERIFY(last);
        last->forceActiveFocus();
        scene.window().setProperty("keyboardHeight", 300);
        scene.settle();
        const QRectF seen = scene.seen(last);
        QVERIFY(seen.height() >= 48);
        QVERIFY(seen.bottom() <= 460);
    }

    void typedWordsOfAFormAreKept() {
        Scene scene;
        scene.openWindow(house, {});
        open(scene, {"visit", "site"});
        QVERIFY2(scene.click("Address"), qPrintable(scene.names().join(" | ")));
        scene.key(Qt::Key_A, {}, Qt::ControlModifier);
        scene.typeOnKeyboard("9 Slipway Row");
        QVERIFY(scene.touch("Back to the visit"));
        QCOMPARE(scene.notebook().visit()->address(), QStringLiteral("9 Slipway Row"));
    }

    // WCAG 2.2: 1.4.6 asks 7:1 for the figures (our own rule), 1.4.3 asks 4.5:1 for the rest.
    void coloursStandOut() {
        Scene scene;
        for (const bool dark : {false, true}) {
            scene.notebook().settings()->setLook(dark ? "dark" : "light");
            const auto colour = [&](const char* name) { return scene.theme().property(name).value<QColor>(); };
            for (const char* ground : {"paper", "wash"}) {
                QVERIFY(contrast(colour("ink"), colour(ground)) >= 7.0);
                QVERIFY(contrast(colour("soft"), colour(ground)) >= 4.5);
            }
            QVERIFY(contrast(colour("thread"), colour("paper")) >= 7.0);
        }
        // The formula against its published ends: black on white is 21:1.
        QCOMPARE(contrast(Qt::black, Qt::white), 21.0);
    }
};

int main(int argc, char** argv) {
    QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    FaceTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "face_test.moc"
