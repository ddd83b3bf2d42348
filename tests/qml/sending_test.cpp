// SPDX-License-Identifier: Apache-2.0
#include "../app/code_pictures.h"
#include "../app/taking_workroom.h"
#include "scene.h"
#include "send_model.h"

#include <QTest>

using namespace truehang;
using namespace truehang::test;

/// Pairing with a workroom by a picture of its code, and sending to it.
class SendingTest : public QObject {
    Q_OBJECT

    /// Opens the page with a visit in hand and nobody paired; the picture lies where it can be chosen.
    static void openPage(Scene& scene, const QByteArray& picture) {
        scene.bench().files->held.insert(QUrl::fromLocalFile("/code.jpg"), picture);
        scene.bench().openNewWindow();
        scene.notebook().setScreen("send");
        scene.settle();
    }

    static void waitUntilLookedThrough(Scene& scene) {
        QTRY_VERIFY_WITH_TIMEOUT(!scene.notebook().send()->looking(), patience);
        scene.settle();
    }

    /// What stands on the lines, from the top.
    static QStringList written(const Scene& scene) {
        QStringList lines;
        for (const QQuickItem* item : scene.items()) {
            if (item->inherits("QQuickTextInput")) {
                lines.append(item->property("text").toString());
            }
        }
        return lines;
    }

private slots:
    void theCodeIsReadFromAPicture_data() { Scene::sizesAndLooks(); }
    void theCodeIsReadFromAPicture() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size, Scene::Visits::none);
        scene.dress(look, scale);
        openPage(scene, file_of(photographed(picture_of(pairing_text), {.light = 0.6})));
        QVERIFY2(scene.find("Photograph the workroom’s code") == nullptr, "no camera is here");
        scene.grabDressed("pairing");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.reach("Address"));
        scene.typeOnKeyboard("192.0.2.99");  // half of another one, and the cursor still there
        QVERIFY2(scene.reach("Read the code from a picture"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QVERIFY(scene.chooseInDialog("/code.jpg"));
        waitUntilLookedThrough(scene);
        QCOMPARE(written(scene), QStringList({"https://192.0.2.7:8737", "7K2M-QX4D"}));
        QVERIFY(scene.notebook().send()->pinLine().contains("ba78 16bf"));
        QVERIFY(scene.find("Pair with the workroom") != nullptr);
        scene.grabDressed("pairing-from-picture");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aPictureWithoutItSaysWhatToDo_data() { Scene::sizesAndLooks(); }
    void aPictureWithoutItSaysWhatToDo() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size, Scene::Visits::none);
        scene.dress(look, scale);
        openPage(scene, file_of(photographed(picture_of("https://example.org"))));
        QVERIFY2(scene.reach("Read the code from a picture"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QVERIFY(scene.chooseInDialog("/code.jpg"));
        waitUntilLookedThrough(scene);
        QCOMPARE(written(scene), QStringList({"", ""}));
        QVERIFY2(scene.find("Not paired. " + scene.notebook().send()->pairFault()) != nullptr,
                 qPrintable(scene.names().join(" | ")));
        scene.grabDressed("pairing-not-from-picture");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    // The camera's own page, with no camera behind it: what it would have taken is handed to it.
    void theCodeIsPhotographedWhereThereIsACamera() {
        Scene scene({360, 760}, Scene::Visits::none);
        scene.bench().camera->page = system_devices().camera->source();
        openPage(scene, file_of(photographed(picture_of(pairing_text))));
        scene.grab("pairing-with-camera");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY2(scene.reach("Photograph the workroom’s code"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QVERIFY(scene.find("Read the code from a picture") == nullptr);
        QQuickItem* panel = scene.find("Take it");
        QVERIFY2(panel != nullptr, qPrintable(scene.names().join(" | ")));
        while (!QByteArray(panel->metaObject()->className()).startsWith("CameraPanel")) {
            panel = panel->parentItem();
        }
        QVERIFY(QMetaObject::invokeMethod(panel, "took", Q_ARG(QUrl, QUrl::fromLocalFile("/code.jpg"))));
        waitUntilLookedThrough(scene);
        QCOMPARE(written(scene), QStringList({"https://192.0.2.7:8737", "7K2M-QX4D"}));
    }

    // A large photo on its way to a workroom that holds its second piece up.
    void lookedAt_data() { Scene::sizesAndLooks(); }
    void lookedAt() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        TakesPieces takes;
        takes.hold = [&] { return takes.pieces == 1; };
        FakeWorkroom workroom(std::ref(takes));
        Scene scene(size, Scene::Visits::none);
        scene.dress(look, scale);
        scene.bench().openNewWindow();
        scene.bench().clipboard->held = incompressible();
        scene.notebook().photos()->paste();
        QTRY_COMPARE_WITH_TIMEOUT(scene.notebook().photos()->photos()->count(), 1, patience);
        scene.settle();
        SendModel* send = scene.notebook().send();
        send->pair(workroom.address(), "7K2M-QX4D");
        const auto state = [&] { return send->items()->value(1, "state").toString(); };
        QTRY_VERIFY2_WITH_TIMEOUT(state().startsWith("on its way, 0.5 of ") && state().endsWith(" MB"),
                                  qPrintable(state()), patience);
        scene.notebook().setScreen("send");
        scene.settle();
        const QString spoken = send->items()->value(1, "spoken").toString();
        QVERIFY2(scene.find(spoken) != nullptr, qPrintable(scene.names().join(" | ")));
        scene.grabDressed("sending");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }
};

QTEST_MAIN(SendingTest)
#include "sending_test.moc"
