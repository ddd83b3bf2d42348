// SPDX-License-Identifier: Apache-2.0
#include "scene.h"

#include "writing.h"

#include <QGuiApplication>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

// The surveyor's own lists, by touch: kept from one window, chosen at the next, looked after.
class ListsTest : public QObject {
    Q_OBJECT

    static void openFirstWindow(Scene& scene, const QString& screen) {
        scene.openWindow("Pilot house", {});
        Notebook& notebook = scene.notebook();
        notebook.openWindow(notebook.visit()->windows()->value(0, "windowId").toString());
        notebook.setScreen(screen);
        scene.settle();
    }

    static QString faults(Scene& scene) { return (scene.faultsOfLayout() + Scene::warnings()).join('\n'); }

    static void keepAll(Scene& scene) {
        openFirstWindow(scene, "hanging");
        scene.notebook().lists()->keepHardware();
        const Survey survey = scene.notebook().open()->survey();
        for (const Fabric& fabric : survey.fabrics) {
            scene.notebook().lists()->keepCloth(shown(fabric.id));
        }
        scene.notebook().lists()->keepRules();
        scene.settle();
    }

private slots:
    void keptByOneTouch() {
        Scene scene;
        openFirstWindow(scene, "hanging");
        QVERIFY(scene.reach("keep this hardware in your list"));
        QCOMPARE(scene.notebook().lists()->items()->count(), 1);
        scene.grab("lists-kept");
        scene.notebook().setScreen("fabrics");
        scene.settle();
        scene.notebook().fabrics()->edit(shown(scene.notebook().open()->survey().fabrics.front().id));
        scene.settle();
        QVERIFY(scene.reach("Keep this cloth in your list, for other visits"));
        QCOMPARE(scene.notebook().lists()->items()->count(), 2);
        scene.grab("lists-kept-cloth");
        QCOMPARE(faults(scene), QString());
    }

    void takenIntoAnotherVisit() {
        Scene scene;
        keepAll(scene);
        const QString cloth = scene.notebook().lists()->items()->value(0, "spoken").toString();
        scene.notebook().newVisit();
        scene.notebook().setScreen("fabrics");
        scene.settle();
        QVERIFY(scene.touch("Take a cloth from your list"));
        QCOMPARE(scene.notebook().screen(), QString("lists"));
        QVERIFY2(scene.reach(cloth), qPrintable(scene.names().join(" | ")));
        QCOMPARE(scene.notebook().screen(), QString("fabrics"));
        QCOMPARE(scene.notebook().open()->survey().fabrics.size(), std::size_t{1});
        QCOMPARE(faults(scene), QString());
    }

    void foundTakenOutAndBroughtBack() {
        Scene scene;
        keepAll(scene);
        scene.notebook().setScreen("settings");
        scene.settle();
        QVERIFY(scene.touch("Your own cloths, hardware and house rules"));
        scene.find("Find")->forceActiveFocus();
        scene.typeOnKeyboard("pole");
        QCOMPARE(scene.notebook().lists()->items()->count(), 1);
        const QString pole = scene.notebook().lists()->items()->value(0, "spoken").toString();
        QVERIFY(scene.reach(pole));
        scene.grab("lists-one");
        QVERIFY(scene.touch("take it out of the list"));
        QVERIFY(scene.notebook().lists()->hasRemoved());
        QVERIFY(scene.reach(pole));
        QVERIFY(scene.touch("Bring it back"));
        QVERIFY(!scene.notebook().lists()->hasRemoved());
        scene.key(Qt::Key_Escape);
        QCOMPARE(scene.notebook().screen(), QString("settings"));
        QCOMPARE(faults(scene), QString());
    }

    void isLaidOutWell_data() { Scene::sizesAndLooks(); }
    void isLaidOutWell() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        scene.notebook().setScreen("lists");
        scene.settle();
        scene.grabDressed("lists-empty");
        QCOMPARE(faults(scene), QString());
        keepAll(scene);
        scene.notebook().lists()->remove(scene.notebook().lists()->items()->value(1, "item").toString());
        scene.notebook().setScreen("lists");
        scene.settle();
        scene.grabDressed("lists");
        QCOMPARE(faults(scene), QString());
    }

    void aWindowIsHungAsAnother() {
        Scene scene;
        openFirstWindow(scene, "visit");
        const Survey& survey = scene.notebook().open()->survey();
        const QString made = scene.notebook().visit()->addWindow(shown(survey.rooms.front().id), "pantry", "recess");
        scene.notebook().openWindow(made);
        scene.notebook().setScreen("hanging");
        scene.settle();
        scene.grab("hanging-elsewhere");
        const QString first = scene.notebook().hanging()->elsewhere()->value(0, "spoken").toString();
        QCOMPARE(faults(scene), QString());
        QVERIFY(scene.reach(first));
        QVERIFY(!scene.notebook().open()->window()->layers.empty());
    }
};

int main(int argc, char** argv) {
    const QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    ListsTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "lists_test.moc"
