// SPDX-License-Identifier: Apache-2.0
#include "scene.h"

#include <QGuiApplication>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

// Sheets to print, from the visit's page to the file.
class SheetsTest : public QObject {
    Q_OBJECT

private:
    static bool chose(Scene& scene, const QString& what) {
        scene.settle();
        return scene.touch(what);
    }

    static QByteArray only_file(Scene& scene) {
        if (!QTest::qWaitFor([&] { return !scene.notebook().sheets()->working(); }, patience)) {
            return {};
        }
        scene.settle();
        const auto& held = scene.bench().files->held;
        return held.size() == 1 ? held.first() : QByteArray();
    }

    /// So many windows that their sheets take a hundred times as long to write as a touch takes.
    static void makeMany(Scene& scene) {
        scene.notebook().open()->edit("many windows", [&](Survey& survey) {
            for (Room& room : survey.rooms) {
                const std::vector<Window> windows = room.windows;
                for (int copy = 0; copy < 15; ++copy) {
                    for (const Window& window : windows) {
                        room.windows.push_back(window);
                        room.windows.back().id = scene.notebook().open()->newId();
                    }
                }
            }
            return true;
        });
        scene.settle();
    }

private slots:
    void theChosenSheetsAreWritten() {
        Scene scene;
        scene.openWindow("Pilot house", {});
        scene.notebook().setScreen("sheets");
        QVERIFY2(chose(scene, "making sheets"), qPrintable(scene.names().join(" | ")));
        QVERIFY(chose(scene, "US Letter"));
        QVERIFY(chose(scene, "inches"));
        QVERIFY2(scene.isChosen("inches"), qPrintable(scene.names().join(" | ")));
        QVERIFY(chose(scene, "Write the PDF"));
        QVERIFY(only_file(scene).startsWith("%PDF-"));
        QCOMPARE(scene.bench().files->held.firstKey().fileName(), QString("Pilot house, making sheets.pdf"));
        QVERIFY(scene.notebook().sheets()->line().contains("Pilot house, making sheets.pdf"));
        scene.grab("sheets-written");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY(chose(scene, "Back to the visit"));
        QCOMPARE(scene.notebook().screen(), QString("visit"));
    }

    /// Pages of a PDF, by their objects.
    static qsizetype pagesOf(const QByteArray& pdf) { return pdf.count("/Type /Page\n"); }

    void oneWindowIsChosen_data() { Scene::sizesAndLooks(); }
    void oneWindowIsChosen() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        scene.openWindow("Pilot house", {});
        scene.notebook().setScreen("sheets");
        scene.settle();
        const ShownRows* windows = scene.notebook().visit()->windows();
        QVERIFY(windows->count() > 1);
        const QString title = windows->value(0, "title").toString();
        QVERIFY(scene.reach("measure sheets"));
        QVERIFY(scene.reach("Write the PDF"));
        const auto all = pagesOf(only_file(scene));
        scene.bench().files->held.clear();
        QVERIFY2(scene.reach(title), qPrintable(scene.names().join(" | ")));
        QVERIFY(scene.isChosen(title));
        scene.grab(QStringLiteral("sheets-window-%1-%2-%3").arg(size.width()).arg(scale).arg(QLatin1String(look)));
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY(scene.reach("Write the PDF"));
        const auto one = pagesOf(only_file(scene));
        QVERIFY2(one >= 1 && one < all, qPrintable(QStringLiteral("%1 of %2").arg(one).arg(all)));
        QVERIFY(scene.bench().files->held.firstKey().fileName().startsWith("Pilot house, " + title.section(',', 0, 0)));
        QVERIFY(scene.reach("all windows"));
        QCOMPARE(scene.notebook().sheets()->window(), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void anotherChoiceAsksForAnotherFile() {
        Scene scene;
        scene.openWindow("Pilot house", {});
        scene.notebook().setScreen("sheets");
        QVERIFY(chose(scene, "Write the PDF"));
        QVERIFY(!only_file(scene).isEmpty());
        QVERIFY(scene.notebook().sheets()->written());
        QVERIFY(chose(scene, "cutting list"));
        QVERIFY(!scene.notebook().sheets()->written());
        QVERIFY(scene.find("Write the PDF"));
    }

    void writingIsSeenAndCanBeStopped() {
        Scene scene;
        scene.openWindow("Pilot house", {});
        makeMany(scene);
        scene.notebook().setScreen("sheets");
        QVERIFY(chose(scene, "Write the PDF"));
        QVERIFY(scene.notebook().sheets()->working());
        QVERIFY(scene.notebook().sheets()->doing().startsWith("Writing the PDF, "));
        scene.notebook().sheets()->print();  // once is enough
        scene.grab("sheets-working");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY2(chose(scene, "Stop writing"), qPrintable(scene.names().join(" | ")));
        QVERIFY(only_file(scene).isEmpty());
        QCOMPARE(scene.notebook().sheets()->line(), QString("Stopped. Nothing was written."));
        QVERIFY(!scene.notebook().sheets()->written());
        QVERIFY(scene.bench().files->held.isEmpty());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void whatIsntWorkedYetIsSaid() {
        Scene scene;
        scene.bench().openNewWindow();
        scene.settle();
        scene.notebook().setScreen("sheets");
        QVERIFY(chose(scene, "making sheets"));
        QVERIFY(chose(scene, "Write the PDF"));
        QVERIFY(only_file(scene).isEmpty());
        QVERIFY(scene.bench().files->held.isEmpty());
        QVERIFY(!scene.notebook().sheets()->line().isEmpty());
    }
};

int main(int argc, char** argv) {
    QGuiApplication app(argc, argv);
    SheetsTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "sheets_test.moc"
