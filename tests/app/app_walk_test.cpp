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
    void aDeviceWritesItsUnit();
    void saysTheWalkAloud();
    void saysNothingUnasked();
    void goesByTheLightAround();
    void whatCantBeReadStays();
    void aDraftSurvivesReopening();
    void aDraftOfAnotherStationSurvivesToo();
    void everyStepSurvivesReopening_data();
    void everyStepSurvivesReopening();
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

/// A laser that acts as a keyboard writes its figure with a unit and Return behind it; the entry unit stays.
void AppWalkTest::aDeviceWritesItsUnit() {
    Bench bench;
    bench.openNewWindow();
    WalkModel* walk = bench.notebook().walk();
    struct Written {
        const char* text;
        double mm;
        const char* shown;
        const char* unit;
    };
    // 1 inch is 25.4 mm exactly (international yard and pound agreement, 1959).
    for (const Written& one : {Written{"1.2405 m", 1240.5, "1.2405", "m"}, Written{"1241mm", 1241, "1241", "mm"},
                               Written{"124.2 cm", 1242, "124.2", "cm"},
                               Written{"48 7/8 in", 48.875 * 25.4, "48 7/8", "in"}, Written{"871", 871, "871", "mm"}}) {
        bench.type(one.text);
        bench.settle();
        QCOMPARE(walk->shownText(), QString(one.shown));
        QCOMPARE(walk->unit(), QString(one.unit));
        const QString station = walk->station();
        QVERIFY2(walk->next(), one.text);
        bench.settle();
        const auto& readings = bench.notebook().open()->window()->readings;
        QCOMPARE(readings.back().station, station.toStdString());
        QCOMPARE(readings.back().value->mm(), one.mm);
    }
}

void AppWalkTest::saysTheWalkAloud() {
    Bench bench;
    bench.notebook().settings()->setAloud(true);
    bench.openNewWindow();
    QCOMPARE(bench.voice->said.constLast(), bench.notebook().walk()->says());
    bench.type("1240");
    bench.notebook().walk()->next();
    QCOMPARE(bench.voice->said.constLast(), QString("1240 millimetres. %1").arg(bench.notebook().walk()->says()));
    bench.type("48");
    bench.notebook().walk()->pressKey("3/8");
    bench.type(" in");
    bench.notebook().walk()->next();
    QCOMPARE(bench.voice->said.constLast(), QString("48 3/8 inches. %1").arg(bench.notebook().walk()->says()));
    bench.notebook().walk()->jumpTo("below.left");
    bench.type("900");
    bench.notebook().walk()->next();
    bench.type("1200");
    bench.notebook().walk()->next();
    bench.type("300");
    bench.notebook().walk()->next();
    bench.type("2500");
    bench.notebook().walk()->next();
    bench.settle();
    // 900 + 1200 + 300 = 2400, in one go 2500: what differs is said last.
    QVERIFY(bench.notebook().walk()->differs());
    QCOMPARE(bench.voice->said.constLast(), "2500 millimetres. " + bench.notebook().walk()->differsTitle());
}

void AppWalkTest::saysNothingUnasked() {
    Bench bench;
    bench.openNewWindow();
    bench.type("1240");
    bench.notebook().walk()->next();
    bench.settle();
    QVERIFY(bench.voice->said.isEmpty());
}

void AppWalkTest::goesByTheLightAround() {
    Bench bench;
    const RoomLight* light = bench.notebook().light();
    QVERIFY(!bench.light->tell);  // nobody asked for it: the sensor rests
    bench.notebook().settings()->setLook("room");
    QVERIFY(bench.light->tell);
    for (const auto& [lux, dim] : {std::pair(300.0, false), {19.0, true}, {45.0, true}, {61.0, false}, {45.0, false}}) {
        bench.light->tell(lux);
        QCOMPARE(light->dim(), dim);
    }
    bench.notebook().settings()->setLook("light");
    QVERIFY(!bench.light->tell);
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

void AppWalkTest::everyStepSurvivesReopening_data() {
    QTest::addColumn<QString>("shape");
    for (const char* shape : {"recess", "door", "bay", "arch", "gable"}) {
        QTest::newRow(shape) << QString(shape);
    }
}

/// Closed and opened at every step: within a number, and between two stations.
void AppWalkTest::everyStepSurvivesReopening() {
    QFETCH(QString, shape);
    Bench bench;
    const QString window = bench.openNewWindow(shape);
    const int count = bench.notebook().walk()->count();
    for (int step = 0; step < count; ++step) {
        const QString station = bench.notebook().walk()->station();
        const QString half = QString::number(10 + step);
        bench.type(half);
        bench.reopen();
        WalkModel* walk = bench.notebook().walk();
        QCOMPARE(bench.notebook().screen(), QString("walk"));
        QCOMPARE(walk->windowId(), window);
        QCOMPARE(walk->station(), station);
        QCOMPARE(walk->typed(), half);
        bench.type("0");
        if (walk->differs()) {
            walk->later();
        }
        QVERIFY(walk->next());
        const QString next = walk->station();
        bench.settle();
        bench.reopen();
        walk = bench.notebook().walk();
        QCOMPARE(walk->station(), next);
        QCOMPARE(bench.notebook().open()->window(window)->readings.size(), static_cast<std::size_t>(step) + 1);
        QCOMPARE(bench.notebook().open()->window(window)->readings.back().typed,
                 half.toStdString() + (station.endsWith("_deg") ? "0°" : "0 mm"));
    }
    QVERIFY(bench.notebook().walk()->atEnd());
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
