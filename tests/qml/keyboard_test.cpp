// SPDX-License-Identifier: Apache-2.0
#include "keys.h"
#include "photo_marks.h"
#include "places.h"
#include "plain_recess.h"

#include <QGuiApplication>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

#define PRESS(name) QVERIFY2(keys.press(name), qPrintable(keys.said()))
#define AT(screen_is) QCOMPARE(scene.notebook().screen(), QString(screen_is))
#define ROUND() QCOMPARE(keys.faultsOfRound().join("\n"), QString())

// A whole visit, from an empty list to signed figures and back, with the keyboard alone.
class KeyboardTest : public QObject {
    Q_OBJECT

    static void begin(Scene& scene, Keys& keys) {
        ROUND();
        PRESS("New visit");
        AT("visit");
        ROUND();
        PRESS("Client and site");
        ROUND();
        QVERIFY2(keys.write("Client", "Mrs Orme"), qPrintable(keys.said()));
        QVERIFY2(keys.write("Address", "3 Quay Street"), qPrintable(keys.said()));
        scene.key(Qt::Key_Escape);
        QCOMPARE(keys.at(), QString("Client and site: Mrs Orme"));  // where it was opened from
        PRESS("Add a room");
        ROUND();
        QVERIFY2(keys.write("Name", "Parlour"), qPrintable(keys.said()));
        QVERIFY2(keys.choose("Small children live or visit here", "no"), qPrintable(keys.said()));
        PRESS("Back to the visit");
        QCOMPARE(keys.at(), QString("Add a room"));
        PRESS("Add a window to Parlour");
        ROUND();
        QVERIFY2(keys.write("Name", "South window"), qPrintable(keys.said()));
        PRESS("Recess");
        AT("walk");
    }

    static void measure(Scene& scene, Keys& keys) {
        ROUND();
        PRESS("Can’t reach this station");
        ROUND();
        scene.key(Qt::Key_Escape);
        QCOMPARE(keys.at(), QString("Can’t reach this station"));
        QVERIFY2(keys.to("Width at the top, reading in mm"), qPrintable(keys.said()));
        scene.grabDressed("keys-reading");
        QVERIFY2(keys.to("Can’t reach this station"), qPrintable(keys.said()));
        scene.grabDressed("keys-word");
        // From there, what is typed is the reading all the same, and Return keeps it.
        for (const Typed& reading : plain_recess) {
            QCOMPARE(scene.notebook().walk()->station(), QString(reading.station));
            scene.typeOnKeyboard(reading.digits);
            scene.key(Qt::Key_Return);
            QVERIFY2(!scene.notebook().walk()->differs(), reading.station);
        }
        QVERIFY(scene.notebook().walk()->atEnd());
        ROUND();
        PRESS("All stations of this window");
        ROUND();
        scene.key(Qt::Key_Escape);
        QCOMPARE(keys.at(), QString("All stations of this window"));
        PRESS("What is in the way");
        AT("obstructions");
    }

    static void putSomethingInTheWay(Scene& scene, Keys& keys) {
        ROUND();
        PRESS("Add something");
        ROUND();
        QVERIFY2(keys.choose("What is in the way?", "Radiator"), qPrintable(keys.said()));
        ROUND();
        QVERIFY2(keys.write("From the opening’s left edge", "200"), qPrintable(keys.said()));
        QVERIFY2(keys.write("Width", "800"), qPrintable(keys.said()));
        QVERIFY2(keys.write("Lower edge above the floor", "150"), qPrintable(keys.said()));
        QVERIFY2(keys.write("Height", "500"), qPrintable(keys.said()));
        QVERIFY2(keys.to("Drawing of the window"), qPrintable(keys.said()));
        const QString before = scene.notebook().obstructions()->standsAt();
        scene.key(Qt::Key_Right);
        QVERIFY2(scene.notebook().obstructions()->standsAt() != before, qPrintable(before));
        PRESS("Done with this one");
        PRESS("What hangs here");
        AT("hanging");
    }

