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
        scene.settle();
        const auto& held = scene.bench().files->held;
        return held.size() == 1 ? held.first() : QByteArray();
    }

private slots:
    void theChosenSheetsAreWritten() {
        Scene scene;
        scene.openWindow("Pilot house", {});
        scene.notebook().setScreen("sheets");
        QVERIFY2(chose(scene, "making sheets"), qPrintable(scene.names().join(" | ")));
        QVERIFY(chose(scene, "US Letter"));
        QVERIFY(chose(scene, "inches"));
        QVERIFY2(scene.find("inches, chosen"), qPrintable(scene.names().join(" | ")));
        QVERIFY(chose(scene, "Write the PDF"));
        QVERIFY(only_file(scene).startsWith("%PDF-"));
        QCOMPARE(scene.bench().files->held.firstKey().fileName(), QString("Pilot house, making sheets.pdf"));
        QVERIFY(scene.notebook().sheets()->line().contains("Pilot house, making sheets.pdf"));
        scene.grab("sheets-written");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY(chose(scene, "Back to the visit"));
        QCOMPARE(scene.notebook().screen(), QString("visit"));
    }

    void anotherChoiceAsksForAnotherFile() {
        Scene scene;
        scene.openWindow("Pilot house", {});
        scene.notebook().setScreen("sheets");
        QVERIFY(chose(scene, "Write the PDF"));
        scene.settle();
        QVERIFY(scene.notebook().sheets()->written());
        QVERIFY(chose(scene, "cutting list"));
        QVERIFY(!scene.notebook().sheets()->written());
        QVERIFY(scene.find("Write the PDF"));
    }

    void whatIsntWorkedYetIsSaid() {
        Scene scene;
        scene.bench().openNewWindow();
        scene.settle();
        scene.notebook().setScreen("sheets");
        QVERIFY(chose(scene, "making sheets"));
        QVERIFY(chose(scene, "Write the PDF"));
        scene.settle();
        QVERIFY(scene.bench().files->held.isEmpty());
        QVERIFY(!scene.notebook().sheets()->line().isEmpty());
    }
};

int main(int argc, char** argv) {
    QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    SheetsTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "sheets_test.moc"
