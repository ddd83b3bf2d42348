// SPDX-License-Identifier: Apache-2.0
#include "support.h"

#include "thread_mark.h"

#include <QTest>

using namespace truehang;
using namespace truehang::test;
using Stitch = thread_mark::Mark;

// What hangs round corners, under arches and over crooked floors, and a pole that is up: chosen, worked, undone.

class AppHangingTest : public QObject {
    Q_OBJECT

private slots:
    void aRunBentRoundTheCorners();
    void aTopShapedToTheArch();
    void aHemThatFollowsTheFloor();
    void aPoleThatIsUpIsAskedForAgain();
    void aPoleThatIsUpIsHeldAgainstThePlan();
    void aPoleThatIsUpOfOneLayer();
};

namespace {

/// A window of this shape with these readings, typed at their stations, and pencil pleats of a cloth 1400 wide there.
void hang_at(Bench& bench, const QString& shape, const QList<std::pair<QString, QString>>& readings) {
    bench.openNewWindow(shape);
    const QString cloth = bench.notebook().fabrics()->add("face");
    bench.notebook().fabrics()->form()->leave("width", "1400");
    WalkModel* walk = bench.notebook().walk();
    for (const auto& [station, typed] : readings) {
        walk->jumpTo(station);
        bench.type(typed);
        QVERIFY2(walk->next(), qPrintable(station));
    }
    HangingModel* hanging = bench.notebook().hanging();
    hanging->addLayer();
    hanging->treatment()->choose("heading", "pencil-pleat");
    hanging->treatment()->leave("fullness", "2");
    hanging->treatment()->choose("fabric", cloth);
    hanging->hardware()->choose("kind", "track");
    hanging->hardware()->leave("projection", "80");
    bench.settle();
}

QString figure_of(Bench& bench, const char* path, const char* role = "figure") {
    return value(bench.notebook().figures()->figures(), path, role).toString();
}

bool has(const FieldForm* form, const char* field) { return form->indexOf(QString(field)) >= 0; }

const QList<std::pair<QString, QString>> plain{
    {"opening.width.top", "1200"}, {"below.left", "900"}, {"opening.height.left", "1200"}};

/// A track on `plain`, planned 150 above the head and then said to be up; the walk stands at its height.
void put_up(Bench& bench) {
    hang_at(bench, "recess", plain);
    FieldForm* hardware = bench.notebook().hanging()->hardware();
    WalkModel* walk = bench.notebook().walk();
    hardware->leave("length", "1600");
    bench.settle();
    QVERIFY(!has(hardware, "stage"));  // nothing was planned that could be up
    walk->jumpTo("pole.above");
    bench.type("150");
    walk->next();
    bench.settle();
    walk->jumpTo("pole.above");
    QCOMPARE(walk->typed(), QString("150"));
    hardware->choose("stage", "fixed");
    bench.settle();
}

}  // namespace

// Half an octagon of 600, 80 off the wall (derived): a corner that turns by 45 takes 80 tan 22.5 = 33.137 of each of
// its facets. Bends at 566.863 and 1100.589, in all 1667.452.
void AppHangingTest::aRunBentRoundTheCorners() {
    Bench bench;
    hang_at(bench, "bay",
            {{"facet.1.width", "600"},
             {"facet.2.width", "600"},
             {"facet.3.width", "600"},
             {"bay.chord", "1448.5"},
             {"corner.1.angle_deg", "135"},
             {"corner.2.angle_deg", "135"},
             {"facet.1.height", "1200"},
             {"below.left", "900"},
             {"pole.above", "150"}});
    HangingModel* hanging = bench.notebook().hanging();
    const auto held = [&] { return *bench.notebook().open()->window()->layers[0].hardware; };
    QVERIFY(has(hanging->hardware(), "length") && !has(hanging->treatment(), "top"));
    hanging->hardware()->choose("run", "bent");
    bench.settle();
    QVERIFY(held().run->is(Run::bent));
    QVERIFY(!has(hanging->hardware(), "length") && !has(hanging->hardware(), "left"));  // measured, not chosen
    QCOMPARE(figure_of(bench, "run.length_mm"), QString("1667"));
    QVERIFY(figure_of(bench, "run.length_mm", "plusMinus").startsWith(QStringLiteral("± ")));
    QCOMPARE(figure_of(bench, "run.bends.1.at_mm"), QString("567"));
    QCOMPARE(figure_of(bench, "run.bends.2.at_mm"), QString("1101"));
    QVERIFY(figure_of(bench, "run.bends.1.at_mm", "label").contains("135"));
    QVERIFY(hanging->summary().contains("bent round the corners"));
    hanging->hardware()->choose("kind", "pole");
    hanging->hardware()->leave("diameter", "28");
    bench.settle();
    QVERIFY(figure_of(bench, "run.bends.1.at_mm", "label").startsWith("Elbow joint 1"));
    for (int edit = 0; edit < 3; ++edit) {
        bench.notebook().walk()->undo();
        bench.settle();
    }
    QVERIFY(!held().run && has(hanging->hardware(), "length"));
    QCOMPARE(figure_of(bench, "run.length_mm"), QString());
    hanging->treatment()->choose("heading", "roman");
    bench.settle();
    QVERIFY(!has(hanging->hardware(), "run"));  // no blind follows corners
}

