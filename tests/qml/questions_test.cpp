// SPDX-License-Identifier: Apache-2.0
#include "protocol/questions.h"
#include "scene.h"

#include <QTest>

using namespace truehang;
using namespace truehang::test;

namespace {

/// The contract's example, about which the workroom asks two things: a reading, and the window.
void openAsked(Scene& scene) {
    open_example(scene.bench());
    OpenVisit* open = scene.notebook().open();
    const std::string visit = open->survey().id;
    const std::vector<VisitQuestion> asked{
        {visit, 1, "parlour", "parlour-south", "opening.width.top", "Reads 40 more than the sill. Again, please?",
         "M. Holt", "2026-03-14T12:00:00Z"},
        {visit, 2, "parlour", "parlour-south", "", "Is the plaster sound above the head, all the way to the cornice?",
         "M. Holt", "2026-03-14T12:05:00Z"}};
    bool noted = false;
    open->keeping().post(
        open, [asked](Store& store) { return store.note_questions(asked, {}, "", "q1"); },
        [&noted](const Result<Done>& done) { noted = done.ok(); });
    QTRY_VERIFY_WITH_TIMEOUT(noted, patience);
    scene.notebook().questions()->read();
    scene.settle();
}

std::vector<VisitQuestion> kept(Scene& scene) {
    std::vector<VisitQuestion> questions;
    bool read = false;
    OpenVisit* open = scene.notebook().open();
    open->keeping().post(
        open, [visit = open->survey().id](Store& store) { return store.questions(visit); },
        [&](const Result<std::vector<VisitQuestion>>& found) {
            questions = found.value();
            read = true;
        });
    if (!QTest::qWaitFor([&read] { return read; }, patience)) {
        qWarning("the store doesn't answer");
    }
    return questions;
}

/// Whether the visit has stood with that reading in the store since this revision, or an earlier one.
bool carries(Scene& scene, long long revision, double mm) {
    bool read = false;
    bool there = false;
    OpenVisit* open = scene.notebook().open();
    open->keeping().post(
        open, [visit = open->survey().id](Store& store) { return store.visit(visit); },
        [&](const Result<Survey>& survey) {
            const auto& readings = survey->rooms.at(0).windows.at(0).readings;
            there = survey->revision == revision && std::ranges::any_of(readings, [mm](const Reading& one) {
                        return one.value && one.value->mm() == mm;
                    });
            read = true;
        });
    return QTest::qWaitFor([&read] { return read; }, patience) && there;
}

}  // namespace

/// What the workroom asks, answered by touches; what is expected follows from sync/protocol/README.md, “Being asked”.
class QuestionsTest : public QObject {
    Q_OBJECT

private:
    static void answerByTheTape(Scene& scene) {
        for (const char* key : {"1", "2", "4", "1"}) {
            QVERIFY(scene.touch(key));
        }
        QVERIFY(scene.touch("Next"));
        scene.settle();
        scene.key(Qt::Key_Escape);
        QCOMPARE(scene.notebook().screen(), QString("questions"));
        QVERIFY2(scene.reach("answer with 1241 mm"), qPrintable(scene.names().join(" | ")));
        scene.settle();
        QTRY_COMPARE_WITH_TIMEOUT(scene.notebook().questions()->count(), 1, patience);
        const auto record = sync::read_answer(kept(scene).at(0).answers.at(0).record);
        QVERIFY(record.ok());
        QCOMPARE(record->reading->station, std::string("opening.width.top"));
        QCOMPARE(record->reading->value_mm, std::optional(1241.0));
        QCOMPARE(record->reading->typed, std::string("1241 mm"));
        QVERIFY2(carries(scene, record->revision, 1241.0), "the revision that is named lacks the reading");
        QCOMPARE(kept(scene).at(0).answers.size(), std::size_t{1});
    }

