// SPDX-License-Identifier: Apache-2.0
#include "arranging.h"
#include "open_visit.h"
#include "support.h"
#include "survey/standing.h"
#include "whereabouts.h"

#include <QSignalSpy>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

namespace {

/// A visit with two rooms, the first with windows A, B and C, the second with D; the windows' ids.
QStringList makeHouse(Bench& bench) {
    bench.notebook().newVisit();
    VisitModel* visit = bench.notebook().visit();
    const QString parlour = visit->addRoom("Parlour");
    QStringList ids;
    for (const char* const name : {"A", "B", "C"}) {
        ids << visit->addWindow(parlour, name, "recess");
    }
    ids << visit->addWindow(visit->addRoom("Kitchen"), "D", "door");
    bench.settle();
    return ids;
}

}  // namespace

/// Rooms and windows put in order, moved, copied, taken out and erased.
class AppArrangingTest : public QObject {
    Q_OBJECT

private slots:
    static void windowsChangePlacesWithinTheirRoom() {
        Bench bench;
        const QStringList ids = makeHouse(bench);
        VisitModel* visit = bench.notebook().visit();
        visit->moveWindow(ids[2], -1);
        QCOMPARE(column(visit->windows(), "name"), (QStringList{"A", "C", "B", "D"}));
        QCOMPARE(value(visit->windows(), ids[2], "place").toString(), QString("Window 2 of 3 in Parlour"));
        visit->moveWindow(ids[2], -1);
        QCOMPARE(column(visit->windows(), "name"), (QStringList{"C", "A", "B", "D"}));
        bench.settle();
        const QString before = visit->undoSays();
        visit->moveWindow(ids[2], -1);  // it is the first already
        visit->moveWindow(ids[1], 1);   // and this the last of its room
        bench.settle();
        QCOMPARE(column(visit->windows(), "name"), (QStringList{"C", "A", "B", "D"}));
        QCOMPARE(visit->undoSays(), before);
        visit->undo();
        bench.settle();
        visit->undo();
        bench.settle();
        QCOMPARE(column(visit->windows(), "name"), (QStringList{"A", "B", "C", "D"}));
    }

    static void whatIsAddedDuringAnUndoWaitsForIt() {
        Bench bench;
        const QStringList ids = makeHouse(bench);
        VisitModel* visit = bench.notebook().visit();
        visit->renameRoom(visit->rooms()->value(0, "roomId").toString(), "Parlour, at the back of the house");
        bench.settle();
        visit->undo();
        visit->addRoom("An attic whose name is longer than a short one");
        visit->copyWindow(ids[0]);
        bench.settle();
        QCOMPARE(column(visit->rooms(), "name"),
                 (QStringList{"Parlour", "Kitchen", "An attic whose name is longer than a short one"}));
        QCOMPARE(visit->windows()->count(), 5);
    }

    static void whatWaitedForAnUndoIsSaidWhereTheVisitIsClosed() {
        Bench bench;
        makeHouse(bench);
        VisitModel* visit = bench.notebook().visit();
        visit->renameRoom(visit->rooms()->value(0, "roomId").toString(), "Parlour, at the back of the house");
        bench.settle();
        OpenVisit* open = bench.notebook().open();
        const QSignalSpy said(open, &OpenVisit::notKept);
        visit->undo();
        visit->addRoom("Attic");
        open->close();
        QCOMPARE(said.count(), 1);
        QVERIFY(said.first().first().toString().contains("wasn’t kept"));
    }

    static void aVisitIsHeldFromTheMomentItIsRead() {
        Bench bench;
        makeHouse(bench);
        OpenVisit* open = bench.notebook().open();
        const QString visit = open->visitId();
        QVERIFY(open->holds(visit));
        open->close();
        QVERIFY(!open->holds(visit));
        open->openSurvey(visit);
        QVERIFY(!open->isOpen());
        QVERIFY(open->holds(visit));
        bench.settle();
        QVERIFY(open->isOpen());
        QVERIFY(open->holds(visit));
    }