// A semicircle of radius 500 on springings 2100 above the floor, hem 10 above it: 2090 at the edge, 2590 in the middle.
void AppHangingTest::aTopShapedToTheArch() {
    Bench bench;
    hang_at(bench, "arch",
            {{"opening.width.top", "1000"},
             {"below.left", "900"},
             {"opening.height.left", "1200"},
             {"below.centre", "900"},
             {"opening.height.centre", "1700"},
             {"arch.rise", "500"},
             {"below.right", "900"},
             {"opening.height.right", "1200"},
             {"ordinate.1.along", "200"},
             {"ordinate.1.height", "400"}});
    HangingModel* hanging = bench.notebook().hanging();
    QVERIFY(has(hanging->hardware(), "hang") && !has(hanging->hardware(), "run"));
    hanging->treatment()->choose("top", "shaped");
    bench.settle();
    QVERIFY(bench.notebook().open()->window()->layers[0].treatment->top->is(TopEdge::shaped));
    QVERIFY(!has(hanging->hardware(), "hang") && !has(hanging->hardware(), "length"));
    QVERIFY(has(hanging->hardware(), "projection") && has(hanging->hardware(), "mass"));
    QVERIFY(hanging->summary().contains("shaped top"));
    QCOMPARE(figure_of(bench, "top.left.from"), QString("2090"));
    QCOMPARE(figure_of(bench, "top.left.to"), QString("2590"));
    QCOMPARE(figure_of(bench, "top.right.to"), QString("2090"));
    bench.notebook().walk()->undo();
    bench.settle();
    QVERIFY(!bench.notebook().open()->window()->layers[0].treatment->top);
    QVERIFY(has(hanging->hardware(), "hang"));
}

// A floor that falls by 24 under a level track: 2250 + 20 - 10 = 2260 on the left, 2272 and 2284 (trade rules, 4).
void AppHangingTest::aHemThatFollowsTheFloor() {
    Bench bench;
    hang_at(bench, "recess", plain + QList<std::pair<QString, QString>>{{"pole.above", "150"}});
    FieldForm* treatment = bench.notebook().hanging()->treatment();
    bench.notebook().hanging()->hardware()->leave("length", "1600");
    QVERIFY(!has(treatment, "drops") && !has(treatment, "top"));
    const QList<std::pair<QString, QString>> others{
        {"level.left", "1000"},   {"below.centre", "912"}, {"opening.height.centre", "1200"},
        {"level.centre", "1012"}, {"below.right", "924"},  {"opening.height.right", "1200"},
        {"level.right", "1024"}};
    for (const auto& [station, typed] : others) {
        bench.notebook().walk()->jumpTo(station);
        bench.type(typed);
        QVERIFY(bench.notebook().walk()->next());
    }
    bench.settle();
    QVERIFY(has(treatment, "drops"));
    treatment->choose("drops", "per-line");
    bench.settle();
    QVERIFY(bench.notebook().open()->window()->layers[0].treatment->drops->is(DropsAt::per_line));
    QCOMPARE(figure_of(bench, "finished.drops_mm.left"), QString("2260"));
    QCOMPARE(figure_of(bench, "finished.drops_mm.centre"), QString("2272"));
    QCOMPARE(figure_of(bench, "finished.drops_mm.right"), QString("2284"));
    bench.notebook().walk()->undo();
    bench.settle();
    QVERIFY(!bench.notebook().open()->window()->layers[0].treatment->drops);
    QCOMPARE(figure_of(bench, "finished.drops_mm.left"), QString());
}

