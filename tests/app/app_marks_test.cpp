// SPDX-License-Identifier: Apache-2.0
#include "support.h"

#include "marks_model.h"
#include "photo_marks.h"

#include <QBuffer>
#include <QFile>
#include <QGuiApplication>
#include <QTest>
#include <cmath>

using namespace truehang;
using namespace truehang::test;

class AppMarksTest : public QObject {
    Q_OBJECT

private slots:
    void arrowsLinesWordsAndStationsAreDrawn();
    void eachIsOneEdit();
    void oneIsChosenChangedAndRemoved();
    void theyNeverChangeThePicture();
    void halfWrittenWordsSurvive();
    void whatCannotBeDrawnSaysSo();
    void nearIsWhatTheEyeSees();
};

namespace {

/// A window with one photo, its marks open; the photo's digest.
QString open_photo(Bench& bench) {
    bench.openNewWindow();
    QImage image(80, 60, QImage::Format_RGB32);
    image.fill(Qt::lightGray);
    bench.clipboard->held = image;
    PhotosModel* photos = bench.notebook().photos();
    photos->paste();
    if (!QTest::qWaitFor([photos] { return photos->photos()->count() == 1; }, patience)) {
        return {};
    }
    const QString sha = photos->photos()->value(0, "sha256").toString();
    photos->marks()->openPhoto(sha);
    return sha;
}

const std::vector<Mark>& kept(Bench& bench) { return bench.notebook().open()->window()->photos.at(0).marks; }

}  // namespace

void AppMarksTest::arrowsLinesWordsAndStationsAreDrawn() {
    Bench bench;
    QVERIFY(!open_photo(bench).isEmpty());
    MarksModel* marks = bench.notebook().photos()->marks();
    marks->writeWords("valve stands out 60");
    marks->draw({0.42, 0.61}, {0.55, 0.7});
    marks->setTool("line");
    marks->draw({-0.5, 0.1}, {0.5, 1.4});  // ends beyond the picture are held at its edge
    marks->setTool("text");
    marks->writeWords("crack");
    marks->touch({0.25, 0.75}, {800, 600});
    marks->setTool("station");
    marks->setStation("opening.width.top");
    marks->touch({0.5, 0.125}, {800, 600});
    bench.settle();
    QCOMPARE(kept(bench).size(), 4U);
    // The document contract: kinds, and points as fractions of the upright picture.
    QCOMPARE(kept(bench)[0].kind, std::string("arrow"));
    QCOMPARE(*point_of(kept(bench)[0], "to"), QPointF(0.55, 0.7));
    QCOMPARE(kept(bench)[0].text, std::string("valve stands out 60"));
    QCOMPARE(*point_of(kept(bench)[1], "from"), QPointF(0.0, 0.1));
    QCOMPARE(*point_of(kept(bench)[1], "to"), QPointF(0.5, 1.0));
    QVERIFY(kept(bench)[1].text.empty());  // the words went to the first mark
    QCOMPARE(*point_of(kept(bench)[2], "at"), QPointF(0.25, 0.75));
    QCOMPARE(kept(bench)[3].text, std::string("opening.width.top"));
    QCOMPARE(marks->marks()->value(0, "says").toString(), QString("Arrow: valve stands out 60"));
    QVERIFY(marks->marks()->value(3, "says").toString().startsWith("Station: "));
    QVERIFY(!marks->marks()->value(3, "says").toString().contains("opening.width"));
    QCOMPARE(bench.notebook().photos()->photos()->value(0, "marked").toString(), QString("4 marks"));
}

void AppMarksTest::eachIsOneEdit() {
    Bench bench;
    QVERIFY(!open_photo(bench).isEmpty());
    MarksModel* marks = bench.notebook().photos()->marks();
    marks->draw({0.1, 0.1}, {0.5, 0.5});
    marks->draw({0.2, 0.1}, {0.6, 0.5});
    bench.settle();
    bench.notebook().visit()->undo();
    bench.settle();
    QCOMPARE(kept(bench).size(), 1U);
    QCOMPARE(marks->marks()->count(), 1);
    bench.notebook().visit()->redo();
    bench.settle();
    QCOMPARE(kept(bench).size(), 2U);
    bench.reopen();
    QCOMPARE(kept(bench).size(), 2U);
}

