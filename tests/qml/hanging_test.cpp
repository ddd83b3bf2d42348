// SPDX-License-Identifier: Apache-2.0
#include "scene.h"

#include <QGuiApplication>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

// What is chosen at a window and of a cloth, and what stands beside the control as it is chosen.
class HangingTest : public QObject {
    Q_OBJECT

private:
    static void openParlour(Scene& scene, const QString& screen) {
        scene.openWindow("Pilot house", {});
        scene.openWindow("Pilot house", scene.notebook().visit()->windows()->value(0, "title").toString());
        scene.notebook().setScreen(screen);
        scene.settle();
    }

    /// The one item on the screen that is heard as a caution and begins so.
    static QQuickItem* caution(Scene& scene, const QString& words) {
        for (QQuickItem* item : scene.items()) {
            if (nameOf(item).startsWith("Caution. " + words)) {
                return item;
            }
        }
        return nullptr;
    }

    static int cautions(Scene& scene, const QString& words) {
        int count = 0;
        for (QQuickItem* item : scene.items()) {
            count += nameOf(item).startsWith("Caution. " + words) ? 1 : 0;
        }
        return count;
    }

    static double top(const QQuickItem* item) { return item->mapRectToScene(QRectF(QPointF(), item->size())).top(); }
    static double foot(const QQuickItem* item) {
        return item->mapRectToScene(QRectF(QPointF(), item->size())).bottom();
    }

private slots:
    void aCautionStandsAtTheControlThatBringsIt_data() { Scene::sizesAndLooks(); }
    void aCautionStandsAtTheControlThatBringsIt() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openParlour(scene, "hanging");
        const std::pair<QString, std::pair<QString, QString>> chosen[] = {
            {"Moved by", {"A cord", "Something corded"}},
            {"Held back by", {"Tie-backs", "A tie-back is a loop"}},
            {"Corner weights", {"Lead", "No lead weights"}}};
        for (const auto& [label, choice] : chosen) {
            const auto& [option, words] = choice;
            QCOMPARE(cautions(scene, words), 0);
            QVERIFY2(scene.reach(option), qPrintable(option + ": " + scene.names().join(" | ")));
            QCOMPARE(cautions(scene, words), 1);
            QQuickItem* said = caution(scene, words);
            // Right under the words that it was chosen from, and in sight without anything being moved.
            const QQuickItem* control = scene.find(label);
            QVERIFY(control != nullptr);
            QVERIFY(std::abs(top(said) - foot(control)) < 4.0);
            scene.grabDressed("caution-" + option.section(' ', -1));
            QVERIFY2(!scene.seen(said).isEmpty(), qPrintable(label));
            QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        }
        QVERIFY(scene.reach("By hand, no cord"));
        QCOMPARE(cautions(scene, "Something corded"), 0);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    // It needs no reading: a window where nothing was measured yet brings it as well.
    void aBlindCountsAsCordedBeforeAnythingIsMeasured() {
        Scene scene;
        scene.bench().openNewWindow();
        scene.notebook().hanging()->addLayer();
        scene.notebook().setScreen("hanging");
        scene.settle();
        QVERIFY2(scene.reach("Roman blind"), qPrintable(scene.names().join(" | ")));
        QCOMPARE(cautions(scene, "Nothing says what moves this blind"), 1);
        QVERIFY(std::abs(top(caution(scene, "Nothing says")) - foot(scene.find("Heading"))) < 4.0);
        QVERIFY(scene.reach("A motor"));
        QCOMPARE(cautions(scene, "Nothing says"), 0);
        QCOMPARE(cautions(scene, "A motor on the mains"), 1);
    }

    void aPublicRoomBringsTheCautionOfFireToItsCloth() {
        Scene scene;
        openParlour(scene, "hanging");
        QCOMPARE(cautions(scene, "This room is noted as"), 0);
        const auto& room = *scene.notebook().open()->roomOf(scene.notebook().open()->windowId());
        scene.notebook().visit()->setRoomUse(QString::fromStdString(room.id), "hotel bar");
        scene.settle();
        QCOMPARE(cautions(scene, "This room is noted as hotel bar"), 1);
        QVERIFY(std::abs(top(caution(scene, "This room is noted")) - foot(scene.find("Face cloth"))) < 4.0);
    }

    void aClothThatRunsOneWayIsSaidToDoSo() {
        Scene scene;
        openParlour(scene, "fabrics");
        const std::string cloth = *scene.notebook().open()->window()->layers[0].treatment->fabric;
        scene.notebook().fabrics()->edit(QString::fromStdString(cloth));
        scene.settle();
        QVERIFY2(scene.reach("Runs one way: all pieces top to top"), qPrintable(scene.names().join(" | ")));
        QVERIFY(scene.isChosen("Runs one way: all pieces top to top"));
        scene.grabDressed("one-way");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        scene.notebook().fabrics()->done();
        QVERIFY(value(scene.notebook().fabrics()->fabrics(), QString::fromStdString(cloth), "line")
                    .toString()
                    .endsWith("runs one way"));
        scene.notebook().setScreen("figures");
        scene.settle();
        const ShownRows* flags = scene.notebook().figures()->flags();
        QCOMPARE(flags->value(flags->count() - 1, "code").toString(), QString("one-way"));
        QVERIFY(scene.find("Note. " + flags->value(flags->count() - 1, "text").toString()));
        scene.notebook().walk()->undo();
        scene.settle();
        QVERIFY(!scene.notebook().open()->survey().fabrics[0].one_way);
        QCOMPARE(Scene::warnings(), QStringList());
    }
};

int main(int argc, char** argv) {
    QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    HangingTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "hanging_test.moc"
