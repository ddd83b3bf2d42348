// SPDX-License-Identifier: Apache-2.0
#include "../app/taking_workroom.h"
#include "scene.h"
#include "send_model.h"

#include <QTest>

using namespace truehang;
using namespace truehang::test;

/// A large photo on its way to a workroom that holds its second piece up.
class SendingTest : public QObject {
    Q_OBJECT

private slots:
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