void AppMarksTest::oneIsChosenChangedAndRemoved() {
    Bench bench;
    QVERIFY(!open_photo(bench).isEmpty());
    MarksModel* marks = bench.notebook().photos()->marks();
    marks->draw({0.1, 0.1}, {0.9, 0.1});
    marks->draw({0.1, 0.9}, {0.9, 0.9});
    marks->setTool("choose");
    marks->touch({0.5, 0.88}, {400, 300});
    QCOMPARE(marks->chosen(), 2);
    marks->writeWords("skirting");
    bench.settle();
    QCOMPARE(kept(bench)[1].text, std::string("skirting"));
    marks->remove();
    bench.settle();
    QCOMPARE(kept(bench).size(), 1U);
    QCOMPARE(marks->chosen(), 0);
    bench.notebook().visit()->undo();
    bench.settle();
    QCOMPARE(kept(bench)[1].text, std::string("skirting"));
    marks->touch({0.5, 0.5}, {400, 300});
    QCOMPARE(marks->chosen(), 0);
}

void AppMarksTest::theyNeverChangeThePicture() {
    Bench bench;
    const QString sha = open_photo(bench);
    PhotosModel* photos = bench.notebook().photos();
    QTRY_VERIFY_WITH_TIMEOUT(!photos->photos()->value(0, "picture").toUrl().isEmpty(), patience);
    const QString path = photos->photos()->value(0, "picture").toUrl().toLocalFile();
    QFile before(path);
    QVERIFY(before.open(QIODevice::ReadOnly));
    const QByteArray bytes = before.readAll();
    photos->marks()->draw({0.1, 0.1}, {0.9, 0.9});
    bench.settle();
    QFile after(path);
    QVERIFY(after.open(QIODevice::ReadOnly));
    QCOMPARE(after.readAll(), bytes);
    QCOMPARE(photos->photos()->value(0, "sha256").toString(), sha);
}

void AppMarksTest::halfWrittenWordsSurvive() {
    Bench bench;
    const QString sha = open_photo(bench);
    bench.notebook().photos()->marks()->typingWords("loose pla");
    bench.reopen();
    bench.notebook().photos()->marks()->openPhoto(sha);
    QCOMPARE(bench.notebook().photos()->marks()->words(), QString("loose pla"));
}

void AppMarksTest::whatCannotBeDrawnSaysSo() {
    Bench bench;
    QVERIFY(!open_photo(bench).isEmpty());
    MarksModel* marks = bench.notebook().photos()->marks();
    marks->touch({0.5, 0.5}, {400, 300});  // an arrow of one point
    QVERIFY(!marks->fault().isEmpty());
    marks->setTool("text");
    QVERIFY(marks->fault().isEmpty());
    marks->touch({0.5, 0.5}, {400, 300});  // no words yet
    QVERIFY(!marks->fault().isEmpty());
    marks->setTool("no such tool");
    QCOMPARE(marks->tool(), QString("text"));
    bench.settle();
    QVERIFY(kept(bench).empty());
    marks->openPhoto("not here");
    marks->setTool("arrow");
    marks->draw({0.1, 0.1}, {0.9, 0.9});
    bench.settle();
    QVERIFY(kept(bench).empty());
}

void AppMarksTest::nearIsWhatTheEyeSees() {
    const std::vector<Mark> marks{run_mark("line", {0.0, 0.5}, {1.0, 0.5}, {}), spot_mark("text", {0.5, 0.5}, "a")};
    // Derived: on 400 × 200 the line lies at 100; 20 below it is within a reach of 24, 30 isn't.
    QCOMPARE(mark_near(marks, {0.1, 0.6}, {400, 200}, 24), 0);
    QCOMPARE(mark_near(marks, {0.1, 0.65}, {400, 200}, 24), -1);
    QCOMPARE(mark_near(marks, {0.5, 0.5}, {400, 200}, 24), 1);  // the one drawn over the other
    // Derived: barbs of length 10 lie 10 from the tip, to both sides of the way back.
    const auto [one, other] = barbs_of({0, 0}, {100, 0}, 10);
    QVERIFY(std::abs(std::hypot(one.x() - 100, one.y()) - 10) < 1e-9);
    QVERIFY(one.x() < 100 && other.x() < 100);
    QVERIFY(std::abs(one.y() + other.y()) < 1e-9);
}

QTEST_MAIN(AppMarksTest)
#include "app_marks_test.moc"
