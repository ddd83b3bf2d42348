// SPDX-License-Identifier: Apache-2.0
#include "support.h"

#include "document/document.h"
#include "thread_mark.h"

#include <QFile>
#include <QLocale>
#include <QSignalSpy>
#include <QTest>

using namespace truehang;
using namespace truehang::test;
using Stitch = thread_mark::Mark;

class AppModelsTest : public QObject {
    Q_OBJECT

private slots:
    void rowsKeepTheirPlace();
    void aVisitIsMadeFoundRemovedAndBroughtBack();
    void siteFieldsAreKept();
    void aHalfTypedFieldSurvives();
    void windowsAreAddedAndRemoved();
    void everyShapeIsOffered();
    void howItIsMeasured();
    void clothsAreEdited();
    void aClothInUseStays();
    void whatStandsInTheWay();
    void whatHangsThere();
    void whatIsMadeUp();
    void figuresOfTheExample();
    void positionComesOrDoesNot();
    void undoWhileAnEditIsMade();
    void settingsStay();
    void numbersTakeTheLocalesMark();
    void saysWhatIsWrongWithAForeignStore();
};

void AppModelsTest::rowsKeepTheirPlace() {
    ShownRows rows({"key", "text"});
    const QAbstractItemModelTester tester(&rows, QAbstractItemModelTester::FailureReportingMode::QtTest);
    rows.setRows({{"a", "1"}, {"b", "2"}, {"c", "3"}});
    QSignalSpy changed(&rows, &ShownRows::dataChanged);
    QSignalSpy removed(&rows, &ShownRows::rowsRemoved);
    QSignalSpy reset(&rows, &ShownRows::modelReset);
    rows.setRows({{"c", "3"}, {"b", "20"}, {"d", "4"}});
    QCOMPARE(rows.count(), 3);
    QCOMPARE(rows.value(0, "text").toString(), QString("3"));
    QCOMPARE(rows.value(1, "text").toString(), QString("20"));
    QCOMPARE(rows.value(2, "key").toString(), QString("d"));
    QCOMPARE(removed.count(), 1);
    QCOMPARE(reset.count(), 0);
    QCOMPARE(changed.count(), 1);
    QCOMPARE(rows.value(7, "text"), QVariant());
    QCOMPARE(rows.value(0, "nothing"), QVariant());
    // A key that stands twice is no reason to fall over: both rows are shown.
    rows.setRows({{"a", "1"}, {"a", "2"}, {"b", "3"}});
    rows.setRows({{"b", "4"}, {"a", "5"}, {"a", "6"}, {"c", "7"}});
    QCOMPARE(rows.count(), 4);
    QCOMPARE(rows.value(2, "text"), QVariant("6"));
    rows.setRows({{"a", "8"}});
    QCOMPARE(rows.count(), 1);
    QCOMPARE(rows.value(0, "text"), QVariant("8"));
}

void AppModelsTest::aVisitIsMadeFoundRemovedAndBroughtBack() {
    Bench bench;
    Notebook& notebook = bench.notebook();
    notebook.newVisit();
    QCOMPARE(notebook.screen(), QString("visit"));
    notebook.visit()->site()->leave("title", "Pilot house");
    notebook.visit()->site()->leave("address", "4 Slipway Row, Ferrymouth");
    QTRY_COMPARE_WITH_TIMEOUT(notebook.visits()->count(), 1, patience);
    QTRY_COMPARE_WITH_TIMEOUT(notebook.visits()->value(0, "title").toString(), QString("Pilot house"), patience);
    QCOMPARE(notebook.visits()->value(0, "state").toString(), QString("to measure"));
    notebook.setSearch("slipway pilot");
    bench.settle();
    QCOMPARE(notebook.visits()->count(), 1);
    notebook.setSearch("lighthouse");
    bench.settle();
    QCOMPARE(notebook.visits()->count(), 0);
    notebook.setSearch({});
    bench.settle();
    const QString id = notebook.visits()->value(0, "visitId").toString();
    notebook.removeVisit(id);
    QTRY_COMPARE_WITH_TIMEOUT(notebook.visits()->count(), 0, patience);
    bench.settle();
    QCOMPARE(notebook.removedVisits()->count(), 1);
    QCOMPARE(notebook.screen(), QString("visits"));
    bench.reopen();
    QTRY_COMPARE_WITH_TIMEOUT(bench.notebook().removedVisits()->count(), 1, patience);
    bench.notebook().bringBack(id);
    QTRY_COMPARE_WITH_TIMEOUT(bench.notebook().visits()->count(), 1, patience);
}

