// SPDX-License-Identifier: Apache-2.0
#include "elevation_item.h"
#include "scene.h"

#include <QGuiApplication>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

namespace {

struct Taken {
    const char* station;
    const char* typed;
};

/// The left plumb line of a recess: 860 + 1130 + 148 = 2138.
constexpr Taken parts[] = {{"opening.width.top", "1242"},    {"opening.width.middle", "1240"},
                           {"opening.width.bottom", "1241"}, {"below.left", "860"},
                           {"opening.height.left", "1130"},  {"above.left", "148"}};

}  // namespace

// What a person sees where a loop closes: that it adds up; what may be at fault; what was read before.
class SettlingTest : public QObject {
    Q_OBJECT

private:
    static void take(Scene& scene, const Taken& one) {
        WalkModel* walk = scene.notebook().walk();
        walk->jumpTo(one.station);
        scene.settle();
        for (const char* key = one.typed; *key != '\0'; ++key) {
            QVERIFY2(scene.touch(QString(QLatin1Char(*key))), qPrintable(scene.names().join(" | ")));
        }
        QVERIFY(scene.touch("Next"));
    }

    static void openParlour(Scene& scene) {
        scene.bench().openNewWindow();
        scene.settle();
        for (const Taken& one : parts) {
            take(scene, one);
        }
    }

    /// A pair to the floor, on a level pole.
    static void hangCurtains(Scene& scene) {
        scene.notebook().open()->editWindow("hung", scene.notebook().open()->windowId(), [](Window& window) {
            Layer layer;
            layer.hardware = Hardware();
            layer.hardware->kind = HardwareKind::pole;
            layer.hardware->diameter = Length::mm(28);
            layer.hardware->length = Length::mm(1720);
            layer.treatment = Treatment();
            layer.treatment->heading = Heading::tab;
            layer.treatment->length = HemAt::floor;
            window.layers = {layer};
            return true;
        });
        scene.settle();
    }

    static void grab(Scene& scene, const char* name) {
        const QSize size = scene.window().size();
        scene.grab(QStringLiteral("%1-%2x%3-%4")
                       .arg(QLatin1String(name))
                       .arg(size.width())
                       .arg(size.height())
                       .arg(scene.notebook().settings()->look()));
    }