    static void writeACloth(Scene& scene, Keys& keys) {
        PRESS("Cloths of this house");
        AT("fabrics");
        ROUND();
        PRESS("Add a cloth");
        ROUND();
        PRESS("Face, what is seen");
        ROUND();
        QVERIFY2(keys.write("Name", "Sailcloth"), qPrintable(keys.said()));
        QVERIFY2(keys.write("Width of the roll", "1370"), qPrintable(keys.said()));
        PRESS("Back to the cloths");
        QCOMPARE(keys.at(), QString("Add a cloth"));
        scene.key(Qt::Key_Escape);
        AT("hanging");
    }

    static void hang(Scene& scene, Keys& keys) {
        ROUND();
        PRESS("Hang something here");
        ROUND();
        writeACloth(scene, keys);
        for (const auto& [label, word] :
             {std::pair{"Heading", "Pencil pleat"}, {"Face cloth", "Sailcloth"}, {"Hangs from", "Pole"}}) {
            QVERIFY2(keys.choose(label, word), qPrintable(keys.said()));
            QVERIFY2(keys.at().startsWith(word), qPrintable(keys.said()));  // not lost where the words are made anew
        }
        scene.grabDressed("keys-choice");
        for (const auto& [field, typed] :
             {std::pair{"Diameter", "28"}, {"Length, without finials", "1640"}, {"Wall to its centre line", "120"}}) {
            QVERIFY2(keys.write(field, typed), qPrintable(keys.said()));
        }
        PRESS("See the figures");
        AT("figures");
    }

    static void agree(Scene& scene, Keys& keys) {
        ROUND();
        QVERIFY2(scene.notebook().figures()->figures()->count() > 0, qPrintable(keys.said()));
        QVERIFY2(keys.to("show the client"), qPrintable(keys.said()));
        scene.key(Qt::Key_Tab);
        const QString figure = keys.at();
        scene.key(Qt::Key_Return);
        QVERIFY2(!scene.notebook().figures()->asked().isEmpty(), qPrintable(figure));
        ROUND();
        scene.key(Qt::Key_Escape);
        QCOMPARE(keys.at(), figure);
        PRESS("show the client");
        AT("client");
        ROUND();
        PRESS("Open the curtains");
        QVERIFY(!scene.notebook().client()->isShut());
        PRESS("Back");
        AT("figures");
        scene.key(Qt::Key_Escape);
        AT("visit");
        ROUND();
        PRESS("Agree and sign");
        ROUND();
        QVERIFY2(keys.write("Name", "A. Orme"), qPrintable(keys.said()));
        PRESS("I agree");
        QVERIFY2(scene.notebook().visit()->signedOff(), qPrintable(keys.said()));
    }

    static void handOver(Scene& scene, Keys& keys) {
        PRESS("Sheets to print");
        AT("sheets");
        ROUND();
        QVERIFY2(keys.choose("Which", "cutting list"), qPrintable(keys.said()));
        PRESS("Write the PDF");
        QVERIFY(QTest::qWaitFor([&] { return scene.notebook().sheets()->written(); }, patience));
        scene.settle();
        PRESS("Back to the visit");
        AT("visit");
        PRESS("Send to the workroom");
        AT("send");
        ROUND();
        QVERIFY2(keys.write("Address", "192.0.2.7:8080"), qPrintable(keys.said()));
        scene.key(Qt::Key_Escape);
        AT("visit");
        scene.key(Qt::Key_Escape);
        AT("visits");
        ROUND();
    }

private slots:
    void aWholeVisit_data() {
        QTest::addColumn<QSize>("size");
        QTest::newRow("phone") << QSize(360, 760);
        QTest::newRow("tablet") << QSize(1024, 768);
    }
    void aWholeVisit() {
        QFETCH(QSize, size);
        Scene scene(size, Scene::Visits::none);
        Keys keys(scene);
        for (const auto part : {begin, measure, putSomethingInTheWay, hang, agree, handOver}) {
            part(scene, keys);
            if (QTest::currentTestFailed()) {
                scene.grab("keyboard-stopped");
                return;
            }
        }
        QCOMPARE(keys.faults().join("\n"), QString());
        QCOMPARE(Scene::warnings(), QStringList());
    }

