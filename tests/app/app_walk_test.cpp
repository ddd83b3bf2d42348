// SPDX-License-Identifier: Apache-2.0
#include "support.h"

#include "survey/stations.h"
#include "thread_mark.h"

#include <QSignalSpy>
#include <QTest>

using namespace truehang;
using namespace truehang::test;
using Stitch = thread_mark::Mark;

class AppWalkTest : public QObject {
    Q_OBJECT

private slots:
    void keysMakeAReading();
    void fractionsAndFeet();
    void rubOutAndUnits();
    void whatCantBeReadStays();
    void aDraftSurvivesReopening();
    void aDraftOfAnotherStationSurvivesToo();
    void theUnitOfADraftSurvives();
    void aFailedCommitLeadsBack();
    void takenAgainReplaces();
    void cantReachIsKept();
    void goesOnWithoutTheTape();
    void undoAndRedo();
    void oneGoAgainstThreeParts();
    void everyStationLeadsToTheEnd();
};

namespace {

Stitch mark_of(WalkModel* walk, const QString& station) {
    return value(walk->stations(), station, "mark").value<Stitch>();
}

}  // namespace

void AppWalkTest::keysMakeAReading() {
    Bench bench;
    const QString window = bench.openNewWindow();
    WalkModel* walk = bench.notebook().walk();
    QCOMPARE(walk->station(), QString("opening.width.top"));
    QCOMPARE(walk->position(), QString("1 of %1").arg(walk_of(*bench.notebook().open()->window(window)).size()));
    QSignalSpy kept(walk, &WalkModel::kept);
    bench.type("1242");
    QCOMPARE(walk->typed(), QString("1242"));
    QVERIFY(walk->next());
    // Next doesn't wait: the next station stands there before the reading is on the disk.
    QCOMPARE(walk->station(), QString("opening.width.middle"));
    QCOMPARE(kept.count(), 0);
    QVERIFY(mark_of(walk, "opening.width.top") != Stitch::Kept);
    QTRY_COMPARE_WITH_TIMEOUT(kept.count(), 1, patience);
    QCOMPARE(mark_of(walk, "opening.width.top"), Stitch::Kept);

    bench.reopen();
    const Window* stored = bench.notebook().open()->window(window);
    QVERIFY(stored);
    QCOMPARE(stored->readings.size(), std::size_t{1});
    QCOMPARE(stored->readings[0].value->mm(), 1242.0);
    QCOMPARE(stored->readings[0].typed, std::string("1242 mm"));
}

void AppWalkTest::fractionsAndFeet() {
    Bench bench;
    const QString window = bench.openNewWindow();
    WalkModel* walk = bench.notebook().walk();
    while (walk->unit() != "in") {
        walk->cycleUnit();
    }
    bench.type("48");
    walk->pressKey("3/8");
    QCOMPARE(walk->typed(), QString("48 3/8"));
    QVERIFY(walk->next());
    bench.type("4'");
    walk->pressKey(" ");
    bench.type("3");
    walk->pressKey("1/2");
    walk->pressKey("\"");
    QVERIFY(walk->next());
    bench.settle();
    const auto& readings = bench.notebook().open()->window(window)->readings;
    QCOMPARE(readings.size(), std::size_t{2});
    // 1 inch is 25.4 mm exactly (international yard and pound agreement, 1959).
    QCOMPARE(readings[0].value->mm(), 48.375 * 25.4);
    QCOMPARE(readings[1].value->mm(), 51.5 * 25.4);
}

void AppWalkTest::rubOutAndUnits() {
    Bench bench;
    bench.openNewWindow();
    WalkModel* walk = bench.notebook().walk();
    bench.type("124,55");
    walk->rubOut();
    QCOMPARE(walk->typed(), QString("124,5"));
    QCOMPARE(walk->unit(), QString("mm"));
    walk->cycleUnit();
    QCOMPARE(walk->unit(), QString("cm"));
    QVERIFY(walk->next());
    bench.settle();
    const auto& reading = bench.notebook().open()->window()->readings.at(0);
    QCOMPARE(reading.value->mm(), 1245.0);
    QCOMPARE(reading.typed, std::string("124,5 cm"));
    walk->back();
    QCOMPARE(walk->typed(), QString("124,5"));
    QVERIFY(walk->shownIsKept());
    walk->clearField();
    QCOMPARE(walk->typed(), QString());
}

void AppWalkTest::whatCantBeReadStays() {
    Bench bench;
    bench.openNewWindow();
    WalkModel* walk = bench.notebook().walk();
    for (const char* typed : {"1,240", "12..4", "1/0", "999999"}) {
        walk->clearField();
        bench.type(typed);
        QVERIFY2(!walk->next(), typed);
        QCOMPARE(walk->typed(), QString(typed));
        QCOMPARE(walk->lineKind(), QString("fault"));
        QVERIFY(!walk->line().isEmpty());
        QCOMPARE(walk->station(), QString("opening.width.top"));
    }
    bench.settle();
    QVERIFY(bench.notebook().open()->window()->readings.empty());
}