    static void answerInWords(Scene& scene) {
        const QuestionsModel* questions = scene.notebook().questions();
        scene.grabDressed("questions-half");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY2(scene.reach("answer with these words"), qPrintable(scene.names().join(" | ")));
        QCOMPARE(questions->count(), 1);
        QVERIFY(!questions->fault().isEmpty());
        QVERIFY(scene.reach("Answer in words"));
        scene.typeOnKeyboard("Sound, but dusty.");
        QVERIFY(scene.reach("answer with these words"));
        scene.settle();
        QTRY_COMPARE_WITH_TIMEOUT(questions->count(), 0, patience);
        QCOMPARE(kept(scene).at(1).answers.at(0).words, std::string("Sound, but dusty."));
        scene.grabDressed("questions-answered");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
    }

private slots:
    static void areAnsweredByTheTapeAndInWords_data() { Scene::sizesAndLooks(); }
    static void areAnsweredByTheTapeAndInWords() {
        QFETCH(QSize, size);
        QFETCH(QByteArray, look);
        QFETCH(double, scale);
        Scene scene(size);
        scene.dress(look, scale);
        openAsked(scene);
        QuestionsModel* questions = scene.notebook().questions();
        scene.notebook().setScreen("visit");
        scene.settle();
        QCOMPARE(questions->count(), 2);
        scene.grabDressed("visit-asked");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        QVERIFY2(scene.reach("Asked by the workroom: " + questions->line()), qPrintable(scene.names().join(" | ")));
        QCOMPARE(scene.notebook().screen(), QString("questions"));
        scene.grabDressed("questions");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());

        const QString place = questions->rows()->value(0, "place").toString();
        QVERIFY2(scene.reach("Measure it again: " + place), qPrintable(scene.names().join(" | ")));
        QCOMPARE(scene.notebook().screen(), QString("walk"));
        QCOMPARE(scene.notebook().walk()->station(), QString("opening.width.top"));
        scene.grabDressed("walk-asked");
        QCOMPARE(scene.faultsOfLayout().join("\n"), QString());
        answerByTheTape(scene);
        answerInWords(scene);
        QVERIFY2(scene.reach("Done"), qPrintable(scene.names().join(" | ")));
        QCOMPARE(scene.notebook().screen(), QString("visit"));
        QCOMPARE(Scene::warnings(), QStringList());
    }

    static void anotherIsChosenByATap() {
        Scene scene;
        openAsked(scene);
        scene.notebook().setScreen("questions");
        scene.settle();
        const QString other = "Answer: " + scene.notebook().questions()->rows()->value(1, "spoken").toString();
        QVERIFY2(scene.reach(other), qPrintable(scene.names().join(" | ")));
        QVERIFY(scene.reach("Answer in words"));
        scene.typeOnKeyboard("It is.");
        QVERIFY(scene.reach("answer with these words"));
        scene.settle();
        QTRY_COMPARE_WITH_TIMEOUT(scene.notebook().questions()->count(), 1, patience);
        QCOMPARE(kept(scene).at(1).answers.size(), std::size_t{1});
        QVERIFY(kept(scene).at(0).answers.empty());
    }

    static void aSecondTapIsNoSecondAnswer() {
        Scene scene;
        openAsked(scene);
        QuestionsModel* questions = scene.notebook().questions();
        questions->answer("1", true);
        questions->answer("1", true);
        QTRY_COMPARE_WITH_TIMEOUT(questions->count(), 1, patience);
        questions->answer("1", true);
        scene.settle();
        QCOMPARE(kept(scene).at(0).answers.size(), std::size_t{1});
    }

    static void theListOfVisitsSaysIt() {
        Scene scene;
        openAsked(scene);
        scene.notebook().open()->askStanding();
        scene.notebook().setScreen("visits");
        scene.settle();
        ShownRows* visits = scene.notebook().visits();
        const int row = visits->indexOf(scene.notebook().open()->visitId());
        QVERIFY(row >= 0);
        QTRY_VERIFY_WITH_TIMEOUT(visits->value(row, "asks").toBool(), patience);
        QCOMPARE(visits->value(row, "state").toString(), QString("the workroom asks 2 things"));
    }

    static void aWindowLeadsThereAndBack() {
        Scene scene;
        openAsked(scene);
        scene.notebook().openWindow("parlour-south");
        scene.settle();
        QVERIFY(scene.reach("All stations of this window"));
        scene.settle();
        QVERIFY2(scene.reach("What the workroom asks about this window"), qPrintable(scene.names().join(" | ")));
        QCOMPARE(scene.notebook().screen(), QString("questions"));
        scene.key(Qt::Key_Escape);
        QCOMPARE(scene.notebook().screen(), QString("walk"));
    }
};

QTEST_MAIN(QuestionsTest)
#include "questions_test.moc"