void AppModelsTest::siteFieldsAreKept() {
    Bench bench;
    bench.notebook().newVisit();
    FieldForm* site = bench.notebook().visit()->site();
    const QStringList fields{"title", "clientName", "clientPhone", "clientEmail", "address", "measuredBy"};
    for (const QString& field : fields) {
        site->leave(field, "text of " + field);
        site->leave(field, "text of " + field);  // leaving twice is once
    }
    bench.settle();
    QCOMPARE(bench.notebook().visit()->clientName(), QString("text of clientName"));
    bench.reopen();
    site = bench.notebook().visit()->site();
    for (const QString& field : fields) {
        QCOMPARE(value(site, field, "text").toString(), "text of " + field);
    }
    QCOMPARE(bench.notebook().screen(), QString("visit"));
}

void AppModelsTest::aHalfTypedFieldSurvives() {
    Bench bench;
    bench.notebook().newVisit();
    bench.settle();
    FieldForm* site = bench.notebook().visit()->site();
    QSignalSpy changed(site, &FieldForm::dataChanged);
    site->typing("clientName", "R. Odu");
    QCOMPARE(changed.count(), 0);  // the field itself shows what is typed
    bench.reopen();
    QCOMPARE(value(bench.notebook().visit()->site(), "clientName", "text").toString(), QString("R. Odu"));
    QCOMPARE(bench.notebook().visit()->clientName(), QString());  // not an edit yet
}

void AppModelsTest::windowsAreAddedAndRemoved() {
    Bench bench;
    bench.notebook().newVisit();
    VisitModel* visit = bench.notebook().visit();
    const QString parlour = visit->addRoom("Parlour");
    const QString south = visit->addWindow(parlour, "South window", "recess");
    const QString first = visit->addWindow({}, {}, "door");
    bench.settle();
    QCOMPARE(visit->rooms()->count(), 2);
    QCOMPARE(visit->windows()->count(), 2);
    QCOMPARE(value(visit->windows(), south, "title").toString(), QString("Parlour, south window"));
    QCOMPARE(value(visit->windows(), south, "mark").value<Stitch>(), Stitch::ToDo);
    QVERIFY(!first.isEmpty());
    visit->renameWindow(first, "Yard door");
    visit->removeWindow(south);
    bench.settle();
    QCOMPARE(visit->windows()->count(), 1);
    QCOMPARE(visit->removedWindows()->count(), 1);
    visit->bringWindowBack(south);
    bench.settle();
    QCOMPARE(visit->windows()->count(), 2);
    QCOMPARE(visit->removedWindows()->count(), 0);
    visit->removeRoom(parlour);
    bench.settle();
    QCOMPARE(visit->windows()->count(), 1);
    QVERIFY(visit->canUndo());
    visit->undo();
    bench.settle();
    QCOMPARE(visit->windows()->count(), 2);
}

void AppModelsTest::everyShapeIsOffered() {
    Bench bench;
    bench.notebook().newVisit();
    VisitModel* visit = bench.notebook().visit();
    for (const char* shape : {"recess", "frame", "door", "bay", "arch", "gable", "corner"}) {
        QCOMPARE(value(visit->shapes(), shape, "offered").toBool(), true);
    }
    QVERIFY(!visit->addWindow({}, "Lantern room", "bay").isEmpty());
    QCOMPARE(visit->addWindow({}, "Hatch", "no such shape"), QString());
    QCOMPARE(visit->windows()->count(), 1);
}

void AppModelsTest::howItIsMeasured() {
    Bench bench;
    bench.notebook().newVisit();
    FieldForm* measuring = bench.notebook().visit()->measuring();
    measuring->choose("entryUnit", "in");
    measuring->choose("tapeClass", "I");
    measuring->choose("edge", "rough");
    measuring->choose("entryUnit", "furlong");  // not a unit: nothing changes
    bench.settle();
    const Survey& survey = bench.notebook().open()->survey();
    QCOMPARE(*survey.entry_unit, std::string("in"));
    QVERIFY(survey.tape->accuracy->is(TapeClass::I));
    QCOMPARE(survey.rules.numbers.at("edge_u_mm"), 4.0);  // rough stone: trade rules, section 1
    QCOMPARE(value(measuring, "edge", "word").toString(), QString("rough"));
}