void AppWalkTest::aDraftSurvivesReopening() {
    Bench bench;
    const QString window = bench.openNewWindow();
    bench.type("1242");
    bench.notebook().walk()->next();
    bench.type("12");
    bench.reopen();
    QCOMPARE(bench.notebook().screen(), QString("walk"));
    WalkModel* walk = bench.notebook().walk();
    QCOMPARE(walk->windowId(), window);
    QCOMPARE(walk->station(), QString("opening.width.middle"));
    QCOMPARE(walk->typed(), QString("12"));
    QVERIFY(!walk->shownIsKept());
    bench.type("40");
    walk->next();
    bench.settle();
    QCOMPARE(bench.notebook().open()->window(window)->readings.at(1).value->mm(), 1240.0);
}

void AppWalkTest::aDraftOfAnotherStationSurvivesToo() {
    Bench bench;
    bench.openNewWindow();
    WalkModel* walk = bench.notebook().walk();
    bench.type("77");
    walk->jumpTo("wall.left");
    bench.type("8");
    bench.reopen();
    walk = bench.notebook().walk();
    QCOMPARE(walk->station(), QString("wall.left"));
    QCOMPARE(walk->typed(), QString("8"));
    walk->jumpTo("opening.width.top");
    QCOMPARE(walk->typed(), QString("77"));
}

void AppWalkTest::theUnitOfADraftSurvives() {
    Bench bench;
    bench.openNewWindow();
    bench.notebook().walk()->cycleUnit();
    bench.type("124");
    bench.reopen();
    QCOMPARE(bench.notebook().walk()->typed(), QString("124"));
    QCOMPARE(bench.notebook().walk()->unit(), QString("cm"));
    bench.notebook().walk()->next();
    bench.settle();
    QCOMPARE(bench.notebook().open()->window()->readings.at(0).value->mm(), 1240.0);
}

void AppWalkTest::aFailedCommitLeadsBack() {
    Bench bench;
    const QString window = bench.openNewWindow();
    WalkModel* walk = bench.notebook().walk();
    bench.type("1242");
    {
        const FullDisk full;
        QVERIFY(walk->next());
        QCOMPARE(walk->station(), QString("opening.width.middle"));
        QTRY_VERIFY_WITH_TIMEOUT(!walk->notKept().isEmpty(), patience);
    }
    QCOMPARE(walk->station(), QString("opening.width.top"));
    QCOMPARE(walk->typed(), QString("1242"));
    QVERIFY(!walk->shownIsKept());
    QCOMPARE(walk->lineKind(), QString("fault"));
    QVERIFY(mark_of(walk, "opening.width.top") != Stitch::Kept);
    QVERIFY(bench.notebook().open()->window(window)->readings.empty());
    QVERIFY(!bench.notebook().fault().isEmpty());
    // There is room again: the same key press keeps it.
    QVERIFY(walk->next());
    bench.settle();
    QVERIFY(walk->notKept().isEmpty());
    QVERIFY(bench.notebook().fault().isEmpty());
    bench.reopen();
    QCOMPARE(bench.notebook().open()->window(window)->readings.size(), std::size_t{1});
}

void AppWalkTest::takenAgainReplaces() {
    Bench bench;
    const QString window = bench.openNewWindow();
    WalkModel* walk = bench.notebook().walk();
    bench.type("1242");
    walk->next();
    walk->back();
    QVERIFY(walk->shownIsKept());
    bench.type("1");  // the first digit starts a new reading
    QCOMPARE(walk->typed(), QString("1"));
    bench.type("250");
    walk->next();
    bench.settle();
    const auto& readings = bench.notebook().open()->window(window)->readings;
    QCOMPARE(readings.size(), std::size_t{2});
    QCOMPARE(readings[1].replaces, readings[0].id);
    QCOMPARE(value(walk->stations(), "opening.width.top", "figure").toString(), QString("1250 mm"));
}

