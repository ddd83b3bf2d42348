// SPDX-License-Identifier: Apache-2.0
#include "scene.h"

#include <QGuiApplication>
#include <QTest>
#include <cmath>

using namespace truehang;
using namespace truehang::test;

// The page that is turned round to the client, and the signing, by touches and by the keyboard alone.
class ClientTest : public QObject {
    Q_OBJECT

private:
    static void openClient(Scene& scene) {
        scene.openWindow("Pilot house", {});
        scene.openWindow("Pilot house", scene.notebook().visit()->windows()->value(0, "title").toString());
        scene.notebook().setScreen("figures");
        scene.settle();
        QVERIFY2(scene.reach("show the client"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QCOMPARE(scene.notebook().screen(), QString("client"));
    }

    static void openSigning(Scene& scene) {
        scene.openWindow("Pilot house", {});
        scene.notebook().setScreen("visit");
        scene.notebook().agreement()->takeBack();  // the demo visit was signed already
        scene.settle();
        QVERIFY2(scene.reach("Agree and sign"), qPrintable(scene.names().join(" | ")));
        scene.settle();
    }

    static void scrollToEnd(Scene& scene, QQuickItem* item) {
        for (QQuickItem* up = item; up != nullptr; up = up->parentItem()) {
            if (up->inherits("QQuickFlickable")) {
                up->setProperty("contentY", up->property("contentHeight").toReal() - up->height());
            }
        }
        scene.settle();
    }

    static void draw(Scene& scene, QQuickItem* box) {
        const auto at = [&](double x, double y) {
            return box->mapToScene(QPointF(box->width() * x, box->height() * y)).toPoint();
        };
        QTest::mousePress(&scene.window(), Qt::LeftButton, {}, at(0.1, 0.6));
        for (const auto& [x, y] : {std::pair{0.2, 0.3}, {0.3, 0.7}, {0.45, 0.35}, {0.6, 0.65}, {0.8, 0.5}}) {
            QTest::mouseMove(&scene.window(), at(x, y));
        }
        QTest::mouseRelease(&scene.window(), Qt::LeftButton, {}, at(0.8, 0.5));
        scene.settle();
    }

private slots:
    void oneWindowIsShown_data() { Scene::sizesAndLooks(); }
    void oneWindowIsShown() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openClient(scene);
        ClientModel* client = scene.notebook().client();
        QVERIFY(client->choices()->count() >= 2);
        scene.grabDressed("client-closed");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        for (QQuickItem* text : scene.texts()) {  // read at arm's length
            if (!scene.seen(text).isEmpty()) {
                const int px = text->property("font").value<QFont>().pixelSize();
                QVERIFY2(px >= 18, qPrintable(QStringLiteral("%1: %2").arg(px).arg(text->property("text").toString())));
            }
        }
        QVERIFY2(scene.touch("Open the curtains"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QVERIFY(!client->isShut());
        scene.grabDressed("client-open");
        const QString before = scene.notebook().open()->titleOf(scene.notebook().open()->windowId());
        if (size.width() < 1000) {
            const QString other = client->choices()->value(1, "spoken").toString();
            QVERIFY2(scene.reach(other), qPrintable(scene.names().join(" | ")));
            QCOMPARE(client->picked(), 1);
            scene.settle();
            scene.grabDressed("client-choice");
            QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        }
        // Nothing of another visit or client is in reach: the only way on is back.
        for (const QString& name : scene.names()) {
            QVERIFY2(!name.contains("Sail loft") && !name.contains("Net store"), qPrintable(name));
        }
        QVERIFY(scene.touch("Back"));
        scene.settle();
        QCOMPARE(scene.notebook().screen(), QString("figures"));
        QCOMPARE(scene.notebook().open()->titleOf(scene.notebook().open()->windowId()), before);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aClothTakesItsColour_data() { Scene::sizesAndLooks(); }
    void aClothTakesItsColour() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        scene.openWindow("Pilot house", {});
        scene.notebook().setScreen("fabrics");
        scene.notebook().fabrics()->edit("herring-sailcloth");
        scene.settle();
        QVERIFY2(scene.reach("Madder red"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QVERIFY(scene.isChosen("Madder red"));
        QCOMPARE(scene.notebook().open()->survey().fabrics.front().colour, std::string("#8f2f2f"));
        scene.grabDressed("cloth-colour");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void itIsSignedWithAFinger_data() { Scene::sizesAndLooks(); }
    void itIsSignedWithAFinger() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openSigning(scene);
        AgreementModel* agreement = scene.notebook().agreement();
        QVERIFY(agreement->isShown());
        QVERIFY(agreement->layers()->count() >= 1);
        scene.grabDressed("sign");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY2(scene.reach("Name"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QQuickItem* box = scene.find("A box to sign in");
        QVERIFY2(box, qPrintable(scene.names().join(" | ")));
        QVERIFY(box->height() >= 96);
        scrollToEnd(scene, box);
        draw(scene, box);
        QVERIFY2(scene.find("A box to sign in, signed"), qPrintable(scene.names().join(" | ")));
        scene.grabDressed("sign-drawn");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.touch("I agree"));
        scene.settle();
        QVERIFY(agreement->signedOff());
        const auto& signature = scene.notebook().open()->survey().signed_off->signature;
        QVERIFY(signature && signature->strokes.size() == 1 && signature->strokes[0].size() >= 5);
        // Where the finger went down: a tenth of the box in, six tenths down; to a pixel.
        QVERIFY(std::abs(signature->strokes[0].front().first - 0.1) < 0.01);
        QVERIFY(std::abs(signature->strokes[0].front().second - 0.6) < 0.01);
        QVERIFY2(scene.reach(agreement->line()), qPrintable(scene.names().join(" | ")));
        scene.settle();
        scene.grabDressed("signed");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.reach("take the agreement back"));
        scene.settle();
        QVERIFY(!agreement->signedOff());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    void aChangeIsSaidOnTheVisit() {
        Scene scene;
        openSigning(scene);
        QVERIFY(scene.touch("I agree"));
        scene.settle();
        OpenVisit& open = *scene.notebook().open();
        const QString id = scene.notebook().visit()->windows()->value(0, "windowId").toString();
        open.editWindow("Pole", id, [](Window& window) {
            Layer& layer = window.layers.back();
            if (!layer.hardware || !layer.hardware->length) {
                return false;
            }
            layer.hardware->length = *layer.hardware->length + Length::mm(60);
            return true;
        });
        scene.settle();
        QVERIFY(scene.notebook().agreement()->gaps()->count() >= 1);
        QVERIFY2(scene.find("Decide. " + scene.notebook().agreement()->line()), qPrintable(scene.names().join(" | ")));
        scene.grab("visit-outdated");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        scene.key(Qt::Key_Tab);  // the row that led to the signing still had the focus
        QVERIFY2(scene.reach(scene.notebook().agreement()->line()), qPrintable(scene.names().join(" | ")));
        scene.settle();
        scene.grab("signed-outdated");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
    }

    void theKeyboardAloneSigns() {
        Scene scene({1024, 768});
        openSigning(scene);
        for (int tabs = 0; tabs < 12; ++tabs) {
            QQuickItem* focused = scene.window().activeFocusItem();
            if (focused && nameOf(focused) == "I agree") {
                scene.key(Qt::Key_Space);
                break;
            }
            scene.key(Qt::Key_Tab);
        }
        scene.settle();
        QVERIFY(scene.notebook().agreement()->signedOff());
        QVERIFY(!scene.notebook().open()->survey().signed_off->signature);
    }
};

int main(int argc, char** argv) {
    QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    ClientTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "client_test.moc"
