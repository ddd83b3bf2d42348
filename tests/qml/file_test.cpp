// SPDX-License-Identifier: Apache-2.0
#include "scene.h"

#include <SQLiteCpp/Database.h>
#include <QDir>
#include <QGuiApplication>
#include <QTest>

using namespace truehang;
using namespace truehang::test;
using namespace std::chrono_literals;

// A visit written as a file from its page, and taken in on the page of the visits.
class FileTest : public QObject {
    Q_OBJECT

private:
    /// Files go into a real folder of the bench.
    static QString documents(Scene& scene) {
        const QString folder = scene.bench().folder() + "/documents";
        QDir().mkpath(folder);
        scene.bench().files->folder = QUrl::fromLocalFile(folder);
        return folder;
    }

    static void finish(Scene& scene) {
        QVERIFY(QTest::qWaitFor([&scene] { return !scene.notebook().visitFile()->working(); }, patience));
        scene.settle();
    }

    static QString writeSailLoft(Scene& scene) {
        const QString folder = documents(scene);
        scene.openWindow("Sail loft", {});
        scene.notebook().setScreen("visit");
        scene.settle();
        [&] { QVERIFY2(scene.reach("This visit as a file"), qPrintable(scene.names().join(" | "))); }();
        [&] { QVERIFY(scene.reach("Write the file")); }();
        finish(scene);
        return folder + "/Sail loft.truehang.zip";
    }

    /// What a worn disk leaves: the text of one visit cut short.
    static void damageSailLoft(const QString& folder) {
        SQLite::Database store((folder + "/truehang.sqlite").toStdString(), SQLite::OPEN_READWRITE);
        QCOMPARE(store.exec("UPDATE visit_body SET body = substr(body, 1, 20) WHERE visit_id ="
                            " (SELECT visit_id FROM visit WHERE title = 'Sail loft')"),
                 1);
    }

