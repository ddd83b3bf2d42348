// SPDX-License-Identifier: Apache-2.0
#include "document/document.h"
#include "scene.h"

#include <QTest>

using namespace truehang;
using namespace truehang::test;

namespace {

Reading taken_again(const char* id, double mm, const char* at) {
    Reading reading;
    reading.id = id;
    reading.station = "opening.width.top";
    reading.value = Length::mm(mm);
    reading.typed = std::to_string(static_cast<int>(mm));
    reading.taken_at = at;
    return reading;
}

Window& parlour(Survey& survey) {
    for (Room& room : survey.rooms) {
        for (Window& window : room.windows) {
            if (window.id == "parlour-south") {
                return window;
            }
        }
    }
    throw std::runtime_error("no such window");
}

/// One measures the width, notes and names it; the other too, otherwise.
void change(Survey& survey, const char* id, double mm, const char* at, const char* notes, const char* title) {
    Window& window = parlour(survey);
    Reading reading = taken_again(id, mm, at);
    for (const Reading& before : window.readings) {
        reading.replaces = before.station == reading.station ? before.id : reading.replaces;
    }
    window.readings.push_back(reading);
    window.notes = notes;
    survey.title = title;
}

/// The contract's example, worked on by two: what the other sent has come and is put together.
void openTwice(Scene& scene) {
    open_example(scene.bench());
    OpenVisit* open = scene.notebook().open();
    const Survey base = open->survey();
    Survey theirs = base;
    change(theirs, "theirs", 1238, "2026-03-14T11:10:00Z", "Plaster is dry.", "Loft of the Oduyas, the whole house");
    theirs.revision = base.revision.value_or(1) + 1;
    QVERIFY(open->edit("here", [](Survey& survey) {
        change(survey, "ours", 1246, "2026-03-14T11:02:00Z", "Damp at the sill: look again in May.",
               "Oduya, upper floor and stairs");
        return true;
    }));
    MetRevision met;
    met.revision = *theirs.revision;
    met.bytes = write_survey(theirs, false);
    met.sent_by = "Ben’s phone";
    met.received_at = "2026-03-14T11:20:00Z";
    bool came = false;
    open->bringTogether("Put together with what Ben’s phone sent", base, met, [&came](const QString& fault, bool) {
        QCOMPARE(fault, QString());
        came = true;
    });
    QTRY_VERIFY_WITH_TIMEOUT(came, patience);
    scene.notebook().twice()->lookAt({});
    scene.settle();
}

/// What the row with these words is called.
QString called(Scene& scene, const QString& says) {
    const ShownRows* rows = scene.notebook().twice()->rows();
    for (int row = 0; row < rows->count(); ++row) {
        if (rows->value(row, "says").toString() == says) {
            return rows->value(row, "spoken").toString();
        }
    }
    return {};
}

const Reading* counting(const Notebook& notebook) {
    Notebook& there = const_cast<Notebook&>(notebook);
    const auto& readings = there.open()->window("parlour-south")->readings;
    for (const Reading& reading : readings) {
        const bool replaced = std::ranges::any_of(readings, [&](const Reading& r) { return r.replaces == reading.id; });
        if (reading.station == "opening.width.top" && !replaced) {
            return &reading;
        }
    }
    return nullptr;
}

}  // namespace

