// SPDX-License-Identifier: Apache-2.0
#include "support.h"
#include "thread_mark.h"
#include "whereabouts.h"

#include <SQLiteCpp/SQLiteCpp.h>
#include <QDir>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

/// The list of visits: in pages, by day and by state, kept in step with edits.
class AppVisitsTest : public QObject {
    Q_OBJECT

private slots:
    static void onlyTheFirstPageIsReadUntilMoreIsAskedFor() {
        Bench bench;
        make_visits(bench, 150);
        bench.reopen();
        ShownRows& visits = *bench.notebook().visits();
        QTRY_VERIFY_WITH_TIMEOUT(visits.count() > 0, patience);
        QCOMPARE(visits.value(0, "title").toString(), QString("House 149"));
        for (int page = 0; page < 5 && visits.count() < 150; ++page) {
            QVERIFY(visits.count() % 60 == 0);
            visits.fetchMore({});
            bench.settle();
        }
        QCOMPARE(visits.count(), 150);
        QVERIFY(!visits.canFetchMore({}));
        QCOMPARE(visits.value(149, "title").toString(), QString("House 0"));
    }

    static void eachDayHasItsHeadingOnItsLastRow() {
        Bench bench;
        make_visits(bench, 2);
        bench.reopen();
        bench.notebook().newVisit();
        bench.settle();
        bench.notebook().newVisit();
        bench.settle();
        const ShownRows& visits = *bench.notebook().visits();
        QCOMPARE(visits.count(), 4);
        QCOMPARE(visits.value(0, "heading").toString(), QString());
        QCOMPARE(visits.value(1, "heading").toString(), QString("Today"));  // the day of the bench's clock
        QCOMPARE(visits.value(2, "heading").toString(), QString("Thursday, 2 January 2020"));
        QCOMPARE(visits.value(3, "heading").toString(), QString("Wednesday, 1 January 2020"));
    }

    static void anEditMovesItsVisitAndLeavesTheOthers() {
        Bench bench;
        bench.notebook().newVisit();
        bench.notebook().visit()->site()->leave("title", "First");
        bench.settle();
        const QString first = bench.notebook().visit()->visitId();
        bench.notebook().newVisit();
        bench.notebook().visit()->site()->leave("title", "Second");
        bench.settle();
        QCOMPARE(column(bench.notebook().visits(), "title"), (QStringList{"Second", "First"}));
        bench.notebook().openVisit(first);
        bench.settle();
        bench.notebook().visit()->site()->leave("title", "First again");
        bench.settle();
        QCOMPARE(column(bench.notebook().visits(), "title"), (QStringList{"First again", "Second"}));
    }

    static void theListIsNarrowedToAStateAndFollowsIt() {
        Bench bench;
        Notebook& notebook = bench.notebook();
        bench.openNewWindow();
        bench.settle();
        QStringList offered;
        for (int row = 0; row < notebook.states()->count(); ++row) {
            offered << notebook.states()->value(row, "word").toString();
        }
        QCOMPARE(offered, (QStringList{"toMeasure", "measuring", "toSend", "there"}));
        notebook.setNarrowed("measuring");
        bench.settle();
        QCOMPARE(notebook.visits()->count(), 0);
        bench.type("1240");
        notebook.walk()->next();
        bench.settle();
        QCOMPARE(notebook.visits()->count(), 1);
        QCOMPARE(notebook.visits()->value(0, "state").toString(), QString("measuring, 1 window left"));
        QCOMPARE(value(notebook.states(), "measuring", "chosen"), QVariant(true));
        notebook.setNarrowed("toMeasure");
        bench.settle();
        QCOMPARE(notebook.visits()->count(), 0);
        notebook.setNarrowed("nonsense");
        bench.settle();
        QCOMPARE(notebook.narrowed(), QString());
        QCOMPARE(notebook.visits()->count(), 1);
    }

    // A row whose text was cut short on the disk: what is wrong stands in the list, before anybody needs the visit.
    static void aDamagedVisitIsToldOfInTheList() {
        Bench bench;
        make_visits(bench, 3);
        bench.settle();
        bench.end();
        const QString file = QDir(bench.folder()).entryList({"*.sqlite"}).value(0);
        {
            SQLite::Database database(bench.folder().toStdString() + "/" + file.toStdString(), SQLite::OPEN_READWRITE);
            QCOMPARE(database.exec("UPDATE visit_body SET body = substr(body, 1, 20) WHERE visit_id = 'v1'"), 1);
        }
        bench.reopen();
        const QString says = "damaged: it can’t be read. It was left as it is: take it in from a file.";
        const auto state = [&](const char* visit) {
            return value(bench.notebook().visits(), visit, "state").toString();
        };
        QTRY_COMPARE_WITH_TIMEOUT(state("v1"), says, patience);
        bench.settle();
        QCOMPARE(state("v0"), QString("to measure"));
        QCOMPARE(state("v2"), QString("to measure"));
        QVERIFY(value(bench.notebook().visits(), "v1", "asks").toBool());
        QVERIFY(value(bench.notebook().visits(), "v1", "spoken").toString().endsWith(says));
        QVERIFY(value(bench.notebook().visits(), "v1", "damaged").toBool());
        QVERIFY(!value(bench.notebook().visits(), "v0", "damaged").toBool());
        bench.notebook().openVisit("v1");
        bench.settle();
        QCOMPARE(bench.notebook().screen(), QString("visits"));
        QVERIFY2(bench.notebook().fault().contains("doesn’t read back"), qPrintable(bench.notebook().fault()));
    }

    static void theBinIsEmptiedAfterOneQuestion() {
        Bench bench;
        const QString window = bench.openNewWindow();
        Notebook& notebook = bench.notebook();
        notebook.visit()->site()->leave("title", "Net store");
        bench.type("12");
        bench.settle();
        const QString place = "walk/" + window + "/" + notebook.walk()->station();
        QVERIFY(notebook.open()->place().has(place));
        const QString visit = notebook.visit()->visitId();
        QCOMPARE(notebook.binQuestion(), QString());
        notebook.removeVisit(visit);
        bench.settle();
        QVERIFY(notebook.binQuestion().startsWith("Erase this visit for good?"));
        QVERIFY2(notebook.binQuestion().contains("hasn’t confirmed: Net store"), qPrintable(notebook.binQuestion()));
        notebook.emptyBin();
        bench.settle();
        QCOMPARE(notebook.removedVisits()->count(), 0);
        QCOMPARE(notebook.binQuestion(), QString());
        QVERIFY(!notebook.open()->place().has(place));
        bench.reopen();
        bench.settle();
        QCOMPARE(bench.notebook().removedVisits()->count(), 0);
        QCOMPARE(bench.notebook().visits()->count(), 0);
        bench.notebook().openVisit(visit);
        bench.settle();
        QVERIFY(!bench.notebook().fault().isEmpty());
    }

    static void aSearchFindsWhatIsFarDownTheList() {
        Bench bench;
        make_visits(bench, 150);
        bench.reopen();
        bench.notebook().setSearch("HOUSE 7");
        bench.notebook().setSearch("house 71");  // the earlier question's answer must not stand
        bench.settle();
        QCOMPARE(column(bench.notebook().visits(), "title"), QStringList{"House 71"});
        bench.notebook().setSearch({});
        bench.settle();
        QVERIFY(bench.notebook().visits()->count() >= 60);
    }
};

QTEST_MAIN(AppVisitsTest)
#include "app_visits_test.moc"