void AppModelsTest::clothsAreEdited() {
    Bench bench;
    bench.notebook().newVisit();
    FabricsModel* fabrics = bench.notebook().fabrics();
    const QString id = fabrics->add("face");
    QCOMPARE(fabrics->current(), id);
    FieldForm* form = fabrics->form();
    form->leave("name", "Herring sailcloth, chalk");
    form->leave("width", "140 cm");
    form->leave("selvedge", "10");
    form->leave("repeat", "320");
    form->choose("match", "half-drop");
    form->leave("mass", "290");
    form->leave("shrinkage", "2,5");
    form->leave("shrinkage", "70");  // out of its range: stays in the field, nothing stored
    bench.settle();
    const Fabric& fabric = bench.notebook().open()->survey().fabrics.at(0);
    QCOMPARE(fabric.width.mm(), 1400.0);
    QCOMPARE(fabric.repeat.mm(), 320.0);
    QVERIFY(fabric.match->is(Match::half_drop));
    QCOMPARE(*fabric.mass_gsm, 290.0);
    QCOMPARE(fabric.shrinkage_pct, 2.5);
    QVERIFY(!value(form, "shrinkage", "fault").toString().isEmpty());
    QCOMPARE(value(form, "shrinkage", "text").toString(), QString("70"));
    form->leave("shrinkage", "3");
    QVERIFY(value(form, "shrinkage", "fault").toString().isEmpty());
    form->leave("selvedge", "700");  // nothing would be left between
    QVERIFY(!value(form, "selvedge", "fault").toString().isEmpty());
    bench.settle();
    QCOMPARE(bench.notebook().open()->survey().fabrics.at(0).selvedge.mm(), 10.0);
}

void AppModelsTest::aClothInUseStays() {
    Bench bench;
    open_example(bench);
    FabricsModel* fabrics = bench.notebook().fabrics();
    fabrics->remove("sailcloth");
    bench.settle();
    QCOMPARE(fabrics->fabrics()->count(), 2);
    QVERIFY(fabrics->fault().contains("South window"));
}

void AppModelsTest::whatStandsInTheWay() {
    Bench bench;
    const QString window = bench.openNewWindow();
    ObstructionsModel* model = bench.notebook().obstructions();
    QCOMPARE(model->add("no such thing"), QString());
    const QString id = model->add("radiator");
    QCOMPARE(model->current(), id);
    model->form()->leave("left", "-120");
    model->form()->leave("width", "1000");
    model->form()->leave("depth", "-5");  // only the left edge may be negative
    bench.settle();
    const Obstruction& one = bench.notebook().open()->window(window)->obstructions.at(0);
    QCOMPARE(one.left->mm(), -120.0);
    QCOMPARE(one.width->mm(), 1000.0);
    QVERIFY(!one.depth.has_value());
    QVERIFY(!value(model->form(), "depth", "fault").toString().isEmpty());
    model->form()->leave("left", {});
    bench.settle();
    QVERIFY(!bench.notebook().open()->window(window)->obstructions.at(0).left.has_value());
    model->remove(id);
    bench.settle();
    QCOMPARE(model->obstructions()->count(), 0);
    QCOMPARE(model->current(), QString());
}

void AppModelsTest::whatHangsThere() {
    Bench bench;
    const QString window = bench.openNewWindow();
    HangingModel* hanging = bench.notebook().hanging();
    QCOMPARE(hanging->current(), -1);
    hanging->addLayer();
    QCOMPARE(hanging->current(), 0);
    hanging->hardware()->choose("kind", "track");
    QCOMPARE(hanging->hardware()->indexOf("diameter"), -1);  // a track has none
    hanging->hardware()->choose("kind", "pole");
    hanging->hardware()->leave("diameter", "28");
    hanging->hardware()->leave("length", "1720");
    hanging->hardware()->leave("brackets", "2,5");
    QVERIFY(!value(hanging->hardware(), "brackets", "fault").toString().isEmpty());
    hanging->hardware()->leave("brackets", "2");
    hanging->treatment()->choose("heading", "tab");
    hanging->treatment()->choose("length", "given");
    hanging->treatment()->leave("bottom", "150");
    hanging->treatment()->leave("fullness", "1,5");
    hanging->treatment()->choose("pelmet", "yes");
    hanging->treatment()->leave("pelmetReturn", "90");
    bench.settle();
    const Window* stored = bench.notebook().open()->window(window);
    QCOMPARE(stored->layers.size(), std::size_t{1});
    QVERIFY(!stored->layered);
    QCOMPARE(stored->layers[0].hardware->diameter->mm(), 28.0);
    QCOMPARE(*stored->layers[0].hardware->brackets, 2);
    QCOMPARE(*stored->layers[0].treatment->fullness, 1.5);
    QCOMPARE(stored->layers[0].treatment->bottom->mm(), 150.0);
    QCOMPARE(stored->layers[0].treatment->pelmet->return_depth.mm(), 90.0);
    hanging->addLayer();
    bench.settle();
    stored = bench.notebook().open()->window(window);
    QVERIFY(stored->layered);
    QCOMPARE(hanging->layers()->count(), 2);
    QVERIFY(stored->layers[0].id != stored->layers[1].id);
    QVERIFY(!stored->layers[0].id.empty());
    hanging->removeLayer(0);
    bench.settle();
    QCOMPARE(hanging->layers()->count(), 1);
}