/// What two people took or changed differently, settled by touches. What is expected follows from the survey document:
/// the reading that none replaces counts.
class TwiceTest : public QObject {
    Q_OBJECT

private slots:
    static void isSettledByATap_data() { Scene::sizesAndLooks(); }
    static void isSettledByATap() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openTwice(scene);
        TakenTwiceModel* twice = scene.notebook().twice();
        scene.notebook().setScreen("visit");
        scene.settle();
        QCOMPARE(twice->count(), 3);
        scene.grabDressed("visit-twice");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY2(scene.reach("Taken twice: " + twice->line()), qPrintable(scene.names().join(" | ")));
        QCOMPARE(scene.notebook().screen(), QString("twice"));
        scene.grabDressed("twice");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());

        QVERIFY(called(scene, "1238 mm").contains("from Ben’s phone"));
        QVERIFY(called(scene, "1246 mm").contains("from this phone"));
        QVERIFY2(scene.reach(called(scene, "1246 mm")), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QCOMPARE(twice->count(), 2);
        QCOMPARE(counting(scene.notebook())->id, std::string("ours"));

        QVERIFY2(scene.reach(called(scene, "Plaster is dry.")), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QCOMPARE(scene.notebook().open()->window("parlour-south")->notes, std::string("Plaster is dry."));
        QVERIFY(scene.reach(called(scene, "Oduya, upper floor and stairs")));
        scene.settle();
        QCOMPARE(twice->count(), 0);
        scene.grabDressed("twice-settled");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY(scene.touch("Done"));
        QCOMPARE(scene.notebook().screen(), QString("visit"));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void undoPutsBothBack() {
        Scene scene;
        openTwice(scene);
        scene.notebook().setScreen("twice");
        scene.settle();
        QVERIFY(scene.reach(called(scene, "1238 mm")));
        scene.settle();
        QCOMPARE(scene.notebook().twice()->count(), 2);
        QCOMPARE(counting(scene.notebook())->id, std::string("theirs"));
        QVERIFY2(scene.reach("Undo: Counts: 1238 mm"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QCOMPARE(scene.notebook().twice()->count(), 3);
        QVERIFY(!called(scene, "1246 mm").isEmpty());
    }

    static void theTapeSettlesItToo() {
        Scene scene;
        openTwice(scene);
        const auto before = scene.notebook().open()->window("parlour-south")->readings.size();
        scene.notebook().setScreen("twice");
        scene.settle();
        QVERIFY2(scene.reach(called(scene, "measure it again")), qPrintable(scene.names().join(" | ")));
        QCOMPARE(scene.notebook().screen(), QString("walk"));
        QCOMPARE(scene.notebook().walk()->station(), QString("opening.width.top"));
        for (const char* key : {"1", "2", "4", "1"}) {
            QVERIFY(scene.touch(key));
        }
        QVERIFY(scene.touch("Next"));
        scene.settle();
        QCOMPARE(scene.notebook().twice()->count(), 2);
        QVERIFY2(counting(scene.notebook()) != nullptr, "none counts");
        QCOMPARE(counting(scene.notebook())->value->mm(), 1241.0);
        QCOMPARE(scene.notebook().open()->window("parlour-south")->readings.size(), before + 1);
    }

    static void aFlagInAWindowLeadsThereAndBack() {
        Scene scene;
        openTwice(scene);
        scene.notebook().setScreen("figures");
        scene.settle();
        scene.grabDressed("figures-twice");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY2(scene.reach("Settle what was taken twice"), qPrintable(scene.names().join(" | ")));
        QCOMPARE(scene.notebook().screen(), QString("twice"));
        QCOMPARE(scene.notebook().twice()->rows()->value(0, "kind").toString(), QString("place"));
        scene.key(Qt::Key_Escape);
        QCOMPARE(scene.notebook().screen(), QString("figures"));
        scene.notebook().setScreen("leaving");
        scene.settle();
        const ShownRows* items = scene.notebook().leaving()->items();
        QString flag;
        for (int row = 0; row < items->count(); ++row) {
            if (items->value(row, "says").toString().contains("changed the notes")) {
                flag = items->value(row, "spoken").toString();
            }
        }
        QVERIFY2(scene.reach(flag), qPrintable(scene.names().join(" | ")));
        QCOMPARE(scene.notebook().screen(), QString("twice"));
        QVERIFY(scene.reach(called(scene, "measure it again")));
        scene.key(Qt::Key_Escape);
        QCOMPARE(scene.notebook().screen(), QString("twice"));
        scene.key(Qt::Key_Escape);
        QCOMPARE(scene.notebook().screen(), QString("leaving"));
    }
};

QTEST_MAIN(TwiceTest)
#include "twice_test.moc"