    static void whatIsAddedToARoomThatIsGoneByThenIsNot() {
        Bench bench;
        const QStringList ids = makeHouse(bench);
        VisitModel* visit = bench.notebook().visit();
        visit->removeRoom(visit->rooms()->value(0, "roomId").toString());
        bench.settle();
        visit->undo();
        bench.settle();
        QCOMPARE(visit->windows()->count(), 4);
        visit->redo();  // takes the room away again
        visit->copyWindow(ids[0]);
        bench.settle();
        QCOMPARE(column(visit->windows(), "name"), (QStringList{"D"}));
    }

    static void roomsChangePlacesWithTheirWindows() {
        Bench bench;
        makeHouse(bench);
        VisitModel* visit = bench.notebook().visit();
        visit->moveRoom(visit->rooms()->value(1, "roomId").toString(), -1);
        bench.settle();
        bench.reopen();
        visit = bench.notebook().visit();
        QCOMPARE(column(visit->rooms(), "name"), (QStringList{"Kitchen", "Parlour"}));
        QCOMPARE(column(visit->windows(), "name"), (QStringList{"D", "A", "B", "C"}));
    }

    static void aWindowGoesToAnotherRoomWithItsReadings() {
        Bench bench;
        const QStringList ids = makeHouse(bench);
        bench.notebook().openWindow(ids[0]);
        const QString station = bench.notebook().walk()->station();
        bench.type("1240");
        bench.notebook().walk()->next();
        bench.settle();
        VisitModel* visit = bench.notebook().visit();
        const QString kitchen = visit->rooms()->value(1, "roomId").toString();
        visit->moveWindowTo(ids[0], kitchen);
        bench.settle();
        QCOMPARE(column(visit->windows(), "name"), (QStringList{"B", "C", "D", "A"}));
        QCOMPARE(bench.notebook().open()->windowId(), ids[0]);
        QCOMPARE(bench.notebook().open()->window()->readings.size(), 1U);
        QCOMPARE(QString::fromStdString(bench.notebook().open()->window()->readings[0].station), station);
        QCOMPARE(visit->removedWindows()->count(), 0);
        const QString before = visit->undoSays();
        visit->moveWindowTo(ids[0], kitchen);
        visit->moveWindowTo(ids[0], "no such room");
        bench.settle();
        QCOMPARE(visit->undoSays(), before);
    }

    static void anotherLikeItHasWhatHangsThereAndNothingMeasured() {
        Bench bench;
        const QStringList ids = makeHouse(bench);
        Notebook& notebook = bench.notebook();
        notebook.openWindow(ids[0]);
        bench.type("1240");
        notebook.walk()->next();
        notebook.hanging()->addLayer();
        notebook.hanging()->treatment()->choose("heading", "pencil-pleat");
        notebook.hanging()->hardware()->choose("kind", "track");
        const QString radiator = notebook.obstructions()->add("radiator");
        notebook.obstructions()->form()->leave("width", "800");
        bench.settle();
        const QString made = notebook.visit()->copyWindow(ids[0]);
        bench.settle();
        QCOMPARE(column(notebook.visit()->windows(), "name"), (QStringList{"A", "Window 5", "B", "C", "D"}));
        const Window& window = *notebook.open()->window(made);
        QVERIFY(window.readings.empty() && window.not_taken.empty() && window.photos.empty());
        QCOMPARE(stations_taken(window).taken, 0);
        QVERIFY(stations_taken(window).asked > 0);
        QVERIFY(window.layers.at(0).treatment->heading->is(Heading::pencil_pleat));
        QVERIFY(window.layers[0].hardware->kind->is(HardwareKind::track));
        QCOMPARE(window.obstructions.at(0).width->mm(), 800.0);
        QVERIFY(QString::fromStdString(window.obstructions[0].id) != radiator);
        QVERIFY(window.layers[0].id != notebook.open()->window(ids[0])->layers[0].id || window.layers[0].id.empty());
        QCOMPARE(notebook.open()->window(ids[0])->readings.size(), 1U);
        QCOMPARE(notebook.visit()->copyWindow("no such window"), QString());
        notebook.visit()->undo();
        bench.settle();
        QCOMPARE(column(notebook.visit()->windows(), "name"), (QStringList{"A", "B", "C", "D"}));
    }

