// SPDX-License-Identifier: Apache-2.0
#include "../sync/document_workroom.h"
#include "document/document.h"
#include "fake_workroom.h"
#include "protocol/digest.h"
#include "protocol/questions.h"
#include "protocol/sheet_code.h"
#include "support.h"

#include <QDir>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>
#include <QTest>

using namespace truehang;
using namespace truehang::test;

namespace {

const QString visit = "01924f6a-7c00-7000-8000-000000000001";

/// Serves a workroom in memory on loopback.
void serve(sync::test::DocumentWorkroom& documents, QTcpSocket& socket, const Heard& heard) {
    if (heard.path == "/pair") {
        FakeWorkroom::answer(
            socket, 200,
            QByteArray::fromStdString(write_record(sync::PairAnswer{"secret-token", "Workroom at Ferrymouth"})));
        return;
    }
    sync::Request request;
    request.method = heard.method == "PUT" ? sync::Method::put : sync::Method::get;
    request.path = heard.path.toStdString();
    const auto answer = documents.receive(request, heard.body.toStdString());
    FakeWorkroom::answer(socket, answer.status, QByteArray::fromStdString(answer.content));
}

/// The same, and asks one thing about the visit; what was answered is in `answers`.
void serve_asking(sync::test::DocumentWorkroom& documents, QList<QByteArray>& answers, QTcpSocket& socket,
                  const Heard& heard) {
    const std::string id = visit.toStdString();
    if (heard.path.startsWith("/questions")) {
        const sync::Question asked{id,
                                   1,
                                   "parlour",
                                   "parlour-south",
                                   "opening.width.top",
                                   "Again, please?",
                                   1,
                                   "M. Holt",
                                   "2026-03-14T12:00:00Z"};
        sync::QuestionEntries entries{{}, "q1", false};
        if (!heard.path.contains("after=q1")) {
            entries.entries.push_back({asked, {}});
        }
        FakeWorkroom::answer(socket, 200, QByteArray::fromStdString(write_entries(entries)));
    } else if (heard.path.contains("/answers/")) {
        answers.append(heard.body);
        const std::string answer = heard.path.sliced(heard.path.lastIndexOf('/') + 1).toStdString();
        FakeWorkroom::answer(
            socket, 201,
            QByteArray::fromStdString(write_record(sync::AnswerReceipt{id, 1, answer, "2026-03-14T12:10:00Z"})));
    } else {
        serve(documents, socket, heard);
    }
}

void pair(Bench& bench, const FakeWorkroom& workroom) {
    bench.notebook().send()->pair(workroom.address(), "7K2M-QX4D");
    QTRY_VERIFY_WITH_TIMEOUT(bench.notebook().send()->paired(), patience);
}

/// As a file goes: the document, which both phones count among what they were made from.
void hand_over(Bench& to, const std::string& bytes) {
    bool kept = false;
    to.keeping().post(
        &to.notebook(),
        [bytes](Store& store) -> Result<Done> {
            const auto taken = store.keep(read_survey(bytes).value(), "Taken in");
            return taken ? store.add_parent(visit.toStdString(), bytes) : Result<Done>(taken.error());
        },
        [&kept](const Result<Done>& done) { kept = done.ok(); });
    QTRY_VERIFY_WITH_TIMEOUT(kept, patience);
}

std::string notes_of(Bench& bench) {
    const Window* window = bench.notebook().open()->window("parlour-south");
    return window != nullptr ? window->notes : std::string();
}

/// The same, of the visit as it lies in the store.
std::string kept_notes(Bench& bench) {
    std::string notes;
    bench.keeping().post(
        &bench.notebook(), [](Store& store) { return store.visit(visit.toStdString()); },
        [&notes](const Result<Survey>& kept) { notes = kept->rooms[0].windows[0].notes; });
    bench.settle();
    return notes;
}

void note(Bench& bench, const std::string& words) {
    QVERIFY(bench.notebook().open()->editWindow("Notes", "parlour-south", [words](Window& window) {
        window.notes = words;
        return true;
    }));
    bench.settle();
}

/// The text of the measure sheet, as the program writes it; spaces as one.
QString printed(Bench& bench) {
    SheetsModel* sheets = bench.notebook().sheets();
    sheets->setKind("measure");
    sheets->print();
    if (!QTest::qWaitFor([sheets] { return !sheets->working(); }, patience) || !sheets->written()) {
        return sheets->line();
    }
    QProcess reader;
    reader.start("pdftotext", {"-", "-"});
    reader.write(bench.files->held.last());
    reader.closeWriteChannel();
    return reader.waitForFinished() ? QString::fromUtf8(reader.readAllStandardOutput()).simplified() : QString();
}

bool all_there(Bench& bench) {
    bench.notebook().open()->askStanding();
    bench.settle();
    const VisitSummary& summary = bench.notebook().open()->summary();
    return summary.confirmed_revision > 0 && summary.confirmed_revision == summary.revision;
}

/// Both are paired, have the visit open, and the workroom has it as it stands.
void both_have_it(Bench& anna, Bench& ben, const FakeWorkroom& workroom, sync::test::DocumentWorkroom& documents) {
    open_example(anna);
    pair(anna, workroom);
    anna.notebook().send()->sendNow();
    QTRY_VERIFY_WITH_TIMEOUT(all_there(anna), patience);
    hand_over(ben, documents.newest(visit.toStdString()).bytes);
    ben.notebook().openVisit(visit);
    QTRY_COMPARE_WITH_TIMEOUT(ben.notebook().screen(), QString("visit"), patience);
    pair(ben, workroom);
    QTRY_VERIFY_WITH_TIMEOUT(all_there(ben), patience);
}

}  // namespace