void AppWalkTest::goesOnWithoutTheTape() {
    Bench bench;
    const QString window = bench.openNewWindow();
    WalkModel* walk = bench.notebook().walk();
    QCOMPARE(walk->withoutTape()->rowCount(), 0);  // nothing was read yet, nothing typed
    bench.type("1242");
    walk->next();
    QCOMPARE(value(walk->withoutTape(), "same/opening.width.top", "says").toString(),
             QString("Same as width at the top: 1242 mm"));
    walk->goOnWithout("same/opening.width.top");
    QCOMPARE(walk->station(), QString("opening.width.bottom"));
    bench.type("1200");
    QCOMPARE(value(walk->withoutTape(), "about/1", "says").toString(), QString("About 1200 mm, give or take 25 mm"));
    walk->clearField();
    bench.type("47\"");
    QVERIFY(value(walk->withoutTape(), "about/1", "says").toString().endsWith("give or take 1 in"));
    walk->clearField();
    bench.type("1200");
    walk->goOnWithout("about/1");
    walk->goOnWithout("about/1");  // nothing is typed at the next station
    bench.reopen();
    const auto& readings = bench.notebook().open()->window(window)->readings;
    QCOMPARE(readings.size(), std::size_t{3});
    QCOMPARE(readings[1].station, std::string("opening.width.middle"));
    QVERIFY(readings[1].how && readings[1].how->is(How::copied));
    QCOMPARE(readings[1].value->mm(), 1242.0);
    QVERIFY(readings[2].how && readings[2].how->is(How::estimated));
    QCOMPARE(readings[2].u->mm(), 12.5);  // what is said is twice the standard uncertainty
    ShownRows* stations = bench.notebook().walk()->stations();
    QCOMPARE(value(stations, "opening.width.middle", "figure").toString(), QString("1242 mm, copied"));
    QCOMPARE(value(stations, "opening.width.bottom", "figure").toString(), QString("about 1200 mm"));
    bench.notebook().walk()->undo();
    bench.settle();
    QCOMPARE(bench.notebook().open()->window(window)->readings.size(), std::size_t{2});
}

void AppWalkTest::cantReachIsKept() {
    Bench bench;
    const QString window = bench.openNewWindow();
    WalkModel* walk = bench.notebook().walk();
    walk->cantReach("too-high");
    QCOMPARE(walk->station(), QString("opening.width.middle"));
    bench.reopen();
    const auto& not_taken = bench.notebook().open()->window(window)->not_taken;
    QCOMPARE(not_taken.size(), std::size_t{1});
    QCOMPARE(not_taken[0].station, std::string("opening.width.top"));
    QVERIFY(!value(bench.notebook().walk()->stations(), "opening.width.top", "reason").toString().isEmpty());
    // A reading taken after all ends it.
    bench.notebook().walk()->jumpTo("opening.width.top");
    bench.type("1242");
    bench.notebook().walk()->next();
    bench.settle();
    QVERIFY(bench.notebook().open()->window(window)->not_taken.empty());
}

void AppWalkTest::undoAndRedo() {
    Bench bench;
    const QString window = bench.openNewWindow();
    WalkModel* walk = bench.notebook().walk();
    bench.type("1242");
    walk->next();
    bench.settle();
    QVERIFY(walk->canUndo());
    walk->undo();
    bench.settle();
    QVERIFY(bench.notebook().open()->window(window)->readings.empty());
    QVERIFY(walk->canRedo());
    walk->redo();
    bench.settle();
    QCOMPARE(bench.notebook().open()->window(window)->readings.size(), std::size_t{1});
}

void AppWalkTest::oneGoAgainstThreeParts() {
    Bench bench;
    bench.openNewWindow();
    WalkModel* walk = bench.notebook().walk();
    const auto take = [&](const char* station, const char* typed) {
        walk->jumpTo(station);
        bench.type(typed);
        QVERIFY(walk->next());
    };
    take("below.left", "860");
    take("opening.height.left", "1130");
    take("above.left", "148");
    walk->jumpTo("ceiling.left");
    bench.type("2138");  // 860 + 1130 + 148
    QCOMPARE(walk->lineKind(), QString("adds-up"));
    walk->clearField();
    bench.type("2183");  // two digits exchanged: 45 mm, far beyond what tape and edges explain
    QCOMPARE(walk->lineKind(), QString("differs"));
    QVERIFY(!walk->line().isEmpty());
    QVERIFY(walk->next());
    bench.settle();
    QVERIFY(walk->differs());
    QVERIFY(!walk->differsTitle().isEmpty());
    QVERIFY(walk->suspects()->count() > 0);
    QCOMPARE(bench.notebook().open()->window()->readings.size(), std::size_t{4});  // kept as it was typed
    walk->later();
    QVERIFY(!walk->differs());
    walk->jumpTo("ceiling.left");
    walk->clearField();
    bench.type("2138");
    QVERIFY(walk->next());
    bench.settle();
    QVERIFY(!walk->differs());
    QCOMPARE(walk->suspects()->count(), 0);
}

void AppWalkTest::everyStationLeadsToTheEnd() {
    Bench bench;
    bench.openNewWindow("door");
    WalkModel* walk = bench.notebook().walk();
    const int count = walk->count();
    for (int taken = 0; taken < count; ++taken) {
        QVERIFY(!walk->atEnd());
        bench.type("1500");
        QVERIFY(walk->next());
    }
    QVERIFY(walk->atEnd());
    bench.settle();
    for (int row = 0; row < walk->stations()->count(); ++row) {
        QCOMPARE(walk->stations()->value(row, "mark").value<Stitch>(), Stitch::Kept);
    }
}

QTEST_GUILESS_MAIN(AppWalkTest)
#include "app_walk_test.moc"
