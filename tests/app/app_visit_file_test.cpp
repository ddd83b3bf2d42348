// SPDX-License-Identifier: Apache-2.0
#include "demo.h"
#include "document/document.h"
#include "support.h"

#include <QDir>
#include <QFile>
#include <QTest>

using namespace truehang;
using namespace truehang::test;
using namespace std::chrono_literals;

namespace {

/// A bench that writes into a real folder, with the demo surveys in it or with nothing.
class FileBench : public Bench {
public:
    explicit FileBench(bool with_demo) {
        QDir(folder()).mkdir("documents");
        files->folder = QUrl::fromLocalFile(folder() + "/documents");
        if (with_demo) {
            import_demo(keeping(), TRUEHANG_SOURCE_DIR "/demo-surveys");
            settle();
            notebook().tryAgain();
            settle();
        }
    }

    VisitFileModel& model() { return *notebook().visitFile(); }
    void finish() {
        QVERIFY(QTest::qWaitFor([this] { return !model().working(); }, patience));
        settle();
    }
    QString idOf(const QString& title) {
        const ShownRows& visits = *notebook().visits();
        for (int row = 0; row < visits.count(); ++row) {
            if (visits.value(row, "title").toString().startsWith(title)) {
                return visits.value(row, "visitId").toString();
            }
        }
        return {};
    }
    void open(const QString& title) {
        notebook().openVisit(idOf(title));
        settle();
    }
    QStringList written() { return QDir(folder() + "/documents").entryList(QDir::Files | QDir::Hidden, QDir::Name); }
    QUrl url(const QString& name) { return QUrl::fromLocalFile(folder() + "/documents/" + name); }
    /// Asks the store something and waits for it.
    template <class Work>
    auto ask(Work work) {
        std::optional<std::invoke_result_t<Work, Store&>> answer;
        keeping().post(&notebook(), work, [&answer](auto given) { answer = std::move(given); });
        [&] { QVERIFY(QTest::qWaitFor([&answer] { return answer.has_value(); }, patience)); }();
        return std::move(*answer);
    }
    std::size_t visits() {
        return ask([](Store& store) { return store.visits(); }).value().size();
    }
};

/// Without its revision, which the store counts for itself.
std::string document(FileBench& bench, const QString& id) {
    auto survey = bench.ask([id = id.toStdString()](Store& store) { return store.visit(id); }).value();
    survey.revision.reset();
    return write_survey(survey);
}

}  // namespace

/// A visit written as a file and taken in again.
class AppVisitFileTest : public QObject {
    Q_OBJECT

private slots:
    static void aVisitGoesFromOneDeviceToAnotherWithItsPhotos() {
        FileBench one(true);
        one.open("Pilot house");
        const QString id = one.notebook().visit()->visitId();
        one.model().write();
        QVERIFY(one.model().working());
        QVERIFY(one.model().doing().startsWith("Writing the file, "));
        one.finish();
        QCOMPARE(one.written(), QStringList{"Pilot house.truehang.zip"});
        QVERIFY(one.model().written());
        QVERIFY2(one.model().line().contains("Pilot house.truehang.zip"), qPrintable(one.model().line()));
        QVERIFY(!one.model().line().contains("photo"));

        FileBench other(false);
        other.model().takeIn(one.url("Pilot house.truehang.zip"));
        QVERIFY(other.model().working());
        other.finish();
        QCOMPARE(other.model().takenIn(), id);
        QCOMPARE(other.model().line(), QString("Pilot house was taken in."));
        QCOMPARE(document(other, id), document(one, id));
        QCOMPARE(other.notebook().visits()->count(), 1);
        const auto photos = [&id](Store& store) { return store.items_of(id.toStdString()); };
        const auto items = other.ask(photos).value();
        QCOMPARE(items.size(), one.ask(photos).value().size());
        QVERIFY(items.size() > 1);
        for (const OutboxItem& item : items) {
            if (item.kind == ItemKind::photo) {
                QVERIFY(other.ask([&item](Store& store) { return store.photo_bytes(item.id); }).ok());
            }
        }
    }

    static void whatStandsThereIsntWrittenOver() {
        FileBench bench(true);
        bench.open("Sail loft");
        bench.model().write();
        bench.finish();
        bench.model().write();
        bench.finish();
        QCOMPARE(bench.written(), (QStringList{"Sail loft, 2.truehang.zip", "Sail loft.truehang.zip"}));
    }

    static void aVisitThatIsHereAsItIsIsSaidToBe() {
        FileBench bench(true);
        bench.open("Sail loft");
        bench.model().write();
        bench.finish();
        const std::size_t before = bench.visits();
        bench.model().takeIn(bench.url("Sail loft.truehang.zip"));
        bench.finish();
        QCOMPARE(bench.model().line(), QString("Sail loft is here already, just as in the file."));
        QCOMPARE(bench.model().takenIn(), bench.idOf("Sail loft"));
        QCOMPARE(bench.visits(), before);
    }

    static void aVisitAmongTheRemovedOnesComesBack() {
        FileBench bench(true);
        bench.open("Sail loft");
        const QString id = bench.notebook().visit()->visitId();
        bench.model().write();
        bench.finish();
        bench.notebook().removeVisit(id);
        bench.settle();
        QCOMPARE(bench.idOf("Sail loft"), QString());
        bench.model().takeIn(bench.url("Sail loft.truehang.zip"));
        bench.finish();
        QVERIFY2(bench.model().line().contains("it is back"), qPrintable(bench.model().line()));
        QCOMPARE(bench.idOf("Sail loft"), id);
    }