void AppModelsTest::whatIsMadeUp() {
    Bench bench;
    open_example(bench);
    HangingModel* hanging = bench.notebook().hanging();
    FieldForm* treatment = hanging->treatment();
    const auto held = [&] { return bench.notebook().open()->window()->layers[0]; };
    QVERIFY(treatment->indexOf("liningHung") >= 0);  // the example is lined
    QCOMPARE(treatment->indexOf("tieBackHeight"), -1);
    treatment->choose("secondLining", "sateen");
    treatment->choose("liningHung", "separate");
    treatment->choose("tieBack", "tie-back");
    treatment->leave("tieBackHeight", "950");
    treatment->leave("tieBackLength", "560");
    treatment->choose("operation", "cord");
    treatment->choose("weights", "lead");
    hanging->hardware()->leave("bracketRated", "9,5");
    bench.settle();
    QCOMPARE(*held().treatment->second_lining, std::string("sateen"));
    QVERIFY(held().treatment->lining_hung->is(LiningHung::separate));
    QCOMPARE(held().treatment->tie_back->height->mm(), 950.0);
    QCOMPARE(held().treatment->tie_back->length->mm(), 560.0);
    QCOMPARE(held().hardware->bracket_rated->kg(), 9.5);
    // The cautions stand there as soon as the choice does: small children use this room.
    const ShownRows* flags = bench.notebook().figures()->flags();
    QString all;
    for (int row = 0; row < flags->rowCount(); ++row) {
        all += flags->data(flags->index(row, 0), flags->roleNames().key("text")).toString();
    }
    for (const char* word : {"corded", "tie-back", "lead weights"}) {
        QVERIFY2(all.contains(QLatin1String(word)), qPrintable(all));
    }
    treatment->choose("tieBack", "holdback");
    bench.settle();
    QCOMPARE(treatment->indexOf("tieBackLength"), -1);
    QCOMPARE(held().treatment->tie_back->height->mm(), 950.0);  // stays with the other kind
    treatment->choose("tieBack", "");
    treatment->choose("operation", "");
    bench.settle();
    QVERIFY(!held().treatment->tie_back);
    QVERIFY(!held().treatment->operation);
}

void AppModelsTest::figuresOfTheExample() {
    Bench bench;
    open_example(bench);
    FiguresModel* model = bench.notebook().figures();
    const auto figure = [&](const char* path) { return value(model->figures(), path, "figure").toString(); };
    // The figures document of the same example.
    QCOMPARE(figure("finished.width_mm"), QString("860"));
    QCOMPARE(figure("finished.drop_mm"), QString("1992"));
    QCOMPARE(value(model->figures(), "finished.drop_mm", "plusMinus").toString(), QString("± 6"));
    QCOMPARE(figure("cloth.fullness"), QString("1.51"));
    QCOMPARE(figure("cloth.cut_drop_mm"), QString("2240"));
    QCOMPARE(figure("cloth.length_mm"), QString("4480"));
    QCOMPARE(figure("lining.cut_drop_mm"), QString("2110"));
    QCOMPARE(figure("tabs.each"), QString("7"));
    QCOMPARE(value(model->sizes(), "sizes.pole.left", "figure").toString(), QString("2070"));
    QVERIFY(value(model->figures(), "finished.drop_mm", "asks").toBool());
    model->ask("finished.drop_mm");
    QVERIFY(model->why()->count() > 0);
    QVERIFY(!model->askedLabel().isEmpty());
    model->ask("finished.drop_mm");
    QCOMPARE(model->why()->count(), 0);
    ShownRows* orders = bench.notebook().visit()->orders();
    QCOMPARE(value(orders, "sailcloth", "figure").toString(), QString("4.9"));
    QCOMPARE(value(orders, "sateen", "figure").toString(), QString("4.3"));
    QVERIFY(!model->windowTitle().isEmpty());
    for (int row = 0; row < model->flags()->count(); ++row) {
        QVERIFY(!model->flags()->value(row, "word").toString().isEmpty());
        QVERIFY(!model->flags()->value(row, "shape").toString().isEmpty());
    }
}