void AppHangingTest::aPoleThatIsUpIsAskedForAgain() {
    Bench bench;
    put_up(bench);
    WalkModel* walk = bench.notebook().walk();
    QVERIFY(bench.notebook().open()->window()->layers[0].hardware->stage->is(Stage::fixed));
    QCOMPARE(walk->station(), QString("pole.above"));
    QCOMPARE(walk->typed(), QString());  // what was planned isn't taken for what is there
    QVERIFY2(walk->line().contains("150"), qPrintable(walk->line()));
    QVERIFY(value(walk->stations(), "pole.above", "mark").value<Stitch>() != Stitch::Kept);
    QVERIFY(value(walk->stations(), "pole.above", "figure").toString().contains("planned"));
    QCOMPARE(bench.notebook().figures()->nextStation(), QString("pole.above"));
    walk->undo();
    bench.settle();
    QVERIFY(!bench.notebook().open()->window()->layers[0].hardware->stage);
    QCOMPARE(walk->typed(), QString("150"));
    QCOMPARE(value(walk->stations(), "pole.above", "mark").value<Stitch>(), Stitch::Kept);
}

// Planned 150 above the head: 2250 + 20 - 10 = 2260, cut 2485. Up, it hangs 22 higher: the hem of 150 keeps 128; 120
// higher it would keep 30, which is no hem, and the cut lacks 120 (derived).
void AppHangingTest::aPoleThatIsUpIsHeldAgainstThePlan() {
    Bench bench;
    put_up(bench);
    WalkModel* walk = bench.notebook().walk();
    bench.type("172");
    QVERIFY(walk->next());
    bench.settle();
    const auto readings = [&] { return bench.notebook().open()->window()->readings; };
    QCOMPARE(readings().size(), std::size_t{5});  // the planned one stays to be held against
    QVERIFY(readings()[4].stage->is(Stage::fixed) && readings()[4].replaces.empty());
    QCOMPARE(value(walk->stations(), "pole.above", "mark").value<Stitch>(), Stitch::Kept);
    QCOMPARE(figure_of(bench, "finished.drop_mm"), QString("2282"));
    QCOMPARE(figure_of(bench, "finished.planned.drop_mm"), QString("2260"));
    QCOMPARE(figure_of(bench, "finished.planned.longer_mm"), QString("22"));
    QCOMPARE(figure_of(bench, "finished.planned.cut_drop_mm"), QString("2485"));
    QCOMPARE(figure_of(bench, "finished.planned.hem_left_mm"), QString("128"));
    walk->jumpTo("pole.above");
    walk->clearField();
    bench.type("270");
    QVERIFY(walk->next());
    bench.settle();
    QCOMPARE(readings()[5].replaces, readings()[4].id);  // measured again as it hangs
    QVERIFY(readings()[5].stage->is(Stage::fixed));
    QCOMPARE(figure_of(bench, "finished.planned.short_by_mm"), QString("120"));
    QCOMPARE(figure_of(bench, "finished.planned.hem_left_mm"), QString());
    walk->undo();
    bench.settle();
    walk->undo();
    bench.settle();
    QCOMPARE(readings().size(), std::size_t{4});
    QCOMPARE(figure_of(bench, "finished.planned.drop_mm"), QString());
}

void AppHangingTest::aPoleThatIsUpOfOneLayer() {
    Bench bench;
    hang_at(bench, "recess", plain + QList<std::pair<QString, QString>>{{"pole.above", "150"}});
    HangingModel* hanging = bench.notebook().hanging();
    hanging->addLayer();
    bench.settle();
    QCOMPARE(hanging->current(), 1);
    hanging->hardware()->choose("stage", "fixed");
    hanging->editLayer(0);
    hanging->treatment()->choose("heading", "roman");
    bench.settle();
    QVERIFY(!has(hanging->hardware(), "stage"));  // a blind inside the recess hangs from no pole
    const auto& layers = bench.notebook().open()->window()->layers;
    QVERIFY(!layers[0].hardware->stage && layers[1].hardware->stage->is(Stage::fixed));
    QVERIFY(value(bench.notebook().walk()->stations(), "pole.above", "figure").toString().contains("planned"));
    hanging->removeLayer(1);
    bench.settle();
    QVERIFY(!value(bench.notebook().walk()->stations(), "pole.above", "figure").toString().contains("planned"));
}

QTEST_GUILESS_MAIN(AppHangingTest)
#include "app_hanging_test.moc"