    /// Wholly on the screen, above what stands at the foot.
    static bool isWhole(Scene& scene, const QString& name) {
        const QQuickItem* item = scene.find(name);
        if (item == nullptr) {
            return false;
        }
        const qreal own = item->inherits("QQuickText") ? item->boundingRect().height() : item->height();
        return scene.seen(item).height() >= own - 1;
    }

private slots:
    void aLoopThatCloses_data() { Scene::sizesAndLooks(); }
    void aLoopThatCloses() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openParlour(scene);
        WalkModel* walk = scene.notebook().walk();
        walk->jumpTo("ceiling.left");
        scene.settle();
        for (const char* key : {"2", "1", "4", "0"}) {
            QVERIFY(scene.touch(key));
        }
        QVERIFY2(walk->line().startsWith("Adds up, to 2 mm (tape and edges allow"), qPrintable(walk->line()));
        QVERIFY(scene.find(walk->line()));
        if (scale < 1.5) {  // the largest letters scroll
            QVERIFY2(isWhole(scene, walk->line()), qPrintable(scene.names().join(" | ")));
        }
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        grab(scene, scale > 1 ? "closes-large" : "closes");
        QVERIFY(scene.touch("Next"));
        QVERIFY(walk->line().contains("adds up, to 2 mm"));
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        grab(scene, scale > 1 ? "closed-large" : "closed");
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aLoopThatDoesnt_data() { Scene::sizesAndLooks(); }
    void aLoopThatDoesnt() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openParlour(scene);
        take(scene, {"ceiling.left", "2183"});
        WalkModel* walk = scene.notebook().walk();
        QVERIFY(walk->differs());
        grab(scene, scale > 1 ? "differs-large" : "differs");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.find("These differ by 45 mm"));
        QVERIFY(scene.find(walk->againSays()));
        for (int row = 0; row < std::min(2, walk->suspects()->count()) && scale < 1.5; ++row) {
            const QString spoken = walk->suspects()->value(row, "spoken").toString();
            QVERIFY2(isWhole(scene, spoken), qPrintable(spoken));
            const QString offer = walk->suspects()->value(row, "offerSpoken").toString();
            QVERIFY2(offer.isEmpty() || isWhole(scene, offer), qPrintable(offer));
        }
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aTie_data() { Scene::sizesAndLooks(); }
    void aTie() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openParlour(scene);
        take(scene, {"ceiling.left", "2238"});  // a hundred too much: each of the four may be one digit out
        WalkModel* walk = scene.notebook().walk();
        QVERIFY(walk->differs());
        grab(scene, scale > 1 ? "tie-large" : "tie");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(walk->suspects()->count() >= 2);
        QCOMPARE(walk->suspects()->value(0, "likely").toString(), QString("as likely as the next"));
        QVERIFY(!walk->suspects()->value(0, "isLikely").toBool());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void anOfferIsTakenAndUndone() {
        Scene scene;
        openParlour(scene);
        take(scene, {"ceiling.left", "2183"});
        WalkModel* walk = scene.notebook().walk();
        QVERIFY2(scene.touch("Floor to ceiling, left should read 2138"), qPrintable(scene.names().join(" | ")));
        QVERIFY(!walk->differs());
        QVERIFY2(scene.find("Floor to ceiling, left stands as 2138, proposed, until it is measured"),
                 qPrintable(scene.names().join(" | ")));
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        grab(scene, "proposed-next");
        walk->jumpTo("ceiling.left");
        scene.settle();
        QVERIFY(scene.find("Proposed: no tape has confirmed it yet"));
        const auto* drawing = qobject_cast<ElevationItem*>(scene.find("Drawing of the window"));
        QVERIFY(drawing);
        const auto& labels = drawing->elevation().labels;
        QVERIFY(std::ranges::count(labels, std::string("2138 proposed"), &Label::text) == 1);
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        grab(scene, "proposed");
        QVERIFY(scene.touch("Earlier readings of this station"));
        QVERIFY2(scene.find("2183 mm, measured, 14 March 2026, " +
                            walk->history()->value(1, "when").toString().right(5) + ", replaced"),
                 qPrintable(scene.names().join(" | ")));
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        grab(scene, "history");
        QVERIFY(scene.touch("Measure floor to ceiling, left"));
        QCOMPARE(walk->station(), QString("ceiling.left"));
        QCOMPARE(walk->typed(), QString());
        for (const char* key : {"2", "1", "3", "8", "Next"}) {
            QVERIFY(scene.touch(key));
        }
        QCOMPARE(value(walk->stations(), "ceiling.left", "figure").toString(), QString("2138 mm"));
        QVERIFY(scene.touch("undo"));
        QCOMPARE(value(walk->stations(), "ceiling.left", "figure").toString(), QString("2138 mm, proposed"));
        QVERIFY(scene.touch("undo"));
        QVERIFY(walk->differs());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void laterLetsTheWalkGoOn() {
        Scene scene;
        openParlour(scene);
        take(scene, {"ceiling.left", "2183"});
        WalkModel* walk = scene.notebook().walk();
        QVERIFY(walk->differs());
        const QString station = walk->station();
        QVERIFY2(scene.touch("Back"), qPrintable(scene.names().join(" | ")));
        QVERIFY(!walk->differs());
        QCOMPARE(walk->station(), station);
        take(scene, {"wall.left", "300"});
        QVERIFY(!walk->differs());
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        grab(scene, "put-off");
        QVERIFY(scene.touch("The readings that don’t add up"));
        QVERIFY(walk->differs());
        const QString again = walk->againStation();
        QVERIFY(scene.touch(walk->againSays()));
        QCOMPARE(walk->station(), again);
        QCOMPARE(walk->typed(), QString());
    }

    void theEndSaysWhatComesNext_data() { Scene::sizesAndLooks(); }
    void theEndSaysWhatComesNext() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openParlour(scene);
        hangCurtains(scene);
        for (const Taken& one : {Taken{"below.right", "882"}, Taken{"opening.height.right", "1130"}}) {
            take(scene, one);  // the floor or the sill: 22 mm more at the right
        }
        WalkModel* walk = scene.notebook().walk();
        while (!walk->atEnd()) {
            walk->cantReach("too-high");
            scene.settle();
        }
        grab(scene, scale > 1 ? "end-large" : "end");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.find("That was the last station"));
        QVERIFY2(walk->levelWhy().contains("level line"), qPrintable(walk->levelWhy()));
        QVERIFY(scene.find(walk->levelWhy()));
        const QString next = walk->nextStation();
        QVERIFY(!next.isEmpty());
        QVERIFY(scene.find(walk->nextWhy()));
        QQuickItem* action = scene.find(walk->nextSays());
        QVERIFY2(action, qPrintable(scene.names().join(" | ")));
        action->forceActiveFocus();  // scrolls it into sight
        scene.settle();
        QVERIFY(scene.touch(walk->nextSays()));
        QCOMPARE(walk->station(), next);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aLevelLineIsTaken() {
        Scene scene;
        openParlour(scene);
        WalkModel* walk = scene.notebook().walk();
        QVERIFY(scene.touch("All stations of this window"));
        QQuickItem* offer = scene.find("take a level line");
        QVERIFY2(offer, qPrintable(scene.names().join(" | ")));
        offer->forceActiveFocus();  // scrolls it into sight
        scene.settle();
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        grab(scene, "level-offer");
        QVERIFY(scene.touch("take a level line"));
        QCOMPARE(walk->station(), QString("level.left"));
        for (const char* key : {"1", "0", "0", "0", "Next"}) {
            QVERIFY(scene.touch(key));
        }
        QCOMPARE(walk->station(), QString("level.centre"));
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }
};

int main(int argc, char** argv) {
    QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    SettlingTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "settling_test.moc"
