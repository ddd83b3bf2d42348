// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"
#include "hearing.h"
#include "scene.h"
#include "send_model.h"
#include "survey/standing.h"

#include <QTest>

using namespace truehang;
using namespace truehang::test;

namespace {

/// Every station left gets a reason, and nobody has signed.
void measureWhole(Scene& scene, const QString& visit) {
    scene.openWindow(visit, {});
    scene.notebook().open()->edit("All measured", [](Survey& survey) {
        survey.signed_off.reset();
        for (Room& room : survey.rooms) {
            for (Window& window : room.windows) {
                for (const Station& left : stations_left(window)) {
                    window.not_taken.push_back({std::string(left.word), "Something stands in the way", {}});
                }
            }
        }
        return true;
    });
    scene.settle();
}

QQuickItem* flickableOf(Scene& scene) {
    for (QQuickItem* item : scene.items()) {
        if (item->inherits("QQuickFlickable") && item->isVisible() &&
            item->height() < item->property("contentHeight").toReal()) {
            return item;
        }
    }
    return nullptr;
}

void dragUp(Scene& scene) {
    const QPoint middle(scene.window().width() / 2, scene.window().height() / 2);
    QTest::mousePress(&scene.window(), Qt::LeftButton, {}, middle);
    for (int by = 20; by <= 240; by += 20) {
        QTest::mouseMove(&scene.window(), middle - QPoint(0, by), 10);
    }
    QTest::mouseRelease(&scene.window(), Qt::LeftButton, {}, middle - QPoint(0, 240), 400);
    scene.settle();
}

}  // namespace