/// Two programs with their stores, on the network, with one workroom.
class TogetherTest : public QObject {
    Q_OBJECT

private slots:
    static void whatOneSendsComesToTheOtherByItself() {
        sync::test::DocumentWorkroom documents;
        FakeWorkroom workroom([&](QTcpSocket& socket, const Heard& heard) { serve(documents, socket, heard); });
        Bench anna;
        Bench ben;
        both_have_it(anna, ben, workroom, documents);

        note(anna, "Damp at the sill.");
        anna.notebook().send()->sendNow();
        QTRY_VERIFY_WITH_TIMEOUT(all_there(anna), patience);
        // Ben looks at the visit meanwhile, and sends nothing.
        ben.notebook().send()->sendNow();
        QTRY_COMPARE_WITH_TIMEOUT(notes_of(ben), std::string("Damp at the sill."), patience);
        QTRY_VERIFY_WITH_TIMEOUT(!ben.notebook().twice()->cameLine().isEmpty(), patience);
        QTRY_VERIFY_WITH_TIMEOUT(all_there(ben), patience);
        const int puts = documents.puts;

        // The other way, while Anna has the visit closed.
        note(ben, "Dry, with a fan.");
        ben.notebook().send()->sendNow();
        QTRY_VERIFY_WITH_TIMEOUT(all_there(ben), patience);
        anna.notebook().open()->close();
        anna.notebook().send()->sendNow();
        QTRY_COMPARE_WITH_TIMEOUT(kept_notes(anna), std::string("Dry, with a fan."), patience);
        QCOMPARE(documents.puts, puts + 1);
    }

    static void whatIsTakenOutByHandIsNotToBeSettledAnyMore() {
        Bench bench;
        open_example(bench);
        OpenVisit* open = bench.notebook().open();
        QVERIFY(open->edit("Came in", [](Survey& survey) {
            survey.rooms[0].windows[0].readings[0].id = "width";
            survey.changed_twice = {ChangedTwice{"/windows/parlour-south/readings/width", {}, true, false, {}}};
            return true;
        }));
        QVERIFY(open->editWindow("Taken out", "parlour-south", [](Window& window) {
            window.readings.erase(window.readings.begin());
            return true;
        }));
        QVERIFY(open->survey().changed_twice.empty());
        std::size_t kept = 1;
        bench.keeping().post(
            &bench.notebook(), [](Store& store) { return store.visit(visit.toStdString()); },
            [&kept](const Result<Survey>& survey) { kept = survey->changed_twice.size(); });
        bench.settle();
        QCOMPARE(kept, 0U);
        open->undo();
        bench.settle();
        QCOMPARE(open->survey().changed_twice.size(), 1U);
        QCOMPARE(open->survey().rooms[0].windows[0].readings[0].id, std::string("width"));
    }

    static void aQuestionComesByItselfAndItsAnswerGoes() {
        sync::test::DocumentWorkroom documents;
        QList<QByteArray> answers;
        FakeWorkroom workroom(
            [&](QTcpSocket& socket, const Heard& heard) { serve_asking(documents, answers, socket, heard); });
        Bench anna;
        open_example(anna);
        QuestionsModel* questions = anna.notebook().questions();
        pair(anna, workroom);
        QTRY_COMPARE_WITH_TIMEOUT(questions->count(), 1, patience);
        QCOMPARE(questions->rows()->value(0, "words").toString(), QString("Again, please?"));
        QTRY_COMPARE_WITH_TIMEOUT(anna.notebook().open()->summary().questions, 1, patience);

        questions->answer("1", true);
        QTRY_COMPARE_WITH_TIMEOUT(answers.size(), 1, patience);
        const auto answer = sync::read_answer(answers.front().toStdString());
        QVERIFY(answer.ok());
        QCOMPARE(answer->reading->value_mm, std::optional(1242.0));  // as the example's top width reads
        QTRY_VERIFY_WITH_TIMEOUT(all_there(anna), patience);
        QTRY_COMPARE_WITH_TIMEOUT(anna.notebook().open()->summary().questions, 0, patience);
        anna.notebook().send()->sendNow();
        anna.settle();
        QCOMPARE(answers.size(), 1);
        QCOMPARE(questions->count(), 0);
    }