    // The list is one stop, however many visits it holds: arrows lead through it, the newest at the foot.
    void theArrowsLeadThroughTheVisits() {
        Scene scene;
        Keys keys(scene);
        ROUND();
        const ShownRows* visits = scene.notebook().visits();
        QVERIFY(visits->count() >= 3);
        const auto spoken = [&](int row) { return visits->value(row, "spoken").toString(); };
        QVERIFY2(keys.to(spoken(0)), qPrintable(keys.said()));
        scene.key(Qt::Key_Up);
        scene.key(Qt::Key_Up);
        QCOMPARE(keys.at(), spoken(2));
        scene.key(Qt::Key_Down);
        QCOMPARE(keys.at(), spoken(1));
        scene.key(Qt::Key_Return);
        AT("visit");
        QCOMPARE(scene.notebook().visit()->title(), visits->value(1, "title").toString());
        scene.key(Qt::Key_Escape);
        AT("visits");
    }

    // Over a photo the arrows move a cross, Return sets an end; a chosen mark is moved itself, as one edit.
    void theArrowsDrawOnAPhoto() {
        Scene scene;
        open_house(scene);
        go_to(scene, {"photos"});
        Keys keys(scene);
        PRESS("Draw arrows, lines and words on this photo");
        ROUND();
        MarksModel* marks = scene.notebook().photos()->marks();
        const std::size_t before = marks->kept().size();
        QVERIFY2(keys.to("The photo to draw on"), qPrintable(keys.said()));
        scene.grab("marks-by-keys");
        scene.key(Qt::Key_Return);
        scene.key(Qt::Key_Right, {}, Qt::ShiftModifier);
        scene.key(Qt::Key_Up);
        scene.key(Qt::Key_Return);
        QCOMPARE(marks->kept().size(), before + 1);
        // Derived: from the middle ten steps to the right and one up, each a hundredth of the picture.
        const auto end = [&](const char* name) { return *point_of(marks->kept().back(), name); };
        QCOMPARE(end("from"), QPointF(0.5, 0.5));
        QCOMPARE(end("to"), QPointF(0.6, 0.49));
        PRESS(marks->marks()->value(static_cast<int>(before), "says").toString());
        QVERIFY2(keys.to("The photo to draw on"), qPrintable(keys.said()));
        scene.key(Qt::Key_Down);
        QCOMPARE(end("from"), QPointF(0.5, 0.51));
        QCOMPARE(end("to"), QPointF(0.6, 0.5));
        scene.key(Qt::Key_Left, {}, Qt::ShiftModifier);
        QCOMPARE(end("from"), QPointF(0.4, 0.51));
        scene.grab("marks-moved-by-keys");
        scene.key(Qt::Key_Z, {}, Qt::ControlModifier);
        QCOMPARE(end("from"), QPointF(0.5, 0.51));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    // Planted faults are seen: a stop without a frame, one out of sight, one that is never reached, one out of order.
    void theLookCanFail() {
        Scene scene;
        Keys keys(scene);
        QQuickItem* find = scene.find("find");
        QVERIFY(find);
        find->setProperty("focusPolicy", Qt::NoFocus);
        QVERIFY2(keys.faultsOfRound().join("\n").contains("never reached: find"), qPrintable(keys.said()));
        find->setProperty("focusPolicy", Qt::StrongFocus);
        ROUND();
        find->setY(find->y() + scene.window().height());
        QVERIFY2(keys.faultsOfRound().join("\n").contains("out of sight: find"), qPrintable(keys.said()));
        find->setY(find->y() - scene.window().height());
        QQuickItem* head = find->parentItem();
        QQuickItem* foot = scene.find("New visit")->parentItem();
        QCOMPARE(head->parentItem(), foot->parentItem());
        QQuickItem* list = scene.find("Pilot house");
        while (list->parentItem() != head->parentItem()) {
            list = list->parentItem();
        }
        list->stackAfter(foot);
        QVERIFY2(keys.faultsOfRound().join("\n").contains("out of order"), qPrintable(keys.said()));
    }
};

int main(int argc, char** argv) {
    const QGuiApplication app(argc, argv);
    QGuiApplication::setFont(QFont(QStringLiteral("Lato")));
    KeyboardTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "keyboard_test.moc"