/// What a newcomer stumbled over, by touches: where the next action leads, what is said, and that pages stay as they
/// were left.
class NewcomerTest : public QObject {
    Q_OBJECT

private slots:
    static void theNextActionLeadsToSigningAndThenToSending_data() { Scene::sizesAndLooks(); }
    static void theNextActionLeadsToSigningAndThenToSending() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        measureWhole(scene, "Pilot house");
        scene.grabDressed("visit-to-agree");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        // From the figures of the last window as well.
        const int last = scene.notebook().visit()->windows()->count() - 1;
        scene.notebook().openWindow(scene.notebook().visit()->windows()->value(last, "windowId").toString());
        scene.notebook().setScreen("figures");
        scene.settle();
        QVERIFY(scene.find("Next window") == nullptr);
        if (scene.notebook().figures()->nextStation().isEmpty()) {
            QVERIFY2(scene.touch("Agree with the client"), qPrintable(scene.names().join(" | ")));
        } else {
            scene.notebook().setScreen("visit");
            scene.settle();
            QVERIFY2(scene.touch("Agree with the client"), qPrintable(scene.names().join(" | ")));
        }
        scene.settle();
        QCOMPARE(scene.notebook().screen(), QString("visit"));
        QVERIFY2(scene.touch("I agree"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QVERIFY(scene.notebook().visit()->signedOff());
        QVERIFY2(scene.touch("Send to the workroom"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QCOMPARE(scene.notebook().screen(), QString("send"));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    // Typed letter by letter, it is a whole text before the certificate's digest stands there: what follows counts too.
    static void aPairingTextInTheAddressFillsBothLines() {
        Scene scene;
        scene.notebook().newVisit();
        scene.settle();
        scene.notebook().setScreen("send");
        scene.settle();
        QVERIFY(scene.touch("Address"));
        // The SHA-256 of “abc”: FIPS 180-2, appendix B.1.
        scene.typeOnKeyboard(
            "truehang:pair?at=https://192.0.2.7:8737&code=7K2M-QX4D&pin="
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
        QVERIFY(scene.touch("Code"));
        scene.settle();
        QStringList written;
        for (const QQuickItem* item : scene.items()) {
            if (item->isVisible() && item->inherits("QQuickTextInput")) {
                written.append(item->property("text").toString());
            }
        }
        QCOMPARE(written, (QStringList{"https://192.0.2.7:8737", "7K2M-QX4D"}));
        QVERIFY(scene.notebook().send()->pinLine().contains("ba78 16bf"));
        QCOMPARE(scene.faultsOfLayout(), QStringList());
        scene.grab("pairing-text");
    }

    static void theClientsPageLeadsToSigning() {
        Scene scene;
        measureWhole(scene, "Pilot house");
        scene.notebook().openWindow(scene.notebook().visit()->windows()->value(0, "windowId").toString());
        scene.notebook().setScreen("client");
        scene.settle();
        QVERIFY2(scene.touch("agree and sign"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QVERIFY(scene.find("I agree") != nullptr);
        scene.key(Qt::Key_Escape);
        QVERIFY(scene.find("I agree") == nullptr);
        QCOMPARE(scene.notebook().screen(), QString("visit"));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void aPageComesBackAsItWasScrolled() {
        Scene scene;
        scene.openWindow("Pilot house", {});
        dragUp(scene);
        QQuickItem* flick = flickableOf(scene);
        QVERIFY(flick != nullptr);
        const double before = flick->property("contentY").toDouble();
        QVERIFY2(before > 50, qPrintable(QString::number(before)));
        scene.notebook().setScreen("rules");
        scene.settle();
        QVERIFY(scene.touch("Back"));
        scene.settle();
        flick = flickableOf(scene);
        QVERIFY(flick != nullptr);
        QCOMPARE(flick->property("contentY").toDouble(), before);
        // Another visit begins at its top.
        scene.key(Qt::Key_Escape);
        scene.openWindow("Sail loft", {});
        flick = flickableOf(scene);
        QVERIFY(flick == nullptr || flick->property("contentY").toDouble() == 0.0);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void theListComesBackWithTheVisitInSight() {
        Scene scene;
        make_visits(scene.bench(), 50);
        scene.notebook().tryAgain();
        scene.settle();
        scene.openWindow("House 5", {});
        QVERIFY(scene.touch("Back"));
        scene.settle();
        QQuickItem* row = scene.find("House 5, 0 windows, to measure");
        QVERIFY(row != nullptr);
        QVERIFY(!scene.seen(row).isEmpty());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void theBinShowsAllThatIsInIt() {
        Scene scene;
        make_visits(scene.bench(), 130);
        for (int visit = 0; visit < 130; ++visit) {
            scene.notebook().removeVisit(QStringLiteral("v%1").arg(visit));
        }
        scene.settle();
        scene.notebook().tryAgain();
        scene.settle();
        QCOMPARE(scene.notebook().removedVisits()->count(), 130);
        QVERIFY(scene.notebook().binQuestion().contains("130 visits"));
        QVERIFY(scene.touch("Removed visits"));
        scene.grabDressed("bin-of-many");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        // The oldest is brought back: the list is gone up to its end by keys.
        QQuickItem* at = scene.find(scene.notebook().removedVisits()->value(0, "spoken").toString());
        QVERIFY(at != nullptr);
        at->forceActiveFocus(Qt::TabFocusReason);
        for (int row = 1; row < 130; ++row) {
            scene.key(Qt::Key_Up);
        }
        QCOMPARE(nameOf(scene.window().activeFocusItem()), QString("House 0, 0 windows, to measure"));
        scene.key(Qt::Key_Return);
        scene.settle();
        QCOMPARE(scene.notebook().removedVisits()->count(), 129);
        QVERIFY(scene.touch("Removed visits"));
        QVERIFY(scene.touch("Erase the removed visits for good"));
        QVERIFY(scene.reach("Erase the removed visits for good"));
        scene.settle();
        QCOMPARE(scene.notebook().removedVisits()->count(), 0);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void whatWasErasedIsNotUndone() {
        Scene scene;
        scene.openWindow("Pilot house", {});
        const QString gone = scene.notebook().visit()->windows()->value(0, "windowId").toString();
        const int before = scene.notebook().visit()->windows()->count();
        scene.notebook().visit()->removeWindow(gone);
        scene.settle();
        QVERIFY(scene.find("undo") != nullptr);
        const Announcements announced;
        scene.notebook().visit()->eraseRemovedWindows();
        scene.settle();
        const QString says = "Erased for good. What was done to this visit before can’t be undone any more.";
        QVERIFY2(scene.find(says) != nullptr, qPrintable(scene.names().join(" | ")));
        QVERIFY(scene.find("undo") == nullptr);
        QVERIFY(Announcements::taken().contains(says));
        const std::string stands = write_survey(scene.notebook().open()->survey());
        scene.key(Qt::Key_Z, {}, Qt::ControlModifier);
        scene.settle();
        QVERIFY(Announcements::taken().contains(says));
        QCOMPARE(scene.notebook().fault(), QString());
        QCOMPARE(scene.notebook().visit()->windows()->count(), before - 1);
        QCOMPARE(write_survey(scene.notebook().open()->survey()), stands);
        // The next edit can be undone, and only that.
        scene.notebook().visit()->site()->leave("title", "Pilot house, again");
        scene.settle();
        QVERIFY(scene.find(says) == nullptr);
        QVERIFY(scene.touch("undo"));
        scene.settle();
        QVERIFY(scene.find("undo") == nullptr);
        QCOMPARE(scene.notebook().visit()->windows()->count(), before - 1);
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void whatHoldsWhileNothingIsChosenIsSeenAndHeard() {
        Scene scene;
        scene.openWindow("Pilot house", {});
        scene.notebook().openWindow(scene.notebook().visit()->windows()->value(0, "windowId").toString());
        scene.notebook().open()->editWindow("Unsaid", scene.notebook().open()->windowId(), [](Window& window) {
            window.layers.front().treatment->layout.reset();
            return true;
        });
        scene.notebook().setScreen("hanging");
        scene.settle();
        bool heard = false;
        for (const Heard& one : heardOn(scene)) {
            heard = heard || (one.name == "Layout" && one.description == "if none is chosen: A pair");
        }
        QVERIFY(heard);
        bool seen = false;
        for (const QQuickItem* text : scene.texts()) {
            seen = seen || text->property("text").toString() == "Layout (if none is chosen: A pair)";
        }
        QVERIFY(seen);
        QVERIFY(scene.reach("One, drawn to the left"));
        scene.settle();
        for (const QQuickItem* text : scene.texts()) {
            QVERIFY(!text->property("text").toString().startsWith("Layout ("));
        }
        QCOMPARE(Scene::warnings(), QStringList());
    }
};

QTEST_MAIN(NewcomerTest)
#include "newcomer_test.moc"