    static void aCopyIsNeitherUpNorDecidedNorNoted() {
        Window window;
        window.id = "w";
        window.shape = Shape::recess;
        window.notes = "the left reveal is soft";
        window.photos.resize(1);
        window.not_taken.resize(1);
        window.layers.resize(1);
        window.layers[0].hardware.emplace().stage = Stage::fixed;
        window.layers[0].treatment.emplace().decided.emplace();
        int number = 0;
        const Window made = window_like(window, "Another", [&] { return "id-" + std::to_string(number++); });
        QCOMPARE(made.name, std::string("Another"));
        QVERIFY(made.id != window.id);
        QVERIFY(made.notes.empty() && made.photos.empty() && made.not_taken.empty());
        QVERIFY(!made.layers.at(0).hardware->stage && !made.layers[0].treatment->decided);
    }

    static void whatWasTakenOutComesBackAfterARestartWithItsRoom() {
        Bench bench;
        const QStringList ids = makeHouse(bench);
        VisitModel* visit = bench.notebook().visit();
        visit->removeWindow(ids[1]);
        bench.settle();
        visit->removeRoom(visit->rooms()->value(1, "roomId").toString());
        bench.settle();
        QCOMPARE(visit->removedWindows()->count(), 2);
        bench.reopen();
        visit = bench.notebook().visit();
        QTRY_COMPARE_WITH_TIMEOUT(visit->removedWindows()->count(), 2, patience);
        QCOMPARE(visit->removedWindows()->value(0, "title").toString(), QString("Kitchen, d"));
        visit->bringWindowBack(ids[3]);
        bench.settle();
        QCOMPARE(column(visit->rooms(), "name"), (QStringList{"Parlour", "Kitchen"}));
        QCOMPARE(column(visit->windows(), "name"), (QStringList{"A", "C", "D"}));
        QCOMPARE(visit->removedWindows()->count(), 1);
        visit->bringWindowBack(ids[1]);
        bench.settle();
        QCOMPARE(column(visit->windows(), "name"), (QStringList{"A", "C", "B", "D"}));
        QCOMPARE(visit->removedWindows()->count(), 0);
    }

    static void whatWasTakenOutIsErasedWithItsHalfTypedTexts() {
        Bench bench;
        const QStringList ids = makeHouse(bench);
        bench.notebook().openWindow(ids[1]);
        bench.type("77");
        const QString place = "walk/" + ids[1] + "/" + bench.notebook().walk()->station();
        bench.settle();
        Whereabouts& texts = bench.notebook().open()->place();
        QVERIFY2(texts.has(place), qPrintable(place));
        VisitModel* visit = bench.notebook().visit();
        bench.notebook().setScreen("visit");
        visit->removeWindow(ids[1]);
        bench.settle();
        visit->eraseRemovedWindows();
        bench.settle();
        QCOMPARE(visit->removedWindows()->count(), 0);
        QVERIFY(!visit->canUndo());
        QVERIFY(!texts.has(place));
        bench.reopen();
        bench.settle();
        QCOMPARE(column(bench.notebook().visit()->windows(), "name"), (QStringList{"A", "C", "D"}));
        QCOMPARE(bench.notebook().visit()->removedWindows()->count(), 0);
        QVERIFY(!bench.notebook().visit()->canUndo());
    }

    static void whatCantBeErasedStays() {
        Bench bench;
        const QStringList ids = makeHouse(bench);
        VisitModel* visit = bench.notebook().visit();
        visit->removeWindow(ids[1]);
        bench.settle();
        {
            const FullDisk full;
            visit->eraseRemovedWindows();
            bench.settle();
        }
        QVERIFY(!bench.notebook().fault().isEmpty());
        QCOMPARE(visit->removedWindows()->count(), 1);
        visit->bringWindowBack(ids[1]);
        bench.settle();
        QCOMPARE(visit->windows()->count(), 4);
    }
};

QTEST_MAIN(AppArrangingTest)
#include "app_arranging_test.moc"