    static int damagedRow(const ShownRows& visits) {
        int row = visits.count() - 1;
        while (row >= 0 && !visits.value(row, "damaged").toBool()) {
            --row;
        }
        return row;
    }

private slots:
    void aVisitIsWrittenAsAFile_data() { Scene::sizesAndLooks(); }
    void aVisitIsWrittenAsAFile() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        documents(scene);
        scene.openWindow("Pilot house", {});
        scene.notebook().setScreen("visit");
        scene.settle();
        QVERIFY2(scene.reach("This visit as a file"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QCOMPARE(scene.notebook().screen(), QString("file"));
        scene.grabDressed("file-before");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY(scene.reach("Write the file"));
        finish(scene);
        QVERIFY(QFile::exists(scene.bench().folder() + "/documents/Pilot house.truehang.zip"));
        QVERIFY(scene.find("Hand the file on") != nullptr);
        scene.grabDressed("file-written");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY(scene.reach("Back to the visit"));
        QCOMPARE(scene.notebook().screen(), QString("visit"));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aVisitIsTakenInFromAFile_data() { Scene::sizesAndLooks(); }
    void aVisitIsTakenInFromAFile() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        const QString file = writeSailLoft(scene);
        scene.notebook().visit()->site()->leave("title", "Sail loft, edited");
        scene.notebook().setScreen("visits");
        scene.settle();
        QVERIFY2(scene.reach("Take in a visit from a file"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        scene.grabDressed("take-in-before");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY(scene.reach("Choose the file"));
        QVERIFY(scene.chooseInDialog(file));
        finish(scene);
        scene.grabDressed("take-in-after");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY2(scene.reach("Open the visit"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QCOMPARE(scene.notebook().screen(), QString("visit"));
        QCOMPARE(scene.notebook().visit()->title(), QString("Sail loft, from a file"));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aDamagedVisitIsPutBesideFromItsFile_data() { Scene::sizesAndLooks(); }
    // Its row says so and leads to where a file is taken in.
    void aDamagedVisitIsPutBesideFromItsFile() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        const QTemporaryDir kept;
        const QString file = kept.filePath("Sail loft.truehang.zip");
        {
            Scene before;
            QVERIFY(QFile::copy(writeSailLoft(before), file));
        }
        Scene scene(size, Scene::Visits::demo, damageSailLoft);
        scene.dress(look, scale);
        const ShownRows* visits = scene.notebook().visits();
        QTRY_VERIFY_WITH_TIMEOUT(damagedRow(*visits) >= 0, patience);
        scene.settle();
        const int before = visits->count();
        scene.grabDressed("visits-damaged");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY2(scene.reach(visits->value(damagedRow(*visits), "spoken").toString()),
                 qPrintable(scene.names().join(" | ")));
        scene.settle();
        scene.grabDressed("take-in-damaged");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY2(scene.reach("Choose the file"), qPrintable(scene.names().join(" | ")));
        QVERIFY(scene.chooseInDialog(file));
        finish(scene);
        scene.grabDressed("take-in-beside-damaged");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY2(scene.reach("Open the visit"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QCOMPARE(scene.notebook().visit()->title(), QString("Sail loft, from a file"));
        QCOMPARE(visits->count(), before + 1);
        QVERIFY(damagedRow(*visits) >= 0);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void aFileThatIsntOneIsSaidToBeAndAnotherCanBeChosen() {
        Scene scene;
        const QString file = writeSailLoft(scene);
        QVERIFY(QFile::resize(file, 1000));
        scene.notebook().setScreen("visits");
        scene.settle();
        const int before = scene.notebook().visits()->count();
        QVERIFY(scene.reach("Take in a visit from a file"));
        QVERIFY(scene.reach("Choose the file"));
        QVERIFY(scene.chooseInDialog(file));
        finish(scene);
        QVERIFY2(scene.find("This isn’t a visit’s file, or it didn’t come whole: ask for it again. Nothing was taken "
                            "in.") != nullptr,
                 qPrintable(scene.names().join(" | ")));
        scene.grabDressed("take-in-refused");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY(scene.reach("Choose the file"));
        QVERIFY(scene.chooseInDialog(file));
        finish(scene);
        scene.key(Qt::Key_Escape);
        QCOMPARE(scene.notebook().visits()->count(), before);
        QVERIFY2(scene.find("New visit") != nullptr, qPrintable(scene.names().join(" | ")));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void writingCanBeStopped() {
        Scene scene;
        const QString folder = documents(scene);
        scene.openWindow("Pilot house", {});
        scene.notebook().setScreen("file");
        scene.settle();
        scene.notebook().visitFile()->write();  // without letting it be answered: the file is small
        QVERIFY(scene.find("Stop") != nullptr);
        QVERIFY(scene.find("Writing the file, 0 %") != nullptr);
        scene.find("Stop")->forceActiveFocus(Qt::TabFocusReason);
        QTest::keyClick(&scene.window(), Qt::Key_Space);
        finish(scene);
        QVERIFY2(scene.find("Stopped. Nothing was written.") != nullptr, qPrintable(scene.names().join(" | ")));
        QCOMPARE(QDir(folder).entryList(QDir::Files | QDir::Hidden), QStringList());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void whatWaitsForADayOffersTheFile_data() { Scene::sizesAndLooks(); }
    void whatWaitsForADayOffersTheFile() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        scene.bench().pass(24h);
        scene.notebook().tryAgain();
        scene.settle();
        const ShownRows* visits = scene.notebook().visits();
        const QString spoken = visits->value(0, "spoken").toString();
        QVERIFY2(spoken.endsWith("not sent for a day: keep it as a file"), qPrintable(spoken));
        scene.grabDressed("waits-visits");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY(scene.reach(spoken));
        scene.settle();
        const QString offer = scene.notebook().visitFile()->waits() + " Keep it as a file";
        scene.grabDressed("waits-visit");
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QVERIFY2(scene.reach(offer), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QCOMPARE(scene.notebook().screen(), QString("file"));
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        QCOMPARE(Scene::warnings(), QStringList());
    }
};

int main(int argc, char** argv) {
    QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    FileTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "file_test.moc"