void AppModelsTest::positionComesOrDoesNot() {
    Bench bench;
    bench.notebook().newVisit();
    PositionModel* position = bench.notebook().position();
    position->ask();
    QCOMPARE(position->state(), PositionModel::State::Asking);
    bench.position->answer(PositionFix{54.6, -1.1, 12.0, 8.0});
    QCOMPARE(position->state(), PositionModel::State::Here);
    QCOMPARE(position->says(), QString("54.60000, -1.10000, within 12 m"));
    bench.settle();
    QCOMPARE(*bench.notebook().open()->survey().site->latitude, 54.6);
    position->forget();
    position->ask();
    bench.position->answer(std::nullopt);
    QCOMPARE(position->state(), PositionModel::State::NoPosition);
    bench.settle();
    QVERIFY(!bench.notebook().open()->survey().site->latitude.has_value());
    position->ask();
    bench.notebook().newVisit();  // what is asked for one visit isn't given to another
    QCOMPARE(position->state(), PositionModel::State::Quiet);
    QVERIFY(!bench.position->asked());
}

void AppModelsTest::undoWhileAnEditIsMade() {
    Bench bench;
    bench.notebook().newVisit();
    VisitModel* visit = bench.notebook().visit();
    visit->addRoom("Parlour");
    bench.settle();
    visit->site()->leave("title", "Pilot house");
    visit->undo();                                   // of the title, under way
    visit->site()->leave("clientName", "R. Oduya");  // waits for what undo gives
    bench.settle();
    QCOMPARE(bench.notebook().open()->survey().title, std::string());
    QCOMPARE(visit->clientName(), QString("R. Oduya"));
    bench.reopen();
    QCOMPARE(bench.notebook().visit()->clientName(), QString("R. Oduya"));
    QCOMPARE(bench.notebook().visit()->rooms()->count(), 1);
}

void AppModelsTest::settingsStay() {
    Bench bench;
    Settings* settings = bench.notebook().settings();
    QCOMPARE(settings->hand(), QString("right"));
    settings->setHand("left");
    settings->setLook("dark");
    settings->setTextScale(1.5);
    settings->setTextScale(17);  // not one of the sizes
    settings->setInchDenominator(16);
    QCOMPARE(bench.notebook().walk()->fractions()->count(), 15);
    bench.reopen();
    settings = bench.notebook().settings();
    QCOMPARE(settings->hand(), QString("left"));
    QCOMPARE(settings->look(), QString("dark"));
    QCOMPARE(settings->inchDenominator(), 16);
}

void AppModelsTest::numbersTakeTheLocalesMark() {
    const QLocale before;
    QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany));  // CLDR: a comma
    {
        Bench bench;
        bench.openNewWindow();
        bench.notebook().visit()->measuring()->choose("entryUnit", "cm");
        ObstructionsModel* model = bench.notebook().obstructions();
        model->add("beam");
        model->form()->leave("width", "124.5");  // either mark is understood
        bench.settle();
        QCOMPARE(bench.notebook().open()->window()->obstructions.at(0).width->mm(), 1245.0);
        QCOMPARE(value(model->form(), "width", "text").toString(), QString("124,5"));
        QCOMPARE(value(model->form(), "width", "unit").toString(), QString("cm"));
        QCOMPARE(bench.notebook().walk()->decimalMark(), QString(","));
    }
    QLocale::setDefault(before);
}

void AppModelsTest::saysWhatIsWrongWithAForeignStore() {
    Bench bench;
    bench.openNewWindow();
    bench.settle();
    bench.end();
    QFile file(bench.folder() + "/truehang.sqlite");
    QVERIFY(file.open(QIODevice::WriteOnly));
    const QByteArray foreign(8192, 'x');
    file.write(foreign);
    file.close();
    QFile::remove(bench.folder() + "/truehang.sqlite-wal");
    bench.reopen();
    QVERIFY(!bench.notebook().fault().isEmpty());
    QVERIFY(bench.notebook().ready());
    QCOMPARE(bench.notebook().screen(), QString("visits"));
    bench.end();
    QVERIFY(file.open(QIODevice::ReadOnly));
    QCOMPARE(file.readAll(), foreign);  // nothing was overwritten
}

QTEST_GUILESS_MAIN(AppModelsTest)
#include "app_models_test.moc"