    static void aVisitFromAFileBringsWhatWasAskedBefore() {
        sync::test::DocumentWorkroom documents;
        QList<QByteArray> answers;
        FakeWorkroom workroom(
            [&](QTcpSocket& socket, const Heard& heard) { serve_asking(documents, answers, socket, heard); });
        const QTemporaryDir folder;
        Bench anna;
        anna.files->folder = QUrl::fromLocalFile(folder.path());
        open_example(anna);
        anna.notebook().visitFile()->write();
        QTRY_VERIFY_WITH_TIMEOUT(anna.notebook().visitFile()->written(), patience);
        Bench ben;
        pair(ben, workroom);
        const auto is_asked = [](const Heard& heard) { return heard.path.startsWith("/questions"); };
        QTRY_VERIFY_WITH_TIMEOUT(std::ranges::any_of(workroom.heard(), is_asked), patience);
        ben.settle();

        ben.notebook().visitFile()->takeIn(
            QUrl::fromLocalFile(folder.filePath(QDir(folder.path()).entryList(QDir::Files).value(0))));
        QVERIFY(QTest::qWaitFor([&ben] { return !ben.notebook().visitFile()->working(); }, patience));
        QVERIFY2(ben.notebook().visitFile()->takenIn() == visit, qPrintable(ben.notebook().visitFile()->line()));
        ben.notebook().openVisit(visit);
        QTRY_COMPARE_WITH_TIMEOUT(ben.notebook().screen(), QString("visit"), patience);
        QTRY_COMPARE_WITH_TIMEOUT(ben.notebook().questions()->count(), 1, patience);
    }

    // The code as the protocol's page takes it from the digest of the bytes that were sent.
    static void aPrintedSheetTellsWhetherItIsCurrent() {
        sync::test::DocumentWorkroom documents;
        bool closed = false;
        FakeWorkroom workroom([&](QTcpSocket& socket, const Heard& heard) {
            closed ? FakeWorkroom::answer(socket, 503, {}) : serve(documents, socket, heard);
        });
        Bench anna;
        open_example(anna);
        QVERIFY2(!printed(anna).contains("revision 1,"), "nobody is there who could tell");
        pair(anna, workroom);
        anna.notebook().send()->sendNow();
        QTRY_VERIFY_WITH_TIMEOUT(all_there(anna), patience);
        const auto sent = documents.newest(visit.toStdString());
        const auto code = QString::fromStdString(sync::sheet_code(sync::hex(sync::sha256(sent.bytes))));
        QString sheet = printed(anna);
        QVERIFY2(sheet.contains("Sheet " + code), qPrintable(sheet));
        static const QRegularExpression between("[ \u200b\u2060]");
        QVERIFY2(sheet.remove(between).contains(workroom.address() + "/sheet/" + code), qPrintable(sheet));

        closed = true;
        note(anna, "Damp at the sill.");
        const QString later = printed(anna);
        QVERIFY2(later.contains("not in the workroom yet as it stands here"), qPrintable(later));
        QVERIFY2(!later.contains(code), "it isn't of what was sent before");
    }

    static void whatBothChangedIsSettledOnceForBoth() {
        sync::test::DocumentWorkroom documents;
        FakeWorkroom workroom([&](QTcpSocket& socket, const Heard& heard) { serve(documents, socket, heard); });
        Bench anna;
        Bench ben;
        both_have_it(anna, ben, workroom, documents);

        note(anna, "Damp at the sill.");
        note(ben, "Dry, with a fan.");
        anna.notebook().send()->sendNow();
        QTRY_VERIFY_WITH_TIMEOUT(all_there(anna), patience);
        ben.notebook().send()->sendNow();
        QTRY_COMPARE_WITH_TIMEOUT(ben.notebook().twice()->count(), 1, patience);
        QTRY_VERIFY_WITH_TIMEOUT(all_there(ben), patience);
        ben.notebook().setScreen("twice");
        const ShownRows* rows = ben.notebook().twice()->rows();
        QTRY_VERIFY_WITH_TIMEOUT(column(rows, "says").contains("Damp at the sill."), patience);
        const auto row = column(rows, "says").indexOf("Damp at the sill.");
        QVERIFY2(column(rows, "who").value(row).startsWith("from The other phone"),
                 qPrintable(column(rows, "who").value(row)));
        ben.notebook().twice()->choose(rows->value(static_cast<int>(row), "row").toString());
        ben.settle();
        QCOMPARE(ben.notebook().twice()->count(), 0);
        ben.notebook().send()->sendNow();
        QTRY_VERIFY_WITH_TIMEOUT(all_there(ben), patience);
        anna.notebook().send()->sendNow();
        QTRY_VERIFY_WITH_TIMEOUT(anna.notebook().twice()->count() == 0 && all_there(anna), patience);
        QCOMPARE(notes_of(anna), std::string("Damp at the sill."));
    }
};

QTEST_MAIN(TogetherTest)
#include "app_together_test.moc"