    static void anotherStateComesInAsAVisitOfItsOwn() {
        FileBench bench(true);
        bench.open("Sail loft");
        const QString id = bench.notebook().visit()->visitId();
        bench.model().write();
        bench.finish();
        bench.notebook().visit()->site()->leave("title", "Sail loft, edited");
        bench.settle();
        const std::string edited = document(bench, id);
        const std::size_t before = bench.visits();
        bench.model().takeIn(bench.url("Sail loft.truehang.zip"));
        bench.finish();
        QCOMPARE(bench.visits(), before + 1);
        QCOMPARE(document(bench, id), edited);
        const QString copy = bench.model().takenIn();
        QVERIFY(copy != id && !copy.isEmpty());
        QVERIFY2(bench.model().line().contains("a visit of its own"), qPrintable(bench.model().line()));
        bench.notebook().openVisit(copy);
        bench.settle();
        QCOMPARE(bench.notebook().visit()->title(), QString("Sail loft, from a file"));
        const auto history = bench.ask([&copy](Store& store) { return store.history(copy.toStdString()); }).value();
        QCOMPARE(history.size(), 1U);
        QCOMPARE(history[0].what, std::string("Taken in from a file"));
    }

    static void aFileThatIsntSoundChangesNothing() {
        FileBench bench(true);
        bench.open("Pilot house");
        bench.model().write();
        bench.finish();
        QFile file(bench.url("Pilot house.truehang.zip").toLocalFile());
        QVERIFY(file.open(QIODevice::ReadWrite));
        file.seek(file.size() / 2);  // among the photos
        file.write("XXXX");
        file.close();
        FileBench other(false);
        other.model().takeIn(bench.url("Pilot house.truehang.zip"));
        other.finish();
        QVERIFY2(other.model().line().endsWith("Nothing was taken in."), qPrintable(other.model().line()));
        QVERIFY2(other.model().line().startsWith("photos/"), qPrintable(other.model().line()));
        QCOMPARE(other.model().takenIn(), QString());
        QCOMPARE(other.visits(), std::size_t{0});
        QVERIFY(!QDir(other.folder() + "/photos").exists() ||
                QDir(other.folder() + "/photos").entryList(QDir::Dirs | QDir::NoDotAndDotDot).isEmpty());
        other.model().takeIn(other.url("never there.truehang.zip"));
        other.finish();
        QCOMPARE(other.model().line(), QString("There is no such file."));
    }

    static void aFileWithoutAPathOfItsOwnIsCopiedFirst() {
        FileBench one(true);
        one.open("Sail loft");
        one.model().write();
        one.finish();
        FileBench other(false);
        QUrl url;
        url.setPath(one.url("Sail loft.truehang.zip").toLocalFile());
        QVERIFY(!url.isLocalFile());
        other.model().takeIn(url);
        other.finish();
        QCOMPARE(other.model().line(), QString("Sail loft was taken in."));
    }

    static void stoppedWritingAndTakingInLeaveNothing() {
        FileBench bench(true);
        bench.open("Pilot house");
        bench.model().write();
        bench.model().stop();
        bench.finish();
        QCOMPARE(bench.model().line(), QString("Stopped. Nothing was written."));
        QCOMPARE(bench.written(), QStringList());
        bench.model().write();
        bench.finish();
        FileBench other(false);
        other.model().takeIn(bench.url("Pilot house.truehang.zip"));
        other.model().stop();
        other.finish();
        QCOMPARE(other.model().line(), QString("Stopped. Nothing was taken in."));
        QCOMPARE(other.visits(), std::size_t{0});
        other.model().takeIn(bench.url("Pilot house.truehang.zip"));
        other.finish();
        QCOMPARE(other.visits(), std::size_t{1});
    }

    static void theProgramCanEndWhileAFileIsWritten() {
        FileBench bench(true);
        bench.open("Pilot house");
        bench.model().write();
        bench.end();
        const QStringList left = bench.written();
        QVERIFY2(left.isEmpty() || left == QStringList{"Pilot house.truehang.zip"}, qPrintable(left.join(", ")));
    }

    static void whatIsntSentForADayIsSaid() {
        FileBench bench(false);
        bench.openNewWindow();
        bench.settle();
        const auto waits = [&bench] { return bench.notebook().visits()->value(0, "waits").toString(); };
        QCOMPARE(waits(), QString());
        QCOMPARE(bench.model().waits(), QString());
        bench.pass(23h);
        bench.notebook().setScreen("visits");
        QCOMPARE(waits(), QString());
        bench.notebook().setScreen("visit");
        bench.pass(1h);
        QVERIFY(!bench.model().waits().isEmpty());
        bench.notebook().setScreen("visits");
        QCOMPARE(waits(), QString("not sent for a day: keep it as a file"));
        QVERIFY(bench.notebook().visits()->value(0, "spoken").toString().endsWith(waits()));
        bench.notebook().visit()->site()->leave("title", "Another edit doesn’t begin the day anew");
        bench.settle();
        QVERIFY(!bench.model().waits().isEmpty());
        const std::string id = bench.notebook().visit()->visitId().toStdString();
        const auto confirmed = bench.ask(
            [&id](Store& store) -> Result<Done> { return store.confirm(store.items_of(id).value().at(0), "there"); });
        QVERIFY(confirmed.ok());
        bench.notebook().tryAgain();
        bench.settle();
        QCOMPARE(waits(), QString());
        QCOMPARE(bench.model().waits(), QString());
    }
};

QTEST_MAIN(AppVisitFileTest)
#include "app_visit_file_test.moc"
